"""Clusters as folds: what goes under, the funnel's fills, trays laid, tried, laid again and set free.

The bowl and the funnel share the caramel: each fill leaves less in the bowl, which goes on cooling and is heated again
by the same events as the first melt. Laying ends when the funnel is emptied; that ends the step "melt".
"""

from . import funnel, twice
from .unfit import Unfit, belongs, melting

MOST_FILLS, MOST_TRAYS, MOST_TRIES = 120, 60, 120
# Less than this is not heated again (the melt's model reaches no further).
LEAST_BOWL_KG = 0.05
# The clock of a fill must not ring too late: it is reckoned as so much cooler (readings and belief, assumed) and
# as losing this many times the heat (the 1 % point of a funnel's loss known to a fifth, assumed).
SURE_K, QUICKER = 2.0, 1.6
# Tried too soon: again after this (assumed).
TACKY_AGAIN_S, FREE_AGAIN_S = 120.0, 600.0
# Caramel that turns tacky this much sooner or later than planned is another caramel (assumed).
SOONEST, LATEST = 0.25, 4.0


def opened(reply):
    """The state of the clusters in a run before anything is laid; `reply` is the plan's."""
    return {
        "request": reply["fill_request"],
        "full_kg": reply["fill_kg"],
        "tray_s": reply["tray_s"],
        "trays": reply["trays"],
        "second": reply["second"],
        "free": reply["free"],
        "fill": None,
        "fills": 0,
        "filled_ms": None,
        "bowl_kg": None,
        "melted": None,
        "readings": [],
        "laid": [],
        "all_laid": False,
        "tests": [],
        "tack": 1.0,
        "tries": [],
        "free_again_ms": None,
    }


def window_ms(state, tray):
    """(from, to): when the second deposit of a tray (from 0) may begin, in corrected ms.

    By its first row, which is laid again first: at the same pace every row waits as long as that one.
    """
    began_ms, second = state["laid"][tray]["began_ms"], state["second"]
    return tuple(began_ms + 1000.0 * state["tack"] * second[name] for name in ("from_s", "to_s"))


def left_kg(state, at_ms):
    """What is left in the funnel at a time, laid at the planned pace."""
    fill = state["fill"]
    return max(0.0, fill["kg"] - state["request"]["pace_kg_s"] * (at_ms - fill["at_ms"]) / 1000.0)


def _laying(run):
    belongs(run, "cool_tray")
    melting(run)
    return run["cluster"]


def _counted(body, count):
    """Refuses what another hand has told already: `seen` is how many there were when it was tapped."""
    if body["seen"] is not None and body["seen"] < count:
        raise Unfit("already_counted")


def _fill(run, body, at_ms):
    state = _laying(run)
    _counted(body, state["fills"])
    if state["fills"] >= MOST_FILLS:
        raise Unfit("too_many")
    melt = run["melt"]
    if state["melted"] is None:
        state["melted"] = {"request": melt["request"], "history": melt["history"]}
        state["filled_ms"] = at_ms
        state["bowl_kg"] = run["planned"]["caramel_kg"] if run["weighed_kg"] is None else run["weighed_kg"]
    had_kg = 0.0 if state["fill"] is None else left_kg(state, at_ms)
    kg = max(body["kg"], 1e-3)
    state["fills"] += 1
    state["fill"] = {"at_ms": at_ms, "kg": kg}
    _read_at(state, body["bulk_c"], at_ms)
    _in_bowl(run, max(0.0, state["bowl_kg"] - max(0.0, kg - had_kg)), body["bulk_c"], at_ms)


def _read_at(state, now_c, at_ms):
    """Sets the fill's clock: it runs low, or it leaves its window, whichever comes first."""
    fill, kg = state["fill"], max(1e-3, left_kg(state, at_ms))
    request = dict(state["request"], h_w_m2k=QUICKER * state["request"]["h_w_m2k"])
    lasts_s = funnel.seconds(request, now_c - SURE_K, kg)
    fill["now_c"], fill["now_ms"], fill["due_ms"] = now_c, at_ms, at_ms + 1000.0 * lasts_s
    fill["thick"] = lasts_s + 1.0 < kg / state["request"]["pace_kg_s"]


def _in_bowl(run, kg, bulk_c, at_ms):
    """What the bowl holds now: a new melt of less, as warm as the fill that was taken from it."""
    melt, state = run["melt"], run["cluster"]
    state["bowl_kg"] = kg
    melt["past"] = twice.readings(melt)
    melt["history"] = []
    melt["request"] = dict(melt["request"], mass_kg=max(LEAST_BOWL_KG, kg), start_c=bulk_c)
    melt["burning"] = melt["resting"] = None
    melt["free"], melt["read_wanted"], melt["last_at_ms"] = True, False, at_ms


