"""Boxes packed together."""

from ..core.field_kinds import record
from . import fields

DOCUMENTS = {"Pack": record(fields.PACK, "boxes packed together")}
