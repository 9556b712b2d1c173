"""What was decided when an event was told stands in its body, so that no later engine decides it again.

An event without it is decided as it is folded: one of an older app, one typed back before this was, one told while the
engine was down. So is one that tells of something else than the log has by now: another phone's event came between.
"""

from .. import VERSION
from ..core import check
from ..core.problems import Problem
from ..products import KINDS
from .events import EVENTS

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ..core.annotations import Document, Readable
    from ..types import Run


DECIDES: "dict[str, Callable[..., Document]]" = {}
for _kind in KINDS:
    DECIDES.update(_kind.decides)
# Times that went through JSON are the same within this (ms).
SAME_MS = 1.0


def reader(
    run: "Run", kind: str, body: "Readable", written: "Readable", at_ms: float, made: "list[Any]"
) -> "Callable[..., Any]":
    """What a fold asks when it has found that an event fits: `decide(since_ms)` gives what was decided.

    written: the body as it came, body: as it was checked. What had to be decided now is appended to `made`.
    """

    def decide(since_ms: float | None = None) -> "Document":
        decided: "Any" = _standing(kind, written.get("decided"))
        if decided is None or not _is_same(decided["since_ms"], since_ms):
            decided = DECIDES[kind](run, body, at_ms)
            made.append(dict(decided, engine=VERSION, since_ms=since_ms))
        result: "Document" = decided
        return result

    return decide


def _standing(kind: str, decided: "Any") -> "Any":
    """What an event says was decided, checked; None where it says nothing that this engine can read."""
    if type(decided) is not dict:
        return None
    known = EVENTS[kind]["decided"]["fields"]
    try:
        return check.checked(known, {name: decided[name] for name in known if name in decided})
    except Problem:
        return None


def _is_same(one_ms: float | None, other_ms: float | None) -> bool:
    if one_ms is None or other_ms is None:
        return one_ms is other_ms
    return abs(one_ms - other_ms) < SAME_MS
