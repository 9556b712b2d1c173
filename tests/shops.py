"""Simulated shops: the same oven, bowl, base and hands batch after batch, unknown to the planner.

The physics is that of `tests.kitchens` (melt) and of the fine grid of `tests.slabs` (cooling): nothing of the engine
moves this caramel. What a kitchen draws for a day (block, lumps, noise) is drawn anew for each batch; what belongs to
the shop (oven, bowl, caramel, person) is drawn once. Every batch is planned from what the batches before it measured
(learn.fold, learn.apply, slab.plan), led by melt.next_burst, written down as events, folded by run.replay and told by
learn.contribution, as on a phone.

Drawn beside that, all assumed, nobody's measurement:
- From batch to batch the oven differs by 4 % (mains, place in it), heat loss by 6 % (draughts), parchment by 15 %.
- Shop's heat loss 20 % around the model's (the engine's prior), parchment anywhere in the published 0.002 to
  0.010 m² K/W.
- Room 17–20.5 °C, from day to day up to 1 K more or less; a thermometer 0.2 K off, read to half a degree, tells the
  plan; while the slab cools the room is another 0.5 K off.
- One to three surface readings at 0.15–0.5 of the time to ready; 1 K cold with 2 K noise, as in the kitchen. The person
  comes at the early end of the planned range, presses, and again every ten minutes; "firm" is within 1 K (standard
  deviation) of the core's target, or of `ready_c`, where the shop calls something else ready.
- Every centre is good with the product's own chance, 0.92–0.99; a day shifts its logit by 0.3.
"""

import copy
import math
import random
from dataclasses import dataclass
from typing import Any

from amberbench.engine import catalogue
from amberbench.engine.physics import pot as physics_pot
from amberbench.engine.steps.melt import oven as heating
from tests import slabs
from tests.bench import Bench
from tests.kitchens import Kitchen, ask, planned

OVEN_SD, LOSS_SD, LOSS_DAY_SD, CONTACT_DAY_SD, ROOM_DRIFT_K = 0.04, 0.20, 0.06, 0.15, 0.5
BASES = ("aluminium_tray", "granite", "marble", "steel_sheet", "wood_board")
EMPTY = catalogue.call("learn.fold", {"batches": []})


@dataclass
class Batch:
    """What was planned and what happened; truths that the shop never sees beside what it told."""

    planned_w: float
    planned_sd: float
    raw_w: float
    power_w: float
    scorched: bool
    inside: bool
    first_burst: tuple[float, float, float]
    ready: tuple[float, float, float]
    ready_s: float
    ideal_s: float
    good: float
    bulk_c: float
    plan: dict[str, Any]
    run: dict[str, Any]
    contribution: dict[str, Any]


