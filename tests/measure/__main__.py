"""`python -m tests.measure`: prints the table; the exit status says whether everything could be measured."""

import sys
import time

from . import api, cold_start, cpython, first_load, ingest, worker
from .table import Row, drawn

PARTS = (cpython, worker, api, ingest, first_load, cold_start)


def main() -> int:
    """0, or 1 when a part could not be measured."""
    rows: list[Row] = []
    failed = 0
    started = time.monotonic()
    for part in PARTS:
        name = part.__name__.rsplit(".", 1)[-1]
        print(f"measuring: {name} …", file=sys.stderr, flush=True)
        try:
            rows += part.rows()
        except Exception as why:  # the other parts are still worth measuring
            failed += 1
            rows.append(Row(name, "could not be measured", "", "", ""))
            print(f"{name}: {why!r}", file=sys.stderr, flush=True)
    print(drawn(rows))
    print("\nEvery time is a median, taken in turn with what stands beside it; compare the ratios, not the times.")
    print("Float loops: 100,000 steps of x = x·1.0000001 + 1e-9 in Python, 10,000,000 in the page's JavaScript.")
    for footnote in worker.footnotes:
        print(footnote)
    print(f"Took {time.monotonic() - started:.0f} s.")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
