"""What is decided while a slab cools: when it is looked at again."""

from .chill_fields import as_told_s
from .plan import TOUCH_AGAIN_S

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable


def _touched(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    return {"again_ms": None if body["firm"] else at_ms + 1000.0 * TOUCH_AGAIN_S}


def _refitted(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """As early as it may be ready, or when the bench brings nothing more; not at once after it was found soft."""
    poured_ms = run["done"]["melt"]
    soft_s = [touch["at_s"] for touch in run["cool"]["touches"] if not touch["firm"]]
    chill = body["reply"].get("chill")
    times_ms = [poured_ms + 1000.0 * (chill["bench_s"] if chill else body["reply"]["ready_low_s"])]
    return {"due_ms": max(times_ms + [poured_ms + 1000.0 * (at_s + TOUCH_AGAIN_S) for at_s in soft_s])}


def _chilled(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """After the chill of a slab that the bench has done with; one that goes in sooner is warmer and takes longer."""
    chill = run["cool"].get("chill")
    if not chill:
        return {"due_ms": at_ms + 1000.0 * TOUCH_AGAIN_S}
    early = at_ms < run["done"]["melt"] + 1000.0 * chill["bench_s"] and chill["sooner_s"] is not None
    return {"due_ms": at_ms + 1000.0 * as_told_s(chill["sooner_s"] if early else chill["seconds_s"])}


DECIDES = {"chilled": _chilled, "touched": _touched, "cooling_refitted": _refitted}
