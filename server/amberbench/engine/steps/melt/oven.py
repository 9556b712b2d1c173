"""What a microwave oven gives to a bowl, and how long people take at it."""

import math

from ...physics.pot import Pot

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable


MAGNETRON_START_S = 2.5  # magnetron start; published 2–3 s (oven_tests)
MAGNETRON_START_SD_S = 0.4  # spread of the same; assumed, a little wider than 2–3 s evenly
RATED_SHARE = 0.60  # share of the rating plate that a kilogram of caramel takes up; assumed, ±20 %
RATED_SD = 0.20  # standard deviation of the logarithm of that share
# A water test says what the oven gives, not how much of it caramel takes up: of that there is no measurement (its
# dielectric figures are a guess). It takes out what a plate is off: 14 % from one way of rating to another, 1 to 3 % a
# year of age, rounding. So an oven gives 8 % less than its plate says, ± 11 % (assumed), and the rest is caramel's.
WATER_SHARE = RATED_SHARE / 0.92
WATER_SD = math.sqrt(RATED_SD * RATED_SD - 0.11 * 0.11)
IN_MELTS, IN_WATER = "melts", "water"  # where power_w or rated_w was measured
MEASURED_SD = 0.10  # the same for a measured power given without a standard deviation; assumed
LOAD_PER_HALVING = 0.10  # load factor 1.0 at 1 kg, 0.9 at 0.5 kg, 0.8 at 0.25 kg; from memory (Buffler 1993)
LOAD_LEAST = 0.5  # from memory: 100 g takes 0.5–0.7
# Below full power most ovens switch the magnetron on and off; a time that is no whole number of cycles gives more or
# less than the share on the dial. Length of a cycle in s: 15–30, from memory.
CYCLE_S = 22.0
# A bowl nobody weighed counts as this much glass (kg, J/(kg K)); 0.4–1.0 kg is usual for 1 to 2 kg (assumed).
UNWEIGHED = {"mass_kg": 0.7, "heat_capacity_j_kgk": 800.0}
STIR_S = 40.0  # 30–45 s for 1–2 kg; common practice
READ_S = 8.0  # assumed


def load_factor(mass_kg: float) -> float:
    """Share of the one-kilogram power that a smaller mass absorbs, 0.5 to 1 (from memory, buffler_1993)."""
    return max(LOAD_LEAST, min(1.0, 1.0 + LOAD_PER_HALVING * math.log(mass_kg) / math.log(2.0)))


def bowl(request: "Readable") -> "Pot":
    """Caramel and bowl of a checked request."""
    vessel = UNWEIGHED if request["vessel"] is None else request["vessel"]
    return Pot(request["mass_kg"], request["material"], vessel, request["room_c"])


def on_s(seconds_s: float, level: int) -> float:
    """Seconds of full power in a burst at a level in %."""
    return 0.01 * level * max(0.0, seconds_s - MAGNETRON_START_S)


def on_sd_s(level: int) -> float:
    """Standard deviation of the same: the start, and at part power where in its cycle the burst ends."""
    share = 0.01 * level
    cycle_s = 0.5 * share * (1.0 - share) * CYCLE_S
    return math.sqrt(MAGNETRON_START_SD_S * MAGNETRON_START_SD_S + cycle_s * cycle_s)


def power_prior(oven: "Readable", mass_kg: float) -> tuple[float, float]:
    """(power in W this mass absorbs, standard deviation of its logarithm), from the oven's best figure."""
    if oven["power_w"] is not None:
        spread = MEASURED_SD if oven["power_sd_w"] is None else oven["power_sd_w"] / oven["power_w"]
        return oven["power_w"], min(0.5, spread)
    share, sd = taken_up(oven)
    return oven["rated_w"] * share * load_factor(mass_kg), sd


def taken_up(oven: "Readable") -> tuple[float, float]:
    """(share of rated_w that a kilogram of caramel takes up, standard deviation of its logarithm)."""
    return (WATER_SHARE, WATER_SD) if oven.get("measured_in") == IN_WATER else (RATED_SHARE, RATED_SD)
