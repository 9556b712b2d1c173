"""What a batch, its pieces and its boxes cost, and the price that leaves a wanted margin."""

from .money import HOUR_MS, MILLIONTHS, Share, millionths, parts, total

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document, Readable

PERCENT = 100


def cost(request: "Readable") -> "Document":
    """The cost of a batch from what really went in, by part, with waste shown apart.

    Request: uses [{name, amount (kg or pieces of its lot), lot_amount, lot_price_minor (of the whole lot; null: not
    known)}], waste_share (of what was made, thrown away or bad), hands_s (s), rate_minor_per_h, energy_j (J),
    energy_minor_per_kwh, pieces (good ones), boxes [{name, pieces, packaging_minor}].
    Reply: parts [{name, minor}], total_minor, waste_minor (the share of total_minor that was wasted), piece_minor (per
    good piece, rounded; null: none), boxes [{name, minor}], not_priced (names without a price: the total lacks them).
    Raises: none of its own.
    Relation: amount/lot_amount × price, hands × rate, energy × tariff as exact fractions of whole millionths and
    milliseconds; rounded once, ties up, the parts by largest rest so that they add up to the total.
    Source: practice.
    """
    names, shares, unpriced = [], [], []
    for use in request["uses"]:
        if use["lot_price_minor"] is None:
            unpriced.append(use["name"])
            continue
        names.append(use["name"])
        shares.append(Share(use["lot_price_minor"]).times(millionths(use["amount"]), millionths(use["lot_amount"])))
    if request["rate_minor_per_h"] is not None and request["hands_s"]:
        names.append("hands")
        shares.append(Share(request["rate_minor_per_h"]).times(int(request["hands_s"] * 1000 + 0.5), HOUR_MS))
    if request["energy_minor_per_kwh"] is not None and request["energy_j"]:
        names.append("energy")
        shares.append(Share(request["energy_minor_per_kwh"]).times(int(request["energy_j"] + 0.5), 3600000))
    whole = total(shares)
    wasted = whole.times(millionths(request["waste_share"] or 0.0), MILLIONTHS)
    pieces = request["pieces"]
    boxes = [
        {
            "name": box["name"],
            "minor": whole.times(box["pieces"], pieces).plus(Share(box["packaging_minor"] or 0)).rounded()
            if pieces
            else None,
        }
        for box in request["boxes"]
    ]
    return {
        "parts": [{"name": name, "minor": minor} for name, minor in zip(names, parts(shares))],
        "total_minor": whole.rounded(),
        "waste_minor": wasted.rounded(),
        "piece_minor": whole.times(1, pieces).rounded() if pieces else None,
        "boxes": boxes,
        "not_priced": unpriced,
    }


def price(request: "Readable") -> "Document":
    """The price for a wanted margin, and the margin of a price.

    Request: cost_minor, margin_percent (wanted share of the net price; null: not asked), price_minor (null: not asked),
    tax_percent (in the price; 0: none).
    Reply: price_minor (tax in it, rounded up so that the margin is reached; null: not asked), margin_minor (what a
    price leaves after tax and cost; null), margin_percent (of the net price, two digits; null).
    Raises: none of its own.
    Relation: net = cost / (1 − margin); gross = net × (1 + tax). Example: cost 350, price 1000, no tax: margin 65 %.
    Source: practice.
    """
    tax = millionths(request["tax_percent"] or 0.0) + PERCENT * MILLIONTHS
    reply: "Document" = {"price_minor": None, "margin_minor": None, "margin_percent": None}
    if request["margin_percent"] is not None:
        kept = PERCENT * MILLIONTHS - millionths(request["margin_percent"])
        gross = Share(request["cost_minor"]).times(PERCENT * MILLIONTHS, kept).times(tax, PERCENT * MILLIONTHS)
        reply["price_minor"] = -(-gross.top // gross.bottom)
    if request["price_minor"] is not None:
        net = Share(request["price_minor"]).times(PERCENT * MILLIONTHS, tax)
        left = net.plus(Share(-request["cost_minor"]))
        reply["margin_minor"] = left.rounded()
        if net.top > 0:
            share = left.times(net.bottom * PERCENT * PERCENT, net.top)
            reply["margin_percent"] = share.rounded() / 100.0
    return reply
