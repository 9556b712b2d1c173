"""The fields that plans of all kinds poured between bars have, what a run reads of their replies, their events."""

from ...core.field_kinds import choice, document, integer, many, number, record, together
from ...core.fields import WARNINGS
from ...physics.fields import BASE, HUMIDITY_OR_NONE, MATERIAL, ROOM, START, STIFFER, VESSEL
from ...steps.cool.fields import COOL, COOL_REPLY
from ...steps.melt import plan_fields_read as kept_melt_fields
from ...steps.melt.fields import MELT
from ...steps.pour.fields import BARS, OWNED, POUR_REPLY, RESIDUE
from ...steps.room.fields import AIR
from .. import plan_fields_read, remelt
from ..capacity import VESSEL_VOLUME

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document


READY = ("ready_s", "ready_low_s", "ready_high_s")


def taken(reply: "Document") -> "Document":
    """What a run reads of a plan's reply: in a jacket another melt than in an oven. Some kinds have no jacket."""
    jacketed = bool(reply.get("jacket"))
    jacket = {"jacket": plan_fields_read.times("seconds_s", "low_s", "high_s", default=None)}
    return together(
        plan_fields_read.REPLY,
        {
            "caramel_kg": plan_fields_read.SOME,
            "remelt": plan_fields_read.REMELT,
            "cut": record({"pieces": plan_fields_read.AMOUNT, "piece_kg": plan_fields_read.AMOUNT}, "the cutting"),
            "pour": record(
                {name: plan_fields_read.AMOUNT for name in ("length_m", "width_m", "bar_height_m")}, "the frame"
            ),
            "melt_request": record(kept_melt_fields.IN_JACKET if jacketed else kept_melt_fields.IN_OVEN, "the melt"),
            "cool_request": record({name: COOL[name] for name in COOL if name not in ("basis", "batches")}, "the slab"),
            "cool": record(
                together({name: plan_fields_read.TIME for name in READY}, {"chill": COOL_REPLY["chill"]}), "the cooling"
            ),
        },
        jacket if "jacket" in reply else {},
    )


SLAB_HEIGHT = number("m", 0.002, 0.1, "slab height wanted")
# The frames that there is room for, and the bars that close one.
TABLE = {
    "max_length_m": number("m", 0.02, 5, "longest frame", default=0.6, basis="assumed", source="assumed"),
    "max_width_m": number("m", 0.02, 5, "widest frame", default=0.4, basis="assumed", source="assumed"),
    "bars_m": BARS,
    "bars": OWNED,
}
MELTED_AND_COOLED = {
    "vessel": VESSEL,
    "vessel_volume_m3": VESSEL_VOLUME,
    "burst_s": MELT["burst_s"],
    "step_s": MELT["step_s"],
    "base": BASE,
    "top": COOL["top"],
    "bottom": COOL["bottom"],
    "contact_m2k_w": COOL["contact_m2k_w"],
    "target_c": COOL["target_c"],
    "fridge_c": COOL["fridge_c"],
    "base_length_m": COOL["base_length_m"],
    "base_width_m": COOL["base_width_m"],
    "base_thickness_m": COOL["base_thickness_m"],
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
    "stiffer_k": STIFFER,
    "block_kg": number("kg", 0.05, 50, "weight of one block as bought", default=None),
}
MELTED_AND_COOLED.update(remelt.REQUEST)
SQUARE = record(
    {
        "lost_fraction": number("", 0, 1, "share of its height that it loses"),
        "seconds_s": number("s", 0, 1e8, "how long it waits"),
        "warmest_c": number("°C", -300, 200, "warmest room in which it loses no more than 5 %"),
    },
    "the cut centre that waits longest until it is dipped; null: nothing is known of the caramel's water",
    default=None,
)
REPLY = {
    "remelt": remelt.REMELT,
    "caramel_kg": number("kg", 0, 50, "caramel to weigh in"),
    "blocks": integer(0, 1000, "blocks to open"),
    "leftover_kg": number("kg", 0, 50, "left of the last block"),
    "pour": record(POUR_REPLY, "as pour.plan"),
    "cool": record(COOL_REPLY, "as cool.plan"),
    "square": SQUARE,
    "room": record(AIR, "dew point of the room and what its air does, as room.advise"),
    "melt_request": document(
        "the request to melt.plan, for melt.next_burst at the bench; in a jacket what is needed of it",
        of="MeltRequest",
    ),
    "cool_request": document("the request to cool.plan, for cool.refit at the bench", of="CoolRequest"),
    "sizes_unknown": many(
        choice(("bars", "bowl"), "whose size nobody has said"), 0, 2, "what the plan could not be held to"
    ),
    "warnings": WARNINGS,
}
EVENTS: "Document" = {
    "freed": {},
    "cut": {},
}
