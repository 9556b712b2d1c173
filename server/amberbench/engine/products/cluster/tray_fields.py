"""A tray, what lies under its deposits, when it takes a second one, when it comes free and the chill it may need."""

from ...core.field_kinds import either, integer, many, number, record
from ...physics.fields import MATERIAL

UNDER = either(MATERIAL["alternatives"], "what lies under the caramel: a built-in material, a composition or constants")
COUNTED = many(
    record(
        {
            "material": UNDER,
            "kg_each": number("kg", 0.00005, 0.2, "weight of one"),
            "count": integer(1, 100, "how many go under each cluster", default=1),
        },
        "one kind of piece",
    ),
    0,
    10,
    "what is counted out under each cluster",
    default=[],
)
BED = record(
    {
        "materials": many(
            record(
                {"material": UNDER, "share": number("", 0.001, 1, "its share of the bed's weight")},
                "one kind in the mix",
            ),
            1,
            10,
            "what the bed is mixed from; the shares sum to 1 ± 0.02",
        ),
        "bed_kg_m2": number("kg/m²", 0.05, 50, "weight of the bed over its area"),
    },
    "a level bed inside the rim of the tray, as far as rows are laid; null: none",
    default=None,
)
TRAY = record(
    {
        "length_m": number("m", 0.03, 0.8, "length inside"),
        "width_m": number("m", 0.03, 0.8, "width inside"),
        "rim_m": number("m", 0, 0.2, "kept free along every edge", default=0.01, basis="assumed", source="assumed"),
    },
    "the tray",
)
SECOND = record(
    {
        "from_s": number("s", 0, 1e8, "from when it is tacky"),
        "to_s": number("s", 0, 1e8, "from when it is too cold to weld"),
    },
    "when a second deposit may go on, after the first was laid; null: none is planned",
    default=None,
)
FREE = record(
    {
        "from_s": number("s", 0, 1e8, "when it is most likely free from tray and paper"),
        "to_s": number("s", 0, 1e8, "90 % point"),
    },
    "when the tray can be freed, after its last deposit was laid",
)
CHILL = record(
    {
        "from_c": number("°C", -5, 50, "hottest point when the tray goes into the refrigerator"),
        "fridge_c": number("°C", 0, 15, "air of the refrigerator"),
        "seconds_s": number("s", 0, 1e6, "time there until it can be freed"),
    },
    "the chill of a tray that is not free by free.from_s; null: the room frees it",
    default=None,
)
