"""The server's clock and what it makes of a phone's."""

import time
from collections.abc import Mapping
from typing import Any

FUTURE_MS = 5 * 60 * 1000
"""An event corrected to later than this from now is kept, and flagged: some clock is wrong."""
AHEAD_MS = 24 * 3600 * 1000
"""An event corrected to later than this from when it came in is kept and set aside: no fold takes it."""


def system_now_ms() -> int:
    """Milliseconds since 1970 by this machine's clock."""
    return time.time_ns() // 1_000_000


def is_clock_doubtful(at_ms: float, offset_ms: float, received_ms: int) -> bool:
    """Whether an event's corrected time lies more than five minutes ahead of the server's clock."""
    return at_ms + offset_ms > received_ms + FUTURE_MS


def is_ahead(event: Mapping[str, Any]) -> bool:
    """Whether a stored event is set aside: its corrected time lay more than a day ahead when the server received it."""
    return bool(event["at_ms"] + event["offset_ms"] > event["received_ms"] + AHEAD_MS)
