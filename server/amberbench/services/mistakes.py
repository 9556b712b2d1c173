"""Mistakes of ours: each is logged with its trace under a name of its own, and counted from the server's start."""

import logging
from itertools import count
from uuid import uuid4

log = logging.getLogger(__name__)

_numbers = count(1)
_last = 0


def note(where: str, error: BaseException) -> str:
    """Logs a mistake with its trace and counts it; the name under which the log has it."""
    global _last
    _last = next(_numbers)
    name = str(uuid4())
    log.error("%s: a mistake of the app, %s", where, name, exc_info=error)
    return name


def counted() -> int:
    """How many since the server started."""
    return _last
