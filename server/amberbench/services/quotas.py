"""How much is taken into one stream, and from one device in a day: more than a shop needs, too little to fill a disk.

The figures are common practice, no published source: a batch has some hundred events, a day some thousand.
"""

from collections.abc import Iterable

from flask import current_app

from .event_validation import Event

DAY_MS = 24 * 3600 * 1000
MOST_IN_STREAM = 20_000
MOST_STREAM_BYTES = 64 * 1024 * 1024
MOST_IN_DAY = 100_000
MOST_DAY_BYTES = 256 * 1024 * 1024
MOST_PHOTOS_IN_DAY = 1_000
MOST_PHOTO_BYTES = 2 * 1024 * 1024 * 1024
MOST_DEVICES_IN_DAY = 10_000


class TooMuch(Exception):
    """So much came in one day: nothing of it was stored, and it may come again later."""


class DayCounts:
    """What came in since midnight (UTC), by who sent it; each process counts for itself, from its start."""

    def __init__(self) -> None:
        self.day = 0
        self.of: dict[str, tuple[int, int]] = {}

    def add(self, who: str, number: int, size: int, now_ms: int, most: int, most_bytes: int) -> None:
        """Counts some more things and their bytes. Raises TooMuch, and then counts nothing."""
        if self.day != now_ms // DAY_MS:
            self.day, self.of = now_ms // DAY_MS, {}
        before, bytes_before = self.of.get(who, (0, 0))
        after = before + number, bytes_before + size
        is_new_one_of_many = who not in self.of and len(self.of) >= MOST_DEVICES_IN_DAY
        if after[0] > most or after[1] > most_bytes or is_new_one_of_many:
            raise TooMuch
        self.of[who] = after


def counts() -> DayCounts:
    """Those of the current application."""
    found: DayCounts = current_app.extensions.setdefault("amberbench_day", DayCounts())
    return found


def count_events(events: Iterable[Event], now_ms: int) -> None:
    """Counts what each device sends. Raises TooMuch when it has sent enough today."""
    sent: dict[str, tuple[int, int]] = {}
    for event in events:
        number, size = sent.get(event.members["device_id"], (0, 0))
        sent[event.members["device_id"]] = number + 1, size + len(event.body)
    for device_id, (number, size) in sent.items():
        counts().add(device_id, number, size, now_ms, MOST_IN_DAY, MOST_DAY_BYTES)


def count_photo(size: int, now_ms: int) -> None:
    """Counts a photo. Raises TooMuch when enough came today."""
    counts().add("photo/", 1, size, now_ms, MOST_PHOTOS_IN_DAY, MOST_PHOTO_BYTES)


def is_full(events: int, size: int) -> bool:
    """Whether a stream with so many events and bytes is over its measure."""
    return events > MOST_IN_STREAM or size > MOST_STREAM_BYTES
