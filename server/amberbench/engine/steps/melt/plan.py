"""Melting a block by microwave bursts: the oven's power, the plan, and the next burst after each reading."""

import math

from ...core.check import constant, is_above
from ...core.problems import Problem
from ...core.statistics import SD_TO_10_PERCENT, normal_below
from ...physics import pot
from . import estimate as melt_estimate
from . import next_action, oven, unevenness
from .burst_length import MeltLimits
from .next_action import decide, follow_history

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ...core.annotations import Document, Readable
    from ...types import (
        Burst,
        Input,
        MeltNextBurstRequest,
        MeltOvenFromWaterTestReply,
        MeltOvenFromWaterTestRequest,
        MeltPlanReply,
        MeltPlanRequest,
    )


STEPS_S = (1, 5, 10, 15, 30)
MOST_BURSTS = 60
READ_FROM_C = 46.0  # a burst that ends cooler leaves lumps: no reading, and the block is turned; common practice
THERMOMETER_SD_K = 0.3  # of a stirred probe reading; assumed
CLOCK_SD_S = 0.5  # of the time; assumed
CONTAINER_J_KGK = 550.0  # stands in for glass; iec_60705, from memory


def oven_from_water_test(request: "MeltOvenFromWaterTestRequest") -> "MeltOvenFromWaterTestReply":
    """Power an oven gives to water, from a water test.

    Request: water_kg (kg), start_c (°C) and end_c (°C) stirred, seconds_s (s), container_kg (kg) or null, room_c (°C)
    or null.
    Reply: power_w (W), power_sd_w (W, standard deviation).
    Raises: Problem not_warmer (end_c not above start_c), power_out_of_reach (the answer lies outside 100–3500 W).
    Relation: with container and room P = [4187·m_w·(T2 − T1) + 550·m_c·(T2 − T0)]/t, time at full power; without them
    P = 4187·m_w·(T2 − T1)/(t − 2.5 s), dial time. Thermometer ±0.3 K twice, time ±0.5 s.
    Example: 1 kg in 0.4 kg of glass, room 21, from 10.0 to 20.1 °C in 48 s: 877 W.
    Source: iec_60705.
    """
    rise_k = request["end_c"] - request["start_c"]
    if rise_k <= 0.0:
        raise Problem("end_c", "not_warmer", request["end_c"], request["start_c"], 95.0, "°C")
    energy_j, time_s = 4187.0 * request["water_kg"] * rise_k, request["seconds_s"]
    if request["container_kg"] is not None and request["room_c"] is not None:
        energy_j += CONTAINER_J_KGK * request["container_kg"] * (request["end_c"] - request["room_c"])
    else:
        time_s -= oven.MAGNETRON_START_S
    power_w = energy_j / time_s
    if power_w < 100.0 or power_w > 3500.0:
        raise Problem("seconds_s", "power_out_of_reach", power_w, 100.0, 3500.0, "W")
    by_heat = THERMOMETER_SD_K * math.sqrt(2.0) * 4187.0 * request["water_kg"] / energy_j
    return {"power_w": power_w, "power_sd_w": power_w * math.sqrt(by_heat * by_heat + (CLOCK_SD_S / time_s) ** 2)}


def refuse_lines(request: "Readable") -> None:
    """Refuses heat lines in the wrong order: Problem window_upside_down, line_above_line."""
    low_c, high_c, warn_c = request["window_low_c"], request["window_high_c"], request["warn_c"]
    stop_c, limit_c = request["stop_c"], request["limit_c"]
    if low_c >= high_c:
        raise Problem("window_low_c", "window_upside_down", low_c, high=high_c, unit="°C")
    lines = (("window_high_c", high_c, warn_c), ("warn_c", warn_c, stop_c), ("stop_c", stop_c, limit_c))
    for field, value, above in lines:
        if is_above(value, above, "°C"):
            raise Problem(field, "line_above_line", value, high=above, unit="°C")


def check_melt(request: "Readable") -> None:
    """Refuses heat lines in the wrong order, an oven without power, a step it cannot set.

    Raises: Problem window_upside_down, line_above_line, oven_without_power, not_an_option, too_low.
    """
    refuse_lines(request)
    if request["oven"]["rated_w"] is None and request["oven"]["power_w"] is None:
        raise Problem("oven.rated_w", "oven_without_power", low=200, high=3500, unit="W")
    if request["step_s"] not in STEPS_S:
        raise Problem("step_s", "not_an_option", request["step_s"], unit="s", accepted=list(STEPS_S))
    if request["burst_s"] < request["step_s"]:
        raise Problem("burst_s", "too_low", request["burst_s"], request["step_s"], 300, "s")


