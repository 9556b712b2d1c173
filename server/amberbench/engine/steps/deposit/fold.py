"""Folds of the funnel's events: filled, read, ended.

How much caramel is in it, how warm it is believed to be and when its clock rings was decided when that was told.
"""

from ...core import duplicates
from ...core.copy_with import copy_with
from ...core.unfit import Unfit, part
from ..melt import fold as melt_fold
from ..melt.fold import melting

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Decide, Document
    from ...types import ClusterRun, ClusterState, FilledBody, FillEndedBody, FillReadBody, MeltState


MOST_FILLS, MOST_READINGS = 120, 120


def laying(run: "ClusterRun") -> "ClusterState":
    """The state of the clusters while they are laid."""
    part(run, "cluster")
    melting(run)
    return run["cluster"]


def since_ms(run: "ClusterRun") -> float | None:
    """The time of the last event of funnel or bowl (ms), or null."""
    state, fill = run["cluster"], run["cluster"]["fill"]
    told_ms = (state["begun_ms"], None if fill is None else fill["at_ms"], run["melt"]["last_at_ms"])
    told = [one for one in told_ms if one is not None]
    return max(told) if told else None


def take(state: "ClusterState", decided: "Document") -> None:
    """Takes what was decided of the funnel and the bowl into the state of the clusters."""
    state["fill"], state["bowl_kg"], state["base_kg"] = decided["fill"], decided["bowl_kg"], decided["base_kg"]
    state["begun_ms"], state["under_way"] = decided["begun_ms"], decided["under_way"]


def _fill(run: "ClusterRun", body: "FilledBody", at_ms: float, decide: "Decide") -> None:
    state, melt_state = laying(run), run["melt"]
    duplicates.refuse_same_tap(body, state["fills"])
    if state["fills"] >= MOST_FILLS:
        raise Unfit("too_many")
    decided = decide(since_ms(run))
    if state["melted"] is None:
        state["melted"] = {"request": melt_state["request"], "history": melt_state["history"]}
        state["filled_ms"] = at_ms
    state["fills"] += 1
    take(state, decided)
    _melt_anew(melt_state, decided["melt"], at_ms)


def _melt_anew(melt_state: "MeltState", bowl: "Document", at_ms: float) -> None:
    """Begins a new melt with what is in the bowl."""
    request = melt_state["request"]
    oven: "Document" = dict(request["oven"])
    for name in ("power_w", "power_sd_w"):
        if bowl[name] is not None:
            oven[name] = bowl[name]
    melt_state["past"] = melt_fold.readings(melt_state)
    melt_state["history"] = []
    melt_state["request"] = copy_with(
        request, mass_kg=bowl["mass_kg"], start_c=bowl["start_c"], start_sd_k=bowl["start_sd_k"], oven=oven
    )
    melt_state["burning"] = melt_state["resting"] = None
    melt_state["free"], melt_state["read_wanted"], melt_state["last_at_ms"] = True, False, at_ms


def _read(run: "ClusterRun", body: "FillReadBody", at_ms: float, decide: "Decide") -> None:
    state = laying(run)
    if state["fill"] is None:
        raise Unfit("funnel_empty")
    if len(state["readings"]) >= MOST_READINGS:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["readings"], "surface_c")
    decided = decide(since_ms(run))
    state["readings"].append({"at_ms": at_ms, "surface_c": body["surface_c"]})
    take(state, decided)


def _end(run: "ClusterRun", body: "FillEndedBody", at_ms: float, decide: "Decide") -> None:
    """What is left goes back into the bowl, to be heated again or topped up with it."""
    state = laying(run)
    if state["fill"] is None:
        raise Unfit("funnel_empty")
    duplicates.refuse_same_tap(body, state["fills"])
    decided = decide(since_ms(run))
    take(state, decided)
    if decided["melt"] is not None:
        _melt_anew(run["melt"], decided["melt"], at_ms)


FOLDS = {"filled": _fill, "fill_read": _read, "fill_ended": _end}
