"""Ids of events the server itself writes."""

import itertools
import secrets
from collections.abc import Iterator


def uuid7(ms: int) -> str:
    """A UUIDv7 (RFC 9562): 48 bits of milliseconds since 1970, version, variant, 74 random bits."""
    return next(uuid7s(ms))


def uuid7s(ms: int) -> Iterator[str]:
    """UUIDv7s for what is written at one time: the first at random, each next one larger (RFC 9562, section 6.2,
    method 2). So many alike pack to a third less than as many at random."""
    # One bit below the most: what is written at one time never runs over.
    first = secrets.randbits(61)
    begin = (ms << 80) | (7 << 76) | (secrets.randbits(12) << 64) | (2 << 62)
    for number in itertools.count(begin | first):
        text = f"{number:032x}"
        yield "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))
