"""The events that any batch has, and the functions that fold them, say what comes next and order a day."""

from .. import products
from ..core.describe import boolean, choice, document, integer, many, number, record, text
from ..core.fields import WARNINGS
from ..physics.fields import PIECES
from ..steps.wash.fields import CONTAINS, NAME, instant

EVENTS = {
    "batch_opened": {
        "plan": document("the plan; folded apart from its event", unread=True, default=None),
        "engine_version": text(20, "version that planned it", default=""),
    },
    "noted": {"text": text(2000, "a note")},
    "photographed": {
        "photo_id": text(36, "UUIDv7 of the picture, which the phone sends by itself"),
        "bytes": integer(1, 2**21, "its length as JPEG"),
        "width_px": integer(1, 10000, "its width"),
        "height_px": integer(1, 10000, "its height"),
    },
    "taken_over": {},
    "left_out": {
        "left_out": boolean("whether the shop leaves this batch out of what it learns"),
        "reason": text(200, "why; needed to leave out", default=""),
    },
    "step_skipped": {"step": text(40, "the step")},
    "undone": {"event_id": text(80, "the event taken back")},
    "closed": {},
}

RUN = document("the state of a batch, as `run.replay` makes it")

KINDS = tuple(kind.name for kind in products.KINDS)
ID = text(64, "the batch")


BATCH = record(
    {
        "id": ID,
        "kind": choice(KINDS, "its kind; a stand-up test is left alone and takes no part"),
        "name": NAME,
        "contains": dict(CONTAINS, meaning="allergens on the labels of its caramel and chocolate"),
        "labels_known": boolean("whether somebody copied all of these labels", default=True),
        "under": many(choice(PIECES, "a built-in material"), 0, 20, "what lies under its caramel", default=[]),
        "coated": boolean("whether it takes chocolate from a bowl: dipped, or coated below", default=False),
        "state": choice(("planned", "open", "closed"), "how far it is"),
        "soon": boolean("whether a clock of it rings now or within minutes: taken first", default=False),
        "since_ms": instant("since when it is in this state"),
        "touched_ms": instant("when hands were last at it"),
        "washed_ms": instant("when tools, surfaces and hands were last washed for it"),
        "answered_ms": instant("when a wash for it was last done, or passed over"),
    },
    "one of today's batches",
)
BEFORE = record({"id": ID, "name": NAME, "allergens": CONTAINS}, "a batch the bench was used for")
FUNCTIONS = {
    "run.replay": {
        "request": {
            "plan": document("the plan of the batch"),
            "events": many(document("an event", unread=True), 0, 20000, "events, in any order"),
        },
        "reply": {"run": RUN},
    },
    "run.apply": {"request": {"run": RUN, "event": document("an event", unread=True)}, "reply": {"run": RUN}},
    "run.decide": {
        "request": {
            "run": RUN,
            "facts": many(
                record(
                    {
                        "kind": text(40, "what happened"),
                        "at_ms": number("ms", 0, 1e14, "when, corrected"),
                        "body": document("its body"),
                    },
                    "what will be an event",
                ),
                0,
                500,
                "what is told, in its order",
            ),
        },
        "reply": {
            "decided": many(
                document("for each what belongs into its body as `decided`; null: nothing"), 0, 500, "in their order"
            )
        },
    },
    "run.advise": {
        "request": {"run": RUN, "at_ms": number("ms", 0, 1e14, "corrected time now")},
        "reply": {
            "step": text(40, "the step that is open"),
            "say": document("`{code, values}`: the prompt"),
            "number": document("`{name, value, low, high}`: the one number that matters, or null"),
            "clocks": many(document("`{name, due_ms, sound}`"), 0, 20, "running clocks, soonest first"),
            "action": document(
                "`{code, kind, body}`, or `{code, entry}` that opens the keypad: the big button, or null"
            ),
            "choices": many(document("as `action`"), 0, 6, "other buttons of this step"),
            "entry": document(
                "`{kind, field, name, low, high, last, likely_low, likely_high, band_low, band_high, body}`: "
                "a number to type, or null"
            ),
            "caution": document("`{word, code}`: signal word and sentence, or null"),
            "more": document("`{code, values}`: a second, smaller line, or null"),
            "wants": document(
                "`{name, request, kind, body, keep}`: call this function, write what `keep` names of its reply as an "
                "event of this kind; or null"
            ),
            "undo": document("`{event_id, code}`: what undo would take back, or null"),
            "melt": document("the reply of melt.next_burst while melting, for the ladder; or null"),
        },
    },
    "day.order": {
        "request": {
            "at_ms": number("ms", 0, 1e14, "corrected time now"),
            "batches": many(BATCH, 0, 60, "the batches of today"),
        },
        "reply": {
            "order": many(
                record(
                    {
                        "id": ID,
                        "allergens": dict(CONTAINS, meaning="all it holds"),
                        "after": many(ID, 0, 60, "those of which something would be left"),
                        "wash": dict(CONTAINS, meaning="what to wash off before it; empty: no wash"),
                    },
                    "a batch that is planned or open",
                ),
                0,
                60,
                "in which order to take them",
            ),
            "now": many(
                record(
                    {
                        "id": ID,
                        "after": many(BEFORE, 0, 60, "those of which something is left"),
                        "wash": dict(CONTAINS, meaning="what to wash off if hands go to it now; empty: no wash"),
                        "until_ms": instant("when hands were last at those"),
                    },
                    "a batch that is open",
                ),
                0,
                60,
                "the bench as it stands",
            ),
            "warnings": WARNINGS,
        },
    },
}
