"""How the bench goes about a job of clusters: the melt, fills of the funnel, reheats, and the time they take."""

import math

from ...core.check import is_above, is_below
from ...core.problems import Problem
from ...steps.deposit import fields as deposit_fields
from ...steps.deposit import funnel, schedule, trays
from ...steps.melt import plan as melt
from ...steps.melt.fields import MELT
from .. import capacity, subplans
from . import tray_cooling
from .job import ClusterJob

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import Input


MELT_AS_IS = (
    "start_c", "room_c", "material", "step_s", "oven", "vessel", "window_low_c", "window_high_c", "limit_c", "warn_c",
    "stop_c",
)  # fmt: skip
# The bowl is melted to the warmest K of the window, so that a fill lasts, and to the warmer half of a narrow one: an
# oven needs some room (assumed).
BOWL_BELOW_HIGH_K = 4.0
# From so many reheats on a plan says what they cost (assumed).
MANY_REHEATS = 2
FILL_AS_IS = ("material", "room_c", "window_low_c", "limit_c")


def bowl_and_funnel(request: "Readable", job: "ClusterJob") -> "tuple[Document, list[Input]]":
    """({what bowl and funnel do: melt, melt_request, fill_request, deposits_per_fill, fill_kg, most_fill_kg, fill_s,
    safe_s, stands_s}, input rows of the melt)."""
    melt_request, melted = _melted(request, job)
    if job.pour_c <= request["room_c"] + tray_cooling.LAID_ABOVE_ROOM_K:
        highest_c = job.pour_c - tray_cooling.LAID_ABOVE_ROOM_K
        raise Problem("room_c", "room_too_warm_for_deposits", request["room_c"], high=highest_c, unit="°C")
    fill_request = _fill_request(request, job)
    rows, melted["inputs"] = melted["inputs"], []
    lasts = trays.safe_fill_s(fill_request, melt_request, job.usual_fill_kg)
    return {
        "melt": melted,
        "melt_request": melt_request,
        "fill_request": fill_request,
        "deposits_per_fill": max(1, int(job.fill_kg / (job.deposits_kg / job.deposits) + 1e-9)),
        "fill_kg": job.fill_kg,
        "most_fill_kg": job.most_fill_kg,
        "fill_s": funnel.seconds(fill_request, job.pour_c, job.usual_fill_kg),
        "safe_s": lasts[0],
        "stands_s": lasts[1],
    }, rows


def _melted(request: "Readable", job: "ClusterJob") -> "tuple[Document, Document]":
    """(request to melt.plan, its reply): to the warm end of the window, or to all of it if the oven is too weak."""
    melt.refuse_lines(request)
    names = {"mass_kg": job.field}
    try:
        wanted = _melt_request(request, job, _warm_c(request, job))
        return wanted, subplans.call_renamed(melt.plan, wanted, names)
    except Problem as problem:
        if problem.code != "oven_too_weak":
            raise
    wanted = _melt_request(request, job, request["window_low_c"])
    return wanted, subplans.call_renamed(melt.plan, wanted, names)


def _warm_c(request: "Readable", job: "ClusterJob") -> float:
    """The warm end of the window, to which the bowl is melted."""
    result: float = max(job.pour_c, request["window_high_c"] - BOWL_BELOW_HIGH_K)
    return result


def _melt_request(request: "Readable", job: "ClusterJob", low_c: float) -> "Any":
    """From low_c to the top of the window, and to so much above that as it loses on its way into the funnel."""
    wanted = {name: request[name] for name in MELT_AS_IS}
    wanted["mass_kg"], wanted["window_low_c"] = capacity.to_melt(job.caramel_kg), low_c
    wanted["window_high_c"] = min(request["window_high_c"] + trays.POURING_LOSS_K, request["warn_c"])
    return subplans.checked_part(MELT, wanted, request, {"mass_kg": job.field})


def _fill_request(request: "Readable", job: "ClusterJob") -> "Document":
    """What deposit.fill needs besides a reading and a weight; the pace is that of the mean deposit."""
    found = {name: request[name] for name in FILL_AS_IS}
    found["h_w_m2k"] = request["funnel"]["h_w_m2k"]
    pace = deposit_fields.FILL["pace_kg_s"]
    found["pace_kg_s"] = max(pace["low"], job.deposits_kg / job.deposits * job.per_s)
    return found


def sizes(job: "ClusterJob") -> "list[Document]":
    """[{clusters, deposit_kg, spread_m}] of every size, in laying order."""
    wide_m = job.request["spread_m"]
    return [
        {"clusters": number, "deposit_kg": kg, "spread_m": tray_cooling.spread_m(wide_m, kg / job.heaviest_kg)}
        for number, kg in job.rows
    ]


