"""The same shift on a phone that speaks Spanish: every screen whole, plain, legible, and Spanish throughout."""

import re

from playwright.sync_api import Page, expect

from e2e import axe, ruler
from e2e.phone import Phone
from e2e.walk_jacket import SHIFTS, Shift
from tests.text_catalogue import bare, forms, texts

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


def lasting_faults(phone: Phone) -> list[str]:
    """What falls short of the design's sizes, and still does once a busy machine has drawn the screen."""
    found: list[str] = []
    for _ in range(3):
        ruler.settles(phone)
        found = ruler.bench_faults(phone) if phone.at_the_bench else ruler.desk_faults(phone)
        if not found:
            break
        phone.page.wait_for_timeout(200)
    return found


@SHIFTS
def test_the_phone_speaks_spanish_on_every_screen_and_keeps_sizes_and_contrast(phone: Phone, shift: Shift):
    phone.speaks("es")
    faults, english = [], english_only()
    for state in shift(phone):
        for width, height in ((390, 844), (360, 640)):
            phone.page.set_viewport_size({"width": width, "height": height})
            faults += [f"{state} at {width} × {height}: {fault}" for fault in lasting_faults(phone)]
        phone.page.set_viewport_size({"width": 390, "height": 844})
        ruler.settles(phone)
        faults += [f"{state}: {fault}" for fault in axe.faults(phone.page, phone.at_the_bench)]
        faults += [f"{state}: {fault}" for fault in language_faults(phone.page, english)]
    assert not faults, "\n".join(faults)
    assert phone.errors == []


def test_a_text_left_in_english_would_be_found(phone: Phone):
    found = language_faults(phone.page, english_only())
    assert "“Plan a batch” is English" in found
    phone.page.evaluate("() => { document.querySelector('h1').textContent = 'desk.no_such_text'; }")
    assert "“desk.no_such_text” is no text" in language_faults(phone.page, set())


def test_from_the_settings_to_the_first_burst_in_spanish(phone: Phone):
    phone.speaks("es")
    phone.opens_place("Plan")
    phone.page.get_by_label("Caramelo", exact=True).fill("900,5")
    expect(phone.refused().first).to_contain_text("900,5\u202fkg es demasiado. Se admite: de 50\u202fg a 50\u202fkg.")
    phone.page.get_by_label("Caramelo", exact=True).fill("1.8 kilos")
    phone.answered()
    expect(phone.page.locator(".plan-answer")).to_contain_text("Pesar 1,8\u202fkg de caramelo.")
    phone.start.tap()
    phone.is_at("set_up")
    expect(phone.page.get_by_role("heading")).to_have_text("¿Papel, barras, guantes, bol de agua listos?")
    expect(phone.bench).to_contain_text("ADVERTENCIA")
    phone.taps("All ready")
    phone.keys("1.75")
    expect(phone.button).to_contain_text("Usar 1,75 kg")
    phone.taps()
    phone.keys("117")
    phone.taps()
    phone.starts_a_burst()
    expect(phone.page.get_by_role("heading")).to_have_text("Calentando. No alejarse del microondas.")
    assert phone.facts_of("weighed")[-1]["body"]["kg"] == 1.75


def test_the_language_is_kept_when_the_page_comes_back(phone: Phone):
    phone.speaks("es")
    phone.page.reload()
    expect(phone.page.locator("html")).to_have_attribute("lang", "es")
    expect(phone.page.get_by_role("navigation").get_by_role("link", name="Ajustes")).to_be_visible()
