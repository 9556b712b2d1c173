"""Cutting a slab into centres, and finding the frame for a number of centres."""

import math

from ...core.check import constant
from ...core.problems import Problem
from ...physics import materials

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import CutFitFrameRequest, CutPlanReply, CutPlanRequest


COLD_C = 21.0
MOST_FRAMES = 40


def count(length_m: float, piece_m: float, trim_m: float, kerf_m: float) -> int:
    """How many centres of one size lie along a side (m), with trim at both ends and cut loss between them."""
    # A nanometre of grace: a side made for so many centres holds them in spite of rounding.
    return max(0, math.floor((length_m - 2.0 * trim_m + kerf_m + 1e-9) / (piece_m + kerf_m)))


def side(number: int, piece_m: float, trim_m: float, kerf_m: float) -> float:
    """Length (m) of a side that holds so many centres exactly."""
    return 2.0 * trim_m + number * piece_m + (number - 1) * kerf_m


def cut_lines(number: int, piece_m: float, trim_m: float, kerf_m: float) -> list[float]:
    """Distances (m) of the cuts from the datum edge: the outer edges of the outer centres, and between two centres
    the middle of the cut loss."""
    inner = [trim_m + index * (piece_m + kerf_m) - 0.5 * kerf_m for index in range(1, number)]
    return [trim_m] + inner + [side(number, piece_m, trim_m, kerf_m) - trim_m]


def refuse_hopeless(
    length_m: float, width_m: float, piece_length_m: float, piece_width_m: float, trim_m: float, names: tuple[str, str]
) -> None:
    """Refuses a frame that is all trim or smaller than one centre; `names` are the fields of length and width."""
    shortest = min(length_m, width_m)
    if 2.0 * trim_m >= shortest:
        raise Problem("trim_m", "trim_larger_than_frame", trim_m, high=0.5 * shortest, unit="m")
    least = min(piece_length_m, piece_width_m) + 2.0 * trim_m
    most = max(piece_length_m, piece_width_m) + 2.0 * trim_m
    for name, given in zip(names, (length_m, width_m)):
        if given < least - 1e-9:
            raise Problem(name, "frame_smaller_than_centre", given, low=least, unit="m")
    if max(length_m, width_m) < most - 1e-9:
        name = names[0] if length_m >= width_m else names[1]
        raise Problem(name, "frame_smaller_than_centre", max(length_m, width_m), low=most, unit="m")


def layout(
    length_m: float, width_m: float, piece_length_m: float, piece_width_m: float, trim_m: float, kerf_m: float
) -> tuple[int, int, bool]:
    """(rows, columns, rotated) that give the most centres; rotated: a centre's length lies across the frame."""
    straight = (
        count(width_m, piece_width_m, trim_m, kerf_m),
        count(length_m, piece_length_m, trim_m, kerf_m),
        False,
    )
    turned = (count(width_m, piece_length_m, trim_m, kerf_m), count(length_m, piece_width_m, trim_m, kerf_m), True)
    return turned if turned[0] * turned[1] > straight[0] * straight[1] else straight


def cut_up(
    length_m: float,
    width_m: float,
    thickness_m: float,
    piece_length_m: float,
    piece_width_m: float,
    trim_m: float,
    kerf_m: float,
    density: float,
) -> "Document":
    """The reply of `plan` for a slab of given density (kg/m³)."""
    rows, columns, rotated = layout(length_m, width_m, piece_length_m, piece_width_m, trim_m, kerf_m)
    along, across = (piece_width_m, piece_length_m) if rotated else (piece_length_m, piece_width_m)
    pieces = rows * columns
    piece_m2 = piece_length_m * piece_width_m
    return {
        "rows": rows,
        "columns": columns,
        "pieces": pieces,
        "rotated": rotated,
        "cuts_along_m": cut_lines(rows, across, trim_m, kerf_m),
        "cuts_across_m": cut_lines(columns, along, trim_m, kerf_m),
        "piece_kg": density * thickness_m * piece_m2,
        "trim_kg": max(0.0, density * thickness_m * (length_m * width_m - pieces * piece_m2)),
    }


