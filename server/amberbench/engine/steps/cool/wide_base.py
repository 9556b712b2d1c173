"""A slab on a table that is wider than it: heat that the table carries off under it, to all sides."""

from math import sqrt

from ...physics import bases, convection
from ...physics.conduction import at_temperature
from ...physics.sideways import Sideways, Strip
from .cooling_curve import Slab

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable


# Share of the excess at pouring at which the exchange with the air is taken: of slab, base under it and bare base, on
# the way to ready (assumed: what a calculation in three dimensions has half way).
SLAB_SHARE, BASE_SHARE, BARE_SHARE = 0.4, 0.3, 0.15
# Lengths √(k·δ/h) beyond the edge after which a table brings nothing more (e⁻⁴ is felt), and the least h for it.
REACH, LEAST_W_M2K = 4.0, 1.0


def slab(request: "Readable") -> "Slab":
    """The slab of a checked request on a base as large as it is said to be, the slab in its middle.

    Conduction through slab and base under the middle of the slab, which is ready last, and sideways through the base
    (`physics.sideways`). Against conduction in three dimensions slabs of 0.1 to 0.35 m, 8 to 25 mm thick, on every
    built-in base of up to three times their sides come 9 % early to 11 % late.
    """
    sides = request["base_length_m"], request["base_width_m"]
    if None in sides or request["base"] is None:
        return Slab(request)
    found = Slab(request, area_ratio=1.0)
    strip = _strip(request, found)
    reach_m = REACH * sqrt(strip.carried / max(strip.below + strip.bare, LEAST_W_M2K))
    slab_sides = sorted((request["length_m"], request["width_m"]))
    margins = [
        (0.5 * of_slab, min(0.5 * max(of_base - of_slab, 0.0), reach_m))
        for of_slab, of_base in zip(slab_sides, sorted(sides))
    ]
    found.sideways = Sideways(strip, margins, found.base_start_c - found.room_c)
    return found


def _strip(request: "Readable", slab: "Slab") -> "Strip":
    layers, _, emissivity = bases.resolved_base(request["base"], request["base_thickness_m"])
    room_c, excess = slab.room_c, slab.start_c - slab.room_c
    half_way_c = room_c + SLAB_SHARE * excess
    thickness_m = request["thickness_m"]
    within = thickness_m / 3.0 / at_temperature(slab.stack.conductivity, half_way_c)  # of a profile that is a parabola
    through = 0.5 * sum(thickness / k for thickness, k, _ in layers)
    factor = request["loss_factor"]
    above = factor * convection.coefficient(slab.top, half_way_c, room_c)
    below = factor * convection.coefficient(slab.bottom, room_c + BASE_SHARE * excess, room_c)
    plate_m = convection.plate_length_m(request["length_m"], request["width_m"])  # a larger plate would be felt less
    bare_face = convection.face(request["top"], emissivity, plate_m, True)
    return Strip(
        slab=thickness_m * at_temperature(slab.stack.capacity, half_way_c),
        base=sum(thickness * capacity for thickness, _, capacity in layers),
        contact=1.0 / (within + slab.contact + through),
        above=above / (1.0 + above * within),
        below=below / (1.0 + below * through),
        bare=factor * convection.coefficient(bare_face, room_c + BARE_SHARE * excess, room_c),
        carried=sum(thickness * k for thickness, k, _ in layers),
    )