def bench(
    job: "ClusterJob", fill_request: "Readable", lasts: tuple[float, float], second: "Readable | None", full: int
) -> "Document":
    """The state of a bench, as `fold.opened`, as far as a forecast needs it; lasts: (safe_s, stands_s) of a fill."""
    safe_s, stands_s = lasts
    emptied = safe_s >= job.fill_kg / fill_request["pace_kg_s"]
    return {
        "request": fill_request,
        "full_kg": job.fill_kg,
        "most_fill_kg": job.most_fill_kg,
        "fresh_s": max(trays.SHORTEST_FILL_S, stands_s if emptied else safe_s),
        "tray_s": full / job.per_s,
        "per_tray": full,
        "trays": full,
        "sizes": sizes(job),
        "all_kg": job.deposits_kg,
        "second_kg": job.request["second_kg"],
        "second": second,
        "tack": 1.0,
        "laid": [],
    }


def tray_size_and_fills(job: "ClusterJob", bench: "Document", each_fill: int) -> "tuple[Document, list[Document]]":
    """(what trays hold and how they are laid: per_tray, trays, tray_s, fills, reheats, laying_s, rest_kg; warnings): no
    more on a tray than can be laid again in time. each_fill: deposits that a fill gives."""
    full = number = held = bench["per_tray"]
    if bench["second"] is not None:
        held = schedule.most_on_tray(bench)
        # Alike, so that no small rest has to be kept warm for the last one.
        number = min(full, math.ceil(job.clusters / math.ceil(job.clusters / held)))
    found = {"per_tray": number, "trays": math.ceil(job.clusters / number), "tray_s": number / job.per_s}
    bench.update(found)
    fills, rest_kg, laying_s = schedule.count_fills(bench)
    # What is less than a deposit goes back into the bowl with each fill.
    more = max(0, math.ceil(job.deposits / each_fill) - fills)
    found.update({"fills": fills + more, "reheats": fills + more - 1, "rest_kg": rest_kg})
    found["laying_s"] = laying_s + more * schedule.REHEAT_S
    warnings: "list[Document]" = []
    if held < full:
        warnings.append({"code": "fewer_on_tray", "values": {"n": number, "full_n": full}})
    if rest_kg > 0.0:
        mean_kg = job.deposits_kg / job.deposits
        warnings.append(
            {"code": "small_rest", "values": {"n": math.ceil(rest_kg / mean_kg - 1e-6), "rest_kg": rest_kg}}
        )
    return found, warnings


def short_fills(job: "ClusterJob", safe_s: float) -> "list[Document]":
    """What to say of a window that no fill is sure to stay in for more than a few deposits."""
    if safe_s > trays.SHORTEST_FILL_S:
        return []
    return [{"code": "short_fills", "values": {"n": int(safe_s * job.per_s)}}]


def many_reheats(request: "Readable", held: "Readable", second: "Readable | None") -> "list[Document]":
    """What to say from the second reheat on: how long they take, and how many the usual window of clusters needs.

    held: as `tray_size_and_fills`, of this plan.
    """
    if held["reheats"] < MANY_REHEATS:
        return []
    values = {"n": held["reheats"], "reheats_s": held["reheats"] * schedule.REHEAT_S}
    low_c = min(request["window_low_c"], deposit_fields.WINDOW_LOW["default"])
    high_c = max(request["window_high_c"], min(request["warn_c"], deposit_fields.WINDOW_HIGH["default"]))
    if is_below(low_c, request["window_low_c"], "°C") or is_above(high_c, request["window_high_c"], "°C"):
        fewer = _reheats(dict(request, window_low_c=low_c, window_high_c=high_c), held["per_tray"], second)
        if fewer < held["reheats"]:
            values.update({"window_low_c": low_c, "window_high_c": high_c, "fewer": fewer})
            return [{"code": "many_reheats_wider", "values": values}]
    return [{"code": "many_reheats", "values": values}]


def _reheats(request: "Readable", full: int, second: "Readable | None") -> int:
    """How often the caramel is reheated in another window."""
    job = ClusterJob(request)
    fill_request, low_c = _fill_request(request, job), _warm_c(request, job)
    lasts = trays.safe_fill_s(fill_request, {"window_low_c": low_c}, job.usual_fill_kg)
    state = bench(job, fill_request, lasts, second, full)
    state["trays"] = math.ceil(job.clusters / full)
    return schedule.count_fills(state)[0] - 1
