"""Pouring between bars: caramel, frame and slab height from any two of them, and the bars to set."""

from ...core.check import constant
from ...core.problems import Problem
from ...physics import materials
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import PourPlanReply, PourPlanRequest


CLOSE_ENOUGH_M = 0.0005  # a bar within half a millimetre gives the wanted height; assumed
TALLEST_M = fields.POUR["slab_height_m"]["high"]
# Whether a pour reaches the corners in time. Assumed, nobody's measurement: a person spreads about a tray of
# 0.3 m × 0.4 m in 40 s; below 60 °C caramel no longer runs under the spatula; air and base together take
# 40 W/(m² K) from it in the first minutes.
SPREAD_M2_S = 0.003
STIFF_C = 60.0
LOSS_W_M2K = 40.0

KNOWN = {
    "mass": ("length_m", "width_m", "slab_height_m"),
    "length": ("mass_kg", "width_m", "slab_height_m"),
    "height": ("mass_kg", "length_m", "width_m"),
}


def mass_for(density: float, area_m2: float, height_m: float, residue: float) -> float:
    """Caramel to weigh in (kg) so that the area is covered to the height, in m², m and kg/m³."""
    return density * area_m2 * height_m / (1.0 - residue)


def area_for(density: float, mass_kg: float, height_m: float, residue: float) -> float:
    """Area (m²) that the weighed caramel covers to the height."""
    return mass_kg * (1.0 - residue) / (density * height_m)


def settled_height(material: "Readable", height_m: float, pour_c: float, room_c: float) -> float:
    """Height (m) of the slab at room temperature: a resolved material shrinks in height only."""
    return height_m * materials.density(material, pour_c) / materials.density(material, room_c)


def stacks(bars_m: list[float]) -> list[list[float]]:
    """Every stack of at most three different entries of the list, no taller than a slab may be, thickest bar first."""
    bars = sorted(bars_m, reverse=True)
    found = []
    for first in range(len(bars)):
        found.append([bars[first]])
        for second in range(first + 1, len(bars)):
            found.append([bars[first], bars[second]])
            for third in range(second + 1, len(bars)):
                found.append([bars[first], bars[second], bars[third]])
    return [stack for stack in found if sum(stack) <= TALLEST_M]


def _distance_key(stack: list[float], wanted_m: float) -> tuple[int, int, list[float]]:
    # To the micrometre, so that of equally near stacks the one with the fewest bars is taken.
    return (int(abs(sum(stack) - wanted_m) * 1e6 + 0.5), len(stack), stack)


def nearest_stack(bars_m: list[float], wanted_m: float) -> list[float]:
    """The stack of bars (heights in m) whose total is nearest to the wanted height; if equal, of fewest bars."""
    return nearest_stacks(bars_m, wanted_m)[0]


def nearest_stacks(bars_m: list[float], wanted_m: float) -> list[list[float]]:
    """All stacks of bars that are equally near to the wanted height, of fewest bars first."""
    every = sorted(stacks(bars_m), key=lambda stack: _distance_key(stack, wanted_m))
    nearest = _distance_key(every[0], wanted_m)[0]
    return [stack for stack in every if _distance_key(stack, wanted_m)[0] == nearest]


def lowest_stack_over(bars_m: list[float], height_m: float) -> list[float]:
    """The lowest stack that holds a slab of this height (m), else the tallest there is."""
    every = stacks(bars_m)
    holding = [stack for stack in every if sum(stack) >= height_m - CLOSE_ENOUGH_M]
    if holding:
        return min(holding, key=lambda stack: _distance_key(stack, height_m))
    return max(every, key=lambda stack: (sum(stack), -len(stack), stack))


