"""Prompts for melting in a water jacket: block in, look, water, read, pour. Nothing here changes the run."""

import math

from ...core.problems import Problem
from ...core.prompts import button, clock
from ...core.statistics import SD_TO_10_PERCENT
from ..melt.estimate import FRESH_COLD_K, FRESH_SD_K
from ..melt.prompts import cold_button, read_entry, resting_page, too_warm_page
from ..pour.prompts import ready_page
from . import plan
from .decisions import wait_s

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import Advice, EventButton


# Under a lid the water holds for about an hour before it wants a look (assumed).
WATER_MS = 3600000.0
# The wall goes on heating: a reading is not put off longer, nor asked for sooner, than this (assumed).
LEAST_READ_S, MOST_READ_S = 180.0, 1800.0
# Off the heat and stirred, a degree or two are gone in this time (assumed).
REST_S = 180.0


def jacket_page(run: "Readable", at_ms: float, advice: "Advice") -> None:
    """Fills in the advice while the caramel melts in the jacket."""
    state, jacket = run["melt"], run["melt"]["jacket"]
    advice["caution"] = {"word": "WARNING", "code": "caution.steam"}
    if jacket["started_ms"] is None:
        _block_in(run, advice)
    elif state["resting"] is not None and at_ms < state["resting"]["due_ms"]:
        resting_page(state, advice)
    elif state["free"]:
        _free(run, at_ms, advice)
    elif at_ms >= jacket["due_ms"]:
        _look(jacket, at_ms, advice)
    elif at_ms >= _water_due(jacket):
        _top_up(state, advice)
    else:
        _waiting(jacket, advice)


def jacket_clocks(run: "Readable", step: str) -> "list[Any]":
    """The clocks that run while it melts: the next look, the water, the next reading."""
    state, jacket = run["melt"], run["melt"]["jacket"]
    if jacket is None or "melt" in run["done"]:
        return []
    if jacket["started_ms"] is None or (state["resting"] is not None and state["read_wanted"]):
        return []
    if state["free"]:
        since_ms, due_ms = _next_reading(run)
        return [clock("read", since_ms, due_ms, "read")]
    clocks = [clock("soften", jacket["set_ms"], jacket["due_ms"], "stir")]
    if _water_due(jacket) < jacket["due_ms"]:
        clocks.append(clock("water", jacket["topped_ms"], _water_due(jacket), "read"))
    return clocks


def _water_due(jacket: "Readable") -> float:
    due_ms: float = jacket["topped_ms"] + WATER_MS
    return due_ms


def expected_times(run: "Readable") -> "Document":
    """seconds_s, low_s and high_s for what was weighed in; the plan's, where the model does not reach."""
    state = run["melt"]
    try:
        found = plan.plan(plan.request_for(state["request"]))
    except Problem:
        found = state["jacket"]
    return {name: max(1.0, found[name]) for name in ("seconds_s", "low_s", "high_s")}


def _block_in(run: "Readable", advice: "Advice") -> None:
    times = expected_times(run)
    chopped = run["melt"]["request"]["chopped_m"] is not None
    advice["step"] = "block_in"
    advice["say"] = {"code": "say.pieces_in" if chopped else "say.block_in", "values": {}}
    advice["more"] = {"code": "more.jacket_takes", "values": times}
    advice["action"] = button("block_in", "jacket_started", times)


def _waiting(jacket: "Readable", advice: "Advice") -> None:
    started_ms, slower = jacket["started_ms"], jacket["slower"]
    times = {"ready_at_ms": started_ms + 1000.0 * slower * jacket["seconds_s"]}
    times["high_at_ms"] = started_ms + 1000.0 * slower * jacket["high_s"]
    advice["step"] = "soften"
    advice["say"] = {"code": "say.softening", "values": {}}
    advice["more"] = {"code": "more.softening", "values": times}
    advice["number"] = {"name": "due_ms", "value": jacket["due_ms"]}
    advice["choices"] = [button("free_already", "stirred", {"free": True})]


def _look(jacket: "Readable", at_ms: float, advice: "Advice") -> None:
    again_s = wait_s(jacket, (at_ms - jacket["started_ms"]) / 1000.0)
    advice["step"] = "look"
    advice["say"] = {"code": "say.look", "values": {}}
    advice["more"] = {"code": "more.look", "values": {"again_s": again_s}}
    advice["action"] = button("stirs_freely", "stirred", {"free": True})
    advice["choices"] = [button("lumps_left", "stirred", {"free": False})]


