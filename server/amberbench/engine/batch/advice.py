"""What to do next: one prompt, one number, one big button, its caution; and the clocks that run.

`advise` reads a run and the time and changes nothing. It names sentences by their key in the text catalogue
("say.…", "more.…", "button.…", "caution.…"); the numbers beside them carry their unit in their name.
"""

from ..products import KINDS
from ..steps.room import prompts as room_prompts
from ..steps.wash import prompts as wash_prompts
from . import input_checks
from .courses import KIND_OF, open_step

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from amberbench.engine.products.kind import Kind

    from ..core.annotations import Readable
    from ..types import Advice, Clock, Run


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
    }
    kind = KIND_OF[run["kind"]]
    kind.pages[step](run, at_ms, advice)
    wash_prompts.add_wash_prompt(run, step, advice, kind.hot)
    room_prompts.add_room_advice(run, advice)
    advice["wants"] = kind.pending_computation(run)
    advice["clocks"] = sorted(
        advice["clocks"] + _clocks(kind, run, step), key=lambda clock: (clock["due_ms"], clock["name"])
    )
    undoable = run["undoable"]
    if undoable is not None:
        advice["undo"] = {"event_id": undoable["event_id"], "code": "undo." + undoable["kind"]}
    return advice


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
    input_checks.check_run(request["run"])
    return advise(request["run"], request["at_ms"])


# For tests: the pages of each kind of batch.
PAGES = {kind.name: kind.pages for kind in KINDS}
