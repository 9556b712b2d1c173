"""The cooling slab as a run keeps it, and what refits say of it."""

from ...core.documents import instant, listed, only, optional, quantity, without
from ...core.field_kinds import boolean, document, integer, number, record, together
from . import fields
from .chill_fields import CHILL

TIMES = only(fields.COOL_REPLY, "ready_s", "ready_low_s", "ready_high_s")
LOSS = {"loss_factor": quantity("", "heat loss over that of the model")}
# A refit counts what it had seen; before the first there is none.
NEVER = -1
STATE = together(
    TIMES,
    LOSS,
    {
        "request": document("what the bench refits the cooling with", of="CoolRequest"),
        "readings": listed(document("a reading", of="SlabReading"), "readings, in order"),
        "touches": listed(document("a touch test", of="Touch"), "touch tests, in order"),
        "fitted": integer(NEVER, 200, "readings and touch tests the last refit had seen; -1 before the first"),
        "due_ms": instant("when it is touched next, or goes into the refrigerator", nullable=True),
        "chill": record(CHILL, "the chill that it needs; left out where the room makes it ready", optional=True),
        "chilled_ms": dict(instant("when it went into the refrigerator"), optional=True),
    },
)
KEPT = ("ready_s", "ready_low_s", "ready_high_s", "loss_factor")
# An older app kept all of the reply.
REPLY = fields.FUNCTIONS["cool.refit"]["reply"]
REFITTED = optional(REPLY, *without(REPLY, *KEPT))
AT = {"at_s": quantity("s", "time after pouring")}
DOCUMENTS = {
    "CoolState": record(STATE, "the cooling of a batch"),
    "CoolRequest": record(fields.COOL, "a request to cool.plan, its defaults filled in"),
    "RefitRequest": record(fields.FUNCTIONS["cool.refit"]["request"], "a request to cool.refit", asked=True),
    "SlabReading": record(
        together(AT, {"surface_c": number("°C", -10, 150, "infrared reading")}), "a reading of a slab"
    ),
    "Touch": record(together(AT, {"firm": boolean("whether the middle felt firm enough to cut")}), "a touch test"),
    "Refitted": record(REFITTED, "what the log keeps of a reply of cool.refit"),
}
