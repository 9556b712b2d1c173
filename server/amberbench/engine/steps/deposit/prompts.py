"""Prompts for the funnel: fill it from a warm bowl, read it, top it up, or empty it back into the bowl and reheat.

Nothing here changes the run.
"""

from ...core.copy_with import copy_with
from ...core.prompts import button, entry
from ...core.statistics import SD_TO_10_PERCENT
from ...physics import pot as physics_pot
from ..melt.decisions import USUAL_GAP_S
from ..melt.prompts import estimate, read_entry
from . import trays
from .schedule import READ_AGAIN_S, WORTHWHILE_SHARE, left_kg, needed_s, next_task
from .trays import LEAST_BOWL_KG, LEAST_SD_K, POURING_LOSS_K, SAFE_TEMP_SD, fill_lasts_s, fresh_fill_s

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from ...types import Action, Advice, Caution, Entry, EntryButton, EventButton


# A funnel's top reads no further than this below the shop's room or above what was filled in (assumed).
READS_OFF_K = 12.0
# A funnel is topped up with at least this share of a fill (assumed).
LEAST_TOP_UP = 0.1
GLOVE: "Caution" = {"word": "WARNING", "code": "caution.funnel_glove"}


def fill_page(run: "Readable", now: "Readable", advice: "Advice", filled: "Readable") -> None:
    """The page when the bowl is in its window: fill the funnel from it."""
    advice["step"] = "fill"
    kg = fill_kg(run, 0.0)
    some = kg < _all_kg(run, 0.0)
    advice["say"] = {"code": "say.fill" if some else "say.fill_all", "values": {}}
    advice["more"] = {"code": "more.fill", "values": {"fill_kg": kg}}
    advice["number"] = {"name": "bulk_c", "value": now["bulk_c"], "low": now["bulk_low_c"], "high": now["bulk_high_c"]}
    advice["caution"] = GLOVE


def stood_c(run: "Readable", now: "Readable", at_ms: float) -> float:
    """How warm the bowl is at a time in °C: a short pause since it was read is no rest in the melt's history."""
    melt = run["melt"]
    if melt["last_at_ms"] is None:
        now_c: float = now["bulk_c"]
        return now_c
    request, stood_s = melt["request"], min(USUAL_GAP_S, max(0.0, (at_ms - melt["last_at_ms"]) / 1000.0))
    pot = physics_pot.Pot(request["mass_kg"], request["material"], request["vessel"], request["room_c"])
    return pot.cooled(now["bulk_c"], stood_s)


def fill_kg(run: "Readable", had_kg: float) -> float:
    """What the funnel is filled with in kg: a planned fill, or all there is, also when that is a little more."""
    return max(0.001, trays.next_fill_kg(run["cluster"], _all_kg(run, had_kg)))


def _all_kg(run: "Readable", had_kg: float) -> float:
    """What bowl and funnel hold."""
    bowl_kg = run["cluster"]["bowl_kg"]
    result: float = (trays.weighed_kg(run) if bowl_kg is None else bowl_kg) + had_kg
    return result


def fill_button(
    run: "Readable", bulk_c: float | None, now: "Readable | None" = None, had: tuple[float, float] = (0.0, 0.0)
) -> "EventButton":
    """The button that fills the funnel from a bowl at bulk_c (°C); None: nobody has read it, so the window's low end.

    now: the melt's estimate, or None; had: (kg, °C) of what is in the funnel.
    """
    bulk_c = run["melt"]["request"]["window_low_c"] if bulk_c is None else bulk_c
    kg, (had_kg, had_c) = fill_kg(run, had[0]), had
    mixed_c = had_c + max(0.0, kg - had_kg) / kg * (bulk_c - POURING_LOSS_K - had_c)
    body: "Document" = {
        "kg": kg,
        "bulk_c": _within_event_range(mixed_c),
        "bowl_c": _within_event_range(bulk_c),
        "seen": run["cluster"]["fills"],
    }
    if now is not None:
        body["sd_k"] = min(60.0, (now["bulk_c"] - now["bulk_low_c"]) / SD_TO_10_PERCENT)
    return button("fill_now", "filled", body)


def _within_event_range(temp_c: float) -> float:
    """A temperature within what an event takes."""
    return min(max(temp_c, 20.0), 150.0)


def ran_empty_button(run: "Readable") -> "EventButton":
    """The button that says the funnel ran empty before its clock rang."""
    state = run["cluster"]
    body = {"left_kg": 0.0, "bulk_c": _within_event_range(run["melt"]["request"]["start_c"]), "seen": state["fills"]}
    return button("funnel_empty", "fill_ended", body)


