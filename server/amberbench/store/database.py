"""The database: connection settings, migrations, and the two kinds of transaction."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Any

import flask_migrate
from flask import Flask, current_app
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import Connection, Engine, event, text
from sqlalchemy.orm import Session

from .models import Base

MIGRATIONS = str(Path(__file__).parent / "migrations")
WRITING = "amberbench_writing"
# Any fixed number: with the name of the shop's schema, the key under which PostgreSQL serialises those who migrate the
# tables or number events.
TURN = "SELECT pg_advisory_xact_lock(7310513, hashtext(coalesce(current_schema(), '')))"

db = SQLAlchemy(metadata=Base.metadata)
migrate = flask_migrate.Migrate(db=db, directory=MIGRATIONS, render_as_batch=True)


def init_app(app: Flask) -> None:
    """Binds the database to an application."""
    db.init_app(app)
    migrate.init_app(app)
    with app.app_context():
        if db.engine.dialect.name == "sqlite":
            _prepare_sqlite(db.engine)


def upgrade() -> None:
    """Brings the database of the current application up to the newest migration."""
    file = _file()
    if file:
        _make_private(file, Path(current_app.instance_path))
    flask_migrate.upgrade(directory=MIGRATIONS)


def import_earlier_database(earlier: Path) -> Path | None:
    """Copies an earlier version's SQLite file to our own folder, where that is used and has none; else None."""
    file, own_folder = _file(), Path(current_app.instance_path)
    if file != own_folder / earlier.name or file.exists() or not earlier.is_file():
        return None
    copy = file.with_name(f"{file.name}.part")
    copy.unlink(missing_ok=True)
    _make_private(copy, own_folder)
    with closing(sqlite3.connect(earlier)) as source, closing(sqlite3.connect(copy)) as target:
        source.backup(target)
    return copy.replace(file)


def place() -> str:
    """Where the data of the current application lie, for people: a file, or an address without its password."""
    return str(_file() or db.engine.url.render_as_string())


def _file() -> Path | None:
    """The SQLite file of the current application, if it has one."""
    url = db.engine.url
    named = url.get_backend_name() == "sqlite" and url.database and not url.database.startswith((":", "file:"))
    return Path(str(url.database)) if named else None


def _make_private(file: Path, own_folder: Path) -> None:
    """Makes the file and its folder for the owner alone; SQLite gives the files beside it the same mode.

    What somebody chose by --database and was there already keeps its mode; in our own folder it is closed too.
    """
    file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    file.touch(mode=0o600)
    if file.parent == own_folder:
        file.parent.chmod(0o700)
        for one in file.parent.glob(f"{file.name}*"):
            one.chmod(0o600)


@contextmanager
def writing() -> Iterator[Session]:
    """A transaction that writes; writers take turns, so events are numbered in the order they become visible.

    Without that, a puller could see number 8 before number 7 is committed, move its cursor past 7 and never get it.
    """
    session = db.session()
    connection = session.connection(execution_options={WRITING: True})
    try:
        take_turn(connection)
        yield session
        session.commit()
    except BaseException:
        session.rollback()
        raise


def take_turn(connection: Connection) -> None:
    """Waits until no other process migrates or writes; the turn ends with the transaction (SQLite's begins with it)."""
    if connection.dialect.name == "postgresql":
        connection.execute(text(TURN))


@contextmanager
def reading() -> Iterator[Session]:
    """A transaction that only reads; it ends with the block."""
    session = db.session()
    try:
        yield session
    finally:
        session.rollback()


def _prepare_sqlite(engine: Engine) -> None:
    """Write-ahead log, foreign keys, patience, and transactions that begin when we say so."""

    @event.listens_for(engine, "connect")
    def connected(connection: Any, _record: Any) -> None:
        connection.isolation_level = None
        for pragma in ("busy_timeout = 10000", "journal_mode = WAL", "foreign_keys = ON", "synchronous = FULL"):
            connection.execute(f"PRAGMA {pragma}").close()

    @event.listens_for(engine, "begin")
    def begun(connection: Connection) -> None:
        # A reader that turns writer fails at once when somebody else wrote meanwhile: writers say so at the start.
        writes = connection.get_execution_options().get(WRITING)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
