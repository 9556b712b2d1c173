"""The database: connection settings, migrations, and the two kinds of transaction."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import flask_migrate
from flask import Flask
from flask_sqlalchemy import SQLAlchemy
from sqlalchemy import Connection, Engine, event, text
from sqlalchemy.orm import Session

from .models import Base

MIGRATIONS = str(Path(__file__).parent / "migrations")
WRITING = "amberbench_writing"
# Any fixed number: the key under which PostgreSQL serialises those who number events.
NUMBERING_LOCK = 7310513

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
    database = db.engine.url.database
    if db.engine.dialect.name == "sqlite" and database:
        Path(database).parent.mkdir(parents=True, exist_ok=True)
    flask_migrate.upgrade(directory=MIGRATIONS)


@contextmanager
def writing() -> Iterator[Session]:
    """A transaction that writes; writers take turns, so events are numbered in the order they become visible.

    Without that, a puller could see number 8 before number 7 is committed, move its cursor past 7 and never get it.
    """
    session = db.session()
    connection = session.connection(execution_options={WRITING: True})
    try:
        if connection.dialect.name == "postgresql":
            session.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": NUMBERING_LOCK})
        yield session
        session.commit()
    except BaseException:
        session.rollback()
        raise


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
