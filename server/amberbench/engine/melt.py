"""Melting a block by microwave bursts: the plan, and the next burst after each reading."""

import math

from . import heating
from .melt_belief import Belief, normal_below
from .problems import Problem

STEPS_S = (1, 5, 10, 15, 30)
UNEVENNESS = 2.3  # with a turntable; assumed: 1.5–2.5 is usual (from memory)
UNEVENNESS_STILL = 2.7  # without; assumed: 1.8–3.0
STRONG = 1.645  # 95 %: the scorch guard
TENTH = 1.2816  # 10 % and 90 %
READY = 0.94  # probability of lying in the window that is enough to pour
MOST_READINGS = 5  # readings after one burst; then the mean decides
MOST_BURSTS = 60
MOST_REST_S = 900.0
READ_FROM_C = 46.0  # a burst that ends cooler is not worth a reading; common practice


def oven_from_water_test(request):
    """Power an oven gives to water, from a water test.

    Request: water_kg (kg), start_c, end_c (°C, stirred), seconds_s (s); container_kg (kg) and room_c (°C) or null.
    Reply: power_w (W), power_sd_w (W, standard deviation).
    Raises: Problem not_warmer (end_c not above start_c), power_out_of_reach (the answer lies outside 100–3500 W).
    Relation: with container and room P = [4187·m_w·(T2 − T1) + 550·m_c·(T2 − T0)]/t, time at full power; without them
    P = 4187·m_w·(T2 − T1)/(t − 2.5 s), dial time. Thermometer ±0.3 K twice, time ±0.5 s.
    Example: 1 kg in 0.4 kg of glass, room 21, from 10.0 to 20.1 °C in 48 s: 877 W. Source: iec_60705.
    """
    rise_k = request["end_c"] - request["start_c"]
    if rise_k <= 0.0:
        raise Problem("end_c", "not_warmer", request["end_c"], request["start_c"], 95.0, "°C")
    energy_j, time_s = 4187.0 * request["water_kg"] * rise_k, request["seconds_s"]
    if request["container_kg"] is not None and request["room_c"] is not None:
        energy_j += 550.0 * request["container_kg"] * (request["end_c"] - request["room_c"])
    else:
        time_s -= heating.DEAD_S
    power_w = energy_j / time_s
    if power_w < 100.0 or power_w > 3500.0:
        raise Problem("seconds_s", "power_out_of_reach", power_w, 100.0, 3500.0, "W")
    by_heat = 0.3 * 1.4142135623730951 * 4187.0 * request["water_kg"] / energy_j
    return {"power_w": power_w, "power_sd_w": power_w * math.sqrt(by_heat * by_heat + (0.5 / time_s) ** 2)}


def check_melt(request):
    """Refuses heat lines in the wrong order, an oven without power, a step it cannot set.

    Raises: Problem window_upside_down, window_above_line, line_above_line, oven_without_power, not_an_option, too_low.
    """
    low_c, high_c, warn_c = request["window_low_c"], request["window_high_c"], request["warn_c"]
    stop_c, limit_c = request["stop_c"], request["limit_c"]
    if low_c >= high_c:
        raise Problem("window_low_c", "window_upside_down", low_c, high=high_c, unit="°C")
    lines = (("window_high_c", high_c, warn_c), ("warn_c", warn_c, stop_c), ("stop_c", stop_c, limit_c))
    for field, value, above in lines:
        if value > above:
            raise Problem(field, "line_above_line", value, high=above, unit="°C")
    if request["oven"]["rated_w"] is None and request["oven"]["power_w"] is None:
        raise Problem("oven.rated_w", "oven_without_power", low=200, high=3500, unit="W")
    if request["step_s"] not in STEPS_S:
        raise Problem("step_s", "not_an_option", request["step_s"], unit="s", accepted=list(STEPS_S))
    if request["burst_s"] < request["step_s"]:
        raise Problem("burst_s", "too_low", request["burst_s"], request["step_s"], 300, "s")


