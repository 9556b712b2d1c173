"""Viscosity of caramel, from its temperature over the glass transition."""

import math

from ..core.check import constant
from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable
    from ..types import FlowViscosityReply, FlowViscosityRequest


KELVIN = 273.15
# Gordon–Taylor: glass temperature of water (berk), weight of water against sucrose solids (Roos, from memory).
WATER_GLASS_C, WATER_WEIGHT = -135.0, 4.7
# Williams–Landel–Ferry with the universal constants (berk); a glass has 10¹² Pa s by its definition (liu_2006).
WLF_1, WLF_2_K, GLASS_LOG = 17.44, 51.6, 12.0
# The relation is good to ten times either way, at least (assumed); the glass of dry solids to so many K either way
# (assumed: sources have 52 and 62 °C for sucrose, less for glucose), which counts the more, the nearer the glass.
SPREAD_LOG, DRY_GLASS_K = 1.0, 10.0


def glass_c(water: float, dry_glass_c: float) -> float:
    """Glass temperature in °C of sugar solids with a mass fraction of water in the fat-free phase."""
    solids, weighed = 1.0 - water, WATER_WEIGHT * water
    mixed_k = solids * (dry_glass_c + KELVIN) + weighed * (WATER_GLASS_C + KELVIN)
    return mixed_k / (solids + weighed) - KELVIN


def log_viscosity(above_k: float) -> float:
    """Decimal logarithm of the viscosity in Pa s at above_k (K) over the glass temperature."""
    return GLASS_LOG - WLF_1 * above_k / (WLF_2_K + above_k)


def thinner(material: "Readable", from_c: float, to_c: float) -> float:
    """How many times thinner a resolved material is at to_c than at from_c (°C): by the glass of sucrose, as its water
    has it; 1.0 where nothing is known of its water, or it is a glass."""
    sugar_and_water = 1.0 - material.get("fat", 1.0)
    if sugar_and_water <= 0.0:
        return 1.0
    glass = glass_c(material["water"] / sugar_and_water, DRY_GLASS_C)
    if min(from_c, to_c) < glass:
        return 1.0
    ratio: float = 10.0 ** (log_viscosity(from_c - glass) - log_viscosity(to_c - glass))
    return ratio


def viscosity(request: "FlowViscosityRequest") -> "FlowViscosityReply":
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


DRY_GLASS_C = 62.0  # of sucrose
