"""The fields of depositing clusters: how many of what on which tray, the funnel, its fills, the windows of a tray."""

from ...core.allergens import ALLERGENS
from ...core.field_kinds import boolean, choice, document, integer, many, number, record, text, together
from ...core.fields import BASIS, INPUTS, SEEN, WARNINGS, decided
from ...physics.fields import BASE, HUMIDITY_OR_NONE, MATERIAL, ROOM, START, VESSEL
from ...steps.common.fields import LOTS
from ...steps.cool.fields import COOL, FIRM
from ...steps.deposit.fields import FILL, FUNNEL, FUNNEL_DECIDED, WINDOW_HIGH, WINDOW_LOW
from ...steps.dip.fields import DIP, DIP_REPLY
from ...steps.melt import plan_fields_read as kept_melt_fields
from ...steps.melt.fields import MELT, MELT_REPLY, OVEN
from ...steps.pour.fields import RESIDUE
from ...steps.room.fields import AIR
from .. import plan_fields_read, remelt
from ..capacity import GOOD, TOGETHER, VESSEL_VOLUME, YIELD, batches_of
from .tray_fields import BED, CHILL, COUNTED, FREE, SECOND, TRAY, UNDER

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document

DEPOSIT_KG = number("kg", 0.0005, 0.5, "one first deposit", measure_by="clusters_weighed")
ROWS = many(
    record({"clusters": integer(1, 20000, "clusters of this size"), "deposit_kg": DEPOSIT_KG}, "clusters of one size"),
    0,
    20,
    "clusters wanted, in laying order; sizes may differ; empty: as many as caramel_kg gives",
    default=[],
)
IN_HAND = number("kg", 0.05, 50, "caramel in hand; null: as rows want", default=None)
CLUSTER_REQUEST = together(
    {
        "rows": ROWS,
        "caramel_kg": IN_HAND,
        "deposit_kg": dict(DEPOSIT_KG, meaning="one first deposit of the caramel in hand", default=None),
        "second_kg": number(
            "kg", 0, 0.5, "one second deposit; 0: none", default=0.0, basis="assumed", source="assumed"
        ),
        "under": COUNTED,
        "bed": BED,
        "tray": TRAY,
        "base": dict(BASE, meaning="what the tray is made of", default="aluminium_tray", nullable=False),
        "spread_m": number("m", 0.01, 0.2, "across the largest first deposit once it lies", measure_by="spread_ruler"),
        "gap_m": number(
            "m", 0, 0.3, "free between two deposits", default=0.008, basis="assumed", source="assumed"
        ),
        "funnel": FUNNEL,
        "deposits_per_min": number(
            "", 1, 300, "pace of the hand, per minute", default=20.0, basis="assumed", source="assumed",
            measure_by="tray_timed",
        ),
        "start_c": START,
        "window_low_c": WINDOW_LOW,
        "window_high_c": WINDOW_HIGH,
        "limit_c": MELT["limit_c"],
        "warn_c": MELT["warn_c"],
        "stop_c": MELT["stop_c"],
        "room_c": ROOM,
        "target_c": dict(COOL["target_c"], meaning="hottest point of a slab of it that is ready to cut"),
        "fridge_c": COOL["fridge_c"],
        "humidity": HUMIDITY_OR_NONE,
        "material": MATERIAL,
        "oven": OVEN,
        "vessel": VESSEL,
        "vessel_volume_m3": VESSEL_VOLUME,
        "yield_share": YIELD,
        "step_s": MELT["step_s"],
        "block_kg": number("kg", 0.05, 50, "weight of one block as bought", default=None),
        "residue": RESIDUE,
        "old": remelt.REQUEST["old"],
        "remelts_allowed": remelt.REQUEST["remelts_allowed"],
        "dip": dict(DIP, meaning="dip the clusters in chocolate, by weighed pick-up; null: they stay plain"),
    },
    FIRM,
    BASIS,
)  # fmt: skip
SIZES = many(
    record(
        {
            "clusters": integer(1, 100000, "clusters of this size"),
            "deposit_kg": number("kg", 0, 0.5, "one first deposit"),
            "spread_m": number("m", 0, 0.2, "across it once it lies"),
        },
        "one size",
    ),
    1,
    20,
    "clusters of each size, in laying order",
)
CLUSTER_REPLY = together(
    GOOD,
    {
        "batches": batches_of(
            asked=record(
                {"rows": ROWS, "caramel_kg": IN_HAND, "old": remelt.REQUEST["old"]},
                "what its own request has in place of that of all",
                asked=True,
            )
        ),
        "together": TOGETHER,
        "remelt": remelt.REMELT,
        "sizes_unknown": many(choice(("bowl",), "whose size nobody has said"), 0, 1, "what the plan was not held to"),
        "pattern": choice(("square", "staggered_long", "staggered_short"), "how the deposits lie"),
        "per_tray": integer(1, 10000, "deposits on a full tray"),
        "trays": integer(1, 20000, "trays"),
        "positions_m": many(
            many(number("m", 0, 1, "x along the length, then y along the width"), 2, 2, "one deposit"),
            1,
            10000,
            "middles of the deposits of a full tray, in laying order, from one corner of the tray",
        ),
        "clusters": integer(1, 100000, "clusters"),
        "sizes": SIZES,
        "by_tray": many(
            record({"trays": integer(1, 20000, "trays"), "sizes": SIZES}, "trays that hold the same"),
            0,
            41,
            "what lies on which trays, in laying order; empty: all deposits are alike",
        ),
        "second_kg": number("kg", 0, 0.5, "one second deposit; 0: none"),
        "deposits_kg": number("kg", 0, 20, "all deposits together"),
        "caramel_kg": number("kg", 0, 20, "caramel to weigh in"),
        "piece_kg": number("kg", 0, 1e4, "one finished cluster, what lies under it included; the mean"),
        "under": many(
            record(
                {
                    "material": dict(UNDER, meaning="as asked"),
                    "kg": number("kg", 0, 1e6, "weight to have ready"),
                    "count": integer(0, 10000000, "pieces to have ready; null: a bed, weighed", default=None),
                    "allergen": choice(ALLERGENS, "its allergen, by its name; null: none known", default=None),
                },
                "one kind",
            ),
            0,
            20,
            "what goes under",
        ),
        "bed": record(
            {"tray_kg": number("kg", 0, 40, "on a tray"), "last_kg": number("kg", 0, 40, "on the last tray")},
            "what a bed weighs as far as rows are laid; null: counted out",
            default=None,
        ),
        "deposits_per_fill": integer(1, 100000, "deposits that a fill gives before it is empty"),
        "fill_kg": number("kg", 0, 50, "one fill"),
        "fill_s": number("s", 0, 1e8, "time until a fill, emptying at the pace, leaves its window or is empty"),
        "most_fill_kg": number("kg", 0, 50, "what the funnel takes where that is all there is"),
        "safe_s": number(
            "s",
            0,
            1e8,
            "time a fresh fill stays warm enough as it empties, on the safe side; sooner empty: as if just so slowly",
        ),
        "stands_s": number("s", 0, 1e8, "time a fresh fill that stands stays warm enough, on the safe side"),
        "fills": integer(1, 100000, "fills"),
        "reheats": integer(0, 100000, "times the caramel has to be warmed again"),
        "rest_kg": number("kg", 0, 20, "what no fill is sure to lay: too cool by then, and too little to heat again"),
        "laying_s": number(
            "s",
            0,
            1e8,
            "time from the first fill to the last deposit, reheating and waiting included, a quarter slower",
        ),
        "bench_s": number("s", 0, 1e8, "the same from the first burst on"),
        "tray_s": number("s", 0, 1e8, "time to lay a full tray"),
        "second": SECOND,
        "free": FREE,
        "chill": CHILL,
        "melt": record(MELT_REPLY, "as melt.plan"),
        "melt_request": document("the request to melt.plan, for melt.next_burst at the bench", of="MeltRequest"),
        "fill_request": document(
            "the request to deposit.fill without now_c and fill_kg, for the bench", of="FillRequest"
        ),
        "blocks": integer(0, 1000, "blocks to open"),
        "leftover_kg": number("kg", 0, 50, "left of the last block; without block_kg, of the caramel in hand"),
        "dip": DIP_REPLY,
        "warnings": WARNINGS,
        "room": record(AIR, "dew point of the room and what its air does, as room.advise"),
    },
    INPUTS,
)


