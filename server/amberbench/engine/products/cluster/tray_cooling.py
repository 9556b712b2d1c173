"""When a tray of clusters takes a second deposit and when it comes free: each a round cap on its share of the tray."""

import math

from ...core.problems import Problem
from ...core.statistics import SD_TO_10_PERCENT
from ...physics import bases, convection, materials
from ...physics.spherical_cap import CapCooling, SphericalCap, height_m
from ...steps.cool import cooling_curve

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable


# Hottest point of a cluster that comes off its paper whole (assumed). In a room above FREE_C − 1 K a cluster never
# cools to it: the time is then that of a room at just this limit, so that a warmer room never frees a tray sooner.
FREE_C = 24.0
CONTACT_M2K_W = 0.005  # parchment between cluster and tray, as cool.plan takes it (asme_1992)
TACKY_C, TACKY_K = cooling_curve.MILESTONES[1][2:]
COLD_C, COLD_K = 32.0, 6.0  # a top face this cool, or this near the target in a warm room, welds no more; assumed
LOSS_SD = 0.2  # of the logarithm of the heat loss, as cool.plan takes it (assumed)
COLD_GUARD_SD = 2.05  # of its standard deviations: 2 % points
# Spread goes with the volume to the power of ⅜, and with how thin it is to that of ⅛ (huppert_1982).
EXPONENT, THIN_EXPONENT = 0.375, 0.125


def spread_m(largest_m: float, share: float, thinner: float = 1.0) -> float:
    """Spread in m of a deposit that has a share of the weight of the one that spreads to largest_m, and is so many
    times thinner."""
    result: float = largest_m * share**EXPONENT * thinner**THIN_EXPONENT
    return result


class Mixture:
    """Caramel and what lies under it as one stuff: [(resolved material, kg, °C)] → start_c, volume, properties."""

    def __init__(self, parts: "list[tuple[Readable, float, float]]", room_c: float) -> None:
        hottest_c = max(temp_c for _, _, temp_c in parts)
        middle_c = 0.5 * (hottest_c + room_c)
        heat_j_k = heat = self.volume_m3 = conductance = 0.0
        for material, kg, temp_c in parts:
            part_j_k = kg * materials.heat_capacity(material, middle_c)
            volume = kg / materials.density(material, middle_c)
            heat_j_k += part_j_k
            heat += part_j_k * temp_c
            self.volume_m3 += volume
            conductance += volume * materials.conductivity(material, middle_c)
        self.start_c = heat / heat_j_k
        self.conductivity = conductance / self.volume_m3
        self.capacity = heat_j_k / self.volume_m3


class Tray:
    """What all clusters of a tray share; length and width in m, softer_k as flow.softness."""

    def __init__(
        self, base: str, length_m: float, width_m: float, per_tray: int, room_c: float, softer_k: float = 0.0
    ) -> None:
        self.asked = base, length_m, width_m, per_tray
        self.base, self.room_c, self.share_m2 = base, room_c, length_m * width_m / per_tray
        plate_m = convection.plate_length_m(length_m, width_m)
        # The tray beside a cluster is lined: it shines as food does, whatever lies below.
        self.top = convection.face("still_air", bases.SLAB_EMISSIVITY, plate_m, True)
        self.bottom = convection.face("insulated", 0.0, plate_m, False)  # it stands on a table
        self.free_c = max(FREE_C, room_c + cooling_curve.ROOM_MARGIN_K)
        self.tacky_c = max(TACKY_C - softer_k, self.free_c + TACKY_K)
        self.cold_c = max(COLD_C - softer_k, self.free_c + COLD_K)

    def in_warmest_room(self) -> "Tray":
        """The tray in the warmest room in which clusters come free, if this one is warmer."""
        warmest_c = FREE_C - cooling_curve.ROOM_MARGIN_K
        return self if self.room_c <= warmest_c else Tray(*self.asked, warmest_c)

    def milestone_times(
        self, mixture: "Mixture", across_m: float, loss_factor: float, base_start_c: float, free: bool = True
    ) -> "MilestoneTimes":
        """When a cluster passes milestones: to the end where `free` is asked for, else until too cold to weld."""
        # What heaps higher than half a ball is taken to be as wide as one.
        radius_m = max(0.5 * across_m, (1.5 * mixture.volume_m3 / math.pi) ** (1.0 / 3.0))
        tall_m = height_m(mixture.volume_m3, radius_m)
        ratio = max(1.0, self.share_m2 / (math.pi * radius_m * radius_m))
        cap = SphericalCap(radius_m, tall_m, mixture.conductivity, mixture.capacity, self.base, ratio, CONTACT_M2K_W)
        course = CapCooling(cap, mixture.start_c, base_start_c, self.room_c, self.top, self.bottom, loss_factor)
        points, tacky = [(0.0, mixture.start_c, mixture.start_c)], None
        while course.surface_c > self.cold_c or (free and course.core_c > self.free_c):
            if course.at_s > cooling_curve.LONGEST_S:
                raise Problem("base", "tray_cools_too_slowly", self.free_c, unit="°C")
            course.advance()
            points.append((course.at_s, course.core_c, course.surface_c))
            if tacky is None and course.surface_c <= self.tacky_c:
                tacky = (course.mean_c(), course.base_c())
        return MilestoneTimes(points, self, tacky or (mixture.start_c, base_start_c))


