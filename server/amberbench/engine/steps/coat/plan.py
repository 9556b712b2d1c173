"""How much chocolate coats the pieces, and how large they come out."""

import math

from ...core.check import constant, is_above, is_below
from ...core.problems import Problem
from ...physics import materials

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ...core.annotations import Readable
    from ...types import ChocolateCoatingReply, ChocolateCoatingRequest, Input, Warning


COLD_C = 21.0
THICKNESS_M = {"fork": 0.0015, "enrober": 0.001, "enrober_with_bottomer": 0.001}  # assumed, nobody's measurement
WEIGHT_OFF = 3.0  # a centre is neither so many times lighter nor heavier than caramel of its size; assumed
LEAST_M = 1e-5  # thinner than a hair all round is no coating
SIDES = ("length_m", "width_m", "height_m")


def grown(size: tuple[float, float, float], layer: "Sequence[float]") -> tuple[float, float, float]:
    """A box (length, width, height in m) inside a coating of (bottom, side, top in m)."""
    return (size[0] + 2.0 * layer[1], size[1] + 2.0 * layer[1], size[2] + layer[0] + layer[2])


def volume(size: tuple[float, float, float]) -> float:
    """Volume of a box (length, width, height in m) in m³."""
    return size[0] * size[1] * size[2]


def layer_of_volume(size: tuple[float, float, float], layer: "Sequence[float]", wanted_m3: float) -> list[float]:
    """The layer, thicker or thinner in proportion, that has the wanted volume: bisection to a millionth."""
    low, high = 0.0, 1.0
    while volume(grown(size, [high * one for one in layer])) - volume(size) < wanted_m3:
        high *= 2.0
    for _ in range(40):
        middle = 0.5 * (low + high)
        if volume(grown(size, [middle * one for one in layer])) - volume(size) < wanted_m3:
            low = middle
        else:
            high = middle
    return [high * one for one in layer]


def _layer(request: "Readable") -> "tuple[Sequence[float], list[Input]]":
    """((bottom, side, top) in m, rows of what was assumed for it)."""
    given = request["thickness_m"]
    if given is None:
        thickness_m = THICKNESS_M[request["method"]]
        row = constant("coating.thickness_m", thickness_m, "m", measure_by="dipped_weighed")
        # A belt without a bottomer leaves the underside to the pre-bottom (common practice, no published source).
        return (0.0 if request["method"] == "enrober" else thickness_m, thickness_m, thickness_m), [row]
    layer = (given["bottom"], given["side"], given["top"])
    if sum(layer) < LEAST_M:
        raise Problem("thickness_m", "no_coating")
    return layer, []


def _boxed(
    request: "Readable", density: float
) -> "tuple[float, float, float, tuple[float, float, float], list[Input]]":
    """(coating, pre-bottom and centre of one piece in kg, outside size in m, assumed rows) of a centre with a size."""
    length_m, width_m, height_m = [request["piece"][side] for side in SIDES]
    layer, rows = _layer(request)
    centre_kg = request["centre_kg"]
    usual_kg = length_m * width_m * height_m * materials.density(materials.resolved(request["material"]), COLD_C)
    if centre_kg is None:
        centre_kg = usual_kg
    _refuse_weight(centre_kg, usual_kg)
    inner = (length_m, width_m, height_m + request["prebottom_m"])
    if request["pickup"] is not None:
        layer, rows = layer_of_volume(inner, layer, request["pickup"] * centre_kg / density), []
    outside = grown(inner, layer)
    coat_kg = density * (volume(outside) - volume(inner))
    return coat_kg, density * length_m * width_m * request["prebottom_m"], centre_kg, outside, rows


def _refuse_weight(centre_kg: float, usual_kg: float) -> None:
    """Refuses a weight that no centre of this size has, whatever is in it."""
    low_kg, high_kg = usual_kg / WEIGHT_OFF, usual_kg * WEIGHT_OFF
    if is_below(centre_kg, low_kg) or is_above(centre_kg, high_kg):
        raise Problem("centre_kg", "centre_weight", centre_kg, low_kg, high_kg, "kg")


def _by_pickup(request: "Readable", density: float) -> "tuple[float, float, float, None, list[Any]]":
    """The same of a piece without a size, such as a cluster."""
    if request["pickup"] is None:
        raise Problem("piece", "coating_without_size")
    if request["centre_kg"] is None:
        raise Problem("centre_kg", "missing", low=0.0005, high=1.0, unit="kg")
    if request["prebottom_m"] > 0.0 and request["prebottom_m2"] is None:
        raise Problem("prebottom_m2", "missing", low=0.0001, high=25.0, unit="m²")
    under_kg = density * request["prebottom_m"] * (request["prebottom_m2"] or 0.0) / request["pieces"]
    return request["pickup"] * request["centre_kg"], under_kg, request["centre_kg"], None, []


