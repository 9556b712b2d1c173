"""What a cube that stands says of its caramel."""

from ...core.check import constant
from ...core.problems import Problem
from ...physics import materials, slump

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ...core.annotations import Document, Readable
    from ...types import FlowStandUpTestRequest


# Share of height lost: stays square up to, slumps above (assumed); firm is not said before a day has passed.
FIRM_LOST, SLUMPS_LOST = 0.05, 0.15
DAY_S, HOUR_S = 86400.0, 3600.0
CREEP = 1.0 / 3.0  # power of time by which a soft solid sinks at first
LEAST_LOST = 0.005  # a rule tells no less: a tenth of a millimetre of 20 (assumed)
ROUNDING = 1e-9  # 9.5 of 10 mm is 5 % lost, whatever the last digit of a float says


def _refuse(heights: "Sequence[Readable]") -> None:
    for index in range(1, len(heights)):
        before, now = heights[index - 1], heights[index]
        path = "heights[" + str(index) + "]"
        if now["at_s"] <= before["at_s"]:
            raise Problem(path + ".at_s", "not_later", now["at_s"], low=before["at_s"], unit="s")
        if now["height_m"] > before["height_m"]:
            raise Problem(path + ".height_m", "height_grows", now["height_m"], high=before["height_m"], unit="m")


def judged(heights: list[tuple[float, float]]) -> tuple[float, str]:
    """(share of the height lost, verdict) of [(s, m)], the fresh cube first.

    Before a day has passed a cube slumps if it is on the way to: it sinks as the cube root of time, if not faster
    (creep of soft solids, Andrade, from memory).
    """
    lost, at_s = 1.0 - heights[-1][1] / heights[0][1], heights[-1][0] - heights[0][0]
    line = SLUMPS_LOST / (1.0 - SLUMPS_LOST) * min(1.0, at_s / DAY_S) ** CREEP
    if lost > line / (1.0 + line) + ROUNDING:
        return lost, "slumps"
    firm = lost <= FIRM_LOST + ROUNDING and at_s >= DAY_S
    return lost, "firm" if firm else "borderline"


def first_sinking(heights: list[tuple[float, float]]) -> tuple[float, float]:
    """(s, share of its height lost) at the look nearest to an hour, by the ratio of times: a centre waits about as
    long to be dipped. No less than a rule can tell."""
    first_s, fresh_m = heights[0]
    looks = [(at_s - first_s, 1.0 - height_m / fresh_m) for at_s, height_m in heights[1:]]
    at_s, lost = min(looks, key=lambda look: (max(look[0] / HOUR_S, HOUR_S / look[0]), look[0]))
    return at_s, max(lost, LEAST_LOST)


def stand_up_test(request: "FlowStandUpTestRequest") -> "Document":
    """Whether a cut cube stays square in this room, by how much of its height it has lost, and how stiff that makes it.

    Request: heights (at_s in s, height_m in m, the fresh cube first), room_c (°C), material, basis, batches.
    Reply: lost_fraction, verdict (firm, borderline, slumps), viscosity_pa_s (Pa s, in this room, at least), stiffer_k
    (K; null where nothing is known of its water), square_to_c (°C, warmest room in which a cube as high loses no more
    than 5 % in an hour; null likewise), inputs.
    Raises: Problem not_later (times that do not rise), height_grows (a height above the one before), unknown_material,
    composition_sum.
    Relation: lost_fraction = 1 − last height / first height. Up to 5 % firm, above 15 % slumps, before a day has passed
    above 15 % less as the cube root of time; firm is not said before a day has passed. Read it at 1, 24 and 72 h.
    Viscosity from the look nearest to an hour as that of a column that sinks by its weight; it is as stiff as
    flow.viscosity reckons for its water at a room stiffer_k colder.
    Source: memory for the test, the column and the creep, assumed for the lines of the verdict, berk for stiffer_k.
    """
    heights, room_c = request["heights"], request["room_c"]
    _refuse(heights)
    measured = [(one["at_s"], one["height_m"]) for one in heights]
    lost, verdict = judged(measured)
    material = materials.resolved(request["material"])
    at_s, early = first_sinking(measured)
    density = materials.density(material, room_c)
    viscosity_pa_s = slump.viscosity_by_loss(measured[0][1], at_s, early, density)
    glass, stiffer, square_to_c = slump.glass_of(material), None, None
    if glass is not None:
        stiffer = slump.stiffer_k(glass, room_c, viscosity_pa_s)
        square_to_c = slump.warmest_c(material, glass, stiffer, measured[0][1], HOUR_S, FIRM_LOST)
    return {
        "lost_fraction": lost,
        "verdict": verdict,
        "viscosity_pa_s": viscosity_pa_s,
        "stiffer_k": stiffer,
        "square_to_c": square_to_c,
        "inputs": [
            constant("flow.firm_lost", FIRM_LOST, ""),
            constant("flow.slumps_lost", SLUMPS_LOST, ""),
            constant("flow.creep", CREEP, "", "memory"),
            constant("flow.least_lost", LEAST_LOST, ""),
            constant("flow.day_s", DAY_S, "s"),
        ],
    }
