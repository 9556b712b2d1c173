"""Prompts for dipping: strip test, dip, mark and salt in time, leave to set. Used by slab and cluster."""

from ...core.copy_with import copy_with
from ...core.prompts import SLIP_FACTOR, button, clock, entry, skip
from ..common.fields import TEN_DIPPED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Readable
    from ...types import Advice, EventButton


# Cut centres rest ten to twenty minutes before they are dipped or wrapped (common practice, no published source).
CENTRES_REST_MS = 15 * 60000.0
# Thirty to sixty minutes at room temperature (common practice, no published source): looked at at the early end.
SET_MS = 30 * 60000.0


def weigh_dipped(run: "Readable") -> "list[Any]":
    """The button that weighs ten dipped pieces, from which plans learn how much chocolate they take up."""
    if run.get("dip") is None or any(one["what"] == TEN_DIPPED for one in run["out"]):
        return []
    likely_kg = 10.0 * run["planned"]["piece_kg"]
    body = {"what": TEN_DIPPED, "seen": len(run["out"])}
    typed = entry("weighed_out", "kg", likely_kg, SLIP_FACTOR * likely_kg, body=body)
    return [{"code": "button.weigh_dipped", "entry": copy_with(typed, name="dipped_kg")}]


def dip_clocks(run: "Readable", step: str) -> "list[Any]":
    """The clocks that run while a batch is dipped: salting, and setting."""
    state, done = run["dip"], run["done"]
    if step == "set":
        return [clock("set", done["dip"], done["dip"] + SET_MS, "ready")]
    if step != "dip" or state["started_ms"] is None or state["every"] < 2 or not _on_top(state):
        return []
    since_ms = state["started_ms"] if state["salted_ms"] is None else state["salted_ms"]
    due_ms = since_ms + 1000.0 * state["every"] * state["dip_s"]
    return [clock(_on_top(state), since_ms, due_ms, "ready", tells=_salted(state))]


def _salted(state: "Readable") -> "EventButton":
    """The button that says that the pieces so far are marked or salted."""
    return button("salted" if state["salt_each_kg"] else "marked", "salted", {"seen": state["salted"]})


def _on_top(state: "Readable") -> "Any":
    """What goes on the wet coating, the name of its clock and prompt; None: nothing."""
    if not state["salt_each_kg"]:
        return "mark" if state["top_mark"] else None
    return "mark_salt" if state["top_mark"] else "salt"


def _temper(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """The page of the strip test: nothing is dipped before a strip has set; cut centres rest meanwhile."""
    state, seen = run["dip"], len(run["dip"]["strips"])
    advice["action"] = button("strip_good", "strip_tested", {"good": True, "seen": seen})
    advice["choices"] = [button("strip_streaky", "strip_tested", {"good": False, "seen": seen})]
    advice["more"] = {"code": "more.strip", "values": {}}
    rested_ms = run["done"].get("cut", at_ms - CENTRES_REST_MS) + CENTRES_REST_MS
    if state["streaky"]:
        advice["say"] = {"code": "say.strip_again", "values": {}}
        advice["more"] = {"code": "more.strip_again", "values": {}}
    elif at_ms < rested_ms:
        advice["say"] = {"code": "say.centres_rest", "values": {}}
        advice["more"] = None  # room for what the air does: there is time to dry it
        advice["number"] = {"name": "due_ms", "value": rested_ms}
    else:
        advice["caution"] = {"word": "NOTICE", "code": "caution.chocolate_dry"}


def _dip(run: "Readable", at_ms: float, advice: "Advice") -> None:
    state = run["dip"]
    salt, clocks = state["salt_each_kg"], dip_clocks(run, "dip")
    advice["caution"] = {"word": "WARNING", "code": "caution.fork_carries"}
    if state["method"] != "fork":
        advice["say"] = {"code": "say.dip_enrober", "values": {}}
    if _on_top(state):
        values = {"n": state["every"], "salt_each_kg": salt, "salt": state["salt"]}
        code = "more.mark_every" if not salt else "more.salt_every" if state["salt"] else "more.any_salt_every"
        advice["more"] = {"code": code, "values": values}
    if state["started_ms"] is None:
        advice["action"] = button("start", "dipping_started")
        advice["choices"] = [skip("dip")]
        return
    dipped = button("dipped", "dipped")
    if not clocks:
        advice["action"] = dipped
        return
    due_ms = clocks[0]["due_ms"]
    advice["action"] = _salted(state)
    advice["choices"] = [dipped]
    if at_ms >= due_ms:
        advice["step"] = _on_top(state)
        advice["say"] = {"code": "say." + _on_top(state), "values": {}}
    else:
        advice["number"] = {"name": "due_ms", "value": due_ms}


def _set(run: "Readable", at_ms: float, advice: "Advice") -> None:
    due_ms = run["done"]["dip"] + SET_MS
    advice["action"] = button("set_hard", "set_hard")
    advice["caution"] = {"word": "NOTICE", "code": "caution.no_fridge"}
    if at_ms >= due_ms:
        advice["say"] = {"code": "say.set_hard", "values": {}}
        advice["choices"] = [skip("set")]
    else:
        advice["number"] = {"name": "due_ms", "value": due_ms}


PAGES = {"temper_check": _temper, "dip": _dip, "set": _set}