def _deep(
    width_m: float | None, outside: tuple[float, float, float] | None, density: float
) -> tuple[float | None, float]:
    """(how deep the last piece is dipped in m, chocolate in kg that is so deep in an upright bowl of that width)."""
    if width_m is None or outside is None:
        return None, 0.0
    return outside[2], density * 0.25 * math.pi * width_m * width_m * outside[2]


def _warnings(request: "Readable", outside: tuple[float, float, float] | None) -> "list[Warning]":
    found: "list[Warning]" = []
    if request["method"] == "enrober" and request["prebottom_m"] <= 0.0:
        found.append({"code": "prebottom_wanted", "values": {}})
    pocket = request["pocket_m"]
    if pocket is not None and outside is not None:
        # The piece may lie either way round, but not on its side.
        lies = sorted(outside[:2]) + [outside[2]]
        room = sorted([pocket["length_m"], pocket["width_m"]]) + [pocket["height_m"]]
        if any(one > space + 1e-9 for one, space in zip(lies, room)):
            found.append({"code": "larger_than_pocket", "values": dict(zip(SIDES, outside))})
    return found


def plan(request: "ChocolateCoatingRequest") -> "ChocolateCoatingReply":
    """Chocolate for coating and pre-bottom of so many pieces, and the outside size of a finished one.

    Request: piece {length_m, width_m, height_m (m)} or null (a cluster), centre_kg (kg) or null, pickup (fraction of
    the undipped weight, weighed) or null, thickness_m {bottom, side, top (m)} or null (by method), method, prebottom_m
    (m, thickness), prebottom_m2 (m², area) or null, pieces, chocolate, material (of the centre), bowl_reserve_kg (kg),
    bowl_width_m (m, inside width of the dipping bowl) or null, drip_share (fraction of the coating), pocket_m
    {length_m, width_m, height_m (m)} or null, basis, batches.
    Reply: per_piece_kg (kg, coating), share (of chocolate in the finished piece), piece_kg (kg, finished),
    prebottom_kg (kg), coating_kg (kg), drip_kg (kg), depth_m (m) or null, reserve_kg (kg), total_kg (kg, all of
    them), outside_m {length_m, width_m, height_m (m)} or null, warnings, inputs.
    Warnings: prebottom_wanted, larger_than_pocket (length_m, width_m, height_m).
    Raises: Problem coating_without_size (neither piece nor pickup), missing (centre_kg or prebottom_m2 of a cluster),
    no_coating (no thickness to speak of), centre_weight (centre_kg, not that of its size), unknown_material,
    composition_sum.
    Relation: coated box less box, times density. A measured pick-up decides the mass, and the layer is thickened or
    thinned in proportion. The pre-bottom adds to the height before coating; by method an enrober without a bottomer
    leaves the underside to it (practice). The last piece is dipped as deep as it is high: in an upright round bowl of
    that width so much stays, or bowl_reserve_kg where that is more; a bowl that narrows below needs less. Masses at
    21 °C.
    Example: 25 × 25 × 12.7 mm at 1.0 mm all round: 24.1 % of the finished piece is coating.
    Source: bar_densities for chocolate, choi_okos_1986 for the centre; assumed for thickness_m, the drips and
    bowl_reserve_kg.
    """
    density = materials.density(materials.resolved(request["chocolate"]), COLD_C)
    one = (_by_pickup if request["piece"] is None else _boxed)(request, density)
    coat_kg, under_kg, centre_kg, outside, rows = one
    pieces = request["pieces"]
    prebottom_kg = under_kg * pieces
    if request["prebottom_m2"] is not None:
        prebottom_kg = density * request["prebottom_m"] * request["prebottom_m2"]
    finished_kg = centre_kg + coat_kg + under_kg
    drip_kg = request["drip_share"] * coat_kg * pieces
    depth_m, deep_kg = _deep(request["bowl_width_m"], outside, density)
    reserve_kg = max(request["bowl_reserve_kg"], deep_kg)
    return {
        "per_piece_kg": coat_kg,
        "share": (coat_kg + under_kg) / finished_kg,
        "piece_kg": finished_kg,
        "prebottom_kg": prebottom_kg,
        "coating_kg": coat_kg * pieces,
        "drip_kg": drip_kg,
        "depth_m": depth_m,
        "reserve_kg": reserve_kg,
        "total_kg": coat_kg * pieces + prebottom_kg + drip_kg + reserve_kg,
        "outside_m": outside and {"length_m": outside[0], "width_m": outside[1], "height_m": outside[2]},
        "warnings": _warnings(request, outside),
        "inputs": rows + [constant("chocolate.density_kg_m3", density, "kg/m³", "bar_densities", "published")],
    }
