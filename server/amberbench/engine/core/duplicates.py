"""Two hands, two phones, one step: taken on both while neither had heard of the other, it counts once.

What an event answers to is in its body: the start of the burst it ends, or how many of its kind had been counted.
"""

from .unfit import Unfit

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .annotations import Document


def once(body: "Document", counted: "list[Document]", name: str) -> None:
    """Refuses what another hand has told of the same step, on a phone that had not heard of this one.

    The step is the one after the `seen` ones known when it was tapped; it is the same when `name` says the same.
    """
    nth = body["seen"]
    if nth is not None and nth < len(counted) and counted[nth][name] == body[name]:
        raise Unfit("already_counted")


def counted(body: "Document", count: int) -> None:
    """Refuses what another hand has told already: `seen` is how many there were when it was tapped."""
    if body["seen"] is not None and body["seen"] < count:
        raise Unfit("already_counted")
