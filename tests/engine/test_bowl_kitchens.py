"""Many bowls of chocolate, rooms and hands, none of which cools as the model says: the prompts come in time."""

import math
import random
from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.products.chocolate import plan
from amberbench.engine.steps.temper import plan as temper
from tests.bench import Bench, planned_bowl

BOWLS = 60
READ_K = 0.2  # scatter of a probe; assumed
PACE_SD = 0.35  # of the logarithm of how much faster a bowl cools than the model says; assumed
SIGMA = 5.670374419e-8  # W/(m² K⁴), CODATA


class Bowl:
    """A real bowl: half a ball of chocolate that loses heat by still air (McAdams) and radiation, at its own pace.

    1.59 kJ/(kg K) by Beckett 2009; 2 % of the latent heat per kelvin is assumed, as in the engine.
    """

    def __init__(self, rng: random.Random) -> None:
        self.mass_kg = rng.uniform(0.9, 4.0)
        self.bowl_kg = rng.uniform(0.3, 1.5)
        self.room_c = rng.uniform(17.0, 24.0)
        self.pace = math.exp(rng.gauss(0.0, PACE_SD))
        self.temp_c = 31.8

    def cools(self, seconds_s: float) -> None:
        radius_m = (1.5 * self.mass_kg / 1300.0 / math.pi) ** (1 / 3)
        joule_k = self.mass_kg * (1590.0 + 0.02 * 46000.0) + 0.6 * 800.0 * self.bowl_kg
        for _ in range(int(seconds_s // 5)):
            over_k = self.temp_c - self.room_c
            air_w_m2 = 1.32 * (over_k / (2 * radius_m)) ** 0.25 * over_k
            glow_w_m2 = 0.95 * SIGMA * ((self.temp_c + 273.15) ** 4 - (self.room_c + 273.15) ** 4)
            self.temp_c -= 5.0 * self.pace * 3 * math.pi * radius_m**2 * (air_w_m2 + glow_w_m2) / joule_k


def in_use(bowl: Bowl) -> Bench:
    request: dict[str, Any] = {"mass_kg": bowl.mass_kg, "room_c": bowl.room_c, "bowl": {"mass_kg": bowl.bowl_kg}}
    reply = catalogue.call("chocolate.plan", request)
    bench = Bench({"kind": "chocolate", "name": "Bowl", "request": request, "reply": reply})
    bench.does("weighed", kg=reply["melt_kg"])
    bench.does("seeded", kg=reply["seed_kg"])
    bench.does("bowl_read", bowl_c=bowl.temp_c)
    bench.does("strip_tested", good=True)
    assert bench.advice["step"] == "use"
    return bench


def keeps(bowl: Bowl, rng: random.Random, rings: int = 6) -> list[tuple[bool, float]]:
    """For each ring: whether the bowl was still in its range, and how much of its time was left unused (s)."""
    bench, told = in_use(bowl), []
    for _ in range(rings):
        bench.does("bowl_read", bowl_c=round(bowl.temp_c + rng.gauss(0.0, READ_K), 1))
        if bench.advice["step"] == "temper_check":
            bench.does("strip_tested", good=True)
        if bench.advice["step"] != "use" or bench.advice["number"] is None:
            bowl.temp_c = 31.8  # warmed or stirred as the prompt says, and read again
            continue
        wait_s = (bench.advice["number"]["value"] - bench.now_ms) / 1000.0
        bench.waits(wait_s)
        bowl.cools(wait_s)
        told.append((bowl.temp_c >= 31.0, wait_s))
        bench.does("bowl_read", bowl_c=round(bowl.temp_c + rng.gauss(0.0, READ_K), 1))
        bench.does("bowl_warmed")
        bowl.temp_c = rng.uniform(31.6, 32.0)
    return told


def test_bowls_are_still_in_temper_when_their_clock_rings():
    rng = random.Random("bowls")
    told = [one for _ in range(BOWLS) for one in keeps(Bowl(rng), rng)]
    assert len(told) > 3 * BOWLS
    good = sum(one for one, _ in told) / len(told)
    # The clock rings at the early end of its range, the 10 % point.
    assert good > 0.85, good
    assert sum(wait_s for _, wait_s in told) / len(told) > 3 * 60


def test_readings_of_many_bowls_close_in_on_the_true_pace():
    """A bowl that cools 1.5 times as fast as the model says, read after eight minutes to a tenth."""
    request = planned_bowl()["reply"]["bowl_request"]
    faster, sd = 0.0, plan.first_faster_sd(request)
    for _ in range(12):
        took_s = 480.0
        now_c, passed_s = 31.9, 0.0
        while passed_s < took_s:
            now_c -= 1.5 * 10.0 * plan._cooling_rate(*temper.bowl_of(request), now_c)
            passed_s += 10.0
        faster, sd = plan.learn_cooling(request, 31.9, round(now_c, 1), took_s, faster, sd)
    assert faster == pytest.approx(0.405, abs=0.15)
    assert sd < 0.3
