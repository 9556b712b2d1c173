"""Duplicates: a step that was tapped on two phones, while neither knew of the other, counts once.

What an event answers to is in its body: the start of the burst it ends, or how many of its kind had been counted.
"""

from .unfit import Unfit

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence

    from .annotations import Readable


def refuse_same_reading(body: "Readable", counted: "Sequence[Readable]", name: str) -> None:
    """Refuses an event of a step that another phone has already written, without knowing of this one.

    The step is the one after the `seen` ones known when it was tapped; it is the same when `name` says the same.
    """
    nth = body["seen"]
    if nth is not None and nth < len(counted) and counted[nth][name] == body[name]:
        raise Unfit("already_counted")


def refuse_same_tap(body: "Readable", count: int) -> None:
    """Refuses an event that another phone has already written: `seen` is how many there were when it was tapped."""
    if body["seen"] is not None and body["seen"] < count:
        raise Unfit("already_counted")
