"""How long the next burst may be: the hottest spot, the window's top, what the oven can set."""

import math

from . import oven as melt_oven
from . import unevenness
from .estimate import Estimate

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ...core.annotations import Readable


GUARD_SD = 2.1  # 98 %: the scorch guard, once a reading was trusted
GUARD_SD_UNREAD = 2.5  # 99.4 %: the same while the power is only what a plate says
# The same in an oven that melts have measured, where a longer tail costs few bursts; tuned.
GUARD_SD_KNOWN, GUARD_SD_KNOWN_UNREAD = 2.4, 2.7
BULK_SD = 1.645  # 95 %: the bulk, which may be stirred down again
# Where in the window a burst should end: being low costs a burst, being high a minute of stirring; tuned. In an oven
# that melts have measured bursts end nearer to their aim.
AIM_IN_WINDOW, AIM_KNOWN = 0.68, 0.83
NEARER_K = 1.0  # a lower level is taken when its burst comes this much nearer to its aim; assumed


class MeltLimits:
    """A checked request: the heat lines, what the oven can set, how unevenly it heats, what is believed."""

    def __init__(self, request: "Readable") -> None:
        self.low_c, self.high_c = request["window_low_c"], request["window_high_c"]
        self.warn_c, self.stop_c, self.limit_c = request["warn_c"], request["stop_c"], request["limit_c"]
        self.step_s, self.most = request["step_s"], int(request["burst_s"] // request["step_s"])
        oven, mass_kg = request["oven"], request["mass_kg"]
        self.levels = sorted(set(oven.get("levels_percent") or [100]), reverse=True)
        known = oven.get("measured_in") == melt_oven.IN_MELTS
        self.aim = AIM_KNOWN if known else AIM_IN_WINDOW
        self.guard_sd = (GUARD_SD_KNOWN, GUARD_SD_KNOWN_UNREAD) if known else (GUARD_SD, GUARD_SD_UNREAD)
        self.aim_c = self.low_c + self.aim * (self.high_c - self.low_c)
        pot = melt_oven.bowl(request)
        power = melt_oven.power_prior(oven, mass_kg)
        uneven = unevenness.prior(oven, mass_kg)
        self.estimate = Estimate(pot, power, request["start_c"], request.get("start_sd_k"), uneven)
        if known and request.get("start_sd_k") is None:
            self.estimate.pp = power[1] * power[1]

    def hottest_c(self, seconds_s: float, level: int) -> float:
        """Hottest spot in °C at the end of a burst, at the strong end of temperature, power and unevenness together.

        The strong end is the likeliest point of (temperature, log power, unevenness) at which the spot is that hot.
        """
        estimate, phi = self.estimate, self.estimate.uneven.mean
        warm_c, _, by_p, by_t = estimate.spread_after(seconds_s, level)
        g_t, g_p, rise_k = 1.0 + phi * (by_t - 1.0), phi * by_p, max(0.0, warm_c - estimate.t_c)
        to_t, to_p = estimate.tt * g_t + estimate.tp * g_p, estimate.tp * g_t + estimate.pp * g_p
        to_phi = estimate.uneven.var * rise_k
        on_k = phi * estimate.on_sd_k(level)
        size = math.sqrt(max(1e-12, g_t * to_t + g_p * to_p + rise_k * to_phi + on_k * on_k))
        strong = self.guard_sd[0 if estimate.heard else 1] / size
        t_c, log_p = estimate.t_c + strong * to_t, estimate.log_p + strong * to_p
        rise_k = estimate.after(seconds_s, t_c, log_p, level) - t_c
        return t_c + (phi + strong * to_phi) * rise_k + strong * on_k * on_k

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

    def expected_c(self, seconds_s: float, level: int) -> float:
        """Bulk temperature in °C expected at the end of a burst."""
        return self.estimate.after(seconds_s, self.estimate.t_c, self.estimate.log_p, level)

    def steps_to(self, temp_c: float, level: int) -> float:
        """Steps, not rounded, after which the bulk is expected at temp_c; never less than 0, `most` if never."""
        estimate, pot = self.estimate, self.estimate.pot
        power_w = 0.01 * level * estimate.power_w() * estimate.share_left()
        net_w = power_w - pot.loss_w(estimate.t_c)
        if net_w <= 0.0:
            return float(self.most)
        energy_j = pot.content(temp_c) - pot.content(estimate.t_c) + power_w * melt_oven.MAGNETRON_START_S
        result: float = min(float(self.most), max(0.0, energy_j / net_w / self.step_s))
        return result

    def longest(self, cautious: bool) -> tuple[float, int]:
        """(seconds in s, level in %) of the burst that comes nearest to its aim; 0.0 s when not even one step is safe.

        The highest level that comes as near as any. Lower ones are for a step that is too coarse at full power.
        cautious: at the strong end the bulk, too, stays below the window's top, unless that would leave more than half
        of the way to the window.
        """
        best = 0.0, self.levels[0]
        nearest_k = math.inf
        for level in self.levels:
            seconds_s = self._longest_s(cautious, level)
            off_k = abs(self.aim_c - self.expected_c(seconds_s, level)) if seconds_s > 0.0 else math.inf
            if off_k < nearest_k - NEARER_K:
                best, nearest_k = (seconds_s, level), off_k
            # Half a step at this level misses the aim by no more than a lower level would gain.
            if self.step_s * 0.005 * level * self.estimate.power_w() <= NEARER_K * self.estimate.pot.capacity(
                self.aim_c
            ):
                break
        return best

    def _longest_s(self, cautious: bool, level: int) -> float:
        if self.expected_c(self.step_s, level) > self.stop_c:
            return 0.0
        steps = max(1, int(self.steps_to(self.aim_c, level) + 0.5))
        if cautious:
            held = self.most_steps(steps, lambda seconds_s: self.guarded_bulk_c(seconds_s, level) <= self.high_c)
            short_k = self.low_c - self.expected_c(held * self.step_s, level)
            if 2.0 * short_k > self.low_c - self.estimate.t_c:
                held = int(self.steps_to(self.low_c, level)) + 1
            steps = min(steps, max(1, held))
        safe = self.most_steps(
            min(steps, self.most), lambda seconds_s: self.hottest_c(seconds_s, level) <= self.limit_c
        )
        return float(self.step_s * safe)

    def guarded_bulk_c(self, seconds_s: float, level: int) -> float:
        """Bulk temperature in °C after a burst, 95 % point."""
        warm_c, variance, _, _ = self.estimate.spread_after(seconds_s, level)
        return warm_c + BULK_SD * math.sqrt(variance)
