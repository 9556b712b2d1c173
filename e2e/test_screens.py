"""Every screen and state, in both languages, measured on three phones against the design: buttons, gaps, lettering,
contrast, room. No English stands in Spanish. Every caution is whole in view on smaller and larger screens too. By axe:
nothing breaks WCAG 2.2 A or AA, in the dark and in the light; the bench keeps AAA's contrast.
"""

from collections.abc import Iterator

import pytest

from e2e import axe, ruler
from e2e.cautions import SCREENS, caution_faults, unseen
from e2e.languages import english_only, language_faults, reads_in
from e2e.phone import Phone
from e2e.spills import SCREENS as SMALL_DESKS
from e2e.spills import spills
from e2e.walk_jacket import SHIFTS, Shift

PHONES = ((360, 640), (390, 760), (390, 844))


def layout_faults(phone: Phone) -> Iterator[str]:
    """Of the screen as it stands, on every size of phone: what is too small, too close, too faint, cut or covered."""
    yield from caution_faults(phone)
    for width, height in () if phone.at_the_bench else SMALL_DESKS:
        phone.page.set_viewport_size({"width": width, "height": height})
        yield from (f"at {width} × {height}: {fault}" for fault in ruler.still(phone, spills))
    for width, height in PHONES:
        phone.page.set_viewport_size({"width": width, "height": height})
        yield from (f"at {width} × {height}: {fault}" for fault in ruler.still(phone, seen_faults))


def seen_faults(phone: Phone) -> list[str]:
    return [*ruler.seen_faults(phone), *unseen(phone), *spills(phone)]


def access_faults(phone: Phone) -> Iterator[str]:
    """What axe finds in the dark, and in the light what is too faint; neither depends on the language."""
    yield from axe.faults(phone.page, phone.at_the_bench)
    phone.page.emulate_media(color_scheme="light")
    ruler.settles(phone)
    found = axe.colour_faults(phone.page, phone.at_the_bench) + ruler.contrast_faults_of(phone)
    yield from (f"in the light: {fault}" for fault in found)
    phone.page.emulate_media(color_scheme="dark")


@SHIFTS
def test_every_screen_holds_the_design_in_both_languages(phone: Phone, shift: Shift):
    faults, english = [], english_only()
    for state in shift(phone):
        faults += [f"{state}: {fault}" for fault in (*layout_faults(phone), *access_faults(phone))]
        reads_in(phone.page, "es")
        faults += [f"{state} in Spanish: {fault}" for fault in layout_faults(phone)]
        faults += [f"{state} in Spanish: {fault}" for fault in language_faults(phone.page, english)]
        reads_in(phone.page, "en")
        ruler.settles(phone)
    assert not faults, "\n".join(faults)
    assert phone.errors == []


def test_axe_does_find_what_is_wrong(phone: Phone):
    """The check above can fail: faint letters and a picture without words are seen."""
    phone.page.evaluate("() => document.querySelector('main').append(new Image())")
    phone.page.evaluate("() => void (document.querySelector('h1').style.color = '#777')")
    both = axe.faults(phone.page, at_the_bench=True) + axe.colour_faults(phone.page, at_the_bench=True)
    rules = [fault.split(":")[0] for fault in both]
    assert rules.count("color-contrast-enhanced") == 2
    assert "image-alt" in rules


@pytest.mark.parametrize(
    "spoilt",
    [
        "display: none",
        "height: 30px; overflow: hidden",
        "top: 3000px; position: fixed",
        "margin-left: -60px",
        "z-index: -1",
    ],
)
def test_a_caution_hidden_cut_or_covered_would_be_found(phone: Phone, spoilt: str):
    phone.plans_and_starts()
    assert list(caution_faults(phone)) == []
    phone.draws_with(f"main.bench > .caution {{ {spoilt} }} .bench-foot {{ margin-top: -200px }}")
    assert len(list(caution_faults(phone))) >= len(SCREENS) - 1


def test_a_text_left_in_english_would_be_found(phone: Phone):
    found = language_faults(phone.page, english_only())
    assert "“Plan a batch” is English" in found
    phone.page.evaluate("() => { document.querySelector('h1').textContent = 'desk.no_such_text'; }")
    assert "“desk.no_such_text” is no text" in language_faults(phone.page, set())