def _top_up(state: "Readable", advice: "Advice") -> None:
    request = state["request"]
    advice["step"] = "top_up"
    advice["say"] = {"code": "say.top_up", "values": {}}
    heat = {"jacket_c": request["jacket_c"], "limit_c": request["limit_c"]}
    advice["more"] = {"code": "more.top_up", "values": heat}
    advice["action"] = button("topped_up", "water_topped")


def bulk_c(state: "Readable") -> float | None:
    """What the last reading says of the stirred bulk in °C; None before one."""
    return None if state["jacket"]["read_ms"] is None else state["last_c"] + FRESH_COLD_K


def _next_reading(run: "Readable") -> tuple[float, float]:
    """(since, due) of the next reading in ms: when it may have reached the window, or may be about to leave it."""
    state, jacket = run["melt"], run["melt"]["jacket"]
    request, now_c = state["request"], bulk_c(state)
    if now_c is None:
        return jacket["set_ms"], jacket["set_ms"] + 1000.0 * LEAST_READ_S
    goal_c = request["window_low_c"] if now_c < request["window_low_c"] else request["window_high_c"]
    try:
        due_s = plan.warmed_s(request, now_c, goal_c, jacket["slower"])
    except Problem:
        due_s = 0.0
    due_s = MOST_READ_S if due_s is None else min(max(due_s, LEAST_READ_S), MOST_READ_S)
    return jacket["read_ms"], jacket["read_ms"] + 1000.0 * due_s


def _free(run: "Readable", at_ms: float, advice: "Advice") -> None:
    state, now_c = run["melt"], bulk_c(run["melt"])
    request = state["request"]
    bulk = None if now_c is None else min(max(now_c, 20.0), 150.0)
    # Nobody pours by a large button without being told that the caramel was never read.
    poured = button("pour_unread" if now_c is None else "pour_now", "poured", {"bulk_c": bulk})
    poured = cold_button(poured, state, now_c)
    too_warm = now_c is not None and now_c > request["window_high_c"]
    if state["read_wanted"] or now_c is None:
        _read(state, "say.read", advice, poured)
    elif too_warm:
        _too_warm(state, now_c, advice)
    elif at_ms >= _next_reading(run)[1]:
        _read(state, "say.read_again", advice, poured)
    elif now_c >= request["window_low_c"]:
        ready_page(run, _believed(now_c), advice, poured)
    else:
        _warming(run, advice, poured)


def _believed(now_c: float) -> "Document":
    spread_k = SD_TO_10_PERCENT * FRESH_SD_K
    return {"bulk_c": now_c, "bulk_low_c": now_c - spread_k, "bulk_high_c": now_c + spread_k}


def _read(state: "Readable", words: str, advice: "Advice", poured: "EventButton") -> None:
    advice["step"] = "read"
    advice["say"] = {"code": words, "values": {}}
    advice["entry"] = read_entry(state, None)
    # A thermometer that has died must not hold up hot caramel.
    advice["choices"] = [poured]
    advice["caution"] = {"word": "NOTICE", "code": "caution.infrared"}


def _warming(run: "Readable", advice: "Advice", poured: "EventButton") -> None:
    request = run["melt"]["request"]
    lines = {"low_c": request["window_low_c"], "jacket_c": request["jacket_c"]}
    advice["step"] = "soften"
    advice["say"] = {"code": "say.lid_on", "values": {}}
    advice["more"] = {"code": "more.lid_on", "values": lines}
    advice["number"] = {"name": "due_ms", "value": _next_reading(run)[1]}
    advice["choices"] = [{"code": "button.read_now", "entry": read_entry(run["melt"], None)}, poured]


def _too_warm(state: "Readable", now_c: float, advice: "Advice") -> None:
    request, stop = state["request"], now_c >= state["request"]["stop_c"]
    middle_c = 0.5 * (request["window_low_c"] + request["window_high_c"])
    code = "reason.over_stop" if stop else "reason.over_warn" if now_c >= request["warn_c"] else "reason.over_window"
    now = dict(_believed(now_c), reason={"code": code, "values": {"bulk_c": now_c, "expected_c": middle_c}})
    rest_s = REST_S * math.ceil(max(1.0, now_c - middle_c) / 3.0)
    too_warm_page(state, now, advice, "say.jacket_stop" if stop else None, rest_s, state["jacket"]["read_ms"])
