"""Every screen and state, in both languages, measured on three phones against the design (buttons, gaps, lettering,
contrast, room) and by axe: nothing breaks WCAG 2.2 A or AA, dark or light; the bench keeps AAA's contrast. No English
stands in Spanish.
"""

import re
from collections.abc import Iterator

from playwright.sync_api import Page, expect

from e2e import axe, ruler
from e2e.phone import Phone
from e2e.walk_jacket import SHIFTS, Shift
from tests.text_catalogue import bare, forms, texts

PHONES = ((390, 844), (390, 760), (360, 640))
KEY = re.compile(r"\b(" + "|".join(sorted({key.split(".")[0] for key in texts("en")})) + r")\.[a-z_]+\b|\{\w+\}")
# Everything a person reads or a screen reader says.
SAID = """() => [
    ...document.body.innerText.split("\\n"),
    ...[...document.querySelectorAll("[aria-label], [title], [alt]")].flatMap(
        (one) => ["aria-label", "title", "alt"].map((name) => one.getAttribute(name) ?? ""),
    ),
    document.title,
].map((one) => one.trim()).filter(Boolean)"""


def english_only() -> set[str]:
    """Sentences without a figure that English has and Spanish has not."""
    spanish = {form for text in texts("es").values() for form in forms(text)}
    english = {form for text in texts("en").values() for form in forms(text)}
    return {form for form in english - spanish if bare(form) == form}


def language_faults(page: Page, english: set[str]) -> list[str]:
    """What stands on the page as a key, as an unfilled figure or in English."""
    said = page.evaluate(SAID)
    assert said, "nothing stands on the page"
    left = [one for one in said if one in english]
    return [f"“{one}” is English" for one in left] + [f"“{one}” is no text" for one in said if KEY.search(one)]


def size_faults(phone: Phone) -> list[str]:
    """What falls short of the design's sizes, and still does once a busy machine has drawn the screen."""
    found: list[str] = []
    for _ in range(3):
        ruler.settles(phone)
        found = ruler.bench_faults(phone) if phone.at_the_bench else ruler.desk_faults(phone)
        if not found:
            break
        phone.page.wait_for_timeout(200)
    return found


def reads_in(page: Page, language: str) -> None:
    """As when another tab of this phone chooses a language: where the page is, it stays."""
    page.evaluate(
        """(language) => new BroadcastChannel("amberbench").postMessage({ about: "settings", change: { language } })""",
        language,
    )
    expect(page.locator("html")).to_have_attribute("lang", language)


def faults_of(phone: Phone) -> Iterator[str]:
    """Of the screen as it stands: sizes on three phones, axe dark and light, contrast."""
    for width, height in PHONES:
        phone.page.set_viewport_size({"width": width, "height": height})
        yield from (f"at {width} × {height}: {fault}" for fault in size_faults(phone))
    phone.page.set_viewport_size({"width": 390, "height": 844})
    ruler.settles(phone)
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
        faults += [f"{state}: {fault}" for fault in faults_of(phone)]
        reads_in(phone.page, "es")
        faults += [f"{state} in Spanish: {fault}" for fault in faults_of(phone)]
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


def test_a_text_left_in_english_would_be_found(phone: Phone):
    found = language_faults(phone.page, english_only())
    assert "“Plan a batch” is English" in found
    phone.page.evaluate("() => { document.querySelector('h1').textContent = 'desk.no_such_text'; }")
    assert "“desk.no_such_text” is no text" in language_faults(phone.page, set())