def fill_clock_page(run: "Readable", at_ms: float, advice: "Advice", read: "EntryButton") -> None:
    """The page when the fill's clock rings: top up while the bowl is warm enough, else read, else empty and reheat."""
    state, fill = run["cluster"], run["cluster"]["fill"]
    had_kg, why = left_kg(state, at_ms), fill["why"]
    now = estimate(run, at_ms) if state["bowl_kg"] >= LEAST_BOWL_KG else None
    had_c = trays.cooled_c(state, fill["kg"] - had_kg, at_ms, False)
    bowl_c = None if now is None else stood_c(run, now, at_ms)
    body = {"left_kg": had_kg, "bulk_c": _mixed_c(state, had_kg, had_c, bowl_c), "seen": state["fills"]}
    back, task = button("reheat", "fill_ended", body), next_task(state, at_ms)[0]
    topped = None if now is None else fill_button(run, bowl_c, now, (had_kg, had_c))
    if now is not None and topped is not None and _is_worth_topping_up(state, topped, had_kg, at_ms):
        _top_up(run, now, advice, copy_with(topped, code="button.funnel_topped_up"), [back, read])
    elif why == "thick" and task != "wait" and at_ms > fill["seen_ms"] + 1000.0 * READ_AGAIN_S:
        # It may be warmer than its clock, which is on the safe side.
        advice["step"] = "read_fill"
        advice["say"] = {"code": "say.read_fill", "values": {}}
        advice["entry"], advice["choices"] = read["entry"], [back]
    elif state["bowl_kg"] + had_kg >= LEAST_BOWL_KG:
        advice["step"] = "refill" if why == "low" else "reheat"
        advice["say"] = {
            "code": {"low": "say.reheat", "thick": "say.too_thick"}.get(why, "say.fill_anew"),
            "values": {},
        }
        advice["action"] = back if why == "low" else copy_with(back, code="button.fill_back")
        advice["choices"] = [read]
    else:
        bowl_empty_page(state, at_ms, advice)
        if why == "thick":
            advice["say"] = {"code": "say.empty_thick", "values": {}}


def _top_up(run: "Readable", now: "Readable", advice: "Advice", topped: "EventButton", choices: "list[Action]") -> None:
    """The page that tops up from a warm bowl; a bowl not read since the last fill is read first."""
    if any(one["kind"] == "reading" for one in run["melt"]["history"]):
        advice["step"] = "refill"
        advice["say"] = {"code": "say.funnel_low", "values": {}}
        advice["action"], advice["choices"] = topped, choices
        return
    advice["step"] = "read"
    advice["say"] = {"code": "say.stir_read", "values": {}}
    advice["entry"], advice["choices"] = read_entry(run["melt"], now), [topped, choices[0]]
    advice["caution"] = {"word": "NOTICE", "code": "caution.infrared"}


def _is_worth_topping_up(state: "Readable", topped: "EventButton", had_kg: float, at_ms: float) -> bool:
    """Whether a funnel topped up from the bowl as it is would last long enough."""
    kg, sure_c = topped["body"]["kg"], topped["body"]["bulk_c"] - SAFE_TEMP_SD * max(LEAST_SD_K, topped["body"]["sd_k"])
    if kg < had_kg + LEAST_TOP_UP * state["full_kg"]:
        return False
    return fill_lasts_s(state, sure_c, kg) >= min(needed_s(state, at_ms), WORTHWHILE_SHARE * fresh_fill_s(state, kg))


def _mixed_c(state: "Readable", had_kg: float, had_c: float, bowl_c: float | None) -> float:
    """Temperature of the bowl once the rest of the funnel is in it (°C, believed)."""
    if bowl_c is None or state["bowl_kg"] + had_kg <= 0.0:
        return _within_event_range(had_c)
    return _within_event_range((state["bowl_kg"] * bowl_c + had_kg * had_c) / (state["bowl_kg"] + had_kg))


def bowl_empty_page(state: "Readable", at_ms: float, advice: "Advice") -> None:
    """The page when the bowl is empty: what is left in the funnel goes on the tray under way."""
    task, tray, _ = next_task(state, at_ms)
    advice["step"] = "refill"
    advice["say"] = {"code": "say.bowl_empty", "values": {}}
    advice["action"] = button("empty_funnel", "funnel_emptied")
    advice["choices"] = []
    if task == "lay":
        advice["choices"] = [button("tray_laid", "tray_laid", {"seen": tray})]
    elif task in ("second", "touch"):
        advice["choices"] = [button("second_laid", "second_laid", {"seen": tray})]


def fill_entry(run: "Readable") -> "Entry":
    """A reading into the funnel."""
    state, request = run["cluster"], run["melt"]["request"]
    filled_c = state["fill"].get("filled_c", 150.0)  # runs that were kept before this was have none
    return entry(
        "fill_read",
        "surface_c",
        max(0.0, request["room_c"] - READS_OFF_K),
        min(150.0, filled_c + READS_OFF_K),
        last=state["readings"][-1]["surface_c"] if state["readings"] else None,
        band_low=state["request"]["window_low_c"],
        band_high=request["window_high_c"],
        body={"seen": len(state["readings"])},
    )
