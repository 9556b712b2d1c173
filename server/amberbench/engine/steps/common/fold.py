"""The steps that every batch has, as folds: weighed in, lot named, counted, weighed out."""

from ...core import check, duplicates
from ...core.unfit import Unfit
from .fields import BOWL_KG

MOST_WEIGHED = 60


def _weigh(run, body):
    """More or less than a bowl is no weight of caramel to melt; a bowl of chocolate takes more."""
    if run["melt"] is not None:
        check.checked({"kg": BOWL_KG}, {"kg": body["kg"]})
    run["weighed_kg"] = body["kg"]
    if body["lot"]:
        run["lot"] = body["lot"]
    if run["melt"] is not None:
        # dict(a, b=1): the request belongs to the plan document and must not change under it.
        run["melt"]["request"] = dict(run["melt"]["request"], mass_kg=body["kg"])


def _name_lot(run, body, at_ms):
    run["lot"] = body["lot"]
    run["done"]["lot"] = at_ms


def _count(run, body):
    run["pieces"] = body["pieces"]


def _weigh_out(run, body, at_ms):
    if len(run["out"]) >= MOST_WEIGHED:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, run["out"], "what")
    run["out"].append({"kg": body["kg"], "what": body["what"]})
    run["done"]["weigh_out"] = at_ms


def lot_is_known(run):
    """Whether the plan already says which lot it is."""
    return bool(run["lot"])


# Folds of their own, and what a step that is only marked notes besides.
FOLDS = {"lot_named": _name_lot, "weighed_out": _weigh_out}
NOTES = {"weighed": _weigh, "counted": _count}