def taken(reply: "Document") -> "Document":
    """What a run reads of a plan's reply; an older one says less of its sizes."""
    window = plan_fields_read.times("from_s", "to_s")
    under = {
        "kg": plan_fields_read.AMOUNT,
        "material": document("as asked"),
        "count": dict(plan_fields_read.AMOUNT, nullable=True),
    }
    size = {"clusters": plan_fields_read.AMOUNT, "deposit_kg": plan_fields_read.AMOUNT}
    some = ("caramel_kg", "clusters", "per_tray", "trays", "fill_kg", "deposits_kg")
    return together(
        plan_fields_read.REPLY,
        {name: plan_fields_read.SOME for name in some},
        {name: plan_fields_read.AMOUNT for name in ("piece_kg", "fill_s", "tray_s")},
        {
            "safe_s": dict(plan_fields_read.TIME, default=0.0),
            "stands_s": dict(plan_fields_read.TIME, default=None),
            "most_fill_kg": dict(plan_fields_read.AMOUNT, default=None),
            "second_kg": dict(plan_fields_read.AMOUNT, default=0.0),
            "second": dict(window, nullable=True),
            "remelt": plan_fields_read.REMELT,
            "free": window,
            "chill": CHILL,
            "sizes": many(record(size, "one size"), 1, 100, "sizes", default=None),
            "under": many(record(under, "one"), 0, 100, "what goes under"),
            "melt_request": record(kept_melt_fields.IN_OVEN, "the melt"),
            "fill_request": record(
                {
                    name: FILL[name]
                    for name in ("h_w_m2k", "material", "room_c", "window_low_c", "limit_c", "pace_kg_s")
                },
                "a fill",
            ),
        },
    )


