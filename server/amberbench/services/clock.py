"""The server's clock and what it makes of a phone's."""

import time

FUTURE_MS = 5 * 60 * 1000
"""An event corrected to later than this from now is kept, and flagged: some clock is wrong."""


def system_now_ms() -> int:
    """Milliseconds since 1970 by this machine's clock."""
    return time.time_ns() // 1_000_000


def is_from_the_future(at_ms: float, offset_ms: float, received_ms: int) -> bool:
    """Whether an event's corrected time lies more than five minutes ahead of the server's clock."""
    return at_ms + offset_ms > received_ms + FUTURE_MS
