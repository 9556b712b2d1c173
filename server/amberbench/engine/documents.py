"""Every document that is exchanged or kept, by name; read by the generators of types and by the API's schemas."""

from importlib import import_module
from importlib.util import find_spec

from .batch import documents as batch
from .core import documents as core
from .core.documents import Field, Fields
from .exports import documents as exports
from .fields import STREAM_EVENTS
from .learning import documents as learning
from .orders import documents as orders
from .pack import documents as pack
from .physics import documents as physics
from .products import KINDS
from .products import documents as products
from .products.poured import documents as poured
from .shop import documents as shop
from .steps.cool import documents as cool
from .steps.deposit import documents as deposit
from .steps.dip import documents as dip
from .steps.jacket import documents as jacket
from .steps.melt import documents as melt
from .steps.temper import documents as temper
from .steps.wash import documents as wash
from .stock import documents as stock

# A kind has its own beside its record, or they are made from that (`products/poured`).
_homes = [f"{__package__}.products.{kind.name}.documents" for kind in KINDS]
_kinds = [import_module(home) for home in _homes if find_spec(home)]
DOCUMENTS: dict[str, Field] = {}
for _part in (
    core, physics, melt, jacket, cool, deposit, temper, dip, wash,
    products, poured, *_kinds, batch, shop, learning, exports, stock, pack, orders,
):  # fmt: skip
    DOCUMENTS.update(_part.DOCUMENTS)
# The body of every kind of event, of the shop's as well.
BODIES: dict[str, Fields] = dict(batch.BODIES, shop_set=DOCUMENTS["ShopEdit"]["fields"])
for _events in STREAM_EVENTS.values():
    BODIES.update({kind: _events[kind] for kind in _events if kind not in BODIES})
