"""Every field of every function: those of the bench, and of what `catalogue` adds."""

from .batch.events import EVENTS
from .bench_fields import FUNCTIONS
from .cost import fields as cost_fields
from .exports import fields as exports_fields
from .labelling import fields as labelling_fields
from .learning import fields as learning_fields
from .needs import fields as needs_fields
from .orders import fields as orders_fields
from .pack import fields as pack_fields
from .scheduling import fields as scheduling_fields
from .stock import fields as stock_fields
from .trace import fields as trace_fields

__all__ = ["EVENTS", "FUNCTIONS", "STREAM_EVENTS"]

# The events of streams that are no batch, by kind of stream.
STREAM_EVENTS = {"lot": stock_fields.EVENTS, "order": orders_fields.EVENTS, "pack": pack_fields.EVENTS}

for _part in (
    learning_fields,
    scheduling_fields,
    labelling_fields,
    trace_fields,
    needs_fields,
    cost_fields,
    exports_fields,
    stock_fields,
    pack_fields,
    orders_fields,
):
    FUNCTIONS.update(_part.FUNCTIONS)
