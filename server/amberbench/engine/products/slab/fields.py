"""The fields of the whole slab plan, and the events of cutting it."""

from ...core.describe import boolean, choice, document, either, integer, many, number, record, together
from ...physics.fields import BASE, BASIS, INPUTS, MATERIAL, ROOM, START, WARNINGS
from ...steps.cool.fields import COOL, COOL_READINGS, COOL_REPLY
from ...steps.dip.fields import DIP, DIP_REPLY
from ...steps.melt.fields import CHOPPED, JACKET_REPLY, MELT, MELT_REPLY, OVEN, VESSEL, WATER
from ...steps.room.fields import AIR, FIRM, HUMIDITY_OR_NONE

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
PIECE = {
    "piece_length_m": number("m", 0.005, 0.3, "length of one centre"),
    "piece_width_m": number("m", 0.005, 0.3, "width of one centre"),
    "trim_m": number(
        "m", 0, 0.1, "trim on every edge", default=0.005, basis="assumed", source="assumed", measure_by="trim_weighed"
    ),
    "kerf_m": number(
        "m", 0, 0.01, "cut loss between centres", default=0.0, basis="assumed", source="assumed", measure_by="cut_loss"
    ),
}
CUT = together(
    {
        "length_m": number("m", 0.02, 5, "frame length"),
        "width_m": number("m", 0.02, 5, "frame width"),
        "thickness_m": number("m", 0.001, 0.1, "slab height after cooling"),
        "material": MATERIAL,
    },
    PIECE,
)
FIT = together(
    {
        "pieces": integer(1, 5000, "centres wanted"),
        "max_length_m": number("m", 0.02, 5, "longest frame the bars and the table allow"),
        "max_width_m": number("m", 0.02, 5, "widest frame"),
    },
    PIECE,
)
FRAME_FOUND = record(
    {
        "rows": integer(1, 5000, "centres across the width"),
        "columns": integer(1, 5000, "centres along the length"),
        "rotated": boolean("whether the centre's length lies across the frame"),
        "length_m": number("m", 0, 5, "frame length"),
        "width_m": number("m", 0, 5, "frame width"),
        "pieces": integer(1, 1000000, "centres it gives"),
        "waste": number("", 0, 1, "share of the area that is trim, cut loss or centres beyond those wanted"),
    },
    "one frame that fits",
)
CUT_REPLY = {
    "rows": integer(1, 5000, "centres across the width"),
    "columns": integer(1, 5000, "centres along the length"),
    "pieces": integer(1, 1000000, "centres"),
    "rotated": boolean("whether the centre's length lies across the frame"),
    "cuts_along_m": many(
        number("m", 0, 5, "distance from the datum edge"), 2, 5001, "cuts that run along the length, from the long edge"
    ),
    "cuts_across_m": many(
        number("m", 0, 5, "distance from the datum edge"), 2, 5001, "cuts that run across, from the short edge"
    ),
    "piece_kg": number("kg", 0, 200, "mass of one centre"),
    "trim_kg": number("kg", 0, 50000, "mass of trim and cut loss"),
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

SLAB = together(
    {
        "have": record({"kg": number("kg", 0.05, 50, "caramel in hand")}, "caramel by weight", default=None),
        "want": record(
            {
                "pieces": integer(1, 5000, "centres", default=None),
                "boxes": integer(1, 1000, "boxes", default=None),
                "per_box": integer(1, 500, "centres in a box", default=None),
            },
            "centres, or boxes and centres a box",
            default=None,
        ),
        "slab_height_m": number("m", 0.002, 0.1, "slab height wanted"),
        "frame": either(
            [
                choice(("fit",), "find a frame"),
                record(
                    {"length_m": number("m", 0.02, 5, "frame length"), "width_m": number("m", 0.02, 5, "frame width")},
                    "a frame in hand",
                ),
            ],
            "a frame in hand, or find one",
            default="fit",
            basis="assumed",
            source="assumed",
        ),
        "max_length_m": number("m", 0.02, 5, "longest frame", default=0.6, basis="assumed", source="assumed"),
        "max_width_m": number("m", 0.02, 5, "widest frame", default=0.4, basis="assumed", source="assumed"),
        "bars_m": BARS,
        "oven": dict(OVEN, meaning="the microwave oven; needed without a jacket", default=None),
        "jacket": record(
            {
                "water_c": WATER,
                "thickness_m": number(
                    "m", 0.01, 0.3, "shortest side of the block, the others equal; null: a cube", default=None
                ),
                "chopped_m": CHOPPED,
            },
            "melt in a water jacket instead of an oven; null: in the oven",
            default=None,
        ),
        "vessel": VESSEL,
        "burst_s": MELT["burst_s"],
        "step_s": MELT["step_s"],
        "base": BASE,
        "top": COOL["top"],
        "bottom": COOL["bottom"],
        "contact_m2k_w": COOL["contact_m2k_w"],
        "target_c": COOL["target_c"],
        "loss_factor": COOL["loss_factor"],
        "loss_factor_sd": COOL["loss_factor_sd"],
        "spread": COOL["spread"],
        "room_c": ROOM,
        "humidity": HUMIDITY_OR_NONE,
        "start_c": START,
        "windows": record(
            {
                "low_c": MELT["window_low_c"],
                "high_c": MELT["window_high_c"],
                "limit_c": MELT["limit_c"],
                "warn_c": MELT["warn_c"],
                "stop_c": MELT["stop_c"],
            },
            "the heat lines of this caramel",
            default={},
        ),
        "residue": RESIDUE,
        "material": MATERIAL,
        "block_kg": number("kg", 0.05, 50, "weight of one block as bought", default=None),
        "dip": DIP,
    },
    FIRM,
    PIECE,
    BASIS,
)

FUNCTIONS = {
    "pour.plan": {"request": together(POUR, BASIS), "reply": POUR_REPLY},
    "cut.plan": {"request": together(CUT, BASIS), "reply": together(CUT_REPLY, INPUTS)},
    "cut.fit_frame": {
        "request": together(FIT, BASIS),
        "reply": together({"frames": many(FRAME_FOUND, 0, 40, "frames that fit, smallest area first")}, INPUTS),
    },
    "cool.plan": {"request": COOL, "reply": COOL_REPLY},
    "cool.refit": {
        "request": together(COOL, COOL_READINGS),
        "reply": together(
            COOL_REPLY,
            {
                "loss_factor": number("", 0.1, 10, "heat loss over that of the model, as fitted"),
                "loss_factor_sd": number("", 0, 2, "standard deviation of its logarithm"),
            },
        ),
    },
    "slab.plan": {
        "request": SLAB,
        "reply": together(
            {
                "caramel_kg": number("kg", 0, 50, "caramel to weigh in"),
                "blocks": integer(0, 1000, "blocks to open"),
                "leftover_kg": number("kg", 0, 50, "left of the last block"),
                "pour": record(POUR_REPLY, "as pour.plan"),
                "cut": record(CUT_REPLY, "as cut.plan"),
                "melt": record(MELT_REPLY, "as melt.plan; null in a jacket", default=None),
                "jacket": record(JACKET_REPLY, "as melt.plan_jacket; null in an oven", default=None),
                "cool": record(COOL_REPLY, "as cool.plan"),
                "frames": many(FRAME_FOUND, 0, 40, "other frames that would do"),
                "dip": DIP_REPLY,
                "room": record(AIR, "dew point of the room and what its air does, as room.advise"),
                "melt_request": document(
                    "the request to melt.plan, for melt.next_burst at the bench; in a jacket what the bench needs of it"
                ),
                "cool_request": document("the request to cool.plan, for cool.refit at the bench"),
                "warnings": WARNINGS,
            },
            INPUTS,
        ),
    },
}
