"""Sensible requests drawn at random for clusters and the funnel."""

from tests import strategies_chocolate
from tests.drawing import maybe

OVEN = {"rated_w": 1000}
TRAY = {"length_m": 0.45, "width_m": 0.32, "rim_m": 0.01}
# In the narrower window, that of a slab: fills last for minutes there.
ON_NUTS = {
    "rows": [{"clusters": 60, "deposit_kg": 0.012}, {"clusters": 20, "deposit_kg": 0.010}], "second_kg": 0.006,
    "under": [{"material": "pecan", "kg_each": 0.0016, "count": 4}], "tray": TRAY, "spread_m": 0.04,
    "funnel": {"volume_m3": 0.001}, "oven": OVEN, "window_high_c": 77.0,
}  # fmt: skip
ON_A_BED = {
    "caramel_kg": 1.2, "deposit_kg": 0.012, "bed": {"materials": [{"material": "peanut", "share": 1}], "bed_kg_m2": 5},
    "tray": TRAY, "spread_m": 0.04, "funnel": {"volume_m3": 0.001}, "oven": OVEN, "block_kg": 2.0,
    "window_high_c": 77.0,
}  # fmt: skip
# Ten clusters of 9 g and 5 g of caramel on 4.5 g of pecans, 40 mm wide.
LEARNED = {
    "clusters": 10, "together_kg": 0.185, "under_kg": 0.045, "across_m": [0.037, 0.040, 0.043],
    "deposit_kg": 0.009, "second_kg": 0.005, "spread_m": 0.038,
}  # fmt: skip


def _mixed(rng):
    share = rng.uniform(0.2, 0.8)
    kinds = rng.sample(["almond", "peanut", "pretzel", "walnut"], 2)
    return [{"material": kinds[0], "share": share}, {"material": kinds[1], "share": 1.0 - share}]


def sizes_of_things(rng, request):
    """A bowl that holds so much, a share that turns out good, old caramel."""
    maybe(rng, request, "vessel_volume_m3", rng.uniform(0.001, 0.006), 0.4)
    maybe(rng, request, "yield_share", rng.uniform(0.8, 1), 0.3)
    maybe(rng, request, "old", {rng.choice(["kg", "share"]): rng.uniform(0, 0.3), "remelts": rng.randrange(3)}, 0.3)
    maybe(rng, request, "remelts_allowed", rng.randrange(3), 0.3)


def _plan(rng):
    each_kg, room_c = rng.uniform(0.007, 0.018), rng.uniform(16, 27)
    request = {
        "tray": {"length_m": rng.uniform(0.35, 0.6), "width_m": rng.uniform(0.25, 0.4), "rim_m": rng.uniform(0, 0.02)},
        "spread_m": rng.uniform(2.4, 3.2) * (each_kg / 1400.0) ** (1.0 / 3.0) / 1.3, "room_c": room_c,
        "funnel": {"volume_m3": rng.uniform(0.0005, 0.002)},
        "oven": {"rated_w": rng.choice([700, 900, 1000, 1200])},
    }  # fmt: skip
    if rng.random() < 0.5:
        request.update(caramel_kg=rng.uniform(0.5, 3.0), deposit_kg=each_kg)
    else:
        sizes = [each_kg] if rng.random() < 0.6 else [each_kg, each_kg * rng.uniform(0.85, 1.0)]
        request["rows"] = [{"clusters": rng.randrange(30, 60), "deposit_kg": one} for one in sizes]
    if rng.random() < 0.5:
        kg_each = rng.uniform(0.0005, 0.0015)
        request["under"] = [{"material": rng.choice(["pecan", "almond", "pretzel"]), "kg_each": kg_each, "count": 3}]
        maybe(rng, request, "second_kg", rng.uniform(0.003, 0.008))
    elif rng.random() < 0.5:
        request["bed"] = {"materials": _mixed(rng), "bed_kg_m2": rng.uniform(1, 5)}
    maybe(rng, request, "humidity", rng.uniform(0.2, 0.95))
    maybe(rng, request, "firmness", rng.choice(["firm", "borderline", "slumps"]), 0.2)
    maybe(rng, request, "squeeze", rng.choice(["firm", "soft", "brittle"]), 0.2)
    maybe(rng, request, "gap_m", rng.uniform(0.003, 0.015))
    maybe(rng, request, "deposits_per_min", rng.uniform(8, 40))
    maybe(rng, request, "base", "steel_sheet", 0.2)
    maybe(rng, request, "block_kg", rng.uniform(1, 5))
    maybe(rng, request, "vessel", {"mass_kg": rng.uniform(0.1, 1.0)})
    sizes_of_things(rng, request)
    maybe(rng, request, "basis", {"room_c": "measured", "spread_m": "measured"}, 0.3)
    maybe(rng, request, "dip", strategies_chocolate.dip(rng) | {"pickup": rng.uniform(0.2, 0.8)}, 0.3)
    return request


def _fill(rng):
    request = {"pace_kg_s": rng.uniform(0.001, 0.008), "now_c": rng.uniform(69, 79), "fill_kg": rng.uniform(0.1, 1.5)}
    maybe(rng, request, "room_c", rng.uniform(15, 30))
    maybe(rng, request, "h_w_m2k", rng.uniform(5, 20))
    return request


def _learn(rng):
    number, each_kg, nuts_kg = rng.randrange(5, 20), rng.uniform(0.008, 0.02), rng.uniform(0, 0.005)
    across_m = rng.uniform(2.4, 3.2) * (each_kg / 1400.0) ** (1.0 / 3.0) / 1.3
    request = {
        "clusters": number, "together_kg": number * (each_kg + nuts_kg),
        "across_m": [across_m * rng.uniform(0.95, 1.05) for _ in range(rng.randrange(3, 10))],
    }  # fmt: skip
    if rng.random() < 0.5:
        request["under_kg"] = number * nuts_kg
    elif rng.random() < 0.5:
        request["under"] = [{"material": "pecan", "kg_each": max(0.00005, nuts_kg / 3), "count": 3}]
    else:
        request["bed"] = {"materials": _mixed(rng), "bed_kg_m2": rng.uniform(0.5, 2)}
    maybe(rng, request, "deposit_kg", each_kg * rng.uniform(0.7, 1.4))
    maybe(rng, request, "spread_m", across_m * rng.uniform(0.8, 1.2))
    if "deposit_kg" in request:
        maybe(rng, request, "second_kg", each_kg * rng.uniform(0, 0.3))
    return request


SENSIBLE = {"cluster.learn": _learn, "cluster.plan": _plan, "deposit.fill": _fill}
