"""A backup that is put back lets in those who are let in today, and nobody of whom it cannot know that."""

import psycopg
import pytest

from amberbench.app import create_app
from amberbench.config import demo_shop_file
from amberbench.services import pairing, setup
from amberbench.store import db
from tests.paired import paired
from tests.services.test_backup import command


@pytest.fixture(params=["sqlite", "postgresql"])
def url(request, database):
    """A database with the invented shop, of each kind."""
    if request.param == "sqlite":
        return f"sqlite:///{database}"
    url = request.getfixturevalue("postgresql").new_database()
    with served(url, None).app_context():
        setup.set_up(demo_shop_file().read_text(encoding="utf-8"), 0)
        db.engine.dispose()
    return url


def served(url, clock):
    return create_app({"SQLALCHEMY_DATABASE_URI": url, "NOW_MS": clock, "TESTING": True, "SIGN_IN": True})


def stopped(app):
    with app.app_context():
        db.engine.dispose()


def backed_up_then_revoked_then_paired(url, clock, stick):
    """The clients of a phone let in all the time, of one revoked after the backup, of one paired after it; the file."""
    app = served(url, clock)
    kept, revoked = paired(app, clock, "owner", "phone-k"), paired(app, clock, "bench", "phone-r")
    with app.app_context():
        waiting = pairing.offer("http://localhost/", "Late", "owner", clock.now_ms).link.split("#")[1]
    command("backup", stick, "--database", url, database=None)
    assert kept.delete(f"/api/phones/{revoked.phone_id}").status_code == 204
    later = paired(app, clock, "bench", "phone-l")
    stopped(app)
    (file,) = (one for one in stick.iterdir() if one.suffix in (".sqlite", ".dump"))
    return kept, revoked, later, waiting, file


def statuses(app, *clients):
    """What each is answered by the application that is served now."""
    found = []
    for client in clients:
        again = app.test_client()
        again.set_cookie("amberbench", client.get_cookie("amberbench").value)
        found.append(again.get("/api/shop").status_code)
    return found


def test_phone_revoked_after_a_backup_stays_out_when_it_is_put_back(url, clock, tmp_path):
    *clients, waiting, file = backed_up_then_revoked_then_paired(url, clock, tmp_path / "stick")
    said = command("restore", file, "--database", url, database=None)
    assert "stay out" in said
    app = served(url, clock)
    assert statuses(app, *clients) == [200, 401, 200]
    used = app.test_client().post("/api/pairings/use", json={"code": waiting, "device_id": "phone-w"})
    assert used.status_code == 422
    stopped(app)


def gone(file):
    file.unlink()


def damaged(file):
    content = file.read_bytes()
    file.write_bytes(content[:4096] + b"\x5a" * (len(content) - 4096))


@pytest.mark.parametrize("spoil", [gone, damaged])
def test_backup_in_the_place_of_lost_data_lets_nobody_in_until_an_owner_is_paired_anew(
    database, clock, tmp_path, spoil
):
    url = f"sqlite:///{database}"
    *clients, _, file = backed_up_then_revoked_then_paired(url, clock, tmp_path / "stick")
    spoil(database)
    assert "No phone is let in" in command("restore", file, database=database)
    app = served(url, clock)
    assert statuses(app, *clients) == [401, 401, 401]
    with app.app_context():
        assert not pairing.has_owner()
    stopped(app)


def test_postgresql_that_lost_its_tables_begins_no_other_shop_and_takes_a_backup_back(postgresql, clock, tmp_path):
    url = postgresql.new_database()
    app = served(url, clock)
    with app.app_context():
        assert setup.set_up(None, clock.now_ms)
    stopped(app)
    command("backup", tmp_path / "stick", "--database", url, database=None)
    (file,) = (tmp_path / "stick").glob("*.dump")
    with psycopg.connect(url.replace("+psycopg", ""), autocommit=True) as connection:
        connection.execute("DROP SCHEMA public CASCADE")
        connection.execute("CREATE SCHEMA public")
    assert "are gone" in command("begin", "--database", url, database=None, code=1)
    assert "No phone is let in" in command("restore", file, "--database", url, database=None)
    assert "already" in command("begin", "--database", url, database=None)
