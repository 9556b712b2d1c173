"""What a closed batch teaches, as server and phone keep it."""

from ..core.documents import instant, words
from ..core.field_kinds import either, record
from .fields import CONTRIBUTION, FUNCTIONS, KIND_BY_FUNCTION

LESSON = {
    "batch_id": words("the batch"),
    "name": words("its name"),
    "closed_at_ms": instant("when it was closed"),
    "reason": words("why the shop leaves it out; null: it does not", nullable=True),
    "contribution": record(CONTRIBUTION, "what it tells; null: it cannot be read", nullable=True),
}
DOCUMENTS = {
    "Contribution": record(CONTRIBUTION, "what a closed batch tells"),
    "Measured": record(FUNCTIONS["learn.fold"]["reply"], "what the shop's closed batches measured"),
    "Lesson": record(LESSON, "what a closed batch teaches"),
    "PlanRequest": either(
        [record(kind.request, "a request to " + name) for name, kind in KIND_BY_FUNCTION.items()],
        "a request to a plan that takes in what was measured",
        asked=True,
    ),
}
