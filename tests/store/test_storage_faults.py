"""A database gone, replaced, full, read-only, damaged or newer: told truly, nothing acknowledged that is not kept."""

import json
import logging
import os
import shutil
import sqlite3
import threading
import time
import urllib.error
from contextlib import closing, contextmanager, suppress

import psycopg
import pytest
from sqlalchemy import event

from amberbench import hosted, store, text
from amberbench.services import setup, streams
from amberbench.store import Unusable, db
from e2e.server import ForkedServer
from tests.conforming import is_document
from tests.conftest import application
from tests.log import BEGUN, Phone, pulled, push, results
from tests.problem_shape import assert_problem
from tests.small_disk import may_mount, small_disk

MEGABYTE = 1024 * 1024


def assert_told(client, reason):
    """Health, push, pull and snapshot are answered with the reason."""
    answers = [client.get(f"/api/{one}") for one in ("health", "events", "snapshot", "shop")]
    answers.append(client.post("/api/events", json={"events": [Phone().event("freed")]}))
    for answer in answers:
        document = assert_problem(answer, 503)
        assert (document["reason"], document["errors"]) == (reason, [])
        assert document["detail"] == text.sentence(f"server.data_{reason}", {})
        is_document("ProblemDetails", document)


def assert_one_line(caplog, reason):
    """The log has one line about it, which names the file, and no traceback."""
    lines = [one for one in caplog.records if one.levelno >= logging.ERROR]
    assert [(f"{reason} /" in one.message, one.exc_info) for one in lines] == [(True, None)]
    assert not lines[0].message.endswith(" ")


def test_database_that_is_deleted_is_missed_at_once_and_welcome_back(client, database, tmp_path, caplog):
    push(client, Phone().opens())
    database.rename(tmp_path / "elsewhere")
    assert_told(client, "missing")
    assert not database.exists()
    assert_one_line(caplog, "missing")
    (tmp_path / "elsewhere").rename(database)
    assert client.get("/api/health").status_code == 200
    assert results(push(client, Phone().opens())) == ["stored"]


def test_folding_beside_the_serving_leaves_it_to_the_answers_to_tell_of_lost_data(app, client, database, caplog):
    push(client, Phone().opens())
    database.unlink()
    streams.fold_outdated(app)
    assert_one_line(caplog, "missing")


def test_database_deleted_in_the_middle_of_a_push_acknowledges_nothing(app, client, database):
    with app.app_context():
        event.listen(db.engine, "before_cursor_execute", lambda *_: database.unlink(missing_ok=True))
    assert_problem(client.post("/api/events", json={"events": [Phone().opens()]}), 503)


@pytest.mark.parametrize("app_on_each_database", ["postgresql"], indirect=True)
def test_connection_lost_as_a_batch_is_folded_is_no_mistake_of_ours_and_the_push_comes_again(
    app_on_each_database, postgresql
):
    client, opening, ended = app_on_each_database.test_client(), Phone().opens(), []

    def ends(_connection, cursor, statement, *_):
        if statement.startswith("DELETE FROM link") and not ended:
            with psycopg.connect(f"host={postgresql.folder} user=amberbench dbname=postgres") as other:
                pid = cursor.connection.info.backend_pid
                ended.extend(other.execute("SELECT pg_terminate_backend(%s, 5000)", [pid]).fetchone())

    with app_on_each_database.app_context():
        event.listen(db.engine, "before_cursor_execute", ends)
    assert_problem(client.post("/api/events", json={"events": [opening]}), 503)
    assert ended == [True]
    assert results(push(client, opening)) == ["stored"]
    assert client.get(f"/api/batches/{opening['batch_id']}").get_json()["broken"] is None


def test_database_that_another_takes_the_place_of_is_not_served(client, database, ready_database, tmp_path, caplog):
    push(client, Phone().opens())
    os.replace(shutil.copy(ready_database, tmp_path / "other.sqlite"), database)
    assert_told(client, "replaced")
    assert_one_line(caplog, "replaced")


