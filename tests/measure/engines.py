"""The engine in a fresh worker of each browser that is installed: its start, and one plan of a slab."""

from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from typing import Any

from playwright.sync_api import sync_playwright

from e2e import chromium, firefox, webkit
from e2e.server import Server

from .engine_calls import desk_calls
from .table import Row, ms
from .timing import LOOP_STEPS

ROUNDS = 5
# As `pwa/src/engine/worker.ts` speaks. The first plan also fetches the desk's part of the engine: it is not counted.
FRESH_WORKER = """async (file, name, text, rounds) => {
    const times = [];
    for (let round = 0; round < rounds; round++) {
        const started = performance.now();
        const engine = new Worker(file, { type: "module" });
        const answer = () => new Promise((done) => { engine.onmessage = ({ data }) => done(data); });
        const first = await answer();
        if (!first.ready) throw new Error(JSON.stringify(first));
        const ready = performance.now();
        for (const id of [1, 2]) {
            const asked = performance.now();
            engine.postMessage({ id, name, text });
            const { text: reply } = await answer();
            if (!reply?.startsWith('{"reply"')) throw new Error(String(reply).slice(0, 200));
            if (id === 2) times.push([ready - started, performance.now() - asked]);
        }
        engine.terminate();
    }
    const looped = performance.now();
    let x = 1.0;
    for (let i = 0; i < LOOP; i++) x = x * 1.0000001 + 1e-9;
    return [times, performance.now() - looped, x];
}"""
LOOPS = 100 * LOOP_STEPS
Times = tuple[list[tuple[float, float]], float, float]
Timed = Callable[[str, list[Any], str], Times]


def rows() -> Iterator[Row]:
    worker = next((Path(__file__).parents[2] / "pwa/dist/assets").glob("worker-*.js"))
    (call,) = desk_calls()["slab.plan"]
    script = FRESH_WORKER.replace("LOOP", str(LOOPS))
    timed: dict[str, Timed] = {"Chromium": _chromium, "Firefox": _firefox, "WebKitGTK": _webkit}
    installed = {"Chromium": chromium.find(), "Firefox": firefox.find(), "WebKitGTK": not webkit.missing()}
    with TemporaryDirectory() as folder, Server(Path(folder)) as server:
        for browser, run in timed.items():
            if not installed[browser]:
                yield Row(f"{browser}: engine start, slab.plan", "not installed", "", "")
                continue
            times, loop_ms, _ = run(server.url, [f"/assets/{worker.name}", *call, ROUNDS], script)
            for what, all_ms in zip(("engine start", "slab.plan"), zip(*times, strict=True), strict=True):
                took_s, loop_s = median(all_ms) / 1000.0, loop_ms / 1000.0
                yield Row(f"{browser}: {what}", ms(took_s), f"JS float loop {ms(loop_s)}", f"{took_s / loop_s:.2f}")


def _playwright(kind: str, path: str | None, launch: dict[str, Any], url: str, given: list[Any], script: str) -> Times:
    with sync_playwright() as playwright:
        browser = getattr(playwright, kind).launch(executable_path=path, **launch)
        page = browser.new_page()
        page.goto(url)
        found: Times = page.evaluate(f"(given) => ({script})(...given)", given)
        browser.close()
    return found


def _chromium(url: str, given: list[Any], script: str) -> Times:
    return _playwright("chromium", chromium.find(), chromium.LAUNCH, url, given, script)


def _firefox(url: str, given: list[Any], script: str) -> Times:
    return _playwright("firefox", firefox.find(), firefox.LAUNCH, url, given, script)


def _webkit(url: str, given: list[Any], script: str) -> Times:
    with TemporaryDirectory() as folder, webkit.opened(Path(folder)) as browser:
        browser.opens(url)
        found: Times = browser.asks(
            "/execute/async",
            {
                "script": f"""
            const done = arguments[1];
            ({script})(...arguments[0]).then(done, (error) => done([String(error), 0, 0]));""",
                "args": [given],
            },
        )
    return found
