"""When a tray of clusters takes a second deposit and when it comes free: each a round cap on its share of the tray."""

import math

from ...core.problems import Problem
from ...core.statistics import SD_TO_10_PERCENT
from ...physics import bases, convection, materials
from ...physics.spherical_cap import CapCooling, SphericalCap, height_m
from ...steps.cool import cooling_curve
from ...steps.cool.chill_fields import as_told_s

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from ...types import Warning


# A cluster comes off its paper whole so much colder than a slab of its caramel is ready to cut: a usual tray then comes
# free one to two hours after the second deposit at 68 to 72 °F, which is common practice, no published source.
FREE_BELOW_READY_K = 3.0
# In a room above free_c − 1 K a cluster never cools to that: it stays as long as in a room at just this limit, and is
# then chilled.
CONTACT_M2K_W = 0.005  # parchment between cluster and tray, as cool.plan takes it (asme_1992)
TACKY_C = cooling_curve.MILESTONES[1][2]
COLD_C = 32.0  # a top face this cool welds no more, in any room; assumed
LAID_ABOVE_ROOM_K = 6.0  # caramel is laid at least this much warmer than the room; assumed
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
    """What all clusters of a tray share; length and width in m, softer_k as flow.softness, ready_c of a slab."""

    def __init__(
        self,
        base: str,
        length_m: float,
        width_m: float,
        per_tray: int,
        room_c: float,
        softer_k: float = 0.0,
        ready_c: float = cooling_curve.READY_C,
    ) -> None:
        self.asked, self.softer_k, self.ready_c = (base, length_m, width_m, per_tray), softer_k, ready_c
        self.free_c = ready_c - FREE_BELOW_READY_K
        self.base, self.room_c, self.share_m2 = base, room_c, length_m * width_m / per_tray
        plate_m = convection.plate_length_m(length_m, width_m)
        # The tray beside a cluster is lined: it shines as food does, whatever lies below.
        self.top = convection.face("still_air", bases.SLAB_EMISSIVITY, plate_m, True)
        self.bottom = convection.face("insulated", 0.0, plate_m, False)  # it stands on a table
        self.tacky_c, self.cold_c = TACKY_C - softer_k, COLD_C - softer_k

    def in_room(self, room_c: float) -> "Tray":
        """The tray in another room."""
        return Tray(*self.asked, room_c, self.softer_k, self.ready_c)

    def in_room_that_brings(self, temp_c: float) -> "Tray":
        """The tray in the warmest room in which clusters come to temp_c (°C), if this one is warmer."""
        warmest_c = temp_c - cooling_curve.ROOM_MARGIN_K
        return self if self.room_c <= warmest_c else self.in_room(warmest_c)

    def milestone_times(
        self, mixture: "Mixture", across_m: float, loss_factor: float, base_start_c: float, last: str
    ) -> "MilestoneTimes":
        """When a cluster passes milestones, up to `last`: tacky, cold or free."""
        # What heaps higher than half a ball is taken to be as wide as one.
        radius_m = max(0.5 * across_m, (1.5 * mixture.volume_m3 / math.pi) ** (1.0 / 3.0))
        tall_m = height_m(mixture.volume_m3, radius_m)
        ratio = max(1.0, self.share_m2 / (math.pi * radius_m * radius_m))
        cap = SphericalCap(radius_m, tall_m, mixture.conductivity, mixture.capacity, self.base, ratio, CONTACT_M2K_W)
        course = CapCooling(cap, mixture.start_c, base_start_c, self.room_c, self.top, self.bottom, loss_factor)
        points, tacky = [(0.0, mixture.start_c, mixture.start_c)], None
        until_c = {"tacky": self.tacky_c, "cold": self.cold_c, "free": self.free_c}[last]
        while (course.core_c if last == "free" else course.surface_c) > until_c:
            if course.at_s > cooling_curve.LONGEST_S:
                raise Problem("base", "tray_cools_too_slowly", until_c, unit="°C")
            before = (course.surface_c, course.mean_c(), course.base_c())
            course.advance()
            points.append((course.at_s, course.core_c, course.surface_c))
            if tacky is None and course.surface_c <= self.tacky_c:
                share = (before[0] - self.tacky_c) / (before[0] - course.surface_c)
                tacky = (
                    before[1] + share * (course.mean_c() - before[1]),
                    before[2] + share * (course.base_c() - before[2]),
                )
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
    room_c, frees = tray.room_c, tray.in_room_that_brings(tray.free_c)
    first = Mixture(parts, room_c)
    if second is None:
        slow = frees.milestone_times(first, across_m, slow_loss, room_c, "free")
        fast = frees.milestone_times(first, across_m, fast_loss, room_c, "free")
        return None, _free(math.sqrt(slow.free_s * fast.free_s), slow.free_s, fast.free_s)
    if not cooling_curve.is_brought(tray.tacky_c, room_c):
        warmest_room_c = tray.tacky_c - cooling_curve.ROOM_MARGIN_K
        raise Problem("room_c", "room_too_warm_for_deposits", room_c, high=warmest_room_c, unit="°C")
    warm = Mixture([parts[0][:2] + (warmest_c,)] + parts[1:], room_c)
    light = (first, across_m) if lightest is None else (Mixture(lightest[0], room_c), lightest[1])
    welds = tray.in_room_that_brings(tray.cold_c)
    slow = welds.milestone_times(warm, across_m, slow_loss, room_c, "cold")
    fast = welds.milestone_times(first, across_m, fast_loss, room_c, "cold")
    cold_s = welds.milestone_times(light[0], light[1], fast_loss, room_c, "cold").cold_s
    if cold_s <= slow.tacky_s:
        raise Problem("second_kg", "no_time_to_weld", second[1], unit="kg")
    from_s, left = slow.tacky_s, fast.left
    if welds is not tray:
        # Here a deposit never gets too cold to weld: there is as much time from tacky on as where it just does.
        from_s = tray.milestone_times(warm, across_m, slow_loss, room_c, "tacky").tacky_s
        left = tray.milestone_times(first, across_m, fast_loss, room_c, "tacky").left
    both = Mixture([(material, kg, left[0]) for material, kg, _ in parts] + [second], room_c)
    free_s = frees.milestone_times(both, across_m, 1.0, left[1], "free").free_s
    return {"from_s": from_s, "to_s": from_s + cold_s - slow.tacky_s}, _free(free_s, slow.cold_s, fast.cold_s)