def test_damaged_database_takes_nothing_more(app, client, database, caplog):
    phone = Phone()
    push(client, *[phone.event("noted", text="x" * 3000) for _ in range(50)])
    with app.app_context():
        db.engine.dispose()
    size = database.stat().st_size
    with database.open("r+b") as file:
        file.seek(size // 2)
        file.write(b"\x5a" * (size // 2))
    pages = [client.get(f"/api/events?after={after}") for after in (0, 300)]
    assert 503 in [one.status_code for one in pages]
    assert_told(client, "damaged")
    assert_one_line(caplog, "damaged")


@contextmanager
def full(app, folder):
    """Fills the disk of an application, by a limit of SQLite's where no disk can be mounted; gives what frees it."""
    with app.app_context():
        engine = db.engine
    limits = [0]

    def limit(raw, *_):
        pages = raw.execute("PRAGMA page_count").fetchone()[0]
        raw.execute(f"PRAGMA max_page_count = {limits[0] or pages}").close()

    event.listen(engine, "checkout", limit)

    def free():
        limits[0] = 2**30

    yield free


def test_full_disk_is_told_until_there_is_room(app, client, caplog, tmp_path):
    phone = Phone()
    big = phone.event("noted", text="x" * 200_000)
    with full(app, tmp_path) as free:
        document = assert_problem(client.post("/api/events", json={"events": [big]}), 503)
        assert document["reason"] == "full"
        assert pulled(client)["events"] == []
        assert_one_line(caplog, "full")
        free()
        assert client.get("/api/health").status_code == 200
        assert results(push(client, big)) == ["stored"]


def on_small_disk(tmp_path, ready_database, pages):
    """Pushes with a disk filled up but for so many pages each time: what was acknowledged is there, the rest is not."""
    with small_disk(tmp_path / "disk", 3 * MEGABYTE) as disk:
        file = disk.folder / "shop.sqlite"
        shutil.copy(ready_database, file)
        app = application(file)
        client, phone, refused = app.test_client(), Phone(), 0
        kept = set()
        for left in pages:
            disk.fill(but=left)
            events = [phone.event("noted", text="x" * 3000) for _ in range(4)]
            answer = client.post("/api/events", json={"events": events})
            if answer.status_code == 503:
                refused += 1
                assert answer.get_json()["reason"] == "full"
                disk.free()
                assert client.get("/api/health").status_code == 200
                assert set(results(push(client, *events))) == {"stored"}
            assert answer.status_code in (200, 503)
            kept |= {one["id"] for one in events}
            with app.app_context():
                db.engine.dispose()
            assert {one["id"] for one in pulled(client)["events"]} == kept
        with app.app_context():
            db.engine.dispose()
        with closing(sqlite3.connect(file)) as connection:
            assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    return refused


def old_database(file):
    with closing(sqlite3.connect(file)) as connection, open("tests/old/database_0005.sql") as script:
        connection.executescript(script.read())


def migrated_on_small_disk(tmp_path, pages):
    """Migrates with a disk filled up but for so many pages: all or nothing."""
    refused = 0
    for left in pages:
        with small_disk(tmp_path / f"disk-{left}", 2 * MEGABYTE) as disk:
            file = disk.folder / "shop.sqlite"
            old_database(file)
            disk.fill(but=left)
            app = application(file, BACKUP_FOLDER=tmp_path / f"backups-{left}")
            with app.app_context():
                with suppress(Unusable):
                    setup.set_up(None, 0)
                refused += store.storage().blocked is not None
                assert store.storage().fault in (None, "full")
                db.engine.dispose()
            disk.free()
            again = application(file, BACKUP_FOLDER=tmp_path / f"backups-{left}")
            with again.app_context():
                setup.set_up(None, 0)
                assert again.test_client().get("/api/health").status_code == 200
                db.engine.dispose()
            with closing(sqlite3.connect(file)) as connection:
                assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    return refused


if may_mount():

    def test_disk_that_filled_up_is_told_before_anybody_pushes(tmp_path, ready_database, caplog):
        with small_disk(tmp_path / "disk", 3 * MEGABYTE) as disk:
            app = application(shutil.copy(ready_database, disk.folder / "shop.sqlite"))
            client = app.test_client()
            assert client.get("/api/health").status_code == 200
            disk.fill()
            assert assert_problem(client.get("/api/health"), 503)["reason"] == "full"
            assert_one_line(caplog, "full")
            disk.free()
            assert client.get("/api/health").status_code == 200
            with app.app_context():
                db.engine.dispose()

    def test_small_disk_that_fills_anywhere_in_a_push_loses_nothing(tmp_path, ready_database):
        assert on_small_disk(tmp_path, ready_database, (0, 1, 3, 6, 40)) >= 3

    def test_small_disk_that_fills_in_a_migration_leaves_the_database_as_it_was(tmp_path):
        assert migrated_on_small_disk(tmp_path, (2, 12, 60)) >= 2

    @pytest.mark.prove
    def test_disk_full_at_every_write_of_a_push(tmp_path, ready_database):
        refused = on_small_disk(tmp_path, ready_database, range(60))
        print(f"disk filled to the byte in 60 pushes: {refused} refused, none lost, none doubled")

    @pytest.mark.prove
    def test_disk_full_at_every_write_of_a_migration(tmp_path):
        refused = migrated_on_small_disk(tmp_path, range(80))
        print(f"disk filled to the byte in 80 migrations: {refused} refused, none half done")

    def test_disk_that_turned_read_only_is_told_until_it_is_not(tmp_path, ready_database, caplog):
        with small_disk(tmp_path / "disk", 3 * MEGABYTE) as disk:
            app = application(shutil.copy(ready_database, disk.folder / "shop.sqlite"))
            client = app.test_client()
            push(client, Phone().opens())
            with app.app_context():
                db.engine.dispose()
            disk.remount("ro")
            assert_told(client, "read_only")
            assert_one_line(caplog, "read_only")
            disk.remount("rw")
            assert client.get("/api/health").status_code == 200
            with app.app_context():
                db.engine.dispose()


def missing(file):
    file.unlink()
    return "missing"


def emptied(file):
    file.write_bytes(b"")
    return "missing"


def no_database(file):
    file.write_bytes(b"a list of what to buy" * 400)
    return "damaged"


def newer(file):
    with closing(sqlite3.connect(file)) as database, database:
        database.execute("UPDATE alembic_version SET version_num = '9999'")
    return "newer"


@pytest.mark.parametrize("spoil", [missing, emptied, no_database, newer])
def test_server_that_starts_without_its_data_says_so_and_begins_no_other_shop(
    tmp_path, ready_database, monkeypatch, caplog, spoil
):
    file = tmp_path / "shop.sqlite"
    shutil.copy(ready_database, file)
    monkeypatch.setenv("AMBERBENCH_DATABASE_URL", f"sqlite:///{file}")

    def started():
        app = hosted.application()
        with app.app_context():
            db.engine.dispose()
        return app.test_client()

    assert started().get("/api/health").status_code == 200
    # What folds beside the serving may look at the file just as it is spoilt, and say so too.
    for thread in (one for one in threading.enumerate() if one.name == setup.BESIDE):
        thread.join(20)
    reason = spoil(file)
    before = file.read_bytes() if file.exists() else None
    client = started()
    assert_told(client, reason)
    assert (file.read_bytes() if file.exists() else None) == before
    assert_one_line(caplog, reason)


def test_server_that_starts_before_its_database_says_so_and_is_ready_once_it_is_there(tmp_path, postgresql):
    server = ForkedServer(tmp_path, postgresql.new_database())
    postgresql.stop()
    try:
        server.begin()
        until, told = time.monotonic() + 20, {}
        while "reason" not in told:
            assert time.monotonic() < until, server.log.read_text()
            time.sleep(0.1)
            try:
                told = server.asks("/api/health")
            except urllib.error.HTTPError as refused:
                told = json.load(refused)
            except urllib.error.URLError:
                continue  # it does not listen yet
        assert (told["status"], told["reason"]) == (503, "unreachable")
    finally:
        postgresql.start_again()
    server.wait()
    assert server.asks("/api/snapshot")["cursor"] == BEGUN
    server.stop()
