"""The events that every batch has: all ready, weighed, lot, count, what is left."""

from ...core.field_kinds import integer, many, number, record, text, together
from ...core.fields import SEEN

# What ten dipped pieces weigh is told as a weighing of this name.
TEN_DIPPED = "ten_dipped"
# What the melt's model reaches: one bowl.
BOWL_KG = number("kg", 0.05, 10, "caramel in the bowl")
# "unused": it was planned, or printed as a sheet, and never begun.
THROWN_AWAY = ("burnt", "dropped", "trial", "unused", "other")
# The deliveries and leftovers that something was taken of, beside the lot that was typed.
LOT_TAKEN = {"lot_id": text(64, "the lot"), "amount": number("", 0.000001, 100000, "how much of it, in its unit")}
LOTS = {"lots": many(record(LOT_TAKEN, "so much of a lot"), 0, 20, "the lots it was taken of", default=[])}
EVENTS = {
    "ready_checked": {},
    "weighed": together(
        {"kg": number("kg", 0.01, 50, "caramel weighed in"), "lot": text(60, "its lot", default=None)}, LOTS
    ),
    "old_weighed": together({"kg": number("kg", 0, 50, "old caramel put into the bowl before fresh; 0: none")}, LOTS),
    "lot_named": {"lot": text(60, "lot of the caramel")},
    "counted": {"pieces": integer(0, 100000, "good pieces")},
    "weighed_out": together(
        {
            "kg": number("kg", 0, 50, "what the scale says"),
            "what": text(40, "what was weighed", default="rest"),
        },
        SEEN,
    ),
}
