"""Around the whole application: a line of the access log for each request, and HSTS where there is TLS.

A line is JSON: at (ISO 8601, UTC), method, route, status, ms, phone (its id, or null). No address, no query, no code
and no token stands in it: the route is the rule that matched ("/api/batches/<batch_id>"), or "app" for
the phone's files.
"""

import json
import logging
import time
from collections.abc import Iterable
from datetime import UTC, datetime
from logging.handlers import RotatingFileHandler
from pathlib import Path
from typing import Any
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

from flask import Response, g, request

log = logging.getLogger("amberbench.access")
NOTED = "amberbench.noted"
STRICT_TRANSPORT = ("Strict-Transport-Security", "max-age=31536000")


class Lines(RotatingFileHandler):
    """A file of at most 2 MB, beside three older ones. A full disk is told by health, not by a trace for each line."""

    def __init__(self, file: Path) -> None:
        file.touch(mode=0o600)
        super().__init__(file, maxBytes=2_000_000, backupCount=3)

    def handleError(self, record: logging.LogRecord) -> None:
        """Goes on without the line."""


def keep_log(file: Path | None) -> None:
    """Keeps the lines from now on: in a file, or on standard error."""
    log.setLevel(logging.INFO)
    log.addHandler(Lines(file) if file else logging.StreamHandler())


def note(response: Response) -> Response:
    """Notes for the line what only the application knows; called after each of its requests."""
    rule = request.url_rule.rule if request.url_rule else "none"
    request.environ[NOTED] = {"route": rule, "phone": g.phone.phone_id if g.phone else None}
    return response


class Outermost:
    """WSGI middleware."""

    def __init__(self, application: WSGIApplication) -> None:
        self.application = application

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        """Answers one request."""
        begun = time.perf_counter()

        def start(status: str, headers: list[tuple[str, str]], *more: Any) -> Any:
            if environ["wsgi.url_scheme"] == "https":
                headers = [*headers, STRICT_TRANSPORT]
            _log(environ, int(status[:3]), time.perf_counter() - begun)
            return start_response(status, headers, *more)

        return self.application(environ, start)


def _log(environ: WSGIEnvironment, status: int, seconds: float) -> None:
    line = {
        "at": datetime.now(UTC).isoformat(timespec="milliseconds"),
        "method": environ["REQUEST_METHOD"][:10],
        "route": "app",
        "status": status,
        "ms": round(1000 * seconds, 1),
        "phone": None,
    }
    log.info(json.dumps(line | environ.get(NOTED, {})))
