"""Pouring between bars as prompts: the bars set up, the pour once it is ready, what rings after it, the count."""

from ...core.copy_with import copy_with
from ...core.prompts import button, clock, entry, most_pieces
from ..dip.prompts import weigh_dipped
from ..melt.prompts import read_entry
from ..wrap.prompts import rest_clocks

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from ...types import Advice, Clock, EventButton, Sentence


def pour_button(run: "Readable", bulk_c: float) -> "EventButton":
    """The button that pours caramel at bulk_c (°C); None: nobody has read it."""
    return button("pour_now", "poured", {"bulk_c": bulk_c})


# A frame that was set up stays while what was weighed in comes within so much of it: a slab so much higher or lower is
# nothing that a knife or a mouth would tell (assumed).
SAME_FRAME = 0.03


def ready_page(run: "Readable", now: "Readable", advice: "Advice", poured: "EventButton") -> None:
    advice["step"] = "pour"
    advice["say"] = {"code": "say.ready", "values": {}}
    advice["more"] = moved_frame(run) or {"code": "more.pour", "values": frame_for(run)}
    advice["number"] = {"name": "bulk_c", "value": now["bulk_c"], "low": now["bulk_low_c"], "high": now["bulk_high_c"]}
    advice["action"] = copy_with(poured, code="button.poured")
    advice["choices"] = [{"code": "button.read_now", "entry": read_entry(run["melt"], now)}]
    advice["caution"] = {"word": "WARNING", "code": "caution.pour"}


def moved_frame(run: "Readable") -> "Sentence | None":
    """What to say where the frame is not as it was set up: so much more or less was weighed in; else None."""
    frame, planned_m = frame_for(run), run["planned"]["length_m"]
    if frame["length_m"] == planned_m:
        return None
    return {"code": "more.move_bars", "values": copy_with(frame, planned_m=planned_m)}


def frame_for(run: "Readable") -> "Document":
    """The frame to pour into: as it was set up, or, where much more or less was weighed in than planned, of the length
    that brings that to the height of the bars."""
    planned = run["planned"]
    share = 1.0 if run["weighed_kg"] is None else run["weighed_kg"] / planned["caramel_kg"]
    return {
        "length_m": planned["length_m"] * (share if abs(share - 1.0) > SAME_FRAME else 1.0),
        "width_m": planned["width_m"],
        "bar_height_m": planned["bar_height_m"],
    }


def bars_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """All ready, with the frame to set up."""
    planned = run["planned"]
    frame = {name: planned[name] for name in ("length_m", "width_m", "bar_height_m")}
    advice["more"] = {"code": "more.frame", "values": frame}
    advice["action"] = button("all_ready", "ready_checked")
    advice["caution"] = {"word": "WARNING", "code": "caution.set_up"}


def count_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """The count of pieces, as many as the weight that was poured gives."""
    planned = run["planned"]
    pieces = planned["pieces"]
    likely = pieces * frame_for(run)["length_m"] / planned["length_m"]
    advice["more"] = {"code": "more.planned_pieces", "values": {"n": pieces}}
    advice["entry"] = entry(
        "counted", "pieces", 0, most_pieces(max(pieces, likely)), likely_low=0.9 * likely, likely_high=likely
    )
    advice["choices"] = weigh_dipped(run)
    advice["caution"] = {"word": "WARNING", "code": "caution.foreign"}


def cooling_clocks(run: "Readable", step: str) -> "list[Clock]":
    """What rings after the pour: when the slab is to be touched, when what was cut has rested."""
    done = run["done"]
    if "melt" in done and step == "cool":
        cool = run["cool"]
        if "chilled_ms" in cool:
            return [clock("touch", cool["chilled_ms"], cool["due_ms"], "ready")]
        return [clock("chill" if cool.get("chill") else "touch", done["melt"], cool["due_ms"], "ready")]
    return rest_clocks(run, step)