def plan(request: "PourPlanRequest") -> "PourPlanReply":
    """Caramel, frame length or slab height, whichever is unknown, and the bars to set.

    Request: solve_for (mass, length or height), of mass_kg (kg), length_m (m), width_m (m) and slab_height_m (m)
    the three that are known (the unknown one is not read); bars_m (m, heights of the bars owned: one entry for each
    set that closes a frame, a stack uses each entry once and is at most three high; null: any height), pour_c (°C),
    room_c (°C), residue (fraction of the caramel that stays in the bowl), material, max_length_m (m) and
    max_width_m (m) of the table or null, basis, batches.
    Reply: mass_kg (kg), length_m (m), width_m (m), slab_height_m (m, poured), settled_height_m (m, at room
    temperature), bars (m, thickest first), bar_height_m (m), area_m2 (m²), volume_m3 (m³), warnings, inputs.
    Warnings: bars_nearest, slab_below_bars, bars_too_low, frame_outruns_table, stiffens_first.
    Raises: Problem missing (one of the known), too_much_caramel, too_little_caramel, frame_too_large,
    frame_too_small (the unknown would leave its accepted range), unknown_material, composition_sum.
    Relation: mass_kg · (1 − residue) = density(pour_c) · length_m · width_m · bar height. The caramel comes up to the
    bars, so with mass or length unknown the slab is as high as the nearest stack of bars. It settles in height by the
    ratio of densities, 1.4 % from 74 to 21 °C. It stiffens first when spreading the area at 0.003 m²/s takes longer
    than cooling to 60 °C at 40 W/(m² K): assumed, nobody's measurement.
    Example: 1.134 kg at 74 °C and 12.7 mm with 2 % residue cover 620 cm², 96 square inches.
    Source: choi_okos_1986 for density, practice for pour_c, assumed and memory for the rest.
    """
    _refuse_missing(request)
    material = materials.resolved(request["material"])
    density = materials.density(material, request["pour_c"])
    solved: "Any" = SOLVERS[request["solve_for"]](request, density)
    solved["warnings"] += _outruns_table(request, solved) + _stiffens_first(request, solved, material)
    solved["settled_height_m"] = settled_height(material, solved["slab_height_m"], request["pour_c"], request["room_c"])
    solved["area_m2"] = solved["length_m"] * solved["width_m"]
    solved["volume_m3"] = solved["area_m2"] * solved["slab_height_m"]
    solved["inputs"] = [
        constant("pour.spread_m2_s", SPREAD_M2_S, "m²/s"),
        constant("pour.stiff_c", STIFF_C, "°C"),
        constant("pour.loss_w_m2k", LOSS_W_M2K, "W/(m² K)"),
    ]
    reply: "PourPlanReply" = solved
    return reply


def _refuse_missing(request: "Readable") -> None:
    for name in KNOWN[request["solve_for"]]:
        if request[name] is None:
            field = fields.POUR[name]
            raise Problem(name, "missing", None, field["low"], field["high"], field["unit"])


def _set_bars(request: "Readable") -> "tuple[list[float], float, list[Document]]":
    """(bars, height, warnings) for the wanted height: the nearest stack owned, or any height without a list."""
    wanted = request["slab_height_m"]
    if request["bars_m"] is None:
        return [], wanted, []
    bars = nearest_stack(request["bars_m"], wanted)
    height = sum(bars)
    if abs(height - wanted) <= CLOSE_ENOUGH_M + 1e-9:
        return bars, height, []
    return bars, height, [{"code": "bars_nearest", "values": {"wanted_m": wanted, "nearest_m": height}}]


def _document(
    mass: float,
    length: float,
    width: float,
    height: float,
    bars: list[float],
    bar_height: float,
    warnings: "Sequence[Readable]",
) -> "Document":
    return {
        "mass_kg": mass,
        "length_m": length,
        "width_m": width,
        "slab_height_m": height,
        "bars": bars,
        "bar_height_m": bar_height,
        "warnings": warnings,
    }


