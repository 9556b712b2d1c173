"""Listens: Tornado reads requests and shakes hands for TLS in one event loop; the application answers in threads.

Whole requests go in and whole answers come out, so no connection holds a thread: neither one that drips, nor one that
stays mute, nor one that does not take its answer.
"""

import asyncio
import logging
import signal
import ssl
from collections.abc import Callable, Coroutine, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import partial
from typing import Any
from wsgiref.types import WSGIApplication, WSGIEnvironment

from tornado.http1connection import HTTP1Connection
from tornado.httpserver import HTTPServer
from tornado.httputil import (
    HTTPConnection,
    HTTPHeaders,
    HTTPMessageDelegate,
    HTTPServerConnectionDelegate,
    HTTPServerRequest,
    RequestStartLine,
    ResponseStartLine,
)
from tornado.netutil import bind_sockets
from tornado.wsgi import WSGIContainer
from werkzeug.datastructures import Headers
from werkzeug.http import http_date
from werkzeug.test import run_wsgi_app

from .config import MOST_BODY_BYTES

THREADS = 10
SHUTDOWN_S = 3
MOST_HEAD_BYTES = 64 * 1024
"""A connection that sends a longer address or longer headers is cut off (the app's own stay below 2 kB)."""
HEAD_S = 60
"""Time for a TLS handshake and the head of a request, or until the next request on the same connection."""
BODY_S = 120
"""Time for a body: 2 MB over a poor network."""

log = logging.getLogger(__name__)
Beside = Callable[[], Coroutine[Any, Any, None]]


@dataclass
class Listener:
    """An application at an address; HTTPS with a context. A free port is taken for 0."""

    application: WSGIApplication
    host: str
    port: int
    tls: ssl.SSLContext | None = None

    def address(self, name: str | None = None) -> str:
        """The address to open in a browser; by another name than the one listened at, where that is every one."""
        host = name or self.host
        shown = f"[{host}]" if ":" in host else host
        return f"{'https' if self.tls else 'http'}://{shown}:{self.port}/"


def listen(
    listeners: Sequence[Listener],
    ready: Callable[[], None],
    meanwhile: Beside | None = None,
) -> None:
    """Serves until interrupted or terminated; calls `ready` once connections are accepted: each listener has its port.

    `meanwhile` runs beside it. Raises OSError when an address cannot be used.
    """
    logging.getLogger("tornado").setLevel(logging.ERROR)  # one line for each phone that trusts nothing, else
    asyncio.run(_serve(listeners, ready, meanwhile))


async def _serve(listeners: Sequence[Listener], ready: Callable[[], None], meanwhile: Beside | None) -> None:
    ended, loop = asyncio.Event(), asyncio.get_running_loop()
    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, lambda *_: loop.call_soon_threadsafe(ended.set))
    answers = Answers()
    servers = [answers.start(listener) for listener in listeners]
    beside = asyncio.create_task(meanwhile()) if meanwhile else None
    ready()
    await ended.wait()
    if beside:
        beside.cancel()
    for server in servers:
        server.stop()
    await answers.end()
    for server in servers:
        await server.close_all_connections()


class Answers:
    """The threads in which applications answer."""

    def __init__(self) -> None:
        self.threads = ThreadPoolExecutor(THREADS, "answer")
        self.running: set[asyncio.Task[None]] = set()

    def start(self, listener: Listener) -> HTTPServer:
        """Listens there; connections are accepted from now on."""
        sockets = bind_sockets(listener.port, listener.host)
        listener.port = sockets[0].getsockname()[1]
        server = HTTPServer(
            Connections(partial(self.answer, WSGIContainer(listener.application, self.threads))),
            ssl_options=listener.tls,
            max_header_size=MOST_HEAD_BYTES,
            idle_connection_timeout=HEAD_S,
            body_timeout=BODY_S,
        )
        server.add_sockets(sockets)
        return server

    def answer(self, container: WSGIContainer, request: HTTPServerRequest) -> None:
        """Answers a request that has come in whole."""
        task = asyncio.ensure_future(self._answer(container, request))
        self.running.add(task)
        task.add_done_callback(self.running.discard)

    async def _answer(self, container: WSGIContainer, request: HTTPServerRequest) -> None:
        connection, loop = request.connection, asyncio.get_running_loop()
        assert isinstance(connection, HTTP1Connection)
        try:
            environ = container.environ(request)
            status, headers, body = await loop.run_in_executor(self.threads, _run, container.wsgi_application, environ)
            code, _, reason = status.partition(" ")
            head = HTTPHeaders({"Date": http_date()})
            for name, value in headers:
                head.add(name, value)
            connection.write_headers(ResponseStartLine("HTTP/1.1", int(code), reason), head, body)
            connection.finish()
        except Exception:
            log.exception("An answer broke off")
            connection.close()

    async def end(self) -> None:
        """Waits for what is being answered, as long as an orderly end may take."""
        if self.running:
            await asyncio.wait(self.running, timeout=SHUTDOWN_S)
        self.threads.shutdown(wait=False, cancel_futures=True)


def _run(application: WSGIApplication, environ: WSGIEnvironment) -> tuple[str, Headers, bytes]:
    body, status, headers = run_wsgi_app(application, environ, buffered=True)
    return status, headers, b"".join(body)


class Connections(HTTPServerConnectionDelegate):
    """Collects the requests of every connection."""

    def __init__(self, answer: Callable[[HTTPServerRequest], None]) -> None:
        self.answer = answer

    def start_request(self, server_conn: object, request_conn: HTTPConnection) -> HTTPMessageDelegate:
        """The next request of a connection."""
        assert isinstance(request_conn, HTTP1Connection)
        return Request(self.answer, request_conn)


class Request(HTTPMessageDelegate):
    """Collects one request. Of a body that is too large no more is kept than it takes to refuse it, in a sentence."""

    def __init__(self, answer: Callable[[HTTPServerRequest], None], connection: HTTP1Connection) -> None:
        self.answer, self.connection = answer, connection
        self.body, self.length = bytearray(), 0

    def headers_received(self, start_line: RequestStartLine | ResponseStartLine, headers: HTTPHeaders) -> None:
        """The head is there."""
        assert isinstance(start_line, RequestStartLine)
        self.request = HTTPServerRequest(connection=self.connection, start_line=start_line, headers=headers)
        self.connection.set_max_body_size(2**62)

    def data_received(self, chunk: bytes) -> None:
        """Some of the body is there."""
        self.length += len(chunk)
        if len(self.body) <= MOST_BODY_BYTES:
            self.body += chunk

    def finish(self) -> None:
        """All is there."""
        if self.request.headers.pop("Transfer-Encoding", None) is not None:
            self.request.headers["Content-Length"] = str(self.length)
        self.request.body = bytes(self.body)
        self.answer(self.request)
