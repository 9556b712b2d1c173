"""The events of the wash between two batches."""

from ...core.allergens import ALLERGENS
from ...core.field_kinds import boolean, choice, many, number, text

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document


NAME = text(200, "what people call it", default="")
CONTAINS = many(choice(ALLERGENS, "an allergen"), 0, 40, "allergens", default=[])

UNWASHED = ("other_tools", "covered", "no_time", "other")


def instant(meaning: str) -> "Document":
    return number("ms", 0, 1e14, meaning + "; null: never", default=None)


EVENTS = {
    "wash_told": {
        "wanted": boolean("whether the bench must be washed before this batch goes on"),
        # By name: a batch that comes after need not look into another's log.
        "after": many(NAME, 0, 60, "what the bench was used for before", default=[]),
        "allergens": dict(CONTAINS, meaning="what is on the bench and not declared by this batch"),
        # Clocks of two phones differ: a wash answers what it was told of, whatever its own time.
        "until_ms": instant("when hands were last at those"),
    },
    "washed": {},
}
