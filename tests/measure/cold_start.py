"""Without a network, with a batch running: from a dead browser to the bench on a slow phone."""

from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Page

from e2e.phone import Phone
from e2e.server import Server

from . import browser
from .table import Row, time_row
from .timing import compared

STARTS = 5
TARGET_S = 1.5
PATIENCE_MS = 30_000
# Notes when the bench has been painted: the frame in which it is drawn is over when the timer after it fires.
NOTE_BENCH = """
    new MutationObserver((_, observer) => {
        const bench = document.querySelector("main.bench[data-step]");
        if (!bench || bench.getBoundingClientRect().height === 0) return;
        observer.disconnect();
        requestAnimationFrame(() => setTimeout(() => { globalThis.benchShownMs = performance.now(); }));
    }).observe(document, { childList: true, subtree: true, attributes: true });
"""
SHOWN_MS = "() => globalThis.benchShownMs"


class Starts:
    """One profile with a running batch, opened again and again by a fresh browser."""

    def __init__(self, stack: ExitStack, profile: Path, url: str) -> None:
        self.profile, self.url = profile, url
        self.open = stack.enter_context(ExitStack())
        self.page: Page | None = None

    def begins_a_batch(self) -> str:
        """Plans a slab and works up to the first burst; the path of its bench."""
        with browser.opened(self.profile, self.url) as context:
            phone = Phone(context.pages[0], fake_clock=False)
            phone.installs()
            batch_id = phone.plans_and_starts()
            phone.sets_up()
        return f"/bench/{batch_id}"

    def start(self, path: str) -> float:
        """Opens the bench in a fresh browser without a network; seconds from the navigation's start."""
        self.open.close()
        context = self.open.enter_context(browser.opened(self.profile, self.url))
        context.set_offline(True)
        self.page = context.pages[0]
        self.page.add_init_script(NOTE_BENCH)
        browser.slow_page(self.page)
        self.page.goto(path, wait_until="commit", timeout=PATIENCE_MS)
        # Seldom asked: every question costs the slowed page time.
        shown = self.page.wait_for_function(SHOWN_MS, timeout=PATIENCE_MS, polling=500)
        return float(shown.json_value()) / 1000.0

    def loop(self) -> float:
        """The float loop in the page that was opened last, which is as slow (s)."""
        assert self.page is not None
        return float(self.page.evaluate(browser.TIME_LOOP_JS)) / 1000.0


def rows() -> Iterator[Row]:
    """One row."""
    with TemporaryDirectory() as folder, Server(Path(folder)) as server, ExitStack() as stack:
        starts = Starts(stack, Path(folder) / "profile", server.url)
        path = starts.begins_a_batch()
        found = compared({"start": lambda: starts.start(path)}, starts.loop, STARTS)["start"]
    what = f"phone at {browser.RATE}×: cold start to the bench"
    yield time_row(what, found, "JS float loop", TARGET_S)
