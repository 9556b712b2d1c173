"""The fields of the whole slab plan, and the events of cutting it."""

from ...core.describe import choice, document, either, integer, many, number, record, together
from ...core.fields import BASIS, INPUTS, WARNINGS
from ...physics.fields import BASE, HUMIDITY_OR_NONE, MATERIAL, ROOM, START
from ...steps.cool.fields import COOL, COOL_REPLY, FIRM
from ...steps.cut.fields import CUT_REPLY, FRAME_FOUND, PIECE
from ...steps.dip.fields import DIP, DIP_REPLY
from ...steps.jacket.fields import CHOPPED, JACKET_REPLY, WATER
from ...steps.melt import kept_plan_fields as kept_melt_fields
from ...steps.melt.fields import MELT, MELT_REPLY, OVEN, VESSEL
from ...steps.pour.fields import BARS, POUR_REPLY, RESIDUE
from ...steps.room.fields import AIR
from .. import kept_plan_fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document


READY = ("ready_s", "ready_low_s", "ready_high_s")


def taken(reply: "Document") -> "Document":
    """What a run reads of a plan's reply: in a jacket another melt than in an oven."""
    jacketed = bool(reply.get("jacket"))
    return together(
        kept_plan_fields.REPLY,
        {
            "caramel_kg": kept_plan_fields.SOME,
            "cut": record({"pieces": kept_plan_fields.AMOUNT, "piece_kg": kept_plan_fields.AMOUNT}, "the cutting"),
            "pour": record(
                {name: kept_plan_fields.AMOUNT for name in ("length_m", "width_m", "bar_height_m")}, "the frame"
            ),
            "melt_request": record(kept_melt_fields.IN_JACKET if jacketed else kept_melt_fields.IN_OVEN, "the melt"),
            "jacket": kept_plan_fields.times("seconds_s", "low_s", "high_s", default=None),
            "cool_request": record({name: COOL[name] for name in COOL if name not in ("basis", "batches")}, "the slab"),
            "cool": kept_plan_fields.times(*READY),
        },
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
                    "the request to melt.plan, for melt.next_burst at the bench; in a jacket what is needed of it",
                    of="MeltRequest",
                ),
                "cool_request": document("the request to cool.plan, for cool.refit at the bench", of="CoolRequest"),
                "warnings": WARNINGS,
            },
            INPUTS,
        ),
    },
}


EVENTS: "Document" = {
    "freed": {},
    "prebottomed": {},
    "flipped": {},
    "scored": {},
    "cut": {},
}
