"""The table of `make measure`; the measuring itself is no test, for this machine may be busy."""

import threading
from http.client import HTTPConnection
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from itertools import cycle

from tests.measure import wire
from tests.measure.__main__ import PARTS
from tests.measure.bare_server import bare_app
from tests.measure.cpython import answered
from tests.measure.engine_calls import EVENTS, bench_calls, desk_calls
from tests.measure.events import pushes
from tests.measure.table import drawn, time_row
from tests.measure.timing import compared


def test_every_part_gives_rows():
    assert all(callable(part.rows) for part in PARTS.values())


def test_timed_requests_are_answered_and_the_reload_has_its_events():
    for calls in (bench_calls() | desk_calls()).values():
        answered(calls)
    assert any(f"{EVENTS} events" in name for name in bench_calls())


def test_a_slow_spell_that_hits_both_leaves_the_ratio():
    job, base = cycle([2.0, 2.0, 20.0]), cycle([1.0, 1.0, 10.0])
    found = compared({"job": lambda: next(job)}, lambda: next(base), rounds=9)["job"]
    assert found.ratio == 2.0


def test_a_target_that_is_not_met_is_called_missed():
    found = compared({"job": lambda: 0.030}, lambda: 0.010, rounds=3)["job"]
    assert "MISSED" in drawn([time_row("a call", found, "loop", target_s=0.100, slower=4.0)])
    assert "met" in drawn([time_row("a call", found, "loop", target_s=0.200, slower=4.0)])


def test_the_bare_route_takes_the_groups_that_are_pushed(tmp_path):
    text = next(iter(pushes(1, 5)))
    answer = bare_app(tmp_path / "bare.sqlite").test_client().post("/events", data=text)
    assert answer.get_json() == {"stored": 5}


class Answers(BaseHTTPRequestHandler):
    """As many bytes as the path says, the same head each time."""

    protocol_version = "HTTP/1.1"
    disable_nagle_algorithm = True

    def do_GET(self):
        size = int(self.path.strip("/"))
        self.wfile.write(b"HTTP/1.1 200 OK\r\nContent-Length: %05d\r\n\r\n" % size + b"x" * size)

    def log_message(self, *_):
        pass


def test_every_byte_counts_for_the_path_that_was_asked_for():
    head, asked = len(b"HTTP/1.1 200 OK\r\nContent-Length: 00000\r\n\r\n"), {"/9": 300, "/40000": 300}
    with ThreadingHTTPServer(("127.0.0.1", 0), Answers) as server:
        threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05}).start()
        with wire.counted(server.server_address[1]) as relay:
            connection = HTTPConnection(relay.url.removeprefix("http://"))
            for _ in range(300):
                for path in asked:
                    connection.request("GET", path)
                    connection.getresponse().read()
            connection.close()
        server.shutdown()
    assert relay.sent == {path: times * (head + int(path[1:])) for path, times in asked.items()}
