"""Sensible requests drawn at random for needs, tracing and cost."""

from tests.drawing import maybe
from tests.strategies_batch import any_bench


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
        if rng.random() < 0.3:
            link(f"lot/{rng.choice(['left', 'l'])}{number}", f"lot/l{rng.randrange(batches)}")
    for number in range(batches):
        link(f"pack/p{number}", f"order/o{rng.randrange(batches)}")
        link(f"order/o{number}", f"customer/c{rng.randrange(4)}")
    return links


def lines(links):
    """As `trace.walk` is asked."""
    return "\n".join(f"{link['from']}\t{link['to']}" for link in links)


def walk(rng):
    links = shop_graph(rng)
    return {"start": rng.choice(links)[rng.choice(["from", "to"])], "links": lines(links)}


def used(rng, *names):
    uses = [{"name": name, "amount": rng.uniform(0, 6), "lot_amount": rng.uniform(0.5, 25)} for name in names]
    for use in uses:
        maybe(rng, use, "lot_price_minor", rng.randrange(20000), 0.9)
    return uses


def one_batch(rng):
    uses = used(rng, *("caramel", "chocolate", "salt")[: rng.randrange(4)])
    request = {"uses": uses, "pieces": rng.randrange(0, 300)}
    maybe(rng, request, "hands_s", rng.uniform(0, 20000))
    maybe(rng, request, "rate_minor_per_h", rng.randrange(5000))
    maybe(rng, request, "energy_j", rng.uniform(0, 3e6))
    maybe(rng, request, "energy_minor_per_kwh", rng.choice([28.5, rng.randrange(60)]))
    return request


def cost(rng):
    request = one_batch(rng)
    maybe(rng, request, "waste_share", rng.uniform(0, 0.3))
    packaging = used(rng, "carton", "cup", "label")
    maybe(rng, request, "boxes", [{"name": "box of 9", "pieces": 9, "packaging": packaging}])
    return request


def box(rng):
    lines = [{"name": name, "count": rng.randrange(1, 13)} for name in ("squares", "clusters", "rolls")]
    for line in lines:
        maybe(rng, line, "batch", one_batch(rng), 0.9)
    return {"lines": lines[: rng.randrange(4)], "packaging": used(rng, "carton", "cup")}


def months(rng):
    batches = []
    for _ in range(rng.randrange(8)):
        one = {
            "month": f"2026-{rng.randrange(1, 13):02d}",
            "planned": rng.randrange(1, 200),
            "good": rng.randrange(200),
        }
        maybe(rng, one, "cost_minor", rng.randrange(9000), 0.8)
        maybe(rng, one, "hands_s", rng.uniform(0, 9000), 0.8)
        batches.append(one)
    return {"batches": batches}


def price(rng):
    request = {"cost_minor": rng.choice([99.45, rng.randrange(10000)])}
    maybe(rng, request, "margin_percent", rng.uniform(0, 90))
    maybe(rng, request, "price_minor", rng.randrange(20000))
    maybe(rng, request, "tax_percent", rng.choice([4, 7, 10, 21]))
    return request


ASKED = {
    "squares": {
        "kind": "slab",
        "request": {"piece_length_m": 0.024, "piece_width_m": 0.02, "slab_height_m": 0.01, "bars_m": [0.012]},
    },
    "clusters": {"kind": "cluster", "request": {"deposit_kg": 0.012, "second_kg": 0.004}},
}


def needs(rng, orders=5):
    """An invented shop: three products, two boxes, some orders, some lots."""
    products = []
    for name in ("squares", "clusters", "rolls"):
        product = {"product_id": name, "piece_kg": rng.uniform(0.006, 0.02), "batch_pieces": rng.randrange(20, 200)}
        product["per_piece"] = [{"material": "caramel", "amount": rng.uniform(0.005, 0.02)}]
        maybe(rng, product, "yield_share", rng.uniform(0.7, 1))
        maybe(rng, product, "in_hand", rng.randrange(20))
        maybe(rng, product, "block_pieces", rng.randrange(5, 60))
        if name in ASKED:
            maybe(rng, product, "asked", dict(ASKED[name], material="caramel"))
        products.append(product)
    boxes = [
        {"box_id": "of 9", "contents": [{"product_id": "squares", "count": 9}],
         "packaging": [{"material": "carton", "amount": 1}]},
        {"box_id": "mixed", "contents": [{"product_id": name, "count": 4} for name in ("squares", "clusters")]},
    ]  # fmt: skip
    rows = []
    for number in range(rng.randrange(orders + 1)):
        line = rng.choice([
            {"box_id": "of 9", "missing": rng.randrange(60)},
            {"box_id": "mixed", "missing": rng.randrange(60)},
            {"product_id": "rolls", "missing": rng.randrange(100)},
            {"product_id": "clusters", "missing": 0, "mass_kg": rng.uniform(0.05, 2)},
        ])  # fmt: skip
        row = {"order_id": f"o{number}", "lines": [line]}
        maybe(rng, row, "wanted_ms", 1_764_000_000_000 + 3_600_000 * rng.randrange(100), 0.8)
        rows.append(row)
    lots = [
        {"lot_id": f"l{number}", "material": rng.choice(["caramel", "carton"]), "left": rng.randrange(-2, 30),
         "is_past": rng.random() < 0.1}
        for number in range(rng.randrange(6))
    ]  # fmt: skip
    return {"orders": rows, "boxes": boxes, "products": products, "lots": lots}


def gathered(rng):
    """The same orders and lots, with a shop and some batches along their way."""
    asked = needs(rng)
    product = {"kind": "slab", "caramel_id": "firm", "piece_length_m": 0.024, "slab_height_m": 0.01}
    shop = {
        "products": [
            dict(product, id="squares", piece_width_m=rng.choice([0.024, None])),
            {"id": "clusters", "kind": "cluster", "cluster": {"deposit_kg": 0.012}},
        ],
        "boxes": [{"id": "of 9", "lines": [{"product_id": "squares", "count": 9}]}],
        "caramels": [{"id": "firm", "block_kg": 2.4}],
        "vessels": [{"id": "bowl", "volume_m3": 0.004}],
    }
    benches = [any_bench(rng) for _ in range(rng.randrange(3))]
    batches = [
        {"id": f"b{number}", "plan": dict(one.plan, product_id="squares"), "run": one.run}
        for number, one in enumerate(benches)
    ]
    request = {"shop": shop, "orders": asked["orders"], "lots": asked["lots"], "batches": batches}
    return request | {"packs": [], "now_ms": 1_764_000_000_000}


SENSIBLE = {
    "needs.gather": gathered,
    "trace.walk": walk,
    "cost.batch": cost,
    "cost.box": box,
    "cost.months": months,
    "cost.price": price,
    "needs.plan": needs,
}
