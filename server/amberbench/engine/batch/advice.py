"""What to do next: one prompt, one number, one big button, its caution; and the clocks that run.

`advise` reads a run and the time and changes nothing. It names sentences by their key in the text catalogue
("say.…", "more.…", "button.…", "caution.…"); the numbers beside them carry their unit in their name.
"""

from ..products import KINDS
from ..steps.common import prompts as common_prompts
from ..steps.room import prompts as room_prompts
from ..steps.wash import prompts as wash_prompts
from . import plan_and_run_checks
from .courses import KIND_OF, open_step

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from amberbench.engine.products.kind import Kind

    from ..core.annotations import Readable
    from ..types import Advice, Clock, Run, Undo, Undoable


def advise(run: "Run", at_ms: float) -> "Advice":
    """The open step of a run and what the screen says of it at a corrected time in ms; see fields, "run.advise"."""
    step = open_step(run)
    advice: "Advice" = {
        "step": step,
        "say": {"code": "say." + step, "values": {}},
        "more": None,
        "number": None,
        "action": None,
        "choices": [],
        "entry": None,
        "caution": None,
        "wants": None,
        "melt": None,
        "clocks": [],
        "undo": None,
        "redo": None,
        "throw_away": None,
        "hot": False,
    }
    kind = KIND_OF[run["kind"]]
    advice["hot"] = step in kind.hot and _is_heated(run)
    kind.pages[step](run, at_ms, advice)
    wash_prompts.add_wash_prompt(run, step, advice, kind.hot)
    room_prompts.add_room_advice(run, advice)
    advice["wants"] = kind.pending_computation(run)
    advice["clocks"] = sorted(
        advice["clocks"] + _clocks(kind, run, step), key=lambda clock: (clock["due_ms"], clock["name"])
    )
    advice["undo"], advice["redo"] = _named(run["undoable"]), _named(run.get("redoable"))
    if run["closed_at_ms"] is None:
        advice["throw_away"] = common_prompts.throw_away_button(run["undoable"] is not None)
    elif run.get("thrown_away") is not None:
        advice["say"] = {"code": "say.thrown_away", "values": {}}
        advice["more"], advice["clocks"] = None, []
    return advice


def _named(event: "Undoable | None") -> "Undo | None":
    """An event that may be taken back or put back, with the key of its words."""
    return None if event is None else {"event_id": event["event_id"], "code": "undo." + event["kind"]}


def _is_heated(run: "Run") -> bool:
    """Whether a batch that is not yet poured, laid or seeded was heated."""
    if run["closed_at_ms"] is not None:
        return False
    melt, bowl = run["melt"], run["bowl"]
    return (melt is not None and melt["last_at_ms"] is not None) or (bowl is not None and bool(bowl["bursts"]))


def _clocks(kind: "Kind", run: "Run", step: str) -> "list[Clock]":
    clocks: "list[Clock]" = []
    for part, clocks_of in kind.clocks:
        if run.get(part) is not None:
            clocks += clocks_of(run, step)
    return clocks


def advise_request(request: "Readable") -> "Any":
    """What a run's screen says at a time.

    Request: run (a run document), at_ms (corrected time, ms). Reply: as `advise`.
    Raises: Problem not_a_run (run).
    """
    plan_and_run_checks.check_run(request["run"])
    return advise(request["run"], request["at_ms"])


# For tests: the pages of each kind of batch.
PAGES = {kind.name: kind.pages for kind in KINDS}
