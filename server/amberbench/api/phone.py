"""The phone's app, as it was built: shell, assets, engine, service worker."""

from pathlib import Path

from flask import Blueprint, Response, current_app, request
from werkzeug.exceptions import NotFound
from werkzeug.routing import BaseConverter
from werkzeug.security import safe_join

from amberbench import text

from .door import language

blueprint = Blueprint("phone", __name__)

TYPES = {
    ".css": "text/css",
    ".html": "text/html",
    ".ico": "image/x-icon",
    ".js": "text/javascript",
    ".json": "application/json",
    ".mjs": "text/javascript",
    ".mp3": "audio/mpeg",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain",
    ".wasm": "application/wasm",
    ".wav": "audio/wav",
    ".webmanifest": "application/manifest+json",
    ".woff2": "font/woff2",
}
PACKED = {"br": ".br", "gzip": ".gz"}
LONGEST_PATH = 255
"""Bytes. No page of the app comes near it, and no file system takes a longer name."""
# What runs nothing and shows nothing by itself needs no more.
NO_PAGE = "default-src 'none'; frame-ancestors 'none'"
# Of workers, connections and the manifest the default speaks.
POLICY = "; ".join(
    (
        "default-src 'self'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "style-src 'self' 'unsafe-inline'",
        "img-src 'self' data: blob:",
        "media-src 'self' data: blob:",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    )
)


class OutsideApi(BaseConverter):
    """Any path but those of the API: an unknown one there is a 404, never the app's shell."""

    regex = r"(?!api(?:/|$)).*?"
    part_isolating = False


@blueprint.record_once
def _know_converter(state: object) -> None:
    state.app.url_map.converters["outside_api"] = OutsideApi  # type: ignore[attr-defined]


@blueprint.route("/")
@blueprint.route("/<outside_api:path>")
def serve(path: str = "index.html") -> Response:
    """A built file; for any other page of the app its shell, without a redirect, so that it can be cached."""
    folder = Path(current_app.config["PWA_FOLDER"])
    if not (folder / "index.html").is_file():
        return _not_built()
    if len(path.encode()) > LONGEST_PATH:
        raise NotFound
    found = safe_join(str(folder), path)
    if found is not None and Path(found).is_file():
        return _file(Path(found), immutable=path.startswith("assets/"))
    if Path(path).suffix or path.startswith("assets/"):
        raise NotFound
    return _file(folder / "index.html", immutable=False)


def _file(file: Path, immutable: bool) -> Response:
    packing, packed = _packed(file)
    kind = TYPES.get(file.suffix, "application/octet-stream")
    response = Response(packed.read_bytes(), mimetype=kind)
    response.add_etag()
    if packing:
        response.headers["Content-Encoding"] = packing
    response.headers["Vary"] = "Accept-Encoding"
    response.headers["Cache-Control"] = "public, max-age=31536000, immutable" if immutable else "no-cache"
    response.make_conditional(request)
    return response


def _packed(file: Path) -> tuple[str | None, Path]:
    """The smallest form of a file that the browser takes; they were made when the app was built."""
    for packing, suffix in PACKED.items():
        packed = file.with_name(file.name + suffix)
        if request.accept_encodings[packing] > 0 and packed.is_file():
            return packing, packed
    return None, file


def _not_built() -> Response:
    return Response(text.sentence("server.app_not_built", {}, language()), 503, mimetype="text/plain")


def guard(response: Response) -> Response:
    """Headers that keep the app to its own files; all of the policy for what may run scripts."""
    runs = response.mimetype in (TYPES[".html"], TYPES[".js"], TYPES[".svg"])
    response.headers["Content-Security-Policy"] = POLICY if runs else NO_PAGE
    response.headers["X-Content-Type-Options"] = "nosniff"
    response.headers["Referrer-Policy"] = "no-referrer"
    return response
