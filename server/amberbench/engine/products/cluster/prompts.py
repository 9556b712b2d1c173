"""Prompts for clusters: fill, lay, top up or reheat, second deposit while tacky, cool, free.

Nothing here changes the run.
"""

from ...core.copy_with import copy_with
from ...core.prompts import button, entry, most_pieces, text_entry
from ...steps.cool.chill_fields import as_told_s
from ...steps.deposit.prompts import (
    bowl_empty_page,
    fill_button,
    fill_clock_page,
    fill_entry,
    fill_page,
    ran_empty_button,
    stood_c,
)
from ...steps.deposit.schedule import next_task
from ...steps.deposit.trays import LEAST_BOWL_KG, on_tray, sizes_on, window_ms
from ...steps.deposit.trays_done import freed
from ...steps.dip.prompts import weigh_dipped
from ...steps.melt.prompts import melt_page
from .clocks import free_due_ms, heating, read_since, resting_ms, waits_ms

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import Advice, EntryButton


# Free before this share of the earliest time is a slip of the finger (assumed).
SOONEST_FREE = 0.3


def _set_up(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["say"] = {"code": "say.set_up_cluster", "values": {}}
    advice["more"] = {"code": "more.set_up_cluster", "values": {"n": run["cluster"]["trays"]}}
    advice["action"] = button("all_ready", "ready_checked")
    advice["caution"] = {"word": "WARNING", "code": "caution.set_up"}


def _allergens(run: "Readable", at_ms: float, advice: "Advice") -> None:
    names = run.get("contains", [])
    if not names:
        advice["more"] = {"code": "more.allergens_on_label", "values": {}}
    else:
        code = "more.allergens" if run.get("labels_known") else "more.allergens_some"
        advice["more"] = {"code": code, "values": {"allergens": names}}
    advice["action"] = button("allergens_clear", "allergens_checked")
    advice["caution"] = {"word": "WARNING", "code": "caution.allergens"}


def _under_lot(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """The lot of what lies under, one after the other, while the bag is in hand."""
    seen = len(run["cluster"].get("under_lots", []))
    material = run["planned"]["under"][seen]["material"]
    body = {"material": material, "seen": seen}
    if material is not None:
        advice["say"] = {"code": "say.under_lot_of", "values": {"materials": [material]}}
    advice["entry"] = text_entry("under_lot_named", "lot", body=body)
    advice["choices"] = [button("no_under_lot", "under_lot_named", dict(body, lot=None))]


def _under(run: "Readable", at_ms: float, advice: "Advice") -> None:
    planned = run["planned"]
    values = {"under_kg": planned["under_kg"], "n": planned["trays"], "under_n": planned["per_tray"]}
    under = planned.get("under", ())  # runs of long ago did not keep what lies there
    named = under and all(one["material"] for one in under)
    if planned["bed"]:
        # Plans of long ago have all trays alike.
        mean_kg = planned["under_kg"] / planned["trays"]
        values.update(planned.get("bed_kg") or {"tray_kg": mean_kg, "last_kg": mean_kg})
        less = values["last_kg"] < values["tray_kg"]
        advice["more"] = {"code": "more.under_bed_last" if less else "more.under_bed", "values": values}
        if named:
            materials = [one["material"] for one in under]
            advice["say"] = {"code": "say.under_bed", "values": {"materials": materials}}
    else:
        advice["say"] = {"code": "say.under_counted", "values": {}}
        advice["more"] = {"code": "more.under_counted", "values": values}
        if named:
            each = [{"material": one["material"], "each_n": one["each_n"]} for one in under]
            advice["say"] = {"code": "say.under_named", "values": {"each": each}}
    advice["action"] = button("under_laid", "under_laid")
    advice["caution"] = {"word": "WARNING", "code": "caution.under_apart"}


# Melting, filling and laying --------------------------------------------------------------------------------------


def _melt(run: "Readable", at_ms: float, advice: "Advice") -> None:
    state = run["cluster"]
    task, tray, from_ms = ("melt", 0, at_ms) if state["begun_ms"] is None else next_task(state, at_ms)
    if task == "empty":
        _empty(run, at_ms, advice)
    elif state["fill"] is not None:
        _lay(run, at_ms, advice, task, tray)
    elif state["bowl_kg"] is not None and state["bowl_kg"] < LEAST_BOWL_KG:
        bowl_empty_page(state, at_ms, advice)
    elif task == "wait" and not run["melt"]["history"] and not heating(run) and at_ms < waits_ms(run, from_ms):
        _wait(run, advice, waits_ms(run, from_ms))
    else:
        melt_page(run, at_ms, advice, (fill_page, fill_button))
        if advice["step"] == "fill":
            now: "Any" = advice["melt"]
            advice["action"] = copy_with(fill_button(run, stood_c(run, now, at_ms), now), code="button.filled")
        # The bowl keeps warm longer than the funnel.
        if task == "wait" and advice["step"] in ("fill", "read") and read_since(run) and at_ms < waits_ms(run, from_ms):
            advice["action"] = advice["entry"] = advice["more"] = None
            _wait(run, advice, waits_ms(run, from_ms))
        if state["fills"] > 0:
            advice["choices"] = advice["choices"][:2] + [button("all_laid", "laying_ended")]


def _lay(run: "Readable", at_ms: float, advice: "Advice", task: str, tray: int) -> None:
    state, fill = run["cluster"], run["cluster"]["fill"]
    advice["caution"] = {"word": "WARNING", "code": "caution.funnel_hot"}
    read: "EntryButton" = {"code": "button.read_fill", "entry": fill_entry(run)}
    if at_ms >= fill["due_ms"]:
        fill_clock_page(run, at_ms, advice, read)
        return
    advice["number"] = {"name": "due_ms", "value": fill["due_ms"]}
    values = {"n": tray + 1, "trays": state["trays"]}
    several = len(state["sizes"]) > 1
    if several:
        values["sizes"] = sizes_on(state, tray)
    if task == "lay":
        advice["step"] = "lay"
        advice["say"] = {"code": "say.lay_sizes" if several else "say.lay", "values": values}
        advice["more"] = {"code": "more.lay", "values": dict(values, per_tray=on_tray(state, tray))}
        advice["action"] = button("tray_laid", "tray_laid", {"seen": len(state["laid"])})
        advice["choices"] = [read, ran_empty_button(run), button("all_laid", "laying_ended")]
    elif task == "wait":
        _wait(run, advice, window_ms(state, tray)[0])
        advice["choices"] += [read]
    else:
        _second(state, at_ms, advice, task, tray, values)
        advice["choices"] += [read] if task == "touch" else [read, ran_empty_button(run)]


def _second(state: "Readable", at_ms: float, advice: "Advice", task: str, tray: int, values: "Document") -> None:
    """The first tray is touched before it is laid again; it speaks for the others."""
    seen = len(state["tests"])
    not_yet = button("not_tacky", "tack_tested", {"tacky": False, "seen": seen})
    if task == "touch":
        advice["step"] = "tacky"
        advice["say"] = {"code": "say.tacky", "values": {}}
        advice["action"] = button("tacky", "tack_tested", {"tacky": True, "seen": seen})
        advice["choices"] = [not_yet]
        advice["caution"] = {"word": "WARNING", "code": "caution.touch_hot"}
        return
    cold = at_ms > window_ms(state, tray)[1]
    advice["step"] = "second"
    advice["say"] = {"code": "say.second_cold", "values": {}} if cold else {"code": "say.second", "values": values}
    if cold:
        advice["more"] = {"code": "more.second_cold", "values": values}
    advice["action"] = button("second_laid", "second_laid", {"seen": tray})


def _wait(run: "Readable", advice: "Advice", until_ms: float) -> None:
    state = run["cluster"]
    advice["step"] = "wait"
    advice["say"] = {"code": "say.wait_tacky", "values": {}}
    advice["number"] = {"name": "due_ms", "value": until_ms}
    advice["choices"] = [button("tacky_already", "tack_tested", {"tacky": True, "seen": len(state["tests"])})]
    code = "caution.hot_bowl" if state["fill"] is None else "caution.funnel_hot"
    advice["caution"] = {"word": "WARNING", "code": code}


def _empty(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["step"] = "empty"
    advice["say"] = {"code": "say.empty_funnel", "values": {}}
    advice["more"] = {"code": "more.empty_funnel", "values": {}}
    advice["action"] = button("empty_funnel", "funnel_emptied")
    advice["caution"] = {"word": "WARNING", "code": "caution.rinse_funnel"}


# Cooling and freeing ----------------------------------------------------------------------------------------------


def _cool(run: "Readable", at_ms: float, advice: "Advice") -> None:
    state = run["cluster"]
    due_ms, seen = free_due_ms(state), len(state["tries"])
    free = button("tray_free", "tray_freed", {"free": True, "seen": seen})
    values = {"n": freed(state) + 1, "trays": len(state["laid"])}
    if at_ms >= due_ms:
        advice["step"] = "release"
        advice["say"] = {"code": "say.release", "values": {}}
        chill = state.get("chill")
        advice["more"] = {"code": "more.release", "values": values}
        if chill:
            chilled = {"chill_s": as_told_s(chill["seconds_s"]), "fridge_c": chill["fridge_c"]}
            advice["more"] = {"code": "more.release_chilled", "values": chilled}
        advice["action"] = free
        advice["choices"] = [button("not_yet", "tray_freed", {"free": False, "seen": seen})]
        advice["caution"] = {"word": "CAUTION", "code": "caution.release"}
        return
    advice["say"] = {"code": "say.cool_tray", "values": {"check_at_ms": due_ms}}
    span_ms = resting_ms(state) + 1000.0 * state["free"]["to_s"]
    advice["more"] = {"code": "more.cool_tray", "values": {"high_at_ms": span_ms}}
    advice["number"] = {"name": "due_ms", "value": due_ms}
    if at_ms >= resting_ms(state) + 1000.0 * SOONEST_FREE * state["free"]["from_s"]:
        advice["choices"] = [copy_with(free, code="button.tray_free_already")]


def _separate(run: "Readable", at_ms: float, advice: "Advice") -> None:
    advice["more"] = {"code": "more.separate", "values": {}}
    advice["action"] = button("separated", "separated")
    if not any(one["what"] == "loose" for one in run["out"]):
        most_kg = max(0.1, run["planned"]["under_kg"] * max(1, run["planned"]["trays"]))
        loose = entry("weighed_out", "kg", 0.0, most_kg, body={"what": "loose", "seen": len(run["out"])})
        advice["choices"] = [{"code": "button.weigh_loose", "entry": copy_with(loose, name="loose_kg")}]
    advice["caution"] = {"word": "WARNING", "code": "caution.loose_nuts"}


def _count(run: "Readable", at_ms: float, advice: "Advice") -> None:
    pieces = run["planned"]["pieces"]
    advice["say"] = {"code": "say.count_clusters", "values": {}}
    advice["more"] = {"code": "more.planned_clusters", "values": {"n": pieces}}
    likely = {"likely_low": 0.9 * pieces, "likely_high": pieces}
    advice["entry"] = entry("counted", "pieces", 0, most_pieces(pieces), **likely)
    advice["choices"] = weigh_dipped(run)
    advice["caution"] = {"word": "WARNING", "code": "caution.foreign"}


PAGES = {
    "set_up": _set_up,
    "allergens": _allergens,
    "under_lot": _under_lot,
    "under": _under,
    "melt": _melt,
    "cool_tray": _cool,
    "separate": _separate,
    "count": _count,
}
