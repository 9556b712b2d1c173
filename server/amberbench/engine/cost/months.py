"""Yield, cost and time of a shop's batches, month by month."""

from .money import Share

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from ..core.annotations import Document, Readable

HUNDREDTHS = 100


def by_month(request: "Readable") -> "Document":
    """What of planned pieces came out good, what a good piece cost and how long hands were on it, by month.

    Request: batches [{month (YYYY-MM), planned, good (pieces), cost_minor (null: not known), hands_s (s; null)}].
    Reply: months [{month, batches, good_share, piece_minor (hundredths, ties up; null: nothing with a price came out),
    piece_s (s; null)}], the oldest first.
    Raises: none of its own.
    Relation: sums over sums: a large batch counts for more; of cost and time only batches that tell them.
    Source: practice.
    """
    by_name: "dict[str, list[Readable]]" = {}
    for one in request["batches"]:
        by_name.setdefault(one["month"], []).append(one)
    return {"months": [_month(name, by_name[name]) for name in sorted(by_name)]}


def _month(name: str, batches: "Sequence[Readable]") -> "Document":
    priced = [one for one in batches if one["cost_minor"] is not None]
    timed = [one for one in batches if one["hands_s"] is not None]
    priced_pieces, timed_pieces = sum(one["good"] for one in priced), sum(one["good"] for one in timed)
    piece_minor = None
    if priced_pieces:
        cost = Share(sum(one["cost_minor"] for one in priced) * HUNDREDTHS, priced_pieces)
        piece_minor = cost.rounded() / HUNDREDTHS
    return {
        "month": name,
        "batches": len(batches),
        "good_share": sum(one["good"] for one in batches) / sum(one["planned"] for one in batches),
        "piece_minor": piece_minor,
        "piece_s": sum(one["hands_s"] for one in timed) / timed_pieces if timed_pieces else None,
    }
