"""The loss factor of a slab from infrared readings and touch tests while it cools.

Mean of ln(loss factor) given its prior (normal), the readings and the touch tests. A reading scatters by sd_k with
somewhat heavy tails (Student's t, 8 degrees of freedom), or, one time in five, by a tenth of that: readings that line
up on one course to a fraction of a kelvin come from something steadier than a hand-held thermometer, and say so
themselves. A touch test says that the hottest point is below the target (firm) or above (not yet), blurred by
TOUCH_SD_K. Model temperatures are parabolas in ln(loss factor) through three courses; courses are added near the
answer until they agree. Each scatter gives one peak, taken as normal around its top (Laplace).
"""

from math import erf, exp, log, pi, sqrt

from .cooling_curve import LONGEST_S, is_brought

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from .cooling_curve import Slab


T_FREEDOM = 8.0
STEADY_CHANCE_AND_SHARE = (0.2, 0.1)  # chance and share of sd_k of a steady instrument; assumed
TOUCH_SD_K = 1.5  # blur of "firm" as a temperature of the hottest point; assumed
FAST_SD = 4.0  # "firm" sooner than at so many standard deviations of loss and blur is a slip of the finger; assumed
BIAS_SD_K = 0.5  # of how cold readings run, the same for all of them; assumed
NODE_SPACING = 0.03  # of ln(loss factor) to a course: parabolas are then good to 0.01 K
MOST_ROUNDS = 5
LOWEST, HIGHEST = log(0.1), log(10.0)


def soonest_firm_s(slab: "Slab", x: float, sd: float) -> float:
    """When the slab may be firm at the earliest in s: its hottest point near its target with heat losses that are four
    standard deviations sd over their mean x (of the logarithm), and all the blur of a touch."""
    course, line_c = slab.transient(exp(min(x + FAST_SD * sd, HIGHEST))), slab.target_c + FAST_SD * TOUCH_SD_K
    was_s = 0.0
    while course.core_c > line_c and course.at_s < LONGEST_S:
        was_s = course.at_s
        course.advance()
    return was_s


def telling(slab: "Slab", touches: "list[Any]") -> "list[Any]":
    """The touch tests that say something of the heat loss: none where the room never brings the slab to its target."""
    return touches if is_brought(slab.target_c, slab.room_c) else []


class Evidence:
    """Readings [(s, °C)] and touches [(s, firm)] of a slab; readings run low_k K cold and scatter by sd_k K."""

    def __init__(
        self,
        slab: "Slab",
        readings: list[tuple[float, float]],
        touches: list[tuple[float, bool]],
        low_k: float,
        sd_k: float,
    ) -> None:
        self.slab = slab
        self.times = sorted(set([at for at, _ in readings] + [at for at, _ in touches]))
        place = {at: i for i, at in enumerate(self.times)}
        self.sd_k = sd_k
        self.readings = [(place[at], surface_c + low_k) for at, surface_c in readings]
        self.touches = [(place[at], firm) for at, firm in touches]

    def course_at(self, x: float) -> tuple[float, list[tuple[float, float]]]:
        """(x, [(core °C, surface °C)] at every reading and touch) simulated at x, the logarithm of the loss factor."""
        return x, at_times(self.slab, exp(x), self.times)

    def model_through(
        self, nodes: list[tuple[float, list[tuple[float, float]]]]
    ) -> tuple[float, list[tuple[float, float, float]], list[tuple[float, float, float]]]:
        """The temperatures at the readings and touches as parabolas in x through three simulated nodes:
        (middle node, per reading its surface, per touch its core)."""
        (a, at_a), (b, at_b), (c, at_c) = nodes
        surface = [_parabola(a - b, at_a[i][1], at_b[i][1], c - b, at_c[i][1]) for i, _ in self.readings]
        core = [_parabola(a - b, at_a[i][0], at_b[i][0], c - b, at_c[i][0]) for i, _ in self.touches]
        return b, surface, core

    def cost(
        self,
        model: tuple[float, list[tuple[float, float, float]], list[tuple[float, float, float]]],
        x: float,
        steady: bool,
    ) -> float:
        """Minus ln of the likelihood at x, for a steady or a scattering instrument, without shared constants."""
        middle, surface, core = model
        over = x - middle
        scale = self.sd_k * (STEADY_CHANCE_AND_SHARE[1] if steady else sqrt((T_FREEDOM - 2.0) / T_FREEDOM))
        total = len(surface) * log(scale)
        for i in range(len(surface)):
            a0, a1, a2 = surface[i]
            error = (self.readings[i][1] - a0 - over * (a1 + over * a2)) / scale
            if steady:
                total += 0.5 * error * error
            else:
                total += 0.5 * (T_FREEDOM + 1.0) * log(1.0 + error * error / T_FREEDOM)
        for i in range(len(core)):
            a0, a1, a2 = core[i]
            above = (a0 + over * (a1 + over * a2) - self.slab.target_c) / TOUCH_SD_K
            total -= log_tail(above if self.touches[i][1] else -above)
        return total

    def common_error_effect_k(
        self, model: tuple[float, list[tuple[float, float, float]], list[tuple[float, float, float]]], x: float
    ) -> float:
        """Mean change of the surface at the readings per unit of x, in K: the effect of an error common to all."""
        middle, surface, _ = model
        slopes = [a1 + 2.0 * (x - middle) * a2 for _, a1, a2 in surface]
        return sum(slopes) / len(slopes) if slopes else 0.0


