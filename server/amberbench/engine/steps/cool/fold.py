"""Folds of a slab that cools: poured, read, touched, refitted."""

from ...core import check, duplicates
from ...core.copy_with import copy_with
from ...core.has_members import has_members
from ...core.unfit import Unfit, part
from ..melt.fold import melting
from .chill_fields import CHILL

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Decide, Document
    from ...types import ChilledBody, CoolingRefittedBody, CoolState, PouredBody, SlabReadBody, SlabRun, TouchedBody


MOST_READINGS = 60


def opened(reply: "Document") -> "CoolState":
    """The cooling's state in a run before the pour; `reply` is the plan's."""
    state: "CoolState" = {
        "request": reply["cool_request"],
        "ready_s": reply["cool"]["ready_s"],
        "ready_low_s": reply["cool"]["ready_low_s"],
        "ready_high_s": reply["cool"]["ready_high_s"],
        "loss_factor": reply["cool_request"].get("loss_factor", 1.0),
        "readings": [],
        "touches": [],
        "fitted": -1,
        "due_ms": None,
    }
    if reply["cool"].get("chill"):
        state["chill"] = reply["cool"]["chill"]
    return state


def _pour(run: "SlabRun", body: "PouredBody", at_ms: float) -> None:
    melting(run)
    part(run, "cool")
    run["done"]["melt"] = at_ms
    run["melt"]["burning"] = run["melt"]["resting"] = None
    run["melt"]["read_wanted"] = False
    cool = run["cool"]
    if body["bulk_c"] is not None:
        cool["request"] = copy_with(cool["request"], start_c=body["bulk_c"])
    chill = cool.get("chill")
    cool["due_ms"] = at_ms + 1000.0 * (chill["bench_s"] if chill else cool["ready_low_s"])


def _cooling(run: "SlabRun", at_ms: float) -> "tuple[CoolState, float]":
    part(run, "cool")
    if "melt" not in run["done"]:
        raise Unfit("not_poured_yet")
    if len(run["cool"]["readings"]) + len(run["cool"]["touches"]) >= MOST_READINGS:
        raise Unfit("too_many")
    return run["cool"], (at_ms - run["done"]["melt"]) / 1000.0


def _read_slab(run: "SlabRun", body: "SlabReadBody", at_ms: float) -> None:
    cool, at_s = _cooling(run, at_ms)
    duplicates.refuse_same_reading(body, cool["readings"], "surface_c")
    cool["readings"].append({"at_s": at_s, "surface_c": body["surface_c"]})


def _touch(run: "SlabRun", body: "TouchedBody", at_ms: float, decide: "Decide") -> None:
    cool, at_s = _cooling(run, at_ms)
    if "cool" in run["done"]:
        raise Unfit("already_done")
    duplicates.refuse_same_reading(body, cool["touches"], "firm")
    again_ms = decide()["again_ms"]
    cool["touches"].append({"at_s": at_s, "firm": body["firm"]})
    if body["firm"]:
        run["done"]["cool"] = at_ms
    else:
        cool["due_ms"] = max(cool["due_ms"], again_ms)


def _chill(run: "SlabRun", body: "ChilledBody", at_ms: float, decide: "Decide") -> None:
    cool, _ = _cooling(run, at_ms)
    if "cool" in run["done"] or "chilled_ms" in cool:
        raise Unfit("already_done")
    cool["due_ms"] = decide()["due_ms"]
    cool["chilled_ms"] = at_ms


def _refit(run: "SlabRun", body: "CoolingRefittedBody", at_ms: float, decide: "Decide") -> None:
    part(run, "cool")
    cool = run["cool"]
    if "melt" not in run["done"] or body["seen"] != len(cool["readings"]) + len(cool["touches"]):
        raise Unfit("outdated")
    reply = body["reply"]
    if type(reply) is not dict:
        raise Unfit("malformed")
    times: "list[Any]" = [reply.get(name) for name in ("ready_s", "ready_low_s", "ready_high_s", "loss_factor")]
    if not all(check.is_number(value) and 0 <= value < 1e7 for value in times):
        raise Unfit("malformed")
    chill = reply.get("chill")
    if chill and not has_members(CHILL, chill):
        raise Unfit("malformed")
    cool["due_ms"] = decide()["due_ms"]
    if chill:
        cool["chill"] = chill
    cool["ready_s"], cool["ready_low_s"], cool["ready_high_s"], cool["loss_factor"] = times
    cool["fitted"] = body["seen"]


FOLDS = {
    "chilled": _chill,
    "poured": _pour,
    "slab_read": _read_slab,
    "touched": _touch,
    "cooling_refitted": _refit,
}
