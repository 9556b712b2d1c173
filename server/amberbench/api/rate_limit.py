"""How fast somebody may ask, in the memory of this process.

Ours: the library for it (limits) brings three packages and a timer thread for what is twenty lines of a token bucket.
"""

import threading
import time
from collections import OrderedDict

MOST_KEYS = 10_000
"""Those who asked last are remembered; whoever was forgotten begins with a full bucket."""


class RateLimit:
    """A bucket for each who asks: it holds so many and is filled again at so many a second."""

    def __init__(self, at_once: float, per_second: float) -> None:
        self.at_once, self.per_second = at_once, per_second
        self._left: OrderedDict[str, tuple[float, float]] = OrderedDict()
        self._lock = threading.Lock()

    def takes(self, key: str) -> bool:
        """Takes one; False when the bucket is empty."""
        now = time.monotonic()
        with self._lock:
            left, at = self._left.pop(key, (self.at_once, now))
            left = min(self.at_once, left + (now - at) * self.per_second)
            self._left[key] = (max(left - 1, 0) if left >= 1 else left, now)
            if len(self._left) > MOST_KEYS:
                self._left.popitem(last=False)
        return left >= 1
