"""A batch is the fold of its events: `replay` folds them all, `apply` one more.

Events are facts. Folding adds them up and never raises: an event that does not fit is kept in `ignored` with the
reason. What was advised and decided stands in the event (`decisions`), so a newer engine does not rewrite an old batch.
The source of the log's rules is the contract in DEVELOPERS.md, "The batch log".
"""

from ..core import check
from ..core.log import BACK_AND_FORTH, corrected_ms, in_order, taken_back, well_formed
from ..core.problems import Problem
from ..core.unfit import Unfit
from ..products import KINDS, OLDEST
from ..steps.common import fold as common_fold
from ..steps.dip import fold as dip_fold
from ..steps.melt import fold as melt_fold
from ..steps.room import prompts as room_prompts
from ..steps.wash import fold as wash_fold
from . import decisions, label, plan_and_run_checks
from .courses import KIND_OF
from .events import EVENTS
from .folds import FOLDS

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable
    from ..types import LotUse, Run


MOST_IGNORED = 50
AFTER_CLOSING = ("noted", "photographed", "left_out", "renamed", "series_ended")
# What a phone writes by itself, and pins of the day: no step at the bench, nobody takes it back there.
BY_ITSELF = ["wash_told", "renamed", "series_ended", "pinned"] + [event for kind in KINDS for event in kind.by_itself]
# With these nothing of a batch comes onto the bench.
BARE_HANDS = ["batch_opened", "taken_over", "washed", "closed", "thrown_away"]
BARE_HANDS += [event for kind in KINDS for event in kind.bare_hands]
PARTS = [part for kind in KINDS for part in kind.parts]


def opened(plan: "Readable") -> "Run":
    """The run of a batch in which nothing has happened yet."""
    kind = plan.get("kind", OLDEST)
    run: "Any" = {
        "kind": kind,
        "name": plan.get("name", ""),
        "prebottom": bool(plan.get("prebottom")),
        "lot": plan.get("lot"),
        "opened_at_ms": None,
        "closed_at_ms": None,
        "last_at_ms": None,
        "held": None,
        "done": {},
        "skipped": [],
        "weighed_kg": None,
        "dip": dip_fold.opened(plan["reply"].get("dip")) if plan.get("finish") == "dipped" else None,
        "room": room_prompts.warnings_for_bench(plan["reply"]),
        "wash": wash_fold.opened(),
        "touched_ms": None,
        "wrap": plan.get("finish") == "wrapped",
        "pieces": None,
        "out": [],
        "photos": 0,
        "left_out": None,
        "labels_known": False,
        "contains": [],
        "may_contain": [],
        "unwashed": [],
        "thrown_away": None,
        "ignored": [],
        "undoable": None,
        "redoable": None,
        "needs_replay": False,
    }
    for name in PARTS:
        run[name] = None
    if plan["reply"].get("remelt") is not None:
        run["remelt"] = common_fold.remelt_opened(plan["reply"]["remelt"])
    run.update(KIND_OF[kind].begin(plan["reply"]))
    run.update(label.of_plan(plan, run["planned"].get("under", ())))
    result: "Run" = run
    return result


def replay(plan: "Readable", events: "list[Any]") -> "Run":
    """The run after all events, whatever order they come in; those taken back by `undone` count as not there.

    `redone` lets one count again where it stood; of both, what was said last in the order of the log holds.
    """
    run = opened(plan)
    sound: "list[Document]" = []
    for event in events:
        if well_formed(event):
            sound.append(event)
        else:
            _ignore(run, event, "malformed")
    ordered = in_order(sound)
    undone = taken_back(ordered)
    # What each event that is not there was called when it was told, and those that may be put back, the last one last.
    called: "dict[str, str]" = {}
    back: "list[str]" = []
    for event in ordered:
        kind, named = event["kind"], event["body"].get("event_id")
        if kind in BACK_AND_FORTH or (event["id"] in undone and kind != "batch_opened"):
            run["last_at_ms"] = _latest(run["last_at_ms"], corrected_ms(event))
            if kind not in BACK_AND_FORTH:
                called[event["id"]] = melt_fold.undo_name(run, kind, event["body"])
            elif type(named) is str:
                back = [one for one in back if one != named] + ([named] if kind == "undone" and named in called else [])
                run["redoable"] = {"event_id": back[-1], "kind": called[back[-1]]} if back else None
        else:
            run = _fold(run, event)
            if run["redoable"] is None:  # hands went on: what was taken back before stays so
                back = []
    return run


def _is_by_hand(kind: str) -> bool:
    """Whether an event is a step of the batch that somebody took: it may be taken back."""
    return kind not in BY_ITSELF and kind not in AFTER_CLOSING and kind not in ("batch_opened", "taken_over")