def _read_fill(run, body, at_ms):
    state = _laying(run)
    if state["fill"] is None:
        raise Unfit("funnel_empty")
    if len(state["readings"]) >= MOST_TRIES:
        raise Unfit("too_many")
    twice.once(body, state["readings"], "surface_c")
    state["readings"].append({"at_ms": at_ms, "surface_c": body["surface_c"]})
    _read_at(state, body["surface_c"], at_ms)


def _end_fill(run, body, at_ms):
    """What is left goes back into the bowl, to be heated again or topped up with it."""
    state = _laying(run)
    if state["fill"] is None:
        raise Unfit("funnel_empty")
    _counted(body, state["fills"])
    state["fill"] = None
    _in_bowl(run, state["bowl_kg"] + body["left_kg"], body["bulk_c"], at_ms)


def _lay(run, body, at_ms):
    state = _laying(run)
    if state["fills"] == 0:
        raise Unfit("not_filled_yet")
    if len(state["laid"]) >= MOST_TRAYS:
        raise Unfit("too_many")
    _counted(body, len(state["laid"]))
    # Nobody taps at the first deposit of a tray: it was laid as long ago as a tray takes, at most since the one before.
    since_ms = state["laid"][-1]["laid_ms"] if state["laid"] else state["filled_ms"]
    began_ms = max(since_ms, at_ms - 1000.0 * state["tray_s"])
    state["laid"].append({"began_ms": began_ms, "laid_ms": at_ms, "second_ms": None, "freed_ms": None})


def _end_laying(run, body, at_ms):
    state = _laying(run)
    if state["all_laid"]:
        raise Unfit("already_done")
    state["all_laid"] = True


def seconds(state):
    """How many trays have their second deposit."""
    return len([one for one in state["laid"] if one["second_ms"] is not None])


def _second_of(state):
    """The tray that is next for a second deposit."""
    if state["second"] is None:
        raise Unfit("no_second_deposit")
    tray = seconds(state)
    if tray >= len(state["laid"]):
        raise Unfit("not_laid_yet")
    return tray


def _test(run, body, at_ms):
    """Touched: tacky, or not yet. What the first deposits do moves the windows of all."""
    state = _laying(run)
    tray = _second_of(state)
    if len(state["tests"]) >= MOST_TRIES:
        raise Unfit("too_many")
    twice.once(body, state["tests"], "tacky")
    at_s = (at_ms - state["laid"][tray]["began_ms"]) / 1000.0
    state["tests"].append({"at_s": at_s, "tacky": body["tacky"]})
    from_s = state["second"]["from_s"]
    if body["tacky"]:
        state["tack"] = max(SOONEST, min(state["tack"], at_s / from_s))
    else:
        state["tack"] = min(LATEST, max(state["tack"], (at_s + TACKY_AGAIN_S) / from_s))


def _lay_second(run, body, at_ms):
    state = _laying(run)
    tray = _second_of(state)
    _counted(body, tray)
    state["laid"][tray]["second_ms"] = at_ms


def _empty(run, body, at_ms):
    state = _laying(run)
    state["fill"] = None
    run["melt"]["burning"] = run["melt"]["resting"] = None
    run["melt"]["read_wanted"] = False
    run["done"]["melt"] = at_ms


def freed(state):
    """How many trays are free of their paper."""
    return len([one for one in state["laid"] if one["freed_ms"] is not None])


def _free(run, body, at_ms):
    belongs(run, "cool_tray")
    state = run["cluster"]
    if "melt" not in run["done"]:
        raise Unfit("not_laid_yet")
    if "cool_tray" in run["done"] or freed(state) >= len(state["laid"]):
        raise Unfit("already_done")
    if len(state["tries"]) >= MOST_TRIES:
        raise Unfit("too_many")
    twice.once(body, state["tries"], "free")
    state["tries"].append({"at_ms": at_ms, "free": body["free"]})
    state["free_again_ms"] = None if body["free"] else at_ms + 1000.0 * FREE_AGAIN_S
    if body["free"]:
        state["laid"][freed(state)]["freed_ms"] = at_ms
        if freed(state) == len(state["laid"]):
            run["done"]["cool_tray"] = at_ms


FOLDS = {
    "filled": _fill,
    "fill_read": _read_fill,
    "fill_ended": _end_fill,
    "tray_laid": _lay,
    "laying_ended": _end_laying,
    "tack_tested": _test,
    "second_laid": _lay_second,
    "funnel_emptied": _empty,
    "tray_freed": _free,
}
