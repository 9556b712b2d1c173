"""Clusters as a whole: caramel, what goes under, trays, fills, melt and the windows of a tray from one request."""

import math

from ...core.check import constant
from ...physics import bases, materials, viscosity
from ...steps.cool import cooling_curve, firmness
from ...steps.cool import plan as cool
from ...steps.deposit import funnel, schedule, trays
from ...steps.dip import plan as dip_plan
from ...steps.room import plan as room
from .. import subplans
from . import batches, fills, footprint, tray_cooling
from . import job as cluster_asked

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import ClusterPlanReply, ClusterPlanRequest, Input
    from .job import ClusterJob


def plan(request: "ClusterPlanRequest") -> "ClusterPlanReply":
    """Clusters from caramel in hand or of so many in rows: everything the bench needs.

    Request: rows [{clusters (good ones), deposit_kg (kg)}], or caramel_kg (kg) and deposit_kg (kg); yield_share
    (fraction that turns out good), vessel_volume_m3 (m³) or null, old {kg (kg), share, remelts} or null,
    remelts_allowed or null, second_kg (kg), 0 for none; under [{material, kg_each (kg), count}] under each cluster,
    or bed {materials [{material, share}], bed_kg_m2 (kg/m²)} over the tray inside its rim, or neither; tray
    {length_m, width_m, rim_m (m)}, base (as cool.plan, what the tray is made of), spread_m (m, across the largest
    first deposit), gap_m (m); funnel {volume_m3 (m³), fill, h_w_m2k (W/(m² K))}, deposits_per_min; start_c,
    window_low_c, window_high_c, limit_c, warn_c, stop_c, room_c, target_c, fridge_c (°C), humidity (fraction) or
    null, material, oven, vessel, step_s (s), block_kg (kg) or null, residue, dip {dip.fields.DIP, with pickup} or
    null, firmness and squeeze {cool.fields.FIRM}, basis, batches.
    Reply: of the first batch pattern, per_tray, trays, positions_m (m) of what goes on a tray in laying order,
    clusters, sizes [{clusters, deposit_kg (kg), spread_m (m)}], by_tray [{trays, sizes}] of trays alike (none of one
    size), second_kg (kg), deposits_kg (kg), caramel_kg (kg, with residue), piece_kg (kg, the mean, with what lies
    under), under [{material, kg (kg), count, allergen}], bed {tray_kg, last_kg (kg)} or null, deposits_per_fill,
    fill_kg and most_fill_kg (kg), fill_s, safe_s and stands_s (s), fills, reheats, laying_s and bench_s (s), rest_kg
    (kg), tray_s (s), second {from_s, to_s (s)} or null after a deposit was laid, free {from_s, to_s (s)} after the last
    deposit of a tray was laid, chill {from_c, fridge_c (°C), seconds_s (s)} or null: of a tray that is not free by
    then, melt (as melt.plan), melt_request, fill_request, blocks, leftover_kg (kg), dip (or null), room (as
    room.advise), good (clusters), and of all: batches and together and sizes_unknown as slab.plan, asked being rows or
    caramel_kg, and remelt; warnings (of a caramel that is not firm, as slab.plan; chill_trays, fewer_on_tray,
    short_fills, many_reheats, many_reheats_wider, small_rest, run_together), inputs.
    Raises: Problem give_one_of, missing, too_little_caramel, more_than_a_bowl, too_many_batches, heavier_than_fill,
    tray_smaller_than_deposit, rim_leaves_no_room, gap_leaves_no_room, spread_too_narrow, spread_too_wide,
    second_runs_off (second_kg), too_much_under (under[n].count or .kg_each), shares_sum, no_time_to_weld,
    room_too_warm_for_deposits, tray_cools_too_slowly, fridge_too_warm (target_c below
    fridge_c + 4 K where the room does not free them), coating_without_size (dip.pickup), unknown_material,
    composition_sum, and those of melt.plan.
    Relation: the fullest of three lattices at spread + gap inside the rim. Spread goes with weight to the power of
    ⅜ and viscosity to that of −⅛; spread_m is at the middle of the window, the warmest run wider. A cluster is a
    spherical cap of caramel and what lies under it, mixed, on its share of the tray, both cooling in still air,
    nothing lost to the table; second: from tacky at 2 % of slow losses, laid from a fresh fill, to too cold at 2 %
    of quick ones, laid at the middle of the window. A fill as deposit.fill, at that middle; the bowl is melted to
    the warmest 4 K of the window, or half, and as far above it as caramel cools when it is poured. A cluster is
    free 3 K below target_c, at which a slab is ready. In a room above target_c − 4 K a tray is free as in one at
    that, the warmest that brings clusters so far, or after a chill; in one above 31 °C a first deposit never gets
    too cold to weld. Trays that are laid again hold alike, no more than can be laid again in time at the pace with
    the breaks that the funnel needs; fills and reheats are counted as the bench goes about it (`deposit.schedule`).
    A bed goes as far as rows are laid.
    Source: choi_okos_1986, mcadams, incropera, asme_1992, huppert_1982, berk; practice for the share filled; assumed
    for the rest.
    """
    groups = batches.split(request)
    series = batches.said(request, groups)
    first = dict(groups[0][1], old=series["batches"][0]["asked"]["old"])
    job = cluster_asked.ClusterJob(first)
    job.refuse_weights()
    pattern, positions = cluster_asked.tray_layout(first, job)
    heat, rows = fills.bowl_and_funnel(first, job)
    second, free, chill = _windows(first, job, len(positions), heat["melt_request"])
    footprint.refuse_heap(first, first["spread_m"])
    lasts = heat["safe_s"], heat["stands_s"]
    bench = fills.bench(job, heat["fill_request"], lasts, second, len(positions))
    held, warnings = fills.tray_size_and_fills(job, bench, heat["deposits_per_fill"])
    held["bench_s"] = heat["melt"]["total_s"] + held["laying_s"]
    beds_m2 = cluster_asked.beds_m2(first, job, pattern, positions, held)
    under, each_kg = cluster_asked.materials_under(first, job, beds_m2)
    found: "Any" = {
        "pattern": pattern,
        "positions_m": [[x, y] for x, y in positions[: held["per_tray"]]],
        "by_tray": trays.equal_trays(bench),
        "sizes": bench["sizes"],
        "under": under,
        "bed": _bed(first, beds_m2),
        "second": second,
        "free": free,
        "chill": chill,
    }
    piece_kg = job.deposits_kg / job.clusters + each_kg
    finish, finish_rows = _finished(first, job, piece_kg)
    for part in (held, heat, batches.weights(first, job, piece_kg), finish, series):
        found.update(part)
    _, soft, soft_rows = firmness.softness(first["firmness"], first["squeeze"])
    thinner = _thinner_than_measured(first, job)
    found["warnings"] += soft + tray_cooling.too_warm_to_free(found) + fills.short_fills(job, heat["safe_s"])
    found["warnings"] += fills.many_reheats(first, held, second)
    found["warnings"] += tray_cooling.run_together(first, thinner) + warnings
    found["inputs"] = rows + _constants(first["base"], thinner) + finish_rows + soft_rows
    reply: "ClusterPlanReply" = found
    return reply