def plan(request: "MeltPlanRequest") -> "MeltPlanReply":
    """Bursts that bring the caramel into the window, each followed by a stir, to be corrected by every reading.

    Request: as `fields.MELT`.
    Reply: bursts [{seconds_s (s), level_percent, expected_c (°C), low_c (°C), high_c (°C), hottest_c (°C)}], none when
    the caramel starts in the window; total_s (s), energy_j (J), inputs.
    Raises: Problem of `check_melt`; start_above_window; step_too_coarse when the shortest burst scorches a spot or
    passes the window; oven_too_weak when sixty bursts do not reach it.
    Relation: heat content of caramel and vessel = power × (time − 2.5 s) − losses. At the strong end of the power
    (95 %; 98 % before the first reading) no spot passes the limit, and the bulk (95 %) stays below the window's top
    unless that would leave more than half of the way to the window; two readings after each burst that ends above
    46 °C are taken to be as expected.
    Source: choi_okos_1986 for the heat; assumed constants in `inputs`.
    """
    check_melt(request)
    melt = MeltLimits(request)
    estimate, start_c = melt.estimate, request["start_c"]
    bursts: "list[Burst]" = []
    if is_above(start_c, melt.high_c, "°C"):
        raise Problem("start_c", "start_above_window", start_c, high=melt.high_c, unit="°C")
    while estimate.t_c < melt.low_c:
        if len(bursts) == MOST_BURSTS:
            raise Problem("mass_kg", "oven_too_weak", request["mass_kg"], unit="kg")
        bursts.append(_planned(melt))
    total_s = sum(burst["seconds_s"] for burst in bursts) + oven.STIR_S * len(bursts)
    energy_j = estimate.pot.content(estimate.t_c) - estimate.pot.content(start_c)
    return {"bursts": bursts, "total_s": float(total_s), "energy_j": energy_j, "inputs": assumed(melt, request)}


def _planned(melt: "MeltLimits") -> "Burst":
    """One burst of the plan, its stir, and the readings to be expected after it."""
    estimate, (seconds_s, level) = melt.estimate, melt.longest(True)
    hottest_c = melt.hottest_c(seconds_s, level)
    estimate.burst(seconds_s, level)
    estimate.cool(oven.STIR_S)
    if seconds_s == 0.0 or estimate.t_c > melt.high_c:
        raise Problem("step_s", "step_too_coarse", melt.step_s, unit="s")
    spread_k, expected_c = SD_TO_10_PERCENT * estimate.sd_k(), estimate.t_c
    if expected_c >= READ_FROM_C:
        estimate.expect_reading()
        estimate.expect_reading()
    return {
        "seconds_s": seconds_s,
        "level_percent": level,
        "expected_c": expected_c,
        "low_c": expected_c - spread_k,
        "high_c": expected_c + spread_k,
        "hottest_c": hottest_c,
    }


def assumed(melt: "MeltLimits", request: "Readable") -> "list[Input]":
    """The constants of a melt, in its plan and at the bench, that are not in the request, as input rows."""
    rows: "list[Input]" = [
        constant("melt.dead_s", oven.MAGNETRON_START_S, "s", "oven_tests", "published"),
        constant("melt.stir_s", oven.STIR_S, "s", "practice"),
        constant("melt.loss_w", window_loss_w(melt), "W", "mcadams"),
    ]
    if request["vessel"] is not None:
        rows.append(constant("melt.vessel_share", pot.VESSEL_SHARE, ""))
    else:
        rows.append(constant("melt.bowl_kg", oven.UNWEIGHED["mass_kg"], "kg", measure_by="bowl_on_scale"))
    if request["oven"]["power_w"] is None:
        factor = oven.load_factor(request["mass_kg"])
        share, share_sd = oven.taken_up(request["oven"])
        measure_by = "first_melts" if request["oven"].get("measured_in") == oven.IN_WATER else "oven_water_test"
        rows.append(constant("melt.rated_share", share, "", measure_by=measure_by))
        rows.append(constant("melt.rated_sd", share_sd, "", measure_by=measure_by))
        rows.append(constant("melt.load_factor", factor, "", "buffler_1993", measure_by=measure_by))
    elif request["oven"]["power_sd_w"] is None:
        rows.append(constant("melt.measured_sd", oven.MEASURED_SD, "", measure_by="oven_water_test"))
    if request["oven"]["unevenness"] is None:
        rows.append(
            constant("oven.unevenness", melt.estimate.uneven.mean, "", "memory", measure_by="hot_spot_readings")
        )
    return rows + _believed() + _decided(melt)


def _believed() -> "list[Input]":
    """Input rows of the spreads of start, losses, power and readings."""
    return [
        constant("melt.start_sd_k", melt_estimate.START_SD_K, "K"),
        constant("melt.heat_sd", pot.CAPACITY_SD, ""),
        constant("melt.loss_sd", pot.LOSS_SD, ""),
        constant("melt.warm_loss", melt_estimate.WARM_LOSS, "", "memory"),
        constant("melt.warm_s", melt_estimate.WARM_S, "s", "memory"),
        constant("melt.drift_sd", melt_estimate.POWER_DRIFT_SD, "", "memory"),
        constant("melt.free_c", melt_estimate.FREE_C, "°C", "practice"),
        constant("melt.reading_low_k", melt_estimate.FRESH_COLD_K, "K", "memory"),
        constant("melt.reading_sd_k", melt_estimate.FRESH_SD_K, "K", "memory"),
        constant("melt.skin_low_k", melt_estimate.SKIN_COLD_K, "K", "memory"),
        constant("melt.skin_chance", melt_estimate.SKIN_SHARE, ""),
        constant("melt.lumps_sd_k", melt_estimate.LUMP_SD_K, "K"),
    ]


