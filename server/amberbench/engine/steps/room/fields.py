"""The fields of the room's air and of caramel that flows."""

from ...core.describe import choice, many, number, record, together
from ...physics.fields import BASIS, INPUTS, ROOM, WARNINGS
from ..coat.fields import CHOCOLATE

HUMIDITY = number("", 0.01, 1, "relative humidity as a fraction")
HUMIDITY_OR_NONE = dict(
    HUMIDITY, meaning="relative humidity as a fraction; null: nobody measured it", default=None, measure_by="hygrometer"
)
# What tests have said of a caramel: a cube that stood three days, a piece squeezed at delivery.
FIRM = {
    "firmness": choice(
        ("firm", "borderline", "slumps"), "what a stand-up test said of it; null: none was made", default=None
    ),
    "squeeze": choice(("firm", "soft", "brittle"), "how a piece felt at delivery; null: not squeezed", default=None),
}
DEW_POINT = number("°C", -100, 60, "temperature of a surface that just begins to sweat")
AIR = {
    "dew_point_c": dict(DEW_POINT, default=None),
    "warnings": WARNINGS,
}
DRY_GLASS_C = 62.0  # of sucrose
VISCOSITY = number("Pa s", 0, 1e13, "viscosity")
FUNCTIONS = {
    "room.dew_point": {
        "request": {"temp_c": number("°C", -40, 50, "temperature of the air"), "humidity": HUMIDITY},
        "reply": {"dew_point_c": DEW_POINT},
    },
    "room.advise": {
        "request": together(
            {
                "room_c": ROOM,
                "humidity": HUMIDITY_OR_NONE,
                "surface_c": number(
                    "°C", -30, 60, "coldest surface that meets the air: chilled slab, dipped piece", default=None
                ),
                "centre_c": number("°C", -30, 60, "centres that are to be dipped", default=None),
                "chocolate": dict(CHOCOLATE, nullable=True, meaning="the kind of chocolate; null: none is used"),
            },
            BASIS,
        ),
        "reply": together(AIR, INPUTS),
    },
    "flow.viscosity": {
        "request": together(
            {
                "temp_c": number("°C", -40, 150, "temperature of the caramel"),
                "moisture": number("", 0.01, 0.3, "mass fraction of water in the caramel"),
                "fat": number(
                    "",
                    0,
                    0.5,
                    "mass fraction of fat",
                    default=0.081,
                    basis="published",
                    source="usda_sr28",
                    measure_by="caramel_label",
                ),
                "dry_glass_c": number(
                    "°C",
                    0,
                    120,
                    "glass temperature of its solids without water",
                    default=DRY_GLASS_C,
                    basis="assumed",
                    source="sucrose_glass",
                    measure_by="stand_up_test",
                ),
                "glass_c": number("°C", -130, 120, "its glass temperature, where known; null: by water", default=None),
            },
            BASIS,
        ),
        "reply": together(
            {
                "viscosity_pa_s": VISCOSITY,
                "low_pa_s": number("Pa s", 0, 1e13, "10 % point"),
                "high_pa_s": number("Pa s", 0, 1e14, "90 % point"),
                "glass_c": number("°C", -140, 120, "glass temperature"),
            },
            INPUTS,
        ),
    },
    "flow.stand_up_test": {
        "request": together(
            {
                "heights": many(
                    record(
                        {
                            "at_s": number("s", 0, 3e6, "time since the cube was set down"),
                            "height_m": number("m", 0.0005, 0.3, "its height then"),
                        },
                        "one measurement",
                    ),
                    2,
                    50,
                    "heights of the cube, the fresh one first",
                ),
                "room_c": ROOM,
            },
            BASIS,
        ),
        "reply": together(
            {
                "lost_fraction": number("", 0, 1, "share of its first height that is lost"),
                "verdict": choice(("firm", "borderline", "slumps"), "whether it stays square in this room"),
            },
            INPUTS,
        ),
    },
}
