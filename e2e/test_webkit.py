"""The engine of iPhones, as Debian has it: a reload in a burst, its ring, and a start without a server."""

import time
from pathlib import Path

import pytest

from e2e import webkit
from e2e.server import Server

READY = "return document.body.innerText.includes('Ready to work without a network')"
AT = "return document.querySelector('main.bench')?.dataset.step === arguments[0]"
RINGS = "return document.querySelector('.ring')?.innerText"
CARAMEL = (
    """return [...document.querySelectorAll("label")].find((one) => one.innerText.trim() === "Caramel")?.htmlFor"""
)
# A second tap within 700 ms does not count.
BETWEEN_TAPS_S = 0.8


def taps(browser: webkit.Browser, words: str = "", at: str | None = None) -> None:
    """The big button, in real time; then the bench is at this step."""
    time.sleep(BETWEEN_TAPS_S)
    browser.presses("main.bench button.act", words)
    if at:
        browser.waits_for(AT, at)


def types(browser: webkit.Browser, keys: str, at: str) -> None:
    for key in keys:
        browser.presses(".keys button", "Decimal mark" if key == "." else key)
    taps(browser, at=at)


@pytest.mark.prove
def test_webkit_carries_a_batch_through_a_reload_a_ring_and_a_start_without_a_server(server: Server, tmp_path: Path):
    assert not webkit.missing(), f"run `python -m e2e.webkit`: {webkit.missing()}"
    with webkit.opened(tmp_path) as browser:
        browser.opens(server.url)
        browser.waits_for(READY, most_s=60)
        browser.presses("main a", "Plan a batch")
        browser.fills("#" + browser.waits_for(CARAMEL), "1.8")
        time.sleep(1)
        browser.presses("button", "Keep this plan and start")
        browser.waits_for(AT, "set_up")
        taps(browser, at="weigh")
        types(browser, "1.8", at="lot")
        types(browser, "117", at="burst")
        taps(browser, "Start")
        browser.waits_for("return document.querySelector('.number')?.innerText.includes('0:5')")
        browser.reloads()
        browser.waits_for(AT, "burst")
        assert "Turn" in browser.waits_for(RINGS, most_s=120)
        browser.presses(".ring")
        browser.waits_for(AT, "turn")
        batch = browser.runs("return location.href")
    server.stop()
    with webkit.opened(tmp_path) as browser:
        browser.opens(batch)
        browser.waits_for(AT, "turn")
