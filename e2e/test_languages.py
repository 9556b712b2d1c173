"""A phone loads the texts it reads first and the others after them, and speaks as it is used until somebody chooses."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from e2e.conftest import PHONE
from e2e.device import PATIENCE_MS, TEXTS_KEPT
from e2e.languages import reads_in
from e2e.phone import Phone
from e2e.server import Server
from tests.text_catalogue import forms, texts

ALL_KEPT = ["en", "es", "es-MX"]
# Puts each text into an element; which of them have a word that is then cut, broken in two, or outside the frame.
MISFITS = """([at, frame, texts]) => {
    const place = document.querySelector(at);
    const said = place.textContent;
    const inside = (one) => {
        const around = place.closest(frame).getBoundingClientRect();
        return (
        one.left >= Math.max(around.left, 0) - 0.5 && one.right <= Math.min(around.right, innerWidth) + 0.5 &&
        one.top >= Math.max(around.top, 0) - 0.5 && one.bottom <= Math.min(around.bottom, innerHeight) + 0.5);
    };
    const misfits = texts.filter((text) => {
        place.textContent = text;
        if (place.style.getPropertyValue("--longest"))
            place.style.setProperty("--longest", Math.max(...text.split(/[\\s-]/).map((word) => word.length)));
        const fits = [...text.matchAll(/[^\\s-]+-?/g)].every(({ index, 0: word }) => {
            const range = document.createRange();
            range.setStart(place.firstChild, index);
            range.setEnd(place.firstChild, index + word.length);
            const rects = [...range.getClientRects()];
            return rects.length === 1 && inside(rects[0]);
        });
        const buttons = [...document.querySelectorAll(`${frame} button`)].map((one) => one.getBoundingClientRect());
        return !fits || !buttons.every((one) => one.bottom <= innerHeight + 0.5);
    });
    place.textContent = said;
    return misfits;
}"""
SMALL_AND_USUAL = ((320, 568), (390, 844))


@pytest.fixture
def used_in(browser: Browser, server: Server) -> Iterator:
    """Opens the app, for the first time, on a phone used in a locale."""
    opened: list[BrowserContext] = []

    def opens(locale: str, language: str) -> Phone:
        opened.append(browser.new_context(base_url=server.url, **PHONE | {"locale": locale}))
        phone = Phone(opened[-1].new_page(), fake_clock=False)
        phone.language = language
        phone.installs()
        return phone

    yield opens
    for context in opened:
        context.close()


def kept(phone: Phone) -> list[str]:
    """The languages whose texts this phone has without a network."""
    texts: list[str] = phone.page.evaluate(TEXTS_KEPT)
    return texts


def keeps_all(phone: Phone) -> None:
    for _ in range(PATIENCE_MS // 200):
        if kept(phone) == ALL_KEPT:
            return
        phone.page.wait_for_timeout(200)
    assert kept(phone) == ALL_KEPT


def html_in(phone: Phone, language: str) -> None:
    expect(phone.page.locator("html")).to_have_attribute("lang", language, timeout=PATIENCE_MS)


@pytest.mark.parametrize(
    ("locale", "language", "first"), [("en-GB", "en", ["en"]), ("es-US", "es-MX", ["es", "es-MX"])]
)
def test_a_first_visit_waits_for_the_texts_it_reads_and_stores_the_others_afterwards(used_in, locale, language, first):
    phone = used_in(locale, language)
    assert kept(phone) == first
    html_in(phone, language)
    keeps_all(phone)
    phone.loses_the_network()
    phone.speaks("en" if language == "es-MX" else "es-MX")
    phone.page.reload()
    html_in(phone, phone.language)
    expect(phone.page.get_by_role("navigation").get_by_role("link", name=phone.word("Records"))).to_be_visible()


def test_a_language_not_yet_on_the_phone_is_said_to_be_missing_and_comes_with_the_network(used_in):
    phone = used_in("en-GB", "en")
    phone.loses_the_network()
    phone.opens_place("Settings")
    phone.page.get_by_label("Language").select_option("es")
    expect(phone.page.get_by_role("alert").first).to_have_text(
        "The texts in “Español” are not on this phone yet. They come with the next connection."
    )
    html_in(phone, "en")
    phone.page.reload()
    html_in(phone, "en")
    expect(phone.page.get_by_role("alert")).to_contain_text("Español")
    phone.finds_the_network()
    html_in(phone, "es")
    expect(phone.page.get_by_role("alert")).to_have_count(0)
    keeps_all(phone)


@pytest.mark.parametrize(
    ("locale", "language", "figure", "clock"),
    [("es-ES", "es", "1,8\u202fkg", r"\d?\d:\d\d"), ("es-MX", "es-MX", "1.8\u202fkg", r"\d?\d:\d\d\s[ap]\.\s?m\.")],
)
def test_a_spanish_phone_opens_the_invented_shop_in_its_own_spanish(used_in, locale, language, figure, clock):
    phone = used_in(locale, language)
    html_in(phone, language)
    phone.opens_place("Plan")
    phone.page.get_by_label(phone.word("Caramel"), exact=True).fill("1.8")
    phone.answered()
    expect(phone.page.locator(".plan-answer")).to_contain_text(f"Pesar {figure} de caramelo.")
    answer = phone.page.locator(".plan-answer").inner_text()
    assert re.search(clock, answer), answer
    assert not re.search(r"(?<!\.)\.\.(?!\.)", answer), answer


def test_what_somebody_chooses_for_the_shop_or_for_the_phone_wins_over_the_locale(used_in):
    phone = used_in("es-ES", "es")
    phone.page.goto("/shop/shop")
    phone.page.get_by_label("Idioma", exact=True).select_option("en")
    phone.page.wait_for_timeout(700)
    phone.page.get_by_role("button", name="Guardar").tap()
    html_in(phone, "en")
    phone.language = "en"
    phone.speaks("es-MX")
    html_in(phone, "es-MX")


def named(language: str, start: str) -> list[str]:
    """The texts of a language whose keys begin so, without figures in them."""
    found = [form for key, text in texts(language).items() if key.startswith(start) for form in forms(text)]
    assert len(found) > 10
    return [one for one in found if "{" not in one]


def misfits(phone: Phone, start: str, at: str, frame: str) -> list[str]:
    """Which of the texts of these keys do not fit there, in any language and on two phones."""
    found = []
    for language in ALL_KEPT:
        reads_in(phone.page, language)
        for width, height in SMALL_AND_USUAL:
            phone.page.set_viewport_size({"width": width, "height": height})
            phone.page.wait_for_timeout(100)
            expect(phone.page.locator(at)).to_be_visible()
            bad = phone.page.evaluate(MISFITS, [at, frame, named(language, start)])
            found += [f"{language}, {width} × {height}: “{one}”" for one in bad]
    return found


def test_every_alarm_and_whatever_can_be_undone_stands_whole_in_its_place_in_every_language(phone: Phone):
    phone.plans_and_starts()
    phone.sets_up()
    found = misfits(phone, "undo.", ".bar .undo b", ".undo")
    reads_in(phone.page, "en")
    phone.starts_a_burst()
    phone.waits_for_the_ring()
    found += misfits(phone, "clock.", "#ring-name", ".ring")
    phone.page.set_viewport_size({"width": 390, "height": 844})
    reads_in(phone.page, "en")
    assert not found, "\n".join(found)


def test_an_alarm_over_something_typed_stands_whole_in_its_strip_in_every_language(phone: Phone):
    phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    phone.leaves_the_bench()
    phone.opens_place("Plan")
    phone.page.get_by_label("Caramel", exact=True).focus()
    phone.passes(75_000)
    expect(phone.page.locator(".ring-strip")).to_be_visible()
    found = misfits(phone, "clock.", ".ring-strip b", ".ring-strip")
    assert not found, "\n".join(found)
