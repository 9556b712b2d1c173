"""The melt as a run keeps it."""

from ...core.documents import instant, listed, only, quantity
from ...core.field_kinds import boolean, choice, document, number, record, together
from . import fields

DONE_BURST = together(
    only(fields.BURST_ADVICE, "advised_s", "from_c", "expected_c", "low_c", "high_c"),
    {
        "at_ms": instant("when it was started"),
        "seconds_s": quantity("s", "how long it ran"),
        "level_percent": dict(fields.LEVEL, optional=True),
        "free": boolean("whether it stirred freely after it"),
        "reading_c": number("°C", 0, 150, "infrared reading after it", nullable=True),
    },
)
BURNING = together(
    fields.BURST_ADVICE,
    {
        "level_percent": dict(fields.LEVEL, optional=True),
        "spot": boolean("whether the hottest spot is to be read before the stir", optional=True),
        "spot_c": number("°C", 0, 150, "the hottest spot read before the stir", nullable=True, optional=True),
        "seconds_s": number("s", 1, 600, "time set on the oven"),
        "started_ms": instant("when it was started"),
        "due_ms": instant("when it ends"),
    },
)
HAPPENING = {
    "kind": choice(fields.HAPPENINGS, "what happened"),
    "seconds_s": quantity("s", "length of the burst or rest", optional=True),
    "level_percent": dict(fields.LEVEL, optional=True),
    "free": boolean("whether it stirs freely", optional=True),
    "surface_c": number("°C", 0, 150, "infrared reading", optional=True),
}
SHARED = ("mass_kg", "start_c", "material", "window_low_c", "window_high_c", "limit_c", "warn_c", "stop_c")
MELT_REQUEST = together(
    {name: dict(fields.MELT[name], optional=name not in SHARED) for name in fields.MELT},
    {
        "start_sd_k": quantity(
            "K", "standard deviation of start_c, once fills were taken from the bowl", optional=True
        ),
        "jacket_c": number("°C", 40, 140, "the jacket's water; an oven has none", optional=True),
        "thickness_m": quantity(
            "m", "in a jacket: shortest side of the block; null: a cube", nullable=True, optional=True
        ),
        "chopped_m": quantity("m", "in a jacket: what it was chopped into; null: whole", nullable=True, optional=True),
    },
)
STATE = {
    "request": document("what the bench reckons the next burst with", of="MeltRequest"),
    "history": listed(document("one happening", of="Happening"), "what happened so far, in order"),
    "bursts": listed(document("a burst", of="DoneBurst"), "bursts that were stirred after, in order"),
    "burning": document("the burst that runs or waits for its stir", of="RunningBurst", nullable=True),
    "jacket": document("the water jacket; null: in an oven", of="JacketState", nullable=True, optional=True),
    "resting": document("the rest that runs", of="Span", nullable=True),
    "free": boolean("whether it stirs freely"),
    "read_wanted": boolean("whether a reading is wanted"),
    "last_c": number("°C", 0, 150, "the last reading", nullable=True),
    "last_at_ms": instant("when something last happened", nullable=True),
    "past": listed(
        document("a reading", of="Happening"), "readings before a fill was taken from the bowl", optional=True
    ),
}
DOCUMENTS = {
    "MeltState": record(STATE, "the melt of a batch"),
    "MeltRequest": record(
        MELT_REQUEST, "what a melt is planned with, in an oven or in a jacket, its defaults filled in"
    ),
    "NextBurst": record(fields.FUNCTIONS["melt.next_burst"]["reply"], "what melt.next_burst says"),
    "Happening": record(HAPPENING, "something that happened to a melt"),
    "DoneBurst": record(DONE_BURST, "a burst and what came of it"),
    "RunningBurst": record(BURNING, "a burst that runs or waits for its stir"),
    "Span": record({"started_ms": instant("from"), "due_ms": instant("to")}, "a stretch of time"),
}
