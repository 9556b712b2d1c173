"""A batch sheet filled in by hand: its times and what stands beside them become events of the batch log."""

from ...core.field_kinds import number
from ...core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable


# A batch sheet has fewer rows; whoever writes on its back has room too.
MOST_ROWS = 40
MINUTE_MS = 60000.0
# A phone's clock and a kitchen's differ a little (assumed).
CLOCKS_DIFFER_MS = 5 * MINUTE_MS


def instant(meaning: str, **more: "Any") -> "Document":
    """A time of day on the sheet, in ms since 1970."""
    return number("ms", 0, 9e13, meaning, **more)


class Sheet:
    """The events that a sheet says, in their order; `at_ms` (ms, corrected) is the time of the last one."""

    def __init__(self, after_ms: float, now_ms: float) -> None:
        self.at_ms = after_ms
        self.now_ms = now_ms
        self.events: "list[Document]" = []

    def mark(self, field: str, at_ms: float) -> None:
        """Takes a time that stands on the sheet."""
        if at_ms < self.at_ms - MINUTE_MS:
            raise Problem(field, "out_of_order", at_ms, low=self.at_ms)
        if at_ms > self.now_ms + CLOCKS_DIFFER_MS:
            raise Problem(field, "still_to_come", at_ms, high=self.now_ms)
        self.at_ms = max(at_ms, self.at_ms)

    def add(self, kind: str, field: str, at_ms: float, body: "Readable | None" = None) -> None:
        """An event whose time stands on the sheet."""
        self.mark(field, at_ms)
        self.then(kind, body or {})

    def later(self, kind: str, seconds_s: float, body: "Readable", most_ms: float | None = None) -> None:
        """An event some seconds after the last, not after `most_ms`."""
        at_ms = self.at_ms + 1000.0 * seconds_s
        self.at_ms = at_ms if most_ms is None else max(self.at_ms, min(at_ms, most_ms))
        self.then(kind, body)

    def then(self, kind: str, body: "Readable") -> None:
        """An event right after the last, a millisecond later so that the order stands."""
        self.at_ms += 1.0
        self.events.append({"kind": kind, "at_ms": self.at_ms, "body": dict(body, typed_at_ms=self.now_ms)})
