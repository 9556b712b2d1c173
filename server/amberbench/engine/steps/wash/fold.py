"""Folds of the wash: what was on the bench before a batch, and when it was washed off."""

from ...core.allergens import in_label_order
from ...core.unfit import Unfit

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...types import Run, StepSkippedBody, WashedBody, WashSkipped, WashState, WashToldBody, WashWanted


def opened() -> "WashState":
    """The state of the wash in a run: what is wanted ({after, allergens} or null), when it was settled (ms)."""
    return {"wanted": None, "washed_ms": None, "answered_ms": None}


def state(run: "Run") -> "WashState":
    """The same; added to runs of older versions, which have none."""
    if run.get("wash") is None:
        run["wash"] = opened()
    return run["wash"]


def _tell(run: "Run", body: "WashToldBody", at_ms: float) -> None:
    wanted: "WashWanted" = {"after": body["after"], "allergens": body["allergens"], "until_ms": body["until_ms"]}
    state(run)["wanted"] = wanted if body["wanted"] else None


def _wash(run: "Run", body: "WashedBody", at_ms: float) -> None:
    _settled(run, at_ms)
    run["wash"]["washed_ms"] = run["wash"]["answered_ms"]


def skip(run: "Run", body: "StepSkippedBody", at_ms: float) -> None:
    """Passes the wash over: what should have been washed off may be in every piece from now on."""
    wanted = _settled(run, at_ms)
    left: list[str] = list(wanted["allergens"])
    run["may_contain"] = in_label_order(run.get("may_contain", []) + left)
    told: "WashSkipped" = {"allergens": left, "reason": body["reason"], "text": body["text"].strip()}
    run["unwashed"] = run.get("unwashed", []) + [told]


def _settled(run: "Run", at_ms: float) -> "WashWanted":
    """Settles the wash that is wanted, whether it was done or not."""
    wanted = state(run)["wanted"]
    if wanted is None:
        raise Unfit("already_done")
    run["wash"]["wanted"] = None
    run["wash"]["answered_ms"] = at_ms if wanted["until_ms"] is None else max(at_ms, wanted["until_ms"])
    return wanted


FOLDS = {"wash_told": _tell, "washed": _wash}
