"""Sensible requests drawn at random for chocolate, the room and caramel that flows."""

from tests.drawing import maybe


def _coating(rng):
    request = {"pieces": rng.randrange(1, 400), "method": rng.choice(["fork", "enrober", "enrober_with_bottomer"])}
    if rng.random() < 0.6:
        request["piece"] = {name: rng.uniform(0.01, 0.05) for name in ("length_m", "width_m", "height_m")}
        maybe(rng, request, "thickness_m", {name: rng.uniform(0.0003, 0.003) for name in ("bottom", "side", "top")})
        maybe(rng, request, "pickup", rng.uniform(0.1, 1.0), 0.3)
        maybe(rng, request, "pocket_m", {"length_m": 0.03, "width_m": 0.028, "height_m": 0.02})
    else:
        request.update(pickup=rng.uniform(0.1, 1.0), centre_kg=rng.uniform(0.005, 0.04))
    if rng.random() < 0.4:
        request.update(prebottom_m=rng.uniform(0.0003, 0.002), prebottom_m2=rng.uniform(0.02, 0.3))
    return request


def _chocolate(rng):
    kinds = ["dark_chocolate", "milk_chocolate", "white_chocolate"]
    request = {"chocolate": rng.choice(kinds), "mass_kg": rng.uniform(0.3, 6.0), "room_c": rng.uniform(15, 25)}
    own = {"melt_low_c": 42, "melt_high_c": 50, "cool_low_c": 26.5, "cool_high_c": 27.5, "work_low_c": 29.5,
           "work_high_c": 31}  # fmt: skip
    maybe(rng, request, "targets", own, 0.3)
    return request


def _temper(rng):
    request = _chocolate(rng)
    maybe(rng, request, "melt_c", rng.uniform(45, 50))
    maybe(rng, request, "seed_c", rng.uniform(16, 24))
    return request


def _hold(rng):
    request = _chocolate(rng) | {"now_c": rng.uniform(28, 33)}
    maybe(rng, request, "bowl", {"mass_kg": rng.uniform(0.2, 2.0)})
    return request


def _bowl(rng):
    request = _temper(rng)
    maybe(rng, request, "bowl", {"mass_kg": rng.uniform(0.2, 2.0)})
    return request


def _salting(rng):
    request = {"dip_s": rng.uniform(5, 60), "pieces": rng.randrange(1, 300), "salt_each_kg": rng.uniform(5e-5, 3e-4)}
    maybe(rng, request, "set_s", rng.uniform(60, 400))
    return request


def dip(rng):
    """How the pieces of a slab are dipped."""
    asked = {"method": rng.choice(["fork", "enrober"]), "top_mark": rng.random() < 0.5, "dip_s": rng.uniform(5, 60)}
    maybe(rng, asked, "salt_each_kg", rng.uniform(5e-5, 3e-4))
    maybe(rng, asked, "prebottom_m", rng.uniform(0.0003, 0.002))
    maybe(rng, asked, "pickup", rng.uniform(0.1, 1.0), 0.3)
    return asked


def _room(rng):
    request = {"room_c": rng.uniform(14, 30)}
    maybe(rng, request, "humidity", rng.uniform(0.2, 0.95), 0.9)
    maybe(rng, request, "surface_c", rng.uniform(4, 30))
    maybe(rng, request, "centre_c", rng.uniform(15, 30))
    maybe(rng, request, "chocolate", rng.choice(["dark_chocolate", "milk_chocolate", "white_chocolate", None]))
    return request


SENSIBLE = {
    "chocolate.coating": _coating,
    "chocolate.plan": _bowl,
    "chocolate.temper": _temper,
    "chocolate.hold": _hold,
    "chocolate.salting": _salting,
    "room.dew_point": lambda rng: {"temp_c": rng.uniform(-20, 45), "humidity": rng.uniform(0.1, 1.0)},
    "room.advise": _room,
    "flow.viscosity": lambda rng: {"temp_c": rng.uniform(15, 85), "moisture": rng.uniform(0.06, 0.13)},
}
