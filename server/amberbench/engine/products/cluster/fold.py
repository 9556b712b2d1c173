"""Clusters as folds: what goes under, the funnel's fills, trays laid, tried, laid again and set free.

The bowl and the funnel share the caramel: each fill leaves less in the bowl, which goes on cooling and is heated again
by the same events as the first melt. Laying ends when the funnel is emptied; that ends the step "melt".
"""

from ...core import duplicates
from ...core.unfit import Unfit, part
from ...steps.deposit.fold import laying, since_ms, take
from ...steps.deposit.trays_done import freed, second_deposits
from ...steps.melt import fold as melt_fold

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Decide, Document, Readable
    from ...types import (
        ClusterRun,
        ClusterState,
        FunnelEmptiedBody,
        LaidTray,
        LayingEndedBody,
        Melted,
        MeltState,
        SecondLaidBody,
        TackTestedBody,
        TrayFreedBody,
        TrayLaidBody,
        UnderLotNamedBody,
    )


MOST_TRAYS, MOST_TRIES = 60, 120


def opened(reply: "Document") -> "ClusterState":
    """The state of the clusters in a run before anything is laid; `reply` is the plan's."""
    sizes, second_kg = reply.get("sizes"), reply.get("second_kg", 0.0)
    if sizes is None:
        # Old plans do not say: all deposits are taken to be alike.
        each_kg = reply["deposits_kg"] / reply["clusters"] / (1 if reply["second"] is None else 2)
        sizes = [{"clusters": reply["clusters"], "deposit_kg": each_kg}]
        second_kg = 0.0 if reply["second"] is None else each_kg
    state: "ClusterState" = {
        "request": reply["fill_request"],
        "full_kg": reply["fill_kg"],
        "fresh_s": _fresh_s(reply),
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
        "under_lots": [],
    }
    if reply.get("chill"):
        state["chill"] = reply["chill"]
    if reply.get("most_fill_kg") is not None:
        state["most_fill_kg"] = reply["most_fill_kg"]
    return state


def _fresh_s(reply: "Document") -> float:
    """How long a fresh fill stays warm enough: what empties while it is warm may stand as long as any."""
    if "safe_s" not in reply:
        fill_s: float = reply["fill_s"]
        return fill_s
    emptied = reply["safe_s"] >= reply["fill_kg"] / reply["fill_request"]["pace_kg_s"]
    result: float = reply["stands_s"] if emptied and reply.get("stands_s") is not None else reply["safe_s"]
    return result


def oven_melt(run: "ClusterRun") -> "MeltState | Melted":
    """The melt of all that was weighed in: the first one, before fills were taken from the bowl."""
    melted = run["cluster"]["melted"]
    return run["melt"] if melted is None else melted


def new_tray(state: "Readable", at_ms: float) -> "LaidTray":
    """A tray that is laid by now."""
    return {"began_ms": state["begun_ms"], "laid_ms": at_ms, "second_ms": None, "freed_ms": None}


def under_lots_are_named(run: "Readable") -> bool:
    """Whether the lots of all that lies under were asked for; runs of long ago did not keep what lies there."""
    return len(run["cluster"].get("under_lots", [])) >= len(run["planned"].get("under", ()))


def _name_under_lot(run: "ClusterRun", body: "UnderLotNamedBody", at_ms: float) -> None:
    state = part(run, "cluster")
    lots = state.get("under_lots", [])
    if under_lots_are_named(run):
        raise Unfit("already_done")
    duplicates.refuse_same_tap(body, len(lots))
    state["under_lots"] = lots + [{"material": body["material"], "lot": body["lot"]}]
    if under_lots_are_named(run):
        run["done"]["under_lot"] = at_ms


def _lay(run: "ClusterRun", body: "TrayLaidBody", at_ms: float, decide: "Decide") -> None:
    state = laying(run)
    if state["fills"] == 0:
        raise Unfit("not_filled_yet")
    if len(state["laid"]) >= MOST_TRAYS:
        raise Unfit("too_many")
    duplicates.refuse_same_tap(body, len(state["laid"]))
    decided = decide(since_ms(run))
    state["laid"].append(new_tray(state, at_ms))
    take(state, decided)


