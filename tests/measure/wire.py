"""Counts what a server sends over the wire: a relay between browser and server."""

import re
import socket
import threading
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from socketserver import BaseRequestHandler, ThreadingTCPServer

ASKED = re.compile(rb"[A-Z]+ (\S+) HTTP/1\.1\r\n")
"""How a request begins."""


class Relay(ThreadingTCPServer):
    """Passes every connection on to a port of this machine; `sent` counts the bytes that come back, heads included,
    by the path asked for: on a connection a browser asks only when it has the answer to what it asked before."""

    daemon_threads = True
    block_on_close = False

    def __init__(self, port: int) -> None:
        super().__init__(("127.0.0.1", 0), _Passing)
        self.port, self.counting = port, threading.Lock()
        self.sent: Counter[str] = Counter()
        self.url = f"http://127.0.0.1:{self.server_address[1]}"


class _Passing(BaseRequestHandler):
    server: Relay
    path = ""

    def handle(self) -> None:
        with socket.create_connection(("127.0.0.1", self.server.port)) as upstream:
            threading.Thread(target=self._pass_requests, args=(upstream,), daemon=True).start()
            for part in _parts_passed(upstream, self.request):
                with self.server.counting:
                    self.server.sent[self.path] += len(part)

    def _pass_requests(self, upstream: socket.socket) -> None:
        for _ in _parts_passed(self.request, upstream, self._note):
            pass

    def _note(self, part: bytes) -> None:
        if found := ASKED.match(part):
            self.path = found[1].decode()


def _parts_passed(
    source: socket.socket, target: socket.socket, before: Callable[[bytes], None] = lambda part: None
) -> Iterator[bytes]:
    """Passes on until the source ends, then ends the target; each part, which `before` is told first."""
    try:
        while part := source.recv(65536):
            before(part)
            target.sendall(part)
            yield part
        target.shutdown(socket.SHUT_WR)
    except OSError:
        pass  # one end has hung up, which ends the connection for both


@contextmanager
def counted(port: int) -> Iterator[Relay]:
    """A relay to a server's port for as long as the block lasts."""
    relay = Relay(port)
    thread = threading.Thread(target=relay.serve_forever, kwargs={"poll_interval": 0.05})
    thread.start()
    try:
        yield relay
    finally:
        relay.shutdown()
        thread.join()
        relay.server_close()
