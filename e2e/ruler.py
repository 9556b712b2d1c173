"""Measures a screen against the design's sizes for hot, sticky, gloved hands, and says what falls short.

The sizes are CSS pixels, from the design of the screens: 25 mm are 160 px, 14 mm are 88 px at the bench.
"""

from collections.abc import Callable
from itertools import combinations
from pathlib import Path
from typing import Any

from e2e.phone import Phone

MEASURE = Path(__file__).with_name("measure.js").read_text()

BIG_HIGH, BIG_HIGH_BY_KEYPAD, BIG_MARGIN = 160, 112, 16
KEY_WIDE, KEY_HIGH, KEY_GAP = 112, 84, 6
# On a keypad a caution comes first: below these heights the typed digits, then the keys give it their room.
FIGURE_BY_CAUTION, FIGURE_CAP_BY_CAUTION, LOW = 60, 42, 800
KEY_HIGH_BY_CAUTION, LOWEST = 70, 740
CONTROL, GAP = 88, 12
LETTER, FIGURE, FIGURE_CAP = 20, 115, 82
CONTRAST = {"bench": 7.0, "desk": 4.5}
# Layout is in fractions of a pixel, and line boxes touch.
SLACK = 0.5

Box = dict[str, Any]


# Pictures are drawn again for the room they have; a button under a finger is drawn a little smaller.
SETTLED = """() => !document.querySelector("button:active") &&
    !(matchMedia("(max-height: 699px)").matches && document.querySelector(".bench .clocks:not(.clocks-strip)")) &&
    [...document.querySelectorAll(".picture svg")].every((svg) => {
    // What is folded is drawn when it is opened; on a printed page pictures shrink with the letters.
    if (svg.closest(".paper") || !svg.checkVisibility()) return true;
    const room = svg.parentElement;
    return Math.abs(svg.clientWidth - room.clientWidth) <= 1 && svg.clientHeight <= room.clientHeight + 1;
})"""


def settles(phone: Phone) -> None:
    phone.passes(50)
    if not phone.page.evaluate(SETTLED):
        phone.page.wait_for_function(SETTLED)


def bench_faults(phone: Phone) -> list[str]:
    """Everything on a bench screen that is too small, too close, too faint or not wholly in view."""
    seen = phone.page.evaluate(MEASURE)
    assert seen["layer"] != "desk", "this is no bench screen"
    if not seen["texts"]:
        return ["nothing stands on the screen"]
    return [
        *_control_faults(seen),
        *_gap_faults(seen["controls"]),
        *_lettering_faults(seen),
        *_view_faults(seen),
        *_overlap_faults(seen),
        *contrast_faults(seen, CONTRAST["bench"]),
    ]


def desk_faults(phone: Phone) -> list[str]:
    seen = phone.page.evaluate(MEASURE)
    if not seen["texts"]:
        return ["nothing stands on the screen"]
    faults = contrast_faults(seen, CONTRAST["desk"])
    if seen["wide"] > seen["width"]:
        faults.append(f"the page is {seen['wide']} px wide and the screen {seen['width']}")
    return faults


def still(phone: Phone, look: Callable[[Phone], list[str]]) -> list[str]:
    """The faults that a look at the screen finds, and still does once a busy machine has drawn it."""
    found: list[str] = []
    for _ in range(3):
        settles(phone)
        found = look(phone)
        if not found:
            break
        phone.page.wait_for_timeout(200)
    return found


def seen_faults(phone: Phone) -> list[str]:
    """What falls short of the design's sizes, as the screen stands."""
    return bench_faults(phone) if phone.at_the_bench else desk_faults(phone)


def size_faults(phone: Phone) -> list[str]:
    return still(phone, seen_faults)


def contrast_faults_of(phone: Phone) -> list[str]:
    """Only what is too faint, at the bench or at the desk."""
    seen = phone.page.evaluate(MEASURE)
    return contrast_faults(seen, CONTRAST["desk" if seen["layer"] == "desk" else "bench"])


def contrast_faults(seen: dict[str, Any], least: float) -> list[str]:
    faint = [text for text in seen["texts"] if text["contrast"] < least]
    return [f"“{text['text']}” has a contrast of {text['contrast']:.2f}, not {least}" for text in faint]


def _control_faults(seen: dict[str, Any]) -> list[str]:
    faults = []
    for control in seen["controls"]:
        wide, high = control["right"] - control["left"], control["bottom"] - control["top"]
        least_wide, least_high = _least(control, seen)
        if wide < least_wide - SLACK or high < least_high - SLACK:
            faults.append(f"“{control['name']}” is {wide:.0f} × {high:.0f} px, not {least_wide} × {least_high}")
        if seen["layer"] != "sheet" and not control["reached"]:
            faults.append(f"something lies over “{control['name']}”")
    return faults