def _finished(request: "Readable", job: "ClusterJob", piece_kg: float) -> "tuple[Document, list[Input]]":
    """({room, dip}, their input rows): the air, and what dipping takes."""
    chocolate = request["dip"]["chocolate"] if request["dip"] else None
    air, rows = room.for_plan(request["room_c"], request["humidity"], chocolate, None)
    dip = _dip(request, job, piece_kg)
    if dip is not None:
        rows, dip["inputs"] = dip["inputs"] + rows, []
    return {"room": air, "dip": dip}, rows


def _thinner_than_measured(request: "Readable", job: "ClusterJob") -> float:
    """How many times thinner caramel is at the warm end of the window than at its middle, for which spread_m stands."""
    return viscosity.thinner(materials.resolved(request["material"]), job.pour_c, request["window_high_c"])


def _dip(request: "Readable", job: "ClusterJob", piece_kg: float) -> "Document | None":
    """What dipping takes, or None; a pre-bottom goes under the whole spread, sized for the largest deposit."""
    dip = request["dip"]
    if dip is None:
        return None
    under_m2 = job.clusters * 0.25 * math.pi * request["spread_m"] * request["spread_m"]
    asked = (dip, job.clusters, None, piece_kg, request["material"], under_m2, request["room_c"])
    names = {name: "dip." + name for name in dip}
    names["piece"] = "dip.pickup"
    return subplans.call_renamed(lambda one: dip_plan.plan(*one), asked, names)


