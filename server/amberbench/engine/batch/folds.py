"""One fold for each kind of event: what it changes in the run, or why it does not fit.

A fold takes the run, the checked body and the corrected time in ms; it changes the run in place and raises `Unfit`
before it has changed anything.
"""

from ..core import duplicates
from ..core.unfit import Unfit, belongs, melting
from ..products.chocolate import fold as chocolate_fold
from ..products.cluster import fold as cluster_fold
from ..products.standup import fold as standup_fold
from ..steps.cool import fold as cool_fold
from ..steps.deposit import fold as deposit_fold
from ..steps.dip import fold as dip_fold
from ..steps.melt import fold as melt_fold
from ..steps.wash import fold as wash_fold
from .courses import NEVER_SKIPPED, ORDER, STEP_OF

MOST_WEIGHED = 60


def _open(run, body, at_ms):
    if run["opened_at_ms"] is not None:
        raise Unfit("already_open")
    run["opened_at_ms"] = at_ms


def _once(kind):
    """A fold that marks its step done; a second one is ignored, so two hands tapping the same step count once."""
    step = STEP_OF[kind]

    def fold(run, body, at_ms):
        belongs(run, step)
        if step in run["done"]:
            raise Unfit("already_done")
        run["done"][step] = at_ms

    return fold


def _weigh(run, body, at_ms):
    _once("weighed")(run, body, at_ms)
    run["weighed_kg"] = body["kg"]
    if body["lot"]:
        run["lot"] = body["lot"]
    if run["melt"] is None:
        return
    # dict(a, b=1): the request belongs to the plan document and must not change under it.
    mass_kg = min(max(body["kg"], 0.05), 10.0)
    run["melt"]["request"] = dict(run["melt"]["request"], mass_kg=mass_kg)


def _name_lot(run, body, at_ms):
    run["lot"] = body["lot"]
    run["done"]["lot"] = at_ms


def _count(run, body, at_ms):
    _once("counted")(run, body, at_ms)
    run["pieces"] = body["pieces"]


def _weigh_out(run, body, at_ms):
    if len(run["out"]) >= MOST_WEIGHED:
        raise Unfit("too_many")
    duplicates.once(body, run["out"], "what")
    run["out"].append({"kg": body["kg"], "what": body["what"]})
    run["done"]["weigh_out"] = at_ms


def _accept(run, body, at_ms):
    pass  # a note lives in the log; who has the batch is in the event itself, and `run` takes it from there


def _photograph(run, body, at_ms):
    run["photos"] += 1  # the picture itself is not in the log


def _leave_out(run, body, at_ms):
    if run["closed_at_ms"] is None:
        raise Unfit("not_closed")
    if body["left_out"] and not body["reason"].strip():
        raise Unfit("without_reason")
    run["left_out"] = body["reason"].strip() if body["left_out"] else None


def _skip(run, body, at_ms):
    step = body["step"]
    if step == "read":
        if not melting(run)["read_wanted"]:
            raise Unfit("already_done")
        run["melt"]["read_wanted"] = False
    elif step == "wash":
        wash_fold.pass_over(run, at_ms)
    elif step not in ORDER[run["kind"]] or step in NEVER_SKIPPED:
        raise Unfit("cannot_be_skipped")
    elif step in run["done"]:
        raise Unfit("already_done")
    else:
        run["done"][step] = at_ms
    if step not in run["skipped"]:
        run["skipped"].append(step)


def _close(run, body, at_ms):
    run["closed_at_ms"] = at_ms
    run["done"]["close"] = at_ms


FOLDS = {
    "batch_opened": _open,
    "ready_checked": _once("ready_checked"),
    "weighed": _weigh,
    "lot_named": _name_lot,
    "allergens_checked": _once("allergens_checked"),
    "under_laid": _once("under_laid"),
    "separated": _once("separated"),
    "freed": _once("freed"),
    "prebottomed": _once("prebottomed"),
    "flipped": _once("flipped"),
    "scored": _once("scored"),
    "cut": _once("cut"),
    "wrapped": _once("wrapped"),
    "counted": _count,
    "weighed_out": _weigh_out,
    "noted": _accept,
    "photographed": _photograph,
    "taken_over": _accept,
    "left_out": _leave_out,
    "step_skipped": _skip,
    "closed": _close,
}
PARTS = (melt_fold, cool_fold, cluster_fold, deposit_fold, chocolate_fold, dip_fold, standup_fold, wash_fold)
for _part in PARTS:
    FOLDS.update(_part.FOLDS)
