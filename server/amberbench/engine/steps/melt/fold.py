"""The melt in an oven as folds: bursts, stirs, readings and rests; also the readings of a water jacket."""

from ...core import duplicates
from ...core.unfit import Unfit, part


def melting(run):
    """The state of the melt while it lasts."""
    part(run, "melt")
    if "melt" in run["done"]:
        raise Unfit("already_poured")
    return run["melt"]


def is_over(melt, body):
    """Whether the burst that a tap belongs to has been stirred already: the tap is another hand's, for the same one."""
    if body["started_ms"] is None or not melt["bursts"]:
        return False
    last = melt["bursts"][-1]
    return body["started_ms"] < last["at_ms"] + 1000.0 * last["seconds_s"]


def readings(melt):
    """The readings of a melt so far, those before a fill was taken from the bowl included."""
    return melt.get("past", []) + [one for one in melt["history"] if one["kind"] == "reading"]


MOST_HISTORY = 390


def opened(reply):
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


def undo_name(run, kind, body):
    """How the button that takes an event back calls it: a stir asked for as a turn of the bowl is a turn."""
    burning = None if run["melt"] is None else run["melt"]["burning"]
    turn = kind == "stirred" and burning is not None and burning["then"] == "turn" and not body.get("free")
    return "turned" if turn else kind


def _gap(melt, paused_s, at_ms):
    """Takes a long pause since the last happening into the history, as a rest in which the caramel cools."""
    if paused_s is not None:
        melt["history"].append({"kind": "rest", "seconds_s": paused_s})
    melt["last_at_ms"] = at_ms


def _room_for(history):
    if len(history) >= MOST_HISTORY:
        raise Unfit("too_many")


def _start_burst(run, body, at_ms, decide):
    melt = melting(run)
    _room_for(melt["history"])
    if melt["jacket"] is not None:
        raise Unfit("in_a_jacket")
    if melt["burning"] is not None:
        raise Unfit("burst_running")
    _gap(melt, decide(melt["last_at_ms"])["paused_s"], at_ms)
    melt["resting"] = None
    melt["read_wanted"] = False
    burning = {name: body[name] for name in body if name != "decided"}
    melt["burning"] = dict(burning, started_ms=at_ms, due_ms=at_ms + 1000.0 * body["seconds_s"])


def _end_burst(run, body, at_ms):
    melt = melting(run)
    if melt["burning"] is None or at_ms >= melt["burning"]["due_ms"] or is_over(melt, body):
        raise Unfit("no_burst_running")
    melt["burning"]["due_ms"] = at_ms


def stir(run, body, at_ms, decide):
    melt = melting(run)
    burning = melt["burning"]
    if burning is None or is_over(melt, body):
        raise Unfit("nothing_to_stir")
    decided = decide(melt["last_at_ms"])
    seconds_s = (min(burning["due_ms"], at_ms) - burning["started_ms"]) / 1000.0
    melt["history"].append({"kind": "burst", "seconds_s": seconds_s})
    _gap(melt, decided["paused_s"], at_ms)
    melt["history"].append({"kind": "stir", "free": body["free"]})
    melt["free"] = melt["free"] or body["free"]
    melt["read_wanted"] = decided["read_wanted"]
    rung = {name: burning[name] for name in ("advised_s", "from_c", "expected_c", "low_c", "high_c")}
    rung.update({"at_ms": burning["started_ms"], "seconds_s": seconds_s, "free": body["free"], "reading_c": None})
    melt["bursts"].append(rung)
    melt["burning"] = None


def _read(run, body, at_ms, decide):
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


def _rest(run, body, at_ms):
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
    "stirred": stir,
    "read": _read,
    "rested": _rest,
}
