"""Prompts for melting in an oven: burst, turn, stir, read, rest, pour. Nothing here changes the run."""

from ...core.copy_with import copy_with
from ...core.problems import Problem
from ...core.prompts import button, clock, entry, skip
from . import plan
from .decisions import rested_s
from .fold import readings

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import Action, Advice, Clock, Entry, EventButton, NextBurst


# Stirring 1 to 2 kg takes 30 to 45 s (common practice, no published source). This is the time shown; the model reckons
# with `oven.STIR_S`, the pause between two bursts.
SHOWN_STIR_S = 35.0
# What a button says below the window; and a page on which a surface was read below it.
COLD = {"button.pour_now": "button.pour_now_cold", "button.fill_now": "button.fill_now_cold"}
WARMER_INSIDE = {
    "say.ready": "say.ready_warmer_inside",
    "say.fill": "say.fill_warmer_inside",
    "say.fill_all": "say.fill_all_warmer_inside",
}


def melt_page(
    run: "Readable", at_ms: float, advice: "Advice", ends: "tuple[Callable[..., Any], Callable[..., Any]]"
) -> None:
    """Fills in the advice while the caramel melts; `ends`: (page, button) of what ends it."""
    state = run["melt"]
    if state["burning"] is not None and at_ms < state["burning"]["due_ms"]:
        _heating(state, advice)
    elif state["burning"] is not None:
        _after_burst(state, advice)
    elif state["resting"] is not None and at_ms < state["resting"]["due_ms"]:
        resting_page(state, advice)
    else:
        _next_burst(run, at_ms, advice, ends)


def _heating(state: "Readable", advice: "Advice") -> None:
    burning = state["burning"]
    advice["step"] = "burst"
    advice["say"] = {"code": "say.heating", "values": {}}
    advice["more"] = {"code": "more.then_" + burning["then"], "values": {}}
    advice["number"] = {"name": "due_ms", "value": burning["due_ms"]}
    advice["choices"] = [button("out_early", "burst_ended", {"started_ms": burning["started_ms"]})]
    advice["caution"] = {"word": "WARNING", "code": "caution.mitts"}


def _after_burst(state: "Readable", advice: "Advice") -> None:
    burning = state["burning"]
    advice["step"] = burning["then"]
    advice["say"] = {"code": "say." + burning["then"], "values": {}}
    advice["caution"] = {"word": "WARNING", "code": "caution.hot_bowl"}
    free = {"free": True, "started_ms": burning["started_ms"]}
    lumps = dict(free, free=False)
    if burning["then"] == "turn":
        advice["action"] = button("turned", "stirred", lumps)
        advice["choices"] = [button("stirs_freely", "stirred", free)]
    else:
        _stir(state, burning, advice, free, lumps)
    if burning.get("spot") and burning.get("spot_c") is None:
        _offer_spot(state, burning, advice)


def _stir(state: "Readable", burning: "Readable", advice: "Advice", free: "Document", lumps: "Document") -> None:
    advice["number"] = {"name": "stir_s", "value": SHOWN_STIR_S}
    if state["free"]:
        advice["say"] = {"code": "say.stir_read" if burning["read"] else "say.stir_well", "values": {}}
        advice["action"] = button("stirred", "stirred", free)
    else:
        advice["action"] = button("stirs_freely", "stirred", free)
        advice["choices"] = [button("lumps_left", "stirred", lumps)]


def _offer_spot(state: "Readable", burning: "Readable", advice: "Advice") -> None:
    """Before the turn or stir of an oven that is not known: how much hotter its hottest spot is, for who reads it."""
    expected_c, limit_c = burning["expected_c"], state["request"]["limit_c"]
    likely = {} if expected_c is None else {"likely_low": expected_c, "likely_high": max(expected_c, limit_c)}
    body = {"started_ms": burning["started_ms"]}
    typed = entry("spot_read", "surface_c", 0.0, 150.0, body=body, **likely)
    advice["more"] = {"code": "more.spot", "values": {}}
    advice["choices"].append({"code": "button.read_spot", "entry": typed})
    if len(advice["choices"]) > 1:
        # Beside a number there is room for one.
        advice["number"] = None


def resting_page(state: "Readable", advice: "Advice") -> None:
    advice["step"] = "rest"
    advice["say"] = {"code": "say.resting", "values": {}}
    advice["number"] = {"name": "due_ms", "value": state["resting"]["due_ms"]}
    advice["action"] = {"code": "button.read_now", "entry": read_entry(state, None)}


def read_entry(state: "Readable", now: "Readable | None") -> "Entry":
    request = state["request"]
    typed = entry(
        "read",
        "surface_c",
        0.0,
        150.0,
        last=state["last_c"],
        band_low=request["window_low_c"],
        band_high=request["window_high_c"],
        body={"seen": len(readings(state))},
    )
    if now is not None:
        typed["likely_low"], typed["likely_high"] = now["bulk_low_c"], now["bulk_high_c"]
    return typed


def estimate(run: "Readable", at_ms: float) -> "NextBurst | None":
    """The reply of melt.next_burst for a run at a time, a long pause until now counted as a rest; None if refused."""
    state = run["melt"]
    history = list(state["history"])
    paused_s = rested_s(state["last_at_ms"], at_ms)
    if paused_s is not None:
        history.append({"kind": "rest", "seconds_s": paused_s})
    try:
        asked: "Any" = dict(state["request"], history=history)
        now: "Any" = plan.next_burst(asked)
    except Problem:
        return None
    result: "NextBurst" = now
    return result


