"""What finished clusters teach of a funnel: grams a deposit, and how far one spreads."""

import math

from ...core.problems import Problem
from ...core.statistics import SD_TO_10_PERCENT
from ...physics import materials
from . import footprint, job, tray_cooling
from .fields import DEPOSIT_KG

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import ClusterLearnReply, ClusterLearnRequest


SCALE_SD_KG = 0.001  # of one weighing on a kitchen scale; assumed
UNDER_SD = 0.1  # share by which the weight of what lies under may be off where it was not weighed; assumed
RULER_SD_M = 0.001  # of one reading of a ruler across a soft edge; assumed
WARMEST_LAID_C = 82.0  # no plan lays warmer: so a width that is not refused here is not refused there
# Student's t, 90 % points, by the number of readings less one, from two on; from memory, checked in the test.
STUDENT_T_90 = (1.886, 1.638, 1.533, 1.476, 1.440, 1.415, 1.397, 1.383)


def learn(request: "ClusterLearnRequest") -> "ClusterLearnReply":
    """Grams a deposit and its width from finished clusters that were weighed and measured.

    Request: clusters (how many were weighed), together_kg (kg, together), under_kg (kg, what lies under all of them) or
    null, under and bed (as cluster.plan; from them where under_kg is null), across_m (m, three to nine of them);
    what was planned: deposit_kg (kg) or null, second_kg (kg), spread_m (m) or null; material.
    Reply: deposit_kg, deposit_low_kg, deposit_high_kg (kg, 10 % and 90 % points), second_kg (kg), under_each_kg (kg),
    spread_m, spread_low_m, spread_high_m (m), planned_spread_m (m, what the planned width makes of this weight; or
    null), spread_share (measured over that; or null).
    Raises: Problem no_caramel_left (together_kg), deposit_out_of_reach (together_kg), widths_apart (across_m),
    spread_too_narrow and spread_too_wide (across_m), missing (deposit_kg, where there is a second deposit),
    give_one_of, shares_sum, unknown_material, composition_sum.
    Relation: (weighed − under) over clusters; a second deposit has the share of it that was planned. Scale ±1 g for
    each weighing, what was not weighed ±10 %. Width: the mean; its range by Student's t, a ruler's ±1 mm at least.
    The planned width goes with the weight to the power of ⅜.
    Example: 10 clusters of 165 g together on 45 g: 12.0 g each, ± 0.2 g.
    Source: huppert_1982 for the power, from memory for Student's t; assumed for scale, ruler and what was not weighed.
    """
    material = materials.resolved(request["material"])
    spread_m, half_m = _width(request["across_m"])
    under_kg, under_sd_kg = _under(request, spread_m)
    caramel_kg = request["together_kg"] - under_kg
    if caramel_kg <= 0.0:
        raise Problem("together_kg", "no_caramel_left", request["together_kg"], low=under_kg, unit="kg")
    number, first = request["clusters"], _first_share(request)
    deposit_kg = first * caramel_kg / number
    if deposit_kg < DEPOSIT_KG["low"] or deposit_kg > DEPOSIT_KG["high"]:
        raise Problem("together_kg", "deposit_out_of_reach", deposit_kg, DEPOSIT_KG["low"], DEPOSIT_KG["high"], "kg")
    _refuse_width(spread_m, deposit_kg, caramel_kg / number, materials.density(material, WARMEST_LAID_C))
    half_kg = SD_TO_10_PERCENT * first * math.sqrt(SCALE_SD_KG * SCALE_SD_KG + under_sd_kg * under_sd_kg) / number
    planned_m = _planned_m(request, deposit_kg)
    return {
        "deposit_kg": deposit_kg,
        "deposit_low_kg": max(0.0, deposit_kg - half_kg),
        "deposit_high_kg": deposit_kg + half_kg,
        "second_kg": (1.0 - first) * caramel_kg / number,
        "under_each_kg": under_kg / number,
        "spread_m": spread_m,
        "spread_low_m": max(0.0, spread_m - half_m),
        "spread_high_m": spread_m + half_m,
        "planned_spread_m": planned_m,
        "spread_share": None if planned_m is None else spread_m / planned_m,
    }


def _width(across_m: list[float]) -> tuple[float, float]:
    """(mean, half of its range from 10 to 90 %) in m."""
    widest_m, narrowest_m = max(across_m), min(across_m)
    if widest_m > 2.0 * narrowest_m:
        field = "across_m[" + str(across_m.index(widest_m)) + "]"
        raise Problem(field, "widths_apart", widest_m, high=2.0 * narrowest_m, unit="m")
    number = len(across_m)
    mean_m = sum(across_m) / number
    scatter_m = math.sqrt(sum((one - mean_m) * (one - mean_m) for one in across_m) / (number - 1))
    return mean_m, STUDENT_T_90[number - 3] * max(scatter_m, RULER_SD_M) / math.sqrt(number)


def _under(request: "Readable", across_m: float) -> tuple[float, float]:
    """(kg under all clusters, its standard deviation): weighed, or calculated from what was to lie there."""
    if request["under_kg"] is not None:
        return request["under_kg"], SCALE_SD_KG if request["under_kg"] > 0.0 else 0.0
    kg = request["clusters"] * sum(each_kg for _, each_kg in job.one_under(request, across_m))
    return kg, UNDER_SD * kg


def _first_share(request: "Readable") -> float:
    """The share of a cluster's caramel that its first deposit has."""
    second_kg = request["second_kg"]
    if second_kg == 0.0:
        return 1.0
    if request["deposit_kg"] is None:
        raise Problem("deposit_kg", "missing", low=DEPOSIT_KG["low"], high=DEPOSIT_KG["high"], unit="kg")
    result: float = request["deposit_kg"] / (request["deposit_kg"] + second_kg)
    return result


def _refuse_width(spread_m: float, deposit_kg: float, caramel_kg: float, density: float) -> None:
    least_m = footprint.least_m(deposit_kg / density)
    if spread_m < least_m:
        raise Problem("across_m", "spread_too_narrow", spread_m, low=least_m, unit="m")
    most_m = footprint.most_m(caramel_kg / density)
    if spread_m > most_m:
        raise Problem("across_m", "spread_too_wide", spread_m, high=most_m, unit="m")


def _planned_m(request: "Readable", deposit_kg: float) -> float | None:
    """What the planned width makes of the weight found; None where none was planned."""
    if request["spread_m"] is None or request["deposit_kg"] is None:
        return None
    return tray_cooling.spread_m(request["spread_m"], deposit_kg / request["deposit_kg"])
