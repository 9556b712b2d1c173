"""A slab on a table that is wider than it: how far beyond its edges the table takes heat."""

from math import cosh, log, sqrt, tanh

from ...physics import bases
from .cooling_curve import LONGEST_S, Slab, crossing_s

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable


# What both faces of a bare table give off, W/(m² K): still air and radiation, above and below (mcadams).
FACES_W_M2K = 14.0
# Share of the margin that counts, so that a stone is never taken for much quicker than it is (assumed: of 0.6 to 1.0
# tried against a calculation over the width as well, the one that is at most 8 % early).
MARGIN_SHARE = 0.8
# By how much of ln t the margin's effect may be off at a 10 % point (assumed, with the figures of `slab` in view).
MARGIN_SHIFT = 0.25
PASSES = 2
# How far heat has come by when the slab is about ready: a ninth of its excess over the room is left, as of 74 °C at
# 27 °C in a room of 21.
EXCESS_LEFT = 1.0 / 9.0
FARTHEST = 50.0  # lengths off at which nothing is felt: the hyperbolic cosine of more has no number


def slab(request: "Readable") -> "Slab":
    """The slab of a checked request on a base as large as it is said to be.

    Beyond the edges a table warms like a fin of a length √(k·δ/h): what lies farther off takes nothing. The middle of
    the slab, which is ready last, feels that as far as heat has come through the stone by then, √(α·t) against half
    the slab's narrow side. Both make a margin in m around the slab that counts as base. Against the same conduction
    over the width of the table, stones of 20 to 50 mm under slabs of 0.27 to 0.35 m come 7 % early to 18 % late, under
    slabs of 0.15 and 0.2 m 13 % early to 49 % late. So the range is wider by what the margin moves the time, at most
    by MARGIN_SHIFT.
    """
    alone = Slab(request)
    sides = request["base_length_m"], request["base_width_m"]
    if None in sides or request["base"] is None:
        return alone
    length_m, width_m = request["length_m"], request["width_m"]
    margin_m = 0.5 * max(0.0, min(max(sides) - max(length_m, width_m), min(sides) - min(length_m, width_m)))
    layers = bases.resolved_base(request["base"], request["base_thickness_m"])[0]
    carried = sum(thickness * k for thickness, k, _ in layers)
    diffusivity = carried / sum(thickness * capacity for thickness, _, capacity in layers)
    fin_m = sqrt(carried / FACES_W_M2K)
    wide_m = MARGIN_SHARE * fin_m * tanh(margin_m / fin_m)
    found, cooled_s = alone, []
    for _ in range(PASSES):
        cooled_s.append(_cooled_s(found, request))
        come_m = sqrt(diffusivity * cooled_s[-1])
        felt_m = wide_m / cosh(min(0.5 * min(length_m, width_m) / come_m, FARTHEST)) if come_m > 0.0 else 0.0
        ratio = (length_m + 2.0 * felt_m) * (width_m + 2.0 * felt_m) / (length_m * width_m)
        found = Slab(request, area_ratio=ratio)
    moved = abs(log(cooled_s[0] / cooled_s[-1])) if cooled_s[-1] > 0.0 else 0.0
    found.margin_shift = min(moved, MARGIN_SHIFT)
    return found


def _cooled_s(slab: "Slab", request: "Readable") -> float:
    """Seconds until so little of the excess over the room is left in its hottest point."""
    course, room_c = slab.transient(request["loss_factor"]), slab.room_c
    wanted_c = room_c + EXCESS_LEFT * (slab.start_c - room_c)
    before = (0.0, slab.start_c, slab.start_c)
    while course.core_c > wanted_c and course.at_s < LONGEST_S:
        before = (course.at_s, course.core_c, course.surface_c)
        course.advance()
    points = [before, (course.at_s, course.core_c, course.surface_c)]
    return crossing_s(points, 1, wanted_c, room_c) or course.at_s
