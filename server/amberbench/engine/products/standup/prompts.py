"""A stand-up test as prompts: cut a cube, measure it, leave it, measure it again, say whether the caramel is firm."""

from ...core.prompts import button, clock, entry, skip
from ...steps.common.prompts import lot_page
from .decisions import MEASURED_AT_S, due_ms

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Readable
    from ...types import Advice, Entry


LOWEST_M, HIGHEST_M = 0.0005, 0.1


def stand_clocks(run: "Readable", step: str) -> "list[Any]":
    """What rings for a test: the next look."""
    state = run["stand"]
    due = due_ms(state)
    if due is None or "stand" in run["done"] or run["closed_at_ms"] is not None:
        return []
    return [clock("stand", state["heights"][-1]["at_ms"], due, "ready")]


def _set_up(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["say"] = {"code": "say.set_up_stand", "values": {}}
    advice["more"] = {"code": "more.set_up_stand", "values": {}}
    advice["action"] = button("all_ready", "ready_checked")
    advice["caution"] = {"word": "CAUTION", "code": "caution.knife_cut"}


def _stand(run: "Readable", at_ms: float, advice: "Advice") -> None:
    state = run["stand"]
    due = due_ms(state)
    advice["caution"] = {"word": "WARNING", "code": "caution.stand_cube"}
    if due is None:
        advice["entry"] = _height(state)
        return
    advice["choices"] = [skip("stand")]
    if at_ms >= due:
        advice["step"] = "stand_look"
        advice["say"] = {"code": "say.stand_look", "values": {}}
        advice["entry"] = _height(state)
        return
    advice["say"] = {"code": "say.stand_wait", "values": {}}
    advice["more"] = {"code": "more.stand_wait", "values": {"n": len(MEASURED_AT_S) - len(state["heights"])}}
    advice["number"] = {"name": "due_ms", "value": due}
    advice["action"] = {"code": "button.measure_now", "entry": _height(state)}


def _height(state: "Readable") -> "Entry":
    """A cube never grows; what reads higher is a slip of the rule."""
    heights = state["heights"]
    last_m = heights[-1]["height_m"] if heights else None
    return entry("stood", "height_m", LOWEST_M, last_m or HIGHEST_M, last=last_m, body={"seen": len(heights)})


def _close(run: "Readable", at_ms: float, advice: "Advice") -> None:
    _tell(run["stand"], advice)
    advice["action"] = button("close", "closed")
    advice["caution"] = {"word": "WARNING", "code": "caution.stand_cube"}


def _closed(run: "Readable", at_ms: float, advice: "Advice") -> None:
    _tell(run["stand"], advice)


def _tell(state: "Readable", advice: "Advice") -> None:
    """The verdict, and what it means."""
    verdict = state["verdict"]
    if verdict is None:
        advice["say"] = {"code": "say.stand_untold", "values": {}}
        return
    advice["say"] = {"code": "say.stand_" + verdict, "values": {}}
    lost = float(round(100.0 * state["lost_fraction"]))
    advice["more"] = {"code": "more.stand_" + verdict, "values": {"lost_percent": lost}}


PAGES = {"set_up": _set_up, "lot": lot_page, "stand": _stand, "close": _close, "closed": _closed}
