"""The fields of dipping pieces: what a plan says of it, and the events of its steps."""

from ...core.field_kinds import boolean, integer, many, number, record, text, together
from ...core.fields import BASIS, INPUTS, SEEN
from ..coat.fields import COATING, COATING_REPLY
from ..common.fields import LOTS

SALTING = together(
    {
        "dip_s": number("s", 0.5, 600, "time from one piece to the next"),
        "set_s": number(
            "s",
            10,
            3600,
            "time until a dipped piece takes no more salt",
            default=120.0,
            basis="assumed",
            source="practice",
            measure_by="strip_test",
        ),
        "salt_each_kg": number("kg", 0.00001, 0.002, "salt on one piece; null: not weighed", default=None),
        "pieces": integer(1, 100000, "pieces to salt", default=None),
    },
    BASIS,
)


FUNCTIONS = {
    "chocolate.salting": {
        "request": SALTING,
        "reply": together(
            {
                "every": integer(1, 10000, "pieces to dip before the first of them is salted"),
                "salt_kg": number("kg", 0, 200, "salt for all; null: not asked", default=None),
            },
            INPUTS,
        ),
    },
}

COATED_AS = (
    "pickup",
    "thickness_m",
    "method",
    "prebottom_m",
    "chocolate",
    "pocket_m",
    "bowl_reserve_kg",
    "bowl_width_m",
    "drip_share",
)
SALTED_AS = ("set_s", "salt_each_kg")
# What the prompts at the bench need besides.
AT_BENCH = {
    "method": COATING["method"],
    "dip_s": dict(SALTING["dip_s"], default=20.0, basis="assumed", source="assumed", measure_by="dip_timed"),
    "salt_each_kg": SALTING["salt_each_kg"],
    "salt": text(60, "the salt that goes on top", default=None),
    "top_mark": boolean("whether each piece gets a mark on top", default=False),
}
DIP = record(
    together(
        {name: COATING[name] for name in COATED_AS},
        {name: SALTING[name] for name in SALTED_AS},
        AT_BENCH,
    ),
    "dip the pieces in chocolate; null: they stay plain",
    default=None,
)
DIP_REPLY = record(
    together(
        COATING_REPLY,
        AT_BENCH,
        {
            "every": integer(1, 10000, "pieces to dip before the first of them is marked or salted"),
            "salt_kg": number("kg", 0, 200, "salt for all; null: none goes on", default=None),
            "dip_all_s": number("s", 0, 1e9, "time to dip and salt all"),
            "holds_s": number(
                "s", 0, 1e8, "time the full bowl stays in its working range; null: it does not cool", default=None
            ),
            "rewarms": integer(0, 100000000, "times the bowl is warmed until all are dipped"),
        },
    ),
    "chocolate, outside size and salting as chocolate.coating and chocolate.salting; null: not dipped",
    default=None,
)
BOWL = {"name": text(80, "what its plan is called"), "lot": text(60, "lot of its chocolate", default=None)}
EVENTS = {
    # As the bench knows it: a recall of chocolate asks for the batches that were dipped in it.
    "dipping_started": together(
        {"bowls": many(record(BOWL, "a bowl"), 0, 20, "bowls of chocolate then in use", default=[])},
        LOTS,  # of the salt that goes on
    ),
    "salted": SEEN,
    "dipped": {},
    "set_hard": {},
}
