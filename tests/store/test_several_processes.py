"""Several processes on one PostgreSQL: they start together, nothing is skipped, nothing stands twice."""

import sys
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from pathlib import Path

from click.testing import CliRunner

from amberbench.cli import main
from e2e.server import ForkedServer, Server
from tests.log import BEGUN, Phone

PROCESSES = 4
PHONES, PUSHES, EACH = 8, 10, 3


class Gunicorn(Server):
    """Several processes behind one address; `settings` of the environment instead of a database of its own."""

    def __init__(self, folder: Path, **settings: str) -> None:
        super().__init__(folder)
        self.settings = settings

    def command(self):
        # The modules are loaded once, before the processes part; each of them makes the application by itself.
        self.log.with_name("gunicorn.py").write_text("import amberbench.hosted")
        environment = ["env", *(f"{name}={value}" for name, value in self.settings.items())]
        gunicorn = f"-m gunicorn amberbench.hosted:application() --bind 127.0.0.1:{self.port} --workers {PROCESSES}"
        more = f"--threads 4 --log-level warning --config {self.log.with_name('gunicorn.py')}"
        return [*environment, sys.executable, *gunicorn.split(), *more.split()]


def test_four_servers_that_start_on_one_empty_database_all_come_up(tmp_path, postgresql):
    url = postgresql.new_database()
    with ExitStack() as stack:
        servers = [ForkedServer(tmp_path, url) for _ in range(PROCESSES)]
        for server in servers:
            stack.callback(server.kill)
            server.begin()
        for server in servers:
            server.wait()
        assert len({server.asks("/api/health")["log_id"] for server in servers}) == 1
        assert servers[0].asks("/api/snapshot")["cursor"] == BEGUN


def test_puller_misses_nothing_of_four_processes_behind_gunicorn(tmp_path, postgresql):
    with Gunicorn(tmp_path, AMBERBENCH_DATABASE_URL=postgresql.new_database()) as server:
        start = server.asks("/api/snapshot")["cursor"]

        def pushes(number):
            phone, sent = Phone(device_id=f"phone-{number}"), []
            for _ in range(PUSHES):
                events = [phone.event("noted", text="x") for _ in range(EACH)]
                answers = server.asks("/api/events", {"events": events})["answers"]
                assert [one["result"] for one in answers] == ["stored"] * EACH
                sent += [one["id"] for one in events]
            return sent

        with ThreadPoolExecutor(PHONES) as pool:
            sent = [pool.submit(pushes, number) for number in range(PHONES)]
            got, cursor = [], start
            while True:
                last_round = all(one.done() for one in sent)
                page = server.asks(f"/api/events?after={cursor}&limit=7")
                got += page["events"]
                cursor = page["cursor"]
                if last_round and not page["events"]:
                    break
        assert sorted(one["id"] for one in got) == sorted(event_id for one in sent for event_id in one.result())
        assert len(got) == PHONES * PUSHES * EACH


def test_without_the_driver_a_sentence_says_what_to_install(monkeypatch):
    monkeypatch.setitem(sys.modules, "psycopg", None)
    done = CliRunner().invoke(main, ["begin", "--database", "postgresql+psycopg://localhost/shop"])
    assert (done.exit_code, done.stdout) == (1, "")
    assert "PostgreSQL needs its driver beside Amberbench: pip install 'amberbench[postgresql]'." in done.stderr