class MilestoneTimes:
    """Times in s at which a cluster is tacky, too cold to weld and free (rough where nobody asked for it).

    left: (mean of the cluster, base under it) in °C when it was tacky.
    """

    def __init__(self, points: list[tuple[float, float, float]], tray: "Tray", left: tuple[float, float]) -> None:
        self.left = left
        if len(points) == 1:
            self.tacky_s = self.cold_s = self.free_s = 0.0
            return
        self.tacky_s = _crossed_s(points, 2, tray.tacky_c, tray.room_c)
        self.cold_s = _crossed_s(points, 2, tray.cold_c, tray.room_c)
        self.free_s = _crossed_s(points, 1, tray.free_c, tray.room_c)


def _crossed_s(points: list[tuple[float, float, float]], column: int, temp_c: float, room_c: float) -> float:
    """`crossing_s`, infinite where it never comes: only a time that nobody asked for."""
    at_s = cooling_curve.crossing_s(points, column, temp_c, room_c)
    return math.inf if at_s is None else at_s


def windows(
    tray: "Tray",
    parts: "list[tuple[Readable, float, float]]",
    across_m: float,
    lightest: "tuple[list[tuple[Readable, float, float]], float] | None",
    second: "tuple[Readable, float, float] | None",
    warmest_c: float,
) -> "tuple[Document | None, Document]":
    """(second {from_s, to_s} or None, free {from_s, to_s}) of a tray.

    parts: [(resolved material, kg, °C)] of the heaviest cluster, across_m its spread; lightest: (parts, spread) of the
    lightest one, or None if all are alike; second: (resolved material, kg, °C) of the second deposit, or None;
    warmest_c: of caramel from a fresh fill, by which a first deposit turns tacky last.
    """
    slow_loss, fast_loss = math.exp(-COLD_GUARD_SD * LOSS_SD), math.exp(COLD_GUARD_SD * LOSS_SD)
    room_c, alone, frees = tray.room_c, second is None, tray.in_warmest_room()
    here = frees if alone else tray
    first = Mixture(parts, room_c)
    warm = first if alone else Mixture([parts[0][:2] + (warmest_c,)] + parts[1:], room_c)
    slow = here.milestone_times(warm, across_m, slow_loss, room_c, alone)
    fast = here.milestone_times(first, across_m, fast_loss, room_c, alone)
    if second is None:
        return None, _free(math.sqrt(slow.free_s * fast.free_s), slow.free_s, fast.free_s)
    light = fast
    if lightest is not None:
        light = tray.milestone_times(Mixture(lightest[0], room_c), lightest[1], fast_loss, room_c, False)
    if light.cold_s <= slow.tacky_s:
        raise Problem("second_kg", "no_time_to_weld", second[1], unit="kg")
    mean_c, base_c = fast.left
    both = Mixture([(material, kg, mean_c) for material, kg, _ in parts] + [second], room_c)
    free_s = frees.milestone_times(both, across_m, 1.0, base_c).free_s
    return {"from_s": slow.tacky_s, "to_s": light.cold_s}, _free(free_s, slow.cold_s, fast.cold_s)


def _free(free_s: float, slow_s: float, fast_s: float) -> "Document":
    """When the tray comes free: from the expected time to as much later as slow heat losses make one of its events.

    slow_s, fast_s: the same event with heat losses at their 2 % points; the window ends at its 10 % point.
    """
    later = (slow_s / fast_s) ** (0.5 * SD_TO_10_PERCENT / COLD_GUARD_SD) if fast_s > 0.0 else 1.0
    return {"from_s": free_s, "to_s": free_s * later}
