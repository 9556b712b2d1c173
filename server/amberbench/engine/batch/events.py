"""The body of every kind of event that a fold understands. Fields a newer version added are passed over."""

from ..core.field_kinds import together
from ..products import KINDS
from ..steps.wash import fields as wash_fields
from . import fields

EVENTS = together(fields.EVENTS, wash_fields.EVENTS, *[kind.events for kind in KINDS])