def _windows(
    request: "Readable", job: "ClusterJob", per_tray: int, melt_request: "Readable"
) -> "tuple[Document | None, Document, Document | None]":
    softer_k = firmness.softness(request["firmness"], request["squeeze"])[0]
    sides = request["tray"]["length_m"], request["tray"]["width_m"]
    ready_c = firmness.ready_c(request)
    tray = tray_cooling.Tray(request["base"], sides[0], sides[1], per_tray, request["room_c"], softer_k, ready_c)
    material = materials.resolved(request["material"])
    lightest_kg = min(kg for _, kg in job.rows)

    def stuff(deposit_kg: float) -> "tuple[list[tuple[Readable, float, float]], float]":
        across_m = tray_cooling.spread_m(request["spread_m"], deposit_kg / job.heaviest_kg)
        beside = [(one, kg, request["room_c"]) for one, kg in cluster_asked.one_under(request, across_m)]
        return [(material, deposit_kg, job.pour_c)] + beside, across_m

    second = (material, request["second_kg"], job.pour_c) if request["second_kg"] > 0.0 else None
    found, across_m = stuff(job.heaviest_kg)
    warmest_c = max(job.pour_c, melt_request["window_low_c"] + trays.FRESH_BOWL_K)
    least = None if lightest_kg == job.heaviest_kg else stuff(lightest_kg)
    windows = tray_cooling.windows(tray, found, across_m, least, second, warmest_c)
    return windows + (tray_cooling.chill(tray, found, across_m, second, request["fridge_c"]),)


def _bed(request: "Readable", beds_m2: list[float]) -> "Document | None":
    """What the bed of a tray weighs, and that of the last one; None where pieces are counted out."""
    if request["bed"] is None:
        return None
    kg_m2 = request["bed"]["bed_kg_m2"]
    return {"tray_kg": beds_m2[0] * kg_m2, "last_kg": beds_m2[-1] * kg_m2}


def _constants(base: "Readable | str", thinner: float) -> "list[Input]":
    """The constants a plan of clusters takes that are not in the request, as input rows."""
    own = [
        constant("deposit.tacky_c", tray_cooling.TACKY_C, "°C"),
        constant("deposit.cold_c", tray_cooling.COLD_C, "°C"),
        constant("deposit.free_below_ready_k", tray_cooling.FREE_BELOW_READY_K, "K", "practice"),
        constant("deposit.above_room_k", tray_cooling.LAID_ABOVE_ROOM_K, "K"),
        constant("deposit.room_margin_k", cooling_curve.ROOM_MARGIN_K, "K"),
        constant("deposit.contact_m2k_w", tray_cooling.CONTACT_M2K_W, "m² K/W", "asme_1992"),
        constant("deposit.loss_sd", tray_cooling.LOSS_SD, ""),
        constant("deposit.spread_exponent", tray_cooling.EXPONENT, "", "huppert_1982", "published"),
        constant("deposit.thin_exponent", tray_cooling.THIN_EXPONENT, "", "huppert_1982", "published"),
        constant("deposit.thinner", thinner, "", "berk"),
        constant("deposit.tip_deg", funnel.TIP_DEG, "°"),
        constant("cool.emissivity", bases.SLAB_EMISSIVITY, "", "emissivity_manuals"),
        constant("deposit.guard_sd", tray_cooling.COLD_GUARD_SD, ""),
        constant("deposit.bowl_k", fills.BOWL_BELOW_HIGH_K, "K"),
    ]
    # The underside of the base gives nothing, whatever it shines.
    return own + schedule.constants() + cool.base_rows(base)[:-1]
