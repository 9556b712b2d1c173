"""Requests about melting, drawn at random."""

from tests.drawing import maybe


def oven(rng):
    if rng.random() < 0.3:
        power = rng.uniform(300, 900)
        return {"power_w": power, "power_sd_w": 0.1 * power, "turntable": rng.random() < 0.7}
    oven = {"rated_w": rng.choice([600, 700, 800, 900, 1000, 1100, 1200, 1400])}
    maybe(rng, oven, "turntable", rng.random() < 0.7)
    maybe(rng, oven, "unevenness", rng.uniform(1.2, 3.0), 0.3)
    return oven


def _melt(rng):
    low = rng.uniform(66, 73)
    request = {"mass_kg": rng.uniform(0.4, 4.0), "oven": oven(rng), "room_c": rng.uniform(15, 30)}
    maybe(rng, request, "start_c", rng.uniform(10, 30))
    if rng.random() < 0.4:
        request.update(window_low_c=low, window_high_c=low + rng.uniform(5, 8))
    maybe(rng, request, "vessel", {"mass_kg": rng.uniform(0.1, 2.0)})
    maybe(rng, request, "step_s", rng.choice([1, 5, 10]))
    return request


def _next_burst(rng):
    request, history, bulk = _melt(rng), [], 20.0
    for _ in range(rng.randrange(6)):
        bulk += rng.uniform(5, 18)
        history.append({"kind": "burst", "seconds_s": rng.choice([20, 30, 45, 60])})
        history.append({"kind": "stir", "free": bulk > 50})
        if bulk > 46:
            history.append({"kind": "reading", "surface_c": min(145.0, bulk + rng.gauss(-1, 2))})
        if rng.random() < 0.1:
            history.append({"kind": "rest", "seconds_s": rng.uniform(10, 400)})
    return dict(request, history=history)


def _water_test(rng):
    water, watts, seconds = rng.uniform(0.5, 1.5), rng.uniform(400, 1000), rng.uniform(45, 120)
    start = rng.uniform(8, 22)
    request = {"water_kg": water, "start_c": start, "end_c": start + watts * seconds / (water * 4187),
               "seconds_s": seconds}  # fmt: skip
    if rng.random() < 0.5:
        request.update(container_kg=rng.uniform(0.2, 0.8), room_c=start)
    return request


SENSIBLE = {
    "melt.oven_from_water_test": _water_test,
    "melt.plan": _melt,
    "melt.next_burst": _next_burst,
    "melt.plan_jacket": lambda rng: {
        "block": {name: rng.uniform(0.05, 0.3) for name in ("length_m", "width_m", "height_m")},
        "jacket_c": rng.uniform(84, 93), "start_c": rng.uniform(15, 30), "chopped_m": rng.choice([None, 0.02])},
}  # fmt: skip
