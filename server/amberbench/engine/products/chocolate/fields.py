"""The fields of a bowl of chocolate: its plan, and the events of its batch."""

from ...core.field_kinds import document, many, number, record, text, together
from ...core.fields import SEEN, decided
from ...steps.temper.fields import FUNCTIONS as CHOCOLATE
from .. import plan_fields_read

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document

TEMPER, HOLD = CHOCOLATE["chocolate.temper"], CHOCOLATE["chocolate.hold"]

FUNCTIONS = {
    "chocolate.plan": {
        "request": TEMPER["request"],
        "reply": together(
            TEMPER["reply"],
            {
                "hold": record(
                    {name: HOLD["reply"][name] for name in ("seconds_s", "low_s", "high_s")},
                    "time it stays in its working range, from the upper end of it",
                ),
                "bowl_request": document(
                    "what the bench reckons with: the request, its defaults filled in", of="BowlRequest"
                ),
            },
        ),
    },
}
ASKED = {name: FUNCTIONS["chocolate.plan"]["request"][name] for name in ("chocolate", "mass_kg", "room_c", "bowl")}


def taken(reply: "Document") -> "Document":
    """What a run reads of a plan's reply."""
    line = {"name": text(40, "which"), "low_c": number("°C", 0, 150, "from"), "high_c": number("°C", 0, 150, "to")}
    return together(
        plan_fields_read.REPLY,
        {
            "melt_kg": plan_fields_read.SOME,
            "seed_kg": plan_fields_read.AMOUNT,
            "steps": many(record(line, "one"), 1, 20, "heat lines"),
            "bowl_request": record(ASKED, "the bowl"),
        },
    )


READ = {
    "faster": number("", -1e3, 1e3, "logarithm of how much faster it cools than its model says"),
    "faster_sd": number("", 0, 1e3, "standard deviation of faster"),
    "hold": record(
        {
            "seconds_s": number("s", 0, 1e12, "time it stays in its working range"),
            "low_s": number("s", 0, 1e12, "10 % point"),
            "high_s": number("s", 0, 1e12, "90 % point"),
        },
        "how long it may be used; null: it is out of its range",
        default=None,
    ),
}
EVENTS = {
    "bowl_burst": together({"seconds_s": number("s", 1, 600, "time set on the oven, at half power")}, SEEN),
    "bowl_read": together({"bowl_c": number("°C", 0, 90, "probe reading of the stirred bowl")}, SEEN, decided(READ)),
    "seeded": together({"kg": number("kg", 0, 50, "seed stirred in")}, SEEN),
    "bowl_warmed": SEEN,
    "bowl_thickened": {},
    "bowl_used": {},
    "leftover_named": {"lot": text(60, "lot the leftover chocolate is kept under")},
}