def _end_laying(run: "ClusterRun", body: "LayingEndedBody", at_ms: float, decide: "Decide") -> None:
    state = laying(run)
    if state["all_laid"]:
        raise Unfit("already_done")
    decided = decide(since_ms(run))
    state["all_laid"] = True
    take(state, decided)


def _second_of(state: "ClusterState") -> int:
    """The tray that is next for a second deposit."""
    if state["second"] is None:
        raise Unfit("no_second_deposit")
    tray = second_deposits(state)
    if tray >= len(state["laid"]):
        raise Unfit("not_laid_yet")
    return tray


def _test(run: "ClusterRun", body: "TackTestedBody", at_ms: float, decide: "Decide") -> None:
    """Touched: tacky, or not yet."""
    state = laying(run)
    tray = _second_of(state)
    if len(state["tests"]) >= MOST_TRIES:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["tests"], "tacky")
    decided = decide(since_ms(run))
    at_s = (at_ms - state["laid"][tray]["began_ms"]) / 1000.0
    state["tests"].append({"at_s": at_s, "tacky": body["tacky"]})
    state["tack"] = decided["tack"]
    take(state, decided)


def _lay_second(run: "ClusterRun", body: "SecondLaidBody", at_ms: float, decide: "Decide") -> None:
    state = laying(run)
    tray = _second_of(state)
    duplicates.refuse_same_tap(body, tray)
    decided = decide(since_ms(run))
    state["laid"][tray]["second_ms"] = at_ms
    take(state, decided)


def _empty(run: "ClusterRun", body: "FunnelEmptiedBody", at_ms: float) -> None:
    state = laying(run)
    state["fill"] = None
    run["melt"]["burning"] = run["melt"]["resting"] = None
    run["melt"]["read_wanted"] = False
    run["done"]["melt"] = at_ms


def _free(run: "ClusterRun", body: "TrayFreedBody", at_ms: float, decide: "Decide") -> None:
    part(run, "cluster")
    state = run["cluster"]
    if "melt" not in run["done"]:
        raise Unfit("not_laid_yet")
    if "cool_tray" in run["done"] or freed(state) >= len(state["laid"]):
        raise Unfit("already_done")
    if len(state["tries"]) >= MOST_TRIES:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["tries"], "free")
    state["free_again_ms"] = decide()["again_ms"]
    state["tries"].append({"at_ms": at_ms, "free": body["free"]})
    if body["free"]:
        state["laid"][freed(state)]["freed_ms"] = at_ms
        if freed(state) == len(state["laid"]):
            run["done"]["cool_tray"] = at_ms


FOLDS = {
    "under_lot_named": _name_under_lot,
    "tray_laid": _lay,
    "laying_ended": _end_laying,
    "tack_tested": _test,
    "second_laid": _lay_second,
    "funnel_emptied": _empty,
    "tray_freed": _free,
}


def begin(reply: "Document") -> "Document":
    planned = {name: reply[name] for name in ("caramel_kg", "piece_kg", "per_tray", "trays")}
    planned["pieces"] = reply["clusters"]
    planned["under_kg"] = sum(one["kg"] for one in reply["under"])
    planned["bed"] = any(one["count"] is None for one in reply["under"])
    planned["bed_kg"] = reply.get("bed")
    planned["under"] = [_beneath(one, reply["clusters"]) for one in reply["under"]]
    return {"planned": planned, "melt": melt_fold.opened(reply), "cluster": opened(reply)}


def _beneath(one: "Document", clusters: int) -> "Document":
    """What lies under each of so many clusters: its name (null: only its make-up is known), how many, its allergen."""
    material = one["material"] if type(one["material"]) is str else None
    each_n = None if one["count"] is None else one["count"] // clusters
    return {"material": material, "each_n": each_n, "allergen": one.get("allergen")}
