"""`kill -9` while the data are backed up, put back or migrated: afterwards they are whole, and it can be done again."""

import os
import random
import shutil
import signal
import sqlite3
import time
from contextlib import closing

import pytest

from amberbench.services import backup
from amberbench.store import copies
from e2e.server import Fork
from tests.services.test_backup import command
from tests.store.test_storage_faults import old_database


def killed_at(arguments, folder, after_s):
    """Runs a command in a process of its own and kills it after so long; whether it had ended by then."""
    process = Fork([str(one) for one in arguments], folder / "log")
    time.sleep(after_s)
    ended = process.poll() is not None
    if not ended:
        process.send_signal(signal.SIGKILL)
    process.wait(30)
    return ended


def runs(arguments, folder):
    """Runs a command to its end; how long it took (s)."""
    begun = time.monotonic()
    process = Fork([str(one) for one in arguments], folder / "log")
    process.wait(60)
    assert process.poll() == 0, (folder / "log").read_text()
    return time.monotonic() - begun


def kills(verb, arguments, folder, times, check):
    """Kills a command at so many moments spread over its run, and looks at what is left each time; how many it hit."""
    moments = random.Random(7)
    # The first forks load the application.
    lasts = min(runs(arguments(), folder) for _ in range(3))
    hit = 0
    for _ in range(times):
        hit += not killed_at(arguments(), folder, moments.uniform(0.2, 1) * lasts)
        check()
    print(f"kill -9 during {verb}: {hit} of {times} hit it, the data whole after each")
    assert hit > times / 3
    return hit


@pytest.fixture
def large(database):
    """A database of some megabytes, so that there is time to hit it."""
    with closing(sqlite3.connect(database)) as connection, connection:
        rows = [(f"photo-{number}", os.urandom(200_000)) for number in range(25)]
        connection.executemany("INSERT INTO photo (photo_id, content, received_ms) VALUES (?, ?, 0)", rows)
    return database


def backup_kills(large, tmp_path, times):
    stick, url = tmp_path / "stick", f"sqlite:///{large}"
    whole = copies.look_into(large)

    def check():
        for file in stick.glob("*.sqlite"):
            assert command("check", file, database=large).count("25 photos") == 1
            backup._beside(file).unlink()
            file.unlink()
        assert copies.look_into(large) == whole

    kills("backup", lambda: ["backup", stick, "--database", url], tmp_path, times, check)
    command("backup", stick, database=large)
    assert len(list(stick.glob("*.sqlite"))) == 1


def restore_kills(large, tmp_path, times):
    command("backup", tmp_path / "stick", database=large)
    (file,) = (tmp_path / "stick").glob("*.sqlite")
    other = copies.look_into(file)._replace(photos=0)
    shutil.copy(large, tmp_path / "other.sqlite")
    with closing(sqlite3.connect(tmp_path / "other.sqlite")) as connection, connection:
        connection.execute("DELETE FROM photo")
    seen = set()

    def check():
        found = copies.look_into(large)
        assert found in (other, other._replace(photos=25))
        seen.add(found.photos)
        for one in large.parent.glob(f"{large.name}*"):
            one.unlink()
        shutil.copy(tmp_path / "other.sqlite", large)

    kills("restore", lambda: ["restore", file, "--database", f"sqlite:///{large}"], tmp_path, times, check)
    command("restore", file, database=large)
    assert copies.look_into(large).photos == 25
    assert 0 in seen


def migration_kills(tmp_path, times):
    file = tmp_path / "old.sqlite"

    def anew():
        for one in tmp_path.glob("old.sqlite*"):
            one.unlink()
        shutil.rmtree(tmp_path / "backups", ignore_errors=True)
        old_database(file)
        return ["begin", "--database", f"sqlite:///{file}"]

    anew()
    before = copies.look_into(file)

    def check():
        with closing(sqlite3.connect(file)) as connection:
            assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert copies.look_into(file).version >= before.version
        runs(["begin", "--database", f"sqlite:///{file}"], tmp_path)
        assert copies.look_into(file).events >= before.events
        for one in (tmp_path / "backups").glob("*.sqlite"):
            assert copies.look_into(one).events >= before.events

    kills("migration", anew, tmp_path, times, check)


def test_killed_restore_leaves_one_database_or_the_other_whole(large, tmp_path):
    restore_kills(large, tmp_path, 2)


@pytest.mark.prove
def test_kills_during_backup(large, tmp_path):
    backup_kills(large, tmp_path, 60)


@pytest.mark.prove
def test_kills_during_restore(large, tmp_path):
    restore_kills(large, tmp_path, 60)


@pytest.mark.prove
def test_kills_during_migration(tmp_path):
    migration_kills(tmp_path, 40)
