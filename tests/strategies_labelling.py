"""Sensible requests drawn at random for what is checked and declared of packed goods."""

from amberbench.engine.labelling.declarations import NUTRIENTS
from tests.drawing import maybe


def net_check(rng):
    label = rng.choice([0.05, 0.113, 0.2, 0.34, 1.2])
    weights = [label + rng.gauss(0.001, 0.004) for _ in range(rng.randrange(0, 40))]
    request = {
        "rule": rng.choice(["us", "eu"]),
        "label_kg": label,
        "net_kg": weights,
        "lot_size": rng.randrange(1, 4000),
    }
    maybe(rng, request, "division_kg", rng.choice([0.0001, 0.001, 0.005]))
    return request


def net_weight(rng):
    request = {"label_kg": rng.uniform(0.01, 3), "rule": rng.choice(["us", "eu"])}
    maybe(rng, request, "face_m2", rng.uniform(0.001, 0.2))
    return request


def day(rng):
    return f"20{rng.randrange(20, 40)}-{rng.randrange(1, 13):02}-{rng.randrange(1, 29):02}"


def lot_code(rng):
    return {"made_on": day(rng), "pattern": rng.choice(["YYYY-DDD-A", "YDDDA", "LOT YYMMDDA"])}


def best_by(rng):
    parts = [
        {"name": name, "best_by": rng.choice([None, "2041-01-01"])} for name in ("nuts", "salt")[: rng.randrange(3)]
    ]
    return {"made_on": day(rng), "shelf_days": rng.randrange(1, 400), "parts": parts}


def nutrition(rng):
    return {"amounts": {name: rng.uniform(0, 300) for name in NUTRIENTS if rng.random() < 0.7}}


def content(rng):
    parts = [
        {"name": name, "ingredients": listed, "contains": contains, "kg": rng.choice([0.05, 1.0, 1.0, 7.5])}
        for name, listed, contains in rng.choices(
            [
                ("Caramel", "glucose syrup, sugar, butter (milk), salt", ["milk"]),
                ("Dark chocolate", "cocoa mass, sugar, emulsifier: soya lecithin", ["soya"]),
                ("Almonds", "almonds", ["almond"]),
                ("Salt", "", None),
            ],
            k=rng.randrange(0, 7),
        )
    ]
    request = {"rule": rng.choice(["us", "eu", "uk"]), "name": "Almond caramels", "parts": parts}
    maybe(rng, request, "may_contain", rng.choice([[], ["milk", "pecan"], ["pine_nut", "gluten"]]))
    maybe(rng, request, "words", [{"allergen": "milk", "words": ["milk", "leche"]}])
    maybe(rng, request, "label_kg", rng.uniform(0.01, 2))
    maybe(rng, request, "face_m2", rng.uniform(0.001, 0.2))
    maybe(rng, request, "best_by", day(rng))
    maybe(rng, request, "address", "1 Main St")
    return request


def digits(rng):
    return {"digits": "".join(rng.choice("0123456789") for _ in range(rng.randrange(1, 18)))}


SENSIBLE = {
    "net.check": net_check,
    "label.content": content,
    "label.net_weight": net_weight,
    "label.lot_code": lot_code,
    "label.best_by": best_by,
    "label.nutrition": nutrition,
    "label.check_digit": digits,
}
