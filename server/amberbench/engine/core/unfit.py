"""Why an event does not fit a run, and the question many folds ask first."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .annotations import Document


class Unfit(Exception):
    """Why an event does not fit the run as it stands."""


def part(run: "Document", name: str) -> "Document":
    """A part of the run's state; refuses what tells of one that this batch does not have."""
    if run.get(name) is None:
        raise Unfit("not_in_this_batch")
    found: "Document" = run[name]
    return found
