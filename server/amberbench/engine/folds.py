"""One fold for each kind of event of a slab: what it changes in the run, or why it does not fit.

A fold takes the run, the checked body and the corrected time in ms; it changes the run in place and raises `Unfit`
before it has changed anything.
"""

from . import check, folds_jacket, twice
from .cool import TOUCH_AGAIN_S
from .unfit import Unfit
from .unfit import melting as _melting

# The steps of a slab in order, and the event that ends each (common practice, no published source).
STEPS = (
    ("set_up", "ready_checked"),
    ("weigh", "weighed"),
    ("lot", "lot_named"),
    ("melt", "poured"),
    ("cool", "touched"),
    ("loosen", "freed"),
    ("prebottom", "prebottomed"),
    ("flip", "flipped"),
    ("score", "scored"),
    ("cut", "cut"),
    ("count", "counted"),
    ("weigh_out", "weighed_out"),
    ("close", "closed"),
)
STEP_OF = {kind: step for step, kind in STEPS}
ORDER = [step for step, _ in STEPS]
# A stir, a look and a reading take about this long (assumed); a longer gap is a rest in which the caramel cools.
USUAL_GAP_S = 90.0
# A block that should have been warmer than this after the burst and still has lumps is read all the same: somebody may
# take grain for lumps, and bursts nobody measures end in scorched caramel (lumps go at 46 to 52 °C; common practice, no
# published source).
LUMPS_GONE_C = 50.0
MOST_READINGS = 60
MOST_HISTORY = 390


def _open(run, body, at_ms):
    if run["opened_at_ms"] is not None:
        raise Unfit("already_open")
    run["opened_at_ms"] = at_ms


def _once(kind):
    """A fold that marks its step done; a second one is ignored, so two hands tapping the same step count once."""
    step = STEP_OF[kind]

    def fold(run, body, at_ms):
        if step in run["done"]:
            raise Unfit("already_done")
        run["done"][step] = at_ms

    return fold


def _weigh(run, body, at_ms):
    _once("weighed")(run, body, at_ms)
    run["weighed_kg"] = body["kg"]
    if body["lot"]:
        run["lot"] = body["lot"]
    # dict(a, b=1): the request belongs to the plan document and must not change under it.
    mass_kg = min(max(body["kg"], 0.05), 10.0)
    run["melt"]["request"] = dict(run["melt"]["request"], mass_kg=mass_kg)


def _name_lot(run, body, at_ms):
    run["lot"] = body["lot"]
    run["done"]["lot"] = at_ms


def _gap(melt, at_ms):
    """Takes a long pause since the last happening into the history, as a rest in which the caramel cools."""
    if melt["last_at_ms"] is not None:
        gap_s = (at_ms - melt["last_at_ms"]) / 1000.0
        if gap_s > USUAL_GAP_S:
            melt["history"].append({"kind": "rest", "seconds_s": min(gap_s - USUAL_GAP_S, 36000.0)})
    melt["last_at_ms"] = at_ms


def _room_for(history):
    if len(history) >= MOST_HISTORY:
        raise Unfit("too_many")


def _start_burst(run, body, at_ms):
    melt = _melting(run)
    _room_for(melt["history"])
    if melt["jacket"] is not None:
        raise Unfit("in_a_jacket")
    if melt["burning"] is not None:
        raise Unfit("burst_running")
    _gap(melt, at_ms)
    melt["resting"] = None
    melt["read_wanted"] = False
    melt["burning"] = dict(body, started_ms=at_ms, due_ms=at_ms + 1000.0 * body["seconds_s"])


def _end_burst(run, body, at_ms):
    melt = _melting(run)
    if melt["burning"] is None or at_ms >= melt["burning"]["due_ms"] or twice.is_over(melt, body):
        raise Unfit("no_burst_running")
    melt["burning"]["due_ms"] = at_ms


def _stir(run, body, at_ms):
    melt = _melting(run)
    if melt["jacket"] is not None:
        return folds_jacket.look(run, body, at_ms)
    burning = melt["burning"]
    if burning is None or twice.is_over(melt, body):
        raise Unfit("nothing_to_stir")
    ended_ms = min(burning["due_ms"], at_ms)
    seconds_s = (ended_ms - burning["started_ms"]) / 1000.0
    melt["history"].append({"kind": "burst", "seconds_s": seconds_s})
    melt["last_at_ms"] = ended_ms
    _gap(melt, at_ms)
    melt["history"].append({"kind": "stir", "free": body["free"]})
    newly_free = body["free"] and not melt["free"]
    melt["free"] = melt["free"] or body["free"]
    lumps_too_long = not melt["free"] and (burning["expected_c"] or 0.0) > LUMPS_GONE_C
    melt["read_wanted"] = lumps_too_long or (melt["free"] and (burning["read"] or newly_free))
    rung = {name: burning[name] for name in ("advised_s", "from_c", "expected_c", "low_c", "high_c")}
    rung.update({"at_ms": burning["started_ms"], "seconds_s": seconds_s, "free": body["free"], "reading_c": None})
    melt["bursts"].append(rung)
    melt["burning"] = None


def _read(run, body, at_ms):
    melt = _melting(run)
    _room_for(melt["history"])
    if melt["burning"] is not None:
        raise Unfit("burst_running")
    twice.once(body, twice.readings(melt), "surface_c")
    _gap(melt, at_ms)
    melt["history"].append({"kind": "reading", "surface_c": body["surface_c"]})
    melt["last_c"] = body["surface_c"]
    if melt["jacket"] is not None:
        melt["jacket"]["read_ms"] = at_ms
    melt["read_wanted"] = False
    melt["resting"] = None
    if melt["bursts"]:
        melt["bursts"][-1]["reading_c"] = body["surface_c"]


