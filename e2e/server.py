"""The real server for the stories: a process of its own, started, stopped, killed and started again."""

import json
import os
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from pathlib import Path
from typing import Any, Self

PATIENCE_S = 30.0


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class Server:
    """`amberbench serve` on one port and one database file, so that the phone's address survives a restart."""

    def __init__(self, folder: Path) -> None:
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}"
        self.database = folder / "shop.sqlite"
        self.log = folder / "server.log"
        self.process: subprocess.Popen[bytes] | None = None

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
        environment = {**os.environ, "AMBERBENCH_DATABASE_URL": f"sqlite:///{self.database}"}
        with self.log.open("ab") as log:
            self.process = subprocess.Popen(self.command(), stdout=log, stderr=log, env=environment)

    def wait(self) -> None:
        deadline = time.monotonic() + PATIENCE_S
        while not self.answers():
            if self.process is None or self.process.poll() is not None or time.monotonic() > deadline:
                raise RuntimeError(f"the server did not start:\n{self.log.read_text()}")
            time.sleep(0.05)

    def command(self) -> list[str]:
        return [sys.executable, "-m", "amberbench", "serve", "--port", str(self.port)]

    def answers(self) -> bool:
        try:
            with urllib.request.urlopen(f"{self.url}/api/health", timeout=2) as answer:
                return answer.status == 200
        except OSError:
            return False

    def asks(self, path: str, body: Any = None) -> Any:
        """What one of its doors answers, as a document."""
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