class Shop:
    """One shop; `batch()` runs the next one with what it has learnt so far."""

    def __init__(
        self, seed: Any, mass_kg: tuple[float, float] = (0.9, 1.3), cools: bool = True, ready_c: float | None = None
    ) -> None:
        self.rng = rng = random.Random(f"shop {seed}")
        self.mass_kg, self.cools, self.ready_c = mass_kg, cools, ready_c
        self.oven = Kitchen(rng, 1.0)
        self.oven_share = math.exp(rng.gauss(0.0, 0.20))
        self.load = rng.uniform(0.08, 0.25)
        self.loss_w_m2k, self.surface_m2 = rng.uniform(8.0, 16.0), rng.uniform(0.035, 0.060)
        self.room_c = rng.uniform(17.0, 20.5)
        self.loss = math.exp(rng.gauss(0.0, LOSS_SD))
        self.contact = math.exp(rng.uniform(math.log(0.002), math.log(0.010)))
        self.base, self.height_m = rng.choice(BASES), rng.uniform(0.008, 0.016)
        self.good = rng.uniform(0.92, 0.99)
        self.told: list[dict[str, Any]] = []

    def measured(self) -> dict[str, Any]:
        return catalogue.call("learn.fold", {"batches": self.told}) if self.told else EMPTY

    def kitchen(self, mass_kg: float) -> Kitchen:
        """The shop's oven, bowl and person on another day."""
        day = Kitchen(self.rng, mass_kg)
        for name in ("rated_w", "fade", "dead_s", "unevenness", "vessel_kg", "vessel_j_k", "heat_j_kgk", "cold_k"):
            setattr(day, name, getattr(self.oven, name))
        day.power_w = self.oven.rated_w * 0.60 * min(1.0, mass_kg) ** self.load * self.oven_share
        day.power_w *= math.exp(self.rng.gauss(0.0, OVEN_SD))
        day.loss_w_k = self.loss_w_m2k * self.surface_m2 * (mass_kg / 1.134) ** (2.0 / 3.0)
        day.room_c = self.room_c + self.rng.uniform(-1.0, 1.0)
        return day

    def request(self, day: Kitchen) -> dict[str, Any]:
        """What the person types."""
        return {
            "have": {"kg": round(day.mass_kg, 3)},
            "slab_height_m": self.height_m,
            "piece_length_m": 0.024,
            "piece_width_m": 0.024,
            "oven": {"rated_w": self.oven.rated_w, "turntable": self.oven.request["oven"]["turntable"]},
            "vessel": self.oven.request["vessel"],
            "base": self.base,
            "room_c": round(2.0 * (day.room_c + self.rng.gauss(0.0, 0.2))) / 2.0,
            "start_c": day.request["start_c"],
            "windows": {"low_c": day.request["window_low_c"], "high_c": day.request["window_high_c"]},
        }

    def batch(self, spoil: Any = None) -> Batch:
        """Runs one batch and keeps what it tells; `spoil(bench)` may falsify the log before it is folded."""
        day = self.kitchen(self.rng.uniform(*self.mass_kg))
        where = {"oven_id": "oven", "base_id": "base", "caramel_id": "caramel"}
        asked = {"measured": self.measured(), "request": self.request(day)}
        request = catalogue.call("learn.apply", asked | where)["request"]
        plan = where | {"kind": "slab", "name": "", "product_id": "squares", "lot": "1", "request": request}
        plan["reply"] = reply = catalogue.call("slab.plan", request)
        first = self._first_burst(day, reply["melt"]["bursts"][0])
        bench, truth = Bench(plan), _melted(day, reply["melt_request"])
        bench.does("weighed", 60, kg=day.mass_kg, lot="1")
        _write_melt(bench, truth["history"])
        bench.does("poured", 20, bulk_c=truth["belief_c"])
        ready_s = self._cool(bench, reply, day) if self.cools else 0.0
        good = self._count(bench, reply["cut"]["pieces"])
        bench.does("closed", 10)
        if spoil is not None:
            spoil(bench)
        told = {"batch_id": f"batch-{len(self.told)}", "plan": plan, "run": bench.run}
        bulk_c = day.bulk_c
        known = {"loss_factor": self.loss, "contact_m2k_w": self.contact}
        ideal_s = catalogue.call("cool.plan", reply["cool_request"] | known)["ready_s"] if self.cools else 0.0
        self.told.append(catalogue.call("learn.contribution", told)["contribution"])
        oven, cool = reply["melt_request"]["oven"], reply["cool"]
        planned_w, planned_sd = heating.power_prior(oven, reply["melt_request"]["mass_kg"])
        times = (cool["ready_low_s"], cool["ready_s"], cool["ready_high_s"])
        outcome = truth["outcome"]
        return Batch(
            planned_w, planned_sd, truth["raw_w"], truth["power_w"], outcome.scorched, outcome.inside, first, times,
            ready_s, ideal_s, good, bulk_c, plan, told["run"], self.told[-1],
        )  # fmt: skip

    def _first_burst(self, day: Kitchen, burst: dict[str, float]) -> tuple[float, float, float]:
        """(10 % point, truth, 90 % point) of the bulk after the plan's first burst and a stir."""
        twin = copy.deepcopy(day)
        twin.burst(burst["seconds_s"])
        twin.pass_time(40.0)
        return burst["low_c"], twin.bulk_c, burst["high_c"]

    def _cool(self, bench: Bench, reply: dict[str, Any], day: Kitchen) -> float:
        """Lets the slab cool on the fine grid, reads and presses it; returns when it was ready, in s."""
        rng, cool = self.rng, reply["cool"]
        room_c = day.room_c + rng.gauss(0.0, ROOM_DRIFT_K)
        typed = dict(reply["cool_request"], room_c=room_c, start_c=day.bulk_c)
        contact = self.contact * math.exp(rng.gauss(0.0, CONTACT_DAY_SD))
        loss = self.loss * math.exp(rng.gauss(0.0, LOSS_DAY_SD))
        slab = slabs.fine(typed, loss, contact, slab_cells=20)
        target_c = self.ready_c or cool["target_c"]
        ready_s, at = slab.ready_s(target_c, 6.0 * cool["ready_s"])
        poured_ms = bench.now_ms
        looks = [(rng.uniform(0.15, 0.5) * ready_s, "read") for _ in range(rng.randrange(1, 4))]
        for at_s, _ in sorted(looks):
            bench.now_ms = poured_ms + 1000.0 * at_s
            bench.does("slab_read", 0.0, surface_c=round(2.0 * (at(at_s)[1] - day.cold_k + rng.gauss(0, 2.0))) / 2.0)
        at_s = max([cool["ready_low_s"]] + [at_s for at_s, _ in looks])
        firm = False
        while not firm:
            firm = at(min(at_s, 6.0 * cool["ready_s"]))[0] + rng.gauss(0.0, 1.0) <= target_c
            bench.now_ms = poured_ms + 1000.0 * at_s
            bench.does("touched", 0.0, firm=firm)
            at_s += 600.0
        return ready_s

    def _count(self, bench: Bench, pieces: int) -> float:
        """Counts the good centres and weighs what stayed in the bowl; returns the share that was good."""
        rng = self.rng
        odds = self.good / (1.0 - self.good) * math.exp(rng.gauss(0.0, 0.3))
        good = sum(rng.random() < odds / (1.0 + odds) for _ in range(pieces))
        bench.does("counted", 600, pieces=good)
        return good / pieces


