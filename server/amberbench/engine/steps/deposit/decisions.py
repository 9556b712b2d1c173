"""What is decided at an event of the funnel: what is in it, how warm that is believed to be, when its clock rings.

Every event sets these again. The clock uses a safe estimate: cooler than believed, losing heat faster than planned.
"""

import math

from ...core.problems import Problem
from ..melt import oven as melt_oven
from ..melt import plan as melt
from . import schedule, trays
from .trays import FILL_SD_K, LEAST_BOWL_KG, LEAST_SD_K, SAFE_TEMP_SD

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable

# A reading into the funnel scatters so much (standard deviation; from memory, as of the bowl); what a fill loses is
# known to a fifth (assumed): one factor for all of its time, so its part of the error grows with what the fill has lost
# (`lost_k`, K), however many events come in between.
READ_SD_K, LOSS_SD = 2.0, 0.2
# A reading so many standard deviations below belief is taken at its word: a fill may have been left to stand, but it is
# never much warmer than it was filled (assumed).
OUTLIER_SD = 3.0
# Less than this share of a tray laid is none: the tap came late (assumed).
TRAY_BEGUN_SHARE = 0.05

# Less than this does not go back into the bowl (rounding).
NOTHING_KG = 1e-3


def copied(state: "Readable") -> "Document":
    """A copy of the state of the clusters, to work on."""
    return dict(state, fill=None if state["fill"] is None else dict(state["fill"]))


def decided(state: "Document") -> "Document":
    """What is decided of the funnel and the bowl, with the state as it is after an event; sets the fill's clock."""
    set_clock(state)
    return {name: state[name] for name in ("fill", "bowl_kg", "base_kg", "begun_ms", "under_way")}


def advance_to(state: "Document", at_ms: float) -> None:
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


def set_clock(state: "Document") -> None:
    """Sets the fill's clock: when it must be read, topped up or emptied (ms)."""
    fill = state["fill"]
    if fill is not None:
        fill["thick_ms"] = fill["at_ms"] + 1000.0 * trays.fill_lasts_s(state, fill["sure_c"], fill["kg"])
        likely_s = trays.likely_fill_s(state, fill["now_c"], fill["sd_k"], fill["kg"])
        fill["likely_ms"] = fill["at_ms"] + 1000.0 * likely_s
        fill["due_ms"], fill["why"] = schedule.due_ms(state)


def _filled(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    state = copied(run["cluster"])
    if state["melted"] is None:
        state["bowl_kg"] = state["base_kg"] = trays.weighed_kg(run)
    advance_to(state, at_ms)
    had = state["fill"] or {"kg": 0.0, "sd_k": 0.0}
    had_kg, had_sd_k = had["kg"], had["sd_k"]
    kg = max(body["kg"], had_kg, NOTHING_KG)
    bowl_sd_k = FILL_SD_K if body["sd_k"] is None else max(LEAST_SD_K, body["sd_k"])
    sd_k = had_sd_k + (kg - had_kg) / kg * (bowl_sd_k - had_sd_k)
    left_kg = max(0.0, state["bowl_kg"] - (kg - had_kg))
    state["fill"] = {
        "at_ms": at_ms,
        "filled_ms": at_ms,
        "seen_ms": at_ms,
        "kg": kg,
        "now_c": body["bulk_c"],
        "filled_c": max(body["bulk_c"], had.get("now_c", body["bulk_c"])),
        "sd_k": sd_k,
        "lost_k": had_kg / kg * had.get("lost_k", 0.0),
        "sure_c": body["bulk_c"] - SAFE_TEMP_SD * sd_k,
    }
    if state["under_way"] is None:
        state["begun_ms"], state["base_kg"] = at_ms, left_kg + kg
    state["bowl_kg"] = left_kg
    bowl_c = body["bulk_c"] if body["bowl_c"] is None else body["bowl_c"]
    return dict(decided(state), melt=_in_bowl(run["melt"], left_kg, bowl_c, bowl_sd_k))


def _in_bowl(melt_state: "Readable", kg: float, bulk_c: float, sd_k: float) -> "Document":
    """The melt that begins with what is in the bowl (kg), believed to be at bulk_c (standard deviation sd_k, K).

    The oven keeps the power that the melt so far has shown.
    """
    mass_kg = max(LEAST_BOWL_KG, kg)
    power_w, power_sd_w = _shown(melt_state, mass_kg)
    return {"mass_kg": mass_kg, "start_c": bulk_c, "start_sd_k": sd_k, "power_w": power_w, "power_sd_w": power_sd_w}


def _shown(melt_state: "Readable", kg: float) -> tuple[float | None, float | None]:
    """The power (W) that this melt has shown, scaled to kg of caramel, and its standard deviation; None: as before."""
    request, history = melt_state["request"], melt_state["history"]
    oven, kinds = request["oven"], [one["kind"] for one in history]
    factor = melt_oven.load_factor(kg) / melt_oven.load_factor(request["mass_kg"])
    if "burst" not in kinds or "reading" not in kinds:
        return (None if oven["power_w"] is None else factor * oven["power_w"]), None
    try:
        asked: "Any" = dict(request, history=history)
        now = melt.next_burst(asked)
    except Problem:
        return None, None
    return factor * now["power_w"], factor * now["power_sd_w"]


def _read(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    state = copied(run["cluster"])
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
    return decided(state)


def _ended(run: "Readable", body: "Readable", at_ms: float) -> "Document":
    """What is left goes back into the bowl, to be heated again or topped up with it."""
    state, melted = copied(run["cluster"]), None
    advance_to(state, at_ms)
    sd_k, state["fill"] = state["fill"]["sd_k"], None
    if body["left_kg"] > NOTHING_KG:
        state["bowl_kg"] += body["left_kg"]
        melted = _in_bowl(run["melt"], state["bowl_kg"], body["bulk_c"], sd_k)
    if state["under_way"] is None:
        state["base_kg"], state["begun_ms"] = state["bowl_kg"], at_ms
    return dict(decided(state), melt=melted)


DECIDES = {"filled": _filled, "fill_read": _read, "fill_ended": _ended}
