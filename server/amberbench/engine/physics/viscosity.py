"""How caramel flows: viscosity by its distance from the glass."""

import math

from ..core.check import constant
from ..core.problems import Problem
from ..steps.room.fields import DRY_GLASS_C

KELVIN = 273.15
# Gordon–Taylor: glass temperature of water (berk), weight of water against sucrose solids (Roos, from memory).
WATER_GLASS_C, WATER_WEIGHT = -135.0, 4.7
# Williams–Landel–Ferry with the universal constants (berk); a glass has 10¹² Pa s by its definition (liu_2006).
WLF_1, WLF_2_K, GLASS_LOG = 17.44, 51.6, 12.0
# The relation is good to ten times either way, at least (assumed); the glass of dry solids to so many K either way
# (assumed: sources have 52 and 62 °C for sucrose, less for glucose), which counts the more, the nearer the glass.
SPREAD_LOG, DRY_GLASS_K = 1.0, 10.0
# Share of height lost: stays square up to, slumps above (assumed); firm is not said before a day has passed.
FIRM_LOST, SLUMPS_LOST = 0.05, 0.15
DAY_S = 86400.0
# How much colder a caramel is when it is as stiff as a firm one: cut, and laid upon, that much later (assumed, K).
SOFTER_K = {"firm": 0.0, "borderline": 1.0, "slumps": 2.0}
ROUNDING = 1e-9  # 9.5 of 10 mm is 5 % lost, whatever the last digit of a float says


def glass_c(water, dry_glass_c):
    """Glass temperature in °C of sugar solids with a mass fraction of water in the fat-free phase."""
    solids, weighed = 1.0 - water, WATER_WEIGHT * water
    mixed_k = solids * (dry_glass_c + KELVIN) + weighed * (WATER_GLASS_C + KELVIN)
    return mixed_k / (solids + weighed) - KELVIN


def log_viscosity(above_k):
    """Decimal logarithm of the viscosity in Pa s at above_k (K) over the glass temperature."""
    return GLASS_LOG - WLF_1 * above_k / (WLF_2_K + above_k)


def thinner(material, from_c, to_c):
    """How many times thinner a resolved material is at to_c than at from_c (°C): by the glass of sucrose, as its water
    has it; 1.0 where nothing is known of its water, or it is a glass."""
    sugar_and_water = 1.0 - material.get("fat", 1.0)
    if sugar_and_water <= 0.0:
        return 1.0
    glass = glass_c(material["water"] / sugar_and_water, DRY_GLASS_C)
    if min(from_c, to_c) < glass:
        return 1.0
    return 10.0 ** (log_viscosity(from_c - glass) - log_viscosity(to_c - glass))


