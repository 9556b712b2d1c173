"""Clusters as folds: what goes under, the funnel's fills, trays laid, tried, laid again and set free.

The bowl and the funnel share the caramel: each fill leaves less in the bowl, which goes on cooling and is heated again
by the same events as the first melt. Laying ends when the funnel is emptied; that ends the step "melt".
"""

from ...core import duplicates
from ...core.unfit import Unfit, part
from ...steps.deposit import trays
from ...steps.deposit.fold import advance_to, laying, set_clock
from ...steps.deposit.trays import freed, second_deposits
from ...steps.melt import fold as melt_fold

MOST_TRAYS, MOST_TRIES = 60, 120
# Tried too soon: again after this (assumed).
TACKY_AGAIN_S, FREE_AGAIN_S = 120.0, 600.0
# Caramel that turns tacky this much sooner or later than planned is another caramel (assumed).
SOONEST, LATEST = 0.25, 4.0


def opened(reply):
    """The state of the clusters in a run before anything is laid; `reply` is the plan's."""
    sizes, second_kg = reply.get("sizes"), reply.get("second_kg", 0.0)
    if sizes is None:
        # Old plans do not say: all deposits are taken to be alike.
        each_kg = reply["deposits_kg"] / reply["clusters"] / (1 if reply["second"] is None else 2)
        sizes = [{"clusters": reply["clusters"], "deposit_kg": each_kg}]
        second_kg = 0.0 if reply["second"] is None else each_kg
    return {
        "request": reply["fill_request"],
        "full_kg": reply["fill_kg"],
        "fresh_s": max(trays.SHORTEST_FILL_S, reply.get("safe_s", reply["fill_s"])),
        "tray_s": reply["tray_s"],
        "trays": reply["trays"],
        "per_tray": reply["per_tray"],
        "sizes": sizes,
        "second_kg": second_kg,
        "given": reply["deposits_kg"] / reply["caramel_kg"],
        "second": reply["second"],
        "free": reply["free"],
        "fill": None,
        "fills": 0,
        "filled_ms": None,
        "bowl_kg": None,
        "base_kg": None,
        "begun_ms": None,
        "under_way": None,
        "melted": None,
        "readings": [],
        "laid": [],
        "all_laid": False,
        "tests": [],
        "tack": 1.0,
        "tries": [],
        "free_again_ms": None,
    }


def oven_melt(run):
    """The melt of all that was weighed in: the first one, before fills were taken from the bowl."""
    melted = run["cluster"]["melted"]
    return run["melt"] if melted is None else melted


def _lay(run, body, at_ms):
    state = laying(run)
    if state["fills"] == 0:
        raise Unfit("not_filled_yet")
    if len(state["laid"]) >= MOST_TRAYS:
        raise Unfit("too_many")
    duplicates.refuse_same_tap(body, len(state["laid"]))
    tray = {"began_ms": state["begun_ms"], "laid_ms": at_ms, "second_ms": None, "freed_ms": None}
    _tray_done(state, "lay", len(state["laid"]), at_ms)
    state["laid"].append(tray)
    set_clock(state)


def _tray_done(state, task, tray, at_ms):
    """A whole tray has run out of the funnel: what is in it is known again."""
    advance_to(state, at_ms)
    left = max(0.0, state["base_kg"] - trays.tray_kg(state, task, tray))
    if state["fill"] is None:
        state["bowl_kg"] = left
    else:
        state["fill"]["kg"] = max(1e-3, left - state["bowl_kg"])
    state["base_kg"], state["begun_ms"], state["under_way"] = left, at_ms, None


def _end_laying(run, body, at_ms):
    state = laying(run)
    if state["all_laid"]:
        raise Unfit("already_done")
    advance_to(state, at_ms)
    state["all_laid"] = True
    if state["under_way"] == "lay":
        # The tray under way is given up as it is.
        state["under_way"] = None
    if state["begun_ms"] is not None:
        _choose_next_task(state, at_ms)


def _choose_next_task(state, at_ms):
    """Chooses the next task again, unless a tray is under way."""
    if state["under_way"] is None:
        state["begun_ms"] = at_ms
        state["base_kg"] = state["bowl_kg"] + (0.0 if state["fill"] is None else state["fill"]["kg"])
    set_clock(state)


def _second_of(state):
    """The tray that is next for a second deposit."""
    if state["second"] is None:
        raise Unfit("no_second_deposit")
    tray = second_deposits(state)
    if tray >= len(state["laid"]):
        raise Unfit("not_laid_yet")
    return tray


def _test(run, body, at_ms):
    """Touched: tacky, or not yet. What the first deposits do moves the windows of all."""
    state = laying(run)
    tray = _second_of(state)
    if len(state["tests"]) >= MOST_TRIES:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["tests"], "tacky")
    advance_to(state, at_ms)
    at_s = (at_ms - state["laid"][tray]["began_ms"]) / 1000.0
    state["tests"].append({"at_s": at_s, "tacky": body["tacky"]})
    from_s = state["second"]["from_s"]
    if body["tacky"]:
        state["tack"] = max(SOONEST, min(state["tack"], at_s / from_s))
    else:
        state["tack"] = min(LATEST, max(state["tack"], (at_s + TACKY_AGAIN_S) / from_s))
    _choose_next_task(state, at_ms)


def _lay_second(run, body, at_ms):
    state = laying(run)
    tray = _second_of(state)
    duplicates.refuse_same_tap(body, tray)
    _tray_done(state, "second", tray, at_ms)
    state["laid"][tray]["second_ms"] = at_ms
    set_clock(state)


def _empty(run, body, at_ms):
    state = laying(run)
    state["fill"] = None
    run["melt"]["burning"] = run["melt"]["resting"] = None
    run["melt"]["read_wanted"] = False
    run["done"]["melt"] = at_ms


def _free(run, body, at_ms):
    part(run, "cluster")
    state = run["cluster"]
    if "melt" not in run["done"]:
        raise Unfit("not_laid_yet")
    if "cool_tray" in run["done"] or freed(state) >= len(state["laid"]):
        raise Unfit("already_done")
    if len(state["tries"]) >= MOST_TRIES:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["tries"], "free")
    state["tries"].append({"at_ms": at_ms, "free": body["free"]})
    state["free_again_ms"] = None if body["free"] else at_ms + 1000.0 * FREE_AGAIN_S
    if body["free"]:
        state["laid"][freed(state)]["freed_ms"] = at_ms
        if freed(state) == len(state["laid"]):
            run["done"]["cool_tray"] = at_ms


FOLDS = {
    "tray_laid": _lay,
    "laying_ended": _end_laying,
    "tack_tested": _test,
    "second_laid": _lay_second,
    "funnel_emptied": _empty,
    "tray_freed": _free,
}


def begin(reply):
    planned = {name: reply[name] for name in ("caramel_kg", "piece_kg", "per_tray", "trays")}
    planned["pieces"] = reply["clusters"]
    planned["under_kg"] = sum(one["kg"] for one in reply["under"])
    planned["bed"] = any(one["count"] is None for one in reply["under"])
    planned["bed_kg"] = reply.get("bed")
    planned["under"] = [_beneath(one, reply["clusters"]) for one in reply["under"]]
    return {"planned": planned, "melt": melt_fold.opened(reply), "cluster": opened(reply)}


def _beneath(one, clusters):
    """What lies under each of so many clusters: its name (null: only its make-up is known), how many, its allergen."""
    material = one["material"] if type(one["material"]) is str else None
    each_n = None if one["count"] is None else one["count"] // clusters
    return {"material": material, "each_n": each_n, "allergen": one.get("allergen")}
