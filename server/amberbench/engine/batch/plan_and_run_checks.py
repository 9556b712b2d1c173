"""Whether a document is a plan that the bench can run, or the state of a batch.

A plan comes from outside, so all that a run reads of it is looked at. A run is the engine's own: its frame is looked
at, and whatever goes wrong inside is a mistake of ours and comes out as one.
"""

from ..core import has_members
from ..core.field_kinds import boolean, document, many, number, record, text
from ..core.problems import Problem
from ..products import KINDS, OLDEST
from .courses import KIND_OF

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

_INSTANT = number("ms", -1e300, 1e300, "an instant", default=None)
_LISTS = ("skipped", "out", "ignored")
_RUN = {
    "closed_at_ms": _INSTANT,
    "last_at_ms": _INSTANT,
    "touched_ms": _INSTANT,
    "weighed_kg": number("kg", -1e300, 1e300, "weighed in", default=None),
    "pieces": number("", -1e300, 1e300, "counted", default=None),
    "photos": number("", 0, 1e300, "pictures"),
    "prebottom": boolean("whether it gets a thin coat"),
    "done": record({}, "when each step was done"),
    "planned": record({}, "what was planned"),
    "undoable": record({"event_id": text(80, "the event"), "kind": text(80, "its kind")}, "", default=None),
}
for _name in _LISTS:
    _RUN[_name] = many(document("one"), 0, 100000, "a list")
PARTS = {part for kind in KINDS for part in kind.parts}


def check_plan(plan: "Any") -> None:
    """Raises Problem not_a_plan (plan)."""
    if type(plan) is not dict or type(plan.get("reply")) is not dict:
        raise Problem("plan", "not_a_plan")
    kind = plan.get("kind", OLDEST)
    if type(kind) is not str or kind not in KIND_OF:
        raise Problem("plan", "not_a_plan")
    if not has_members.has_members(KIND_OF[kind].taken(plan["reply"]), plan["reply"]):
        raise Problem("plan", "not_a_plan")


def check_run(run: "Any") -> None:
    """Raises Problem not_a_run (run)."""
    if type(run) is not dict or type(run.get("kind")) is not str or run["kind"] not in KIND_OF:
        raise Problem("run", "not_a_run")
    own = KIND_OF[run["kind"]].parts
    parts = all(type(run.get(part)) is dict if part in own else run.get(part) is None for part in PARTS)
    if not parts or not has_members.has_members(_RUN, run) or not _has_all(run):
        raise Problem("run", "not_a_run")


def _has_all(run: "Any") -> bool:
    return all(
        name in run for name in ("weighed_kg", "pieces", "lot", "last_at_ms", "closed_at_ms", "undoable", "held")
    )
