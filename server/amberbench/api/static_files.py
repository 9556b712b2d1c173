"""The phone's app as it was built, handed out by WhiteNoise before Flask sees the request."""

import hashlib
from collections.abc import Callable, Iterable
from pathlib import Path, PurePosixPath
from typing import Any, BinaryIO
from wsgiref.headers import Headers as WsgiHeaders
from wsgiref.types import StartResponse, WSGIApplication, WSGIEnvironment

from flask import Response
from werkzeug.datastructures import Headers
from werkzeug.wrappers import Request
from whitenoise import WhiteNoise

from amberbench import text

from .json_blueprint import is_api, language

LONGEST_PAGE = 255
"""An address longer than this is no page of the app (bytes; the app's own are below 60)."""

# What runs nothing and shows nothing by itself needs no more.
NO_PAGE = "default-src 'none'; frame-ancestors 'none'"
RUNS_SCRIPTS = ("text/html", "text/javascript", "image/svg+xml")
# What a browser can show as a document of its own: who opened it, and what it may ask leave for, matter there alone.
PAGES = ("text/html", "image/svg+xml")
# The default speaks for workers, connections and the manifest.
POLICY = "; ".join(
    (
        "default-src 'self'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "img-src 'self' data: blob:",
        "media-src 'self' data: blob:",
        "object-src 'none'",
        "base-uri 'none'",
        "form-action 'self'",
        "frame-ancestors 'none'",
    )
)

# What the app uses of what browsers ask leave for, and what it does not; photos are taken by the camera's own app.
PERMISSIONS = (
    "screen-wake-lock=(self), web-share=(self), autoplay=(self), accelerometer=(), bluetooth=(), camera=(self), "
    "display-capture=(), geolocation=(), gyroscope=(), hid=(), magnetometer=(), microphone=(), midi=(), payment=(), "
    "serial=(), usb=()"
)


class StaticFiles:
    """WSGI middleware: built files by path, `index.html` for the app's pages, everything else to the application."""

    def __init__(self, application: WSGIApplication, folder: Path, is_known_host: Callable[[Request], bool]) -> None:
        self.application, self.shell, self.is_known_host = application, folder / "index.html", is_known_host
        self.release: tuple[int, int] | None = None
        self.files: dict[str, Any] = {}

    def __call__(self, environ: WSGIEnvironment, start_response: StartResponse) -> Iterable[bytes]:
        """Answers one request."""
        request = Request(environ)
        if is_api(request.path):
            return self.application(environ, start_response)
        if not self.is_known_host(request):
            return _plain(request, "problem.foreign_host", 421)(environ, start_response)
        self._look_for_a_new_release()
        if not self.files:
            return _plain(request, "server.app_not_built", 503)(environ, start_response)
        found = self.files.get(request.path) or (self.files["/index.html"] if _is_page(request.path) else None)
        if found is None:
            return self.application(environ, start_response)
        # WhiteNoise would send what is accepted at quality 0, that is, refused.
        accepted = ", ".join(name for name, quality in request.accept_encodings if quality > 0)
        asked = environ | {"HTTP_ACCEPT_ENCODING": accepted, "wsgi.file_wrapper": _whole}
        served: Iterable[bytes] = WhiteNoise.serve(found, asked, start_response)
        return served

    def _look_for_a_new_release(self) -> None:
        """Lists the files again when the shell is another: WhiteNoise by itself lists them once."""
        try:
            found = self.shell.stat()
        except OSError:
            self.release, self.files = None, {}
            return
        if (found.st_mtime_ns, found.st_size) != self.release:
            self.files = WhiteNoise(
                self.application,
                self.shell.parent,
                max_age=None,
                allow_all_origins=False,
                mimetypes={".webmanifest": "application/manifest+json"},
                add_headers_function=_add_headers,
            ).files
            self.release = (found.st_mtime_ns, found.st_size)


def _is_page(path: str) -> bool:
    """Whether an address without a file of its own is one of the app's pages; they are answered without a redirect."""
    return len(path.encode()) <= LONGEST_PAGE and not path.startswith("/assets/") and not PurePosixPath(path).suffix


def _whole(file: BinaryIO) -> list[bytes]:
    """A file at once (the largest has 0.5 MB), and closed whoever breaks off."""
    with file:
        return [file.read()]


def _add_headers(headers: WsgiHeaders, path: str, url: str) -> None:
    headers["Content-Type"] = str(headers["Content-Type"]).replace('"', "")
    immutable = url.startswith("/assets/")
    headers["Cache-Control"] = "public, max-age=31536000, immutable" if immutable else "no-cache"
    # By its content: WhiteNoise's own, of time and size, is the same for two builds within a second.
    headers["ETag"] = f'"{hashlib.sha256(Path(path).read_bytes()).hexdigest()[:32]}"'
    _restrict(headers, str(headers["Content-Type"]).partition(";")[0])


def restrict(response: Response) -> Response:
    """Sets the headers that keep an answer of the API to itself."""
    _restrict(response.headers, response.mimetype)
    return response


def _restrict(headers: Headers | WsgiHeaders, media_type: str | None) -> None:
    """Keeps the app to its own files: the whole policy for what may run scripts, nothing for the rest."""
    headers["Content-Security-Policy"] = POLICY if media_type in RUNS_SCRIPTS else NO_PAGE
    headers["X-Content-Type-Options"] = "nosniff"
    headers["Referrer-Policy"] = "no-referrer"
    headers["Cross-Origin-Resource-Policy"] = "same-origin"
    if media_type in PAGES:
        headers["Cross-Origin-Opener-Policy"] = "same-origin"
        headers["Permissions-Policy"] = PERMISSIONS


def _plain(request: Request, sentence: str, status: int) -> Response:
    values = {"field": "Host", "given": request.headers.get("Host", "")[:80]}
    return restrict(Response(text.sentence(sentence, values, language(request)), status, mimetype="text/plain"))