def viscosity(request):
    """Viscosity of caramel from its water and temperature: a trend, never a promise.

    Request: temp_c (°C), moisture (fraction), fat (fraction), dry_glass_c (°C), glass_c (°C) or null, basis, batches.
    Reply: viscosity_pa_s (Pa s), low_pa_s (Pa s), high_pa_s (Pa s), glass_c (°C), inputs.
    Raises: Problem water_and_fat_fill_it (no sugar left), below_glass (temp_c below its glass temperature).
    Relation: Gordon–Taylor for the sugar and water without the fat, Williams–Landel–Ferry above it, best up to 100 K
    above the glass. Range: ten times either way, and in quadrature what a dry glass 10 K off makes of it, up to that of
    a glass; a glass_c that is given is taken as it is.
    Example: 8.5 % water and 8.1 % fat: glass at −1.8 °C, 42 Pa s at 74 °C, from 3.6 to 500; at 21 °C it may be 26 times
    thinner or 37 times thicker.
    Source: berk for both relations, liu_2006 for the viscosity of a glass, sucrose_glass for dry_glass_c and the weight
    of water, usda_sr28 for fat; assumed for the range.
    """
    sugar_and_water = 1.0 - request["fat"]
    if request["moisture"] >= sugar_and_water:
        raise Problem("moisture", "water_and_fat_fill_it", request["moisture"], high=sugar_and_water)
    glass, shift_k = request["glass_c"], 0.0
    if glass is None:
        water, dry_c = request["moisture"] / sugar_and_water, request["dry_glass_c"]
        glass = glass_c(water, dry_c)
        shift_k = glass_c(water, dry_c + DRY_GLASS_K) - glass
    if request["temp_c"] < glass:
        raise Problem("temp_c", "below_glass", request["temp_c"], low=glass, unit="°C")
    above_k = request["temp_c"] - glass
    logarithm = log_viscosity(above_k)
    thinner = math.sqrt(SPREAD_LOG**2 + (logarithm - log_viscosity(above_k + shift_k)) ** 2)
    thicker = math.sqrt(SPREAD_LOG**2 + (log_viscosity(max(0.0, above_k - shift_k)) - logarithm) ** 2)
    return {
        "viscosity_pa_s": 10.0**logarithm,
        "low_pa_s": 10.0 ** (logarithm - thinner),
        "high_pa_s": 10.0 ** (logarithm + thicker),
        "glass_c": glass,
        "inputs": [
            constant("flow.water_glass_c", WATER_GLASS_C, "°C", "berk", "published"),
            constant("flow.water_weight", WATER_WEIGHT, "", "sucrose_glass"),
            constant("flow.wlf_1", WLF_1, "", "berk", "published"),
            constant("flow.wlf_2_k", WLF_2_K, "K", "berk", "published"),
            constant("flow.glass_log", GLASS_LOG, "", "liu_2006", "published"),
            constant("flow.spread_log", SPREAD_LOG, "", measure_by="stand_up_test"),
            constant("flow.dry_glass_k", DRY_GLASS_K, "K", measure_by="stand_up_test"),
        ],
    }


def _refuse(heights):
    for index in range(1, len(heights)):
        before, now = heights[index - 1], heights[index]
        path = "heights[" + str(index) + "]"
        if now["at_s"] <= before["at_s"]:
            raise Problem(path + ".at_s", "not_later", now["at_s"], low=before["at_s"], unit="s")
        if now["height_m"] > before["height_m"]:
            raise Problem(path + ".height_m", "height_grows", now["height_m"], high=before["height_m"], unit="m")


def softness(firmness, squeeze):
    """(K colder than a firm caramel, warnings, input rows) by what tests said of it; each may be null.

    A stand-up test decides; without one a piece that felt soft at delivery counts as borderline.
    """
    verdict = firmness or ("borderline" if squeeze == "soft" else "firm")
    softer_k, warnings = SOFTER_K[verdict], []
    if softer_k > 0.0:
        warnings.append({"code": verdict + "_caramel", "values": {"softer_k": softer_k}})
    if squeeze == "brittle":
        warnings.append({"code": "brittle_caramel", "values": {}})
    return softer_k, warnings, [constant("flow.softer_k", softer_k, "K")] if softer_k > 0.0 else []


def judged(heights):
    """(share of the height lost, verdict) of [(s, m)], the fresh cube first."""
    lost = 1.0 - heights[-1][1] / heights[0][1]
    if lost > SLUMPS_LOST + ROUNDING:
        return lost, "slumps"
    firm = lost <= FIRM_LOST + ROUNDING and heights[-1][0] - heights[0][0] >= DAY_S
    return lost, "firm" if firm else "borderline"


def stand_up_test(request):
    """Whether a cut cube stays square in this room: share of its height lost, and a verdict.

    Request: heights (at_s in s, height_m in m, the fresh cube first), room_c (°C), basis, batches.
    Reply: lost_fraction, verdict (firm, borderline, slumps), inputs.
    Raises: Problem not_later (times that do not rise), height_grows (a height above the one before).
    Relation: lost_fraction = 1 − last height / first height. Up to 5 % firm, above 15 % slumps; firm is not said before
    a day has passed. Read it at 1, 24 and 72 h.
    Source: memory for the test, assumed for the lines of the verdict.
    """
    heights = request["heights"]
    _refuse(heights)
    lost, verdict = judged([(one["at_s"], one["height_m"]) for one in heights])
    return {
        "lost_fraction": lost,
        "verdict": verdict,
        "inputs": [
            constant("flow.firm_lost", FIRM_LOST, ""),
            constant("flow.slumps_lost", SLUMPS_LOST, ""),
            constant("flow.day_s", DAY_S, "s"),
        ],
    }
