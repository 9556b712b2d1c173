"""The fields of tempering by seed and of holding the bowl."""

from ...core.field_kinds import boolean, choice, many, number, record, together
from ...core.fields import BASIS, INPUTS, SEEN, WARNINGS
from ...physics.fields import CHOCOLATE, ROOM, VESSEL

TARGETS = record(
    {
        "melt_low_c": number("°C", 35, 60, "coolest melt that leaves no old crystals"),
        "melt_high_c": number("°C", 35, 60, "hottest melt it bears"),
        "cool_low_c": number("°C", 15, 35, "lower end of cooling after the seed"),
        "cool_high_c": number("°C", 15, 35, "upper end of cooling after the seed"),
        "work_low_c": number("°C", 20, 38, "lower end of the working range"),
        "work_high_c": number("°C", 20, 38, "upper end of the working range"),
    },
    "heat lines of the shop's own chocolate, from its label; null: those of its kind",
    default=None,
)


BOWL = dict(VESSEL, meaning="the bowl; null: none counted")
FUNCTIONS = {
    "chocolate.temper": {
        "request": together(
            {
                "chocolate": CHOCOLATE,
                "targets": TARGETS,
                "mass_kg": number("kg", 0.05, 100, "chocolate wanted in temper, seed included"),
                "melt_c": number("°C", 20, 80, "temperature of the melt; null: the coolest of its kind", default=None),
                "seed_c": number("°C", -20, 60, "temperature of the seed; null: the room's", default=None),
                "room_c": ROOM,
                "bowl": BOWL,
            },
            BASIS,
        ),
        "reply": together(
            {
                "seed_kg": number("kg", 0, 100, "seed, finely cut"),
                "melt_kg": number("kg", 0, 100, "chocolate to melt"),
                "seed_share": number("", 0, 1, "seed over all"),
                "steps": many(
                    record(
                        {
                            "name": choice(("melt", "seed", "cool", "work"), "the step"),
                            "low_c": number("°C", 0, 100, "lower end of its range"),
                            "high_c": number("°C", 0, 100, "upper end"),
                        },
                        "one step",
                    ),
                    4,
                    4,
                    "melt, stir the seed in, cool, work",
                ),
                "remedies": many(WARNINGS["item"], 3, 3, "what to do when too warm, too cool, too thick"),
                "warnings": WARNINGS,
            },
            INPUTS,
        ),
    },
    "chocolate.hold": {
        "request": together(
            {
                "chocolate": CHOCOLATE,
                "targets": TARGETS,
                "mass_kg": number("kg", 0.05, 100, "chocolate in the bowl"),
                "now_c": number("°C", 10, 80, "temperature of the bowl, stirred"),
                "room_c": ROOM,
                "bowl": BOWL,
            },
            BASIS,
        ),
        "reply": together(
            {
                "state": choice(("in_range", "too_warm", "too_cool"), "where the bowl is now"),
                "seconds_s": number("s", 0, 1e8, "time until it leaves the working range; 0 when it is outside"),
                "low_s": number("s", 0, 1e8, "10 % point"),
                "high_s": number("s", 0, 1e8, "90 % point"),
                "remedy": record(WARNINGS["item"]["fields"], "what to do; null: in range", default=None),
            },
            INPUTS,
        ),
    },
}


EVENTS = {
    "strip_tested": together({"good": boolean("whether the strip set with a shine and no streaks")}, SEEN),
}
