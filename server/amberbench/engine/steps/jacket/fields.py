"""The fields of melting in a water jacket, and its events."""

from ...core.field_kinds import number, record, together
from ...core.fields import BASIS, INPUTS
from ...physics.fields import MATERIAL, START
from ..melt.fields import MELT

WATER = number("°C", 40, 140, "the jacket's water", measure_by="jacket_water")
CHOPPED = number("m", 0.005, 0.6, "size of the pieces it was chopped into; null: whole", default=None)
JACKET_REPLY = together(
    {
        "seconds_s": number("s", 0, 1e8, "time until it is in the window"),
        "low_s": number("s", 0, 1e8, "10 % point"),
        "high_s": number("s", 0, 1e8, "90 % point"),
    },
    INPUTS,
)
JACKET = together(
    {
        "block": record(
            {
                "length_m": number("m", 0.01, 1, "length"),
                "width_m": number("m", 0.01, 1, "width"),
                "height_m": number("m", 0.01, 1, "height"),
            },
            "the block, whole",
        ),
        "start_c": START,
        "jacket_c": WATER,
        "window_low_c": MELT["window_low_c"],
        "limit_c": MELT["limit_c"],
        "material": MATERIAL,
        "chopped_m": CHOPPED,
    },
    BASIS,
)


FUNCTIONS = {
    "melt.plan_jacket": {
        "request": JACKET,
        "reply": JACKET_REPLY,
    },
}


EVENTS = {
    "jacket_started": {
        "seconds_s": number("s", 1, 1e8, "expected until it is in the window"),
        "low_s": number("s", 1, 1e8, "10 % point"),
        "high_s": number("s", 1, 1e8, "90 % point"),
    },
    "water_topped": {},
}
