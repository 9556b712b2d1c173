"""A lot, and what is left of lots and materials."""

from ..core.field_kinds import choice, record
from . import fields

OVERVIEW = fields.FUNCTIONS["stock.overview"]
DOCUMENTS = {
    "Difference": choice(fields.DIFFERENCES, "what does not add up of a lot"),
    "Lot": record(fields.LOT, "a lot: a delivery, or what was left of a batch"),
    "StockUse": record(fields.USE, "what of a lot went into a batch or boxes"),
    "LotLeft": record(fields.LEFT, "what is left of a lot"),
    "MaterialLeft": record(OVERVIEW["reply"]["materials"]["item"]["fields"], "what is left of a material"),
}