def _solve_mass(request: "Readable", density: float) -> "Document":
    bars, height, warnings = _set_bars(request)
    length, width = request["length_m"], request["width_m"]
    per_metre = mass_for(density, width, height, request["residue"])
    mass, limits = per_metre * length, fields.POUR["mass_kg"]
    if mass > limits["high"]:
        raise Problem("length_m", "frame_too_large", length, high=limits["high"] / per_metre, unit="m")
    if mass < limits["low"]:
        raise Problem("length_m", "frame_too_small", length, low=limits["low"] / per_metre, unit="m")
    return _document(mass, length, width, height, bars, height, warnings)


def _solve_length(request: "Readable", density: float) -> "Document":
    bars, height, warnings = _set_bars(request)
    mass, width = request["mass_kg"], request["width_m"]
    length = area_for(density, mass, height, request["residue"]) / width
    _refuse_outside(mass, length, fields.POUR["length_m"])
    return _document(mass, length, width, height, bars, height, warnings)


def _solve_height(request: "Readable", density: float) -> "Document":
    mass, length, width = request["mass_kg"], request["length_m"], request["width_m"]
    height = mass * (1.0 - request["residue"]) / (density * length * width)
    _refuse_outside(mass, height, fields.POUR["slab_height_m"])
    if request["bars_m"] is None:
        return _document(mass, length, width, height, [], height, [])
    bars = lowest_stack_over(request["bars_m"], height)
    bar_height, warnings = sum(bars), []
    if abs(bar_height - height) > CLOSE_ENOUGH_M:
        values = {"slab_height_m": height, "bar_height_m": bar_height}
        warnings.append({"code": "slab_below_bars" if bar_height > height else "bars_too_low", "values": values})
    return _document(mass, length, width, height, bars, bar_height, warnings)


SOLVERS = {"mass": _solve_mass, "length": _solve_length, "height": _solve_height}


def _refuse_outside(mass: float, solved: float, limits: "Readable") -> None:
    """Refuses a mass whose frame length or slab height would leave the accepted range."""
    if solved > limits["high"]:
        raise Problem("mass_kg", "too_much_caramel", mass, high=mass * limits["high"] / solved, unit="kg")
    if solved < limits["low"]:
        raise Problem("mass_kg", "too_little_caramel", mass, low=mass * limits["low"] / solved, unit="kg")


def _outruns_table(request: "Readable", solved: "Readable") -> "list[Any]":
    """A warning when the frame fits between the given limits neither way round."""
    longest, widest = request["max_length_m"], request["max_width_m"]
    if longest is None or widest is None:
        return []
    length, width = solved["length_m"], solved["width_m"]
    # A nanometre of grace: a length solved to fill the table exactly does not outrun it.
    long_side, short_side = max(longest, widest) + 1e-9, min(longest, widest) + 1e-9
    if max(length, width) <= long_side and min(length, width) <= short_side:
        return []
    values = {"length_m": length, "width_m": width, "max_length_m": longest, "max_width_m": widest}
    return [{"code": "frame_outruns_table", "values": values}]


def _stiffens_first(request: "Readable", solved: "Readable", material: "Readable") -> "list[Any]":
    """A warning when spreading the area takes longer than cooling to the stiff temperature (assumed criterion)."""
    spread_s = solved["length_m"] * solved["width_m"] / SPREAD_M2_S
    stiff_s = seconds_to_stiffen(material, solved["slab_height_m"], request["pour_c"], request["room_c"])
    if spread_s <= stiff_s:
        return []
    return [{"code": "stiffens_first", "values": {"spread_s": spread_s, "stiff_s": stiff_s}}]


def seconds_to_stiffen(material: "Readable", height_m: float, pour_c: float, room_c: float) -> float:
    """Seconds until a poured layer reaches 60 °C, the mean loss rate taken at the temperature half way there."""
    if pour_c <= STIFF_C:
        return 0.0
    heat_j_m2 = (
        materials.density(material, pour_c)
        * height_m
        * (materials.enthalpy(material, pour_c) - materials.enthalpy(material, STIFF_C))
    )
    return heat_j_m2 / (LOSS_W_M2K * (0.5 * (pour_c + STIFF_C) - room_c))
