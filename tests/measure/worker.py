"""The same engine calls in the phone's engine worker in Chromium, beside the same loop in the same MicroPython."""

import json
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import Page, Worker

from e2e.phone import Phone
from e2e.server import Server

from . import browser
from .engine_calls import TARGETS_S, Calls, engine_calls
from .table import Row, time_row
from .timing import LOOP_CODE, LOOP_STEPS, compared

ROUNDS = 9
SLOWING_ROUNDS = 9
# The worker keeps its MicroPython under this name on `self` (pwa/src/engine/worker.ts).
READY = "async () => { while (!self.amberbenchPython) await new Promise((done) => setTimeout(done, 20)); }"
RUN = "(code) => self.amberbenchPython.runPython(code)"
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
    with TemporaryDirectory() as folder:
        server = Server(Path(folder))
        server.start()
        try:
            with browser.opened(Path(folder) / "profile", server.url) as context:
                page = context.pages[0]
                Phone(page, fake_clock=False).installs()
                yield from _rows(page, page.workers[0])
        finally:
            server.stop()


def _rows(page: Page, engine: Worker) -> Iterator[Row]:
    engine.evaluate(READY)
    engine.evaluate(RUN, LOOP_CODE)
    slower = _slower(page, engine)
    jobs = {name: lambda calls=calls: _call(engine, calls) for name, calls in engine_calls().items()}
    for name, found in compared(jobs, lambda: _loop(engine), ROUNDS).items():
        yield time_row(f"phone at {browser.RATE}×: {name}", found, "float loop", TARGETS_S.get(name), slower)


def _loop(engine: Worker) -> float:
    return float(engine.evaluate(TIME_LOOP, LOOP_STEPS)) / 1000.0


def _call(engine: Worker, calls: Calls) -> float:
    return float(engine.evaluate(TIME_CALLS, calls)) / 1000.0


def _slower(page: Page, engine: Worker) -> float:
    """By what times in the worker must be multiplied, once the browser was asked to slow it.

    1 where the browser does slow it (and leaves it slowed); RATE where it does not, with a footnote of what it did.
    """
    session = browser.slow_page(page, 1)

    def slowed_by_the_page() -> float:
        session.send("Emulation.setCPUThrottlingRate", {"rate": browser.RATE})
        took = _loop(engine)
        session.send("Emulation.setCPUThrottlingRate", {"rate": 1})
        return took

    by_page = compared({"loop": slowed_by_the_page}, lambda: _loop(engine), SLOWING_ROUNDS)["loop"].ratio
    before = [_loop(engine) for _ in range(SLOWING_ROUNDS)]
    answers = browser.ask_workers(page, "Emulation.setCPUThrottlingRate", {"rate": browser.RATE})
    after = [_loop(engine) for _ in range(SLOWING_ROUNDS)]
    by_worker = min(after) / min(before)
    if by_worker > browser.RATE / 2:
        footnotes.append(f"The browser slowed the engine's worker {by_worker:.1f}× when asked for {browser.RATE}×.")
        return 1.0
    said = {json.loads(answer).get("error", {}).get("message", "nothing") for answer in answers} or {"nothing"}
    footnotes.append(
        f"phone at {browser.RATE}×: times taken unslowed in the worker and multiplied by {browser.RATE}, loop and call "
        f"alike. Asked to slow the page {browser.RATE}×, the browser slowed the worker's loop {by_page:.2f}×; asked on "
        f"the worker's own session it said: {'; '.join(sorted(said))} (loop then {by_worker:.2f}×)."
    )
    return float(browser.RATE)
