"""The estimate about a melt: bulk temperature and absorbed power, corrected by every burst, rest and reading.

State: bulk temperature t_c (°C) and log_p, the logarithm of the cold oven's power in W, with their covariance. Bursts,
stirs and rests move it along the energy balance of `physics.pot`; "stirs freely?" and infrared readings correct it.
"""

import math

from ...core.statistics import normal_below
from ...physics import materials
from ...physics import pot as physics_pot
from . import oven
from .unevenness import Unevenness

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...physics.pot import Pot


START_SD_K = 1.2  # a block's one reading stands for its whole inside; assumed
# A warm oven falls by 10–15 % over minutes of running, most of it early (from memory). It cools while it is stirred:
# half of that is taken, with the rest as a spread for each burst (assumed).
WARM_LOSS, WARM_S = 0.06, 120.0
POWER_DRIFT_SD = 0.016
FRESH_COLD_K, FRESH_SD_K = 1.0, 2.0  # a reading within seconds of stirring; from memory
SKIN_COLD_K, SKIN_SD_K = 4.0, 2.1  # a reading of a skin runs 3–5 K cold; from memory
SKIN_SHARE = 0.1  # how often a skin is read after all; assumed
LUMP_COLD_K, LUMP_SD_K = 2.5, 8.0  # before it stirs freely readings scatter by 6 K and run 3 K cold; almost no weight
FREE_C, FREE_SD_K = 48.0, 2.6  # stirs freely from 46–52 °C; common practice, no published source
NO_LUMPS_C = FREE_C + 16.0  # as hot as this there are no lumps, whatever was said: grain or scorched bits (assumed)
FAR_SD = 4.0  # a reading further off than this asks for a second one
MOST_SD_K = 60.0  # beyond that a melt is unknown; keeps absurd histories within what a reply may say
MOST_POWER_W, LEAST_POWER_W = 3500.0, 20.0  # no oven heats a bowl with more; with less it is off
AGREE_K = 7.0  # two readings that agree within this are believed together; 2.4 standard deviations of a difference


