"""Trays of clusters: how much lies on each, when its second deposit may be laid, how long a fill of the funnel lasts.

A tap says that a tray is full; between two taps caramel is taken to run out of the funnel at the planned pace.
"""

from . import fields, funnel

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import ClusterSize


# A fill is as warm as believed within so much (standard deviation; where a melt says nothing, and at least; assumed).
FILL_SD_K, LEAST_SD_K = 1.2, 0.8
# What is poured into a funnel is so much cooler there (assumed).
POURING_LOSS_K = 0.7
# The clock of a fill must not ring too late: the fill is taken to be so many standard deviations cooler, and to lose
# this many times the heat (the 1 % point of a funnel's loss known to a fifth, assumed). At 3.8 deviations and 1.8
# times, fills of narrow windows would be heated again without end (simulated benches).
SAFE_TEMP_SD, SAFE_LOSS_FACTOR = 3.4, 1.6
# The same for a tray that would turn cold if the caramel were heated again first (assumed).
LIKELY_TEMP_SD, LIKELY_LOSS_FACTOR = 2.6, 1.3
# A bowl said to be ready is mostly so much warmer than the low end of its window (assumed, by simulated kitchens).
FRESH_BOWL_K = 1.0
# Forecasts take a fresh fill to be so many standard deviations cooler than that (assumed).
PLANNED_TEMP_SD = 2.8
# Where a fresh fill is surely warm for no longer than this, no other is: it is laid for so long, and while it is likely
# warm enough; the plan says so (assumed).
SHORTEST_FILL_S = 20.0
# A fill may be so many times the planned one where that is all there is, so that no small rest stays in the bowl
# (assumed; a quarter is free).
MOST_FILL = 1.2
# Less than this is not heated again (the melt's model reaches no further).
LEAST_BOWL_KG = 0.05
# A funnel that waits empties so slowly (s for all of it), as far as its clock goes.
WAITING_EMPTIES_IN_S = 36000.0


def weighed_kg(run: "Readable") -> float:
    """What comes out of the bowl of what was weighed in, once the plan's residue stays there."""
    bowl_kg = run["planned"]["caramel_kg"] if run["weighed_kg"] is None else run["weighed_kg"]
    result: float = bowl_kg * run["cluster"]["given"]
    return result


def next_fill_kg(state: "Readable", all_kg: float) -> float:
    """What the funnel is filled with of all there is: a planned fill, or all where that is a little more; what stays in
    the bowl is enough to be heated again."""
    full_kg: float = state["full_kg"]
    most_kg: float = state.get("most_fill_kg") or MOST_FILL * full_kg
    return all_kg if all_kg <= most_kg else min(full_kg, all_kg - LEAST_BOWL_KG)


def on_tray(state: "Readable", tray: int) -> int:
    """How many clusters a tray (from 0) holds; one more than planned is taken for a full one."""
    left = sum(row["clusters"] for row in state["sizes"]) - tray * state["per_tray"]
    result: int = state["per_tray"] if left <= 0 else min(state["per_tray"], left)
    return result


def sizes_on(state: "Readable", tray: int) -> "list[ClusterSize]":
    """The sizes on a tray (from 0) in laying order, as the plan has them; one more than planned holds the last size."""
    found: "list[Any]" = []
    before, left = tray * state["per_tray"], on_tray(state, tray)
    for row in state["sizes"]:
        number = min(left, max(0, row["clusters"] - before))
        before, left = max(0, before - row["clusters"]), left - number
        if number:
            found.append(dict(row, clusters=number))
    return found or [dict(state["sizes"][-1], clusters=left)]


def equal_trays(state: "Readable") -> "list[Document]":
    """[{trays, sizes}]: neighbouring trays that hold the same sizes, in laying order; [] if there is one size only."""
    trays = state["trays"] if len(state["sizes"]) > 1 else 0
    every = [sizes_on(state, tray) for tray in range(trays)]
    first = [tray for tray in range(trays) if tray == 0 or every[tray] != every[tray - 1]]
    return [{"trays": end - tray, "sizes": every[tray]} for tray, end in zip(first, first[1:] + [trays])]


def tray_kg(state: "Readable", task: str, tray: int) -> float:
    """What one deposit on each cluster of a tray weighs: the first ones for "lay", else the second ones."""
    if task != "lay":
        second_kg: float = on_tray(state, tray) * state["second_kg"]
        return second_kg
    result: float = sum(row["clusters"] * row["deposit_kg"] for row in sizes_on(state, tray))
    return result


def laying_s(state: "Readable", tray: int) -> float:
    """How long laying a tray once takes at the planned pace."""
    result: float = state["tray_s"] * on_tray(state, tray) / state["per_tray"]
    return result


