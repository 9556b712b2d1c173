"""A room that does not bring a slab to the temperature it is cut at: how long the bench helps, and the chill after."""

from ...core.copy_with import copy_with
from ...core.problems import Problem
from . import time_spread
from .cooling_curve import COLUMNS, ROOM_MARGIN_K, Slab, is_brought, times
from .wide_base import slab as slab_on_base

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable


# In the refrigerator the slab lies on its parchment on a cold steel sheet or shelf, in still air. Wrapping film
# itself keeps back little; air under it does more.
SHELF = "steel_sheet"
SHELF_SD = 0.2  # of the logarithm of the heat loss there, as of a bench that nobody has measured (assumed)


def is_brought_here(
    request: "Readable", slab: "Slab", points: list[tuple[float, float, float]], loss_factor: float
) -> bool:
    """Whether a slab's own bench brings it to its target: the room does, or a base that was colder than the room, in
    the time that a bench is waited for."""
    if is_brought(slab.target_c, slab.room_c):
        return True
    if slab.base_start_c >= slab.room_c or points[-1][1] > slab.target_c:
        return False
    bench = coolest_brought(request)
    brought: bool = times(slab, points)["ready"] <= times(bench, bench.run(loss_factor))["ready"]
    return brought


def coolest_brought(request: "Readable") -> "Slab":
    """The slab in its own room, or in the warmest one that still brings it to its target.

    After the time it takes there, the bench of a warmer room brings nothing more either: the slab is within a kelvin
    of the room. So a warmer room never ends the wait on the bench sooner. There the base is no colder than the room.
    """
    warmest_c, base_c = request["target_c"] - ROOM_MARGIN_K, request["base_start_c"]
    if request["room_c"] <= warmest_c:
        return slab_on_base(request)
    base_c = None if base_c is None else max(base_c, warmest_c)
    return slab_on_base(copy_with(request, room_c=warmest_c, base_start_c=base_c))


def chilled(request: "Readable", from_c: float) -> "Slab":
    """The slab in the refrigerator, at from_c (°C) when it comes in.

    Raises Problem `fridge_too_warm` when that does not bring it to its target.
    """
    if not is_brought(request["target_c"], request["fridge_c"]):
        lowest_c = request["fridge_c"] + ROOM_MARGIN_K
        raise Problem("target_c", "fridge_too_warm", request["target_c"], low=lowest_c, unit="°C")
    inside = copy_with(request, start_c=from_c, room_c=request["fridge_c"], top="still_air", bottom="still_air")
    return Slab(copy_with(inside, base=SHELF, base_thickness_m=None, base_start_c=None))


def cooled(
    request: "Readable",
    slab: "Slab",
    points: list[tuple[float, float, float]],
    loss_factor: float,
    loss_factor_sd: float,
) -> "tuple[list[tuple[str, float, float, float]], list[tuple[float, float, float]], Document]":
    """(milestones, course, chill as `chill_fields.CHILL`) of a slab that its bench leaves above its target.

    slab, points: on the bench, in the room as it is. Milestones that the room brings come from there; the others in
    the refrigerator, after as long on the bench as it brings anything.
    """
    bench = coolest_brought(request)
    spans = time_spread.spans(bench, bench.run(loss_factor), loss_factor, loss_factor_sd, request["spread"])
    _, bench_s, bench_low_s, bench_high_s = next(one for one in spans if one[0] == "ready")
    by_room = [one[0] for one in slab.thresholds if is_brought(one[2], slab.room_c)]
    # A base that was colder than the room may bring what the room does not.
    met = times(slab, points)
    below = [name for name, point, temp_c in slab.thresholds[:-1] if points[-1][COLUMNS[point]] <= temp_c]
    brought = by_room + [name for name in below if name not in by_room and met.get(name, bench_s) < bench_s]
    on_bench = time_spread.spans(slab, points, loss_factor, loss_factor_sd, request["spread"])
    found = [one for one in on_bench if one[0] in brought]
    cold = chilled(request, slab.room_c + ROOM_MARGIN_K)
    course = cold.run(1.0)
    inside = [one for one in time_spread.spans(cold, course, 1.0, SHELF_SD, 0.0) if one[0] not in brought + ["cold"]]
    for name, at_s, low_s, high_s in inside:
        found.append((name, bench_s + at_s, bench_low_s + low_s, bench_high_s + high_s))
    _, seconds_s, low_s, high_s = inside[-1]
    course = [one for one in course if one[0] < seconds_s] + [(seconds_s, cold.target_c, _surface_c(course, seconds_s))]
    found_chill = {"bench_s": bench_s, "from_c": cold.start_c, "fridge_c": request["fridge_c"]}
    found_chill.update(seconds_s=seconds_s, low_s=low_s, high_s=high_s, surface_c=course[-1][2])
    found_chill.update(_sooner(request, slab, found if "firm" in brought else []))
    kept = [one for one in points if one[0] < bench_s]
    return found, kept + [(bench_s + at_s, core_c, surface_c) for at_s, core_c, surface_c in course], found_chill


def _surface_c(course: list[tuple[float, float, float]], at_s: float) -> float:
    """The top face in °C at a time on a course, straight between its points."""
    after = next(i for i in range(1, len(course)) if course[i][0] >= at_s)
    before, next_one = course[after - 1], course[after]
    share = (at_s - before[0]) / (next_one[0] - before[0])
    return before[2] + share * (next_one[2] - before[2])


def _sooner(request: "Readable", slab: "Slab", milestones: list[tuple[str, float, float, float]]) -> "Document":
    """From when on it may go into the refrigerator without waiting for the bench, and for how long then."""
    at_s = [one[1] for one in milestones if one[0] == "firm"]
    if not at_s:
        return {"sooner_at_s": None, "sooner_s": None}
    firm_c = next(one[2] for one in slab.thresholds if one[0] == "firm")
    warm = chilled(request, min(firm_c, slab.start_c))
    return {"sooner_at_s": at_s[0], "sooner_s": times(warm, warm.run(1.0))["ready"]}
