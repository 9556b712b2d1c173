"""Ovens that a shop knows: two melts are written down, told and folded as on a phone, the third is planned from them.

Or one whose power into water they measured: a litre, ± 2 %; what the oven gives less than its plate says, 8 ± 11 %, is
part of the spread of `tests.kitchens`, the rest of it is how caramel takes up power (both assumed).

Beyond `tests.kitchens`: the oven is the same day after day but for 4 % of its power (mains, place in it) and, as the
bowl never stands where it stood, 7 % of what the hottest spot rises above the mean (standard deviations, assumed). Each
of the first two melts is of 1¼ or of 2½ lb.
"""

import math
import random
from typing import Any

from amberbench.engine import catalogue
from tests.bench import Bench, planned_slab
from tests.kitchens import POUND_KG, Kitchen, Outcome, ask, mixed, planned

POWER_DAY_SD, SPOT_DAY_SD = 0.04, 0.07
POWER_SD, PLATE_SD, PLATE_OVER, WATER_TEST_SD = 0.20, 0.11, 0.92, 0.02
BEFORE = 2
WRITTEN = {"burst": "burst_started", "spot": "spot_read", "stir": "stirred", "reading": "read", "rest": "rested"}


class KnownOven:
    """One oven in one shop, through its batches."""

    def __init__(self, seed: Any, index: int, draw: Any = mixed) -> None:
        self.first = draw(seed, index, 2.5 * POUND_KG)
        self.rng = random.Random(f"days {seed}/{index}")
        self.draw, self.named = draw, f"{seed}/{index}"
        self.told: list[dict[str, Any]] = []

    def kitchen(self, mass_kg: float, day: int) -> Kitchen:
        """The same oven, bowl and person on another day."""
        one, oven = self.draw(self.named, day, mass_kg), self.first
        for name in (
            "rated_w",
            "load",
            "fade",
            "dead_s",
            "vessel_kg",
            "vessel_j_k",
            "heat_j_kgk",
            "cold_k",
            "cycle_s",
            "lost_s",
        ):
            setattr(one, name, getattr(oven, name))
        one.loss_w_k = oven.loss_w_k * (mass_kg / oven.mass_kg) ** (2.0 / 3.0)
        one.power_w = oven.power_w * min(1.0, mass_kg) ** oven.load * math.exp(self.rng.gauss(0.0, POWER_DAY_SD))
        one.unevenness = 1.0 + (oven.unevenness - 1.0) * math.exp(self.rng.gauss(0.0, SPOT_DAY_SD))
        for name in ("step_s", "vessel"):
            if name in oven.request:
                one.request[name] = oven.request[name]
        one.request["oven"] = self._learnt(mass_kg, oven.request["oven"])
        return one

    def _learnt(self, mass_kg: float, oven: dict[str, Any]) -> dict[str, Any]:
        """What the next plan knows of the oven."""
        if not self.told:
            return oven
        measured = catalogue.call("learn.fold", {"batches": self.told})
        request = planned_slab()["request"] | {"have": {"kg": mass_kg}, "oven": oven}
        asked = {"measured": measured, "request": request, "oven_id": "oven"}
        return catalogue.call("learn.apply", asked)["request"]["oven"]

    def batch(self, mass_kg: float) -> Outcome:
        """Leads the next melt and keeps what it tells."""
        day, asked = self.kitchen(mass_kg, len(self.told)), []

        def asks(request: dict[str, Any]) -> dict[str, Any]:
            asked.append(request)
            return ask(request)

        outcome = planned(day, asks)
        plan = planned_slab() | {"oven_id": "oven"}
        # A bowl that nobody weighed is none in the log either.
        request = plan["reply"]["melt_request"] | {"vessel": None} | day.request
        plan["reply"] = plan["reply"] | {"melt_request": request}
        bench = Bench(plan)
        for what in asked[-1]["history"]:
            body = {name: value for name, value in what.items() if name != "kind"}
            bench.does(WRITTEN[what["kind"]], 8, **body)
            if what["kind"] in ("burst", "rest"):
                bench.waits(what["seconds_s"])
        bench.does("poured", 20, bulk_c=day.bulk_c)
        bench.does("closed", 10)
        told = {"batch_id": f"batch-{len(self.told)}", "plan": plan, "run": bench.run}
        self.told.append(catalogue.call("learn.contribution", told)["contribution"])
        return outcome


def third_melt(seed: Any, index: int, mass_kg: float, hard: bool = False) -> Kitchen:
    """The kitchen of an oven's third melt, after two that were told."""
    known = KnownOven(seed, index, lambda *where: mixed(*where, hard))
    for _ in range(BEFORE):
        known.batch(known.rng.choice((1.25, 2.5)) * POUND_KG)
    return known.kitchen(mass_kg, BEFORE)


def water_tested(seed: Any, index: int, mass_kg: float, hard: bool = False) -> Kitchen:
    """The same kitchens as `mixed`, with an oven whose power into water was measured."""
    kitchen = mixed(seed, index, mass_kg, hard)
    off = math.log(kitchen.power_w / (0.60 * kitchen.rated_w * min(1.0, mass_kg) ** kitchen.load))
    own = (PLATE_SD / POWER_SD) ** 2
    given = own * off + kitchen.apart.gauss(0.0, PLATE_SD * math.sqrt(1.0 - own))
    water_w = kitchen.rated_w * PLATE_OVER * math.exp(given + kitchen.apart.gauss(0.0, WATER_TEST_SD))
    kitchen.request["oven"] |= {"rated_w": round(water_w), "measured_in": "water"}
    return kitchen
