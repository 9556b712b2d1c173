"""Folds of the funnel's events: how much caramel is in it, how warm it is believed to be, when its clock rings.

Every event sets these again. The clock uses a safe estimate: cooler than believed, losing heat faster than planned.
"""

import math

from ...core import duplicates
from ...core.problems import Problem
from ...core.unfit import Unfit, part
from ..melt import fold as melt_fold
from ..melt import oven as melt_oven
from ..melt import plan as melt
from ..melt.fold import melting
from . import schedule, trays
from .schedule import LEAST_BOWL_KG
from .trays import FILL_SD_K, LEAST_SD_K, SAFE_TEMP_SD

MOST_FILLS, MOST_READINGS = 120, 120
# A reading into the funnel scatters so much (standard deviation; from memory, as of the bowl); what a fill loses is
# known to a fifth (assumed): one factor for all of its time, so its part of the error grows with what the fill has lost
# (`lost_k`, K), however many events come in between.
READ_SD_K, LOSS_SD = 2.0, 0.2
# A reading so many standard deviations below belief is taken at its word: a fill may have been left to stand, but it is
# never much warmer than it was filled (assumed).
OUTLIER_SD = 3.0
# Less than this share of a tray laid is none: the tap came late (assumed).
TRAY_BEGUN_SHARE = 0.05


def laying(run):
    """The state of the clusters while they are laid."""
    part(run, "cluster")
    melting(run)
    return run["cluster"]


def advance_to(state, at_ms):
    """Brings the fill up to a time in ms, before the next event is added: its kg and its temperatures."""
    fill = state["fill"]
    if fill is None:
        return
    task = schedule.next_task(state, at_ms)
    ran_kg = trays.run_out_kg(state, task, at_ms)
    warm_c = [trays.cooled_c(state, ran_kg, at_ms, sure) for sure in (False, True)]
    before_k = fill.get("lost_k", 0.0)  # runs that were kept before this was reckoned have none
    fill["lost_k"] = before_k + fill["now_c"] - warm_c[0]
    more = LOSS_SD * LOSS_SD * (fill["lost_k"] * fill["lost_k"] - before_k * before_k)
    fill["sd_k"] = math.sqrt(fill["sd_k"] * fill["sd_k"] + more)
    fill["now_c"], fill["sure_c"] = warm_c
    fill["kg"], fill["at_ms"] = fill["kg"] - ran_kg, at_ms
    done_kg = state["base_kg"] - state["bowl_kg"] - fill["kg"]
    if task[0] in ("lay", "second") and done_kg > TRAY_BEGUN_SHARE * trays.tray_kg(state, task[0], task[1]):
        state["under_way"] = task[0]


def set_clock(state):
    """Sets the fill's clock: when it must be read, topped up or emptied (ms)."""
    fill = state["fill"]
    if fill is not None:
        fill["thick_ms"] = fill["at_ms"] + 1000.0 * trays.fill_lasts_s(state, fill["sure_c"], fill["kg"])
        likely_s = trays.likely_fill_s(state, fill["now_c"], fill["sd_k"], fill["kg"])
        fill["likely_ms"] = fill["at_ms"] + 1000.0 * likely_s
        fill["due_ms"], fill["why"] = schedule.due_ms(state)


def _fill(run, body, at_ms):
    state = laying(run)
    duplicates.refuse_same_tap(body, state["fills"])
    if state["fills"] >= MOST_FILLS:
        raise Unfit("too_many")
    melt_state = run["melt"]
    if state["melted"] is None:
        state["melted"] = {"request": melt_state["request"], "history": melt_state["history"]}
        state["filled_ms"] = at_ms
        state["bowl_kg"] = state["base_kg"] = trays.weighed_kg(run)
    advance_to(state, at_ms)
    had = state["fill"] or {"kg": 0.0, "sd_k": 0.0}
    had_kg, had_sd_k = had["kg"], had["sd_k"]
    kg = max(body["kg"], had_kg, 1e-3)
    bowl_sd_k = FILL_SD_K if body["sd_k"] is None else max(LEAST_SD_K, body["sd_k"])
    sd_k = had_sd_k + (kg - had_kg) / kg * (bowl_sd_k - had_sd_k)
    left = max(0.0, state["bowl_kg"] - (kg - had_kg))
    state["fills"] += 1
    state["fill"] = {
        "at_ms": at_ms,
        "filled_ms": at_ms,
        "seen_ms": at_ms,
        "kg": kg,
        "now_c": body["bulk_c"],
        "filled_c": max(body["bulk_c"], had.get("now_c", body["bulk_c"])),
        "sd_k": sd_k,
        "lost_k": had_kg / kg * had.get("lost_k", 0.0),
    }
    state["fill"]["sure_c"] = body["bulk_c"] - SAFE_TEMP_SD * sd_k
    if state["under_way"] is None:
        state["begun_ms"], state["base_kg"] = at_ms, left + kg
    _in_bowl(run, left, body["bulk_c"] if body["bowl_c"] is None else body["bowl_c"], bowl_sd_k, at_ms)
    set_clock(state)


