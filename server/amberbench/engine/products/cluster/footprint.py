"""What stays on the width of a cluster: its first deposit, a second one on it, what lies under. The rest is refused."""

import math

from ...core.check import is_above, is_below
from ...core.problems import Problem
from ...physics import materials

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable


THINNEST_M = 0.001  # caramel that stands does not lie thinner, the mean over its width; assumed
# Of a heap of nuts this share is nut (from memory, as of balls); a heap of more than so many half balls as wide as the
# cluster is covered by no caramel (assumed).
HEAP_SHARE, MOST_HALF_BALLS = 0.6, 3.0


def half_ball_m3(across_m: float) -> float:
    """Volume of half a ball: more caramel of this width would not stay where it is laid."""
    return math.pi * across_m**3 / 12.0


def least_m(volume_m3: float) -> float:
    """Width in m of half a ball: a narrower deposit of this volume would not stay where it is laid."""
    result: float = 2.0 * (1.5 * volume_m3 / math.pi) ** (1.0 / 3.0)
    return result


def most_m(volume_m3: float) -> float:
    """Width in m that a deposit of this volume does not spread beyond."""
    return math.sqrt(4.0 * volume_m3 / (math.pi * THINNEST_M))


def refuse_width(spread_m: float, sizes: "list[tuple[float, float]]", second_kg: float, density: float) -> None:
    """Refuses a width that the heaviest first deposit does not stay in or does not spread to, and a second deposit that
    runs off the first: both together stay in its width as one deposit would.

    sizes: [(kg of a first deposit, its width over spread_m)], the heaviest 1 wide.
    """
    heaviest_kg = max(kg for kg, _ in sizes)
    high_m = most_m(heaviest_kg / density)
    if is_above(spread_m, high_m):
        raise Problem("spread_m", "spread_too_wide", spread_m, high=high_m, unit="m")
    if is_below(spread_m, least_m(heaviest_kg / density)):
        low_m = max(least_m((kg + second_kg) / density) / wide for kg, wide in sizes)
        raise Problem("spread_m", "spread_too_narrow", spread_m, low=low_m, unit="m")
    most_kg = max(0.0, min(half_ball_m3(spread_m * wide) * density - kg for kg, wide in sizes))
    if second_kg > 0.0 and is_above(second_kg, most_kg):
        raise Problem("second_kg", "second_runs_off", second_kg, high=most_kg, unit="kg")


def refuse_heap(request: "Readable", spread_m: float) -> None:
    """Refuses more counted out under a cluster than caramel of its width covers, by the kind that takes most room."""
    most_m3 = MOST_HALF_BALLS * half_ball_m3(spread_m) * HEAP_SHARE
    rooms = []
    for one in request["under"]:
        each_m3 = one["kg_each"] / materials.density(materials.resolved(one["material"]), request["room_c"])
        rooms.append((one["count"] * each_m3, each_m3))
    all_m3 = sum(room for room, _ in rooms)
    if not is_above(all_m3, most_m3):
        return
    index = max(range(len(rooms)), key=lambda number: (rooms[number][0], -number))
    one, place = request["under"][index], "under[" + str(index) + "]."
    left_m3 = max(0.0, most_m3 - all_m3 + rooms[index][0])
    if int(left_m3 / rooms[index][1]) >= 1:
        raise Problem(place + "count", "too_much_under", one["count"], high=int(left_m3 / rooms[index][1]))
    most_kg = one["kg_each"] * left_m3 / rooms[index][0]
    raise Problem(place + "kg_each", "too_much_under", one["kg_each"], high=most_kg, unit="kg")
