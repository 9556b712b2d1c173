"""When a poured slab is ready for the knife, and what readings and touch tests say about that."""

from math import exp, log

from ...core.check import constant
from ...core.problems import Problem
from ...physics import bases, convection
from ..room.plan import COLD_ROOM_C
from . import cooling_curve, time_spread, warm_room, wide_base
from . import refit as cool_refit
from .chill_fields import as_told_s

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...types import CoolPlanReply, CoolPlanRequest, CoolRefitRequest, Curve, Input, Warning
    from .cooling_curve import Slab


MOST_POINTS = 100
TOUCH_AGAIN_S = 600.0  # a slab that is not firm is not ready for another ten minutes (practice)


def plan(request: "CoolPlanRequest") -> "CoolPlanReply":
    """The cooling of a poured slab: when it is ready for the knife, what it can do before, and its curve.

    Request: thickness_m (m), start_c (°C, as poured), room_c (°C), material, top (still_air, fan or h_w_m2k in
    W/(m² K)), base (a built-in name, layers with an area_ratio, or null: the slab's own underside faces `bottom`),
    contact_m2k_w (m² K/W, parchment and what air is under it; not used without a base), bottom (as top, or
    insulated), target_c (°C, hottest point at ready), fridge_c (°C, air of the refrigerator, where the room does
    not bring target_c), length_m (m), width_m (m), base_length_m, base_width_m, base_thickness_m (m; null: no
    larger than the slab, as thick as usual), base_start_c (°C; null: room), loss_factor (a pure number, on the
    exchange with the air above and below; not on the contact), loss_factor_sd (of its logarithm), spread (share of
    the assumed standard deviations of start, room and contact), basis, batches.
    Reply: ready_s, ready_low_s, ready_high_s (s after pouring, bench and chill together; 10 % and 90 % points),
    target_c (°C), milestones (name, at_s, low_s, high_s in s, in order of time; those never reached are left out),
    chill {bench_s, seconds_s, low_s, high_s, sooner_at_s, sooner_s (s), from_c, fridge_c, surface_c (°C)} or null,
    curve (at_s in s, core_c the hottest point and surface_c the top face in °C), warnings, inputs.
    Warnings: not_on_this_bench (room_c, target_c, bench_s), chill_wrapped (chill_s, fridge_c) and chill_sooner
    (bench_s, chill_s) where target_c is below room + 1 K; cold_room (room_c).
    Raises: Problem start_below_target (start_c not above target_c and room), cools_too_slowly (not ready within two
    days), fridge_too_warm (target_c below fridge_c + 1 K), unknown_material, composition_sum.
    Relation: conduction in one dimension through caramel, contact and base, and sideways through a base that is said
    to be wider (`wide_base`: 9 % early to 11 % late against three dimensions), implicit finite volumes; natural
    convection by the horizontal-plate forms over length A/P (published forms differ by 15 % in the total), and
    radiation with emissivity 0.95. Ready times of one layer are within 0.3 % of the exact series for Biot numbers
    from 0.05 to 5, of layers within 2 % of a fine grid. The range comes from the ranges of loss factor, contact,
    start and room.
    Example: 12.7 mm, 72 to 30 °C in air at 21 °C, 10 W/(m² K) on top, insulated below, caramel as at 51 °C: 7031 s.
    Source: incropera for the example's relation, mcadams, cengel_air, emissivity_manuals, en_12524, asme_1992,
    choi_okos_1986; practice for target_c, assumed for the other milestones.
    """
    slab = wide_base.slab(request)
    cooled: "Any" = _reply(request, slab, request["loss_factor"], request["loss_factor_sd"])
    cooled["inputs"] = _constants(request)
    reply: "CoolPlanReply" = cooled
    return reply


