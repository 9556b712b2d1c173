"""Engine calls under CPython, beside the fixed float loop in the same process."""

from collections.abc import Iterator
from typing import Any

from amberbench.engine import catalogue

from .engine_calls import Calls, bench_calls, desk_calls
from .table import Row, time_row
from .timing import LOOP_CODE, LOOP_STEPS, compared, timed

ROUNDS = 41


def rows() -> Iterator[Row]:
    """One row for each call."""
    names: dict[str, Any] = {}
    exec(LOOP_CODE, names)
    loop = names["float_loop"]
    all_calls = bench_calls() | desk_calls()
    jobs = {name: lambda calls=calls: timed(lambda: answered(calls)) for name, calls in all_calls.items()}
    for name, found in compared(jobs, lambda: timed(lambda: loop(LOOP_STEPS)), ROUNDS).items():
        yield time_row(f"CPython: {name}", found, "float loop")


def answered(calls: Calls) -> None:
    """Makes the calls; anything but a reply is an error, for a refusal would be timed as a fast answer."""
    for name, text in calls:
        answer = catalogue.call_text(name, text)
        if not answer.startswith('{"reply"'):
            raise RuntimeError(f"{name}: {answer[:200]}")
