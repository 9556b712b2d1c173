"""Why an event does not fit a run, and the question many folds ask first."""

from ..batch.courses import ORDER


class Unfit(Exception):
    """Why an event does not fit the run as it stands."""


def belongs(run, step):
    """Refuses what tells of a step that this kind of batch does not have."""
    if step not in ORDER[run["kind"]]:
        raise Unfit("not_in_this_batch")


def melting(run):
    """The state of the melt while it lasts."""
    belongs(run, "melt")
    if "melt" in run["done"]:
        raise Unfit("already_poured")
    return run["melt"]
