"""The tables the migrations make, and how the database is set."""

import re
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import inspect, text

from amberbench import store
from amberbench.store import db
from amberbench.store.models import Base, EventRow
from tests.conftest import application
from tests.log import BEGUN

SERVER = Path(store.__file__).parent.parent


def test_migrations_make_exactly_the_models(app_on_each_database):
    with app_on_each_database.app_context(), db.engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, Base.metadata) == []


def test_migrating_twice_changes_nothing(app, client):
    with app.app_context():
        store.upgrade()
        store.upgrade()
    assert client.get("/api/shop").status_code == 200


def test_migrations_are_numbered_in_one_line():
    names = sorted(file.name for file in (SERVER / "store" / "migrations" / "versions").glob("*.py"))
    scripts = ScriptDirectory(str(SERVER / "store" / "migrations"))
    line = [one.revision for one in scripts.walk_revisions()]
    # Several may be written at one time, each under a number of its own: one follows the other all the same.
    assert len(scripts.get_heads()) == 1
    assert sorted(line) == [name[:4] for name in names]
    assert len(set(line)) == len(names)


def test_new_database_gets_its_folder(tmp_path):
    app = application(tmp_path / "far" / "away" / "new.sqlite")
    with app.app_context():
        store.upgrade()
        assert "event" in inspect(db.engine).get_table_names()
        db.engine.dispose()


@pytest.mark.parametrize(
    ("pragma", "value"),
    [("journal_mode", "wal"), ("foreign_keys", 1), ("busy_timeout", 10000), ("synchronous", 2)],
)
def test_sqlite_is_set_for_facts_that_must_not_be_lost(app, pragma, value):
    with app.app_context(), db.engine.connect() as connection:
        assert connection.execute(text(f"PRAGMA {pragma}")).scalar() == value


def test_number_of_a_lost_event_is_never_used_again(app):
    with app.app_context():
        row = {name: "x" for name in ("id", "shop_id", "device_id", "kind", "body")}
        numbers = {"seq": 1, "at_ms": 1.0, "offset_ms": 0.0, "v": 1, "received_ms": 1}
        with store.writing() as session:
            session.add(EventRow(**row, **numbers))
        with store.writing() as session:
            session.execute(text("DELETE FROM event WHERE id = 'x'"))
        with store.writing() as session:
            again = EventRow(**row, **numbers)
            session.add(again)
            session.flush()
            assert again.position == BEGUN + 2


def test_nothing_in_the_code_changes_or_deletes_an_event():
    source = "\n".join(file.read_text(encoding="utf-8") for file in SERVER.rglob("*.py"))
    assert "select(EventRow)" in source
    assert not re.search(r"(update|delete)\(\s*EventRow|UPDATE event|DELETE FROM event|session\.delete", source)


def write_and_fail():
    with store.writing() as session:
        session.execute(text("INSERT INTO shop (id, document, changed_ms) VALUES ('x', '{}', 0)"))
        raise ZeroDivisionError


def test_failed_writing_leaves_nothing_behind(app, client):
    with app.app_context():
        with pytest.raises(ZeroDivisionError):
            write_and_fail()
        with store.reading() as session:
            assert session.execute(text("SELECT count(*) FROM shop")).scalar() == 1
