"""An order, and what open orders want."""

from ..core.field_kinds import record
from . import fields

REPLY = fields.FUNCTIONS["orders.overview"]["reply"]
DOCUMENTS = {
    "Order": record(fields.DOCUMENT, "an order"),
    "OrderLine": record(fields.WHAT, "so many boxes, pieces, or so much of a product"),
    "OpenOrder": record(REPLY["orders"]["item"]["fields"], "an open order"),
    "OpenLine": record(fields.OPEN_LINE["fields"], "a line of an open order"),
    "BoxInHand": record(REPLY["boxes"]["item"]["fields"], "boxes of one kind, wanted and in hand"),
    "PackInHand": record(REPLY["packs"]["item"]["fields"], "boxes packed together, and what is left of them"),
}
