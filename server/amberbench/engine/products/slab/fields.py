"""The fields of the whole slab plan, and the events of its own."""

from ...core.field_kinds import boolean, choice, either, integer, many, number, record, together
from ...core.fields import BASIS, INPUTS
from ...steps.cool.fields import FIRM
from ...steps.cut.fields import CUT_REPLY, FRAME_FOUND, PIECE
from ...steps.dip.fields import DIP, DIP_REPLY
from ...steps.jacket.fields import CHOPPED, JACKET_REPLY, WATER
from ...steps.melt.fields import MELT_REPLY, OVEN
from .. import remelt
from ..capacity import GOOD, TOGETHER, YIELD, batches_of
from ..poured.fields import MELTED_AND_COOLED, REPLY, SLAB_HEIGHT, TABLE

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document


AMOUNT = {
    "have": record({"kg": number("kg", 0.05, 50, "caramel in hand")}, "caramel by weight", default=None),
    "want": record(
        {
            "pieces": integer(1, 5000, "good centres", default=None),
            "boxes": integer(1, 1000, "boxes", default=None),
            "per_box": integer(1, 500, "good centres in a box", default=None),
        },
        "good centres, or boxes and centres a box",
        default=None,
    ),
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
}
SLAB = together(
    AMOUNT,
    {
        "slab_height_m": SLAB_HEIGHT,
        "yield_share": YIELD,
        "trim_share": number(
            "",
            0,
            0.9,
            "trim over the caramel weighed in; null: as the cuts leave it",
            default=None,
            measure_by="trim_weighed",
        ),
    },
    TABLE,
    {
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
    },
    MELTED_AND_COOLED,
    {"dip": DIP},
    FIRM,
    PIECE,
    BASIS,
)

# What its plan document says besides what every plan says.
PLAN = {
    "prebottom": boolean("whether it gets a thin coat below before it is cut", optional=True),
    "finish": choice(("plain", "dipped", "wrapped"), "what becomes of the cut pieces", optional=True),
}
FUNCTIONS = {
    "slab.plan": {
        "request": SLAB,
        "reply": together(
            REPLY,
            GOOD,
            {
                "batches": batches_of(
                    length_m=number("m", 0, 5, "frame length"),
                    width_m=number("m", 0, 5, "frame width"),
                    asked=record(
                        together(
                            AMOUNT,
                            {name: TABLE[name] for name in ("max_length_m", "max_width_m")},
                            {"old": remelt.REQUEST["old"]},
                        ),
                        "what its own request has in place of that of all",
                        asked=True,
                    ),
                ),
                "together": TOGETHER,
                "trim_kg": number("kg", 0, 50, "trim and cut loss to expect: by its measured share, else by the cuts"),
                "cut": record(CUT_REPLY, "as cut.plan"),
                "melt": record(MELT_REPLY, "as melt.plan; null in a jacket", default=None),
                "jacket": record(JACKET_REPLY, "as melt.plan_jacket; null in an oven", default=None),
                "frames": many(FRAME_FOUND, 0, 40, "other frames that would do"),
                "dip": DIP_REPLY,
            },
            INPUTS,
        ),
    },
}


EVENTS: "Document" = {
    "prebottomed": {},
    "flipped": {},
    "scored": {},
}
