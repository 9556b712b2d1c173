"""Boxes packed together."""

from ..core.field_kinds import record
from . import fields

DOCUMENTS = {
    "Pack": record(fields.PACK, "boxes packed together"),
    "PieceBatch": record(fields.PIECE_BATCH, "a counted batch"),
    "PiecesLeft": record(fields.LEFT, "good pieces of a batch that are in no box"),
    "BoxFilled": record(fields.FILLED, "how many of a box can be filled"),
    "PackedFrom": record(fields.MADE_OF["from"]["item"]["fields"], "pieces of a batch in boxes"),
    "PackedLot": record(fields.MADE_OF["lots"]["item"]["fields"], "what boxes are packed in"),
}
