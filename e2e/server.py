"""The real server for the stories: a process of its own, started, stopped, killed and started again."""

import json
import multiprocessing
import os
import random
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from contextlib import suppress
from pathlib import Path
from typing import Any, Self

PATIENCE_S = 30.0
# Anybody is let in, but for the stories of pairing.
os.environ.setdefault("AMBERBENCH_SIGN_IN", "off")
# Below the ports systems lend to outgoing connections: one of those could be gone before the server listens.
PORTS = range(10_000, 32_000)
# Forks come from a process that has the application loaded: a server starts five times faster, a hundred times a run.
FORKS = multiprocessing.get_context("forkserver")
FORKS.set_forkserver_preload(["e2e.server", "amberbench.cli", "amberbench.app", "amberbench.serving"])


def free_port() -> int:
    while True:
        with socket.socket() as probe, suppress(OSError):
            probe.bind(("127.0.0.1", random.choice(PORTS)))
            return int(probe.getsockname()[1])


def command(arguments: list[str], log: Path) -> None:
    """The command `amberbench` in this process."""
    from amberbench.cli import main

    with log.open("ab", buffering=0) as file:
        os.dup2(file.fileno(), sys.stdout.fileno())
        os.dup2(file.fileno(), sys.stderr.fileno())
    main(arguments)


class Fork:
    """`amberbench` in a forked process, with those verbs of `Popen` a server needs."""

    def __init__(self, arguments: list[str], log: Path) -> None:
        self.process = FORKS.Process(target=command, args=(arguments, log), daemon=True)
        self.process.start()

    def poll(self) -> int | None:
        return self.process.exitcode

    def send_signal(self, how: int) -> None:
        os.kill(self.process.pid or 0, how)

    def wait(self, timeout: float) -> None:
        self.process.join(timeout)


class Server:
    """`amberbench serve` on one port and one database, so that the phone's address survives a restart."""

    def __init__(self, folder: Path, database: str | None = None) -> None:
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}"
        self.database = folder / "shop.sqlite"
        self.log = folder / "server.log"
        self.keeps = ["--database", database or f"sqlite:///{self.database}"]
        # Stories of the bench begin with an empty larder; those of orders and stock ask for the invented one.
        self.arguments = ["serve", "--without-trade", "--port", str(self.port), *self.keeps]
        self.process: subprocess.Popen[bytes] | Fork | None = None

    def __enter__(self) -> Self:
        self.start()
        return self

    def __exit__(self, *_: object) -> None:
        self.kill()

    def start(self) -> None:
        self.begin()
        self.wait()

    def begin(self) -> None:
        """Starts it and goes on: `wait` says when it answers."""
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(self.command(), stdout=log, stderr=log)

    def wait(self) -> None:
        deadline = time.monotonic() + PATIENCE_S
        while not self.answers():
            if self.process is None or self.process.poll() is not None or time.monotonic() > deadline:
                raise RuntimeError(f"the server did not start:\n{self.log.read_text()}")
            time.sleep(0.05)

    def command(self) -> list[str]:
        return [sys.executable, "-m", "amberbench", *self.arguments]

    def answers(self) -> bool:
        try:
            with urllib.request.urlopen(f"{self.url}/api/health", timeout=2) as answer:
                return answer.status == 200
        except OSError:
            return False

    def asks(self, path: str, body: Any = None) -> Any:
        """What one of its endpoints answers, as a document."""
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.url + path, data, {"Content-Type": "application/json"})
        with urllib.request.urlopen(request, timeout=PATIENCE_S) as answer:
            return json.load(answer)

    def stop(self, how: int = signal.SIGTERM) -> None:
        if self.process is not None:
            self.process.send_signal(how)
            self.process.wait(PATIENCE_S)
            self.process = None

    def kill(self) -> None:
        self.stop(signal.SIGKILL)


class ForkedServer(Server):
    """The same, forked."""

    def begin(self) -> None:
        self.process = Fork(self.arguments, self.log)
