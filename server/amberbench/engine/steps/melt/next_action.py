"""What to do now in a melt: burst, pour, read again, let it cool, or stop."""

import math

from ...core.statistics import normal_below

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ...core.annotations import Readable
    from .belief import Belief
    from .burst_length import MeltLimits


# The weights below balance bursts, readings and misses as a dynamic program over (temperature, spread) does when a
# burst costs five readings; tuned on simulated kitchens.
# Pour when the chance of lying below the window, plus OVER_WINDOW_WEIGHT times that of lying above, is at most this.
POUR_RISK = 0.125
OVER_WINDOW_WEIGHT = 3.0  # a melt a little high cools while it is read again; one that is low costs a burst
SECOND_READING_SD = 0.243  # spread, as a share of the window, from which a second reading comes first
BURST_AGAIN_CHANCE = 0.9  # chance of lying below the window above which another burst is needed anyway
MOST_READINGS = 5  # readings after one burst; then the mean decides
MOST_REST_S = 900.0


def decide(melt: "MeltLimits") -> tuple[str, str, float]:
    """(action, reason code, seconds_s) from what is believed and the heat lines."""
    belief = melt.belief
    if belief.doubt_c is not None:
        return "read_again", "reading_off", 0.0
    if belief.bursts and belief.t_c >= melt.stop_c:
        return "stop", "over_stop", 0.0
    sd_k = belief.sd_k()
    below = normal_below((melt.low_c - belief.t_c) / sd_k)
    above = normal_below((belief.t_c - melt.high_c) / sd_k)
    known = belief.readings > 0 and not belief.lumpy()
    if above > 0.5 and (known or not belief.bursts):
        return "rest", "over_warn" if belief.t_c >= melt.warn_c else "over_window", rest_needed_s(melt)
    if not known:
        return _burst(melt, True) if below >= 0.5 else ("read_again", "no_reading", 0.0)
    settled = belief.readings >= MOST_READINGS
    if below + OVER_WINDOW_WEIGHT * above <= POUR_RISK or (settled and below <= 0.5):
        return "ready", "in_window", 0.0
    unsure = sd_k > SECOND_READING_SD * (melt.high_c - melt.low_c) and not settled
    if below < BURST_AGAIN_CHANCE and (unsure or above > below):
        return "read_again", "not_sure", 0.0
    action, code, seconds_s = _burst(melt, False)
    if code == "finish" and unsure:
        return "read_again", "not_sure", 0.0
    return action, code, seconds_s


def _burst(melt: "MeltLimits", cautious: bool) -> tuple[str, str, float]:
    seconds_s = melt.longest_s(cautious)
    if seconds_s == 0.0:
        return "stop", "step_too_coarse", 0.0
    return "burst", "finish" if melt.expected_c(seconds_s) >= melt.low_c else "warm_up", seconds_s


def rest_needed_s(melt: "Any") -> "Any":
    """Seconds of stirring off the heat until the bulk is a quarter of the window below its top, at most 15 min."""
    belief, aim_c = melt.belief, melt.high_c - 0.25 * (melt.high_c - melt.low_c)
    low_s, high_s = 0.0, MOST_REST_S
    for _ in range(8):
        middle_s = 0.5 * (low_s + high_s)
        if belief.pot.cooled(belief.t_c, middle_s) > aim_c:
            low_s = middle_s
        else:
            high_s = middle_s
    return 30.0 * math.ceil(high_s / 30.0)


def follow_history(belief: "Belief", history: "Sequence[Readable]") -> None:
    """Moves a belief along a checked history in which every burst and rest has its length, every reading its value."""
    for what in history:
        kind = what["kind"]
        if kind == "burst":
            belief.burst(what["seconds_s"])
        elif kind == "rest":
            belief.rest(what["seconds_s"])
        elif kind == "stir":
            belief.stir(what["free"])
        else:
            belief.read(what["surface_c"])
