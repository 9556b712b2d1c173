"""The same engine calls in the phone's engine worker in Chromium, beside the same loop in the same MicroPython."""

import json
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Page, Worker

from e2e.server import Server

from . import browser
from .engine_calls import TARGETS_S, Calls, bench_calls, desk_calls
from .table import Row, time_row
from .timing import LOOP_CODE, LOOP_STEPS, compared
from .trade_calls import TARGETS_S as TRADE_TARGETS_S
from .trade_calls import trade_calls

ROUNDS = 25
SLOWING_ROUNDS = 15
# The worker keeps its MicroPython under this name on `self` (pwa/src/engine/worker.ts).
READY = "async () => { while (!self.amberbenchPython) await new Promise((done) => setTimeout(done, 20)); }"
RUN = "(code) => self.amberbenchPython.runPython(code)"
# As the page asks: what the bench does not need is fetched when a function of it is first asked for.
ASK_ONCE = "([name, text]) => self.onmessage({ data: { id: 0, name, text } })"
TIME_LOOP = """(steps) => {
    const loop = self.amberbenchPython.globals.get("float_loop");
    const started = performance.now();
    loop(steps);
    return performance.now() - started;
}"""
TIME_CALLS = """(calls) => {
    const callText = self.amberbenchPython.globals.get("call_text");
    const started = performance.now();
    const answers = calls.map(([name, text]) => callText(name, text));
    const took = performance.now() - started;
    const bad = answers.find((answer) => !answer.startsWith('{"reply"'));
    if (bad) throw new Error(bad.slice(0, 200));
    return took;
}"""

footnotes: list[str] = []


def rows() -> Iterator[Row]:
    """One row for each call, at the phone's speed."""
    with (
        TemporaryDirectory() as folder,
        Server(Path(folder)) as server,
        browser.installed(Path(folder), server) as page,
    ):
        yield from _rows(page)


def _rows(page: Page) -> Iterator[Row]:
    footnotes.append(_what_slows(page))
    # A worker for each lane, as on the phone: desk plans do not fill the heap of the bench.
    for calls in (bench_calls(), desk_calls(), trade_calls()):
        yield from _lane(_fresh_worker(page), calls)


def _lane(engine: Worker, calls: dict[str, Calls]) -> Iterator[Row]:
    for texts in calls.values():
        engine.evaluate(ASK_ONCE, texts[0])
    jobs = {name: lambda texts=texts: _call(engine, texts) for name, texts in calls.items()}
    for name, found in compared(jobs, lambda: _loop(engine), ROUNDS).items():
        what = f"phone at {browser.RATE}×: {name}"
        yield time_row(what, found, "float loop", (TARGETS_S | TRADE_TARGETS_S).get(name), browser.RATE)


def _fresh_worker(page: Page) -> Worker:
    with page.expect_worker() as started:
        page.reload()
    engine = started.value
    engine.evaluate(READY)
    engine.evaluate(RUN, LOOP_CODE)
    return engine


def _loop(engine: Worker) -> float:
    return float(engine.evaluate(TIME_LOOP, LOOP_STEPS)) / 1000.0


def _call(engine: Worker, calls: Calls) -> float:
    return float(engine.evaluate(TIME_CALLS, calls)) / 1000.0


def _what_slows(page: Page) -> str:
    """Whether this browser can slow a worker, tried on one that is not measured afterwards; as a footnote."""
    engine = _fresh_worker(page)
    session = browser.slow_page(page, 1)

    def slowed_by_the_page() -> float:
        session.send(browser.SLOW, {"rate": browser.RATE})
        took = _loop(engine)
        session.send(browser.SLOW, {"rate": 1})
        return took

    by_page = compared({"loop": slowed_by_the_page}, lambda: _loop(engine), SLOWING_ROUNDS)["loop"].ratio
    before_s = min(_loop(engine) for _ in range(SLOWING_ROUNDS))
    answers = browser.ask_workers(page, browser.SLOW, {"rate": browser.RATE})
    by_worker = min(_loop(engine) for _ in range(SLOWING_ROUNDS)) / before_s
    said = {json.loads(answer).get("error", {}).get("message", "done") for answer in answers} or {"no answer"}
    return (
        f"phone at {browser.RATE}×, engine: loop and call are timed unslowed in the worker and multiplied by "
        f"{browser.RATE}.\n  Tried in this run: {browser.SLOW} {browser.RATE} on the page made the worker's loop "
        f"{by_page:.2f}× as long;\n  on the worker's own session {by_worker:.2f}× ({'; '.join(sorted(said))})."
    )