def window_ms(state: "Readable", tray: int) -> tuple[float, float]:
    """(from, to): when the second deposit of a tray (from 0) may begin, in corrected ms.

    At the planned pace every row then waits as long as the first one. Where laying was held up, the rows after that
    are younger: the last one is to be tacky when the second deposits get there.
    """
    laid, second = state["laid"][tray], state["second"]
    from_ms, to_ms = (1000.0 * state["tack"] * second[name] for name in ("from_s", "to_s"))
    held_ms = max(0.0, laid["laid_ms"] - laid["began_ms"] - 1000.0 * laying_s(state, tray))
    return laid["began_ms"] + held_ms + from_ms, laid["began_ms"] + to_ms


def pace_kg_s(state: "Readable", task: str, tray: int) -> float:
    """What runs out of the funnel in kg/s while a tray is laid; 0.0 while nothing is."""
    return tray_kg(state, task, tray) / max(1.0, laying_s(state, tray)) if task in ("lay", "second") else 0.0


def run_out_kg(state: "Readable", next_task: tuple[str, int, float], at_ms: float) -> float:
    """What has run out of the funnel since its last event, in kg; never more than the tray still takes.

    next_task: as `schedule.next_task`.
    """
    fill, (task, tray, from_ms) = state["fill"], next_task
    # Whoever lays stops when the clock of the fill rings: nothing runs out after it.
    took_s = max(0.0, min(at_ms, fill["due_ms"]) - max(fill["at_ms"], from_ms)) / 1000.0
    whole_kg = tray_kg(state, task, tray) if task in ("lay", "second") else 0.0
    still_kg = max(0.0, whole_kg - (state["base_kg"] - state["bowl_kg"] - fill["kg"]))
    result: float = min(fill["kg"], still_kg, took_s * pace_kg_s(state, task, tray))
    return result


def cooled_c(state: "Readable", ran_kg: float, at_ms: float, sure: bool) -> float:
    """How warm the fill is in °C once so much has run out of it: as believed, or on the safe side."""
    fill, request = state["fill"], state["request"]
    took_s, start_c = (at_ms - fill["at_ms"]) / 1000.0, fill["sure_c"] if sure else fill["now_c"]
    pace = max(ran_kg / max(1.0, took_s), fill["kg"] / WAITING_EMPTIES_IN_S)
    request = dict(_with_faster_loss(request) if sure else request, pace_kg_s=pace)
    return funnel.cooled_c(request, start_c, fill["kg"], took_s)


def safe_fill_s(fill_request: "Readable", melt_request: "Readable", full_kg: float) -> tuple[float, float]:
    """How long a whole fill fresh from the bowl stays in its window in s, on the safe side: (while it empties, as
    `funnel.warm_s`; while it stands)."""
    fresh_c = melt_request["window_low_c"] + FRESH_BOWL_K - PLANNED_TEMP_SD * FILL_SD_K
    request = _with_faster_loss(fill_request, LIKELY_LOSS_FACTOR)
    standing = dict(request, pace_kg_s=fields.FILL["pace_kg_s"]["low"])
    return funnel.warm_s(request, fresh_c, full_kg), funnel.seconds(standing, fresh_c, full_kg)


def whole_fill_s(state: "Readable") -> float:
    """How long a whole fresh fill is laid from, in s: as long as it stays in its window, and for a few deposits."""
    result: float = max(SHORTEST_FILL_S, state["fresh_s"])
    return result


def fresh_fill_s(state: "Readable", kg: float) -> float:
    """How long a fresh fill of kg stays in its window in s: in proportion to its volume over its surface."""
    result: float = whole_fill_s(state) * (min(kg, state["full_kg"]) / state["full_kg"]) ** (1.0 / 3.0)
    return result


def fills_are_short(state: "Readable") -> bool:
    """Whether no fill of this bench is sure to stay in its window for more than a few deposits."""
    return whole_fill_s(state) <= SHORTEST_FILL_S


def _with_faster_loss(request: "Readable", loss_factor: float = SAFE_LOSS_FACTOR) -> "Document":
    return dict(request, h_w_m2k=loss_factor * request["h_w_m2k"])


def fill_lasts_s(state: "Readable", sure_c: float, kg: float, loss_factor: float = SAFE_LOSS_FACTOR) -> float:
    """How long a fill of kg at sure_c stays in its window in s, losing loss_factor times the planned heat.

    It empties at the planned pace; where it would be empty before it is too cool, it is taken to stand and wait.
    """
    request, kg = _with_faster_loss(state["request"], loss_factor), max(1e-3, kg)
    found_s = funnel.seconds(request, sure_c, kg)
    if found_s < kg / request["pace_kg_s"] - 1.0:
        return found_s
    return funnel.seconds(dict(request, pace_kg_s=min(request["pace_kg_s"], kg / WAITING_EMPTIES_IN_S)), sure_c, kg)


def likely_fill_s(state: "Readable", now_c: float, sd_k: float, kg: float) -> float:
    """The same with a smaller margin: how long a fill believed to be at now_c within sd_k likely lasts."""
    return fill_lasts_s(state, now_c - LIKELY_TEMP_SD * sd_k, kg, LIKELY_LOSS_FACTOR)
