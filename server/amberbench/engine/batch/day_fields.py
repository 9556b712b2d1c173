"""The fields of the day: which batches share the bench, in which order, and where a wash lies between."""

from ..core.allergens import ALLERGENS
from ..core.describe import boolean, choice, many, number, record, text
from ..physics.fields import WARNINGS
from ..shop.fields import PIECES

KINDS = ("slab", "cluster", "chocolate", "standup")
ID = text(64, "the batch")
NAME = text(200, "what people call it", default="")
CONTAINS = many(choice(ALLERGENS, "an allergen"), 0, 20, "allergens", default=[])


def _instant(meaning):
    return number("ms", 0, 1e14, meaning + "; null: never", default=None)


BATCH = record(
    {
        "id": ID,
        "kind": choice(KINDS, "its kind; a stand-up test is left alone and takes no part"),
        "name": NAME,
        "contains": dict(CONTAINS, meaning="allergens on the labels of its caramel and chocolate"),
        "labels_known": boolean("whether somebody copied all of these labels", default=True),
        "under": many(choice(PIECES, "a built-in material"), 0, 20, "what lies under its caramel", default=[]),
        "coated": boolean("whether it takes chocolate from a bowl: dipped, or coated below", default=False),
        "state": choice(("planned", "open", "closed"), "how far it is"),
        "soon": boolean("whether a clock of it rings now or within minutes: taken first", default=False),
        "since_ms": _instant("since when it is in this state"),
        "touched_ms": _instant("when hands were last at it"),
        "washed_ms": _instant("when tools, surfaces and hands were last washed for it"),
        "answered_ms": _instant("when a wash for it was last done, or passed over"),
    },
    "one of today's batches",
)
BEFORE = record({"id": ID, "name": NAME, "allergens": CONTAINS}, "a batch the bench was used for")
FUNCTIONS = {
    "day.order": {
        "request": {
            "at_ms": number("ms", 0, 1e14, "corrected time now"),
            "batches": many(BATCH, 0, 60, "the batches of today"),
        },
        "reply": {
            "order": many(
                record(
                    {
                        "id": ID,
                        "allergens": dict(CONTAINS, meaning="all it holds"),
                        "after": many(ID, 0, 60, "those of which something would be left"),
                        "wash": dict(CONTAINS, meaning="what to wash off before it; empty: no wash"),
                    },
                    "a batch that is planned or open",
                ),
                0,
                60,
                "in which order to take them",
            ),
            "now": many(
                record(
                    {
                        "id": ID,
                        "after": many(BEFORE, 0, 60, "those of which something is left"),
                        "wash": dict(CONTAINS, meaning="what to wash off if hands go to it now; empty: no wash"),
                        "until_ms": _instant("when hands were last at those"),
                    },
                    "a batch that is open",
                ),
                0,
                60,
                "the bench as it stands",
            ),
            "warnings": WARNINGS,
        },
    },
}
EVENTS = {
    "wash_told": {
        "wanted": boolean("whether the bench must be washed before this batch goes on"),
        # By name: a batch that comes after need not look into another's log.
        "after": many(NAME, 0, 60, "what the bench was used for before", default=[]),
        "allergens": dict(CONTAINS, meaning="what is on the bench and not declared by this batch"),
        # Clocks of two phones differ: a wash answers what it was told of, whatever its own time.
        "until_ms": _instant("when hands were last at those"),
    },
    "washed": {},
}
