"""What to do now in a melt: burst, pour, read again, let it cool, or stop."""

import math

from ...core.statistics import normal_below
from . import oven

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ...core.annotations import Readable
    from .burst_length import MeltLimits
    from .estimate import Estimate


# The weights below balance bursts, readings and misses as a dynamic program over (temperature, spread) does when a
# burst costs five readings; tuned on simulated kitchens.
# Pour when the chance of lying below the window, plus OVER_WINDOW_WEIGHT times that of lying above, is at most this.
POUR_RISK = 0.12
OVER_WINDOW_WEIGHT = 4.0  # a melt a little high cools while it is read again; one that is low costs a burst
SECOND_READING_SD = 0.243  # spread, as a share of the window, from which a second reading comes first
BURST_AGAIN_CHANCE = 0.9  # chance of lying below the window above which another burst is needed anyway
MOST_READINGS = 2  # readings after one burst; then what is believed decides
# After them: pour when the chance of lying below is at most SETTLED_BELOW or a burst would not make it likelier to lie
# inside; off the heat when that of lying above is more than SETTLED_ABOVE. Tuned on simulated kitchens.
SETTLED_BELOW, SETTLED_ABOVE = 0.1, 0.11
MOST_REST_S = 900.0


def decide(melt: "MeltLimits") -> tuple[str, str, float, int]:
    """(action, reason code, seconds_s, level in %) from what is believed and the heat lines."""
    estimate = melt.estimate
    settled = estimate.asked >= MOST_READINGS
    if estimate.doubt_c is not None and not settled:
        return _without_oven("read_again", "reading_off")
    if estimate.bursts and estimate.t_c >= melt.stop_c:
        return _without_oven("stop", "over_stop")
    sd_k = estimate.sd_k()
    below = normal_below((melt.low_c - estimate.t_c) / sd_k)
    above = normal_below((estimate.t_c - melt.high_c) / sd_k)
    known = settled or (estimate.readings > 0 and not estimate.lumpy())
    if above > (SETTLED_ABOVE if settled else 0.5) and (known or not estimate.bursts):
        hot = estimate.t_c >= melt.warn_c
        return _without_oven(
            "rest", "near_top" if above <= 0.5 else "over_warn" if hot else "over_window", rest_needed_s(melt)
        )
    if not known:
        decided = _burst(melt, True)
        # What the scorch guard allows of a melt that nobody read may be less than a stir cools it.
        idle = estimate.readings == 0 and decided[0] == "burst" and not _warms(melt, decided)
        return decided if below >= 0.5 and not idle else _without_oven("read_again", "no_reading")
    if below + OVER_WINDOW_WEIGHT * above <= POUR_RISK or (settled and below <= SETTLED_BELOW):
        return _ready(melt)
    unsure = sd_k > SECOND_READING_SD * (melt.high_c - melt.low_c) and not settled
    if below < BURST_AGAIN_CHANCE and (unsure or (above > below and not settled)):
        return _without_oven("read_again", "not_sure")
    decided = _burst(melt, estimate.readings == 0)
    if settled and below <= 0.5 and _inside_after(melt, decided) <= 1.0 - below - above:
        return _ready(melt)
    return _without_oven("read_again", "not_sure") if decided[1] == "finish" and unsure else decided


def _ready(melt: "MeltLimits") -> tuple[str, str, float, int]:
    """In the window, also where what was read lies below it: a surface reads colder than the inside."""
    warmer = melt.estimate.readings > 0 and melt.estimate.shown_c() < melt.low_c
    return _without_oven("ready", "warmer_inside" if warmer else "in_window")


def _warms(melt: "MeltLimits", decided: tuple[str, str, float, int]) -> bool:
    """Whether the bulk is warmer after a burst and its stir than it is now."""
    estimate = melt.estimate
    warm_c = estimate.spread_after(decided[2], decided[3])[0]
    return estimate.pot.cooled(warm_c, oven.STIR_S) > estimate.t_c


def _inside_after(melt: "MeltLimits", decided: tuple[str, str, float, int]) -> float:
    """Chance of lying inside the window after a burst and its stir, were it not read again; 0.0: there is no burst."""
    if decided[0] != "burst":
        return 0.0
    warm_c, variance, _, _ = melt.estimate.spread_after(decided[2], decided[3])
    sd_k = math.sqrt(variance)
    inside: float = normal_below((melt.high_c - warm_c) / sd_k) - normal_below((melt.low_c - warm_c) / sd_k)
    return inside


def _without_oven(action: str, code: str, seconds_s: float = 0.0) -> tuple[str, str, float, int]:
    return action, code, seconds_s, 100


def _burst(melt: "MeltLimits", cautious: bool) -> tuple[str, str, float, int]:
    seconds_s, level = melt.longest(cautious)
    if seconds_s == 0.0:
        return _without_oven("stop", "step_too_coarse")
    return "burst", "finish" if melt.expected_c(seconds_s, level) >= melt.low_c else "warm_up", seconds_s, level


def rest_needed_s(melt: "Any") -> "Any":
    """Seconds of stirring off the heat until the bulk is a quarter of the window below its top, at most 15 min."""
    estimate, aim_c = melt.estimate, melt.high_c - 0.25 * (melt.high_c - melt.low_c)
    low_s, high_s = 0.0, MOST_REST_S
    for _ in range(8):
        middle_s = 0.5 * (low_s + high_s)
        if estimate.pot.cooled(estimate.t_c, middle_s) > aim_c:
            low_s = middle_s
        else:
            high_s = middle_s
    return 30.0 * math.ceil(high_s / 30.0)


def follow_history(estimate: "Estimate", history: "Sequence[Readable]") -> None:
    """Moves an estimate along a checked history: every burst and rest has its length, every reading its value."""
    for what in history:
        kind = what["kind"]
        if kind == "burst":
            estimate.burst(what["seconds_s"], what.get("level_percent", 100))
        elif kind == "spot":
            estimate.read_spot(what["surface_c"])
        elif kind == "rest":
            estimate.rest(what["seconds_s"])
        elif kind == "stir":
            estimate.stir(what["free"])
        else:
            estimate.read(what["surface_c"])
