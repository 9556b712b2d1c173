"""Clusters as prompts: fill, lay, top up or reheat, second deposit while tacky, cool, free.

Nothing here changes the run.
"""

from .advise_melt import belief, melt_page
from .folds_cluster import LEAST_BOWL_KG, freed, left_kg, seconds, window_ms
from .prompts import button, clock, entry, most_pieces

# A funnel's top reads no further than this below the shop's room or above what was filled in (assumed).
READS_OFF_K = 12.0
# Laying a tray, or laying it again, takes up to this much longer than planned (assumed).
SLOWER = 1.25
# Free before this share of the earliest time is a slip of the finger (assumed).
SOONEST_FREE = 0.3
GLOVE = {"word": "WARNING", "code": "caution.funnel_glove"}


def cluster_clocks(run):
    """What rings: the fill leaves its window or runs low, a tray turns tacky, it turns cold, a tray comes free."""
    state, done = run["cluster"], run["done"]
    if "melt" not in done:
        return _laying_clocks(state)
    if "cool_tray" in done or not state["laid"]:
        return []
    return [clock("tray", _resting_ms(state), free_due_ms(state), "ready")]


def _laying_clocks(state):
    clocks, fill = [], state["fill"]
    if fill is not None:
        clocks.append(clock("fill", fill["at_ms"], fill["due_ms"], "read"))
    tray = seconds(state)
    if state["second"] is not None and tray < len(state["laid"]):
        from_ms, to_ms = window_ms(state, tray)
        clocks.append(clock("tacky", state["laid"][tray]["began_ms"], from_ms, "ready"))
        clocks.append(clock("cold", from_ms, to_ms, "stir"))
    return clocks


def _resting_ms(state):
    """Since when the next tray to be freed rests."""
    tray = state["laid"][freed(state)]
    return tray["laid_ms"] if tray["second_ms"] is None else tray["second_ms"]


def free_due_ms(state):
    """When the next tray should be tried."""
    if state["free_again_ms"] is not None:
        return state["free_again_ms"]
    return _resting_ms(state) + 1000.0 * state["free"]["from_s"]


def _set_up(run, at_ms, advice):
    advice["say"] = {"code": "say.set_up_cluster", "values": {}}
    advice["more"] = {"code": "more.set_up_cluster", "values": {"n": run["cluster"]["trays"]}}
    advice["action"] = button("all_ready", "ready_checked")
    advice["caution"] = {"word": "WARNING", "code": "caution.set_up"}


def _allergens(run, at_ms, advice):
    advice["more"] = {"code": "more.allergens", "values": {}}
    advice["action"] = button("allergens_clear", "allergens_checked")
    advice["caution"] = {"word": "WARNING", "code": "caution.allergens"}


def _under(run, at_ms, advice):
    planned = run["planned"]
    way = "bed" if planned["bed"] else "counted"
    if not planned["bed"]:
        advice["say"] = {"code": "say.under_counted", "values": {}}
    values = {"under_kg": planned["under_kg"], "n": planned["trays"], "under_n": planned["per_tray"]}
    advice["more"] = {"code": "more.under_" + way, "values": values}
    advice["action"] = button("under_laid", "under_laid")
    advice["caution"] = {"word": "NOTICE", "code": "caution.nuts_apart"}


# Melting, filling and laying --------------------------------------------------------------------------------------


def _melt(run, at_ms, advice):
    state = run["cluster"]
    task, tray = next_task(state, at_ms)
    if task == "empty":
        _empty(run, at_ms, advice)
    elif state["fill"] is not None:
        _lay(run, at_ms, advice, task, tray)
    elif task == "wait" and not _heating(run, at_ms) and window_ms(state, tray)[0] > at_ms:
        _wait(run, at_ms, advice, tray)
    elif state["bowl_kg"] is not None and state["bowl_kg"] < LEAST_BOWL_KG:
        _bowl_empty(advice)
    else:
        melt_page(run, at_ms, advice, (fill_page, fill_button))
        if state["fills"] > 0:
            advice["choices"] = advice["choices"][:2] + [button("all_laid", "laying_ended")]


def _heating(run, at_ms):
    melt = run["melt"]
    return melt["burning"] is not None or melt["resting"] is not None


def next_task(state, at_ms):
    """(what the hands do next, on which tray): lay, second, wait for a tray to turn tacky, or empty the funnel.

    A second deposit goes before the next tray when that tray would still be under way as the first ones turn cold.
    """
    more = not state["all_laid"] and len(state["laid"]) < state["trays"]
    tray = seconds(state)
    if state["second"] is None or tray >= len(state["laid"]):
        return ("lay", len(state["laid"])) if more else ("empty", 0)
    from_ms, to_ms = window_ms(state, tray)
    too_late = at_ms + 1000.0 * SLOWER * state["tray_s"] > to_ms
    if more and not too_late:
        return "lay", len(state["laid"])
    return ("second" if at_ms >= from_ms else "wait"), tray


