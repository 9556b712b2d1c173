"""Sensible requests drawn at random for the day at one bench."""

from amberbench.engine.batch import fields as fields_day
from amberbench.engine.core import allergens
from amberbench.engine.physics import fields as fields_shop
from tests.drawing import maybe

NOW_MS = 1_764_000_000_000


def batch(rng, name):
    """One batch of today, touched and washed for within the last twelve hours."""
    state = rng.choice(["planned", "open", "open", "closed"])
    one = {"id": name, "kind": rng.choice(fields_day.KINDS), "name": name.upper(), "state": state}
    one["contains"] = rng.sample(allergens.ALLERGENS[:4], rng.randrange(3))
    maybe(rng, one, "under", rng.sample(fields_shop.PIECES, rng.randrange(3)))
    maybe(rng, one, "labels_known", rng.random() < 0.8)
    maybe(rng, one, "coated", rng.random() < 0.6)
    maybe(rng, one, "soon", rng.random() < 0.5, 0.2)
    maybe(rng, one, "hot", state == "open" and rng.random() < 0.7, 0.4)
    for instant in ("since_ms", "touched_ms", "washed_ms", "answered_ms"):
        if state != "planned" or instant == "since_ms":
            maybe(rng, one, instant, NOW_MS - rng.randrange(12 * 3_600_000), 0.6)
    return one


def order(rng, most=7):
    return {"at_ms": NOW_MS, "batches": [batch(rng, f"b{n}") for n in range(rng.randrange(most + 1))]}


SENSIBLE = {"batch.order": order}
