"""Prompts for wrapping: cut centres rest, then are wrapped the same day, before they take up water."""

from ...core.prompts import button, clock, skip
from ..dip.prompts import CENTRES_REST_MS

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Readable
    from ...types import Advice


def rest_clocks(run: "Readable", step: str) -> "list[Any]":
    """The clock of cut centres that rest, at the step that waits for it."""
    cut_ms = run["done"].get("cut")
    waiting = "wrap" if run.get("wrap") else "temper_check" if run.get("dip") is not None else None
    if cut_ms is None or step not in ((waiting,) if waiting else ("count", "weigh_out")):
        return []
    return [clock("centres", cut_ms, cut_ms + CENTRES_REST_MS, "ready")]


def wrap_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["action"] = button("wrapped", "wrapped")
    advice["choices"] = [skip("wrap")]
    advice["caution"] = {"word": "NOTICE", "code": "caution.wrap_soon"}
    rested_ms = run["done"].get("cut", at_ms - CENTRES_REST_MS) + CENTRES_REST_MS
    if at_ms < rested_ms:
        advice["say"] = {"code": "say.wrap_rest", "values": {}}
        advice["number"] = {"name": "due_ms", "value": rested_ms}
