"""The longest task of a slowed page while a list of 2,000 orders is scrolled, beside the float loop in the page.

Both are the main thread's own time as the browser's trace has it: a busy machine makes neither longer.
"""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from playwright.sync_api import CDPSession, Page

from e2e.phone import Phone
from e2e.server import Server
from e2e.test_lists import orders

from . import browser
from .table import Row, time_row
from .timing import compared

ORDERS = 2_000
ROUNDS = 5
TARGET_S = 0.050
"""What lasts longer is a long task (W3C, Long Tasks API): it holds up a tap so that one sees it."""

SCROLL = """async (steps) => {
    const list = document.querySelector("main");
    list.scrollTo(0, 0);
    for (let step = 0; step < steps; step++) {
        list.scrollBy(0, 600);
        await new Promise((done) => setTimeout(done, 50));
    }
}"""
STEPS = 100
TRACED = {"includedCategories": ["disabled-by-default-devtools.timeline", "__metadata"], "excludedCategories": ["*"]}


def rows() -> Iterator[Row]:
    """One row."""
    with (
        TemporaryDirectory() as folder,
        Server(Path(folder)) as server,
        browser.opened(Path(folder) / "profile", server.url) as context,
    ):
        server.asks("/api/orders", {"file": orders(ORDERS)})
        page = context.pages[0]
        Phone(page, fake_clock=False).installs()
        lists_all(page)
        session = browser.slow_page(page)
        jobs = {"scroll": lambda: longest_s(page, session, SCROLL, STEPS)}
        found = compared(jobs, lambda: longest_s(page, session, browser.TIME_LOOP_JS), ROUNDS)["scroll"]
        drawn = page.locator(".batch-card").count()
    if drawn < 3 * STEPS:
        raise RuntimeError(f"only {drawn} cards were drawn")
    what = f"phone at {browser.RATE}×: longest task, {ORDERS:,} orders scrolled"
    yield time_row(what, found, "JS float loop", TARGET_S)


def lists_all(page: Page) -> None:
    """Opens the list and waits until it has the order that comes last."""
    Phone(page, fake_clock=False).opens_place("Orders")
    seek = page.get_by_label("Search orders")
    seek.fill(f"Customer {ORDERS - 1}")
    page.get_by_role("link", name=f"Customer {ORDERS - 1} ").wait_for(timeout=60_000)
    seek.fill("")


def longest_s(page: Page, session: CDPSession, script: str, given: Any = None) -> float:
    """The longest task of the page's main thread while a script runs in it (s of that thread's own time)."""
    events: list[dict[str, Any]] = []
    complete: list[object] = []
    session.on("Tracing.dataCollected", take := lambda told: events.extend(told["value"]))
    session.once("Tracing.tracingComplete", lambda told: complete.append(told))
    session.send("Tracing.start", {"traceConfig": TRACED, "transferMode": "ReportEvents"})
    page.evaluate(script, given)
    session.send("Tracing.end")
    while not complete:
        page.wait_for_timeout(50)
    session.remove_listener("Tracing.dataCollected", take)
    main = {(one["pid"], one["tid"]) for one in events if one["args"].get("name") == "CrRendererMain"}
    tasks = [one.get("tdur", 0) for one in events if one["name"] == "RunTask" and (one["pid"], one["tid"]) in main]
    return float(max(tasks)) / 1e6
