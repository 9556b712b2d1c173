"""The plan and the run of every kind poured between bars."""

from ...core.documents import Field, only, optional
from ...core.field_kinds import document, record, together
from ...steps.cool.documents import TIMES
from ...steps.cool.fields import COOL_REPLY
from ...steps.cut.fields import CUT_REPLY
from ...steps.pour.fields import POUR_REPLY
from .. import KINDS
from ..documents import HEAD, PLANNED, RUN, absent, kind, titled
from ..kind import Kind
from .fold import begin

PIECES = only(CUT_REPLY, "pieces", "piece_kg")
FRAME = only(POUR_REPLY, "length_m", "width_m", "bar_height_m")
# An older version had none of these, and not every kind has them.
LATER = ("dip", "room", "jacket", "warnings", "remelt")
AS_THEY_ARE = ("caramel_kg", "jacket", "dip", "room", "melt_request", "cool_request", "warnings", "remelt")
# What a run takes of a part of the plan's reply.
TAKEN = {
    "cut": record(PIECES, "as cut.plan"),
    "pour": record(FRAME, "as pour.plan"),
    "cool": record(together(TIMES, optional(only(COOL_REPLY, "chill"), "chill")), "as cool.plan"),
}


def _documents_of(one: Kind) -> dict[str, Field]:
    """The plan, what a run takes of it, and the run, of a kind."""
    function = str(one.function)
    reply = one.described[function]["reply"]
    plan = together(kind(one.name), HEAD, one.plan_members)
    taken = together(only(reply, *[name for name in AS_THEY_ARE if name in reply]), TAKEN)
    run = together(
        kind(one.name),
        RUN,
        {
            "planned": record(together(PLANNED, FRAME), "what was planned"),
            "melt": document("the melt", of="MeltState"),
            "cool": document("the cooling", of="CoolState"),
        },
        absent("cluster", "bowl", "stand"),
    )
    exchanged = {
        "request": record(one.request, "the request to " + function, asked=True),
        "reply": record(reply, "the reply of " + function),
    }
    of_reply = record(optional(taken, *LATER), "of the reply of " + function)
    of_plan = "what a run takes of the plan of " + one.what
    return {
        titled(one.name) + "Plan": record(together(plan, exchanged), "the plan of " + one.what),
        titled(one.name) + "PlanTaken": record(together(plan, {"reply": of_reply}), of_plan),
        titled(one.name) + "Run": record(run, "the state of " + one.what),
    }


DOCUMENTS: dict[str, Field] = {}
for _kind in KINDS:
    if _kind.begin is begin:
        DOCUMENTS.update(_documents_of(_kind))
