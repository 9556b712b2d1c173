"""Simulated benches of clusters: a bowl, a funnel, trays and a hand that follow no plan, led by the prompts alone.

Own physics for bowl (`tests.kitchens`) and funnel (shells of an emptying cone, explicit steps). First deposits cool as
`clusters.Tray` says, which `tests/reference` holds to fine grids, at losses, rooms and caramels that are not the
plan's. The tool sees what a hand tells it: taps, "stirs freely?", tacky or not yet, infrared readings.

What is drawn, and why (where nothing else is said: assumed, no published source):
- Order: 0.7–3 kg of caramel, deposits of 7–16 g, three of four with a second deposit of 3–8 g; counted pieces under
  half of them; trays of 0.30–0.55 by 0.25–0.38 m; 14–30 deposits a minute (15–30 from memory).
- Window: 71–82 °C as a shop has it, one in six 65–77 °C (both common practice); or low end 64–71 and 8–12 K wide; one
  in six 71–77 °C.
- Funnel 0.5–1.5 l, three quarters full (common practice); loses 10 W/(m² K) times a lognormal of 20 %; caramel of
  1340–1430 kg/m³ and 0.28–0.34 W/(m K). What runs out has the mean temperature.
- Oven, bowl, lumps and readings of the bowl as in `tests.kitchens`; readings of the funnel scatter by 2 K.
- Room as typed ± 1.5 K. Losses of a tray times a lognormal of 15 %; tacky and cold points ± 1 K together.
- Worker: quicker or slower than planned by 12 %, 4 % from tray to tray; 2–6 s until a tap; 15–30 s for a fill; a
  minute at most between two glances where nothing rings. One in three reads the funnel once a fill.
- Some 7 % of hands ignore what rings now and then, for two to eight minutes; they are counted apart.
"""

import math
import random
from dataclasses import dataclass, field
from typing import Any

from amberbench.engine import catalogue
from amberbench.engine.batch import advice as advise
from amberbench.engine.batch import run
from amberbench.engine.core.problems import Problem
from amberbench.engine.physics import materials
from amberbench.engine.products.cluster import tray_cooling as clusters
from tests.bench import NINE_OCLOCK_MS
from tests.kitchens import Kitchen

SHELLS = 6
MOST_ACTIONS = 1200  # 2.8 kg by fills that last half a minute takes 915
IGNORING = 0.07


class Bowl(Kitchen):
    """A kitchen whose bowl is emptied into a funnel and gets back what is left there."""

    def __init__(self, rng: random.Random, mass_kg: float, bench: "LayingBench") -> None:
        self.bench = bench
        super().__init__(rng, mass_kg)

    def holds(self, mass_kg: float) -> None:
        before_kg, self.mass_kg = self.mass_kg, max(1e-3, mass_kg)
        self.power_w *= (min(1.0, self.mass_kg) / min(1.0, before_kg)) ** self.load
        self.loss_w_k *= (self.mass_kg / before_kg) ** (2.0 / 3.0)

    def gets(self, kg: float, temp_c: float) -> None:
        """Caramel comes back out of the funnel."""
        own_j_k = self.mass_kg * self.heat_j_kgk + self.vessel_j_k
        self.bulk_c += kg * self.heat_j_kgk / (own_j_k + kg * self.heat_j_kgk) * (temp_c - self.bulk_c)
        self.holds(self.mass_kg + kg)

    def pass_time(self, seconds_s: float) -> None:
        super().pass_time(seconds_s)
        self.bench.goes_on(seconds_s)

    def burst(self, seconds_s: float) -> None:
        super().burst(seconds_s)
        self.bench.goes_on(seconds_s)


