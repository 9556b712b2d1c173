"""The plan and the run of a slab."""

from ...core.describe import boolean, choice
from ..poured import documents as poured
from . import fields

DOCUMENTS = poured.documents_of(
    "slab",
    "slab.plan",
    fields.FUNCTIONS,
    "a slab of caramels",
    {
        "prebottom": boolean("whether it gets a thin coat below before it is cut", optional=True),
        "finish": choice(("plain", "dipped", "wrapped"), "what becomes of the cut pieces", optional=True),
    },
)
