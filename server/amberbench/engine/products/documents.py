"""What the plans and the runs of all kinds have in common."""

from ..core.documents import Fields, count, instant, listed, mapping, nothing, quantity, words
from ..core.field_kinds import boolean, choice, document, either, number, record, text, together
from . import KINDS


def titled(kind: str) -> str:
    """How the names of a kind's documents begin."""
    return "".join(part.capitalize() for part in kind.split("_"))


LABELS = {
    "contains": listed(words("an allergen"), "allergens on the labels of its caramel and chocolate", optional=True),
    "labels_known": boolean("whether somebody copied all of these labels", optional=True),
    "coated": boolean("whether it takes chocolate from a bowl: dipped, or coated below", optional=True),
}
HEAD = together(
    {
        "name": text(200, "what people call it"),
        "product_id": text(80, "what is sold", nullable=True, optional=True),
        "oven_id": text(80, "the oven", nullable=True, optional=True),
        "base_id": text(80, "the base", nullable=True, optional=True),
        "caramel_id": text(80, "the caramel", nullable=True, optional=True),
        "chocolate_id": text(80, "the chocolate of a bowl", nullable=True, optional=True),
        "lot": text(60, "lot of the caramel or chocolate", nullable=True, optional=True),
    },
    LABELS,
    {"series": document("its place among batches planned together", of="Series", optional=True)},
)
PLANNED = {
    "caramel_kg": quantity("kg", "caramel or chocolate to weigh in", nullable=True),
    "pieces": count("pieces; null where nobody counts", nullable=True),
    "piece_kg": quantity("kg", "one of them", nullable=True),
}
RUN = {
    "name": words("what people call it"),
    "prebottom": boolean("whether it gets a thin coat below before it is cut"),
    "lot": words("lot of the caramel or chocolate", nullable=True),
    "opened_at_ms": instant("when it was opened", nullable=True),
    "closed_at_ms": instant("when it was closed", nullable=True),
    "last_at_ms": instant("when something last happened", nullable=True),
    "held": document("the phone that has the batch", of="Held", nullable=True),
    "done": mapping(instant("when it was done"), "when each step was done, by its name"),
    "skipped": listed(words("a step"), "steps that were passed over"),
    "weighed_kg": quantity("kg", "caramel or chocolate weighed in", nullable=True),
    "remelt": document("old caramel in it", of="RemeltState", optional=True),
    "dip": document("the dipping; null: nothing is dipped", of="DipState", nullable=True, optional=True),
    "room": listed(
        document("a warning", of="Warning"), "warnings of the plan that the bench says again", optional=True
    ),
    "wash": document("the wash before it goes on", of="WashState", optional=True),
    "touched_ms": instant("when hands were last at it", nullable=True, optional=True),
    "wrap": boolean("whether its pieces are wrapped", optional=True),
    "pieces": count("good pieces counted; null before the count", nullable=True),
    "out": listed(document("a weighing", of="WeighedOut"), "what was weighed at the end"),
    "photos": count("pictures taken", optional=True),
    "uses": listed(document("a use", of="LotUse"), "what was taken of lots in stock", optional=True),
    "labels_known": boolean("whether all labels of what it is made of were copied", optional=True),
    "contains": listed(words("an allergen"), "what it contains by them, and what lies under", optional=True),
    "may_contain": listed(words("an allergen"), "what was not washed off before it", optional=True),
    "unwashed": listed(document("a wash", of="WashSkipped"), "washes that were passed over", optional=True),
    "pins": mapping(
        instant("when it is to begin"), "tasks of the day that somebody pinned, by their names", optional=True
    ),
    "thrown_away": document(
        "why nothing of it is sold; null: it is not", of="ThrownAway", nullable=True, optional=True
    ),
    "series_ended": boolean("whether the batches planned to follow it are not made", optional=True),
    "left_out": words("why the shop leaves it out of what it learns; null: it does not", nullable=True),
    "ignored": listed(document("an event", of="Ignored"), "events that did not fit"),
    "undoable": document("the event that undo would take back", of="Undoable", nullable=True),
    "redoable": document(
        "the event taken back last, which redo would put back", of="Undoable", nullable=True, optional=True
    ),
    "needs_replay": boolean("whether an event came that cannot be folded in place"),
}
DOCUMENTS = {
    "MeltingRun": either(
        [document(one.name, of=titled(one.name) + "Run") for one in KINDS if "melt" in one.parts],
        "the state of a batch that melts",
        by="kind",
    ),
    "PlanLabels": record(
        {name: dict(LABELS[name], optional=False) for name in LABELS}, "what a batch contains by its labels"
    ),
    "Held": record(
        {"device_id": words("its id"), "since_ms": instant("since when")},
        "the phone that has a batch: its clocks ring there",
    ),
    "Series": record(
        {
            "first": words("id of the first batch; null: this one", nullable=True),
            "number": count("which it is, from 1"),
            "of": count("how many there are"),
            "next": listed(document("what the request of a batch has in place", of="Values"), "those that follow"),
        },
        "the place of a batch among those that make up what was asked for at once",
    ),
    "RemeltState": record(
        {
            "old_kg": quantity("kg", "old caramel to weigh in"),
            "n": count("times that what is left over will have been melted again"),
            "allowed_n": count("times that its label allows; null: not known", nullable=True),
            "weighed_kg": quantity("kg", "old caramel weighed in; null: not yet", nullable=True),
        },
        "old caramel in a batch",
    ),
    "WeighedOut": record(
        {"kg": number("kg", 0, 50, "what the scale said"), "what": words("what was weighed")}, "a weighing"
    ),
    "LotUse": record(
        {"lot_id": words("the lot"), "amount": quantity("", "how much, in its unit"), "at_ms": instant("when")},
        "what a batch took of a lot",
    ),
    "Ignored": record(
        {"id": words("its id; null: it has none", nullable=True), "why": words("a code")},
        "an event that was passed over",
    ),
    "ThrownAway": record(
        {"reason": words("a code"), "text": words("the same in words; empty: none")}, "why a batch was thrown away"
    ),
    "Undoable": record({"event_id": words("its id"), "kind": words("its kind")}, "what undo would take back"),
}


def kind(name: str) -> Fields:
    """The field that says the kind."""
    return {"kind": choice((name,), "the kind")}


def absent(*names: str) -> Fields:
    """The parts of a run that this kind has not."""
    return {name: nothing("this kind has none", optional=True) for name in names}
