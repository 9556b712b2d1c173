"""One fold for each kind of event: what it changes in the run, or why it does not fit.

A fold takes the run, the checked body and the corrected time in ms; it changes the run in place and raises `Unfit`
before it has changed anything.
"""

from ..core.unfit import Unfit
from ..products import KINDS
from ..steps.melt.fold import melting
from ..steps.wash import fold as wash_fold
from .courses import KIND_OF, ORDER

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable

    from ..core.annotations import Readable
    from ..types import (
        BatchOpenedBody,
        ClosedBody,
        LeftOutBody,
        NotedBody,
        PhotographedBody,
        PinnedBody,
        RenamedBody,
        Run,
        SeriesEndedBody,
        StepSkippedBody,
        TakenOverBody,
        ThrownAwayBody,
    )


MOST_PINS = 20


def _open(run: "Run", body: "BatchOpenedBody", at_ms: float) -> None:
    if run["opened_at_ms"] is not None:
        raise Unfit("already_open")
    run["opened_at_ms"] = at_ms


def _accept(run: "Run", body: "NotedBody | TakenOverBody", at_ms: float) -> None:
    pass  # a note lives in the log; who has the batch is in the event itself, and `run` takes it from there


def _photograph(run: "Run", body: "PhotographedBody", at_ms: float) -> None:
    run["photos"] += 1  # the picture itself is not in the log


def _pin(run: "Run", body: "PinnedBody", at_ms: float) -> None:
    """Says when a task of the day is to begin; the plan of the day reads it."""
    pins = dict(run.get("pins", {}))
    pins.pop(body["task"], None)
    if body["at_ms"] is not None:
        pins[body["task"]] = body["at_ms"]
    if len(pins) > MOST_PINS:
        raise Unfit("too_many")
    run["pins"] = pins


def _leave_out(run: "Run", body: "LeftOutBody", at_ms: float) -> None:
    if run["closed_at_ms"] is None:
        raise Unfit("not_closed")
    if body["left_out"] and not body["reason"].strip():
        raise Unfit("without_reason")
    run["left_out"] = body["reason"].strip() if body["left_out"] else None


def _skip(run: "Run", body: "StepSkippedBody", at_ms: float) -> None:
    step = body["step"]
    if step == "read":
        melt = melting(run)
        if not melt["read_wanted"]:
            raise Unfit("already_done")
        melt["read_wanted"] = False
    elif step == "wash":
        wash_fold.skip(run, body, at_ms)
    elif step not in ORDER[run["kind"]] or step in KIND_OF[run["kind"]].never_skipped:
        raise Unfit("cannot_be_skipped")
    elif step in run["done"]:
        raise Unfit("already_done")
    else:
        run["done"][step] = at_ms
    if step not in run["skipped"]:
        run["skipped"].append(step)


def _close(run: "Run", body: "ClosedBody", at_ms: float) -> None:
    run["closed_at_ms"] = at_ms
    run["done"]["close"] = at_ms


def _throw_away(run: "Run", body: "ThrownAwayBody", at_ms: float) -> None:
    """Closes the batch as one of which nothing is sold."""
    run["thrown_away"] = {"reason": body["reason"], "text": body["text"].strip()}
    run["closed_at_ms"] = at_ms
    run["done"]["close"] = at_ms


def _end_series(run: "Run", body: "SeriesEndedBody", at_ms: float) -> None:
    """The batches that were planned to follow this one are not made, or are after all."""
    run["series_ended"] = body["ended"]


def _rename(run: "Run", body: "RenamedBody", at_ms: float) -> None:
    if not body["name"].strip():
        raise Unfit("without_name")
    run["name"] = body["name"].strip()


def fold_that_marks(step: str, note: "Callable[..., None] | None" = None) -> "Callable[..., None]":
    """A fold that marks its step done; a second one is ignored, so two hands tapping the same step count once."""

    def fold(run: "Run", body: "Readable", at_ms: float) -> None:
        if step not in ORDER[run["kind"]]:
            raise Unfit("not_in_this_batch")
        if step in run["done"]:
            raise Unfit("already_done")
        if note is not None:
            note(run, body)
        run["done"][step] = at_ms

    return fold


FOLDS: "dict[str, Callable[..., None]]" = {
    "batch_opened": _open,
    "noted": _accept,
    "photographed": _photograph,
    "taken_over": _accept,
    "left_out": _leave_out,
    "step_skipped": _skip,
    "closed": _close,
    "renamed": _rename,
    "series_ended": _end_series,
    "pinned": _pin,
    "thrown_away": _throw_away,
}
FOLDS.update(wash_fold.FOLDS)
for _kind in KINDS:
    FOLDS.update(_kind.folds)
for _kind in KINDS:
    for _step, _event in _kind.course:
        if _event not in FOLDS:
            FOLDS[_event] = fold_that_marks(_step, _kind.notes.get(_event))
