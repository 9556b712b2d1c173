"""What is decided at an event of the melt: how long a pause counts as a rest, and whether a reading is needed."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable

# A stir, a look and a reading take about this long (assumed); a longer gap is a rest in which the caramel cools.
USUAL_GAP_S = 90.0
# The melt's model takes no longer rest; the caramel is as cold as the room by then.
LONGEST_REST_S = 36000.0
# A block that should have been warmer than this after the burst and still has lumps is read all the same: somebody may
# take grain for lumps, and bursts nobody measures end in scorched caramel (lumps go at 46 to 52 °C; common practice, no
# published source).
LUMPS_GONE_C = 50.0


def rested_s(since_ms: float | None, at_ms: float) -> float | None:
    """How long the caramel has rested, in s, between two happenings; None: no longer than they take."""
    if since_ms is None or at_ms - since_ms <= 1000.0 * USUAL_GAP_S:
        return None
    return min((at_ms - since_ms) / 1000.0 - USUAL_GAP_S, LONGEST_REST_S)


def _paused(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    return {"paused_s": rested_s(run["melt"]["last_at_ms"], at_ms)}


def stirred(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """A block that should be warm by now and has lumps is read; so is one that stirs freely for the first time."""
    melt, burning = run["melt"], run["melt"]["burning"]
    free = melt["free"] or body["free"]
    lumps_too_long = not free and (burning["expected_c"] or 0.0) > LUMPS_GONE_C
    newly_free = body["free"] and not melt["free"]
    return {
        "paused_s": rested_s(min(burning["due_ms"], at_ms), at_ms),
        "read_wanted": lumps_too_long or (free and (burning["read"] or newly_free)),
    }


DECIDES = {"burst_started": _paused, "read": _paused, "stirred": stirred}