def _in_bowl(run, kg, bulk_c, sd_k, at_ms):
    """Begins a new melt with what is in the bowl (kg), believed to be at bulk_c (standard deviation sd_k, K).

    The oven keeps the power that the melt so far has shown.
    """
    melt_state, state = run["melt"], run["cluster"]
    oven = _shown(melt_state, max(LEAST_BOWL_KG, kg))
    state["bowl_kg"] = kg
    melt_state["past"] = melt_fold.readings(melt_state)
    melt_state["history"] = []
    melt_state["request"] = dict(
        melt_state["request"], mass_kg=max(LEAST_BOWL_KG, kg), start_c=bulk_c, start_sd_k=sd_k, oven=oven
    )
    melt_state["burning"] = melt_state["resting"] = None
    melt_state["free"], melt_state["read_wanted"], melt_state["last_at_ms"] = True, False, at_ms


def _shown(melt_state, kg):
    """The oven with the power that this melt has shown, scaled to kg of caramel."""
    request, history = melt_state["request"], melt_state["history"]
    oven, kinds = request["oven"], [one["kind"] for one in history]
    factor = melt_oven.load_factor(kg) / melt_oven.load_factor(request["mass_kg"])
    if "burst" not in kinds or "reading" not in kinds:
        return oven if oven["power_w"] is None else dict(oven, power_w=factor * oven["power_w"])
    try:
        now = melt.next_burst(dict(request, history=history))
    except Problem:
        return oven
    return dict(oven, power_w=factor * now["power_w"], power_sd_w=factor * now["power_sd_w"])


def _read(run, body, at_ms):
    state = laying(run)
    if state["fill"] is None:
        raise Unfit("funnel_empty")
    if len(state["readings"]) >= MOST_READINGS:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["readings"], "surface_c")
    state["readings"].append({"at_ms": at_ms, "surface_c": body["surface_c"]})
    advance_to(state, at_ms)
    fill = state["fill"]
    fill["seen_ms"] = at_ms
    unsure, read = fill["sd_k"] * fill["sd_k"], READ_SD_K * READ_SD_K
    off_k = body["surface_c"] - fill["now_c"]
    if off_k < 0.0 and off_k * off_k > OUTLIER_SD * OUTLIER_SD * (unsure + read):
        unsure = off_k * off_k - read
    gain = unsure / (unsure + read)
    fill["now_c"] += gain * off_k
    fill["lost_k"] *= 1.0 - gain
    fill["sd_k"] = math.sqrt(unsure * read / (unsure + read))
    fill["sure_c"] = fill["now_c"] - SAFE_TEMP_SD * fill["sd_k"]
    set_clock(state)


def _end(run, body, at_ms):
    """What is left goes back into the bowl, to be heated again or topped up with it."""
    state = laying(run)
    if state["fill"] is None:
        raise Unfit("funnel_empty")
    duplicates.refuse_same_tap(body, state["fills"])
    advance_to(state, at_ms)
    sd_k, state["fill"] = state["fill"]["sd_k"], None
    if body["left_kg"] > 1e-3:
        _in_bowl(run, state["bowl_kg"] + body["left_kg"], body["bulk_c"], sd_k, at_ms)
    if state["under_way"] is None:
        state["base_kg"], state["begun_ms"] = state["bowl_kg"], at_ms


FOLDS = {"filled": _fill, "fill_read": _read, "fill_ended": _end}
