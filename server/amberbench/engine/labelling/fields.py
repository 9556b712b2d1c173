"""Fields of what is checked and declared of packed goods."""

from ..core.field_kinds import boolean, choice, document, integer, many, number, record, text
from .declarations import NUTRIENTS

RULE = choice(("us", "eu"), "whose rule: us, or eu (the UK's is alike)")
LABEL = number("kg", 0.005, 25, "net weight that the label declares")
DATE = text(10, "a day, YYYY-MM-DD")
STATES = ("open", "pass", "fail")
FUNCTIONS = {
    "net.check": {
        "request": {
            "rule": RULE,
            "label_kg": LABEL,
            "net_kg": many(number("kg", 0, 30, "net weight of one package"), 0, 500, "by package", default=[]),
            "lot_size": integer(1, 1000000, "packages of the lot"),
            "division_kg": number("kg", 1e-6, 1, "division of the scale; null: unknown", default=None),
        },
        "reply": {
            "wanted": integer(1, 1000000, "packages to weigh in all, as far as it is known"),
            "mean_error_kg": number("kg", -30, 30, "mean of net less label; null: none weighed", nullable=True),
            "sd_kg": number("kg", 0, 30, "scatter; null below two", nullable=True),
            "most_short_kg": number("kg", 0, 30, "what one package may be short"),
            "mean_limit_kg": number("kg", 0, 300, "how far the mean may lie below; null: not known yet", nullable=True),
            "short": integer(0, 500, "packages that are short by more than one may be"),
            "short_allowed": integer(0, 1000000, "how many may be"),
            "far_short": integer(0, 500, "eu: packages short by more than twice that"),
            "mean": choice(STATES, "the mean"),
            "each": choice(STATES, "each package"),
            "verdict": choice(STATES, "the lot"),
            "division_wanted_kg": number("kg", 0, 1, "the coarsest division that will do"),
            "scale_fits": boolean("whether the scale is fine enough; null: unknown", nullable=True),
        },
    },
    "label.net_weight": {
        "request": {
            "label_kg": LABEL,
            "rule": RULE,
            "face_m2": number("m²", 1e-4, 10, "main face of the package; null: unknown", default=None),
        },
        "reply": {
            "grams": number("", 0, 25000, "in grams"),
            "ounces": number("", 0, 900, "in ounces"),
            "pounds": integer(0, 60, "whole pounds"),
            "rest_ounces": number("", 0, 16, "ounces beside them"),
            "letter_m": number("m", 0, 0.02, "least height of its letters; null: unknown", nullable=True),
            "area_wanted": boolean("whether the package's main face has to be told"),
        },
    },
    "label.nutrition": {
        "request": {
            "amounts": record(
                {
                    name: number("", 0, 1e6, "amount in its own unit; null: not known", default=None)
                    for name in NUTRIENTS
                },
                "by nutrient",
            )
        },
        "reply": {"declared": document("figures by nutrient, as they are declared", of="Values")},
    },
    "label.lot_code": {
        "request": {
            "made_on": DATE,
            "pattern": text(40, "how codes are made", default="YYYY-DDD-A"),
            "used": many(text(60, "a code"), 0, 1000, "codes that are taken", default=[]),
        },
        "reply": {"code": text(200, "the code")},
    },
    "label.best_by": {
        "request": {
            "made_on": DATE,
            "shelf_days": integer(1, 1500, "shelf life of the box"),
            "parts": many(
                record({"name": text(80, "its name"), "best_by": text(10, "its day; null: none", default=None)}, "one"),
                0,
                60,
                "what went in",
                default=[],
            ),
        },
        "reply": {
            "best_by": DATE,
            "because": text(80, "the part that ends first; null: the shelf life", nullable=True),
            "days": integer(0, 1500, "from the day it was made"),
        },
    },
    "label.check_digit": {
        "request": {"digits": text(30, "the number without its check digit")},
        "reply": {"check_digit": integer(0, 9, "its check digit")},
    },
}
