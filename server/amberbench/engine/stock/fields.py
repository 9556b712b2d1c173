"""The events of a lot, the lot as a document, and what its functions take and give.

A material is named by "caramels/<id>", "chocolates/<id>" or "materials/<id>". Amounts are in the lot's `unit`: kg or
pieces ("each"). Money is whole numbers of the smallest coin.
"""

from ..core import stream_fold
from ..core.field_kinds import boolean, choice, document, integer, many, number, record, text, together
from ..core.fields import PHOTOGRAPHED, WARNINGS

UNITS = ("kg", "each")
WHY_DISCARDED = ("spoilt", "past_best_by", "damaged", "dropped", "recalled", "other")
MATERIAL = text(90, "what it is: caramels/<id>, chocolates/<id> or materials/<id>")
UNIT = choice(UNITS, "unit of its amounts", default="kg")
AMOUNT = number("", 0, 100000, "how much, in the lot's unit")
SOME = dict(AMOUNT, low=0.000001)
REMELTS = integer(0, 50, "how often it has been melted", default=0)
EVENTS = {
    "received": together(
        {
            "material": MATERIAL,
            "unit": UNIT,
            "supplier_id": stream_fold.OR_NONE,
            "supplier": text(80, "the supplier as it was typed", default=""),
            "supplier_lot": text(60, "the supplier's lot", default=""),
            "packs": integer(1, 100000, "how many packs", default=1),
            "pack_amount": dict(SOME, meaning="how much is in a pack"),
            "price_minor": dict(stream_fold.MONEY, meaning="what all packs cost; null: nobody knows"),
            "currency": stream_fold.CURRENCY,
            "best_by": dict(stream_fold.DAY, meaning="best by; null: nobody knows"),
        },
        stream_fold.BY,
    ),
    "made": together(
        {
            "material": MATERIAL,
            "unit": UNIT,
            "batch_id": dict(stream_fold.OR_NONE, meaning="the batch it was left of"),
            "amount": SOME,
            "remelts": REMELTS,
            "best_by": dict(stream_fold.DAY, meaning="best by; null: nobody knows"),
        },
        stream_fold.BY,
    ),
    "opened": stream_fold.BY,
    "left_counted": together({"left": AMOUNT}, stream_fold.BY),
    "discarded": together(
        {
            "amount": SOME,
            "why": choice(WHY_DISCARDED, "why", default="other"),
            "text": text(200, "the same in words", default=""),
        },
        stream_fold.BY,
    ),
    "merged": together(
        {
            "into_lot_id": text(64, "the lot it now belongs to"),
            "adds": boolean("whether it is poured together; false: one delivery, written down twice", default=True),
        },
        stream_fold.BY,
    ),
    "photographed": PHOTOGRAPHED,
}
LOT = {
    "id": stream_fold.ID,
    "material": dict(MATERIAL, default=""),
    "unit": UNIT,
    "made_from": dict(stream_fold.OR_NONE, meaning="the batch it was left of"),
    "supplier_id": stream_fold.OR_NONE,
    "supplier": text(80, "the supplier as it was typed", default=""),
    "supplier_lot": text(60, "the supplier's lot", default=""),
    "packs": integer(0, 100000, "how many packs", default=0),
    "amount": dict(AMOUNT, high=1e10, meaning="how much was got in all"),
    "price_minor": dict(stream_fold.MONEY, meaning="what all of it cost; null: nobody knows"),
    "currency": stream_fold.CURRENCY,
    "best_by": dict(stream_fold.DAY, meaning="best by; null: nobody knows"),
    "received_ms": dict(stream_fold.AT_OR_NONE, meaning="when it came; null: nobody has written it down"),
    "opened_ms": dict(stream_fold.AT_OR_NONE, meaning="when it was opened"),
    "remelts": REMELTS,
    "counts": many(record({"at_ms": stream_fold.AT, "left": AMOUNT}, "a count"), 0, 20000, "counts", default=[]),
    "discarded": many(
        record(
            {
                "at_ms": stream_fold.AT,
                "amount": AMOUNT,
                "why": choice(WHY_DISCARDED, "why"),
                "text": text(200, "the same in words"),
            },
            "what was thrown away",
        ),
        0,
        20000,
        "what was thrown away",
        default=[],
    ),
    "photo_id": dict(stream_fold.OR_NONE, meaning="photo of its label"),
    "merged_into": dict(stream_fold.OR_NONE, meaning="the lot it now belongs to"),
    "merged_ms": dict(stream_fold.AT_OR_NONE, meaning="since when"),
    "adds": boolean("whether its amount went there; false: it was one delivery, written down twice", default=True),
}
USE = {
    "lot_id": stream_fold.ID,
    "amount": dict(AMOUNT, meaning="how much, in the lot's unit"),
    "at_ms": stream_fold.AT,
    "batch_id": dict(stream_fold.OR_NONE, meaning="the batch it went into; null: boxes"),
}
DIFFERENCES = ("below_zero", "used_before_it_came", "never_came", "written_twice", "ring", "other_unit")
LEFT = {
    "lot_id": stream_fold.ID,
    "material": text(90, "what it is"),
    "unit": choice(UNITS, "unit of its amounts"),
    "got": number("", -1e15, 1e15, "how much came, with what was poured to it"),
    "used": number("", -1e15, 1e15, "how much went into batches and boxes"),
    "left": number("", -1e15, 1e15, "what is left; below zero: a difference"),
    "best_by": stream_fold.DAY,
    "received_ms": dict(stream_fold.AT_OR_NONE, meaning="when it came"),
    "is_past": boolean("whether its best by is over"),
    "is_open": boolean("whether there is some left to use"),
    "differences": many(choice(DIFFERENCES, "what does not add up"), 0, 6, "what does not add up"),
}
CHECK = {
    "kind": text(40, "what happened"),
    "body": document("what is to be written", of="Values"),
    "currency": dict(stream_fold.CURRENCY, meaning="the shop's currency"),
    "today": text(10, "today, YYYY-MM-DD"),
    "now_ms": number("ms", 0, 1e14, "corrected time now"),
}
CHECKED = {"body": document("the same, with what was left out", of="Values"), "warnings": WARNINGS}
FUNCTIONS = {
    "lot.fold": stream_fold.of_fold("Lot"),
    "lot.check": {
        "request": together(
            CHECK,
            {
                "lot_id": stream_fold.ID,
                "lots": many(record(LOT, "a lot"), 0, 20000, "the lots there are", default=[]),
                "uses": many(record(USE, "a use"), 0, 200000, "what went into batches and boxes", default=[]),
                "materials": many(text(90, "a material"), 0, 5000, "those of the shop", default=[]),
                "unit": dict(UNIT, meaning="the shop's unit of what came; null: not looked at", default=None),
            },
        ),
        "reply": CHECKED,
    },
    "stock.overview": {
        "request": {
            "lots": many(record(LOT, "a lot"), 0, 20000, "the lots there are"),
            "uses": many(record(USE, "a use"), 0, 200000, "what went into batches and boxes", default=[]),
            "materials": many(
                record(
                    {
                        "material": MATERIAL,
                        "unit": UNIT,
                        "lowest": dict(AMOUNT, meaning="to be bought below this; null: never", default=None),
                    },
                    "a material",
                ),
                0,
                5000,
                "those of the shop",
                default=[],
            ),
            "today": text(10, "today, YYYY-MM-DD"),
        },
        "reply": {
            "lots": many(record(LEFT, "a lot"), 0, 40000, "open ones first, oldest best by first"),
            "materials": many(
                record(
                    {
                        "material": MATERIAL,
                        "unit": choice(UNITS, "unit of its amounts"),
                        "left": number("", -1e15, 1e15, "what is left of its lots that are not past their day"),
                        "lowest": dict(AMOUNT, default=None),
                        "is_low": boolean("whether it is to be bought"),
                        "best_by": stream_fold.DAY,
                    },
                    "a material",
                ),
                0,
                25000,
                "those of the shop, then what lots name besides",
            ),
            "to_count": many(stream_fold.ID, 0, 40000, "lots that do not add up: to be counted"),
        },
    },
}