def fill_page(run, now, advice, filled):
    """The bowl is in its window: the funnel is filled from it."""
    advice["step"] = "fill"
    advice["say"] = {"code": "say.fill", "values": {}}
    kg = fill_kg(run, 0.0)
    advice["more"] = {"code": "more.fill", "values": {"fill_kg": kg}}
    advice["number"] = {"name": "bulk_c", "value": now["bulk_c"], "low": now["bulk_low_c"], "high": now["bulk_high_c"]}
    advice["action"] = dict(filled, code="button.filled")
    advice["caution"] = GLOVE


def fill_kg(run, had_kg):
    """What the funnel holds when filled: three quarters, or what there is."""
    state = run["cluster"]
    bowl_kg = run["planned"]["caramel_kg"] if run["weighed_kg"] is None else run["weighed_kg"]
    if state["bowl_kg"] is not None:
        bowl_kg = state["bowl_kg"]
    return max(0.001, min(state["full_kg"], bowl_kg + had_kg))


def fill_button(run, bulk_c, had_kg=0.0):
    """The button that fills the funnel with caramel so warm; null: nobody has read it, so it is taken for just warm."""
    bulk_c = run["melt"]["request"]["window_low_c"] if bulk_c is None else min(max(bulk_c, 20.0), 150.0)
    body = {"kg": fill_kg(run, had_kg), "bulk_c": bulk_c, "seen": run["cluster"]["fills"]}
    return button("fill_now", "filled", body)


def _lay(run, at_ms, advice, task, tray):
    state, fill = run["cluster"], run["cluster"]["fill"]
    advice["caution"] = {"word": "WARNING", "code": "caution.funnel_hot"}
    read = {"code": "button.read_fill", "entry": _fill_entry(run)}
    if at_ms >= fill["due_ms"]:
        _fill_over(run, at_ms, advice, read)
        return
    advice["number"] = {"name": "due_ms", "value": fill["due_ms"]}
    values = {"n": tray + 1, "trays": state["trays"]}
    if task == "lay":
        advice["step"] = "lay"
        advice["say"] = {"code": "say.lay", "values": {}}
        advice["more"] = {"code": "more.lay", "values": dict(values, per_tray=run["planned"]["per_tray"])}
        advice["action"] = button("tray_laid", "tray_laid", {"seen": len(state["laid"])})
        advice["choices"] = [read, button("all_laid", "laying_ended")]
    elif task == "wait":
        _wait(run, at_ms, advice, tray)
        advice["choices"] += [read]
    else:
        _second(state, at_ms, advice, tray, values)
        advice["choices"] += [read]


def _second(state, at_ms, advice, tray, values):
    """The first tray is touched before it is laid again; it speaks for the others."""
    seen, advice["caution"] = len(state["tests"]), None
    not_yet = button("not_tacky", "tack_tested", {"tacky": False, "seen": seen})
    if tray == 0 and not any(one["tacky"] for one in state["tests"]):
        advice["step"] = "tacky"
        advice["say"] = {"code": "say.tacky", "values": {}}
        advice["more"] = {"code": "more.tacky", "values": {"cold_at_ms": window_ms(state, tray)[1]}}
        advice["action"] = button("tacky", "tack_tested", {"tacky": True, "seen": seen})
        advice["choices"] = [not_yet]
        return
    cold = at_ms > window_ms(state, tray)[1]
    advice["step"] = "second"
    advice["say"] = {"code": "say.second_cold" if cold else "say.second", "values": {}}
    advice["more"] = {"code": "more.second_cold" if cold else "more.second", "values": values}
    advice["action"] = button("second_laid", "second_laid", {"seen": tray})


def _wait(run, at_ms, advice, tray):
    state = run["cluster"]
    advice["step"] = "wait"
    advice["say"] = {"code": "say.wait_tacky", "values": {}}
    advice["number"] = {"name": "due_ms", "value": window_ms(state, tray)[0]}
    advice["choices"] = [button("tacky_already", "tack_tested", {"tacky": True, "seen": len(state["tests"])})]
    advice["caution"] = None


def _fill_over(run, at_ms, advice, read):
    """The funnel runs low, or what is in it gets too thick: topped up from a bowl in its window, else heated again."""
    state, fill = run["cluster"], run["cluster"]["fill"]
    had_kg, thick = left_kg(state, at_ms), fill["thick"]
    now = belief(run, at_ms) if state["bowl_kg"] >= LEAST_BOWL_KG else None
    bulk_c = _mixed_c(run, had_kg, now, at_ms)
    back = button("fill_back", "fill_ended", {"left_kg": had_kg, "bulk_c": bulk_c, "seen": state["fills"]})
    advice["step"] = "reheat" if thick else "refill"
    advice["say"] = {"code": "say.too_thick" if thick else "say.funnel_low", "values": {}}
    advice["choices"] = [read]
    if thick:
        advice["action"] = back
    elif now is not None and now["action"] == "ready":
        advice["action"] = dict(fill_button(run, now["bulk_c"], had_kg), code="button.funnel_topped_up")
        advice["choices"] = [dict(back, code="button.reheat"), read]
    elif state["bowl_kg"] + had_kg >= LEAST_BOWL_KG:
        advice["say"] = {"code": "say.reheat", "values": {}}
        advice["action"] = dict(back, code="button.reheat")
    else:
        _bowl_empty(advice)


