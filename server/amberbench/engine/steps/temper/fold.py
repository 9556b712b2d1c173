"""Fold of the strip test: of a bowl, or before a batch is dipped."""

from ...core import duplicates
from ...core.unfit import Unfit

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...types import Run, StripTestedBody


MOST = 120


def strip(run: "Run", body: "StripTestedBody", at_ms: float) -> None:
    """A strip of a bowl, or before a batch is dipped."""
    state = run.get("bowl") or run.get("dip")
    if state is None:
        raise Unfit("not_in_this_batch")
    if "temper_check" in run["done"]:
        raise Unfit("already_done")
    if len(state["strips"]) >= MOST:
        raise Unfit("too_many")
    duplicates.refuse_same_reading(body, state["strips"], "good")
    state["strips"].append({"good": body["good"], "at_ms": at_ms})
    state["streaky"] = not body["good"]
    if body["good"]:
        run["done"]["temper_check"] = at_ms


FOLDS = {"strip_tested": strip}
