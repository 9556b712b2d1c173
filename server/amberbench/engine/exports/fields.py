"""What travels on paper and in tables: a filled-in batch sheet, the list of batches, a timeline."""

from ..core.field_kinds import boolean, choice, document, integer, many, number, record, text
from ..products import KINDS
from ..steps.common.fields import BOWL_KG, THROWN_AWAY
from ..steps.common.sheet import MOST_ROWS, instant
from ..steps.melt.fields import FULL
from ..steps.wash.fields import CONTAINS
from ..stock.fields import USE

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document


BURST = {
    "at_ms": instant("when it was started"),
    "seconds_s": number("s", 1, 600, "time set on the oven"),
    "level_percent": FULL,
    "free": boolean("whether it stirred freely after it", default=False),
    "surface_c": number("°C", 0, 150, "infrared reading after the stir", default=None),
}
SHEET: "Document" = {
    "after_ms": instant("corrected time of the newest event the batch has"),
    "now_ms": instant("corrected time of typing"),
    "weighed_at_ms": instant("when all was ready and weighed in", default=None),
    "weighed_kg": dict(BOWL_KG, meaning="caramel weighed in", default=None),
    "old_kg": number("kg", 0, 50, "old caramel put into the bowl before fresh; null: nothing is said", default=None),
    "lot": text(60, "lot of the caramel", default=None),
    "bursts": many(record(BURST, "a burst"), 0, MOST_ROWS, "bursts in their order", default=[]),
    "loose_kg": number("kg", 0, 50, "loose pieces that go back to their lot", default=None),
    "planned_pieces": integer(0, 1000000, "pieces the plan has; null: any count is believed", default=None),
    "pieces": integer(0, 100000, "good pieces counted", default=None),
    "rest_kg": number("kg", 0, 50, "trim and other leftovers", default=None),
    "notes": many(text(2000, "a note"), 0, 4, "who made it, what was seen", default=[]),
}
for _kind in KINDS:
    if _kind.sheet is not None:
        SHEET.update(_kind.sheet.FIELDS)
WRITTEN = {
    "kind": text(40, "what happened"),
    "at_ms": number("ms", 0, 1e14, "when, corrected"),
    "body": document("its body, with `typed_at_ms`", of="Values"),
}
USED = {name: USE[name] for name in ("lot_id", "amount", "at_ms")}
LABEL = {
    "lot": text(60, "lot of the caramel or chocolate", default=None),
    "under_lots": many(
        record({"material": text(40, "its name; null: unnamed", default=None), "lot": text(60, "its lot")}, "one"),
        0,
        20,
        "lots of what lies under",
        default=[],
    ),
    "uses": many(record(USED, "a use"), 0, 500, "what it took of lots in stock", default=[]),
    "contains": dict(CONTAINS, meaning="allergens of all it is made of"),
    "labels_known": boolean("whether all of these labels were copied", default=False),
    "may_contain": dict(CONTAINS, meaning="what was not washed off before it"),
    "thrown_away": choice(THROWN_AWAY, "why nothing of it is sold; null: it is not thrown away", default=None),
}
SUMMARY = {
    "batch_id": text(64, "the batch"),
    "name": text(200, "its name", default=""),
    "kind": text(40, "slab", default=""),
    "opened_at_ms": number("ms", -2e14, 2e14, "opened"),
    "closed_at_ms": number("ms", -2e14, 2e14, "closed, or null", default=None),
    "step": text(40, "the open step", default=None),
    "pieces": integer(0, 1000000000, "counted, else planned", default=None),
    "caramel_kg": number("kg", -1e300, 1e300, "weighed in, else planned", default=None),
    "good_kg": number(
        "kg", -1e300, 1e300, "pieces counted by planned mass of one; null before the count", default=None
    ),
    "device_id": text(64, "the phone that opened it", default=""),
    "events": integer(0, 1000000000, "how many events it has", default=0),
    "label": record(LABEL, "what its label says; null: an older app made the line", default=None),
}
TABLE = {
    "columns": many(text(80, "a name; its unit at its end"), 1, 40, "names of the columns"),
    "instants": many(text(80, "a name"), 0, 40, "names of the columns that hold seconds since 1970"),
    "rows": many(many(text(100000, "a cell"), 1, 40, "a row"), 0, 1000000, "a cell for each column; empty: not known"),
}
FUNCTIONS = {
    "paper.events": {
        "request": SHEET,
        "reply": {"events": many(record(WRITTEN, "an event"), 1, 500, "in the order of the log")},
    },
    "table.batches": {
        "request": {"batches": many(record(SUMMARY, "a batch"), 0, 1000000, "summaries, newest first")},
        "reply": TABLE,
    },
    "table.timeline": {
        "request": {
            "events": many(document("an event", unread=True, of="LoggedEvent"), 0, 20000, "events, in any order"),
            "ignored": many(text(80, "an id"), 0, 20000, "events that did not fit", default=[]),
        },
        "reply": TABLE,
    },
}
