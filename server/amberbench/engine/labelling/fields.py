"""Fields of what is checked and declared of packed goods."""

from ..core.allergens import ALLERGENS
from ..core.field_kinds import boolean, choice, document, integer, many, number, record, text
from .declarations import NUTRIENTS

RULE = choice(("us", "eu"), "whose rule: us, or eu (the UK's is alike)")
LABEL = number("kg", 0.005, 25, "net weight that the label declares")
DATE = text(10, "a day, YYYY-MM-DD")
STATES = ("open", "pass", "fail")
ALLERGEN = choice(ALLERGENS, "an allergen")
FACE = number("m²", 1e-4, 10, "main face of the package; null: unknown", default=None)
DAY_OR_NONE = text(10, "a day, YYYY-MM-DD; null: not set", default=None)
NET = {
    "grams": number("", 0, 25000, "in grams"),
    "ounces": number("", 0, 900, "in ounces"),
    "pounds": integer(0, 60, "whole pounds"),
    "rest_ounces": number("", 0, 16, "ounces beside them"),
    "letter_m": number("m", 0, 0.02, "least height of its letters; null: unknown", nullable=True),
    "area_wanted": boolean("whether the package's main face has to be told"),
}
CONTENT = {
    "rule": choice(("us", "eu", "uk"), "whose rule"),
    "name": text(80, "what it is called"),
    "parts": many(
        record(
            {
                "name": text(80, "its name"),
                "ingredients": text(1000, "ingredients as its label lists them", default=""),
                "contains": many(ALLERGEN, 0, 40, "allergens on its label; null: nobody copied them", default=None),
                "kg": number("kg", 0, 1e5, "how much went in"),
            },
            "a part",
        ),
        0,
        60,
        "what went in",
    ),
    "may_contain": many(ALLERGEN, 0, 40, "what was on the bench unwashed", default=[]),
    "words": many(
        record({"allergen": ALLERGEN, "words": many(text(40, "a word"), 0, 40, "words for it")}, "an allergen's words"),
        0,
        40,
        "what allergens are called on this label, the word to print first",
        default=[],
    ),
    "label_kg": dict(LABEL, meaning="net weight that the label declares; null: not set", default=None),
    "face_m2": FACE,
    "code": text(60, "its lot", default=""),
    "made_on": DAY_OR_NONE,
    "best_by": DAY_OR_NONE,
    "address": text(300, "the maker's address", default=""),
    "e_mark": boolean("whether the e mark is wanted", default=False),
    "net_passed": boolean("whether the lot's net contents passed by the EU's rule", default=False),
}
CONTENT_REPLY = {
    "name": CONTENT["name"],
    "ingredients": many(
        record(
            {
                "text": text(100000, "so much of the list"),
                "is_strong": boolean("whether it names an allergen and stands out"),
            },
            "so much of the list",
        ),
        1,
        20000,
        "the list of ingredients, piece by piece",
    ),
    "contains": many(ALLERGEN, 0, 40, "allergens of the line of their own; us alone"),
    "allergens": many(ALLERGEN, 0, 40, "allergens that the rule names"),
    "may_contain": many(ALLERGEN, 0, 40, "what may be in it besides"),
    "net": record(NET, "the declared weight; null: not set", nullable=True),
    "e_mark": boolean("whether the e mark may stand beside the net weight"),
    "code": CONTENT["code"],
    "made_on": text(10, "a day; null: not set", nullable=True),
    "best_by": text(10, "a day; null: not set", nullable=True),
    "address": CONTENT["address"],
    "warnings": many(
        record({"code": text(40, "key of the sentence"), "values": document("what is in it", of="Values")}, "one"),
        0,
        2000,
        "what to mind",
    ),
    "is_complete": boolean("whether nothing is missing that a label for sale needs"),
}
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
            "mean_error_kg": number(
                "kg", -30, 30, "mean of net less label, of those that decide; null: none weighed", nullable=True
            ),
            "sd_kg": number("kg", 0, 30, "scatter; null below two", nullable=True),
            "most_short_kg": number("kg", 0, 30, "what one package may be short"),
            "mean_limit_kg": number("kg", 0, 300, "how far the mean may lie below; null: not known yet", nullable=True),
            "short": integer(0, 500, "packages short by more than one may be; eu: of those that decide"),
            "short_allowed": integer(0, 1000000, "how many may be"),
            "far_short": integer(0, 500, "eu: packages short by more than twice that"),
            "mean": choice(STATES, "the mean"),
            "each": choice(STATES, "each package"),
            "verdict": choice(STATES, "the lot"),
            "division_wanted_kg": number("kg", 0, 1, "the coarsest division that will do"),
            "scale_fits": boolean("whether the scale is fine enough; null: unknown", nullable=True),
        },
    },
    "label.net_weight": {"request": {"label_kg": LABEL, "rule": RULE, "face_m2": FACE}, "reply": NET},
    "label.content": {"request": CONTENT, "reply": CONTENT_REPLY},
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
