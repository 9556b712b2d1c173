"""The events that any batch has, and the functions that fold them, say what comes next and order a day."""

from .. import products
from ..core.field_kinds import boolean, choice, document, many, number, record, text
from ..core.fields import PHOTOGRAPHED, WARNINGS
from ..physics.fields import PIECES
from ..steps.common.fields import THROWN_AWAY
from ..steps.wash.fields import CONTAINS, NAME, UNWASHED, instant

EVENTS = {
    "batch_opened": {
        "plan": document("the plan; folded apart from its event", unread=True, default=None, of="PlanDocument"),
        "engine_version": text(20, "version that planned it", default=""),
    },
    "noted": {"text": text(2000, "a note")},
    "photographed": PHOTOGRAPHED,
    "taken_over": {},
    "left_out": {
        "left_out": boolean("whether the shop leaves this batch out of what it learns"),
        "reason": text(200, "why; needed to leave out", default=""),
    },
    "step_skipped": {
        "step": text(40, "the step"),
        "reason": choice(
            UNWASHED, "of a wash: why it was passed over; null: an older app asked for none", default=None
        ),
        "text": text(200, "the same in words", default=""),
    },
    "undone": {"event_id": text(80, "the event taken back")},
    "redone": {"event_id": text(80, "the event that was taken back and counts again")},
    "renamed": {"name": text(200, "what it is called from now on: another batch had its name")},
    "closed": {},
    "series_ended": {"ended": boolean("whether the batches planned to follow it are not made", default=True)},
    "pinned": {
        "task": text(40, "the task of the day"),
        "at_ms": number("ms", 0, 1e14, "when it is to begin, corrected; null: whenever it fits", default=None),
    },
    "thrown_away": {
        "reason": choice(THROWN_AWAY, "why"),
        "text": text(200, "the same in words", default=""),
    },
}

RUN = document("the state of a batch, as `run.replay` makes it", of="Run")

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
        "hot": boolean("whether caramel or chocolate of it is hot: taken next, without a wash", default=False),
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
            "plan": document("the plan of the batch, or what a run takes of it", of="PlanTaken"),
            "events": many(document("an event", unread=True, of="LoggedEvent"), 0, 20000, "events, in any order"),
        },
        "reply": {"run": RUN},
    },
    "run.apply": {
        "request": {"run": RUN, "event": document("an event", unread=True, of="LoggedEvent")},
        "reply": {"run": RUN},
    },
    "run.decide": {
        "request": {
            "run": RUN,
            "facts": many(
                record(
                    {
                        "kind": text(40, "what happened"),
                        "at_ms": number("ms", 0, 1e14, "when, corrected"),
                        "body": document("its body", of="Values"),
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
                document("for each what belongs into its body as `decided`; null: nothing", of="Values", nullable=True),
                0,
                500,
                "in their order",
            )
        },
    },
    "run.advise": {
        "request": {"run": RUN, "at_ms": number("ms", 0, 1e14, "corrected time now")},
        "reply": {
            "step": text(40, "the step that is open"),
            "say": document("the prompt", of="Sentence"),
            "number": document("the one number that matters", of="Figure", nullable=True),
            "clocks": many(document("a clock", of="Clock"), 0, 20, "running clocks, soonest first"),
            "action": document("the big button", of="Action", nullable=True),
            "choices": many(document("a button", of="Action"), 0, 6, "other buttons of this step"),
            "entry": document("a number or a text to type", of="ToType", nullable=True),
            "caution": document("signal word and sentence", of="Caution", nullable=True),
            "more": document("a second, smaller line", of="Sentence", nullable=True),
            "wants": document("what is to be computed and written to the log", of="Wants", nullable=True),
            "undo": document("what undo would take back", of="Undo", nullable=True),
            "redo": document("what was taken back last and may be put back", of="Undo", nullable=True),
            "throw_away": document("the button that throws it away", of="EventButton", nullable=True),
            "hot": boolean("whether caramel or chocolate of it is hot: it cools while nobody is there"),
            "melt": document("while melting, for the ladder", of="NextBurst", nullable=True),
        },
    },
    "batch.order": {
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
