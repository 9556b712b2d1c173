"""Every field of the functions of the bench: kind, unit, lowest and highest value, default, meaning.

Plain data, read by `check` (on the server and on the phone), by the API's schemas, by the OpenAPI document and by
the generator of the phone's types. A field is required unless it has a default. A default carries its basis
("assumed" or "published"), its source key and, where a test can measure it, the name of that test in `measure_by`.
"""

from .batch import fields as batch_fields
from .core import fields as core_fields
from .physics import fields as physics_fields
from .products import KINDS
from .shop import fields as shop_fields
from .steps.coat import fields as coat_fields
from .steps.cool import fields as cool_fields
from .steps.cut import fields as cut_fields
from .steps.deposit import fields as deposit_fields
from .steps.dip import fields as dip_fields
from .steps.jacket import fields as jacket_fields
from .steps.melt import fields as melt_fields
from .steps.pour import fields as pour_fields
from .steps.room import fields as room_fields
from .steps.temper import fields as temper_fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .core.annotations import Document


FUNCTIONS: "dict[str, Document]" = {}
for _part in (
    core_fields,
    physics_fields,
    melt_fields,
    jacket_fields,
    pour_fields,
    cut_fields,
    cool_fields,
    coat_fields,
    temper_fields,
    dip_fields,
    deposit_fields,
    room_fields,
    batch_fields,
    shop_fields,
):
    FUNCTIONS.update(_part.FUNCTIONS)
for _kind in KINDS:
    FUNCTIONS.update(_kind.described)
