"""What is decided when a tray is told of: what is left in the funnel, and when what was tried is tried again."""

from ...steps.cool.chill_fields import as_told_s
from ...steps.deposit import trays
from ...steps.deposit.decisions import advance_to, copied, decided
from ...steps.deposit.trays_done import second_deposits
from .fold import new_tray

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable

# Tried too soon: again after this (assumed).
TACKY_AGAIN_S, FREE_AGAIN_S = 120.0, 600.0
# Caramel that turns tacky this much sooner or later than planned is another caramel (assumed).
LEAST_TACK_FACTOR, MOST_TACK_FACTOR = 0.25, 4.0
# The funnel never holds less, so that its cooling can be reckoned (rounding).
LEAST_FILL_KG = 1e-3


def _laid(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    state = copied(run["cluster"])
    tray, number = new_tray(state, at_ms), len(state["laid"])
    _tray_done(state, "lay", number, at_ms)
    state["laid"] = state["laid"] + [tray]
    return decided(state)


def _laid_second(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    state = copied(run["cluster"])
    tray = second_deposits(state)
    _tray_done(state, "second", tray, at_ms)
    state["laid"] = list(state["laid"])
    state["laid"][tray] = dict(state["laid"][tray], second_ms=at_ms)
    return decided(state)


def _tray_done(state: "Document", task: str, tray: int, at_ms: float) -> None:
    """A whole tray has run out of the funnel: what is in it is known again."""
    advance_to(state, at_ms)
    left = max(0.0, state["base_kg"] - trays.tray_kg(state, task, tray))
    if state["fill"] is None:
        state["bowl_kg"] = left
    else:
        state["fill"]["kg"] = max(LEAST_FILL_KG, left - state["bowl_kg"])
    state["base_kg"], state["begun_ms"], state["under_way"] = left, at_ms, None


def _ended(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """Nothing more is laid: the tray under way is given up as it is."""
    state = copied(run["cluster"])
    advance_to(state, at_ms)
    state["all_laid"] = True
    if state["under_way"] == "lay":
        state["under_way"] = None
    if state["begun_ms"] is not None:
        _next_task(state, at_ms)
    return decided(state)


def _next_task(state: "Document", at_ms: float) -> None:
    """What was told may change which task is next, unless a tray is under way."""
    if state["under_way"] is None:
        state["begun_ms"] = at_ms
        state["base_kg"] = state["bowl_kg"] + (0.0 if state["fill"] is None else state["fill"]["kg"])


def _tested(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """What the first deposits do moves the windows of all."""
    state = copied(run["cluster"])
    advance_to(state, at_ms)
    at_s = (at_ms - state["laid"][second_deposits(state)]["began_ms"]) / 1000.0
    state["tests"] = state["tests"] + [{"at_s": at_s, "tacky": body["tacky"]}]
    from_s = state["second"]["from_s"]
    if body["tacky"]:
        state["tack"] = max(LEAST_TACK_FACTOR, min(state["tack"], at_s / from_s))
    else:
        state["tack"] = min(MOST_TACK_FACTOR, max(state["tack"], (at_s + TACKY_AGAIN_S) / from_s))
    _next_task(state, at_ms)
    return dict(decided(state), tack=state["tack"])


def _freed(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """Tried again after a while, or after the chill that it goes into."""
    chill_s = (run["cluster"].get("chill") or {"seconds_s": 0.0})["seconds_s"]
    return {"again_ms": None if body["free"] else at_ms + 1000.0 * max(FREE_AGAIN_S, as_told_s(chill_s))}


DECIDES = {
    "tray_laid": _laid,
    "laying_ended": _ended,
    "tack_tested": _tested,
    "second_laid": _laid_second,
    "tray_freed": _freed,
}
