"""How long the next burst may be: the hottest spot, the window's top, what the oven can set."""

import math

from ...physics import pot as physics_pot
from . import oven as melt_oven
from .belief import Belief

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ...core.annotations import Readable


# Hottest rise over mean rise in one burst, at 1 kg. Assumed: 1.5–2.5 is usual, more at edges and without a turntable
# (from memory); taken near the upper end so that uneven ovens stay below the scorch limit too.
UNEVENNESS = 2.39
UNEVENNESS_STILL = 2.91
UNEVENNESS_PER_DOUBLING = 0.15  # larger loads heat less evenly (published in kind only); assumed
GUARD_SD = 1.645  # 95 %: the scorch guard, once a reading was trusted
GUARD_SD_UNREAD = 2.08  # 98 %: the same while the power is only what a plate or a past melt says
# Where in the window a burst should end: being low costs a burst, being high a minute of stirring; tuned.
AIM_IN_WINDOW = 0.7


def usual_unevenness(turntable: bool, mass_kg: float) -> float:
    """Hottest rise over mean rise to be expected of an oven nobody measured."""
    usual = UNEVENNESS if turntable else UNEVENNESS_STILL
    return max(1.2, usual + UNEVENNESS_PER_DOUBLING * math.log(mass_kg) / math.log(2.0))


class MeltLimits:
    """A checked request: the heat lines, what the oven can set, how unevenly it heats, what is believed."""

    def __init__(self, request: "Readable") -> None:
        self.low_c, self.high_c = request["window_low_c"], request["window_high_c"]
        self.warn_c, self.stop_c, self.limit_c = request["warn_c"], request["stop_c"], request["limit_c"]
        self.step_s, self.most = request["step_s"], int(request["burst_s"] // request["step_s"])
        oven, mass_kg = request["oven"], request["mass_kg"]
        self.unevenness = oven["unevenness"] or usual_unevenness(oven["turntable"], mass_kg)
        pot = physics_pot.Pot(mass_kg, request["material"], request["vessel"], request["room_c"])
        power = melt_oven.power_prior(oven, mass_kg)
        self.belief = Belief(pot, power, request["start_c"], request.get("start_sd_k"))

    def hottest_c(self, seconds_s: float) -> float:
        """Hottest spot in °C at the end of a burst, at the strong end of temperature and power together.

        The strong end is the likeliest point of (temperature, log power) at which the spot is that hot.
        """
        belief, phi = self.belief, self.unevenness
        _, _, by_p, by_t = belief.spread_after(seconds_s)
        g_t, g_p = 1.0 + phi * (by_t - 1.0), phi * by_p
        to_t, to_p = belief.tt * g_t + belief.tp * g_p, belief.tp * g_t + belief.pp * g_p
        size = math.sqrt(max(1e-12, g_t * to_t + g_p * to_p))
        strong = (GUARD_SD if belief.heard else GUARD_SD_UNREAD) / size
        t_c, log_p = belief.t_c + strong * to_t, belief.log_p + strong * to_p
        return t_c + phi * (belief.after(seconds_s, t_c, log_p) - t_c)

    def most_steps(self, most: int, fits: "Callable[..., Any]") -> int:
        """Most steps, up to `most`, for which `fits(seconds_s)` holds; from some length on it must fail."""
        low, high = 0, most
        while low < high:
            middle = (low + high + 1) // 2
            if fits(middle * self.step_s):
                low = middle
            else:
                high = middle - 1
        return low

    def expected_c(self, seconds_s: float) -> float:
        """Bulk temperature in °C expected at the end of a burst."""
        return self.belief.after(seconds_s, self.belief.t_c, self.belief.log_p)

    def steps_to(self, temp_c: float) -> float:
        """Steps, not rounded, after which the bulk is expected at temp_c; never less than 0, `most` if never."""
        belief, pot = self.belief, self.belief.pot
        power_w = belief.power_w()
        net_w = power_w - pot.loss_w(belief.t_c)
        if net_w <= 0.0:
            return float(self.most)
        energy_j = pot.content(temp_c) - pot.content(belief.t_c) + power_w * melt_oven.MAGNETRON_START_S
        result: float = min(float(self.most), max(0.0, energy_j / net_w / self.step_s))
        return result

    def longest_s(self, cautious: bool) -> float:
        """Length in s of the longest burst that is safe and aims into the window; 0.0 when not even one step is safe.

        cautious: at the strong end the bulk, too, stays below the window's top, unless that would leave more than half
        of the way to the window.
        """
        if self.expected_c(self.step_s) > self.stop_c:
            return 0.0
        aim_c = self.low_c + AIM_IN_WINDOW * (self.high_c - self.low_c)
        steps = max(1, int(self.steps_to(aim_c) + 0.5))
        if cautious:
            held = self.most_steps(steps, lambda seconds_s: self.guarded_bulk_c(seconds_s) <= self.high_c)
            if 2.0 * (self.low_c - self.expected_c(held * self.step_s)) > self.low_c - self.belief.t_c:
                held = int(self.steps_to(self.low_c)) + 1
            steps = min(steps, max(1, held))
        return float(self.step_s * self.most_steps(min(steps, self.most), self._scorches_nothing))

    def _scorches_nothing(self, seconds_s: float) -> bool:
        result: bool = self.hottest_c(seconds_s) <= self.limit_c
        return result

    def guarded_bulk_c(self, seconds_s: float) -> float:
        """Bulk temperature in °C after a burst, 95 % point."""
        warm_c, variance, _, _ = self.belief.spread_after(seconds_s)
        return warm_c + GUARD_SD * math.sqrt(variance)
