"""Simulated kitchens: what really happens in the bowl, drawn at random and unknown to the planner.

Own physics and own integration (explicit, one-second steps, linear specific heat, linear losses): nothing of the engine
moves this caramel. The planner sees only what a person would type or say: mass, rating plate, turntable, bowl, block,
room, "stirs freely?" and infrared readings.

What is drawn, and why:
- Absorbed power = rating plate (700–1200 W) × 0.60 × load curve × lognormal with a standard deviation of 20 %, the
  spread the engine assumes too; load curve m^x below 1 kg, x 0.08–0.25 (Buffler 1993, from memory).
- A warm oven loses up to 12 % (from memory), a burst 1.5 % at random (assumed); dead time 2–3 s (published).
- Unevenness, one figure per oven. Usual: 1.2–2.0 on a turntable (four of five), 1.3–2.2 without, set so that fixed
  one-minute bursts overheat a spot about as often as expected (13 % at 2½ lb, 55 % at 1¼ lb, assumed; here 13 % and
  49 %).
  Hard: 1.5–2.5 on a turntable, 1.8–3.0 without.
- Bowl 0.4–1.0 kg of glass, of which 0.3–0.9 follows the caramel; specific heat of the caramel 1750–2000 J/(kg K) at
  20 °C, rising 0.08 % a kelvin (6–12 % water); loss 8–16 W/(m² K), still air and radiation, over 0.035–0.060 m² of bowl
  and top at 2½ lb (all assumed).
- Block 17–25 °C, typed with an error of 1 K (standard deviation); room 18–26 °C.
- Lumps below a bulk of 44–52 °C. The person says so when turning and stirring and takes no reading there; a reading
  taken all the same (fixed bursts) runs 0–3 K cold and scatters by up to 6 K.
- Below full power three ovens of five switch the magnetron on and off, on first, every 15 to 30 s, with half a second
  to a second lost at every switching on; the others throttle it (from memory).
- The hottest spot is read before the stir like a fresh reading, but some of it lies inside: up to 15 % of what it is
  above the mean is not seen; of a block, whose shape is another, it is 15 % more or less (assumed).
- A fresh reading runs 1 K cold (0.5–1.5 from person to person) with 2 K noise; one in ten is of a skin, 3–5 K cold.
"""

import math
import random
from dataclasses import dataclass, field

from amberbench.engine import catalogue

LIMIT_C = 200.0 / 1.8 - 32.0 / 1.8  # 200 °F: above it burns; common practice, no published source
LOW_C, HIGH_C = (160.0 - 32.0) / 1.8, (170.0 - 32.0) / 1.8  # 160–170 °F; common practice, no published source
POUND_KG = 0.45359237
MOST_TURNS = 60


