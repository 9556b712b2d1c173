"""Makes a database ready: newest tables, and a shop to begin with."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy.exc import DatabaseError

from amberbench import store

from . import shop


class Unusable(Exception):
    """The data cannot be used; `code` names the sentence that says so, `values` what stands in it."""

    def __init__(self, code: str, reason: object) -> None:
        super().__init__(code)
        self.code, self.values = code, {"place": store.place(), "reason": str(reason)}


@contextmanager
def _usable() -> Iterator[None]:
    """Turns the errors of a database that cannot be used into Unusable."""
    try:
        yield
    except (DatabaseError, sqlite3.Error) as error:
        raise Unusable("data_unusable", getattr(error, "orig", error)) from error
    except OSError as error:
        raise Unusable("data_unusable", error.strerror) from error
    except SystemExit as error:  # Flask-Migrate's answer to a migration it does not know.
        raise Unusable("data_newer", error) from error


def import_earlier_database(earlier: Path | None) -> Path | None:
    """Copies the database from the place where an earlier version kept it, unless there is one at the new place.

    Returns the new file, or None when nothing was copied. Raises Unusable.
    """
    with _usable():
        return store.import_earlier_database(earlier) if earlier else None


def set_up(seed: str | None, now_ms: int, language: str = "en") -> bool:
    """Applies missing migrations, begins a shop where there is none.

    seed: JSON of `seed_data`, whose words are taken in this language; None: an empty shop. Returns whether a shop was
    begun. Raises Unusable when the file cannot be written, is no database, or was written by a newer version.
    """
    with _usable():
        store.upgrade()
    return shop.begin(seed, now_ms, language)