class Funnel:
    """A cone of caramel in shells of one mass each, that cools from outside and empties in shape."""

    def __init__(self, rng: random.Random, h_w_m2k: float, heat_j_kgk: float) -> None:
        self.h_w_m2k, self.heat_j_kgk = h_w_m2k * math.exp(rng.gauss(0.0, 0.20)), heat_j_kgk * 1.045
        self.density, self.k = rng.uniform(1340.0, 1430.0), rng.uniform(0.28, 0.34)
        self.kg, self.shells_c = 0.0, [0.0] * SHELLS

    @property
    def mean_c(self) -> float:
        return sum(self.shells_c) / SHELLS

    def gets(self, kg: float, temp_c: float) -> None:
        """Poured on, it mixes with what was there."""
        mixed_c = (self.kg * self.mean_c + kg * temp_c) / (self.kg + kg)
        self.kg, self.shells_c = self.kg + kg, [mixed_c] * SHELLS

    def stands(self, seconds_s: float, room_c: float) -> None:
        """Cools; the ball that fits into the cone stands for it, as in the engine: that much is geometry."""
        while seconds_s > 0.0 and self.kg > 1e-3:
            half = math.radians(30.0)
            top_m = (3.0 * math.tan(half) * self.kg / self.density / math.pi) ** (1.0 / 3.0)
            radius_m = top_m * (1.0 - math.sin(half)) / math.cos(half)
            edges = [radius_m * (i / SHELLS) ** (1.0 / 3.0) for i in range(SHELLS + 1)]
            middles = [radius_m * ((i + 0.5) / SHELLS) ** (1.0 / 3.0) for i in range(SHELLS)]
            shell_j_k = 4.0 / 3.0 * math.pi * radius_m**3 * self.density / SHELLS * self.heat_j_kgk
            k = self.k / 1.1  # a cone's inside resists a tenth more than its ball's, by fine grids
            links = [4.0 * math.pi * k * edges[i + 1] ** 2 / (middles[i + 1] - middles[i]) for i in range(SHELLS - 1)]
            skin = 1.0 / self.h_w_m2k + (radius_m - middles[-1]) / k
            out_w_k = 4.0 * math.pi * radius_m**2 / skin
            step_s = min(seconds_s, 5.0, 0.4 * shell_j_k / (2.0 * max(links) + out_w_k))
            flows = [link * (self.shells_c[i] - self.shells_c[i + 1]) for i, link in enumerate(links)]
            flows.append(out_w_k * (self.shells_c[-1] - room_c))
            for i, flow in enumerate(flows):
                self.shells_c[i] -= step_s * (flow - (flows[i - 1] if i else 0.0)) / shell_j_k
            seconds_s -= step_s


@dataclass
class Deposit:
    """One first deposit in truth, and when a second one came upon it."""

    at_ms: float
    mouth_c: float
    kg: float
    again_ms: float | None = None
    again_c: float | None = None


