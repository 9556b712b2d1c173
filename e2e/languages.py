"""Which language a page speaks: turned over where it stands, and what is left of the other one."""

import re

from playwright.sync_api import Page, expect

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


def reads_in(page: Page, language: str) -> None:
    """As when another tab of this phone chooses a language: where the page is, it stays."""
    page.evaluate(
        """(language) => new BroadcastChannel("amberbench").postMessage({ about: "settings", change: { language } })""",
        language,
    )
    expect(page.locator("html")).to_have_attribute("lang", language)
