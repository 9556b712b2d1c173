"""Takes the README's pictures from the real screens: `make pictures`."""

import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from e2e import chromium
from e2e.conftest import PHONE
from e2e.phone import Phone
from e2e.server import Server

FOLDER = Path(__file__).parent / "pictures"


def take(phone: Phone, name: str) -> None:
    phone.passes(300)
    phone.page.screenshot(path=FOLDER / f"{name}.png", scale="css")


def whole_slab(phone: Phone) -> None:
    """One slab, with a picture at the screens a newcomer wants to see."""
    phone.installs()
    phone.opens_place("Plan")
    phone.answered()
    phone.page.locator(".plan-answer").evaluate("(answer) => answer.scrollIntoView()")
    take(phone, "plan")
    phone.plans_and_starts()
    phone.sets_up()
    while not phone.facts_of("read"):
        phone.bursts()
    take(phone, "burst")
    phone.melts()
    phone.taps("Poured")
    phone.page.clock.fast_forward(3_000_000)
    take(phone, "cool")
    phone.cools()
    for _ in range(3):
        phone.taps()
    phone.is_at("score")
    take(phone, "score")
    for _ in range(2):
        phone.taps()
    phone.types("200")
    phone.types("0.1")
    phone.taps()
    phone.page.get_by_role("button", name="See the record").tap()
    phone.page.locator("svg").first.wait_for()
    take(phone, "record")


def main() -> None:
    FOLDER.mkdir(exist_ok=True)
    server = Server(Path(tempfile.mkdtemp()))
    server.start()
    try:
        with sync_playwright() as playwright:
            browser = playwright.chromium.launch(executable_path=chromium.find(), args=chromium.FLAGS)
            context = browser.new_context(base_url=server.url, **PHONE)
            whole_slab(Phone(context.new_page()))
            browser.close()
    finally:
        server.stop()


if __name__ == "__main__":
    main()
