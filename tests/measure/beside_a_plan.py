"""What a tap at the bench waits while the desk's engine looks for a better plan of a day of six batches."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from e2e.server import Server

from . import browser
from .engine_calls import bench_calls
from .table import Row, time_row
from .timing import of_pairs
from .trade_calls import BETTER, trade_calls

TAP = "run.advise at a burst"
ROUNDS = 15
TARGET_S = 0.100
"""At 4×, from what a hand at the bench feels as at once; ours, no published source."""
# Two engines, as the phone has them; each answers one question at a time.
BOTH = """async ([file, tap, better, rounds]) => {
    const engine = async () => {
        const worker = new Worker(file, { type: "module" });
        const answer = () => new Promise((done) => { worker.onmessage = ({ data }) => done(data); });
        await answer();
        return ([name, text]) => {
            worker.postMessage({ id: 0, name, text });
            return answer().then(({ text }) => { if (!text?.startsWith('{"reply"')) throw new Error(text); });
        };
    };
    const [bench, desk] = [await engine(), await engine()];
    await bench(tap);
    await desk(better);
    const timed = async () => {
        const started = performance.now();
        await bench(tap);
        return performance.now() - started;
    };
    const pairs = [];
    for (let round = 0; round < rounds; round++) {
        const alone = await timed();
        let over = false;
        const improved = desk(better).then(() => { over = true; });
        const beside = await timed();
        if (!over) pairs.push([beside, alone]);
        await improved;
    }
    return pairs;
}"""


def rows() -> Iterator[Row]:
    """One row."""
    worker = next((Path(__file__).parents[2] / "pwa/dist/assets").glob("worker-*.js"))
    (tap,), (better,) = bench_calls()[TAP], trade_calls()[BETTER]
    with (
        TemporaryDirectory() as folder,
        Server(Path(folder)) as server,
        browser.installed(Path(folder), server) as page,
    ):
        pairs = page.evaluate(BOTH, [f"/assets/{worker.name}", tap, better, ROUNDS])
    found = of_pairs([(beside_ms / 1000.0, alone_ms / 1000.0) for beside_ms, alone_ms in pairs])
    what = f"phone at {browser.RATE}×: {TAP} while a day is planned better"
    yield time_row(what, found, "while nothing is", TARGET_S, browser.RATE)
