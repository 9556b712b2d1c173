"""The parts of a plan of caramel poured between bars: the pour, the melt in an oven, the cooling, what they assumed."""

from ...core import check
from ...core.problems import Problem
from ...steps.cool import fields as cool_fields
from ...steps.cool import firmness
from ...steps.cool import plan as cool
from ...steps.cut import stays_square
from ...steps.melt import fields as melt_fields
from ...steps.melt import plan as melt
from ...steps.pour import bars
from ...steps.pour import fields as pour_fields
from ...steps.pour import plan as pour
from ...steps.room import plan as room
from .. import capacity, remelt, subplans

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import Input


POUR_AS_IS = ("room_c", "residue", "material", "max_length_m", "max_width_m", "slab_height_m")
COOL_AS_IS = (
    "room_c",
    "material",
    "top",
    "base",
    "contact_m2k_w",
    "bottom",
    "target_c",
    "fridge_c",
    "base_length_m",
    "base_width_m",
    "base_thickness_m",
    "loss_factor",
    "loss_factor_sd",
    "spread",
)
MELT_AS_IS = ("start_c", "room_c", "material", "burst_s", "step_s", "oven", "vessel")
LINES = {
    "low_c": "window_low_c",
    "high_c": "window_high_c",
    "limit_c": "limit_c",
    "warn_c": "warn_c",
    "stop_c": "stop_c",
}


def middle_of_window(request: "Readable") -> float:
    """The temperature (°C) at which it is poured."""
    windows = request["windows"]
    result: float = 0.5 * (windows["low_c"] + windows["high_c"])
    return result


def _sides_of_base(request: "Readable", lengthwise: bool) -> "tuple[float | None, float | None]":
    """What it is poured on (length and width in m, the longer one along the table), or None where nobody has said."""
    sides = request["base_length_m"], request["base_width_m"]
    if request["base"] is None or None in sides:
        return None, None
    return (max(sides), min(sides)) if lengthwise else (min(sides), max(sides))


USUAL_HEIGHT_M = 0.01  # of a product whose height nobody has said (assumed)
NEARLY_AS_LARGE = 0.95  # a frame so much smaller is worth one bar less to stack (assumed)


def _reaches(one: "bars.BarSet", frame_m: "tuple[float | None, float | None]") -> bool:
    """Whether a set closes a frame (longest and widest side in m), as far as anybody knows."""
    longest, widest = frame_m
    if longest is None or widest is None or one.longest_m is None or one.widest_m is None:
        return True
    return one.longest_m >= longest - 1e-9 and one.widest_m >= widest - 1e-9


class FrameRoom:
    """The bars to set, and the largest frame that they close and the table has room for.

    height_m: of the stack nearest to the one wanted, or that itself where no bars are owned; owned_m: heights of the
    sets owned, or null; bars_m: (longest, widest) frame that the stack closes, each None where nobody has said how long
    its bars are; room_m: the same, held to the table and to what it is poured on too.
    """

    def __init__(self, request: "Readable") -> None:
        if request["bars"] is not None and request["bars_m"] is not None:
            raise Problem("bars", "give_one_of", accepted=["bars", "bars_m"])
        sets = bars.sets_of(request["bars"] or [])
        self.owned_m: "list[float] | None" = request["bars_m"] or [one.height_m for one in sets] or None
        self.height_m: float = request["slab_height_m"]
        self.bars_m: tuple[float | None, float | None] = (None, None)
        if self.owned_m:
            stack = pour.nearest_stack(self.owned_m, self.height_m)
            if sets:
                stack, self.bars_m = self._longest_of_nearest(request, sets)
                self.owned_m = [one.height_m for one in sets if _reaches(one, self.bars_m)]
            self.height_m = sum(stack)
        longest, widest = request["max_length_m"], request["max_width_m"]
        for within in (self.bars_m, _sides_of_base(request, longest >= widest)):
            if within[0] is not None and within[1] is not None:
                longest, widest = min(longest, within[0]), min(widest, within[1])
        self.room_m: tuple[float, float] = (longest, widest)

    def _longest_of_nearest(
        self, request: "Readable", sets: "list[bars.BarSet]"
    ) -> "tuple[list[float], tuple[float | None, float | None]]":
        """(stack, what it closes): of those equally near to the wanted height the one of fewest bars that closes the
        frame in hand, or nearly as large a one as any does that the table takes."""
        longest, widest, frame = request["max_length_m"], request["max_width_m"], request.get("frame")
        found = []
        for stack in pour.nearest_stacks([one.height_m for one in sets], self.height_m):
            self.bars_m = bars.frame_within(sets, stack)
            area_m2 = longest * widest
            if None not in self.bars_m and not (type(frame) is dict and self.closes(**frame)):
                area_m2 = min(longest, self.bars_m[0]) * min(widest, self.bars_m[1])
            found.append((area_m2, stack, self.bars_m))
        enough_m2 = NEARLY_AS_LARGE * max(area_m2 for area_m2, _, _ in found)
        return next((stack, within) for area_m2, stack, within in found if area_m2 >= enough_m2)

    def closes(self, length_m: float, width_m: float) -> bool:
        """Whether the bars close a frame (sides in m), one way round or the other, as far as anybody knows."""
        longest, widest = self.bars_m
        if longest is None or widest is None:
            return True
        return max(length_m, width_m) <= longest + 1e-9 and min(length_m, width_m) <= widest + 1e-9


