"""Trays of clusters as they were told: how much lies on each, when its second deposit may come, what is in the funnel.

A tap tells that a tray is full; between two taps what runs out of the funnel is reckoned at the planned pace.
"""

from . import funnel

# A fill is as warm as believed within so much (standard deviation; where a melt says nothing, and at least; assumed).
FILL_SD_K, LEAST_SD_K = 1.2, 0.8
# What is poured into a funnel is so much cooler there (assumed).
POURED_K = 0.7
# The clock of a fill must not ring too late: it is reckoned as so many standard deviations cooler, and as losing this
# many times the heat (the 1 % point of a funnel's loss known to a fifth, assumed). At 3.8 deviations and 1.8 times,
# fills of narrow windows would be heated again without end (simulated benches).
SURE, QUICKER = 3.4, 1.6
# The same for a tray that would turn cold if the caramel were heated again first (assumed).
LIKELY, LIKELY_QUICKER = 2.6, 1.3
# A bowl that is said to be ready is mostly so much over the low end of its window (assumed, by simulated kitchens).
FRESH_K = 1.0
# What lies ahead is reckoned with a fill so many standard deviations cooler than that (assumed).
PLANS = 2.8
# Where a fresh fill is surely warm for no longer than this, no other is: it is laid for so long, and while it is likely
# warm enough; the plan says so (assumed).
SHORT_S = 20.0
# A funnel that waits empties so slowly (s for all of it), as far as its clock goes.
WAITS_S = 36000.0


def weighed_kg(run):
    """What comes out of the bowl of what was weighed in, once the plan's residue stays there."""
    bowl_kg = run["planned"]["caramel_kg"] if run["weighed_kg"] is None else run["weighed_kg"]
    return bowl_kg * run["cluster"]["given"]


def seconds(state):
    """How many trays have their second deposit."""
    return len([one for one in state["laid"] if one["second_ms"] is not None])


def freed(state):
    """How many trays are free of their paper."""
    return len([one for one in state["laid"] if one["freed_ms"] is not None])


def on_tray(state, tray):
    """How many clusters a tray (from 0) holds; one more than planned is taken for a full one."""
    left = sum(row["clusters"] for row in state["sizes"]) - tray * state["per_tray"]
    return state["per_tray"] if left <= 0 else min(state["per_tray"], left)


def sizes_on(state, tray):
    """The sizes on a tray (from 0) in laying order, as the plan has them; one more than planned holds the last size."""
    found, before, left = [], tray * state["per_tray"], on_tray(state, tray)
    for row in state["sizes"]:
        number = min(left, max(0, row["clusters"] - before))
        before, left = max(0, before - row["clusters"]), left - number
        if number:
            found.append(dict(row, clusters=number))
    return found or [dict(state["sizes"][-1], clusters=left)]


def alike(state):
    """[{trays, sizes}]: neighbouring trays that hold the same, in laying order; [] where all deposits are alike."""
    trays = state["trays"] if len(state["sizes"]) > 1 else 0
    every = [sizes_on(state, tray) for tray in range(trays)]
    first = [tray for tray in range(trays) if tray == 0 or every[tray] != every[tray - 1]]
    return [{"trays": end - tray, "sizes": every[tray]} for tray, end in zip(first, first[1:] + [trays])]


def tray_kg(state, task, tray):
    """What one deposit on each cluster of a tray weighs: the first ones for "lay", else the second ones."""
    if task != "lay":
        return on_tray(state, tray) * state["second_kg"]
    return sum(row["clusters"] * row["deposit_kg"] for row in sizes_on(state, tray))


def span_s(state, tray):
    """How long laying a tray once takes at the planned pace."""
    return state["tray_s"] * on_tray(state, tray) / state["per_tray"]


def window_ms(state, tray):
    """(from, to): when the second deposit of a tray (from 0) may begin, in corrected ms.

    At the planned pace every row then waits as long as the first one. Where laying was held up, the rows after that
    are younger: the last one is to be tacky when the second deposits get there.
    """
    laid, second = state["laid"][tray], state["second"]
    from_ms, to_ms = (1000.0 * state["tack"] * second[name] for name in ("from_s", "to_s"))
    held_ms = max(0.0, laid["laid_ms"] - laid["began_ms"] - 1000.0 * span_s(state, tray))
    return laid["began_ms"] + held_ms + from_ms, laid["began_ms"] + to_ms


def pace_kg_s(state, task, tray):
    """What runs out of the funnel in kg/s while a tray is laid; 0.0 while nothing is."""
    return tray_kg(state, task, tray) / max(1.0, span_s(state, tray)) if task in ("lay", "second") else 0.0


def run_out_kg(state, turn, at_ms):
    """What has run out of the funnel since it was last told of; never more than the tray still takes."""
    fill, (task, tray, from_ms) = state["fill"], turn
    # What rings is heeded: nothing is laid any more.
    took_s = max(0.0, min(at_ms, fill["due_ms"]) - max(fill["at_ms"], from_ms)) / 1000.0
    whole_kg = tray_kg(state, task, tray) if task in ("lay", "second") else 0.0
    still_kg = max(0.0, whole_kg - (state["base_kg"] - state["bowl_kg"] - fill["kg"]))
    return min(fill["kg"], still_kg, took_s * pace_kg_s(state, task, tray))


def cooled_c(state, ran_kg, at_ms, sure):
    """How warm the fill is in °C once so much has run out of it: as believed, or on the safe side."""
    fill, request = state["fill"], state["request"]
    took_s, start_c = (at_ms - fill["at_ms"]) / 1000.0, fill["sure_c"] if sure else fill["now_c"]
    pace = max(ran_kg / max(1.0, took_s), fill["kg"] / WAITS_S)
    request = dict(_quicker(request) if sure else request, pace_kg_s=pace)
    return funnel.cooled_c(request, start_c, fill["kg"], took_s)


def safe_s(fill_request, melt_request, full_kg):
    """How long a whole fill fresh from the bowl stays in its window in s, on the safe side; standing, where it would be
    empty before: then it may be longer than the time it takes to empty."""
    fresh_c = melt_request["window_low_c"] + FRESH_K - PLANS * FILL_SD_K
    return lasts_s({"request": fill_request}, fresh_c, full_kg, LIKELY_QUICKER)


def fresh_s(state, kg):
    """The same of a fill of kg: as its volume over its surface."""
    return state["fresh_s"] * (min(kg, state["full_kg"]) / state["full_kg"]) ** (1.0 / 3.0)


def short(state):
    """Whether no fill of this bench is sure to stay in its window for more than a few deposits."""
    return state["fresh_s"] <= SHORT_S


def _quicker(request, quicker=QUICKER):
    return dict(request, h_w_m2k=quicker * request["h_w_m2k"])


def lasts_s(state, sure_c, kg, quicker=QUICKER):
    """How long a fill stays in its window in s, losing so many times the heat: laid at the pace, or waiting."""
    request, kg = _quicker(state["request"], quicker), max(1e-3, kg)
    found_s = funnel.seconds(request, sure_c, kg)
    if found_s < kg / request["pace_kg_s"] - 1.0:
        return found_s
    return funnel.seconds(dict(request, pace_kg_s=min(request["pace_kg_s"], kg / WAITS_S)), sure_c, kg)


def likely_s(state, now_c, sd_k, kg):
    """The same, with less on the safe side."""
    return lasts_s(state, now_c - LIKELY * sd_k, kg, LIKELY_QUICKER)