@dataclass
class LayingBench:
    """One bench on one day."""

    rng: random.Random
    now_ms: float = NINE_OCLOCK_MS
    trays: list[list[Deposit]] = field(default_factory=list)
    laid: dict[bool, int] = field(default_factory=lambda: {False: 0, True: 0})  # trays tapped as laid, as laid again
    paced: tuple[bool, int] | None = None
    ran_out: bool = False
    fills: int = 0  # told as poured into the funnel, topped up too
    steps: list[tuple[float, str]] = field(default_factory=list)

    def __post_init__(self) -> None:
        rng = self.rng
        self.bowl, self.reply = None, None
        while self.reply is None:
            self.bowl = Bowl(rng, rng.uniform(0.7, 3.0), self)
            self.request = self._order()
            try:
                self.reply = catalogue.call("cluster.plan", self.request)
            except Problem:
                continue
        self.funnel = Funnel(rng, 10.0, self.bowl.heat_j_kgk)
        self.bowl.room_c = self.request["room_c"] + rng.uniform(-1.5, 1.5)
        self.bowl.holds(self.reply["caramel_kg"])
        self.stays_kg = self.reply["caramel_kg"] * self.request["residue"] * rng.uniform(0.5, 1.0)
        self.pace = math.exp(rng.gauss(0.0, 0.12))
        self.loss, self.stiffer_k = math.exp(rng.gauss(0.0, 0.15)), rng.uniform(-1.0, 1.0)
        self.reads = rng.random() < 1.0 / 3.0
        self.ignores = rng.random() < IGNORING
        self.sizes = [row["deposit_kg"] for row in self.request["rows"] for _ in range(row["clusters"])]
        self._draw_conditions()
        plan = {"kind": "cluster", "name": "Clusters", "lot": "A-1", "request": self.request, "reply": self.reply}
        self.seq = 0
        self.run = run.opened(plan)
        self.tells("batch_opened", plan=plan, engine_version="0.1.0")

    def _order(self) -> dict[str, Any]:
        rng, kitchen = self.rng, self.bowl.request
        each_kg, second_kg = rng.uniform(0.007, 0.016), rng.choice([0.0, 1.0, 1.0, 1.0]) * rng.uniform(0.003, 0.008)
        number = int(self.bowl.mass_kg / (each_kg + second_kg))
        sizes = [each_kg] if rng.random() < 0.6 else [each_kg, each_kg * rng.uniform(0.85, 1.0)]
        low_c, own_k = rng.uniform(64.0, 71.0), rng.uniform(8.0, 12.0)
        usual, cool, own, narrow = (71.0, 11.0), (65.0, 12.0), (low_c, own_k), (71.0, 6.0)
        low_c, wide_k = rng.choice([usual, usual, cool, own, own, narrow])
        under = {"material": rng.choice(["pecan", "almond", "pretzel"]), "kg_each": rng.uniform(0.0005, 0.0015)}
        return {
            "rows": [{"clusters": max(1, number // len(sizes)), "deposit_kg": kg} for kg in sizes],
            "second_kg": second_kg,
            "under": [dict(under, count=3)] if rng.random() < 0.5 else [],
            "tray": {"length_m": rng.uniform(0.30, 0.55), "width_m": rng.uniform(0.25, 0.38), "rim_m": 0.01},
            "spread_m": rng.uniform(2.4, 3.2) * (each_kg / 1400.0) ** (1.0 / 3.0) / 1.3,
            "gap_m": rng.uniform(0.004, 0.012),
            "funnel": {"volume_m3": rng.uniform(0.0005, 0.0015)},
            "deposits_per_min": rng.uniform(14.0, 30.0),
            "window_low_c": low_c,
            "window_high_c": low_c + wide_k,
            "room_c": kitchen["room_c"],
            "start_c": kitchen["start_c"],
            "oven": kitchen["oven"],
            "vessel": kitchen["vessel"],
            "residue": 0.03,
        }

    def _draw_conditions(self) -> None:
        """When a first deposit is truly tacky and truly cold, by weight and by how warm it was laid."""
        self.times: dict[tuple[float, float], tuple[float, float]] = {}
        if not self.request["second_kg"]:
            return
        request, room_c, largest_kg = self.request, self.bowl.room_c, max(self.sizes)
        sides = request["tray"]["length_m"], request["tray"]["width_m"]
        # Where a tray is not filled they lie as close as on a full one.
        full = catalogue.call("cluster.plan", request | {"second_kg": 0.0})["per_tray"]
        tray = clusters.Tray("aluminium_tray", *sides, full, room_c)
        tray.tacky_c, tray.cold_c = tray.tacky_c + self.stiffer_k, tray.cold_c + self.stiffer_k
        for kg in set(self.sizes):
            for laid_c in (request["window_low_c"], request["window_high_c"]):
                parts = [(materials.resolved("caramel"), kg, laid_c)]
                for one in request["under"]:
                    parts.append((materials.resolved(one["material"]), one["count"] * one["kg_each"], room_c))
                across_m = clusters.spread_m(request["spread_m"], kg / largest_kg)
                course = tray.milestone_times(clusters.Mixture(parts, room_c), across_m, self.loss, room_c, "cold")
                self.times[kg, laid_c] = course.tacky_s, course.cold_s

    def window_s(self, deposit: Deposit) -> tuple[float, float]:
        """(truly tacky, truly cold) in s after it was laid."""
        low_c, high_c = self.request["window_low_c"], self.request["window_high_c"]
        share = (deposit.mouth_c - low_c) / (high_c - low_c)
        cool, warm = self.times[deposit.kg, low_c], self.times[deposit.kg, high_c]
        return cool[0] + share * (warm[0] - cool[0]), cool[1] + share * (warm[1] - cool[1])

    def goes_on(self, seconds_s: float) -> None:
        """Time passes for all but the bowl."""
        self.now_ms += 1000.0 * seconds_s
        self.funnel.stands(seconds_s, self.bowl.room_c)

    def passes(self, seconds_s: float) -> None:
        """Time passes for all."""
        self.bowl.pass_time(seconds_s)

    def tells(self, kind: str, **body: Any) -> None:
        self.seq += 1
        event = {"id": f"e{self.seq}", "v": 1, "shop_id": "s", "device_id": "a", "seq": self.seq, "offset_ms": 0.0}
        event.update(at_ms=self.now_ms, batch_id="b", kind=kind, body=body)
        if kind in ("tray_laid", "second_laid"):
            self.laid[kind == "second_laid"] += 1
        self.fills += kind == "filled"
        self.run = run.apply(self.run, event)

    @property
    def advice(self) -> dict[str, Any]:
        return advise.advise(self.run, self.now_ms)

    # Trays -----------------------------------------------------------------------------------------------------------

    def _tray(self, again: bool) -> list[Deposit]:
        """The tray under the hand: the one after those that were told as laid."""
        while len(self.trays) <= self.laid[again]:
            self.trays.append([])
        return self.trays[self.laid[again]]

    def tray_done(self, again: bool) -> bool:
        if again:
            return all(one.again_ms is not None for one in self._tray(True))
        most = min(self.reply["per_tray"], len(self.sizes) - self.laid[False] * self.reply["per_tray"])
        return len(self._tray(False)) >= most

    def lays_one(self, again: bool) -> bool:
        """Lays the next deposit; False if the funnel or the tray does not give it."""
        if self.tray_done(again):
            return False
        tray = self._tray(again)
        if again:
            before = next(one for one in tray if one.again_ms is None)
            kg = self.request["second_kg"]
        else:
            kg = self.sizes[self.laid[False] * self.reply["per_tray"] + len(tray)]
        given_kg = kg * self.rng.gauss(1.0, 0.1)
        if given_kg > self.funnel.kg:
            return False
        if (again, self.laid[again]) != self.paced:
            self.paced, self.tray_pace = (again, self.laid[again]), self.pace * math.exp(self.rng.gauss(0.0, 0.04))
        self.passes(60.0 / self.request["deposits_per_min"] * self.tray_pace)
        self.funnel.kg -= given_kg
        if again:
            before.again_ms, before.again_c = self.now_ms, self.funnel.mean_c
        else:
            tray.append(Deposit(self.now_ms, self.funnel.mean_c, kg))
        return True

    # What came of it -------------------------------------------------------------------------------------------------

    @property
    def deposits(self) -> list[Deposit]:
        return [one for tray in self.trays for one in tray]

    @property
    def mouths_c(self) -> list[float]:
        """How warm every deposit was at the funnel's mouth, first and second ones."""
        return [temp_c for one in self.deposits for temp_c in (one.mouth_c, one.again_c) if temp_c is not None]

    def fits(self, deposit: Deposit) -> str:
        """When its second deposit came: soon, in time, cold; or never."""
        if deposit.again_ms is None:
            return "never"
        age_s, (tacky_s, cold_s) = (deposit.again_ms - deposit.at_ms) / 1000.0, self.window_s(deposit)
        return "soon" if age_s < tacky_s else "cold" if age_s > cold_s else "in time"
