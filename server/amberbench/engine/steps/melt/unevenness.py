"""How unevenly an oven heats: hottest rise over mean rise of one burst, corrected by readings of the hottest spot."""

import math

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable


# What to expect of an oven nobody measured, at 1 kg. Assumed: 1.5–2.5 is usual, more at edges and without a turntable
# (from memory). Mean and standard deviation; the strong end of a burst lies near the upper end of that range.
USUAL, USUAL_SD = 1.95, 0.45
STILL, STILL_SD = 2.25, 0.55  # without a turntable
PER_DOUBLING = 0.15  # larger loads heat less evenly (published in kind only); assumed
LEAST = 1.2  # nobody saw an oven heat more evenly than this; assumed
# The hottest spot that can be seen: part of its rise above the mean lies inside, where no thermometer looks (assumed).
SEEN_SHARE, SEEN_SHARE_SD = 0.92, 0.06
BLOCK_SHARE_SD = 0.25  # the same of a block, whose shape is not that of a bowl of caramel (assumed)
SPOT_COLD_K, SPOT_SD_K = 1.0, 2.0  # a reading of it runs cold and scatters as one of stirred caramel does; from memory
LEAST_RISE_K = 8.0  # a burst that warms less says nothing of it
MOST_SPOTS = 4  # readings of it in one melt
SURE_SD = 0.15  # known as well as this nobody is asked to read the hottest spot; assumed


def usual(turntable: bool, mass_kg: float) -> tuple[float, float]:
    """(hottest rise over mean rise to be expected of an oven nobody measured, its standard deviation)."""
    mean, sd = (USUAL, USUAL_SD) if turntable else (STILL, STILL_SD)
    return max(LEAST, mean + by_mass(mass_kg)), sd


def by_mass(mass_kg: float) -> float:
    """What a mass adds to the unevenness at 1 kg."""
    return PER_DOUBLING * math.log(mass_kg) / math.log(2.0)


def prior(oven: "Readable", mass_kg: float) -> tuple[float, float]:
    """(unevenness, its standard deviation): as typed or measured, else what is usual."""
    if oven["unevenness"] is not None:
        return oven["unevenness"], oven.get("unevenness_sd") or 0.0
    return usual(oven["turntable"], mass_kg)


class Unevenness:
    """A normal estimate about the unevenness, and the burst it is learnt from."""

    def __init__(self, mean: float, sd: float) -> None:
        self.mean, self.var = mean, sd * sd
        self.before: tuple[float, float] | None = None  # bulk (°C) and its variance before the last burst
        self.spot_c: float | None = None  # the hottest spot read after it, not stirred yet
        self.lumpy = False  # whether it was read of a block with lumps
        self.spots = 0  # readings of it so far
        self.unread = mean, sd * sd  # what was believed without the last of them

    def burst(self, t_c: float, variance: float) -> None:
        """A burst begins at a bulk temperature."""
        self.before, self.spot_c, self.lumpy = (t_c, variance), None, False
        self.unread = self.mean, self.var

    def spot(self, surface_c: float, lumpy: bool) -> None:
        """The hottest spot was read before the stir."""
        self.spot_c, self.lumpy = surface_c, lumpy
        self.spots += 1

    def stirred(self, t_c: float, variance: float) -> None:
        """What the bulk was at the end of the burst, by all that is known so far: the spot tells the unevenness."""
        if self.spot_c is None or self.before is None or t_c - self.before[0] < LEAST_RISE_K:
            return
        before_c, before_var = self.before
        rise_k = t_c - before_c
        seen = 1.0 + max(0.0, (self.spot_c + SPOT_COLD_K - t_c) / (SEEN_SHARE * rise_k))
        # How far off a reading may be goes by what was believed, not by what was read: else high ones count for less.
        mean, var = self.unread
        over = mean - 1.0
        read = (SPOT_SD_K * SPOT_SD_K + mean * mean * variance + over * over * before_var) / (rise_k * rise_k)
        own_sd = max(over, 0.5) * (BLOCK_SHARE_SD if self.lumpy else SEEN_SHARE_SD)
        own = read / (SEEN_SHARE * SEEN_SHARE) + own_sd * own_sd
        gain = var / (var + own)
        self.mean, self.var = mean + gain * (seen - mean), var * (1.0 - gain)
