"""Folds of the funnel's events: filled, read, ended.

How much caramel is in it, how warm it is believed to be and when its clock rings was decided when that was told.
"""

from ...core import duplicates
from ...core.unfit import Unfit, part
from ..melt import fold as melt_fold
from ..melt.fold import melting

MOST_FILLS, MOST_READINGS = 120, 120


def laying(run):
    """The state of the clusters while they are laid."""
    part(run, "cluster")
    melting(run)
    return run["cluster"]


def since_ms(run):
    """When funnel and bowl were told of last (ms), or null."""
    state, fill = run["cluster"], run["cluster"]["fill"]
    told_ms = (state["begun_ms"], None if fill is None else fill["at_ms"], run["melt"]["last_at_ms"])
    return max([one for one in told_ms if one is not None] or [None])


def take(state, decided):
    """Takes what was decided of the funnel and the bowl into the state of the clusters."""
    for name in ("fill", "bowl_kg", "base_kg", "begun_ms", "under_way"):
        state[name] = decided[name]


def _fill(run, body, at_ms, decide):
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


def _melt_anew(melt_state, bowl, at_ms):
    """Begins a new melt with what is in the bowl."""
    request = melt_state["request"]
    oven = dict(request["oven"])
    for name in ("power_w", "power_sd_w"):
        if bowl[name] is not None:
            oven[name] = bowl[name]
    melt_state["past"] = melt_fold.readings(melt_state)
    melt_state["history"] = []
    melt_state["request"] = dict(
        request, mass_kg=bowl["mass_kg"], start_c=bowl["start_c"], start_sd_k=bowl["start_sd_k"], oven=oven
    )
    melt_state["burning"] = melt_state["resting"] = None
    melt_state["free"], melt_state["read_wanted"], melt_state["last_at_ms"] = True, False, at_ms


def _read(run, body, at_ms, decide):
    state = laying(run)
    if state["fill"] is None:
        raise Unfit("funnel_empty")
    if len(state["readings"]) >= MOST_READINGS:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["readings"], "surface_c")
    decided = decide(since_ms(run))
    state["readings"].append({"at_ms": at_ms, "surface_c": body["surface_c"]})
    take(state, decided)


def _end(run, body, at_ms, decide):
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