def fit(evidence: "Evidence", prior: float, prior_sd: float) -> tuple[float, float]:
    """(mean of ln loss factor, its standard deviation) under a normal prior of ln(loss factor)."""
    if not evidence.times:
        return prior, prior_sd
    nodes = [evidence.course_at(x) for x in (prior - prior_sd, prior, prior + prior_sd)]
    for _ in range(MOST_ROUNDS):
        model = evidence.model_through(nodes)
        low, high = max(nodes[0][0] - prior_sd, LOWEST), min(nodes[2][0] + prior_sd, HIGHEST)
        x, variance = _posterior(evidence, model, prior, prior_sd, low, high)
        if min(abs(x - node[0]) for node in nodes) < NODE_SPACING:
            break
        nodes = _with_node(nodes, evidence.course_at(x))
    common_error_effect_k = evidence.common_error_effect_k(model, x)
    if common_error_effect_k:
        # A common error of the readings moves x only as far as they, not the prior, carry it.
        carried = max(0.0, 1.0 - variance / (prior_sd * prior_sd))
        variance += (BIAS_SD_K / common_error_effect_k * carried) ** 2
    return x, min(sqrt(variance), prior_sd)


def _posterior(
    evidence: "Evidence",
    model: tuple[float, list[tuple[float, float, float]], list[tuple[float, float, float]]],
    prior: float,
    prior_sd: float,
    low: float,
    high: float,
) -> tuple[float, float]:
    """Mean and variance of x over the peaks of both scatters, weighed by the chance of each."""
    peaks = []
    for steady, chance in ((False, 1.0 - STEADY_CHANCE_AND_SHARE[0]), (True, STEADY_CHANCE_AND_SHARE[0])):

        def cost(x: float, steady: bool = steady) -> float:
            return evidence.cost(model, x, steady) + 0.5 * ((x - prior) / prior_sd) ** 2

        peak, lowest = _lowest(cost, low, high)
        variance = _variance(cost, peak, prior_sd)
        peaks.append((log(chance) - lowest + 0.5 * log(variance), peak, variance))
        if not evidence.readings:
            break
    most = max(peak[0] for peak in peaks)
    weights = [exp(max(peak[0] - most, -600.0)) for peak in peaks]
    total = sum(weights)
    mean = sum(weight * peak[1] for weight, peak in zip(weights, peaks)) / total
    spread = [weight * (peak[2] + (peak[1] - mean) ** 2) for weight, peak in zip(weights, peaks)]
    return mean, sum(spread) / total


def _variance(cost: "Callable[..., Any]", x: float, prior_sd: float) -> float:
    """Variance of x from the curvature of the cost; never more than the prior's."""
    width = 0.005
    bend = (cost(x - width) - 2.0 * cost(x) + cost(x + width)) / (width * width)
    result: float = 1.0 / max(bend, 1.0 / (prior_sd * prior_sd))
    return result


def at_times(slab: "Slab", loss_factor: float, times: list[float]) -> list[tuple[float, float]]:
    """[(core °C, surface °C)] of a course at times in s, in order; between steps by the parabola through three."""
    course = slab.transient(loss_factor)
    found = []
    before = was = now = (0.0, course.core_c, course.surface_c)
    for at in times:
        while now[0] < at:
            before, was = was, now
            course.advance()
            now = (course.at_s, course.core_c, course.surface_c)
        found.append((_between(before, was, now, 1, at), _between(before, was, now, 2, at)))
    return found


def _between(
    before: tuple[float, float, float],
    was: tuple[float, float, float],
    now: tuple[float, float, float],
    column: int,
    at: float,
) -> float:
    """Newton's parabola through three points; straight where there are two, the point where there is one."""
    if now[0] <= was[0]:
        return now[column]
    slope = (now[column] - was[column]) / (now[0] - was[0])
    value = now[column] + slope * (at - now[0])
    if was[0] > before[0]:
        slope_before = (was[column] - before[column]) / (was[0] - before[0])
        value += (slope - slope_before) / (now[0] - before[0]) * (at - now[0]) * (at - was[0])
    return value


def _parabola(a: float, at_a: float, at_b: float, c: float, at_c: float) -> tuple[float, float, float]:
    """(a0, a1, a2) of the parabola through (a, at_a), (0, at_b), (c, at_c)."""
    rise_a, rise_c = (at_a - at_b) / a, (at_c - at_b) / c
    bend = (rise_c - rise_a) / (c - a)
    return at_b, rise_a - bend * a, bend


def _with_node(
    nodes: list[tuple[float, list[tuple[float, float]]]], node: tuple[float, list[tuple[float, float]]]
) -> list[tuple[float, list[tuple[float, float]]]]:
    """Three nodes around the new one, in order: the farthest from it goes."""
    farthest = max(range(3), key=lambda i: (abs(nodes[i][0] - node[0]), i))
    return sorted([nodes[i] for i in range(3) if i != farthest] + [node], key=lambda one: one[0])


def _lowest(cost: "Callable[..., Any]", low: float, high: float) -> tuple[float, float]:
    """(x, cost) where a cost is lowest between two bounds: a coarse look, then thirds of the best stretch."""
    steps = 12
    width = (high - low) / steps
    costs = [cost(low + i * width) for i in range(steps + 1)]
    best = min(range(steps + 1), key=lambda i: (costs[i], i))
    a, b = max(low, low + (best - 1) * width), min(high, low + (best + 1) * width)
    while b - a > 0.001:
        third = (b - a) / 3.0
        if cost(a + third) < cost(b - third):
            b -= third
        else:
            a += third
    x = 0.5 * (a + b)
    return x, cost(x)


def log_tail(over: float) -> float:
    """ln of the chance that a standard normal is above `over`; its asymptote where that chance underflows."""
    if over < 5.0:
        return log(0.5 * (1.0 - erf(over / sqrt(2.0))))
    return -0.5 * over * over - log(over * sqrt(2.0 * pi))