def apply(run: "Run", event: "Any") -> "Run":
    """The run after one more event. Total: an event that does not fit goes to `ignored` and nothing else changes.

    `undone`, `redone` and an event older than the newest one applied cannot be folded in place: `needs_replay` is set.
    """
    if not well_formed(event):
        return _ignore(run, event, "malformed")
    return _fold(run, event)


def _fold(run: "Run", event: "Readable", made: "list[Document] | None" = None) -> "Run":
    """`apply` for an event that is known to be well formed; what had to be decided for it is appended to `made`."""
    kind, at_ms = event["kind"], corrected_ms(event)
    if kind in BACK_AND_FORTH or (run["last_at_ms"] is not None and at_ms < run["last_at_ms"]):
        run["needs_replay"] = True
        return run
    if kind not in FOLDS:
        return _ignore(run, event, "unknown_kind")
    if run["closed_at_ms"] is not None and kind not in AFTER_CLOSING:
        return _ignore(run, event, "batch_closed")
    written = event["body"]
    name = melt_fold.undo_name(run, kind, written)
    try:
        known = EVENTS[kind]
        body = check.checked(known, {name: written[name] for name in known if name in written and name != "decided"})
        if kind in decisions.DECIDES:
            made = [] if made is None else made
            FOLDS[kind](run, body, at_ms, decisions.reader(run, kind, body, written, at_ms, made))
        else:
            FOLDS[kind](run, body, at_ms)
    except Problem as problem:
        return _ignore(run, event, problem.code)
    except Unfit as unfit:
        return _ignore(run, event, str(unfit))
    run["last_at_ms"] = _latest(run["last_at_ms"], at_ms)
    _take_of_lots(run, body, at_ms)
    if kind in ("batch_opened", "taken_over"):
        # The phone that has the batch: its clocks ring there. Every other one only looks on.
        run["held"] = {"device_id": event["device_id"], "since_ms": at_ms}
    elif _is_by_hand(kind):
        run["undoable"], run["redoable"] = {"event_id": event["id"], "kind": name}, None
        if kind not in BARE_HANDS:
            run["touched_ms"] = at_ms
    return run


def _take_of_lots(run: "Run", body: "Readable", at_ms: float) -> None:
    taken: "list[LotUse]" = [
        {"lot_id": one["lot_id"], "amount": one["amount"], "at_ms": at_ms} for one in body.get("lots", ())
    ]
    if taken:
        run["uses"] = run.get("uses", []) + taken


def _ignore(run: "Run", event: "Any", why: str) -> "Run":
    if len(run["ignored"]) < MOST_IGNORED:
        name = event.get("id") if type(event) is dict else None
        run["ignored"].append({"id": name if type(name) is str else None, "why": why})
    return run


def _latest(old_ms: float | None, new_ms: float) -> float:
    return new_ms if old_ms is None or new_ms > old_ms else old_ms


def replay_request(request: "Readable") -> "Document":
    """Folds a batch's events into its run.

    Request: plan (the plan document), events (list of events in any order; the same id counts once).
    Reply: run (the run document, under 20 kB).
    Raises: Problem not_a_plan (plan) when the plan lacks what the bench needs.
    """
    plan_and_run_checks.check_plan(request["plan"])
    return {"run": replay(request["plan"], request["events"])}


def apply_request(request: "Readable") -> "Document":
    """Folds one more event into a run.

    Request: run (a run document), event. Reply: run. Raises: Problem not_a_run (run).
    """
    plan_and_run_checks.check_run(request["run"])
    return {"run": apply(request["run"], request["event"])}


def decide_request(request: "Document") -> "Document":
    """What is decided when facts are told, to be written into their events: so no later engine decides it again.

    Request: run (a run document), facts [{kind, at_ms (corrected ms), body}] in their order.
    Reply: decided: for each fact what belongs into its body as `decided`; null: nothing, or it does not fit the run.
    Raises: Problem not_a_run (run).
    """
    plan_and_run_checks.check_run(request["run"])
    return {"decided": decided(request["run"], request["facts"])}


def decided(run: "Run", facts: "list[Document]") -> "list[Document | None]":
    """For each of some facts what is decided when it is told after those before it."""
    replies = []
    for index, fact in enumerate(facts):
        # A phone raises the time of an event over those it has seen.
        at_ms = fact["at_ms"] if run["last_at_ms"] is None else max(fact["at_ms"], run["last_at_ms"])
        event = {"id": str(index), "device_id": "", "seq": index, "offset_ms": 0.0, "at_ms": at_ms}
        event.update(kind=fact["kind"], body=fact["body"])
        made: "list[Document]" = []
        if well_formed(event):
            _fold(run, event, made)
        replies.append(made[0] if made else None)
    return replies