class Kitchen:
    """A checked request: the heat lines, what the oven can set, how unevenly it heats, the belief at the start."""

    def __init__(self, request):
        check_melt(request)
        self.low_c, self.high_c = request["window_low_c"], request["window_high_c"]
        self.stop_c, self.limit_c = request["stop_c"], request["limit_c"]
        self.step_s, self.most = request["step_s"], int(request["burst_s"] // request["step_s"])
        oven = request["oven"]
        self.unevenness = oven["unevenness"]
        if self.unevenness is None:
            self.unevenness = UNEVENNESS if oven["turntable"] else UNEVENNESS_STILL
        pot = heating.Pot(request["mass_kg"], request["material"], request["vessel"], request["room_c"])
        power_w, power_sd = heating.power_prior(oven, request["mass_kg"])
        self.belief = Belief(pot, power_w, power_sd, request["start_c"])

    def hottest_c(self, seconds_s):
        """Hottest spot in °C at the end of a burst, 95 % point over temperature and power."""
        belief, phi = self.belief, self.unevenness
        warm_c, _, by_p, by_t = belief.spread_after(seconds_s)
        # The likeliest point of (t, log p) at which the spot is as hot as its 95 % point.
        g_t, g_p = 1.0 + phi * (by_t - 1.0), phi * by_p
        to_t, to_p = belief.tt * g_t + belief.tp * g_p, belief.tp * g_t + belief.pp * g_p
        size = math.sqrt(max(1e-12, g_t * to_t + g_p * to_p))
        t_c, log_p = belief.t_c + STRONG * to_t / size, belief.log_p + STRONG * to_p / size
        return t_c + phi * (belief.after(seconds_s, t_c, log_p) - t_c)

    def safe(self, steps):
        """Whether a burst of so many steps keeps every spot below the limit and the bulk below the window's top."""
        seconds_s = steps * self.step_s
        warm_c, variance, _, _ = self.belief.spread_after(seconds_s)
        if warm_c + STRONG * math.sqrt(variance) > self.high_c and steps > 1:
            return False
        return self.hottest_c(seconds_s) <= self.limit_c

    def longest(self):
        """Most steps that are safe and do not aim above the middle of the window; 0 when not even one is safe."""
        aim_c, low, high = 0.5 * (self.low_c + self.high_c), 0, self.most
        while low < high:
            middle = (low + high + 1) // 2
            seconds_s = middle * self.step_s
            half_s = seconds_s - 0.5 * self.step_s
            if (middle == 1 or self.belief.after(half_s, self.belief.t_c, self.belief.log_p) <= aim_c) and self.safe(middle):
                low = middle
            else:
                high = middle - 1
        return low


def plan(request):
    """Bursts that bring the caramel into the window, each followed by a stir, to be corrected by every reading.

    Request: as `fields.MELT`: mass_kg (kg), start_c, window_low_c, window_high_c, room_c, limit_c, warn_c, stop_c (°C),
    material, burst_s, step_s (s), oven {rated_w, power_w, power_sd_w (W), turntable, unevenness}, vessel {mass_kg (kg),
    heat_capacity_j_kgk (J/(kg K))} or null.
    Reply: bursts [{seconds_s (s), expected_c, low_c, high_c, hottest_c (°C)}], total_s (s), energy_j (J), inputs.
    Raises: Problem of `check_melt`; start_above_window; step_too_coarse when the shortest burst is too strong.
    Relation: heat content of caramel and vessel = power × (time − 2.5 s) − losses; readings are taken to be as expected.
    Source: choi_okos_1986 for the heat, assumed constants in `inputs`.
    """
    kitchen = Kitchen(request)
    belief, start_c = kitchen.belief, request["start_c"]
    if start_c > kitchen.high_c:
        raise Problem("start_c", "start_above_window", start_c, high=kitchen.high_c, unit="°C")
    bursts, total_s = [], 0.0
    while not bursts or (belief.t_c < kitchen.low_c and len(bursts) < MOST_BURSTS):
        steps = kitchen.longest()
        if steps == 0:
            raise Problem("step_s", "step_too_coarse", kitchen.step_s, unit="s")
        seconds_s = float(steps * kitchen.step_s)
        hottest_c = kitchen.hottest_c(seconds_s)
        belief.burst(seconds_s)
        belief.cool(heating.STIR_S)
        spread_k = TENTH * belief.sd_k()
        bursts.append(
            {
                "seconds_s": seconds_s,
                "expected_c": belief.t_c,
                "low_c": belief.t_c - spread_k,
                "high_c": belief.t_c + spread_k,
                "hottest_c": hottest_c,
            }
        )
        total_s += seconds_s + heating.STIR_S
        if belief.t_c >= READ_FROM_C:
            belief.free = True
            for _ in range(2):
                belief.read(belief.t_c - 1.2)
    energy_j = belief.pot.content(belief.t_c) - belief.pot.content(start_c)
    return {"bursts": bursts, "total_s": total_s, "energy_j": energy_j, "inputs": assumed(kitchen, request)}


def assumed(kitchen, request):
    """The constants this melt took that are not in the request, as input rows."""
    rows = [
        ("melt.dead_s", heating.DEAD_S, "s", "published", "memory", None),
        ("melt.vessel_share", heating.VESSEL_SHARE, "", "assumed", "assumed", None),
        ("melt.stir_s", heating.STIR_S, "s", "assumed", "practice", None),
    ]
    if request["oven"]["power_w"] is None:
        factor = heating.load_factor(request["mass_kg"])
        rows.append(("melt.rated_share", heating.RATED_SHARE, "", "assumed", "assumed", "oven_water_test"))
        rows.append(("melt.load_factor", factor, "", "assumed", "buffler_1993", "oven_water_test"))
    if request["oven"]["unevenness"] is None:
        rows.append(("oven.unevenness", kitchen.unevenness, "", "assumed", "memory", "hot_spot_readings"))
    names = ("field", "value", "unit", "basis", "source", "measure_by")
    return [dict(zip(names, row)) for row in rows]


def follow(belief, history):
    """Moves a belief along what happened; Problem missing for a burst or rest without its length, a reading without its value."""
    for index, what in enumerate(history):
        kind = what["kind"]
        field = "surface_c" if kind == "reading" else "seconds_s"
        if kind != "stir" and what[field] is None:
            raise Problem("history[" + str(index) + "]." + field, "missing")
        if kind == "burst":
            belief.burst(what["seconds_s"])
        elif kind == "rest":
            belief.rest(what["seconds_s"])
        elif kind == "stir":
            belief.stir(what["free"])
        else:
            belief.read(what["surface_c"])


def next_burst(request):
    """What to do now: another burst, pour, read again, let it cool, or stop.

    Request: as `plan`, and history [{kind, seconds_s (s), free, surface_c (°C)}] in order.
    Reply: action, seconds_s (s, length of the burst or rest), then, read, bulk_c, bulk_low_c, bulk_high_c, expected_c,
    hottest_c (°C), power_w, power_sd_w (W), reason {code, values}.
    Raises: Problem of `check_melt`, missing (a history row without its value).
    Relation: extended Kalman filter on bulk temperature and the logarithm of the power, see `melt_belief`.
    Source: assumed constants named in `heating` and `melt_belief`.
    """
    kitchen = Kitchen(request)
    belief = kitchen.belief
    follow(belief, request["history"])
    action, code, seconds_s = decide(kitchen)
    expected_c = hottest_c = belief.t_c
    if action == "burst":
        hottest_c = kitchen.hottest_c(seconds_s)
        expected_c = belief.pot.cooled(belief.after(seconds_s, belief.t_c, belief.log_p), heating.STIR_S)
    elif action == "rest":
        expected_c = belief.pot.cooled(belief.t_c, seconds_s)
    spread_k, power_w = TENTH * belief.sd_k(), belief.power_w()
    turn = belief.bursts == 0 and expected_c < READ_FROM_C
    return {
        "action": action,
        "seconds_s": seconds_s,
        "then": "turn" if turn else "stir",
        "read": action == "burst" and expected_c + spread_k >= READ_FROM_C,
        "bulk_c": belief.t_c,
        "bulk_low_c": belief.t_c - spread_k,
        "bulk_high_c": belief.t_c + spread_k,
        "expected_c": expected_c,
        "hottest_c": hottest_c,
        "power_w": power_w,
        "power_sd_w": power_w * math.sqrt(belief.pp),
        "reason": {"code": "reason." + code, "values": {"bulk_c": belief.t_c, "expected_c": expected_c}},
    }


def decide(kitchen):
    """(action, reason, seconds_s) from the belief and the heat lines."""
    belief = kitchen.belief
    sd_k = belief.sd_k()
    below = normal_below((kitchen.low_c - belief.t_c) / sd_k)
    above = normal_below((belief.t_c - kitchen.high_c) / sd_k)
    if belief.doubt_c is not None:
        return "read_again", "reading_off", 0.0
    if belief.bursts and belief.t_c >= kitchen.stop_c:
        return "stop", "over_stop", 0.0
    known = belief.readings > 0 and not belief.lumpy()
    settled = belief.readings >= MOST_READINGS
    if above > 0.5 and (known or not belief.bursts):
        return "rest", "over_window", rest_s(kitchen)
    inside = kitchen.low_c <= belief.t_c <= kitchen.high_c
    if known and (1.0 - below - above >= READY or (settled and inside)):
        return "ready", "in_window", 0.0
    if inside and not settled:
        return "read_again", "not_sure" if known else "no_reading", 0.0
    if below < 0.8 and known and not settled:
        return "read_again", "not_sure", 0.0
    if belief.t_c >= kitchen.low_c and not known:
        return "read_again", "no_reading", 0.0
    steps = kitchen.longest()
    if steps == 0:
        return "stop", "step_too_coarse", 0.0
    seconds_s = float(steps * kitchen.step_s)
    return "burst", "finish" if belief.after(seconds_s, belief.t_c, belief.log_p) >= kitchen.low_c else "warm_up", seconds_s


def rest_s(kitchen):
    """Seconds of stirring off the heat until the bulk is a quarter of the window below its top, at most 15 min."""
    belief, aim_c = kitchen.belief, kitchen.high_c - 0.25 * (kitchen.high_c - kitchen.low_c)
    low_s, high_s = 0.0, MOST_REST_S
    for _ in range(12):
        middle_s = 0.5 * (low_s + high_s)
        if belief.pot.cooled(belief.t_c, middle_s) > aim_c:
            low_s = middle_s
        else:
            high_s = middle_s
    return 30.0 * math.ceil(high_s / 30.0)
