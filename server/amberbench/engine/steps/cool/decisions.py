"""What is decided while a slab cools: when it is looked at again."""

from .plan import TOUCH_AGAIN_S

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable


def _touched(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    return {"again_ms": None if body["firm"] else at_ms + 1000.0 * TOUCH_AGAIN_S}


def _refitted(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """As early as it may be ready, and not at once after it was found soft."""
    poured_ms = run["done"]["melt"]
    soft_s = [touch["at_s"] for touch in run["cool"]["touches"] if not touch["firm"]]
    times_ms = [poured_ms + 1000.0 * body["reply"]["ready_low_s"]]
    return {"due_ms": max(times_ms + [poured_ms + 1000.0 * (at_s + TOUCH_AGAIN_S) for at_s in soft_s])}


DECIDES = {"touched": _touched, "cooling_refitted": _refitted}
