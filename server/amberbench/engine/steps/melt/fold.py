"""Folds of a melt in an oven: bursts, stirs, readings and rests; also the readings in a water jacket."""

from ...core import duplicates
from ...core.unfit import Unfit, part

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Decide, Document, Readable
    from ...types import (
        BurstEndedBody,
        BurstStartedBody,
        Happening,
        MeltingRun,
        MeltState,
        ReadBody,
        RestedBody,
        Run,
        SpotReadBody,
        StirredBody,
    )


def melting(run: "Run") -> "MeltState":
    """The state of the melt while it lasts."""
    melt: "MeltState" = part(run, "melt")
    if "melt" in run["done"]:
        raise Unfit("already_poured")
    return melt


def is_over(melt: "Readable", body: "Readable") -> bool:
    """Whether the burst that a tap belongs to has been stirred already, by a tap on another phone."""
    if body["started_ms"] is None or not melt["bursts"]:
        return False
    last = melt["bursts"][-1]
    result: bool = body["started_ms"] < last["at_ms"] + 1000.0 * last["seconds_s"]
    return result


def readings(melt: "Readable") -> "list[Happening]":
    """The readings of a melt so far, those before a fill was taken from the bowl included."""
    past: "list[Happening]" = melt.get("past", [])
    return past + [one for one in melt["history"] if one["kind"] == "reading"]


MOST_HISTORY = 390


def opened(reply: "Document") -> "MeltState":
    """The melt's state in a run before anything is heated; `reply` is the plan's."""
    return {
        "request": reply["melt_request"],
        "history": [],
        "bursts": [],
        "burning": None,
        "jacket": None,
        "resting": None,
        "free": False,
        "read_wanted": False,
        "last_c": None,
        "last_at_ms": None,
    }


def undo_name(run: "Readable", kind: str, body: "Document") -> str:
    """The name of an event on the undo button: a stir that was asked for as a turn of the bowl is a turn."""
    burning = None if run["melt"] is None else run["melt"]["burning"]
    turn = kind == "stirred" and burning is not None and burning["then"] == "turn" and not body.get("free")
    return "turned" if turn else kind


def _gap(melt: "MeltState", paused_s: float | None, at_ms: float) -> None:
    """Adds a long pause since the last event to the history, as a rest in which the caramel cools."""
    if paused_s is not None:
        melt["history"].append({"kind": "rest", "seconds_s": paused_s})
    melt["last_at_ms"] = at_ms


def _room_for(history: "list[Happening]") -> None:
    if len(history) >= MOST_HISTORY:
        raise Unfit("too_many")


def _start_burst(run: "MeltingRun", body: "BurstStartedBody", at_ms: float, decide: "Decide") -> None:
    melt = melting(run)
    _room_for(melt["history"])
    if melt["jacket"] is not None:
        raise Unfit("in_a_jacket")
    if melt["burning"] is not None:
        raise Unfit("burst_running")
    _gap(melt, decide(melt["last_at_ms"])["paused_s"], at_ms)
    melt["resting"] = None
    melt["read_wanted"] = False
    burning: "Any" = {name: value for name, value in body.items() if name not in ("decided", "level_percent", "spot")}
    burning.update(_level(body))
    if body["spot"]:
        burning["spot"] = True
    burning.update(started_ms=at_ms, due_ms=at_ms + 1000.0 * body["seconds_s"])
    melt["burning"] = burning


def _end_burst(run: "MeltingRun", body: "BurstEndedBody", at_ms: float) -> None:
    melt = melting(run)
    if melt["burning"] is None or at_ms >= melt["burning"]["due_ms"] or is_over(melt, body):
        raise Unfit("no_burst_running")
    melt["burning"]["due_ms"] = at_ms


def _level(burst: "Readable") -> "Document":
    """Its power level as a run keeps it: below full power alone, so that older runs stay what they are."""
    level = burst.get("level_percent", 100)
    return {} if level == 100 else {"level_percent": level}


def _read_spot(run: "MeltingRun", body: "SpotReadBody", at_ms: float) -> None:
    """The hottest spot, once the burst is over and before it is stirred."""
    burning = melting(run)["burning"]
    if burning is None or at_ms < burning["due_ms"] or is_over(run["melt"], body):
        raise Unfit("nothing_to_stir")
    if burning.get("spot_c") is not None:
        raise Unfit("already_done")
    burning["spot_c"] = body["surface_c"]


def stir(run: "MeltingRun", body: "StirredBody", at_ms: float, decide: "Decide") -> None:
    melt = melting(run)
    burning = melt["burning"]
    if burning is None or is_over(melt, body):
        raise Unfit("nothing_to_stir")
    decided = decide(melt["last_at_ms"])
    seconds_s = (min(burning["due_ms"], at_ms) - burning["started_ms"]) / 1000.0
    burst: "Any" = dict(_level(burning), kind="burst", seconds_s=seconds_s)
    melt["history"].append(burst)
    spot_c = burning.get("spot_c")
    if spot_c is not None:
        melt["history"].append({"kind": "spot", "surface_c": spot_c})
    _gap(melt, decided["paused_s"], at_ms)
    melt["history"].append({"kind": "stir", "free": body["free"]})
    melt["free"] = melt["free"] or body["free"]
    melt["read_wanted"] = decided["read_wanted"]
    done: "Any" = {name: burning[name] for name in ("advised_s", "from_c", "expected_c", "low_c", "high_c")}
    done.update(_level(burning), at_ms=burning["started_ms"], seconds_s=seconds_s, free=body["free"], reading_c=None)
    melt["bursts"].append(done)
    melt["burning"] = None


def _read(run: "MeltingRun", body: "ReadBody", at_ms: float, decide: "Decide") -> None:
    melt = melting(run)
    _room_for(melt["history"])
    if melt["burning"] is not None:
        raise Unfit("burst_running")
    duplicates.refuse_same_reading(body, readings(melt), "surface_c")
    _gap(melt, decide(melt["last_at_ms"])["paused_s"], at_ms)
    melt["history"].append({"kind": "reading", "surface_c": body["surface_c"]})
    melt["last_c"] = body["surface_c"]
    if melt["jacket"] is not None:
        melt["jacket"]["read_ms"] = at_ms
    melt["read_wanted"] = False
    melt["resting"] = None
    if melt["bursts"]:
        melt["bursts"][-1]["reading_c"] = body["surface_c"]


def _rest(run: "MeltingRun", body: "RestedBody", at_ms: float) -> None:
    melt = melting(run)
    _room_for(melt["history"])
    if melt["burning"] is not None:
        raise Unfit("burst_running")
    if melt["resting"] is not None and at_ms < melt["resting"]["due_ms"]:
        raise Unfit("already_resting")
    due_ms = at_ms + 1000.0 * body["seconds_s"]
    melt["history"].append({"kind": "rest", "seconds_s": body["seconds_s"]})
    melt["last_at_ms"] = due_ms
    melt["resting"] = {"started_ms": at_ms, "due_ms": due_ms}
    melt["read_wanted"] = True


FOLDS = {
    "burst_started": _start_burst,
    "burst_ended": _end_burst,
    "spot_read": _read_spot,
    "stirred": stir,
    "read": _read,
    "rested": _rest,
}
