"""A stand-up test as folds: the heights of one cube over three days, and what they say of its caramel."""

from ...core import duplicates
from ...core.unfit import Unfit, part

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Decide, Document
    from ...types import StandState, StandupRun, StoodBody


def opened() -> "StandState":
    """The test's state in a run before the cube is measured."""
    return {"heights": [], "lost_fraction": None, "verdict": None}


def _stand(run: "StandupRun", body: "StoodBody", at_ms: float, decide: "Decide") -> None:
    part(run, "stand")
    state, height_m = run["stand"], body["height_m"]
    heights = state["heights"]
    if "stand" in run["done"]:
        raise Unfit("already_done")
    duplicates.refuse_same_reading(body, heights, "height_m")
    if heights and height_m > heights[-1]["height_m"]:
        raise Unfit("height_grows")
    decided = decide(heights[-1]["at_ms"] if heights else None)
    heights.append({"at_ms": at_ms, "height_m": height_m})
    if len(heights) > 1:
        state["lost_fraction"] = 1.0 - height_m / heights[0]["height_m"]
        state["verdict"] = decided["verdict"]
    if decided["last"]:
        run["done"]["stand"] = at_ms


FOLDS = {"stood": _stand}


def begin(reply: "Document") -> "Document":
    return {"planned": {"caramel_kg": None, "pieces": None, "piece_kg": None}, "stand": opened()}
