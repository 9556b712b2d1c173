"""Ids of events the server itself writes."""

import secrets


def uuid7(ms: int) -> str:
    """A UUIDv7 (RFC 9562): 48 bits of milliseconds since 1970, version, variant, 74 random bits."""
    number = (ms << 80) | (7 << 76) | (secrets.randbits(12) << 64) | (2 << 62) | secrets.randbits(62)
    text = f"{number:032x}"
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))
