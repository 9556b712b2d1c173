"""Folds of the steps that every batch has: weighed in, lot named, counted, weighed out."""

from ...core import check, duplicates
from ...core.copy_with import copy_with
from ...core.unfit import Unfit
from .fields import BOWL_KG, TEN_DIPPED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import CountedBody, LotNamedBody, OldWeighedBody, RemeltState, Run, WeighedBody, WeighedOutBody


MOST_WEIGHED = 60


def _weigh(run: "Run", body: "WeighedBody") -> None:
    """More or less than a bowl is no weight of caramel to melt; a bowl of chocolate takes more."""
    if run["melt"] is not None:
        check.checked({"kg": BOWL_KG}, {"kg": body["kg"]})
    run["weighed_kg"] = body["kg"]
    if body["lot"]:
        run["lot"] = body["lot"]
    if run["melt"] is not None:
        # A changed copy: the request belongs to the plan document and must not change under it.
        run["melt"]["request"] = copy_with(run["melt"]["request"], mass_kg=body["kg"])


def remelt_opened(remelt: "Readable") -> "RemeltState":
    """What goes in of old caramel, before it is weighed; `remelt` is the plan's."""
    old_kg, n, allowed_n = remelt["old_kg"], remelt["n"], remelt.get("allowed_n")
    return {"old_kg": old_kg, "n": n, "allowed_n": allowed_n, "weighed_kg": None}


def _weigh_old(run: "Run", body: "OldWeighedBody", at_ms: float) -> None:
    remelt = run.get("remelt")
    if remelt is None or remelt["old_kg"] == 0.0:
        raise Unfit("not_in_this_batch")
    if remelt["weighed_kg"] is not None or "weigh" in run["done"]:
        raise Unfit("already_done")
    remelt["weighed_kg"] = body["kg"]
    if body["kg"] == 0.0:
        remelt["n"] = 0


def _name_lot(run: "Run", body: "LotNamedBody", at_ms: float) -> None:
    run["lot"] = body["lot"]
    run["done"]["lot"] = at_ms


def _count(run: "Run", body: "CountedBody") -> None:
    run["pieces"] = body["pieces"]


def _weigh_out(run: "Run", body: "WeighedOutBody", at_ms: float) -> None:
    if len(run["out"]) >= MOST_WEIGHED:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, run["out"], "what")
    run["out"].append({"kg": body["kg"], "what": body["what"]})
    if body["what"] != TEN_DIPPED:
        run["done"]["weigh_out"] = at_ms


def lot_is_known(run: "Readable") -> bool:
    """Whether the plan already says which lot it is."""
    return bool(run["lot"])


# Folds of their own, and what a step that is only marked notes besides.
FOLDS = {"old_weighed": _weigh_old, "lot_named": _name_lot, "weighed_out": _weigh_out}
NOTES = {"weighed": _weigh, "counted": _count}
