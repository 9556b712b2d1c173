"""The fields of pouring between bars."""

from ...core.field_kinds import choice, integer, many, number, record, together
from ...core.fields import BASIS, INPUTS, WARNINGS
from ...physics.fields import MATERIAL, ROOM

RESIDUE = number(
    "",
    0,
    0.3,
    "fraction of the caramel that stays in the bowl",
    default=0.02,
    basis="assumed",
    source="memory",
    measure_by="bowl_residue",
)
BARS = many(
    number("m", 0.002, 0.1, "height of a bar"),
    1,
    20,
    "heights of the bars owned, one entry for each set that closes a frame, up to three stacked; null: any height",
    default=None,
)
OWNED = many(
    record(
        {
            "height_m": number("m", 0.002, 0.1, "height of the bar"),
            "length_m": number("m", 0.05, 5, "length of the bar; null: unknown", default=None),
            "count": integer(1, 200, "how many there are; four of one height close a frame", default=4),
        },
        "bars alike",
    ),
    1,
    20,
    "the bars owned, by height and length, up to three sets stacked, taken to be as wide as high; null: as bars_m",
    default=None,
)
POUR = {
    "solve_for": choice(("mass", "length", "height"), "the unknown"),
    "mass_kg": number("kg", 0.05, 50, "caramel weighed in", default=None),
    "length_m": number("m", 0.02, 5, "frame length", default=None),
    "width_m": number("m", 0.02, 5, "frame width", default=None),
    "slab_height_m": number("m", 0.002, 0.1, "slab height wanted", default=None),
    "bars_m": BARS,
    "max_length_m": number("m", 0.02, 5, "longest frame the table allows", default=None),
    "max_width_m": number("m", 0.02, 5, "widest frame the table allows", default=None),
    "pour_c": number("°C", 20, 130, "temperature at pouring", default=74.0, basis="assumed", source="practice"),
    "room_c": ROOM,
    "residue": RESIDUE,
    "material": MATERIAL,
}
POUR_REPLY = together(
    {
        "mass_kg": number("kg", 0, 50, "caramel weighed in"),
        "length_m": number("m", 0, 5, "frame length"),
        "width_m": number("m", 0, 5, "frame width"),
        "slab_height_m": number("m", 0, 0.1, "height of the poured slab"),
        "settled_height_m": number("m", 0, 0.12, "height once at room temperature"),
        "bars": many(number("m", 0, 0.1, "height of a bar"), 0, 20, "the bars to stack, thickest first"),
        "bar_height_m": number("m", 0, 0.2, "their total height"),
        "area_m2": number("m²", 0, 25, "area inside the frame"),
        "volume_m3": number("m³", 0, 3, "volume poured"),
        "warnings": WARNINGS,
    },
    INPUTS,
)


FUNCTIONS = {
    "pour.plan": {"request": together(POUR, BASIS), "reply": POUR_REPLY},
}