LEARN = {
    "clusters": integer(1, 200, "finished clusters that were weighed together"),
    "together_kg": number("kg", 0.001, 20, "their weight together"),
    "under_kg": number("kg", 0, 20, "weight of what lies under all of them; null: as planned", default=None),
    "under": COUNTED,
    "bed": BED,
    "across_m": many(number("m", 0.005, 0.3, "across one of them"), 3, 9, "widths of some of them, by ruler"),
    "deposit_kg": dict(CLUSTER_REQUEST["deposit_kg"], meaning="one first deposit, as planned"),
    "second_kg": dict(CLUSTER_REQUEST["second_kg"], meaning="one second deposit, as planned; 0: none was laid"),
    "spread_m": dict(CLUSTER_REQUEST["spread_m"], meaning="width that was planned; null: none", default=None),
    "material": MATERIAL,
}
LEARN_REPLY = {
    "deposit_kg": number("kg", 0, 20, "one first deposit, the mean"),
    "deposit_low_kg": number("kg", 0, 20, "10 % point of it"),
    "deposit_high_kg": number("kg", 0, 20, "90 % point of it"),
    "second_kg": number("kg", 0, 20, "one second deposit, by its planned share"),
    "under_each_kg": number("kg", 0, 20, "what lies under one"),
    "spread_m": number("m", 0, 1, "across a deposit, the mean"),
    "spread_low_m": number("m", 0, 1, "10 % point of it"),
    "spread_high_m": number("m", 0, 1, "90 % point of it"),
    "planned_spread_m": number("m", 0, 10, "what the planned width makes of this weight; null: none", default=None),
    "spread_share": number("", 0, 1000, "measured width over that; null: none", default=None),
}
FUNCTIONS = {
    "cluster.learn": {"request": LEARN, "reply": LEARN_REPLY},
    "cluster.plan": {"request": CLUSTER_REQUEST, "reply": CLUSTER_REPLY},
}

TACK = {"tack": number("", 0, 100, "how much later than planned these turn tacky, as a factor")}
UNDER_LOT = {
    "material": text(40, "what lies under; null: it has no name", default=None),
    "lot": text(60, "its lot; null: none is known", default=None),
}
EVENTS = {
    "allergens_checked": {},
    "under_lot_named": together(UNDER_LOT, LOTS, SEEN),
    "under_laid": {},
    "tray_laid": together(SEEN, decided(FUNNEL_DECIDED)),
    "laying_ended": decided(FUNNEL_DECIDED),
    "tack_tested": together(
        {"tacky": boolean("whether the first row is tacky")}, SEEN, decided(together(FUNNEL_DECIDED, TACK))
    ),
    "second_laid": together(SEEN, decided(FUNNEL_DECIDED)),
    "funnel_emptied": {},
    "tray_freed": together(
        {"free": boolean("whether its clusters come off the paper")},
        SEEN,
        decided({"again_ms": number("ms", 0, 1e15, "when it is tried again; null: it is free", default=None)}),
    ),
    "separated": {},
}
