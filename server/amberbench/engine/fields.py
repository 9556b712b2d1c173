"""Every field of every function: kind, unit, lowest and highest value, default, meaning.

Plain data, read by `check` (on the server and on the phone), by the API's schemas, by the OpenAPI document and by
the generator of the phone's types. A field is required unless it has a default. A default carries its basis
("assumed" or "published"), its source key and, where a test can measure it, the name of that test in `measure_by`.
"""

from .batch import day_fields
from .batch import fields as batch_fields
from .core.describe import together
from .exports import fields as exports_fields
from .learning import fields as learning_fields
from .physics import fields as physics_fields
from .products.chocolate import fields as chocolate_fields
from .products.cluster import fields as cluster_fields
from .products.slab import fields as slab_fields
from .shop import fields as shop_fields
from .steps.coat import fields as coat_fields
from .steps.dip import fields as dip_fields
from .steps.melt import fields as melt_fields
from .steps.room import fields as room_fields

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
EVENTS = together(
    batch_fields.EVENTS, cluster_fields.EVENTS, chocolate_fields.EVENTS, dip_fields.EVENTS, day_fields.EVENTS
)
FUNCTIONS: dict = {}
for _part in (
    physics_fields,
    melt_fields,
    slab_fields,
    coat_fields,
    cluster_fields,
    chocolate_fields,
    room_fields,
    batch_fields,
    learning_fields,
    shop_fields,
    exports_fields,
    day_fields,
):
    FUNCTIONS.update(_part.FUNCTIONS)
