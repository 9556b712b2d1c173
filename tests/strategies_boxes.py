"""Sensible requests drawn at random for tracing and for cost."""

from tests.drawing import maybe


def shop_graph(rng, batches=12):
    """What went into what in an invented shop: lots into batches, leftovers on, boxes, orders, customers."""
    links = []

    def link(one, other):
        links.append({"from": one, "to": other})

    for number in range(batches):
        node = f"batch/b{number}"
        for lot in rng.sample(range(batches), rng.randrange(1, 4)):
            link(f"lot/l{lot}", node)
        if rng.random() < 0.3:
            link(node, f"lot/left{number}")
            link(f"lot/left{number}", f"batch/b{rng.randrange(batches)}")
        if rng.random() < 0.9:
            link(node, f"pack/p{rng.randrange(batches)}")
    for number in range(batches):
        link(f"pack/p{number}", f"order/o{rng.randrange(batches)}")
        link(f"order/o{number}", f"customer/c{rng.randrange(4)}")
    return links


def walk(rng):
    links = shop_graph(rng)
    return {"start": rng.choice(links)[rng.choice(["from", "to"])], "links": links}


def cost(rng):
    uses = []
    for name in ("caramel", "chocolate", "salt", "boxes")[: rng.randrange(5)]:
        use = {"name": name, "amount": rng.uniform(0, 6), "lot_amount": rng.uniform(0.5, 25)}
        maybe(rng, use, "lot_price_minor", rng.randrange(20000), 0.9)
        uses.append(use)
    request = {"uses": uses, "pieces": rng.randrange(0, 300)}
    maybe(rng, request, "waste_share", rng.uniform(0, 0.3))
    maybe(rng, request, "hands_s", rng.uniform(0, 20000))
    maybe(rng, request, "rate_minor_per_h", rng.randrange(5000))
    maybe(rng, request, "energy_j", rng.uniform(0, 3e6))
    maybe(rng, request, "energy_minor_per_kwh", rng.randrange(60))
    maybe(rng, request, "boxes", [{"name": "box of 9", "pieces": 9, "packaging_minor": rng.randrange(200)}])
    return request


def price(rng):
    request = {"cost_minor": rng.randrange(10000)}
    maybe(rng, request, "margin_percent", rng.uniform(0, 90))
    maybe(rng, request, "price_minor", rng.randrange(20000))
    maybe(rng, request, "tax_percent", rng.choice([4, 7, 10, 21]))
    return request


SENSIBLE = {"trace.walk": walk, "cost.batch": cost, "cost.price": price}
