"""Why an event does not fit a run, and a check that many folds begin with."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from .annotations import Readable


class Unfit(Exception):
    """Why an event does not fit the run as it stands."""


def part(run: "Readable", name: str) -> "Any":
    """A part of the run's state; refuses an event of a part that this batch does not have."""
    if run.get(name) is None:
        raise Unfit("not_in_this_batch")
    return run[name]
