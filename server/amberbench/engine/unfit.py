"""Why an event does not fit a run, and the question most folds of the melt ask first."""


class Unfit(Exception):
    """Why an event does not fit the run as it stands."""


def melting(run):
    """The state of the melt while it lasts."""
    if "melt" in run["done"]:
        raise Unfit("already_poured")
    return run["melt"]
