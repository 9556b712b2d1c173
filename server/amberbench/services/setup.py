"""Makes a database ready: newest tables, and a shop to begin with."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy.exc import DatabaseError

from amberbench import store
from amberbench.store import Unusable

from . import backup, shop


@contextmanager
def _usable() -> Iterator[None]:
    """Turns whatever is wrong with a database that cannot be used into Unusable; everything else is refused with it."""
    kept = store.storage()
    try:
        yield
    except Unusable as error:
        kept.blocked = kept.found(error.code, error.values["reason"])
        raise kept.blocked from error
    except (DatabaseError, sqlite3.Error) as error:
        kept.blocked = kept.found("unusable", getattr(error, "orig", error))
        raise kept.blocked from error
    except OSError as error:
        kept.blocked = kept.found("unusable", error.strerror)
        raise kept.blocked from error


def import_earlier_database(earlier: Path | None) -> Path | None:
    """Copies the database from the place where an earlier version kept it, unless there is one at the new place.

    Returns the new file, or None when nothing was copied. Raises Unusable.
    """
    with _usable():
        return store.import_earlier_database(earlier) if earlier else None


def migrate(now_ms: int) -> None:
    """Applies missing migrations, after a backup where there is something to back up. Raises Unusable."""
    with _usable():
        store.prepare()
        if store.missing_migrations():
            backup.make(now_ms)
        store.upgrade()


def set_up(seed: str | None, now_ms: int, language: str = "en", trade: str | None = None) -> bool:
    """Applies missing migrations, begins a shop where there is none and none was lost.

    seed: JSON of `seed_data`, whose words are taken in this language; None: an empty shop. trade: JSON of its invented
    deliveries, boxes and orders; None: none. Returns whether a shop was
    begun. A database is backed up before it is migrated. Raises Unusable when the file cannot be written, is no
    database, was written by a newer version, or is gone though a shop was begun in it.
    """
    migrate(now_ms)
    with _usable():
        begun = shop.begin(seed, now_ms, language, trade)
        store.mark_begun()
        return begun
