"""Sensible requests drawn at random for lots, orders and boxes packed."""

from amberbench.engine import catalogue
from amberbench.engine.core import stream_fold
from amberbench.engine.orders import fields as orders
from amberbench.engine.pack import fields as pack
from amberbench.engine.stock import fields as stock
from tests.drawing import maybe

NOW_MS = 1_764_000_000_000
TODAY = "2025-11-24"
MIDNIGHT_MS = NOW_MS - NOW_MS % 86_400_000
HOUR_MS = 3_600_000
MATERIALS = ["caramels/firm", "chocolates/dark", "materials/nuts", "materials/box"]


def day(rng):
    return f"20{rng.randrange(24, 28)}-{rng.randrange(1, 13):02d}-{rng.randrange(1, 29):02d}"


def received(rng):
    body = {"material": rng.choice(MATERIALS), "packs": rng.randrange(1, 9), "pack_amount": rng.choice([1, 2.5, 250])}
    maybe(rng, body, "unit", rng.choice(stock.UNITS))
    maybe(rng, body, "supplier_lot", rng.choice(["118", "A-9", ""]))
    maybe(rng, body, "price_minor", rng.randrange(100_000))
    maybe(rng, body, "currency", "EUR")
    maybe(rng, body, "best_by", day(rng))
    return body


def made(rng):
    body = {"material": rng.choice(MATERIALS), "amount": rng.uniform(0.05, 2)}
    maybe(rng, body, "batch_id", f"b{rng.randrange(4)}")
    maybe(rng, body, "remelts", rng.randrange(4))
    return body


def line(rng):
    if rng.random() < 0.7:
        return {"box_id": f"x{rng.randrange(3)}", "count": rng.randrange(1, 60)}
    if rng.random() < 0.5:
        return {"product_id": f"p{rng.randrange(2)}", "count": rng.randrange(1, 60)}
    return {"product_id": f"p{rng.randrange(2)}", "mass_kg": rng.uniform(0.1, 5)}


def placed(rng):
    body = {"customer": rng.choice(["Corner bakery", ""]), "wanted_ms": NOW_MS + rng.randrange(200) * HOUR_MS,
            "lines": [line(rng) for _ in range(rng.randrange(1, 4))]}  # fmt: skip
    maybe(rng, body, "counter", rng.random() < 0.3)
    maybe(rng, body, "repeats", "week", 0.3)
    maybe(rng, body, "by", "anna", 0.3)
    return body


def handed(rng):
    lines = [line(rng) for _ in range(rng.randrange(1, 4))]
    for one in lines:
        maybe(rng, one, "pack_id", f"k{rng.randrange(3)}", 0.4)
    body = {"lines": lines}
    maybe(rng, body, "seen", rng.randrange(3), 0.7)
    return body


def packed(rng):
    body = {"box_id": f"x{rng.randrange(3)}", "count": rng.randrange(1, 30), "made_on": "2025-11-20"}
    maybe(rng, body, "from", [{"batch_id": f"b{rng.randrange(3)}", "pieces": rng.randrange(1, 300)}])
    maybe(rng, body, "lots", [{"lot_id": f"l{rng.randrange(3)}", "amount": rng.randrange(1, 30)}])
    maybe(rng, body, "best_by", "2026-01-20")
    maybe(rng, body, "seconds", rng.random() < 0.5)
    return body


BODIES = {
    "received": received,
    "made": made,
    "opened": lambda rng: {},
    "left_counted": lambda rng: {"left": rng.choice([0, 1, rng.uniform(0, 9)])},
    "discarded": lambda rng: {"amount": rng.uniform(0.1, 2), "why": rng.choice(stock.WHY_DISCARDED)},
    "merged": lambda rng: {"into_lot_id": f"l{rng.randrange(4)}", "adds": rng.random() < 0.5},
    "photographed": lambda rng: {"photo_id": "p", "bytes": 9000, "width_px": 900, "height_px": 700},
    "placed": placed,
    "changed": lambda rng: {name: value for name, value in placed(rng).items() if rng.random() < 0.5 and name != "by"},
    "cancelled": lambda rng: {"why": "closed"},
    "handed_over": handed,
    "boxing_pinned": lambda rng: {"at_ms": rng.choice([None, NOW_MS + rng.randrange(200) * HOUR_MS])},
    "packed": packed,
    "net_weighed": lambda rng: {"net_kg": rng.uniform(0.1, 0.3)},
    "labels_printed": lambda rng: {"n": rng.randrange(1, 30)},
    "unpacked": lambda rng: {"count": rng.randrange(1, 9), "why": "dented"},
}  # fmt: skip


def body(rng, kind):
    """The body of an event of a kind that a person may well write."""
    return BODIES[kind](rng)


