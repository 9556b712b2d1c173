"""A PostgreSQL of the tests' own: a fresh folder, a socket in it that only this machine reaches, thrown away after.

`python -m tests.postgresql` finds an installed one or, where we are root, installs Debian's.
"""

import os
import pwd
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from e2e import debian

# Throw-away data need not outlive the machine; what a killed process had committed stays.
SETTINGS = {"fsync": "off", "full_page_writes": "off", "listen_addresses": "''"}
MEMBERS = ("initdb", "pg_ctl", "postgres")


def find() -> Path | None:
    """The folder of PostgreSQL's programs, or None: `AMBERBENCH_POSTGRESQL` first, then PATH, then Debian's newest."""
    named = [Path(os.environ["AMBERBENCH_POSTGRESQL"])] if "AMBERBENCH_POSTGRESQL" in os.environ else []
    on_path = [Path(found).parent for found in [shutil.which("postgres")] if found]
    debians = sorted(Path("/usr/lib/postgresql").glob("*/bin"), key=lambda one: int(one.parent.name), reverse=True)
    whole = (one for one in (*named, *on_path, *debians) if all((one / member).exists() for member in MEMBERS))
    return next(whole, None)


def install() -> None:
    """Installs Debian's PostgreSQL, where this machine allows it."""
    if debian.can_install():
        debian.install("postgresql")


class Cluster:
    """A running PostgreSQL; `url` names one of its databases."""

    def __init__(self, folder: Path, programs: Path) -> None:
        self.folder, self.programs, self.databases = folder, programs, 0

    def run(self, program: str, *arguments: str) -> None:
        """One of PostgreSQL's programs, by a user who is not root: PostgreSQL refuses him."""
        user = "postgres" if os.geteuid() == 0 else None
        command = [self.programs / program, *arguments]
        done = subprocess.run(command, user=user, cwd=self.folder, capture_output=True, text=True, check=False)
        assert done.returncode == 0, f"{program}: {done.stderr}"

    def start(self) -> None:
        options = " ".join(f"-c {name}={value}" for name, value in SETTINGS.items())
        # Its output goes to a file: a pipe would stay open as long as the server runs.
        self.run("pg_ctl", "-D", "data", "-l", "log", "-w", "-o", f"{options} -k {self.folder}", "start")

    def stop(self) -> None:
        self.run("pg_ctl", "-D", "data", "-m", "immediate", "stop")

    def kill(self) -> None:
        """Kills the process that began all others, as the system does when memory runs out; they end by themselves."""
        os.kill(int((self.folder / "data" / "postmaster.pid").read_text().split()[0]), signal.SIGKILL)

    def start_again(self) -> None:
        """Starts after a kill, once what was left of it is gone."""
        for _ in range(100):
            with suppress(AssertionError):
                self.start()
                return
            time.sleep(0.1)
        self.start()

    def new_database(self) -> str:
        """The URL of an empty database."""
        import psycopg

        self.databases += 1
        name = f"shop_{self.databases}"
        with psycopg.connect(f"host={self.folder} user=amberbench dbname=postgres", autocommit=True) as connection:
            connection.execute(f"CREATE DATABASE {name}")
        return f"postgresql+psycopg://amberbench@/{name}?host={self.folder}"


@contextmanager
def cluster() -> Iterator[Cluster]:
    """A PostgreSQL that runs as long as the block."""
    programs = find()
    assert programs, "no PostgreSQL: run `python -m tests.postgresql`"
    # A path short enough for a socket (107 bytes).
    with tempfile.TemporaryDirectory(prefix="pg", ignore_cleanup_errors=True) as folder:
        own = Cluster(Path(folder), programs)
        if os.geteuid() == 0:
            os.chown(folder, pwd.getpwnam("postgres").pw_uid, -1)
        own.run("initdb", "-D", "data", "-U", "amberbench", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync")
        own.start()
        try:
            yield own
        finally:
            own.stop()


if __name__ == "__main__":
    if find() is None:
        install()
    path = find()
    print(f"PostgreSQL: {path}" if path else "No PostgreSQL could be found or installed: its tests cannot run.")
    sys.exit(0 if path else 1)