def _least(control: Box, seen: dict[str, Any]) -> tuple[float, float]:
    if control["kind"] == "key":
        return KEY_WIDE, KEY_HIGH_BY_CAUTION if _is_shared(seen, LOWEST) else KEY_HIGH
    if control["kind"] == "big" and seen["layer"] != "sheet":
        return seen["width"] - 2 * BIG_MARGIN, BIG_HIGH_BY_KEYPAD if seen["keypad"] else BIG_HIGH
    return CONTROL, CONTROL


def _is_shared(seen: dict[str, Any], below: float) -> bool:
    """Whether a keypad shares a low screen with a caution."""
    return bool(seen["keypad"] and seen["caution"] and seen["height"] < below)


def _gap_faults(controls: list[Box]) -> list[str]:
    faults = []
    for one, other in combinations(controls, 2):
        if one["inFoot"] != other["inFoot"]:
            continue  # The foot of a sheet stays in view over what is scrolled under it.
        least = KEY_GAP if one["kind"] == other["kind"] == "key" else GAP
        gap = max(
            one["left"] - other["right"],
            other["left"] - one["right"],
            one["top"] - other["bottom"],
            other["top"] - one["bottom"],
        )
        if gap < least - SLACK:
            faults.append(f"“{one['name']}” and “{other['name']}” are {gap:.1f} px apart, not {least}")
    return faults


def _lettering_faults(seen: dict[str, Any]) -> list[str]:
    faults = [f"“{one['text']}” is {one['size']:.1f} px, not {LETTER}" for one in seen["texts"] if one["size"] < LETTER]
    size, cap = (FIGURE_BY_CAUTION, FIGURE_CAP_BY_CAUTION) if _is_shared(seen, LOW) else (FIGURE, FIGURE_CAP)
    for figure in seen["figures"]:
        if figure["size"] < size or figure["cap"] < cap:
            faults.append(f"the number {figure['text']} is {figure['size']} px, its digits {figure['cap']:.0f} px high")
    return faults


def _view_faults(seen: dict[str, Any]) -> list[str]:
    faults = [f"{one['what']} hides {one['by']} px" for one in seen["hidden"]]
    if seen["wide"] > seen["width"]:
        faults.append(f"the page is {seen['wide']} px wide and the screen {seen['width']}")
    # A sheet may be longer than the screen, but what it holds must not run out at the sides.
    high = seen["height"] if seen["layer"] != "sheet" else float("inf")
    for thing in [*seen["texts"], *seen["figures"]]:
        if any(not _inside(rect, seen["width"], high) for rect in thing["rects"]):
            faults.append(f"“{thing['text']}” runs out of the screen")
    faults += [f"“{text['text']}” is cut short" for text in seen["texts"] if text["cut"]]
    big = [control for control in seen["controls"] if control["kind"] == "big"]
    return faults + [
        f"“{one['name']}” is not wholly in view" for one in big if not _inside(one, seen["width"], seen["height"])
    ]


def _inside(rect: Box, wide: float, high: float) -> bool:
    top = rect["top"] if high < float("inf") else 0
    return bool(
        rect["left"] > -SLACK and rect["right"] < wide + SLACK and top > -SLACK and rect["bottom"] < high + SLACK
    )


def _overlap_faults(seen: dict[str, Any]) -> list[str]:
    """Lettering over other lettering or over a control it does not belong to."""
    texts = [(text, rect) for text in seen["texts"] for rect in text["rects"]]
    faults = []
    for (one, first), (other, second) in combinations(texts, 2):
        # The foot again.
        if one is not other and one["inFoot"] == other["inFoot"] and _overlap(first, second) > 1:
            faults.append(f"“{one['text']}” and “{other['text']}” lie over each other")
    for index, control in enumerate(seen["controls"]):
        if control["kind"] == "picture" or seen["layer"] == "sheet":
            continue
        for text, rect in texts:
            if text["control"] != index and _overlap(rect, control) > 1:
                faults.append(f"“{text['text']}” lies over “{control['name']}”")
    return faults


def _overlap(one: Box, other: Box) -> float:
    """How deep two boxes lie in each other, in px; 0 or less: not at all."""
    wide = min(one["right"], other["right"]) - max(one["left"], other["left"])
    high = min(one["bottom"], other["bottom"]) - max(one["top"], other["top"])
    return float(min(wide, high))
