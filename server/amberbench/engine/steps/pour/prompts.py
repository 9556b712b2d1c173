"""Prompts for pouring, once the caramel is ready."""

from ...core.copy_with import copy_with
from ...core.prompts import button
from ..melt.prompts import read_entry

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from ...types import Advice, EventButton


def pour_button(run: "Readable", bulk_c: float) -> "EventButton":
    """The button that pours caramel at bulk_c (°C); None: nobody has read it."""
    return button("pour_now", "poured", {"bulk_c": bulk_c})


def ready_page(run: "Readable", now: "Readable", advice: "Advice", poured: "EventButton") -> None:
    advice["step"] = "pour"
    advice["say"] = {"code": "say.ready", "values": {}}
    advice["more"] = {"code": "more.pour", "values": frame_for(run)}
    advice["number"] = {"name": "bulk_c", "value": now["bulk_c"], "low": now["bulk_low_c"], "high": now["bulk_high_c"]}
    advice["action"] = copy_with(poured, code="button.poured")
    advice["choices"] = [{"code": "button.read_now", "entry": read_entry(run["melt"], now)}]
    advice["caution"] = {"word": "WARNING", "code": "caution.pour"}


def frame_for(run: "Readable") -> "Document":
    """The frame that brings what was weighed in to the height of the bars: the area follows the mass."""
    planned = run["planned"]
    share = 1.0 if run["weighed_kg"] is None else run["weighed_kg"] / planned["caramel_kg"]
    return {
        "length_m": planned["length_m"] * share,
        "width_m": planned["width_m"],
        "bar_height_m": planned["bar_height_m"],
    }