def sizes_unknown(request: "Readable") -> list[str]:
    """What the plan could not be held to, as nobody has said how large it is."""
    unknown = []
    if request["bars_m"] or any(one["length_m"] is None for one in request["bars"] or []):
        unknown.append("bars")
    return unknown + (["bowl"] if request["vessel_volume_m3"] is None else [])


def pour_wanted(request: "Readable", frame: "Readable", pour_c: float, bars_m: "list[float] | None") -> "Document":
    """A request to pour.plan for a frame {length_m (m), width_m (m)}, but for what is solved for; bars_m: heights (m)
    of the sets of bars owned."""
    wanted = {name: request[name] for name in POUR_AS_IS}
    wanted.update({"pour_c": pour_c, "bars_m": bars_m, "length_m": frame["length_m"], "width_m": frame["width_m"]})
    return wanted


def pour_between(wanted: "Readable", names: "Readable") -> "Document":
    """The reply of pour.plan; a Problem names the fields of the whole plan by `names`."""
    return subplans.call_renamed(_checked_pour, wanted, names)


def _checked_pour(wanted: "Readable") -> "Any":
    return pour.plan(check.checked(pour_fields.FUNCTIONS["pour.plan"]["request"], wanted))


def melt_names(amount_field: str) -> "Document":
    """What the fields of melt.plan are called in the whole plan; the amount stands in `amount_field`."""
    names = {"mass_kg": amount_field}
    for line in LINES:
        names[LINES[line]] = "windows." + line
    return names


def melt_in_oven(request: "Readable", amount_field: str, caramel_kg: float) -> "tuple[Document, Document]":
    """(full, checked request, reply) of melt.plan."""
    wanted = {name: request[name] for name in MELT_AS_IS}
    wanted["mass_kg"] = capacity.to_melt(caramel_kg)
    for line in LINES:
        wanted[LINES[line]] = request["windows"][line]
    names = melt_names(amount_field)
    full = subplans.checked_part(melt_fields.MELT, wanted, request, names)
    return full, subplans.call_renamed(melt.plan, full, names)


def cool_down(
    request: "Readable", poured: "Readable", pour_c: float, side_fields: tuple[str, str]
) -> "tuple[Document, Document]":
    """(full, checked request, reply) of cool.plan; `side_fields` say what in the plan sets length and width."""
    wanted = {name: request[name] for name in COOL_AS_IS}
    wanted.update({"thickness_m": poured["slab_height_m"], "start_c": pour_c, "target_c": firmness.ready_c(request)})
    wanted.update({"length_m": poured["length_m"], "width_m": poured["width_m"]})
    names = {"thickness_m": "slab_height_m", "start_c": "windows.low_c"}
    names.update({"length_m": side_fields[0], "width_m": side_fields[1]})
    full = subplans.checked_part(cool_fields.COOL, wanted, request, names)
    return full, subplans.call_renamed(cool.plan, full, {"thickness_m": "slab_height_m", "start_c": "windows.high_c"})


def whole(
    request: "Readable",
    poured: "Document",
    melted: "tuple[Document, Document]",
    cooled: "tuple[Document, Document]",
    warnings: "list[Document]",
    have_kg: float | None = None,
    dip: "Document | None" = None,
) -> "Document":
    """What every kind replies, of (request, reply) of its melt and its cooling; `have_kg`: the caramel in hand."""
    old, old_warnings = remelt.reckoned(request, poured["mass_kg"])
    blocks, leftover_kg = subplans.blocks(poured["mass_kg"], request["block_kg"], have_kg, old["old_kg"])
    chill = cooled[1]["chill"]
    air, air_inputs = room.for_plan(
        request["room_c"],
        request["humidity"],
        request["dip"]["chocolate"] if dip else None,
        chill["surface_c"] if chill else None,
    )
    _, soft, soft_inputs = firmness.softness(request["firmness"], request["squeeze"])
    square, sinking, square_inputs = stays_square.reckoned(request, poured["settled_height_m"], dip)
    assumed = _collected_inputs([one for one in (poured, melted[1], cooled[1], dip) if one])
    return {
        "caramel_kg": poured["mass_kg"],
        "blocks": blocks,
        "leftover_kg": leftover_kg,
        "remelt": old,
        "warnings": warnings
        + old_warnings
        + soft
        + sinking
        + poured["warnings"]
        + cooled[1]["warnings"]
        + (dip["warnings"] if dip else []),
        "inputs": assumed + air_inputs + soft_inputs + square_inputs,
        "room": _not_said_elsewhere(air, cooled[1]["warnings"]),
        "pour": poured,
        "cool": cooled[1],
        "square": square,
        "melt_request": melted[0],
        "cool_request": cooled[0],
        "sizes_unknown": sizes_unknown(request),
    }


def _not_said_elsewhere(air: "Readable", warnings: "Sequence[Readable]") -> "Document":
    """The room's warnings without those that another part has given already."""
    said = [one["code"] for one in warnings]
    return dict(air, warnings=[one for one in air["warnings"] if one["code"] not in said])


def _collected_inputs(replies: "list[Document]") -> "list[Input]":
    """The constants the parts assumed, each once; the parts' own lists are emptied."""
    rows: "list[Input]" = []
    for reply in replies:
        for row in reply["inputs"]:
            if row["field"] not in [known["field"] for known in rows]:
                rows.append(row)
        reply["inputs"] = []
    return rows
