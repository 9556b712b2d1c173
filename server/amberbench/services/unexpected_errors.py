"""Mistakes of ours: each is logged with its trace under an id of its own, and counted from the server's start."""

import logging
from itertools import count
from uuid import uuid4

log = logging.getLogger(__name__)

_numbers = count(1)
_last = 0


def record(where: str, error: BaseException) -> str:
    """Logs a mistake with its trace and counts it; the id under which the log has it."""
    global _last
    _last = next(_numbers)
    error_id = str(uuid4())
    log.error("%s: a mistake of the app, %s", where, error_id, exc_info=error)
    return error_id


def counted() -> int:
    """How many since the server started."""
    return _last
