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
            threading.Thread(target=_pass, args=(self.request, upstream, self._note), daemon=True).start()
            _pass(upstream, self.request, self._count)

    def _note(self, part: bytes) -> None:
        if found := ASKED.match(part):
            self.path = found[1].decode()

    def _count(self, part: bytes) -> None:
        with self.server.counting:
            self.server.sent[self.path] += len(part)


def _pass(source: socket.socket, target: socket.socket, told: Callable[[bytes], None]) -> None:
    """Passes on until the source ends, then ends the target. Each part is told before it is passed on: whoever
    has all of an answer may ask for the next at once."""
    try:
        while part := source.recv(65536):
            told(part)
            target.sendall(part)
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
