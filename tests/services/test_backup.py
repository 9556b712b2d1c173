"""Backups: made while phones write, checked, put back; what is no whole backup is refused and changes nothing."""

import sqlite3
import subprocess
import threading
from contextlib import closing

import pytest

from amberbench.app import create_app
from amberbench.services import backup, setup
from amberbench.store import db
from tests.log import Phone, pulled, push, uuid7
from tests.services.test_command_line import run

DAY_MS = 24 * 3600 * 1000
JPEG = b"\xff\xd8\xff" + b"x" * 5000 + b"\xff\xd9"


def command(*arguments, database, code=0):
    """What a command of `amberbench` says; it must end with this code."""
    done = run(*map(str, arguments), database=database)
    assert done.exit_code == code, done.output
    return done.output


def whole_log(client):
    return pulled(client, 0)["events"]


@pytest.fixture
def stopped(app, client, database):
    """A database with a batch and a photo, and no server on it."""
    push(client, *Phone().whole_batch())
    client.put(f"/api/photos/{uuid7()}", data=JPEG, content_type="image/jpeg")
    with app.app_context():
        db.engine.dispose()
    return database


def backed_up(database, folder):
    said = command("backup", folder, database=database)
    (file,) = folder.glob("*.sqlite")
    return file, said


def test_backup_says_what_it_holds_and_has_its_sum_beside_it(stopped, tmp_path):
    file, said = backed_up(stopped, tmp_path / "stick")
    with closing(sqlite3.connect(stopped)) as connection:
        events = connection.execute("SELECT count(*) FROM event").fetchone()[0]
    assert f"{events} events, 1 photos" in said
    subprocess.run(["sha256sum", "-c", f"{file.name}.sha256"], cwd=file.parent, check=True, capture_output=True)
    assert (file.stat().st_mode & 0o777, file.parent.stat().st_mode & 0o777) == (0o600, 0o700)
    assert f"{events} events" in command("check", file, database=stopped)
    assert f"{events} events" in command("check", database=stopped)


def test_backup_while_phones_push_holds_all_that_was_acknowledged_before(app, client, tmp_path):
    stop, acknowledged = threading.Event(), []

    def pushes(phone):
        while not stop.is_set():
            events = [phone.event("noted", text="x" * 200) for _ in range(5)]
            push(app.test_client(), *events)
            acknowledged.extend(one["id"] for one in events)

    threads = [threading.Thread(target=pushes, args=[Phone(device_id=f"phone-{n}")]) for n in range(3)]
    for thread in threads:
        thread.start()
    while len(acknowledged) < 60:
        pass
    before = list(acknowledged)
    with app.app_context():
        made = backup.make(0, tmp_path / "stick")
    stop.set()
    for thread in threads:
        thread.join(30)
    with closing(sqlite3.connect(made.file)) as connection:
        kept = {row[0] for row in connection.execute("SELECT id FROM event")}
    assert set(before) <= kept
    assert made.contents.events == len(kept)


def test_restored_log_is_the_same_under_another_name_and_what_was_there_is_kept(app, client, stopped, tmp_path):
    file, _ = backed_up(stopped, tmp_path / "stick")
    before, log_id = whole_log(client), client.get("/api/health").get_json()["log_id"]
    push(client, Phone().opens())
    with app.app_context():
        db.engine.dispose()
    said = command("restore", file, database=stopped)
    (kept,) = stopped.parent.glob("*.replaced-*")
    assert str(kept) in said
    with closing(sqlite3.connect(kept)) as connection:
        assert connection.execute("SELECT count(*) FROM event").fetchone()[0] == len(before) + 1
    again = create_app({"SQLALCHEMY_DATABASE_URI": f"sqlite:///{stopped}", "TESTING": True}).test_client()
    assert whole_log(again) == before
    assert again.get("/api/health").get_json()["log_id"] != log_id
    assert not list(stopped.parent.glob("*.part"))
    with again.application.app_context():
        db.engine.dispose()


def test_restore_waits_for_the_server_to_be_stopped(app, client, stopped, tmp_path):
    file, _ = backed_up(stopped, tmp_path / "stick")
    before = whole_log(client)
    # It is the data that are in use, not the backup.
    said = command("restore", file, database=stopped, code=1)
    assert f"{stopped}: A server is using the data. Stop it first." in said
    assert not list(stopped.parent.glob("*.part"))
    assert whole_log(client) == before
    assert client.get("/api/health").status_code == 200