def _next_burst(
    run: "Readable", at_ms: float, advice: "Advice", ends: "tuple[Callable[..., Any], Callable[..., Any]]"
) -> None:
    state, (page, out) = run["melt"], ends
    now = estimate(run, at_ms)
    advice["melt"] = now
    if now is None or now["reason"]["code"] == "reason.step_too_coarse":
        _by_hand(state, now, advice, cold_button(out(run, state["last_c"]), state, state["last_c"]))
        return
    poured = cold_button(out(run, min(max(now["bulk_c"], 20.0), 150.0)), state, now["bulk_c"])
    if state["read_wanted"] or now["action"] == "read_again":
        _read(state, now, advice, poured)
    elif now["action"] == "ready":
        page(run, now, advice, poured)
        if now["reason"]["code"] == "reason.warmer_inside":
            # The reading on the keypad lay below the window.
            said = advice["say"]["code"]
            advice["say"] = {"code": WARMER_INSIDE.get(said, said), "values": {}}
    elif now["action"] == "burst":
        _burst(state, now, advice)
        if state["free"]:
            advice["choices"] = [{"code": "button.read_now", "entry": read_entry(state, now)}, poured]
    else:
        _too_warm(state, now, advice)


def cold_button(poured: "EventButton", state: "Readable", bulk_c: float | None) -> "EventButton":
    """The button that pours or fills: below the window it says what that costs."""
    if bulk_c is None or bulk_c >= state["request"]["window_low_c"]:
        return poured
    return copy_with(poured, code=COLD.get(poured["code"], poured["code"]))


def _by_hand(state: "Readable", now: "Readable | None", advice: "Advice", poured: "EventButton") -> None:
    """The page where mass or oven is outside what the model covers: the person decides by thermometer."""
    advice["step"] = "read"
    advice["say"] = {"code": "say.by_hand", "values": {}}
    advice["more"] = None if now is None else now["reason"]
    advice["caution"] = {"word": "WARNING", "code": "caution.spits"}
    advice["entry"] = read_entry(state, now)
    advice["choices"] = [poured]


def _read(state: "Readable", now: "Readable", advice: "Advice", poured: "EventButton") -> None:
    again = now["action"] == "read_again" and not state["read_wanted"]
    advice["step"] = "read"
    advice["say"] = {"code": "say.read_again" if again else "say.read", "values": {}}
    advice["more"] = now["reason"] if again else None
    advice["entry"] = read_entry(state, now)
    # A thermometer that has died must not hold up hot caramel; one that read nonsense must not let it be poured.
    by_eye: "list[Action]" = [] if now["reason"]["code"] == "reason.reading_off" else [poured]
    advice["choices"] = by_eye if again else [skip("read")]
    advice["caution"] = {"word": "NOTICE", "code": "caution.infrared"}


def _burst(state: "Readable", now: "Readable", advice: "Advice") -> None:
    first = not state["history"] and not state["free"]
    advice["step"] = "burst"
    advice["say"] = {"code": "say.first_burst" if first else "say.burst", "values": {"seconds_s": now["seconds_s"]}}
    if now["level_percent"] < 100:
        level = {name: now[name] for name in ("level_percent", "seconds_s")}
        advice["say"] = {"code": "say.burst_at_level", "values": level}
    advice["more"] = None if first else now["reason"]
    advice["number"] = {"name": "seconds_s", "value": now["seconds_s"]}
    body = {"seconds_s": now["seconds_s"], "advised_s": now["seconds_s"], "then": now["then"], "read": now["read"]}
    body.update(level_percent=now["level_percent"], spot=now["spot"])
    body["from_c"], body["expected_c"] = now["bulk_c"], now["expected_c"]
    body["low_c"], body["high_c"] = now["expected_low_c"], now["expected_high_c"]
    advice["action"] = button("start", "burst_started", body)
    advice["caution"] = {"word": "WARNING", "code": "caution.no_metal" if first else "caution.spits"}


def _too_warm(state: "Readable", now: "Readable", advice: "Advice") -> None:
    why = now["reason"]["code"]
    stop = "say.stop" if why == "reason.over_stop" else None
    too_warm_page(state, now, advice, stop, max(now["seconds_s"], 60.0), state["last_at_ms"])
    if why == "reason.near_top":
        advice["say"] = {"code": "say.rest_near_top", "values": {}}


def too_warm_page(
    state: "Readable", now: "Readable", advice: "Advice", stop: str | None, seconds_s: float, since_ms: float
) -> None:
    """The page over the window: off the heat and stirred; over the stop line the alarm rings too."""
    advice["step"] = "rest"
    advice["say"] = {"code": stop or "say.rest", "values": {}}
    advice["more"] = now["reason"]
    advice["number"] = {"name": "bulk_c", "value": now["bulk_c"], "low": now["bulk_low_c"], "high": now["bulk_high_c"]}
    advice["action"] = button("off_heat", "rested", {"seconds_s": seconds_s})
    advice["choices"] = [{"code": "button.read_now", "entry": read_entry(state, now)}]
    advice["caution"] = {"word": "WARNING", "code": "caution.no_water"}
    if stop:
        advice["clocks"] = [clock("too_hot", since_ms, since_ms, "too_hot")]


def melt_clocks(run: "Readable", step: str) -> "list[Clock]":
    """The clocks of a melt in an oven."""
    clocks, melt = [], run["melt"]
    burning, resting = melt["burning"], melt["resting"]
    # Whoever took the bowl out early stands beside it: nothing to ring for.
    if burning is not None and burning["due_ms"] >= burning["started_ms"] + 1000.0 * burning["seconds_s"]:
        clocks.append(clock(burning["then"], burning["started_ms"], burning["due_ms"], "stir"))
    # Whoever said "no reading" has answered it.
    if resting is not None and melt["read_wanted"]:
        clocks.append(clock("rest", resting["started_ms"], resting["due_ms"], "read"))
    return clocks
