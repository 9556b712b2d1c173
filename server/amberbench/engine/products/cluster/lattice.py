"""Where deposits go on a tray: a square and two staggered lattices, the one that holds most kept, in laying order."""

import math

PATTERNS = ("square", "staggered_long", "staggered_short")
ROW_SHARE = 0.5 * math.sqrt(3.0)  # distance of staggered rows over the pitch
# A nanometre of grace: a tray made for so many deposits holds them in spite of rounding.
ROUNDING_M = 1e-9


def _fitting(room_m: float, step_m: float) -> int:
    """How many points at a step fit on a stretch, one at each end counted; none on a stretch of less than nothing."""
    return 0 if room_m < -ROUNDING_M else 1 + math.floor((room_m + ROUNDING_M) / step_m)


def square_rows(along_m: float, across_m: float, pitch_m: float) -> list[tuple[float, int]]:
    """[(offset m, number of points)] of the rows of a square lattice; rooms for centres in m."""
    return [(0.0, _fitting(along_m, pitch_m))] * _fitting(across_m, pitch_m)


def staggered_rows(along_m: float, across_m: float, pitch_m: float) -> list[tuple[float, int]]:
    """The same of a staggered lattice: every other row lies half a pitch further on."""
    full = (0.0, _fitting(along_m, pitch_m))
    shifted = (0.5 * pitch_m, _fitting(along_m - 0.5 * pitch_m, pitch_m))
    return [shifted if row % 2 else full for row in range(_fitting(across_m, ROW_SHARE * pitch_m))]


def best(
    length_m: float, width_m: float, rim_m: float, spread_m: float, pitch_m: float
) -> tuple[str, list[tuple[float, float]]]:
    """(pattern, [(x, y), …] in m) of the lattice that holds most deposits, the earlier one of PATTERNS if two do.

    length_m, width_m (m) of the tray, rim_m (m) kept free along its edges, spread_m (m) across a deposit, pitch_m (m)
    between centres. x runs along the length and y along the width from one corner of the tray; what room is left over
    is shared between both sides. Laying order: row by row, back and forth. No positions when none fits.
    """
    along_m, across_m = (side_m - 2.0 * rim_m - spread_m for side_m in (length_m, width_m))
    every = (
        square_rows(along_m, across_m, pitch_m),
        staggered_rows(along_m, across_m, pitch_m),
        staggered_rows(across_m, along_m, pitch_m),
    )
    most = 0
    for index in range(1, len(every)):
        if _total(every[index]) > _total(every[most]):
            most = index
    step_m = ROW_SHARE * pitch_m if most else pitch_m
    edge_m = rim_m + 0.5 * spread_m
    if most == 2:
        return PATTERNS[most], [(x, y) for y, x in _laid(every[most], step_m, pitch_m, across_m, along_m, edge_m)]
    return PATTERNS[most], _laid(every[most], step_m, pitch_m, along_m, across_m, edge_m)


def _total(rows: list[tuple[float, int]]) -> int:
    return sum(number for _, number in rows)


def _laid(
    rows: list[tuple[float, int]], step_m: float, pitch_m: float, along_m: float, across_m: float, edge_m: float
) -> list[tuple[float, float]]:
    """Points of the rows, back and forth, in the middle of the room for centres."""
    if not _total(rows):
        return []
    reach_m = max(offset + (number - 1) * pitch_m for offset, number in rows if number)
    first_m = edge_m + 0.5 * (along_m - reach_m)
    row_m = edge_m + 0.5 * (across_m - (len(rows) - 1) * step_m)
    points = []
    for index, (offset, number) in enumerate(rows):
        places = range(number - 1, -1, -1) if index % 2 else range(number)
        points += [(first_m + offset + place * pitch_m, row_m + index * step_m) for place in places]
    return points