def cut_short(file):
    file.write_bytes(file.read_bytes()[: file.stat().st_size // 2])
    return "SHA-256", "damaged"


def flipped(file):
    content = bytearray(file.read_bytes())
    content[len(content) // 2] ^= 0xFF
    file.write_bytes(content)
    return "SHA-256", "damaged"


def newer(file):
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("UPDATE alembic_version SET version_num = '9999'")
    return ("newer version",)


def another_file(file):
    file.write_bytes(b"a list of what to buy")
    return ("no backup",)


def of_another_program(file):
    file.unlink()
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("CREATE TABLE shopping (item)")
    return ("no backup",)


def gone(file):
    file.unlink()
    return ("no backup",)


TOLD_WITHOUT_SUM = [cut_short, newer, another_file, of_another_program, gone]


@pytest.mark.parametrize(
    ("spoil", "has_sum"), [(flipped, True), (cut_short, True), *((one, False) for one in TOLD_WITHOUT_SUM)]
)
def test_backup_that_is_not_whole_is_refused_and_nothing_changes(stopped, tmp_path, spoil, has_sum):
    file, _ = backed_up(stopped, tmp_path / "stick")
    expected = spoil(file)
    if not has_sum:
        file.with_name(f"{file.name}.sha256").unlink()
    before = stopped.read_bytes()
    for verb in ("check", "restore"):
        said = command(verb, file, database=stopped, code=1)
        assert any(one in said for one in expected), said
    assert stopped.read_bytes() == before
    assert not list(stopped.parent.glob("*.replaced-*"))


def test_damaged_database_is_found_and_gives_way_to_a_backup(stopped, tmp_path):
    file, _ = backed_up(stopped, tmp_path / "stick")
    content = bytearray(stopped.read_bytes())
    content[4096:] = b"\x5a" * (len(content) - 4096)
    stopped.write_bytes(content)
    assert "damaged" in command("check", database=stopped, code=1)
    assert "damaged" in command("backup", tmp_path / "other", database=stopped, code=1)
    assert not list((tmp_path / "other").iterdir())
    command("restore", file, database=stopped)
    assert "is whole" in command("check", database=stopped)


def test_backup_is_due_a_day_after_the_last_and_fourteen_are_kept(app, client, clock):
    with app.app_context():
        setup.set_up(None, clock.now_ms)
        begun = backup.store.begun_ms()
        assert backup.make_if_due(begun + DAY_MS - 1) is None
        assert backup.newest_ms() is None
        for day in range(1, 20):
            assert backup.make_if_due(begun + day * DAY_MS)
            assert backup.make_if_due(begun + day * DAY_MS + 5) is None
        files = sorted(one.name for one in backup.folder().iterdir())
        assert len(files) == 28
        assert backup.newest_ms() == begun + 19 * DAY_MS
    assert client.get("/api/health").get_json()["backup_ms"] == begun + 19 * DAY_MS


def test_daily_backup_that_fails_is_one_line_and_the_server_goes_on(app, client, caplog, tmp_path):
    (tmp_path / "file").write_text("no folder")
    app.config["BACKUP_FOLDER"] = str(tmp_path / "file" / "x")
    with app.app_context():
        setup.set_up(None, 0)
        backup.make_if_due_or_say(10**14)
    (line,) = [one for one in caplog.records if one.levelname == "ERROR"]
    assert (line.exc_info, "no new backup" in line.message) == (None, True)
    assert client.get("/api/health").status_code == 200


def test_database_is_backed_up_before_it_is_migrated(tmp_path):
    file = tmp_path / "shop.sqlite"
    with closing(sqlite3.connect(file)) as connection, open("tests/old/database_0005.sql") as script:
        connection.executescript(script.read())
    command("begin", database=file)
    (kept,) = (tmp_path / "backups").glob("*.sqlite")
    assert backup.copies.look_into(kept).version == "0005"
    other = tmp_path / "elsewhere" / "shop.sqlite"
    command("restore", kept, database=other)
    assert "already" in command("begin", database=other)


def test_postgresql_is_backed_up_checked_and_put_back(postgresql, tmp_path):
    url = postgresql.new_database()

    def says(*arguments, code=0):
        return command(*arguments, "--database", url, database=tmp_path / "other.sqlite", code=code)

    def log():
        app = create_app({"SQLALCHEMY_DATABASE_URI": url, "TESTING": True})
        with app.app_context():
            setup.set_up(None, 0)
        found = whole_log(app.test_client()), app.test_client().get("/api/health").get_json()["log_id"]
        push(app.test_client(), Phone().opens())
        with app.app_context():
            db.engine.dispose()
        return found

    log()
    assert "2 events" in says("backup", tmp_path / "stick")
    (file,) = (tmp_path / "stick").glob("*.dump")
    assert "2 events" in says("check", file)
    before, log_id = log()
    whole = file.read_bytes()
    file.write_bytes(whole[: len(whole) - 200])
    assert "damaged" in says("restore", file, code=1)
    file.write_bytes(whole)
    assert "2 events" in says("restore", file)
    after, other_id = log()
    assert (before == after, log_id == other_id) == (True, False)
    assert "another kind" in command("restore", file, database=tmp_path / "other.sqlite", code=1)


def test_what_a_lost_database_left_beside_it_does_not_get_into_the_restored_one(app, client, stopped, tmp_path):
    file, _ = backed_up(stopped, tmp_path / "stick")
    before = whole_log(client)
    phone = Phone()
    push(client, *[phone.event("noted", text="x" * 3000) for _ in range(40)])
    left = stopped.with_name(f"{stopped.name}-wal")
    content = left.read_bytes()
    with app.app_context():
        db.engine.dispose()
    stopped.unlink()
    left.write_bytes(content)
    command("restore", file, database=stopped)
    assert not left.exists()
    assert [one.read_bytes() for one in stopped.parent.glob("*.replaced-*-wal")] == [content]
    assert "is whole" in command("check", database=stopped)
    again = create_app({"SQLALCHEMY_DATABASE_URI": f"sqlite:///{stopped}", "TESTING": True})
    assert whole_log(again.test_client()) == before
    with again.app_context():
        db.engine.dispose()
