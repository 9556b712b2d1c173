"""The database: connection settings, migrations, and the two kinds of transaction."""

import hashlib
import sqlite3
import threading
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from typing import Any

import flask_migrate
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from alembic.script.revision import ResolutionError
from alembic.util import CommandError
from flask import Flask, current_app
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import URL, Connection, Engine, event, text
from sqlalchemy.orm import Session

from .models import Base
from .storage_health import Storage, Unusable

MIGRATIONS = str(Path(__file__).parent / "migrations")
WRITING = "amberbench_writing"
BEGUN = ".begun"
STORAGE = "amberbench_storage"
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
        kept = app.extensions[STORAGE] = Storage(file())
        if db.engine.dialect.name == "sqlite":
            _prepare_sqlite(db.engine, kept)
        event.listen(db.engine, "handle_error", kept.translate)


def storage() -> Storage:
    """The state of the current application's storage."""
    found: Storage = current_app.extensions[STORAGE]
    return found


def prepare() -> None:
    """Makes a SQLite file for its owner alone. Raises Unusable `missing`: a shop was begun, and it is gone."""
    found, mark = file(), beside(BEGUN)
    if mark and mark.exists():
        there = found.exists() and found.stat().st_size if found else missing_migrations() is not None
        if not there:
            raise storage().found("missing")
    if found:
        _make_private(found, Path(current_app.instance_path))


def upgrade() -> None:
    """Brings the database of the current application up to the newest migration. Raises Unusable `newer`."""
    prepare()
    if missing_migrations() != []:
        flask_migrate.upgrade(directory=MIGRATIONS)


def missing_migrations(version: str | None = None) -> list[str] | None:
    """The migrations a database has not gone through, that of the current application or one of a version.

    None: all of them, it is a new one. Raises Unusable `newer` when we do not know its version.
    """
    if version is None:
        with db.engine.connect() as connection:
            version = MigrationContext.configure(connection).get_current_revision()
    try:
        left = list(ScriptDirectory(MIGRATIONS).iterate_revisions("head", version or "base"))
    except (CommandError, ResolutionError) as error:
        raise Unusable("newer", version) from error
    return [one.revision for one in left] if version else None


def beside(ending: str) -> Path | None:
    """Where a small file about the database lies: beside its file; of PostgreSQL in our own folder. None in memory."""
    url = db.engine.url.set(password=None)
    if url.get_backend_name() == "sqlite":
        return (found := file()) and found.with_name(found.name + ending)
    known = hashlib.sha256(url.render_as_string().encode()).hexdigest()[:8]
    return Path(current_app.instance_path, f"{url.database}-{known}{ending}")


def mark_begun() -> None:
    """Leaves a small file that says a shop was begun here: without its database, or its tables, it was lost."""
    if (mark := beside(BEGUN)) and not mark.exists():
        with suppress(OSError):  # a server of PostgreSQL may have no folder to write to
            mark.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
            mark.touch(mode=0o600)


def begun_ms() -> int | None:
    """When the shop was begun here as far as we know (ms); None: nowhere that lasts."""
    mark = beside(BEGUN)
    return int(mark.stat().st_mtime * 1000) if mark and mark.exists() else None


def close() -> None:
    """Lets go of every connection that is not in use."""
    db.session.remove()
    db.engine.dispose()


def import_earlier_database(earlier: Path) -> Path | None:
    """Copies an earlier version's SQLite file to our own folder, where that is used and has none; else None."""
    ours, own_folder = file(), Path(current_app.instance_path)
    if ours != own_folder / earlier.name or ours.exists() or not earlier.is_file():
        return None
    copy = ours.with_name(f"{ours.name}.part")
    copy.unlink(missing_ok=True)
    _make_private(copy, own_folder)
    with closing(sqlite3.connect(earlier)) as source, closing(sqlite3.connect(copy)) as target:
        source.backup(target)
    return copy.replace(ours)


def url() -> URL:
    """The address of the database of the current application."""
    return db.engine.url


def place() -> str:
    """Where the data of the current application lie, for people: a file, or an address without its password."""
    return str(file() or db.engine.url.render_as_string())


def file() -> Path | None:
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
    Threads of one process queue here: SQLite's own waiting is a race that somebody may lose for ten seconds.
    Raises Unusable when the storage is at fault: nothing is kept then.
    """
    with current_app.extensions.setdefault("amberbench_writer", threading.RLock()):
        yield from _writing(storage())


def _writing(kept: Storage) -> Iterator[Session]:
    kept.check(writes=True)
    session = db.session()
    connection = session.connection(execution_options={WRITING: True})
    try:
        take_turn(connection)
        yield session
        session.commit()
        # A file that went away meanwhile kept nothing.
        kept.check(writes=True)
        kept.fault = None
    except BaseException:
        session.rollback()
        raise


def take_turn(connection: Connection) -> None:
    """Waits until no other process migrates or writes; the turn ends with the transaction (SQLite's begins with it)."""
    if connection.dialect.name == "postgresql":
        connection.execute(text(TURN))


@contextmanager
def reading() -> Iterator[Session]:
    """A transaction that only reads; it ends with the block. Raises Unusable when the storage is at fault."""
    storage().check()
    session = db.session()
    try:
        yield session
    finally:
        session.rollback()


def _prepare_sqlite(engine: Engine, kept: Storage) -> None:
    """Write-ahead log, foreign keys, patience, and transactions that begin when we say so."""

    @event.listens_for(engine, "connect")
    def connected(connection: Any, _record: Any) -> None:
        connection.isolation_level = None
        for pragma in ("busy_timeout = 10000", "journal_mode = WAL", "foreign_keys = ON", "synchronous = FULL"):
            connection.execute(f"PRAGMA {pragma}").close()
        kept.note_opened()

    @event.listens_for(engine, "begin")
    def begun(connection: Connection) -> None:
        # A reader that turns writer fails at once when somebody else wrote meanwhile: writers say so at the start.
        writes = connection.get_execution_options().get(WRITING)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")
