"""What a batch, its pieces and boxes of several products cost, and the price that leaves a wanted margin."""

from .money import HOUR_MS, MILLIONTHS, Share, millionths, parts, total

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable

PERCENT = 100


def cost(request: "Readable") -> "Document":
    """The cost of a batch from what really went in, by part, with waste shown apart.

    Request: uses [{name, amount (kg or pieces of its lot), lot_amount, lot_price_minor (of the whole lot; null: not
    known)}], waste_share (of what was made, thrown away or bad), hands_s (s), rate_minor_per_h, energy_j (J),
    energy_minor_per_kwh, pieces (good ones), boxes [{name, pieces, packaging (as uses, of one box)}].
    Reply: parts [{name, minor}], total_minor, waste_minor (the share of total_minor that was wasted), piece_minor (per
    good piece, rounded; null: none), boxes [{name, minor, exact_minor (for `cost.price`)}], not_priced (names without a
    price: what they went into lacks them).
    Raises: none of its own.
    Relation: amount/lot_amount × price, hands × rate, energy × tariff as exact fractions of whole millionths and
    milliseconds; rounded once, ties up, the parts by largest rest so that they add up to the total.
    Source: practice.
    """
    names, shares = _of_batch(request)
    whole = total(shares)
    wasted = whole.times(millionths(request["waste_share"] or 0.0), MILLIONTHS)
    pieces = request["pieces"]
    return {
        "parts": [{"name": name, "minor": minor} for name, minor in zip(names, parts(shares))],
        "total_minor": whole.rounded(),
        "waste_minor": wasted.rounded(),
        "piece_minor": whole.times(1, pieces).rounded() if pieces else None,
        "boxes": [_box(box, whole, pieces) for box in request["boxes"]],
        "not_priced": _unpriced(request["uses"] + [use for box in request["boxes"] for use in box["packaging"]]),
    }


def cost_of_box(request: "Readable") -> "Document":
    """The cost of a box of one or several products.

    Request: lines [{name, count, batch (as `cost.batch` is asked: what a piece costs; null: none was counted)}],
    packaging (uses, as of a batch, of one box).
    Reply: parts [{name, minor}] (of each line, then of what it is packed in), total_minor, exact_minor (for
    `cost.price`), not_priced (names without a price, products without a batch: the total lacks them).
    Raises: none of its own.
    Relation: count/pieces × cost of the batch, and the packaging, as `cost` reckons.
    Source: practice.
    """
    known = [line for line in request["lines"] if line["batch"] is not None and line["batch"]["pieces"]]
    packed = [use for use in request["packaging"] if use["lot_price_minor"] is not None]
    names = [line["name"] for line in known] + [use["name"] for use in packed]
    shares = [total(_of_batch(line["batch"])[1]).times(line["count"], line["batch"]["pieces"]) for line in known]
    shares += [_of_lot(use) for use in packed]
    whole = total(shares)
    without = [line["name"] for line in request["lines"] if line not in known]
    used = [use for line in known for use in line["batch"]["uses"]] + request["packaging"]
    return {
        "parts": [{"name": name, "minor": minor} for name, minor in zip(names, parts(shares))],
        "total_minor": whole.rounded(),
        "exact_minor": whole.times(MILLIONTHS, 1).up() / MILLIONTHS,
        "not_priced": without + [name for name in _unpriced(used) if name not in without],
    }


def _of_batch(request: "Readable") -> "tuple[list[str], list[Share]]":
    """What a batch is made of that has a price, and what each costs."""
    priced = [use for use in request["uses"] if use["lot_price_minor"] is not None]
    names, shares = [use["name"] for use in priced], [_of_lot(use) for use in priced]
    if request["rate_minor_per_h"] is not None and request["hands_s"]:
        names.append("hands")
        shares.append(Share(request["rate_minor_per_h"]).times(int(request["hands_s"] * 1000 + 0.5), HOUR_MS))
    if request["energy_minor_per_kwh"] is not None and request["energy_j"]:
        names.append("energy")
        tariff = Share(millionths(request["energy_minor_per_kwh"]), MILLIONTHS)
        shares.append(tariff.times(int(request["energy_j"] + 0.5), 3600000))
    return names, shares


def _unpriced(uses: "Sequence[Readable]") -> list[str]:
    """The names of what has no price, each once."""
    found: list[str] = []
    for use in uses:
        if use["lot_price_minor"] is None and use["name"] not in found:
            found.append(use["name"])
    return found


def _of_lot(use: "Readable") -> Share:
    return Share(use["lot_price_minor"]).times(millionths(use["amount"]), millionths(use["lot_amount"]))


def _box(box: "Readable", whole: Share, pieces: int) -> "Document":
    if not pieces:
        return {"name": box["name"], "minor": None, "exact_minor": None}
    packaging = [_of_lot(use) for use in box["packaging"] if use["lot_price_minor"] is not None]
    cost_of_box = whole.times(box["pieces"], pieces).plus(total(packaging))
    exact_minor = cost_of_box.times(MILLIONTHS, 1).up() / MILLIONTHS
    return {"name": box["name"], "minor": cost_of_box.rounded(), "exact_minor": exact_minor}


def price(request: "Readable") -> "Document":
    """The price for a wanted margin, and the margin of a price.

    Request: cost_minor (not rounded), margin_percent (wanted share of the net price; null: not asked), price_minor
    (null: not asked), tax_percent (in the price; 0: none).
    Reply: price_minor (tax in it, rounded up so that the margin is reached; null: not asked), margin_minor (what a
    price leaves after tax and cost; null), margin_percent (of the net price, two digits; null).
    Raises: none of its own.
    Relation: net = cost / (1 − margin); gross = net × (1 + tax). Example: cost 350, price 1000, no tax: margin 65 %.
    Source: practice.
    """
    tax = millionths(request["tax_percent"] or 0.0) + PERCENT * MILLIONTHS
    spent = Share(millionths(request["cost_minor"]), MILLIONTHS)
    reply: "Document" = {"price_minor": None, "margin_minor": None, "margin_percent": None}
    if request["margin_percent"] is not None:
        kept = PERCENT * MILLIONTHS - millionths(request["margin_percent"])
        gross = spent.times(PERCENT * MILLIONTHS, kept).times(tax, PERCENT * MILLIONTHS)
        reply["price_minor"] = gross.up()
    if request["price_minor"] is not None:
        net = Share(request["price_minor"]).times(PERCENT * MILLIONTHS, tax)
        left = net.plus(Share(-spent.top, spent.bottom))
        reply["margin_minor"] = left.rounded()
        if net.top > 0:
            share = left.times(net.bottom * PERCENT * PERCENT, net.top)
            reply["margin_percent"] = share.rounded() / 100.0
    return reply
