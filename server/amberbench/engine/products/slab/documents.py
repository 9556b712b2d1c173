"""The plan and the run of a slab."""

from ...core.describe import boolean, choice, document, record, together
from ...core.documents import only, optional
from ...steps.cool.documents import TIMES
from ..documents import HEAD, PLANNED, RUN, absent, kind
from . import fields

REPLY = fields.FUNCTIONS["slab.plan"]["reply"]
PLAN = together(
    kind("slab"),
    HEAD,
    {
        "prebottom": boolean("whether it gets a thin coat below before it is cut", optional=True),
        "finish": choice(("plain", "dipped", "wrapped"), "what becomes of the cut pieces", optional=True),
    },
)
PIECES = only(REPLY["cut"]["fields"], "pieces", "piece_kg")
FRAME = only(REPLY["pour"]["fields"], "length_m", "width_m", "bar_height_m")
# An older version had none of these.
LATER = ("dip", "room", "jacket", "warnings")
# What a run takes of the plan's reply.
TAKEN = together(
    only(REPLY, "caramel_kg", "jacket", "dip", "room", "melt_request", "cool_request", "warnings"),
    {
        "cut": record(PIECES, "as cut.plan"),
        "pour": record(FRAME, "as pour.plan"),
        "cool": record(TIMES, "as cool.plan"),
    },
)
RUN_OF_SLAB = together(
    kind("slab"),
    RUN,
    {
        "planned": record(together(PLANNED, FRAME), "what was planned"),
        "melt": document("the melt", of="MeltState"),
        "cool": document("the cooling", of="CoolState"),
    },
    absent("cluster", "bowl", "stand"),
)
DOCUMENTS = {
    "SlabPlan": record(
        together(
            PLAN,
            {
                "request": record(fields.SLAB, "the request to slab.plan", asked=True),
                "reply": record(REPLY, "the reply of slab.plan"),
            },
        ),
        "the plan of a slab of caramels",
    ),
    "SlabPlanTaken": record(
        together(PLAN, {"reply": record(optional(TAKEN, *LATER), "of the reply of slab.plan")}),
        "what a run takes of the plan of a slab",
    ),
    "SlabRun": record(RUN_OF_SLAB, "the state of a slab"),
}
