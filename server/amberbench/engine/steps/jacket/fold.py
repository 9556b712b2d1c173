"""The melt in a water jacket as folds: the block goes in, is looked at until it stirs freely, water is added."""

from ...core.unfit import Unfit
from ..melt import fold as melt_fold
from ..melt.fold import melting

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Decide, Document
    from ...types import JacketStartedBody, JacketState, MeltState, SlabRun, StirredBody, WaterToppedBody


MOST_LOOKS = 60


def opened(planned: "Document") -> "JacketState":
    """The jacket's state in a run before the block goes in; `planned` is the plan's reply of melt.plan_jacket."""
    return {
        "seconds_s": planned["seconds_s"],
        "low_s": planned["low_s"],
        "high_s": planned["high_s"],
        "started_ms": None,
        "set_ms": None,
        "due_ms": None,
        "slower": 1.0,
        "looks": [],
        "topped_ms": None,
        "read_ms": None,
    }


def _jacket(run: "SlabRun") -> "JacketState":
    jacket = melting(run)["jacket"]
    if jacket is None:
        raise Unfit("not_in_a_jacket")
    return jacket


def start(run: "SlabRun", body: "JacketStartedBody", at_ms: float) -> None:
    """The block, or its pieces, go in."""
    jacket = _jacket(run)
    if jacket["started_ms"] is not None:
        raise Unfit("already_in")
    jacket["seconds_s"], jacket["low_s"], jacket["high_s"] = body["seconds_s"], body["low_s"], body["high_s"]
    jacket["started_ms"] = jacket["set_ms"] = jacket["topped_ms"] = run["melt"]["last_at_ms"] = at_ms
    jacket["due_ms"] = at_ms + 1000.0 * body["low_s"]


def look(run: "SlabRun", body: "StirredBody", at_ms: float, decide: "Decide") -> None:
    """Stirred: freely, or not yet. A block that takes longer than the time of this look makes all times longer."""
    melt, jacket = melting(run), _jacket(run)
    if jacket["started_ms"] is None or jacket["due_ms"] is None:
        raise Unfit("nothing_to_stir")
    if melt["free"]:
        raise Unfit("already_free")
    if len(jacket["looks"]) >= MOST_LOOKS:
        raise Unfit("too_many")
    if not body["free"] and at_ms < jacket["due_ms"]:
        raise Unfit("not_due_yet")
    look_ms, after_s = decide(melt["last_at_ms"])["look_ms"], (at_ms - jacket["started_ms"]) / 1000.0
    jacket["looks"].append({"at_s": after_s, "free": body["free"]})
    jacket["set_ms"] = melt["last_at_ms"] = at_ms
    if body["free"]:
        melt["free"] = melt["read_wanted"] = True
        return
    jacket["slower"] = max(jacket["slower"], after_s / jacket["low_s"])
    jacket["due_ms"] = look_ms


def top_up(run: "SlabRun", body: "WaterToppedBody", at_ms: float) -> None:
    """Hot water was added."""
    jacket = _jacket(run)
    if jacket["started_ms"] is None:
        raise Unfit("nothing_in_yet")
    jacket["topped_ms"] = at_ms


def melt_opened(reply: "Document") -> "MeltState":
    """The melt's state in a run, in an oven or in the jacket that the plan's `reply` has."""
    state = melt_fold.opened(reply)
    if reply.get("jacket"):
        state["jacket"] = opened(reply["jacket"])
    return state


def stir(run: "SlabRun", body: "StirredBody", at_ms: float, decide: "Decide") -> None:
    """Stirred: in a jacket that is a look."""
    fold = melt_fold.stir if melting(run)["jacket"] is None else look
    fold(run, body, at_ms, decide)


FOLDS = {"jacket_started": start, "water_topped": top_up, "stirred": stir}