def refit(request: "CoolRefitRequest") -> "Document":
    """The cooling of a poured slab after readings and touch tests: the same answer with the loss factor they tell of.

    Request: as cool.plan, and readings (at_s in s, surface_c in °C), touches (at_s in s, firm: enough to cut), both in
    any order; reading_low_k (K, how cold readings run), reading_sd_k (K, their standard deviation).
    Reply: as cool.plan, and loss_factor (a pure number), loss_factor_sd (of its logarithm). After "not yet" the slab
    is ready ten minutes later at the earliest; once felt firm, it is ready. The later touch decides.
    Raises: as cool.plan, and firm_too_soon (touches[n].at_s) where the slab cannot be firm yet.
    Relation: mean of ln(loss_factor) under a normal prior (loss_factor, loss_factor_sd), readings with Student's t
    scatter, touches as censored readings of the hottest point with a blur of 1.5 K; see `refit`. Three readings of
    ± 2 K by half time bring the ready time on a board or tray to within 5 % (median); on stone the surface says less
    and the median is 8 to 9 %.
    Example: a slab that reads 39.0 °C where the model says 40.0 °C, with reading_low_k 1, leaves the plan as it is.
    Source: assumed for the scatter and the blur, emissivity_manuals for reading_low_k, practice for ten minutes.
    """
    slab = wide_base.slab(request)
    readings = sorted((float(one["at_s"]), float(one["surface_c"])) for one in request["readings"])
    touches = sorted((float(one["at_s"]), one["firm"]) for one in request["touches"])
    telling = cool_refit.telling(slab, touches)
    _refuse_too_soon(request, slab, telling)
    evidence = cool_refit.Evidence(slab, readings, telling, request["reading_low_k"], request["reading_sd_k"])
    x, sd = cool_refit.fit(evidence, log(request["loss_factor"]), request["loss_factor_sd"])
    reply = _reply(request, slab, exp(x), sd)
    if touches:
        _decide(reply, touches[-1][0], touches[-1][1])
    reply["loss_factor"] = exp(x)
    reply["loss_factor_sd"] = sd
    reply["inputs"] = _constants(request) + _refit_constants()
    return reply


def _refuse_too_soon(request: "Readable", slab: "Slab", touches: "list[tuple[float, bool]]") -> None:
    """Refuses a slab said to be firm while it cannot be."""
    firm = [at_s for at_s, is_firm in touches if is_firm]
    if not firm:
        return
    soonest_s = cool_refit.soonest_firm_s(slab, log(request["loss_factor"]), request["loss_factor_sd"])
    if min(firm) < soonest_s:
        index = [one["at_s"] for one in request["touches"] if one["firm"]].index(min(firm))
        place = [number for number, one in enumerate(request["touches"]) if one["firm"]][index]
        raise Problem("touches[" + str(place) + "].at_s", "firm_too_soon", min(firm), low=soonest_s, unit="s")


def _reply(request: "Readable", slab: "Slab", loss_factor: float, loss_factor_sd: float) -> "Document":
    points, chill = slab.run(loss_factor), None
    if not warm_room.is_brought_here(request, slab, points, loss_factor):
        spans, points, chill = warm_room.cooled(request, slab, points, loss_factor, loss_factor_sd)
    else:
        spans = time_spread.spans(slab, points, loss_factor, loss_factor_sd, request["spread"])
    reply = {
        "target_c": slab.target_c,
        "chill": chill,
        "milestones": [
            {"name": name, "at_s": at_s, "low_s": low_s, "high_s": high_s} for name, at_s, low_s, high_s in spans
        ],
        "curve": _curve(points),
        "warnings": _warnings(request, chill),
    }
    _set_ready(reply)
    return reply


def _set_ready(reply: "Document") -> None:
    ready = next(one for one in reply["milestones"] if one["name"] == "ready")
    reply["ready_s"] = ready["at_s"]
    reply["ready_low_s"] = ready["low_s"]
    reply["ready_high_s"] = ready["high_s"]


def _decide(reply: "Document", at_s: float, firm: bool) -> None:
    """What the last touch test decides, whatever the model thinks: ready now, or not for another ten minutes."""
    for one in reply["milestones"]:
        for key in ("at_s", "low_s", "high_s"):
            if firm and one["name"] != "cold":
                one[key] = min(one[key], at_s)
            elif not firm and one["name"] in ("ready", "cold"):
                one[key] = max(one[key], at_s + TOUCH_AGAIN_S)
    _set_ready(reply)


