"""The fields of a bowl of chocolate: its plan, and the events of its batch."""

from ...core.describe import document, number, record, text, together
from ...core.fields import SEEN
from ...steps.temper.fields import FUNCTIONS as CHOCOLATE

TEMPER, HOLD = CHOCOLATE["chocolate.temper"], CHOCOLATE["chocolate.hold"]

FUNCTIONS = {
    "chocolate.plan": {
        "request": together(TEMPER["request"], {"bowl": HOLD["request"]["bowl"]}),
        "reply": together(
            TEMPER["reply"],
            {
                "hold": record(
                    {name: HOLD["reply"][name] for name in ("seconds_s", "low_s", "high_s")},
                    "time it stays in its working range, from the upper end of it",
                ),
                "bowl_request": document("what the bench reckons with: the request, its defaults filled in"),
            },
        ),
    },
}
EVENTS = {
    "bowl_burst": together({"seconds_s": number("s", 1, 600, "time set on the oven, at half power")}, SEEN),
    "bowl_read": together({"bowl_c": number("°C", 0, 90, "probe reading of the stirred bowl")}, SEEN),
    "seeded": together({"kg": number("kg", 0, 50, "seed stirred in")}, SEEN),
    "bowl_warmed": SEEN,
    "bowl_thickened": {},
    "bowl_used": {},
    "leftover_named": {"lot": text(60, "lot the leftover chocolate is kept under")},
}
