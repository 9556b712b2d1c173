"""The plan and the run of a kind poured between bars."""

from ...core.describe import document, record, together
from ...core.documents import Field, Fields, only, optional
from ...steps.cool.documents import TIMES
from ...steps.cut.fields import CUT_REPLY
from ...steps.pour.fields import POUR_REPLY
from ..documents import HEAD, PLANNED, RUN, absent, kind, titled

PIECES = only(CUT_REPLY, "pieces", "piece_kg")
FRAME = only(POUR_REPLY, "length_m", "width_m", "bar_height_m")
# An older version had none of these, and not every kind has them.
LATER = ("dip", "room", "jacket", "warnings")
AS_THEY_ARE = ("caramel_kg", "jacket", "dip", "room", "melt_request", "cool_request", "warnings")
# What a run takes of a part of the plan's reply.
TAKEN = {
    "cut": record(PIECES, "as cut.plan"),
    "pour": record(FRAME, "as pour.plan"),
    "cool": record(TIMES, "as cool.plan"),
}


def documents_of(name: str, function: str, described: Fields, what: str, own: Fields) -> dict[str, Field]:
    """The plan, what a run takes of it, and the run, of a kind; `own`: members that only its plan has."""
    request, reply = described[function]["request"], described[function]["reply"]
    plan = together(kind(name), HEAD, own)
    taken = together(only(reply, *[one for one in AS_THEY_ARE if one in reply]), TAKEN)
    run = together(
        kind(name),
        RUN,
        {
            "planned": record(together(PLANNED, FRAME), "what was planned"),
            "melt": document("the melt", of="MeltState"),
            "cool": document("the cooling", of="CoolState"),
        },
        absent("cluster", "bowl", "stand"),
    )
    exchanged = {
        "request": record(request, "the request to " + function, asked=True),
        "reply": record(reply, "the reply of " + function),
    }
    of_reply = record(optional(taken, *LATER), "of the reply of " + function)
    of_plan = "what a run takes of the plan of " + what
    return {
        titled(name) + "Plan": record(together(plan, exchanged), "the plan of " + what),
        titled(name) + "PlanTaken": record(together(plan, {"reply": of_reply}), of_plan),
        titled(name) + "Run": record(run, "the state of " + what),
    }
