"""Prompts for a slab that cools: soak, read, touch; and the refit that new readings ask for."""

from ...core.copy_with import copy_with
from ...core.prompts import button, entry
from .chill_fields import as_told_s

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import Advice, Entry, EntryButton, EventButton, Wants


# The cooling tray is left alone; the bowl soaks meanwhile (common practice, no published source).
SOAK_MS = 120000.0
# A slab that feels firm before this share of the earliest time is a slip of the finger (assumed); it can be skipped.
SOONEST_FIRM = 0.3
# A slab's top reads no further than this below the shop's room or above what was poured (assumed: a cold kitchen and
# an infrared thermometer's error); anything else is a slip of the finger.
READS_OFF_K = 12.0


def pending_refit(run: "Readable") -> "Wants | None":
    """The refit of the cooling, when readings or touch tests have come in that no refit has seen; `keep` names what
    of its reply goes into the log."""
    cool = run["cool"]
    if cool is None or "melt" not in run["done"] or "cool" in run["done"] or run["closed_at_ms"] is not None:
        return None
    seen = len(cool["readings"]) + len(cool["touches"])
    if seen == cool["fitted"] or "chilled_ms" in cool:
        return None
    return {
        "name": "cool.refit",
        "request": copy_with(cool["request"], readings=cool["readings"], touches=cool["touches"]),
        "kind": "cooling_refitted",
        "body": {"seen": seen},
        "keep": ["ready_s", "ready_low_s", "ready_high_s", "loss_factor", "loss_factor_sd", "chill"],
    }


def cool_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    cool = run["cool"]
    if at_ms < cool["due_ms"]:
        _rest(run, at_ms, advice)
    elif cool.get("chill") and "chilled_ms" not in cool:
        _into_fridge(cool, advice)
    else:
        advice["step"] = "touch"
        advice["say"] = {"code": "say.touch", "values": {}}
        advice["action"] = _firm(cool, "firm")
        advice["choices"] = [button("not_yet", "touched", {"firm": False, "seen": len(cool["touches"])}), _read(cool)]
        advice["caution"] = {"word": "CAUTION", "code": "caution.glove_touch"}


def _into_fridge(cool: "Readable", advice: "Advice") -> None:
    """In a room that brings the slab no further."""
    chill = cool["chill"]
    advice["step"] = "chill"
    advice["say"] = {"code": "say.chill", "values": {"chill_s": as_told_s(chill["seconds_s"])}}
    advice["more"] = {"code": "more.chill", "values": {"fridge_c": chill["fridge_c"]}}
    advice["action"] = button("in_fridge", "chilled")
    advice["choices"] = [_firm(cool, "firm_now"), _read(cool)]
    advice["caution"] = {"word": "NOTICE", "code": "caution.sweats"}


def _rest(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """On the bench, or in the refrigerator, until it is worth a look."""
    cool, poured_ms = run["cool"], run["done"]["melt"]
    advice["number"] = {"name": "due_ms", "value": cool["due_ms"]}
    if "chilled_ms" in cool:
        advice["say"] = {"code": "say.chilling", "values": {}}
        advice["action"] = _firm(cool, "firm_now")
        advice["caution"] = {"word": "NOTICE", "code": "caution.sweats"}
        return
    if at_ms < poured_ms + SOAK_MS:
        advice["say"] = {"code": "say.soak", "values": {}}
        advice["caution"] = {"word": "CAUTION", "code": "caution.soak"}
    advice["action"] = _read(cool)
    if at_ms >= poured_ms + 1000.0 * SOONEST_FIRM * cool["ready_low_s"]:
        advice["choices"] = [_firm(cool, "firm_now")]
    if cool.get("chill"):
        _before_fridge(cool["chill"], poured_ms, at_ms, advice)
        return
    span = {
        "low_at_ms": poured_ms + 1000.0 * cool["ready_low_s"],
        "ready_at_ms": poured_ms + 1000.0 * cool["ready_s"],
        "high_at_ms": poured_ms + 1000.0 * cool["ready_high_s"],
    }
    meanwhile = "more.cooling_chocolate" if run["prebottom"] else "more.cooling"
    advice["more"] = {"code": meanwhile, "values": span}


def _before_fridge(chill: "Readable", poured_ms: float, at_ms: float, advice: "Advice") -> None:
    """In a room that never makes it ready: what comes, and from when on it need not be waited for."""
    if chill["sooner_s"] is None:
        advice["more"] = {"code": "more.chill_later", "values": {}}
        return
    from_ms = poured_ms + 1000.0 * chill["sooner_at_s"]
    advice["more"] = {
        "code": "more.chill_sooner",
        "values": {"chill_s": as_told_s(chill["sooner_s"]), "from_ms": from_ms},
    }
    if at_ms >= from_ms:
        advice["choices"].insert(0, button("in_fridge", "chilled"))


def _firm(cool: "Readable", words: str) -> "EventButton":
    return button(words, "touched", {"firm": True, "seen": len(cool["touches"])})


def _read(cool: "Readable") -> "EntryButton":
    return {"code": "button.read_slab", "entry": _slab_entry(cool)}


def _slab_entry(cool: "Readable") -> "Entry":
    request = cool["request"]
    low_c = max(0.0, request["room_c"] - READS_OFF_K)
    high_c = min(150.0, request["start_c"] + READS_OFF_K)
    last = cool["readings"][-1]["surface_c"] if cool["readings"] else None
    body = {"seen": len(cool["readings"])}
    return entry("slab_read", "surface_c", low_c, high_c, last=last, body=body)
