"""A stand-up test as folds: the heights of one cube over three days, and what they say of its caramel."""

from ...core import duplicates
from ...core.unfit import Unfit, part
from . import plan

# When its height is measured, after the fresh cube: 1, 24 and 72 h (from memory).
LOOKS_S = (0.0, 3600.0, 86400.0, 259200.0)


def opened():
    """The test's state in a run before the cube is measured."""
    return {"heights": [], "lost_fraction": None, "verdict": None}


def due_ms(state):
    """When the next look is due (ms); None before the first and after the last."""
    seen = len(state["heights"])
    if not 0 < seen < len(LOOKS_S):
        return None
    return state["heights"][0]["at_ms"] + 1000.0 * LOOKS_S[seen]


def _stand(run, body, at_ms):
    part(run, "stand")
    state, height_m = run["stand"], body["height_m"]
    heights = state["heights"]
    if "stand" in run["done"]:
        raise Unfit("already_done")
    duplicates.refuse_same_reading(body, heights, "height_m")
    if heights and height_m > heights[-1]["height_m"]:
        raise Unfit("height_grows")
    heights.append({"at_ms": at_ms, "height_m": height_m})
    if len(heights) > 1:
        since_ms = heights[0]["at_ms"]
        measured = [((one["at_ms"] - since_ms) / 1000.0, one["height_m"]) for one in heights]
        state["lost_fraction"], state["verdict"] = plan.judged(measured)
    # Who missed a look and comes days later has the last one.
    if len(heights) == len(LOOKS_S) or at_ms - heights[0]["at_ms"] >= 1000.0 * LOOKS_S[-1]:
        run["done"]["stand"] = at_ms


FOLDS = {"stood": _stand}


def begin(reply):
    return {"planned": {"caramel_kg": None, "pieces": None, "piece_kg": None}, "stand": opened()}