def chill(
    tray: "Tray",
    parts: "list[tuple[Readable, float, float]]",
    across_m: float,
    second: "tuple[Readable, float, float] | None",
    fridge_c: float,
) -> "Document | None":
    """How long a tray that its room leaves too warm to be freed is chilled, a kelvin above the room when it goes in;
    None where the room frees it. As `windows`; the tray goes along and stands on a shelf as on a table."""
    if cooling_curve.is_brought(tray.free_c, tray.room_c):
        return None
    if not cooling_curve.is_brought(tray.free_c, fridge_c):
        lowest_c = fridge_c + cooling_curve.ROOM_MARGIN_K + FREE_BELOW_READY_K
        raise Problem("target_c", "fridge_too_warm", tray.ready_c, low=lowest_c, unit="°C")
    from_c = tray.room_c + cooling_curve.ROOM_MARGIN_K
    every = [(material, kg, from_c) for material, kg, _ in parts + ([second] if second else [])]
    inside = tray.in_room(fridge_c)
    chill_s = inside.milestone_times(Mixture(every, fridge_c), across_m, 1.0, from_c, "free").free_s
    return {"from_c": from_c, "fridge_c": fridge_c, "seconds_s": chill_s}


def too_warm_to_free(reply: "Readable") -> "list[Warning]":
    """What to say of a room that leaves clusters too warm to come off their paper."""
    chilled = reply["chill"]
    if chilled is None:
        return []
    values = {"room_c": chilled["from_c"] - cooling_curve.ROOM_MARGIN_K, "bench_s": reply["free"]["from_s"]}
    values.update(chill_s=as_told_s(chilled["seconds_s"]), fridge_c=chilled["fridge_c"])
    return [{"code": "chill_trays", "values": values}]


def _free(free_s: float, slow_s: float, fast_s: float) -> "Document":
    """When the tray comes free: from the expected time to as much later as slow heat losses make one of its events.

    slow_s, fast_s: the same event with heat losses at their 2 % points; the window ends at its 10 % point.
    """
    later = (slow_s / fast_s) ** (0.5 * SD_TO_10_PERCENT / COLD_GUARD_SD) if fast_s > 0.0 else 1.0
    return {"from_s": free_s, "to_s": free_s * later}


def run_together(request: "Readable", thinner: float) -> "list[Warning]":
    """What to say of a gap that the warmest deposits close."""
    wide_m = spread_m(request["spread_m"], 1.0, thinner)
    if wide_m <= request["spread_m"] + request["gap_m"]:
        return []
    return [{"code": "run_together", "values": {"spread_m": wide_m, "gap_m": wide_m - request["spread_m"]}}]
