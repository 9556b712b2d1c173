"""What is decided when a cube is measured: what its heights say of the caramel, and when it is measured again."""

from . import plan

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable

# When its height is measured, after the fresh cube: 1, 24 and 72 h (from memory).
MEASURED_AT_S = (0.0, 3600.0, 86400.0, 259200.0)


def due_ms(state: "Readable") -> float | None:
    """When the next look is due (ms); None before the first and after the last."""
    seen = len(state["heights"])
    if not 0 < seen < len(MEASURED_AT_S):
        return None
    first_ms: float = state["heights"][0]["at_ms"]
    return first_ms + 1000.0 * MEASURED_AT_S[seen]


def _stood(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    heights = run["stand"]["heights"] + [{"at_ms": at_ms, "height_m": body["height_m"]}]
    since_ms, verdict = heights[0]["at_ms"], None
    if len(heights) > 1:
        measured = [((one["at_ms"] - since_ms) / 1000.0, one["height_m"]) for one in heights]
        verdict = plan.judged(measured)[1]
    # Who missed a look and comes days later has the last one.
    return {
        "verdict": verdict,
        "last": len(heights) == len(MEASURED_AT_S) or at_ms - since_ms >= 1000.0 * MEASURED_AT_S[-1],
    }


DECIDES = {"stood": _stood}
