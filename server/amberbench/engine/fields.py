"""Every field of every function: kind, unit, lowest and highest value, default, meaning.

Plain data, read by `check` (on the server and on the phone), by the API's schemas, by the OpenAPI document and by
the generator of the phone's types. A field is required unless it has a default. A default carries its basis
("assumed" or "published"), its source key and, where a test can measure it, the name of that test in `measure_by`.
"""

from . import (
    fields_bench,
    fields_bowl,
    fields_chocolate,
    fields_cluster,
    fields_day,
    fields_deposit,
    fields_dip,
    fields_learn,
    fields_melt,
    fields_paper,
    fields_room,
    fields_shared,
    fields_shop,
    fields_slab,
)
from .fields_cool import COOL
from .fields_learn import CONTRIBUTION
from .fields_melt import MELT
from .fields_shared import BASE_NAMES, BATCHES, MATERIAL_NAMES
from .fields_slab import FIT, POUR
from .kinds import BASES, together

__all__ = [
    "BASES",
    "BASE_NAMES",
    "BATCHES",
    "CONTRIBUTION",
    "COOL",
    "EVENTS",
    "FIT",
    "FUNCTIONS",
    "MATERIAL_NAMES",
    "MELT",
    "POUR",
]

# The body of every kind of event that a fold understands. Fields a newer version added are passed over.
EVENTS = together(fields_bench.EVENTS, fields_cluster.EVENTS, fields_bowl.EVENTS, fields_dip.EVENTS, fields_day.EVENTS)
FUNCTIONS: dict = {}
for _part in (
    fields_shared,
    fields_melt,
    fields_slab,
    fields_chocolate,
    fields_deposit,
    fields_bowl,
    fields_room,
    fields_bench,
    fields_learn,
    fields_shop,
    fields_paper,
    fields_day,
):
    FUNCTIONS.update(_part.FUNCTIONS)