def events_of(rng, known, first):
    """The log of one stream by two phones; some events make no sense, some are taken back."""
    kinds = [rng.choice(first)] + [rng.choice([*sorted(known), "a_stranger"]) for _ in range(rng.randrange(9))]
    log = []
    for seq, kind in enumerate(kinds):
        log.append({"id": f"e{seq}", "device_id": rng.choice("ab"), "seq": seq, "offset_ms": 0.5, "kind": kind,
                    "at_ms": NOW_MS + rng.randrange(1000) * 60_000,
                    "body": {} if kind == "a_stranger" else body(rng, kind)})  # fmt: skip
    for seq in range(rng.randrange(3)):
        taken = {"event_id": rng.choice(log)["id"]}
        log.append(dict(log[0], id=f"u{seq}", seq=90 + seq, kind=rng.choice(["undone", "redone"]), body=taken))
    rng.shuffle(log)
    return log


def folded(rng, name, known, first, stream_id):
    request = {"id": stream_id, "events": events_of(rng, known, first)}
    return catalogue.call(name, request)["document"]


def lots(rng):
    return [folded(rng, "lot.fold", stock.EVENTS, ["received", "made"], f"l{n}") for n in range(rng.randrange(5))]


def orders_of(rng):
    return [folded(rng, "order.fold", orders.EVENTS, ["placed"], f"o{n}") for n in range(rng.randrange(5))]


def packs(rng):
    return [folded(rng, "pack.fold", pack.EVENTS, ["packed"], f"k{n}") for n in range(rng.randrange(5))]


def uses(rng):
    return [{"lot_id": f"l{rng.randrange(6)}", "amount": rng.uniform(0, 3), "at_ms": NOW_MS + rng.randrange(10**7),
             "batch_id": rng.choice([None, "b0", "b1"])} for _ in range(rng.randrange(8))]  # fmt: skip


def overview(rng):
    materials = [{"material": one, "lowest": rng.choice([None, 5])} for one in rng.sample(MATERIALS, 2)]
    return {"lots": lots(rng), "uses": uses(rng), "materials": materials, "today": TODAY}


def _check(rng, kind, events, **more):
    return {"kind": kind, "body": BODIES[kind](rng), "currency": "EUR", "today": TODAY, "now_ms": NOW_MS, **more}


def lot_check(rng):
    kind = rng.choice(sorted(set(stock.EVENTS) - {"merged"}))
    return _check(rng, kind, stock.EVENTS, lot_id="new", lots=lots(rng), uses=uses(rng), materials=MATERIALS)


def order_check(rng):
    kind = rng.choice(["placed", "handed_over"])
    known = {"boxes": ["x0", "x1", "x2"], "products": ["p0", "p1"]}
    order = stream_fold.begun(orders.DOCUMENT) | {"id": "o"} if rng.random() < 0.5 else None
    return _check(rng, kind, orders.EVENTS, today_ms=MIDNIGHT_MS, order=order, **known)


def pack_check(rng):
    kind = rng.choice(sorted(set(pack.EVENTS) - {"unpacked"}))
    return _check(rng, kind, pack.EVENTS, boxes=["x0", "x1", "x2"], label_kg=rng.choice([None, 0.065]))


def pack_boxes(rng):
    batches = [{"batch_id": f"b{n}", "product_id": rng.choice(["p0", "p1", None]), "good": rng.randrange(200)}
               for n in range(rng.randrange(4))]  # fmt: skip
    lines = [[{"product_id": "p0", "count": 9}], [{"product_id": "p0", "count": 4}, {"product_id": "p1", "count": 5}]]
    packaging = [{"material": MATERIALS[0], "amount": 1}]
    boxes = [{"box_id": f"x{n}", "lines": lines[n], "packaging": packaging} for n in range(2)]
    stock_left = [{"lot_id": f"l{n}", "material": MATERIALS[0], "left": rng.randrange(-2, 20)} for n in range(3)]
    return {"batches": batches, "packs": packs(rng), "boxes": boxes, "stock": stock_left,
            "box_id": rng.choice([None, "x0", "x1"]), "count": rng.choice([None, rng.randrange(1, 30)]),
            "seconds": rng.random() < 0.2}  # fmt: skip


SENSIBLE = {
    "lot.fold": lambda rng: {"id": "l", "events": events_of(rng, stock.EVENTS, ["received", "made"])},
    "lot.check": lot_check,
    "stock.overview": overview,
    "order.fold": lambda rng: {"id": "o", "events": events_of(rng, orders.EVENTS, ["placed"])},
    "order.check": order_check,
    "orders.overview": lambda rng: {
        "orders": orders_of(rng),
        "packs": packs(rng),
        "now_ms": NOW_MS,
        "today": TODAY,
        "today_ms": MIDNIGHT_MS,
    },
    "pack.fold": lambda rng: {"id": "k", "events": events_of(rng, pack.EVENTS, ["packed"])},
    "pack.check": pack_check,
    "pack.boxes": pack_boxes,
}
