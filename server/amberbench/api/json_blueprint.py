"""What every endpoint of the API does alike: reads strict JSON, tells the time, answers JSON."""

import gzip
from typing import Any, NoReturn

import marshmallow as ma
import werkzeug
from flask import Request, Response, current_app, g, request
from flask_smorest import Blueprint
from webargs.flaskparser import FlaskParser, abort
from werkzeug.exceptions import RequestEntityTooLarge, UnsupportedMediaType

from amberbench import text
from amberbench.services import clock, strict_json

MOST_READ_AWAY = 32 * 1024 * 1024
# A reply below this fits a few packets as it is (bytes; assumed).
LEAST_COMPRESSED = 8192


class StrictParser(FlaskParser):
    """Bodies by `strict_json`; another media type than JSON is refused as such."""

    def load_json(self, req: Request, schema: ma.Schema) -> Any:
        """The document in the body."""
        if not req.is_json:
            raise UnsupportedMediaType
        return strict_json.read(body(req))

    def handle_error(self, error: ma.ValidationError, *_: Any, **__: Any) -> NoReturn:
        """Hands marshmallow's faults to the one handler of errors."""
        messages = error.messages
        abort(422, exc=error, faults=next(iter(messages.values())) if isinstance(messages, dict) else messages)


class JsonBlueprint(Blueprint):  # type: ignore[misc]
    """A blueprint whose arguments are read strictly."""

    ARGUMENTS_PARSER = StrictParser()


def body(req: Request) -> bytes:
    """The whole body, unless it is too large."""
    read = req.get_data(cache=True)
    # Without a length Werkzeug stops at the limit and says nothing.
    if req.content_length is None and len(read) >= current_app.config["MAX_CONTENT_LENGTH"]:
        raise RequestEntityTooLarge
    return read


def is_api(path: str) -> bool:
    """Whether a path belongs to the API, known address or not."""
    return (path + "/").startswith("/api/")


def read_away_body() -> None:
    """Takes in what is left of a body that is too large: who still sends would not hear the answer."""
    left = min(request.content_length or MOST_READ_AWAY, MOST_READ_AWAY)
    body = request.environ["wsgi.input"]
    while left > 0 and (piece := body.read(min(left, 65536))):
        left -= len(piece)


def now_ms() -> int:
    """The server's clock; tests may set another."""
    chosen = current_app.config["NOW_MS"] or clock.system_now_ms
    return int(chosen())


def note_arrival() -> None:
    """Remembers when the request came in."""
    g.received_ms = now_ms()


def with_clock(document: dict[str, Any]) -> dict[str, Any]:
    """A reply with the two server times that a phone needs to find its clock's error."""
    return document | {"received_ms": g.received_ms, "sent_ms": now_ms()}


def language(asking: werkzeug.Request) -> str:
    """The language the reader likes best of those there are texts in: Peruvian Spanish is Spanish before English."""
    asked = (text.language_of(locale) for locale, quality in asking.accept_languages if quality > 0)
    return next((one for one in asked if one), text.FALL_BACK)


def answer(document: Any) -> Response:
    """A document as it stands: a schema would drop members that newer apps sent."""
    return Response(strict_json.write(document), mimetype="application/json")


def no_store(response: Response) -> Response:
    """Keeps answers of the API out of every cache, but for those that say otherwise."""
    if is_api(request.path):
        response.headers.setdefault("Cache-Control", "no-store")
    return response


def compress(response: Response) -> Response:
    """Compresses a long answer of the API for whoever takes gzip: a first visit is mostly the log.

    A streamed answer is left as it is: to compress it here would read all of it into memory before the first byte goes.
    """
    if (
        is_api(request.path)
        and not response.is_streamed
        and response.mimetype == "application/json"
        and request.accept_encodings.quality("gzip") > 0
    ):
        document = response.get_data()
        if len(document) >= LEAST_COMPRESSED:
            response.set_data(gzip.compress(document, compresslevel=5, mtime=0))
            response.headers["Content-Encoding"] = "gzip"
            response.vary.add("Accept-Encoding")
    return response
