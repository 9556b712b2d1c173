"""How much caramel a slab takes and which frame it is poured into."""

import math

from ...core.problems import Problem
from ...physics import materials
from ...steps.cut import fields as cut_fields
from ...steps.cut import plan as cut
from ...steps.pour import fields as pour_fields
from ...steps.pour import plan as pour
from .. import capacity
from ..capacity import BOWL_KG
from ..poured import plan as poured_plan

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable


MOST_OTHER_FRAMES = 8
SHORTEST_M = pour_fields.POUR["length_m"]["low"]
MOST_PIECES = cut_fields.FIT["pieces"]["high"]


class SlabJob:
    """What is wanted of one slab, and within what.

    `kg` in hand, or `good` centres and the `pieces` planned for them, a few more where some are known to go wrong;
    `field` is where the request says so, `amount` its value, `per` the centres of one of it. `density` (kg/m³) at
    pouring, `height_m` of the bars, `room` (longest and widest frame in m), `most_kg` of caramel that one bowl melts.
    """

    def __init__(self, request: "Readable") -> None:
        have, want = request["have"], request["want"]
        if (have is None) == (want is None):
            raise Problem("have", "give_one_of", accepted=["have", "want"])
        self.kg: float | None = None
        self.pieces: int | None = None
        self.amount: float
        self.yield_share: float = request["yield_share"]
        if have:
            self.kg = have["kg"]
            self.field, self.amount, self.per = "have.kg", have["kg"], 1
        else:
            self.field, self.amount, self.per = _pieces(want)
            self.good = self.amount * self.per
            self.pieces = self.planned_for(self.good)
        self.pour_c = poured_plan.middle_of_window(request)
        self.density = materials.density(materials.resolved(request["material"]), self.pour_c)
        self.residue = request["residue"]
        self.sizes = (request["piece_length_m"], request["piece_width_m"], request["trim_m"], request["kerf_m"])
        self.frame_room = poured_plan.FrameRoom(request)
        self.height_m, self.room = self.frame_room.height_m, self.frame_room.room_m
        self.most_kg = capacity.most_kg(request, self.density)

    def planned_for(self, good: int) -> int:
        """How many centres are planned so that so many are good."""
        return math.ceil(good / self.yield_share - 1e-9)

    def good_of(self, pieces: int) -> int:
        """How many of so many centres are likely to be good."""
        return min(pieces, max(1, int(pieces * self.yield_share + 1e-9)))

    def refuse_over_bowl(self, caramel_kg: float, frame_m: float | None) -> None:
        """Refuses caramel that one bowl cannot melt, in the unit of the field that asks for it.

        frame_m: length of a frame in hand that sets the mass, None where the amount itself does.
        """
        if BOWL_KG["low"] <= caramel_kg and capacity.holds(self.most_kg, caramel_kg):
            return
        if frame_m is not None:
            field, given, unit = "frame.length_m", frame_m, "m"
        else:
            field, given, unit = self.field, self.amount, "kg" if self.kg is not None else ""
        if caramel_kg > self.most_kg:
            high = given * self.most_kg * capacity.ROUNDING / caramel_kg if unit else 0
            raise Problem(field, "more_than_a_bowl", given, high=high, unit=unit)
        low = given * BOWL_KG["low"] / caramel_kg
        raise Problem(field, "too_little_caramel", given, low=low if unit else math.ceil(low), unit=unit)

    def mass_kg(self, area_m2: float) -> float:
        """Caramel (kg) that fills an area (m²) up to the bars."""
        return pour.mass_for(self.density, area_m2, self.height_m, self.residue)


def _pieces(want: "Readable") -> tuple[str, int, int]:
    """(field, its value, centres each) of `want`: pieces, or boxes × per_box."""
    if (want["pieces"] is None) == (want["boxes"] is None and want["per_box"] is None):
        raise Problem("want", "give_one_of", accepted=["pieces", "boxes"])
    if want["pieces"] is not None:
        return "want.pieces", want["pieces"], 1
    for name in ("boxes", "per_box"):
        if want[name] is None:
            raise Problem("want." + name, "missing", low=1)
    most = MOST_PIECES // want["per_box"]
    if want["boxes"] > most:
        raise Problem("want.boxes", "too_high", want["boxes"], 1, most, "")
    return "want.boxes", want["boxes"], want["per_box"]