def _rest(run, body, at_ms):
    melt = _melting(run)
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


def _pour(run, body, at_ms):
    _melting(run)
    run["done"]["melt"] = at_ms
    run["melt"]["burning"] = run["melt"]["resting"] = None
    run["melt"]["read_wanted"] = False
    cool = run["cool"]
    if body["bulk_c"] is not None:
        cool["request"] = dict(cool["request"], start_c=body["bulk_c"])
    _set_cooling(run, cool["ready_s"], cool["ready_low_s"], cool["ready_high_s"])


def _set_cooling(run, ready_s, low_s, high_s):
    cool = run["cool"]
    cool["ready_s"], cool["ready_low_s"], cool["ready_high_s"] = ready_s, low_s, high_s
    cool["due_ms"] = run["done"]["melt"] + 1000.0 * low_s
    for touch in cool["touches"]:
        if not touch["firm"]:
            again_ms = run["done"]["melt"] + 1000.0 * (touch["at_s"] + TOUCH_AGAIN_S)
            cool["due_ms"] = max(cool["due_ms"], again_ms)


def _cooling(run, at_ms):
    if "melt" not in run["done"]:
        raise Unfit("not_poured_yet")
    if len(run["cool"]["readings"]) + len(run["cool"]["touches"]) >= MOST_READINGS:
        raise Unfit("too_many")
    return run["cool"], (at_ms - run["done"]["melt"]) / 1000.0


def _read_slab(run, body, at_ms):
    cool, at_s = _cooling(run, at_ms)
    twice.once(body, cool["readings"], "surface_c")
    cool["readings"].append({"at_s": at_s, "surface_c": body["surface_c"]})


def _touch(run, body, at_ms):
    cool, at_s = _cooling(run, at_ms)
    if "cool" in run["done"]:
        raise Unfit("already_done")
    twice.once(body, cool["touches"], "firm")
    cool["touches"].append({"at_s": at_s, "firm": body["firm"]})
    if body["firm"]:
        run["done"]["cool"] = at_ms
    else:
        cool["due_ms"] = max(cool["due_ms"], at_ms + 1000.0 * TOUCH_AGAIN_S)


def _refit(run, body, at_ms):
    cool = run["cool"]
    if "melt" not in run["done"] or body["seen"] != len(cool["readings"]) + len(cool["touches"]):
        raise Unfit("outdated")
    reply = body["reply"]
    if type(reply) is not dict:
        raise Unfit("malformed")
    times: list = [reply.get(name) for name in ("ready_s", "ready_low_s", "ready_high_s", "loss_factor")]
    if not all(check.is_number(value) and 0 <= value < 1e7 for value in times):
        raise Unfit("malformed")
    cool["loss_factor"] = times[3]
    cool["fitted"] = body["seen"]
    _set_cooling(run, times[0], times[1], times[2])


def _count(run, body, at_ms):
    _once("counted")(run, body, at_ms)
    run["pieces"] = body["pieces"]


def _weigh_out(run, body, at_ms):
    if len(run["out"]) >= MOST_READINGS:
        raise Unfit("too_many")
    twice.once(body, run["out"], "what")
    run["out"].append({"kg": body["kg"], "what": body["what"]})
    run["done"]["weigh_out"] = at_ms


def _accept(run, body, at_ms):
    pass  # a note lives in the log; who has the batch is in the event itself, and `run` takes it from there


def _photograph(run, body, at_ms):
    run["photos"] += 1  # the picture itself is not in the log


def _leave_out(run, body, at_ms):
    if run["closed_at_ms"] is None:
        raise Unfit("not_closed")
    if body["left_out"] and not body["reason"].strip():
        raise Unfit("without_reason")
    run["left_out"] = body["reason"].strip() if body["left_out"] else None


def _skip(run, body, at_ms):
    step = body["step"]
    if step == "read":
        if not _melting(run)["read_wanted"]:
            raise Unfit("already_done")
        run["melt"]["read_wanted"] = False
    elif step not in ORDER or step in ("melt", "close"):
        raise Unfit("cannot_be_skipped")
    elif step in run["done"]:
        raise Unfit("already_done")
    else:
        run["done"][step] = at_ms
    if step not in run["skipped"]:
        run["skipped"].append(step)


def _close(run, body, at_ms):
    run["closed_at_ms"] = at_ms
    run["done"]["close"] = at_ms


FOLDS = {
    "batch_opened": _open,
    "ready_checked": _once("ready_checked"),
    "weighed": _weigh,
    "lot_named": _name_lot,
    "jacket_started": folds_jacket.start,
    "water_topped": folds_jacket.top_up,
    "burst_started": _start_burst,
    "burst_ended": _end_burst,
    "stirred": _stir,
    "read": _read,
    "rested": _rest,
    "poured": _pour,
    "slab_read": _read_slab,
    "touched": _touch,
    "cooling_refitted": _refit,
    "freed": _once("freed"),
    "prebottomed": _once("prebottomed"),
    "flipped": _once("flipped"),
    "scored": _once("scored"),
    "cut": _once("cut"),
    "counted": _count,
    "weighed_out": _weigh_out,
    "noted": _accept,
    "photographed": _photograph,
    "taken_over": _accept,
    "left_out": _leave_out,
    "step_skipped": _skip,
    "closed": _close,
}
