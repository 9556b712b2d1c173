"""Connections that drip, stay mute or take no answer hold up nobody else."""

import shutil
import socket
import ssl
import subprocess
import threading
import time
import urllib.request
from contextlib import ExitStack, contextmanager, suppress
from urllib.parse import urlsplit

import pytest

from amberbench import serving as settings
from tests.api.test_real_server import serving

MOST_P95_S = 0.2
pytestmark = pytest.mark.skipif(shutil.which("openssl") is None, reason="openssl makes the throw-away certificate")


@pytest.fixture
def https(tmp_path):
    """A server on HTTPS: (address, context that trusts it)."""
    cert, key = tmp_path / "cert.pem", tmp_path / "key.pem"
    command = "openssl req -x509 -newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes -days 2 -subj /CN=bench"
    made = [*command.split(), "-addext", "subjectAltName=IP:127.0.0.1", "-keyout", key, "-out", cert]
    subprocess.run(made, check=True, capture_output=True, timeout=20)
    with serving(tmp_path, "--cert", str(cert), "--key", str(key)) as (address, _):
        yield address, ssl.create_default_context(cafile=cert)


@contextmanager
def slow_clients(address, context, dripping, mute):
    """Ten heads and ten bodies that come a byte at a time, handshakes that never begin; gives all their sockets."""
    place = urlsplit(address).hostname, urlsplit(address).port
    with ExitStack() as stack:
        silent = [stack.enter_context(socket.create_connection(place, timeout=20)) for _ in range(mute)]
        spoken = [stack.enter_context(socket.create_connection(place, timeout=20)) for _ in range(2 * dripping)]
        spoken = [stack.enter_context(context.wrap_socket(one, server_hostname=place[0])) for one in spoken]
        for one in spoken[:dripping]:
            one.sendall(b"POST /api/events HTTP/1.1\r\nHost: x\r\nContent-Length: 99999\r\n\r\n")
        for one in spoken[dripping:]:
            one.sendall(b"GET /api/health HTTP/1.1\r\nHost: x\r\nX: ")
        ended = threading.Event()

        def drip():
            while not ended.wait(0.1):
                for one in spoken:
                    with suppress(OSError):
                        one.sendall(b"x")

        thread = threading.Thread(target=drip)
        thread.start()
        try:
            yield silent, spoken
        finally:
            ended.set()
            thread.join()


def p95_s(address, context, seconds):
    """How long a health call takes, each over a connection of its own."""
    took, until = [], time.monotonic() + seconds
    while time.monotonic() < until:
        began = time.monotonic()
        with urllib.request.urlopen(f"{address}api/health", timeout=20, context=context) as answer:
            assert answer.status == 200
        took.append(time.monotonic() - began)
        time.sleep(0.02)
    return sorted(took)[int(len(took) * 0.95)]


def test_dripping_connections_and_mute_handshakes_hold_up_nobody(https):
    with slow_clients(*https, dripping=10, mute=3):
        assert p95_s(*https, seconds=2) < MOST_P95_S


@pytest.mark.prove
def test_slow_connections_are_cut_off_while_others_are_answered(https):
    with slow_clients(*https, dripping=100, mute=30) as (silent, spoken):
        took = p95_s(*https, seconds=settings.HEAD_S + 5)
        print(f"health beside 200 dripping connections and 30 mute handshakes: p95 {took * 1000:.0f} ms")
        assert took < MOST_P95_S
        for one in (*silent, *spoken[100:]):
            one.settimeout(2)
            with suppress(ConnectionResetError):
                assert one.recv(1) == b""