def plan(request: "CutPlanRequest") -> "CutPlanReply":
    """Rows and columns of centres in a slab, both ways round, the better one kept, and where to cut.

    Request: length_m (m) and width_m (m) of the frame, thickness_m (m) of the cold slab, piece_length_m (m),
    piece_width_m (m), trim_m (m, on every edge), kerf_m (m, cut loss between two centres), material, basis,
    batches.
    Reply: rows (across the width), columns (along the length), pieces, rotated (a centre's length lies across the
    frame), cuts_along_m (m, from the long datum edge), cuts_across_m (m, from the short datum edge), piece_kg (kg),
    trim_kg (kg, trim and cut loss), inputs.
    Raises: Problem trim_larger_than_frame, frame_smaller_than_centre, unknown_material, composition_sum.
    Relation: floor((length_m − 2 · trim_m + kerf_m) / (piece_length_m + kerf_m)) columns, rows likewise; what is left
    over lies at the far edges. One more cut than rows: the outer cuts run along the outer centres with their loss in
    the trim, the others through the middle of the loss. Masses at 21 °C.
    Example: a frame of 250 mm by 202 mm, 24 mm squares and 5 mm trim give 8 rows of 10.
    Source: choi_okos_1986 for density; assumed for trim_m and kerf_m.
    """
    sizes = (request["length_m"], request["width_m"])
    pieces = (request["piece_length_m"], request["piece_width_m"])
    refuse_hopeless(sizes[0], sizes[1], pieces[0], pieces[1], request["trim_m"], ("length_m", "width_m"))
    density = materials.density(materials.resolved(request["material"]), COLD_C)
    cuts: "Any" = cut_up(
        sizes[0], sizes[1], request["thickness_m"], pieces[0], pieces[1], request["trim_m"], request["kerf_m"], density
    )
    cuts["inputs"] = [constant("cut.cold_c", COLD_C, "°C")]
    reply: "CutPlanReply" = cuts
    return reply


def fit_frame(request: "CutFitFrameRequest") -> "Document":
    """The frames for a number of centres within a table, smallest area first.

    Request: pieces, piece_length_m (m), piece_width_m (m), trim_m (m), kerf_m (m), max_length_m (m), max_width_m (m),
    basis, batches.
    Reply: frames, at most 40, each with rows, columns, rotated, length_m (m), width_m (m), pieces and waste (fraction
    of the area that is not one of the centres wanted); inputs.
    Raises: Problem trim_larger_than_frame, frame_smaller_than_centre, no_frame_fits.
    Relation: every number of rows the table takes, both ways round, with the fewest columns that give the pieces;
    a frame from which a row could be left out is not listed, nor one that is another one turned.
    So the first is the smallest there is.
    Source: assumed for trim_m and kerf_m.
    """
    sizes = (request["piece_length_m"], request["piece_width_m"], request["trim_m"], request["kerf_m"])
    longest, widest = request["max_length_m"], request["max_width_m"]
    refuse_hopeless(longest, widest, sizes[0], sizes[1], sizes[2], ("max_length_m", "max_width_m"))
    frames = frames_for(request["pieces"], sizes, longest, widest)
    if not frames:
        rows, columns, _ = layout(longest, widest, sizes[0], sizes[1], sizes[2], sizes[3])
        raise Problem("pieces", "no_frame_fits", request["pieces"], high=rows * columns)
    return {"frames": frames[:MOST_FRAMES]}


def frames_for(
    pieces: int, sizes: tuple[float, float, float, float], max_length_m: float, max_width_m: float
) -> "list[Document]":
    """All frames for so many centres of `sizes` (length, width, trim, kerf in m), smallest area first."""
    along, across, trim, kerf = sizes
    frames = _one_way(pieces, along, across, trim, kerf, max_length_m, max_width_m, False)
    if along != across:
        known = [_sides_um(frame) for frame in frames]
        for frame in _one_way(pieces, across, along, trim, kerf, max_length_m, max_width_m, True):
            # The same frame turned by a quarter is already there when it fits that way.
            lengthwise = frame["width_m"] <= max_length_m + 1e-9 and frame["length_m"] <= max_width_m + 1e-9
            if not lengthwise and _sides_um(frame) not in known:
                frames.append(frame)
    return sorted(frames, key=_area_key)


def _sides_um(frame: "Readable") -> tuple[int, int]:
    return (int(frame["length_m"] * 1e6 + 0.5), int(frame["width_m"] * 1e6 + 0.5))


def _area_key(frame: "Readable") -> tuple[float, int, int, bool]:
    return (frame["length_m"] * frame["width_m"], frame["rows"], frame["columns"], frame["rotated"])


def _one_way(
    pieces: int,
    along: float,
    across: float,
    trim: float,
    kerf: float,
    max_length_m: float,
    max_width_m: float,
    rotated: bool,
) -> "list[Document]":
    most_columns = count(max_length_m, along, trim, kerf)
    found = []
    for rows in range(1, count(max_width_m, across, trim, kerf) + 1):
        columns = -(-pieces // rows)
        if columns <= most_columns and (rows - 1) * columns < pieces:
            length, width = side(columns, along, trim, kerf), side(rows, across, trim, kerf)
            found.append(frame_document(rows, columns, length, width, rotated, pieces, along * across))
    return found


def frame_document(
    rows: int, columns: int, length_m: float, width_m: float, rotated: bool, pieces: int, piece_m2: float
) -> "Document":
    """One frame: `waste` counts everything but the pieces wanted, of piece_m2 (m²) each."""
    return {
        "rows": rows,
        "columns": columns,
        "rotated": rotated,
        "length_m": length_m,
        "width_m": width_m,
        "pieces": rows * columns,
        "waste": max(0.0, 1.0 - pieces * piece_m2 / (length_m * width_m)),
    }
