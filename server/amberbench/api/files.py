"""Files to keep, as answers."""

from collections.abc import Iterator

from flask import Response

CSV = "text/csv; charset=utf-8; header=present"


def file(name: str, text: str | Iterator[str], kind: str) -> Response:
    """A file to save under a name."""
    response = Response(text, content_type=kind)
    response.headers.set("Content-Disposition", "attachment", filename=name)
    return response