def _curve(points: list[tuple[float, float, float]]) -> "list[Curve]":
    """At most MOST_POINTS points of a cooling curve, the first and the last among them."""
    every = 1 + (len(points) - 1) // MOST_POINTS
    kept = [points[i] for i in range(len(points)) if i % every == 0 or i == len(points) - 1]
    return [{"at_s": at_s, "core_c": core_c, "surface_c": surface_c} for at_s, core_c, surface_c in kept]


def _warnings(request: "Readable", chill: "Readable | None") -> "list[Warning]":
    found: "list[Warning]" = []
    if chill is not None:
        values = {"room_c": request["room_c"], "target_c": request["target_c"], "bench_s": chill["bench_s"]}
        found.append({"code": "not_on_this_bench", "values": values})
        values = {"chill_s": as_told_s(chill["seconds_s"]), "fridge_c": chill["fridge_c"]}
        found.append({"code": "chill_wrapped", "values": values})
        if chill["sooner_s"] is not None:
            values = {"bench_s": chill["sooner_at_s"], "chill_s": as_told_s(chill["sooner_s"])}
            found.append({"code": "chill_sooner", "values": values})
    if request["room_c"] < COLD_ROOM_C:
        found.append({"code": "cold_room", "values": {"room_c": request["room_c"]}})
    return found


def _refit_constants() -> "list[Input]":
    return [
        constant("cool.touch_sd_k", cool_refit.TOUCH_SD_K, "K"),
        constant("cool.fast_sd", cool_refit.FAST_SD, ""),
        constant("cool.touch_again_s", TOUCH_AGAIN_S, "s", "practice"),
        constant("cool.reading_low_sd_k", cool_refit.BIAS_SD_K, "K"),
        constant("cool.steady_chance", cool_refit.STEADY_CHANCE_AND_SHARE[0], ""),
        constant("cool.steady_share", cool_refit.STEADY_CHANCE_AND_SHARE[1], ""),
    ]


def _constants(request: "Readable") -> "list[Input]":
    """The constants used that are not in the request, as input rows."""
    rows = [
        constant("cool.emissivity", bases.SLAB_EMISSIVITY, "", "emissivity_manuals"),
        constant("cool.room_margin_k", cooling_curve.ROOM_MARGIN_K, "K"),
        constant("cool.cold_c", cooling_curve.COLD_C, "°C"),
        constant("cool.start_sd_k", time_spread.START_SD_K, "K"),
        constant("cool.room_sd_k", time_spread.ROOM_SD_K, "K"),
        constant("cool.contact_sd", time_spread.CONTACT_SD, "", "asme_1992"),
    ]
    for name, _, temp_c, _ in cooling_curve.MILESTONES:
        if temp_c is not None:
            rows.append(constant("cool." + name + "_c", temp_c, "°C"))
    if "fan" in (request["top"], request["bottom"]):
        rows.append(constant("cool.fan_w_m2k", convection.FAN_W_M2K, "W/(m² K)", measure_by="cooling_readings"))
    if None not in (request["base_length_m"], request["base_width_m"], request["base"]):
        rows.append(constant("cool.slab_share", wide_base.SLAB_SHARE, ""))
        rows.append(constant("cool.base_share", wide_base.BASE_SHARE, ""))
        rows.append(constant("cool.bare_share", wide_base.BARE_SHARE, ""))
    return rows + base_rows(request["base"], request["base_thickness_m"])


def base_rows(base: "Readable | str | None", thickness_m: float | None = None) -> "list[Input]":
    """Rows of what a base is taken to be made of."""
    if type(base) is str:
        thickness, k, rho, cp, emissivity = bases.BUILT_IN[base]
        return ([] if thickness_m else [constant("cool.base_thickness_m", thickness, "m")]) + [
            constant("cool.base_conductivity_w_mk", k, "W/(m K)", "en_12524", "published"),
            constant("cool.base_density_kg_m3", rho, "kg/m³", "en_12524", "published"),
            constant("cool.base_heat_capacity_j_kgk", cp, "J/(kg K)", "en_12524", "published"),
            constant("cool.base_emissivity", emissivity, "", "emissivity_manuals", "published"),
        ]
    return [] if base is None else [constant("cool.base_emissivity", bases.OWN_EMISSIVITY, "")]
