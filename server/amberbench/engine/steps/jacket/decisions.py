"""What is decided when a jacket was looked into: when the next look is due."""

from ..melt import decisions as melt_decisions

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable

# A look costs heat and steam: never sooner than this after the last, and never so late that nobody minds the water
# (assumed).
LEAST_WAIT_S, MOST_WAIT_S = 600.0, 2700.0


def wait_s(jacket: "Readable", after_s: float) -> float:
    """Seconds to the next look, after one at `after_s` found lumps: half of what is left to the likely end."""
    slower = max(jacket["slower"], after_s / jacket["low_s"])
    found_s: float = min(max(0.5 * (slower * jacket["seconds_s"] - after_s), LEAST_WAIT_S), MOST_WAIT_S)
    return found_s


def _stirred(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    jacket = run["melt"]["jacket"]
    if jacket is None:
        return melt_decisions.stirred(run, body, at_ms)
    after_s = (at_ms - jacket["started_ms"]) / 1000.0
    return {"look_ms": None if body["free"] else at_ms + 1000.0 * wait_s(jacket, after_s)}


DECIDES = {"stirred": _stirred}
