"""Makes a database ready: newest tables, and a shop to begin with."""

import sqlite3
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from flask import Flask
from sqlalchemy.exc import DatabaseError

from amberbench import store
from amberbench.store import Unusable

from . import backup, clock, shop, streams

AGAIN_S = 2
BESIDE = "beside the serving"


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


def go_on_beside(app: Flask, seed: str | None, language: str = "en", trade: str | None = None) -> None:
    """What goes on beside the serving, after `set_up`, which was asked so: old documents folded again, daily backups.

    Where the database was not reached, as when it starts after us, it is waited for and set up first.
    """

    def work() -> None:
        if _is_set_up(app, lambda: set_up(seed, clock.system_now_ms(), language, trade)):
            threading.Thread(target=backup.keep_backed_up, args=(app,), daemon=True).start()
            streams.fold_outdated(app)

    threading.Thread(target=work, daemon=True, name=BESIDE).start()


def _is_set_up(app: Flask, set_up_again: Callable[[], bool]) -> bool:
    """Whether the database can be used; tried again for as long as it cannot be reached."""
    with app.app_context():
        kept = store.storage()
        kept.prepared_by = threading.get_ident()
        while kept.blocked and kept.blocked.code == "unreachable":
            time.sleep(AGAIN_S)
            with suppress(Unusable):
                set_up_again()
                kept.blocked = None
        return kept.blocked is None
