"""A strip test as a run keeps it."""

from ...core.documents import instant
from ...core.field_kinds import boolean, record

DOCUMENTS = {
    "Strip": record(
        {
            "at_ms": instant("when it was judged"),
            "good": boolean("whether it set with a shine and no streaks"),
        },
        "a strip test",
    ),
}