def _decided(melt: "MeltLimits") -> "list[Input]":
    """Input rows of the risks taken by a burst and when pouring."""
    return [
        constant("melt.read_from_c", READ_FROM_C, "°C", "practice"),
        constant("melt.guard", normal_below(melt.guard_sd[0]), ""),
        constant("melt.guard_unread", normal_below(melt.guard_sd[1]), ""),
        constant("melt.aim", melt.aim, ""),
        constant("melt.pour_risk", next_action.POUR_RISK, ""),
    ]


def window_loss_w(melt: "MeltLimits") -> float:
    """Heat lost in W at the middle of the window."""
    return melt.estimate.pot.loss_w(0.5 * (melt.low_c + melt.high_c))


def _check_history(history: "Sequence[Readable]") -> None:
    for index, what in enumerate(history):
        field = {"stir": "kind", "reading": "surface_c", "spot": "surface_c"}.get(what["kind"], "seconds_s")
        if what[field] is None:
            raise Problem("history[" + str(index) + "]." + field, "missing")


def _is_spot_wanted(melt: "MeltLimits", expected_c: float, ahead_k: float) -> bool:
    """Whether the hottest spot is to be read before the stir: of an oven that is not known, well below the window."""
    uneven, rise_k = melt.estimate.uneven, expected_c - melt.estimate.t_c
    unsure: bool = uneven.var > unevenness.SURE_SD**2 and uneven.spots < unevenness.MOST_SPOTS
    return unsure and rise_k >= unevenness.LEAST_RISE_K and expected_c + 2.0 * ahead_k < melt.low_c


def next_burst(request: "MeltNextBurstRequest") -> "Document":
    """What to do now: another burst, pour, read again, let it cool, or stop.

    Request: as `fields.MELT`, and history [{kind, seconds_s (s), level_percent, free, surface_c (°C)}] in order,
    start_sd_k (K) or null: standard deviation of the temperature at the start, where more than a block's.
    Reply: action, seconds_s (s, length of the burst or rest), level_percent, then, read, spot (whether the hottest spot
    should be read before the stir), bulk_c (°C), bulk_low_c (°C), bulk_high_c (°C), expected_c, expected_low_c,
    expected_high_c (°C), hottest_c (°C), power_w (W, of the cold oven), power_sd_w (W), reason {code, values}.
    Raises: Problem of `check_melt`, missing (a burst or rest without its length, a reading without its value).
    Relation: extended Kalman filter on bulk temperature and the logarithm of the power, see `estimate`; what to do
    with it, see `next_action`; how long a burst may be, see `burst_length`.
    Source: choi_okos_1986 for the heat; readings and lumps from memory.
    """
    check_melt(request)
    _check_history(request["history"])
    melt = MeltLimits(request)
    estimate = melt.estimate
    follow_history(estimate, request["history"])
    action, code, seconds_s, level = decide(melt)
    expected_c, hottest_c, spread_k = estimate.t_c, estimate.t_c, SD_TO_10_PERCENT * estimate.sd_k()
    ahead_k = spread_k
    if action == "burst":
        hottest_c = melt.hottest_c(seconds_s, level)
        expected_c = estimate.pot.cooled(melt.expected_c(seconds_s, level), oven.STIR_S)
        ahead_k = SD_TO_10_PERCENT * math.sqrt(estimate.spread_after(seconds_s, level)[1])
    elif action == "rest":
        expected_c = estimate.pot.cooled(estimate.t_c, seconds_s)
    turn = action == "burst" and estimate.bursts == 0 and melt.guarded_bulk_c(seconds_s, level) < READ_FROM_C
    read = action == "burst" and expected_c + spread_k >= READ_FROM_C
    return {
        "action": action,
        "seconds_s": seconds_s,
        "level_percent": level,
        "then": "turn" if turn else "stir",
        "read": read,
        "spot": action == "burst" and _is_spot_wanted(melt, expected_c, ahead_k),
        "bulk_c": estimate.t_c,
        "bulk_low_c": estimate.t_c - spread_k,
        "bulk_high_c": estimate.t_c + spread_k,
        "expected_c": expected_c,
        "expected_low_c": expected_c - ahead_k,
        "expected_high_c": expected_c + ahead_k,
        "hottest_c": hottest_c,
        "power_w": estimate.power_w(),
        "power_sd_w": estimate.power_w() * math.sqrt(estimate.pp),
        "reason": {"code": "reason." + code, "values": {"bulk_c": estimate.t_c, "expected_c": expected_c}},
    }
