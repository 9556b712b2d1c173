"""Folds of dipping: started, marked or salted every so many, done, set. Used by slab and cluster."""

from ...core import duplicates
from ...core.unfit import Unfit

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...types import DippedBody, DippingStartedBody, DipState, MeltingRun, SaltedBody, SetHardBody


MOST_SALTED = 1000


def opened(reply: "Any") -> "DipState":
    """The dipping's state in a run before it starts; `reply` is the plan's, as `fields.DIP_REPLY`; None: the
    plan did not ask how much it takes.
    """
    planned = reply or {"method": "fork", "every": 1}
    names = ("method", "every", "dip_s", "salt", "salt_each_kg", "top_mark")
    state: "Any" = {name: planned.get(name) for name in names}
    state.update(started_ms=None, bowls=[], salted=0, salted_ms=None, strips=[], streaky=False)
    result: "DipState" = state
    return result


def _state(run: "MeltingRun", step: str = "dip") -> "DipState":
    """The state of the dipping, before it or what follows it is done."""
    state = run.get("dip")
    if state is None:
        raise Unfit("not_in_this_batch")
    if step in run["done"]:
        raise Unfit("already_done")
    return state


def _start(run: "MeltingRun", body: "DippingStartedBody", at_ms: float) -> None:
    state = _state(run)
    if state["started_ms"] is not None:
        raise Unfit("already_done")
    state["started_ms"], state["bowls"] = at_ms, body["bowls"]


def _salt(run: "MeltingRun", body: "SaltedBody", at_ms: float) -> None:
    state = _state(run)
    duplicates.refuse_same_tap(body, state["salted"])
    if state["salted"] >= MOST_SALTED:
        raise Unfit("too_many")
    state["salted"] += 1
    state["salted_ms"] = at_ms


def _dip(run: "MeltingRun", body: "DippedBody", at_ms: float) -> None:
    _state(run)
    run["done"]["dip"] = at_ms


def _set(run: "MeltingRun", body: "SetHardBody", at_ms: float) -> None:
    _state(run, "set")
    run["done"]["set"] = at_ms


FOLDS = {
    "dipping_started": _start,
    "salted": _salt,
    "dipped": _dip,
    "set_hard": _set,
}


def is_plain(run: "MeltingRun") -> bool:
    """Whether nothing is dipped."""
    return run.get("dip") is None