@dataclass
class Kitchen:
    """One kitchen on one day; `bulk_c` and `hottest_c` are the truth."""

    rng: random.Random
    mass_kg: float
    hard: bool = False
    rated_w: float = 0.0
    bulk_c: float = 0.0
    hottest_c: float = -100.0
    on_s: float = 0.0
    bursts: int = 0
    request: dict = field(default_factory=dict)
    cycle_s: float = 0.0
    before_c: float = 0.0

    def __post_init__(self):
        draw = self.rng.uniform
        self.rated_w = self.rng.choice((700.0, 800.0, 900.0, 1000.0, 1100.0, 1200.0))
        self.load = draw(0.08, 0.25)
        load = min(1.0, self.mass_kg) ** self.load
        self.power_w = self.rated_w * 0.60 * load * math.exp(self.rng.gauss(0.0, 0.20))
        self.fade, self.dead_s = draw(0.0, 0.12), draw(2.0, 3.0)
        turntable = self.rng.random() < 0.8
        ranges = ((1.8, 3.0), (1.5, 2.5)) if self.hard else ((1.3, 2.2), (1.2, 2.0))
        self.unevenness = draw(*ranges[turntable])
        self.vessel_kg = draw(0.4, 1.0)
        self.vessel_j_k = self.vessel_kg * 800.0 * draw(0.3, 0.9)
        self.heat_j_kgk = draw(1750.0, 2000.0)
        self.loss_w_k = draw(8.0, 16.0) * draw(0.035, 0.060) * (self.mass_kg / 1.134) ** (2.0 / 3.0)
        self.room_c, self.bulk_c = draw(18.0, 26.0), draw(17.0, 25.0)
        self.lumps_below_c, self.cold_k = draw(44.0, 52.0), draw(0.5, 1.5)
        # Drawn apart, so that a kitchen of a seed stays what it was.
        apart = random.Random(f"{self.load} {self.fade}")
        self.cycle_s = apart.uniform(15.0, 30.0) if apart.random() < 0.6 else 0.0
        self.lost_s = apart.uniform(0.5, 1.0)
        self.apart = apart
        self.request = {
            "mass_kg": self.mass_kg,
            "start_c": round(self.bulk_c + self.rng.gauss(0.0, 1.0), 1),
            "window_low_c": LOW_C,
            "window_high_c": HIGH_C,
            "room_c": round(self.room_c),
            "oven": {"rated_w": self.rated_w, "turntable": turntable},
            "vessel": {"mass_kg": round(self.vessel_kg, 2)},
        }

    def _second(self, power_w, seconds_s=1.0):
        capacity = self.mass_kg * self.heat_j_kgk * (1.0 + 0.0008 * (self.bulk_c - 20.0)) + self.vessel_j_k
        self.bulk_c += (power_w - self.loss_w_k * (self.bulk_c - self.room_c)) * seconds_s / capacity

    def pass_time(self, seconds_s):
        """The bowl stands or is stirred in the room."""
        while seconds_s > 0.0:
            self._second(0.0, min(1.0, seconds_s))
            seconds_s -= 1.0

    def burst(self, seconds_s, level=100.0):
        """The oven runs; the hottest spot rises `unevenness` times the mean."""
        self.before_c = self.bulk_c
        power_w = self.power_w * (1.0 - self.fade * (1.0 - math.exp(-self.on_s / 120.0)))
        power_w *= 1.0 + self.rng.gauss(0.0, 0.015)
        for second_s, share in self._on(max(0.0, seconds_s - self.dead_s), 0.01 * level):
            self._second(power_w * share, second_s)
        self.hottest_c = max(self.hottest_c, self._spot_c())
        self.on_s += 0.01 * level * seconds_s
        self.bursts += 1

    def _spot_c(self):
        return self.before_c + self.unevenness * (self.bulk_c - self.before_c)

    def _on(self, left_s, level):
        """[(seconds, share of the full power in them)] of a burst."""
        at_s = 0.0
        while left_s > 0.0:
            second_s = min(1.0, left_s)
            share = level
            if level < 1.0 and self.cycle_s:
                in_cycle_s = at_s % self.cycle_s
                lost = at_s >= self.cycle_s and in_cycle_s < self.lost_s
                share = 1.0 if in_cycle_s < level * self.cycle_s and not lost else 0.0
            yield second_s, share
            at_s, left_s = at_s + second_s, left_s - second_s

    def spot(self):
        """An infrared reading of the hottest spot, before the stir."""
        over_k = (self._spot_c() - self.bulk_c) * (1.0 - self.apart.uniform(0.0, 0.15))
        if self.bulk_c < self.lumps_below_c:
            over_k *= math.exp(self.apart.gauss(0.0, 0.15))
        return round(2.0 * (self.bulk_c + over_k - self.cold_k + self.apart.gauss(0.0, 2.0))) / 2.0

    def stir(self):
        """Stirring takes 30–45 s; the answer says whether it stirs freely."""
        self.pass_time(self.rng.uniform(30.0, 45.0))
        return self.bulk_c >= self.lumps_below_c

    def turn(self):
        """Turning the block over takes 10–20 s; who turns it sees whether it stirs freely."""
        self.pass_time(self.rng.uniform(10.0, 20.0))
        return self.bulk_c >= self.lumps_below_c

    def read(self):
        """An infrared reading in °C, half a degree at a time."""
        self.pass_time(self.rng.uniform(5.0, 12.0))
        if self.bulk_c < self.lumps_below_c:
            seen_c = self.bulk_c - self.rng.uniform(0.0, 3.0) + self.rng.uniform(-6.0, 6.0)
        elif self.rng.random() < 0.1:
            seen_c = self.bulk_c - self.rng.uniform(3.0, 5.0) + self.rng.gauss(0.0, 1.0)
        else:
            seen_c = self.bulk_c - self.cold_k + self.rng.gauss(0.0, 2.0)
        return round(2.0 * seen_c) / 2.0


