"""The measure of the bench of clusters: funnels, rooms and hands that follow no plan, led by the prompts alone."""

import random
from collections import Counter

import pytest

from tests.cluster_simulation import LayingBench
from tests.workers import SimulatedWorker

SAMPLE, LONG = 20, 500


class Shift:
    """Many benches; those of hands that ignored a prompt are counted apart."""

    def __init__(self, seed: str, number: int) -> None:
        self.misfits: list[str] = []
        self.below = self.deposits = self.below_benches = self.benches = 0
        self.fills = self.planned_fills = 0
        self.seconds: dict[bool, Counter[str]] = {False: Counter(), True: Counter()}
        for index in range(number):
            self._counts(SimulatedWorker(LayingBench(random.Random(f"{seed}/{index}"))).works())

    def _counts(self, bench: LayingBench) -> None:
        self.misfits += [one["why"] for one in bench.run["ignored"]]
        if bench.request["second_kg"]:
            self.seconds[bench.ignores].update(bench.fits(one) for one in bench.deposits)
        if bench.ignores:
            return
        self.fills += bench.fills
        self.planned_fills += bench.reply["fills"]
        low_c, mouths_c = bench.request["window_low_c"], bench.mouths_c
        below = sum(temp_c < low_c for temp_c in mouths_c)
        self.benches += 1
        self.deposits += len(mouths_c)
        self.below += below
        self.below_benches += below > 0

    @property
    def in_time(self) -> float:
        """Of the second deposits that were laid; one that never came had no caramel left."""
        told = self.seconds[False]
        return told["in time"] / (told["in time"] + told["soon"] + told["cold"])

    @property
    def below_share(self) -> float:
        return self.below / self.deposits

    def __str__(self) -> str:
        told, ignored = self.seconds[False], self.seconds[True]
        return (
            f"below the window {self.below} of {self.deposits} deposits, on {self.below_benches} of {self.benches} "
            f"benches; fills {self.fills}, planned {self.planned_fills}; second ones in time "
            f"{100 * self.in_time:.2f} %: {dict(told)}; ignoring: {dict(ignored)}"
        )


@pytest.fixture(scope="module")
def shift() -> Shift:
    return Shift("shift", SAMPLE)


def test_every_step_that_was_prompted_was_taken(shift: Shift):
    assert shift.misfits == []


def test_hardly_a_deposit_is_laid_below_the_window(shift: Shift):
    assert shift.deposits > 1500
    assert shift.below_share < 0.01


def test_second_deposits_land_between_tacky_and_cold(shift: Shift):
    assert sum(shift.seconds[False].values()) > 700
    assert shift.in_time >= 0.96


def test_the_plan_counts_the_fills_that_the_bench_then_takes(shift: Shift):
    assert 0.75 <= shift.fills / shift.planned_fills <= 1.25


@pytest.mark.prove
@pytest.mark.parametrize("seed", ["a", "b"])
def test_five_hundred_benches_reach_the_targets(seed: str):
    """Below the window: none but what a reading of 2 K or a loss of 20 % hides beyond the 3.4 deviations that the clock
    of a fill allows for: 2 of 91,619 on one bench of seed a, 2 of 92,589 on one of seed b."""
    shift = Shift(seed, LONG)
    print(f"\nseed {seed}  {shift}")
    assert shift.misfits == []
    assert shift.below_share < 0.0001
    assert shift.in_time >= 0.98
    assert 0.9 <= shift.fills / shift.planned_fills <= 1.1
