"""What a cube that stands says of its caramel."""

from ...core.check import constant
from ...core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ...core.annotations import Document, Readable
    from ...types import FlowStandUpTestRequest


# Share of height lost: stays square up to, slumps above (assumed); firm is not said before a day has passed.
FIRM_LOST, SLUMPS_LOST = 0.05, 0.15
DAY_S = 86400.0
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
    """(share of the height lost, verdict) of [(s, m)], the fresh cube first."""
    lost = 1.0 - heights[-1][1] / heights[0][1]
    if lost > SLUMPS_LOST + ROUNDING:
        return lost, "slumps"
    firm = lost <= FIRM_LOST + ROUNDING and heights[-1][0] - heights[0][0] >= DAY_S
    return lost, "firm" if firm else "borderline"


def stand_up_test(request: "FlowStandUpTestRequest") -> "Document":
    """Whether a cut cube stays square in this room: share of its height lost, and a verdict.

    Request: heights (at_s in s, height_m in m, the fresh cube first), room_c (°C), basis, batches.
    Reply: lost_fraction, verdict (firm, borderline, slumps), inputs.
    Raises: Problem not_later (times that do not rise), height_grows (a height above the one before).
    Relation: lost_fraction = 1 − last height / first height. Up to 5 % firm, above 15 % slumps; firm is not said before
    a day has passed. Read it at 1, 24 and 72 h.
    Source: memory for the test, assumed for the lines of the verdict.
    """
    heights = request["heights"]
    _refuse(heights)
    lost, verdict = judged([(one["at_s"], one["height_m"]) for one in heights])
    return {
        "lost_fraction": lost,
        "verdict": verdict,
        "inputs": [
            constant("flow.firm_lost", FIRM_LOST, ""),
            constant("flow.slumps_lost", SLUMPS_LOST, ""),
            constant("flow.day_s", DAY_S, "s"),
        ],
    }