def _melted(day: Kitchen, request: dict[str, Any]) -> dict[str, Any]:
    """Leads a melt; what was written down, and the truth about it."""
    start_c, asked, replies = day.bulk_c, [], []
    day.request = request
    energy = {"j": 0.0, "s": 0.0}
    second = day._second

    def counted(power_w, seconds_s=1.0):
        if power_w > 0.0:
            energy["j"] += power_w * seconds_s
            energy["s"] += seconds_s
        second(power_w, seconds_s)

    day._second = counted

    def asks(wanted):
        asked.append(wanted["history"])
        replies.append(ask(wanted))
        return replies[-1]

    outcome = planned(day, asks)
    raw_w = energy["j"] / energy["s"]
    # The same melt in the engine's own heat capacity: power and capacity that are off together plan the same melt.
    pot = physics_pot.Pot(day.mass_kg, request["material"], request["vessel"], day.room_c)
    rise_k, middle_c = day.bulk_c - start_c, 0.5 * (day.bulk_c + start_c)
    heat_j = (day.mass_kg * day.heat_j_kgk * (1.0 + 0.0008 * (middle_c - 20.0)) + day.vessel_j_k) * rise_k
    power_w = raw_w * (pot.content(day.bulk_c) - pot.content(start_c)) / heat_j
    found = {"history": list(asked[-1]), "outcome": outcome, "raw_w": raw_w, "power_w": power_w}
    return found | {"belief_c": replies[-1]["bulk_c"]}


def _write_melt(bench: Bench, history: list[dict[str, Any]]) -> None:
    for what in history:
        if what["kind"] == "burst":
            bench.does("burst_started", 5, seconds_s=what["seconds_s"], level_percent=what["level_percent"])
            bench.waits(what["seconds_s"])
        elif what["kind"] == "stir":
            bench.does("stirred", 38, free=bool(what["free"]))
        elif what["kind"] == "spot":
            bench.does("spot_read", 8, surface_c=what["surface_c"])
        elif what["kind"] == "reading":
            bench.does("read", 8, surface_c=what["surface_c"])
        else:
            bench.does("rested", 5, seconds_s=what["seconds_s"])
            bench.waits(what["seconds_s"])


def slips(rng: random.Random) -> Any:
    """A day on which everything typed is wrong: readings 15–25 K off, a touch far too early, a count cut in half."""

    def spoil(bench: Bench) -> None:
        off_k = rng.choice((-1.0, 1.0)) * rng.uniform(15.0, 25.0)
        touches = [event for event in bench.events if event["kind"] == "touched"]
        for event in bench.events:
            if event["kind"] in ("read", "slab_read"):
                event["body"]["surface_c"] = min(149.0, max(1.0, event["body"]["surface_c"] + off_k))
            elif event["kind"] == "counted":
                event["body"]["pieces"] //= 2
            elif touches and event is touches[0]:
                event["body"]["firm"] = True

    return spoil