@dataclass
class Outcome:
    """How one melt ended."""

    action: str
    bulk_c: float
    hottest_c: float
    bursts: int
    second_readings: int = 0
    rests: int = 0
    spots: int = 0

    @property
    def inside(self):
        return self.action == "ready" and LOW_C <= self.bulk_c <= HIGH_C

    @property
    def over(self):
        return self.bulk_c > HIGH_C

    @property
    def scorched(self):
        return self.hottest_c > LIMIT_C


def planned(kitchen, ask):
    """A melt led by `ask(request) -> reply` of melt.next_burst, until it says ready or stop."""
    history, again, rests, spots, was_free = [], 0, 0, 0, False
    for _ in range(MOST_TURNS):
        reply = ask(dict(kitchen.request, history=history))
        action = reply["action"]
        if action in ("ready", "stop"):
            break
        if action == "burst":
            kitchen.burst(reply["seconds_s"], reply["level_percent"])
            history.append({"kind": "burst", "seconds_s": reply["seconds_s"], "level_percent": reply["level_percent"]})
            if reply["spot"]:
                spots += 1
                history.append({"kind": "spot", "surface_c": kitchen.spot()})
        elif action == "rest":
            rests += 1
            kitchen.pass_time(reply["seconds_s"])
            history.append({"kind": "rest", "seconds_s": reply["seconds_s"]})
        else:
            again += 1
        free = kitchen.turn() if reply["then"] == "turn" and action == "burst" else kitchen.stir()
        history.append({"kind": "stir", "free": free})
        if free and (reply["read"] or not was_free or action != "burst"):
            history.append({"kind": "reading", "surface_c": kitchen.read()})
        was_free = free
    return Outcome(action, kitchen.bulk_c, kitchen.hottest_c, kitchen.bursts, again, rests, spots)


def fixed(kitchen):
    """One-minute bursts, a stir and a reading after each, until the reading is not below the window."""
    for _ in range(MOST_TURNS):
        kitchen.burst(60.0)
        kitchen.stir()
        if kitchen.read() >= LOW_C:
            break
    return Outcome("ready", kitchen.bulk_c, kitchen.hottest_c, kitchen.bursts)


def drawn(seed, index, mass_kg, hard=False):
    """Kitchen number `index` of a seed: the same kitchen whenever it is asked for."""
    return Kitchen(random.Random(f"{seed}/{index}/{mass_kg}/{hard}"), mass_kg, hard)


def mixed(seed, index, mass_kg, hard=False):
    """The same kitchen with a clock in steps of 5, 10 or 15 s, levels or none, and a bowl that nobody weighed."""
    kitchen = drawn(seed, index, mass_kg, hard)
    kitchen.request["step_s"] = kitchen.apart.choice((5, 10, 15))
    kitchen.request["oven"]["levels_percent"] = kitchen.apart.choice(([100], [100, 50], [100, 80, 60, 40, 20]))
    del kitchen.request["vessel"]
    return kitchen


@dataclass
class Summary:
    """Means over many melts; shares of melts for inside, over and scorched, counts a melt for the others."""

    outcomes: list

    def __getattr__(self, name):
        return sum(getattr(outcome, name) for outcome in self.outcomes) / len(self.outcomes)

    def __str__(self):
        shares = "  ".join(f"{name} {100 * getattr(self, name):6.2f} %" for name in ("inside", "over", "scorched"))
        counts = f"bursts {self.bursts:.2f}  second readings {self.second_readings:.2f}  rests {self.rests:.3f}"
        return f"{shares}  {counts}  spots {self.spots:.2f}"


@dataclass
class Melts:
    """The same kitchens twice: led by melt.next_burst, and by fixed one-minute bursts."""

    led: Summary
    fixed: Summary

    @classmethod
    def run(cls, mass_kg, number, seed, hard=False, draw=drawn):
        led = [planned(draw(seed, index, mass_kg, hard), ask) for index in range(number)]
        return cls(Summary(led), Summary([fixed(draw(seed, index, mass_kg, hard)) for index in range(number)]))

    @property
    def bursts_error(self):
        """Standard error of the mean difference in bursts."""
        more = [led.bursts - fixed.bursts for led, fixed in zip(self.led.outcomes, self.fixed.outcomes, strict=True)]
        mean = sum(more) / len(more)
        return math.sqrt(sum((one - mean) ** 2 for one in more)) / len(more)


def ask(request):
    """The engine's answer, by its catalogue."""
    return catalogue.call("melt.next_burst", request)
