"""Prompts for a slab that cools: soak, read, touch; and the refit that new readings ask for."""

from ...core.copy_with import copy_with
from ...core.prompts import button, entry

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import Advice, Entry, EntryButton, Wants


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
    if seen == cool["fitted"]:
        return None
    return {
        "name": "cool.refit",
        "request": copy_with(cool["request"], readings=cool["readings"], touches=cool["touches"]),
        "kind": "cooling_refitted",
        "body": {"seen": seen},
        "keep": ["ready_s", "ready_low_s", "ready_high_s", "loss_factor", "loss_factor_sd"],
    }


def cool_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    cool = run["cool"]
    poured_ms = run["done"]["melt"]
    read: "EntryButton" = {"code": "button.read_slab", "entry": _slab_entry(cool)}
    seen = len(cool["touches"])
    firm = button("firm", "touched", {"firm": True, "seen": seen})
    if at_ms >= cool["due_ms"]:
        advice["step"] = "touch"
        advice["say"] = {"code": "say.touch", "values": {}}
        advice["action"] = firm
        advice["choices"] = [button("not_yet", "touched", {"firm": False, "seen": seen}), read]
        advice["caution"] = {"word": "CAUTION", "code": "caution.glove_touch"}
        return
    if at_ms < poured_ms + SOAK_MS:
        advice["say"] = {"code": "say.soak", "values": {}}
        advice["caution"] = {"word": "CAUTION", "code": "caution.soak"}
    span = {
        "low_at_ms": poured_ms + 1000.0 * cool["ready_low_s"],
        "ready_at_ms": poured_ms + 1000.0 * cool["ready_s"],
        "high_at_ms": poured_ms + 1000.0 * cool["ready_high_s"],
    }
    meanwhile = "more.cooling_chocolate" if run["prebottom"] else "more.cooling"
    advice["more"] = {"code": meanwhile, "values": span}
    advice["number"] = {"name": "due_ms", "value": cool["due_ms"]}
    advice["action"] = read
    if at_ms >= poured_ms + 1000.0 * SOONEST_FIRM * cool["ready_low_s"]:
        advice["choices"] = [copy_with(firm, code="button.firm_now")]


def _slab_entry(cool: "Readable") -> "Entry":
    request = cool["request"]
    low_c = max(0.0, request["room_c"] - READS_OFF_K)
    high_c = min(150.0, request["start_c"] + READS_OFF_K)
    last = cool["readings"][-1]["surface_c"] if cool["readings"] else None
    body = {"seen": len(cool["readings"])}
    return entry("slab_read", "surface_c", low_c, high_c, last=last, body=body)
