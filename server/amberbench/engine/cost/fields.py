"""Fields of `cost.batch` and `cost.price`: money in whole minor units of the shop's currency."""

from ..core.field_kinds import integer, many, number, record, text

MOST_MINOR = 10**12
MONEY = integer(-MOST_MINOR, MOST_MINOR, "minor units")
# What comes out may be more than anybody pays, where somebody typed grams for kilograms.
COME_TO = integer(-(10**30), 10**30, "minor units")
OR_NONE = dict(MONEY, low=0, default=None)
NAME = text(120, "its name")
AMOUNT = number("", 0.000001, 1e6, "kg or pieces")
USE = record(
    {
        "name": NAME,
        "amount": dict(AMOUNT, low=0, meaning="how much of the lot went in, kg or pieces"),
        "lot_amount": dict(AMOUNT, meaning="how much of it was bought, kg or pieces"),
        "lot_price_minor": dict(OR_NONE, meaning="what all of it cost; null: not known"),
    },
    "something that went in",
)
BATCH = {
    "uses": many(USE, 0, 200, "what went in"),
    "hands_s": number("s", 0, 1e7, "hands on it; null: not known", default=None),
    "rate_minor_per_h": dict(OR_NONE, meaning="an hour of hands; null: not reckoned"),
    "energy_j": number("J", 0, 1e12, "energy of the bursts; null: not known", default=None),
    "energy_minor_per_kwh": number("", 0, 1e6, "a kilowatt hour, minor units; null: not reckoned", default=None),
    "pieces": integer(0, 10**7, "good pieces"),
}
PARTS = many(record({"name": NAME, "minor": COME_TO}, "a part"), 0, 300, "what each part costs")
EXACT = number("", -1e30, 1e30, "minor units, not rounded", nullable=True)
LINE = record(
    {
        "name": NAME,
        "count": integer(1, 100000, "how many of it"),
        "batch": record(BATCH, "a batch of it, by which they are reckoned; null: none was counted", default=None),
    },
    "so many of a product",
)
FUNCTIONS = {
    "cost.batch": {
        "request": dict(
            BATCH,
            waste_share=number("", 0, 1, "share of what was made that was thrown away or bad", default=None),
            boxes=many(
                record(
                    {
                        "name": NAME,
                        "pieces": integer(0, 100000, "pieces in a box"),
                        "packaging": many(USE, 0, 200, "box, cups and label of one", default=[]),
                    },
                    "a box",
                ),
                0,
                200,
                "boxes it goes into",
                default=[],
            ),
        ),
        "reply": {
            "parts": PARTS,
            "total_minor": dict(COME_TO, meaning="all parts"),
            "waste_minor": dict(COME_TO, meaning="what of it was wasted"),
            "piece_minor": dict(COME_TO, meaning="a good piece; null: there is none", nullable=True),
            "boxes": many(
                record(
                    {
                        "name": NAME,
                        "minor": dict(COME_TO, nullable=True),
                        "exact_minor": EXACT,
                    },
                    "a box",
                ),
                0,
                200,
                "what a box of it costs",
            ),
            "not_priced": many(NAME, 0, 40200, "what has no price: what it went into lacks it"),
        },
    },
    "cost.box": {
        "request": {
            "lines": many(LINE, 0, 40, "what is in it"),
            "packaging": many(USE, 0, 200, "box, cups and label of one", default=[]),
        },
        "reply": {
            "parts": PARTS,
            "total_minor": dict(COME_TO, meaning="all parts"),
            "exact_minor": EXACT,
            "not_priced": many(NAME, 0, 8440, "what has no price, and products of which no batch was counted"),
        },
    },
    "cost.months": {
        "request": {
            "batches": many(
                record(
                    {
                        "month": text(7, "YYYY-MM in which it was closed"),
                        "planned": integer(1, 10**7, "pieces that were planned"),
                        "good": integer(0, 10**7, "good pieces"),
                        "cost_minor": dict(OR_NONE, meaning="what all of it cost; null: not known"),
                        "hands_s": number("s", 0, 1e7, "hands on it; null: not known", default=None),
                    },
                    "a closed batch",
                ),
                0,
                20000,
                "closed batches",
                default=[],
            ),
        },
        "reply": {
            "months": many(
                record(
                    {
                        "month": text(7, "YYYY-MM"),
                        "batches": integer(1, 20000, "how many were closed"),
                        "good_share": number("", 0, 1e7, "good pieces of those planned"),
                        "piece_minor": dict(EXACT, meaning="a good piece, in hundredths of a minor unit; null: none"),
                        "piece_s": number("s", 0, 1e13, "hands on a good piece; null: not known", nullable=True),
                    },
                    "a month",
                ),
                0,
                20000,
                "months with closed batches, the oldest first",
            ),
        },
    },
    "cost.price": {
        "request": {
            "cost_minor": number("", 0, MOST_MINOR, "what it costs, minor units, not rounded"),
            "margin_percent": number(
                "", 0, 99, "wanted share of the net price, percent; null: not asked", default=None
            ),
            "price_minor": dict(OR_NONE, meaning="a price, tax in it; null: not asked"),
            "tax_percent": number("", 0, 100, "tax in the price, percent; null: none", default=None),
        },
        "reply": {
            "price_minor": dict(COME_TO, meaning="the price for the margin; null: not asked", nullable=True),
            "margin_minor": dict(COME_TO, meaning="what the price leaves; null: not asked", nullable=True),
            "margin_percent": number("", -1e30, 100, "of the net price, percent; null: none", nullable=True),
        },
    },
}
