"""Prompts for a slab: set up, melt, score and cut by the map, count."""

from ...core.prompts import clock
from ...steps.common.prompts import plain_page
from ...steps.cool.prompts import cool_page
from ...steps.jacket.prompts import jacket_page
from ...steps.melt.prompts import melt_page
from ...steps.pour.prompts import bars_page, count_page, frame_for, moved_frame, pour_button, ready_page
from ...steps.wrap.prompts import wrap_page

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable

    from ...core.annotations import Readable
    from ...types import Advice, Clock


# A pre-bottom sets in five to ten minutes (common practice, no published source): looked at at the early end.
PREBOTTOM_SETS_MS = 5 * 60000.0


def flip_clocks(run: "Readable", step: str) -> "list[Clock]":
    """The clock of a pre-bottom that sets before the slab is flipped onto it."""
    if step != "flip" or "prebottom" not in run["done"] or "prebottom" in run["skipped"]:
        return []
    coated_ms = run["done"]["prebottom"]
    return [clock("prebottom", coated_ms, coated_ms + PREBOTTOM_SETS_MS, "ready")]


# One page for each step ---------------------------------------------------------------------------------------------


def _set_up(run: "Readable", at_ms: float, advice: "Advice") -> None:
    bars_page(run, at_ms, advice)
    if run["melt"]["jacket"] is not None:
        request = run["melt"]["request"]
        heat = {"jacket_c": request["jacket_c"], "limit_c": request["limit_c"]}
        advice["say"] = {"code": "say.set_up_jacket", "values": {}}
        advice["more"] = {"code": "more.set_up_jacket", "values": heat}
        advice["caution"] = {"word": "WARNING", "code": "caution.hot_water"}


def _melt(run: "Readable", at_ms: float, advice: "Advice") -> None:
    if run["melt"]["jacket"] is None:
        melt_page(run, at_ms, advice, (ready_page, pour_button))
    else:
        jacket_page(run, at_ms, advice)
    if advice["more"] is None and not run["melt"]["history"]:
        # Before anything is hot there is time to move them.
        advice["more"] = moved_frame(run)


def _flip(run: "Readable", at_ms: float, advice: "Advice") -> None:
    plain_page("flipped", "flipped", "CAUTION", "flip")(run, at_ms, advice)
    for setting in flip_clocks(run, "flip"):
        if at_ms < setting["due_ms"]:
            advice["say"] = {"code": "say.prebottom_sets", "values": {}}
            advice["number"] = {"name": "due_ms", "value": setting["due_ms"]}


def _by_map(words: str, kind: str, caution: str) -> "Callable[..., None]":
    """As `_plain`, by the slab map; says so when more or less was weighed in and the map is not the slab's length."""
    plain = plain_page(words, kind, "CAUTION", caution)

    def page(run: "Readable", at_ms: float, advice: "Advice") -> None:
        plain(run, at_ms, advice)
        planned_m, length_m = run["planned"]["length_m"], frame_for(run)["length_m"]
        if length_m != planned_m:
            advice["more"] = {"code": "more.other_length", "values": {"length_m": length_m, "planned_m": planned_m}}

    return page


PAGES = {
    "set_up": _set_up,
    "melt": _melt,
    "cool": cool_page,
    "loosen": plain_page("loosened", "freed", "CAUTION", "knife"),
    "prebottom": plain_page("prebottomed", "prebottomed", "NOTICE", "chocolate_dry"),
    "flip": _flip,
    "score": _by_map("scored", "scored", "score"),
    "cut": _by_map("cut", "cut", "knife_cut"),
    "wrap": wrap_page,
    "count": count_page,
}
