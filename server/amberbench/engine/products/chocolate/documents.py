"""The plan and the run of a bowl of chocolate."""

from ...core.documents import instant, listed, only, quantity, words
from ...core.field_kinds import boolean, document, record, together
from ...steps.temper.fields import TARGETS
from ..documents import HEAD, PLANNED, RUN, absent, kind
from . import fields
from .plan import PASSED_ON

REQUEST, REPLY = fields.FUNCTIONS["chocolate.plan"]["request"], fields.FUNCTIONS["chocolate.plan"]["reply"]
PLAN = together(kind("chocolate"), HEAD)
TAKEN = together(
    only(REPLY, "melt_kg", "seed_kg", "bowl_request", "steps"), {"warnings": dict(REPLY["warnings"], optional=True)}
)
AT = {"at_ms": instant("when")}
STATE = {
    "request": document("what the bench reckons with", of="BowlRequest"),
    "line": record(TARGETS["fields"], "its heat lines"),
    "bursts": listed(document("a burst", of="BowlBurst"), "bursts, in order"),
    "burning": document("the last burst", of="Span", nullable=True),
    "readings": listed(document("a reading", of="BowlReading"), "readings, in order"),
    "read_c": quantity("°C", "the last reading; null: it no longer holds", nullable=True),
    "read_ms": instant("when it was read", nullable=True),
    "seeds": listed(document("seed", of="Seeded"), "seed stirred in, in order"),
    "seeded_ms": instant("when seed was last stirred in", nullable=True),
    "strips": listed(document("a strip", of="Strip"), "strip tests, in order"),
    "warmed": listed(document("when", of="At"), "times it was warmed, in order"),
    "thick": boolean("whether somebody said that it is too thick"),
    "streaky": boolean("whether the last strip did not set well"),
    "faster": quantity("", "logarithm of how much faster it cools than the model says"),
    "faster_sd": quantity("", "its standard deviation; null before the first reading", nullable=True),
    "hold": dict(REPLY["hold"], meaning="time it stays in its working range, from the last reading", nullable=True),
    "leftover_lot": words("lot the leftover is kept under", nullable=True),
}
DOCUMENTS = {
    "ChocolatePlan": record(
        together(
            PLAN,
            {
                "request": record(REQUEST, "the request to chocolate.plan", asked=True),
                "reply": record(REPLY, "the reply of chocolate.plan"),
            },
        ),
        "the plan of a bowl of chocolate",
    ),
    "ChocolatePlanTaken": record(
        together(PLAN, {"reply": record(TAKEN, "of the reply of chocolate.plan")}),
        "what a run takes of the plan of a bowl of chocolate",
    ),
    "ChocolateRun": record(
        together(
            kind("chocolate"),
            RUN,
            {
                "planned": record(
                    together(PLANNED, {"seed_kg": quantity("kg", "seed to have ready")}), "what was planned"
                ),
                "bowl": document("the bowl", of="BowlState"),
            },
            absent("melt", "cool", "cluster", "stand"),
        ),
        "the state of a bowl of chocolate as a batch",
    ),
    "BowlState": record(STATE, "a bowl of chocolate"),
    "BowlRequest": record(only(REQUEST, *PASSED_ON), "a request to chocolate.plan, its defaults filled in"),
    "BowlBurst": record(together(AT, {"seconds_s": quantity("s", "time set on the oven")}), "a burst"),
    "BowlReading": record(together(AT, {"bowl_c": quantity("°C", "probe reading")}), "a reading of a bowl"),
    "Seeded": record(together(AT, {"kg": quantity("kg", "how much")}), "seed stirred in"),
    "At": record(AT, "that it was done"),
}