def _mixed_c(run, had_kg, now, at_ms):
    """How warm the bowl is with the rest of the funnel in it (°C, believed)."""
    state, fill = run["cluster"], run["cluster"]["fill"]
    low_c = run["melt"]["request"]["window_low_c"]
    gone = (at_ms - fill["now_ms"]) / max(1000.0, fill["due_ms"] - fill["now_ms"]) if fill["thick"] else 0.5
    funnel_c = max(low_c - READS_OFF_K, fill["now_c"] - gone * max(0.0, fill["now_c"] - low_c))
    if now is None or state["bowl_kg"] + had_kg <= 0.0:
        return min(max(funnel_c, 20.0), 150.0)
    mixed_c = (state["bowl_kg"] * now["bulk_c"] + had_kg * funnel_c) / (state["bowl_kg"] + had_kg)
    return min(max(mixed_c, 20.0), 150.0)


def _bowl_empty(advice):
    advice["step"] = "refill"
    advice["say"] = {"code": "say.bowl_empty", "values": {}}
    advice["action"] = button("empty_funnel", "funnel_emptied")


def _fill_entry(run):
    state, request = run["cluster"], run["melt"]["request"]
    typed = entry(
        "fill_read",
        "surface_c",
        max(0.0, request["room_c"] - READS_OFF_K),
        150.0,
        last=state["readings"][-1]["surface_c"] if state["readings"] else None,
        band_low=request["window_low_c"],
        band_high=request["window_high_c"],
        body={"seen": len(state["readings"])},
    )
    return typed


def _empty(run, at_ms, advice):
    advice["step"] = "empty"
    advice["say"] = {"code": "say.empty_funnel", "values": {}}
    advice["more"] = {"code": "more.empty_funnel", "values": {}}
    advice["action"] = button("empty_funnel", "funnel_emptied")
    advice["caution"] = {"word": "CAUTION", "code": "caution.soak"}


# Cooling and freeing ----------------------------------------------------------------------------------------------


def _cool(run, at_ms, advice):
    state = run["cluster"]
    due_ms, seen = free_due_ms(state), len(state["tries"])
    free = button("tray_free", "tray_freed", {"free": True, "seen": seen})
    values = {"n": freed(state) + 1, "trays": len(state["laid"])}
    if at_ms >= due_ms:
        advice["step"] = "release"
        advice["say"] = {"code": "say.release", "values": {}}
        advice["more"] = {"code": "more.release", "values": values}
        advice["action"] = free
        advice["choices"] = [button("not_yet", "tray_freed", {"free": False, "seen": seen})]
        advice["caution"] = {"word": "CAUTION", "code": "caution.release"}
        return
    advice["say"] = {"code": "say.cool_tray", "values": {"check_at_ms": due_ms}}
    span_ms = _resting_ms(state) + 1000.0 * state["free"]["to_s"]
    advice["more"] = {"code": "more.cool_tray", "values": {"high_at_ms": span_ms}}
    advice["number"] = {"name": "due_ms", "value": due_ms}
    if at_ms >= _resting_ms(state) + 1000.0 * SOONEST_FREE * state["free"]["from_s"]:
        advice["choices"] = [dict(free, code="button.tray_free_already")]


def _separate(run, at_ms, advice):
    advice["more"] = {"code": "more.separate", "values": {}}
    advice["action"] = button("separated", "separated")
    if not any(one["what"] == "loose" for one in run["out"]):
        most_kg = max(0.1, run["planned"]["under_kg"] * max(1, run["planned"]["trays"]))
        loose = entry("weighed_out", "kg", 0.0, most_kg, body={"what": "loose", "seen": len(run["out"])})
        advice["choices"] = [{"code": "button.weigh_loose", "entry": dict(loose, name="loose_kg")}]
    advice["caution"] = {"word": "NOTICE", "code": "caution.loose_nuts"}


def _count(run, at_ms, advice):
    pieces = run["planned"]["pieces"]
    advice["say"] = {"code": "say.count_clusters", "values": {}}
    advice["more"] = {"code": "more.planned_clusters", "values": {"n": pieces}}
    likely = {"likely_low": 0.9 * pieces, "likely_high": pieces}
    advice["entry"] = entry("counted", "pieces", 0, most_pieces(pieces), **likely)
    advice["caution"] = {"word": "NOTICE", "code": "caution.wash_hands"}


PAGES = {
    "set_up": _set_up,
    "allergens": _allergens,
    "under": _under,
    "melt": _melt,
    "cool_tray": _cool,
    "separate": _separate,
    "count": _count,
}
