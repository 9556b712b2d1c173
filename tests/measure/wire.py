"""Counts what a server sends over the wire: a relay between browser and server."""

import socket
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from socketserver import BaseRequestHandler, ThreadingTCPServer


class Relay(ThreadingTCPServer):
    """Passes every connection on to a port of this machine; `sent` counts the bytes that come back, heads included."""

    daemon_threads = True
    block_on_close = False

    def __init__(self, port: int) -> None:
        super().__init__(("127.0.0.1", 0), _Passing)
        self.port, self.sent, self.counting = port, 0, threading.Lock()
        self.url = f"http://127.0.0.1:{self.server_address[1]}"


class _Passing(BaseRequestHandler):
    server: Relay

    def handle(self) -> None:
        with socket.create_connection(("127.0.0.1", self.server.port)) as upstream:
            threading.Thread(target=_pass, args=(self.request, upstream), daemon=True).start()
            for sent in _pass_in_parts(upstream, self.request):
                with self.server.counting:
                    self.server.sent += sent


def _pass(source: socket.socket, target: socket.socket) -> None:
    for _ in _pass_in_parts(source, target):
        pass


def _pass_in_parts(source: socket.socket, target: socket.socket) -> Iterator[int]:
    """Passes on until the source ends, then ends the target; the bytes of each part."""
    try:
        while part := source.recv(65536):
            target.sendall(part)
            yield len(part)
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
