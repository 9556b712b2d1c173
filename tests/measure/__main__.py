"""`python -m tests.measure [PART …]`: prints the table or some parts of it; fails when one could not be measured."""

import sys
import time

from . import (
    api,
    beside_a_plan,
    big_log,
    browser,
    cold_start,
    cpython,
    engine_start,
    engines,
    first_load,
    ingest,
    load,
    long_list,
    worker,
)
from .table import Row, drawn
from .timing import LOOP_STEPS

PARTS = {
    part.__name__.rsplit(".", 1)[-1]: part
    for part in (
        cpython,
        engine_start,
        engines,
        worker,
        beside_a_plan,
        api,
        ingest,
        load,
        big_log,
        first_load,
        cold_start,
        long_list,
    )
}

NOTES = (
    "Times are medians, each taken in turn with what stands beside it; between runs compare the ratios, not the times.",
    f"float loop: {LOOP_STEPS:,} steps of x = x * 1.0000001 + 1e-9, in the same Python, in the same process or worker.",
    f"JS float loop: {browser.LOOP_STEPS_JS:,} such steps in the page, slowed like the page.",
    f"cold start: dead browser, no network; the page is slowed {browser.RATE}×, its workers and the disk are not.",
)


def main(names: list[str]) -> int:
    """0, or 1 when a part could not be measured. Without names of parts, all of them."""
    rows: list[Row] = []
    failed = 0
    started = time.monotonic()
    for name in names or PARTS:
        print(f"measuring: {name} …", file=sys.stderr, flush=True)
        try:
            rows += PARTS[name].rows()
        except Exception as why:  # the other parts are still worth measuring
            failed += 1
            rows.append(Row(name, "could not be measured", "", "", ""))
            print(f"{name}: {why!r}", file=sys.stderr, flush=True)
    print(drawn(rows))
    print("\n".join(("", *NOTES, *worker.footnotes, f"Took {time.monotonic() - started:.0f} s.")))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
