"""Listens: a threaded server in pure Python, HTTPS with a certificate."""

import signal
import threading
from collections.abc import Callable
from types import FrameType

from cheroot import wsgi
from cheroot.ssl.builtin import BuiltinSSLAdapter
from flask import Flask

THREADS = 10
SHUTDOWN_S = 3
MOST_HEAD_BYTES = 64 * 1024
"""A longer address or longer headers are refused before they are kept (the app's own stay below 2 kB)."""


def listen(app: Flask, host: str, port: int, cert: str | None, key: str | None, ready: Callable[[str], None]) -> None:
    """Serves until interrupted or terminated; calls `ready` with the address once connections are accepted.

    Raises OSError when the address or the certificate cannot be used.
    """
    server = wsgi.Server((host, port), app, numthreads=THREADS, shutdown_timeout=SHUTDOWN_S)
    server.max_request_header_size = MOST_HEAD_BYTES
    if cert and key:
        server.ssl_adapter = BuiltinSSLAdapter(cert, key)
    server.prepare()

    def stop(_signal: int, _frame: FrameType | None) -> None:
        # In a thread of its own: an exception here could hit the server anywhere and leave its workers running.
        threading.Thread(target=server.stop).start()

    signal.signal(signal.SIGINT, stop)
    signal.signal(signal.SIGTERM, stop)
    shown = f"[{host}]" if ":" in host else host
    ready(f"{'https' if cert else 'http'}://{shown}:{server.bind_addr[1]}/")
    server.serve()