class Estimate:
    """Mean and covariance of (t_c, log_p), and what the readings so far amount to."""

    drift_sd = POWER_DRIFT_SD  # 0.0 where one power stands for the whole melt

    def __init__(
        self,
        pot: "Pot",
        power: tuple[float, float],
        start_c: float,
        start_sd_k: float | None = None,
        uneven: tuple[float, float] = (1.0, 0.0),
    ) -> None:
        power_w, power_sd = power
        self.uneven = Unevenness(uneven[0], uneven[1])
        self.pot = pot
        self.t_c = start_c
        self.log_p = math.log(power_w)
        self.on_s = 0.0  # how long the oven has run at full power
        # A capacity that is off looks like a power that is off: both are learned as one.
        start_sd_k = START_SD_K if start_sd_k is None else max(START_SD_K, start_sd_k)
        self.tt, self.tp, self.pp = start_sd_k * start_sd_k, 0.0, power_sd * power_sd + pot.capacity_sd(50.0) ** 2
        self.free: bool | None = None  # the last answer to "stirs freely?"
        self.bursts = 0
        self.readings = 0  # trusted readings since the last burst or rest
        self.seen_c = 0.0  # their sum in °C
        self.asked = 0  # readings since then, trusted or not
        self.stood_k = 0.0  # how much it has cooled since the last burst
        self.heard = False  # whether any reading was trusted so far
        self.doubt_c: float | None = None  # a reading that was too far off to be believed

    def sd_k(self) -> float:
        """Standard deviation of the bulk temperature in K."""
        return math.sqrt(self.tt)

    def shown_c(self) -> float:
        """Mean of the trusted readings since the last burst or rest (°C), as a thermometer shows them."""
        return self.seen_c / self.readings

    def power_w(self) -> float:
        """Power absorbed in W while the oven is cold."""
        return math.exp(self.log_p)

    def share_left(self, on_s: float = 0.0) -> float:
        """What is left of that in the middle of a burst with the magnetron on for so long."""
        return 1.0 - WARM_LOSS * (1.0 - math.exp(-(self.on_s + 0.5 * on_s) / WARM_S))

    def after(self, seconds_s: float, t_c: float, log_p: float, level: int = 100) -> float:
        """Bulk temperature in °C after a burst at a level (%) that starts at t_c; exp(log_p): the cold oven's power."""
        on_s = oven.on_s(seconds_s, level)
        energy_j = math.exp(log_p) * self.share_left(on_s) * on_s
        return self.pot.warmed(t_c, energy_j - self.pot.lost_j(t_c, seconds_s))

    def spread_after(self, seconds_s: float, level: int = 100) -> tuple[float, float, float, float]:
        """(expected bulk temperature in °C, its variance, gain to log_p, gain to t_c) after a burst and a stir."""
        warm_c = self.after(seconds_s, self.t_c, self.log_p, level)
        on_s, capacity = oven.on_s(seconds_s, level), self.pot.capacity(warm_c)
        power_w = self.power_w() * self.share_left(on_s)
        by_t = self.pot.capacity(self.t_c) / capacity
        by_p = power_w * on_s / capacity
        loss_k = physics_pot.LOSS_SD * self.pot.loss_w(warm_c) * (seconds_s + oven.STIR_S) / capacity
        on_k = oven.on_sd_s(level) * power_w / capacity
        own = loss_k * loss_k + on_k * on_k + (by_p * self.drift_sd) ** 2
        variance = by_t * by_t * self.tt + 2.0 * by_t * by_p * self.tp + by_p * by_p * self.pp + own
        return warm_c, variance, by_p, by_t

    def on_sd_k(self, level: int) -> float:
        """Standard deviation in K of what a burst adds, from how long the magnetron really is on."""
        return oven.on_sd_s(level) * self.power_w() / self.pot.capacity(self.t_c)

    def burst(self, seconds_s: float, level: int = 100) -> None:
        """Moves the estimate by a burst and the stir after it."""
        if self.readings == 0:
            self.uneven.stirred(self.t_c + self.stood_k, self.tt)
        self.uneven.burst(self.t_c, self.tt)
        warm_c, variance, by_p, by_t = self.spread_after(seconds_s, level)
        self.tp = by_t * self.tp + by_p * self.pp
        self.t_c, self.tt = warm_c, min(variance, MOST_SD_K * MOST_SD_K)
        self.pp += self.drift_sd * self.drift_sd
        self.bursts += 1
        self.on_s += oven.on_s(seconds_s, level)
        self.stood_k = 0.0
        self._forget_readings()

    def _forget_readings(self) -> None:
        self.readings, self.asked, self.seen_c, self.doubt_c = 0, 0, 0.0, None

    def cool(self, seconds_s: float) -> None:
        """Moves the estimate by a time in the room, standing or stirred."""
        before_c = self.t_c
        self.t_c = self.pot.cooled(before_c, seconds_s)
        self.stood_k += before_c - self.t_c
        spread_k = physics_pot.LOSS_SD * (before_c - self.t_c)
        self.tt += spread_k * spread_k

    def rest(self, seconds_s: float) -> None:
        """A rest happened: once it has cooled by half a kelvin older readings no longer speak for it."""
        before_c = self.t_c
        self.cool(seconds_s)
        if abs(before_c - self.t_c) > 0.5:
            self._forget_readings()

    def stir(self, free: bool | None) -> None:
        """It was stirred and the person said whether it stirs freely (None: did not say)."""
        self.cool(oven.STIR_S)
        self.free = free
        if free is not None and not (free and self.t_c > FREE_C + 8.0):
            self._learn_free(1.0 if free else -1.0)

    def _learn_free(self, sign: float) -> None:
        """Moment matching of the normal estimate with the probability that it stirs freely at a temperature."""
        whole = math.sqrt(self.tt + FREE_SD_K * FREE_SD_K)
        z = sign * (self.t_c - FREE_C) / whole
        share = max(1e-6, normal_below(z))
        slope = math.exp(-0.5 * z * z) / (2.5066282746310002 * share)
        pull = sign * slope / whole
        shrink = slope * (z + slope) / (whole * whole)
        self._move(pull, shrink)

    def _move(self, pull: float, shrink: float) -> None:
        """Adds pull times the covariance to the mean and takes shrink times its square off."""
        tt, tp = self.tt, self.tp
        self.t_c = min(max(self.t_c + pull * tt, materials.LOWEST_C), materials.HIGHEST_C)
        self.log_p = min(max(self.log_p + pull * tp, math.log(LEAST_POWER_W)), math.log(MOST_POWER_W))
        self.tt = max(1e-4, tt - shrink * tt * tt)
        self.pp = max(1e-6, self.pp - shrink * tp * tp)
        self._hold(tp - shrink * tt * tp)

    def _hold(self, tp: float) -> None:
        """Sets the covariance, kept within what the variances allow."""
        most = 0.999 * math.sqrt(self.tt * self.pp)
        self.tp = max(-most, min(most, tp))

    def lumpy(self) -> bool:
        """True while a reading is not to be trusted: it does not stir freely, or nobody said and it is too cool."""
        if self.free is None:
            return self.t_c < FREE_C + 4.0
        return not self.free and self.t_c < NO_LUMPS_C

    def read(self, surface_c: float) -> None:
        """An infrared reading; one far off the prediction is kept in doubt until a second one decides.

        Two that agree are believed; of two that do not, the one nearer to the prediction is, with less weight.
        """
        self.cool(oven.READ_S)
        self.asked += 1
        if self.lumpy() and surface_c < NO_LUMPS_C:
            self._correct(((1.0, LUMP_COLD_K, LUMP_SD_K),), surface_c)
            return
        off_k = surface_c + FRESH_COLD_K - self.t_c
        if abs(off_k) > FAR_SD * math.sqrt(self.tt + FRESH_SD_K * FRESH_SD_K):
            if self.doubt_c is None:
                self.doubt_c = surface_c
                return
            other_k = self.doubt_c + FRESH_COLD_K - self.t_c
            if abs(off_k - other_k) <= AGREE_K:
                self._widen(off_k)
                self._trust(self.doubt_c)
            elif abs(other_k) < abs(off_k):
                self._widen(other_k)
                surface_c = self.doubt_c
            else:
                self._widen(off_k)
        self.doubt_c = None
        self._trust(surface_c)

    def read_spot(self, surface_c: float) -> None:
        """The hottest spot before the stir; it counts as one of the readings after a burst."""
        self.asked += 1
        self.uneven.spot(surface_c, self.t_c < FREE_C)

    def _widen(self, off_k: float) -> None:
        """Widens the estimate when two readings agree with each other but not with it."""
        wider = (self.tt + off_k * off_k) / self.tt
        self.tt, self.pp = min(self.tt * wider, MOST_SD_K * MOST_SD_K), min(0.25, self.pp * wider)
        self._hold(self.tp * wider)

    def _trust(self, surface_c: float) -> None:
        fresh = (1.0 - SKIN_SHARE, FRESH_COLD_K, FRESH_SD_K)
        self._correct((fresh, (SKIN_SHARE, SKIN_COLD_K, SKIN_SD_K)), surface_c)
        self.readings += 1
        self.seen_c += surface_c
        self.heard = True
        self.uneven.stirred(self.t_c + self.stood_k, self.tt)

    def expect_reading(self) -> None:
        """Narrows the estimate as a reading would that comes out as expected; used in plans."""
        self._move(0.0, 1.0 / (self.tt + FRESH_SD_K * FRESH_SD_K))
        self.heard = True

    def _correct(self, kinds: tuple[tuple[float, float, float], ...], surface_c: float) -> None:
        """Moment matching with a mixture of ways to misread: (share, cold by K, standard deviation in K)."""
        weight, mean, square = 0.0, 0.0, 0.0
        for share, cold_k, sd_k in kinds:
            whole = self.tt + sd_k * sd_k
            off_k = surface_c + cold_k - self.t_c
            here = share * math.exp(max(-60.0, -0.5 * off_k * off_k / whole)) / math.sqrt(whole)
            pull = off_k / whole
            weight += here
            mean += here * pull
            square += here * (pull * pull - 1.0 / whole)
        pull = mean / weight
        self._move(pull, pull * pull - square / weight)