def choose(job: "SlabJob", frame: "Any") -> "tuple[Document, list[Document]]":
    """(frame, other frames that would do) for a job, as `cut.frame_document` makes them.

    frame: `"fit"` or `{length_m, width_m}`. Raises Problem too_little_caramel, no_frame_fits, trim_larger_than_frame,
    frame_smaller_than_centre.
    """
    if frame == "fit":
        names, within = ("max_length_m", "max_width_m"), job.room
    else:
        names, within = ("frame.length_m", "frame.width_m"), (frame["length_m"], frame["width_m"])
    along, across, trim, kerf = job.sizes
    cut.refuse_hopeless(within[0], within[1], along, across, trim, names)
    if frame == "fit":
        frames = _use_up(job, job.amount) if job.pieces is None else _least_area(job, job.pieces)
        return frames[0], frames[1 : 1 + MOST_OTHER_FRAMES]
    rows, columns, rotated = cut.layout(within[0], within[1], along, across, trim, kerf)
    return cut.frame_document(rows, columns, within[0], within[1], rotated, rows * columns, along * across), []


def _least_area(job: "SlabJob", pieces: int) -> "list[Document]":
    """Frames on the table for the centres wanted, smallest area first."""
    frames = frames_within(job, pieces)
    if not frames:
        along, across, trim, kerf = job.sizes
        rows, columns, _ = cut.layout(job.room[0], job.room[1], along, across, trim, kerf)
        high = job.good_of(rows * columns) // job.per
        raise Problem(job.field, "no_frame_fits", job.amount, high=high, unit="")
    return frames


def frames_within(job: "SlabJob", pieces: int) -> "list[Document]":
    """Frames for so many centres that there is room for, smallest area first."""
    found = cut.frames_for(pieces, job.sizes, job.room[0], job.room[1])
    return [frame for frame in found if _long_enough(frame["length_m"], frame["width_m"])]


def _long_enough(length_m: float, width_m: float) -> bool:
    result: bool = min(length_m, width_m) >= SHORTEST_M
    return result


def _use_up(job: "SlabJob", kg: float) -> "list[Document]":
    """Frames that take all the caramel in hand up to the bars, most centres (so least trim) first.

    The width holds whole rows exactly; the length, which adjusts, takes what is left. Where the table is too short
    for that, the length is the table's and the width gives way. Of equal numbers the frame of shortest rim is first.
    """
    longest, widest = job.room
    # What is shown as the same weight is the same: the rest of it stays over.
    area = min(pour.area_for(job.density, kg, job.height_m, job.residue), longest * widest)
    along, across, trim, _ = job.sizes
    frames = _by_rows(job, area, along, across, False)
    if along != across:
        frames += _by_rows(job, area, across, along, True)
    if not frames:
        least = max(SHORTEST_M, along + 2.0 * trim) * max(SHORTEST_M, across + 2.0 * trim)
        raise Problem(job.field, "too_little_caramel", kg, low=job.mass_kg(least), unit="kg")
    return sorted(frames, key=_most_key)


def _most_key(frame: "Readable") -> tuple[int, int, int, int, bool]:
    rim_um = int((frame["length_m"] + frame["width_m"]) * 1e6 + 0.5)
    return (-frame["pieces"], rim_um, frame["rows"], frame["columns"], frame["rotated"])


def _by_rows(job: "SlabJob", area: float, along: float, across: float, rotated: bool) -> "list[Document]":
    _, _, trim, kerf = job.sizes
    longest, widest = job.room
    frames = []
    for rows in range(1, cut.count(widest, across, trim, kerf) + 1):
        width = cut.side(rows, across, trim, kerf)
        length = area / width
        if length > longest:
            length, width = longest, area / longest
        columns, most_rows = cut.count(length, along, trim, kerf), cut.count(width, across, trim, kerf)
        # A wider slab of the table's length belongs to the row count it holds.
        if most_rows == rows and columns > 0 and width <= widest + 1e-9 and _long_enough(length, width):
            frames.append(cut.frame_document(rows, columns, length, width, rotated, rows * columns, along * across))
    return frames
