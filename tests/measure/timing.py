"""Times jobs in turn with a baseline, so that a busy machine slows both alike."""

import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from statistics import median

Job = Callable[[], float]
"""Does its work once and returns how long it took (s)."""

LOOP_STEPS = 100_000
LOOP_CODE = """
def float_loop(steps):
    x = 1.0
    for _ in range(steps):
        x = x * 1.0000001 + 1e-9
    return x
"""
"""The fixed loop beside which engine calls are timed, for CPython and MicroPython alike."""


@dataclass(frozen=True)
class Compared:
    """Medians of a job and of its baseline (s), and the median of the ratios of neighbours."""

    measured_s: float
    beside_s: float
    ratio: float


def timed(work: Callable[[], object]) -> float:
    """How long some work takes in this process (s)."""
    started = time.perf_counter()
    work()
    return time.perf_counter() - started


def compared(jobs: Mapping[str, Job], baseline: Job, rounds: int) -> dict[str, Compared]:
    """Every job beside the baseline, `rounds` times after one round to warm up; by name."""
    pairs: dict[str, list[tuple[float, float]]] = {name: [] for name in jobs}
    for turn in range(rounds + 1):
        for name, job in jobs.items():
            pair = job(), baseline()
            if turn > 0:
                pairs[name].append(pair)
    return {name: of_pairs(several) for name, several in pairs.items()}


def of_pairs(pairs: list[tuple[float, float]]) -> Compared:
    """The comparison that several (job, baseline) pairs make."""
    return Compared(
        median(job_s for job_s, _ in pairs),
        median(base_s for _, base_s in pairs),
        median(job_s / base_s for job_s, base_s in pairs),
    )
