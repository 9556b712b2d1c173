"""The fields of coating."""

from ...core.describe import choice, integer, many, number, record, together
from ...physics.fields import BASIS, INPUTS, MATERIAL, ROOM, WARNINGS

CHOCOLATE = choice(
    ("dark_chocolate", "milk_chocolate", "white_chocolate"),
    "the kind of chocolate",
    default="dark_chocolate",
    basis="assumed",
    source="assumed",
)
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


def _size(most_m, meaning, **more):
    return record(
        {
            "length_m": number("m", 0.002, most_m, "length"),
            "width_m": number("m", 0.002, most_m, "width"),
            "height_m": number("m", 0.002, most_m, "height"),
        },
        meaning,
        **more,
    )


COATING = together(
    {
        "piece": _size(0.3, "one undipped centre; null: a cluster, coated by pick-up", default=None),
        "centre_kg": number("kg", 0.0005, 1, "weight of one undipped piece; null: by size and material", default=None),
        "pickup": number("", 0.01, 5, "weighed: chocolate taken up over the undipped weight", default=None),
        "thickness_m": record(
            {
                "bottom": number("m", 0, 0.01, "below"),
                "side": number("m", 0, 0.01, "on each side"),
                "top": number("m", 0, 0.01, "above"),
            },
            "thickness of the coating; null: that of the method",
            default=None,
        ),
        "method": choice(
            ("fork", "enrober", "enrober_with_bottomer"),
            "how the pieces are coated",
            default="fork",
            basis="assumed",
            source="assumed",
        ),
        "prebottom_m": number(
            "m", 0, 0.005, "thickness of the pre-bottom; 0: none", default=0.0, basis="assumed", source="assumed"
        ),
        "prebottom_m2": number(
            "m²", 0.0001, 25, "area that gets the pre-bottom, a whole slab; null: the centres' undersides", default=None
        ),
        "pieces": integer(1, 100000, "pieces to coat"),
        "chocolate": CHOCOLATE,
        "material": MATERIAL,
        "bowl_reserve_kg": number(
            "kg",
            0,
            20,
            "chocolate that must stay in the bowl for the last piece to be dipped",
            default=0.3,
            basis="assumed",
            source="assumed",
            measure_by="chocolate_left",
        ),
        "pocket_m": _size(0.5, "inside of the box's pocket; null: not compared", default=None),
    },
    BASIS,
)
COATING_REPLY = together(
    {
        "per_piece_kg": number("kg", 0, 1e4, "coating of one piece, without its pre-bottom"),
        "share": number("", 0, 1, "share of chocolate, pre-bottom included, in the finished piece"),
        "piece_kg": number("kg", 0, 1e5, "weight of a finished piece"),
        "prebottom_kg": number("kg", 0, 1e5, "chocolate for the pre-bottom"),
        "coating_kg": number("kg", 0, 1e9, "chocolate on all pieces, without the pre-bottom"),
        "total_kg": number("kg", 0, 1e9, "chocolate to have, bowl reserve included"),
        "outside_m": _size(1e5, "the finished piece; null when its size is not known", default=None),
        "warnings": WARNINGS,
    },
    INPUTS,
)
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
    "chocolate.coating": {"request": COATING, "reply": COATING_REPLY},
    "chocolate.temper": {
        "request": together(
            {
                "chocolate": CHOCOLATE,
                "targets": TARGETS,
                "mass_kg": number("kg", 0.05, 100, "chocolate wanted in temper, seed included"),
                "melt_c": number("°C", 20, 80, "temperature of the melt; null: the coolest of its kind", default=None),
                "seed_c": number("°C", -20, 60, "temperature of the seed; null: the room's", default=None),
                "room_c": ROOM,
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
                "bowl": record(
                    {
                        "mass_kg": number("kg", 0.01, 20, "mass of the empty bowl"),
                        "heat_capacity_j_kgk": number(
                            "J/(kg K)", 300, 3000, "specific heat", default=800.0, basis="assumed", source="memory"
                        ),
                    },
                    "the bowl; null: none counted",
                    default=None,
                ),
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
