"""The fields of cutting, and of finding a frame."""

from ...core.field_kinds import boolean, integer, many, number, record, together
from ...core.fields import BASIS, INPUTS
from ...physics.fields import MATERIAL

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


FUNCTIONS = {
    "cut.plan": {"request": together(CUT, BASIS), "reply": together(CUT_REPLY, INPUTS)},
    "cut.fit_frame": {
        "request": together(FIT, BASIS),
        "reply": together({"frames": many(FRAME_FOUND, 0, 40, "frames that fit, smallest area first")}, INPUTS),
    },
}
