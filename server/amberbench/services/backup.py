"""Backups of the database: made, checked, put back. The last of them are kept, in one folder."""

import logging
import os
import random
import time
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

from flask import Flask, current_app

from amberbench import store
from amberbench.store import Unusable, copies

from . import clock

log = logging.getLogger(__name__)

KEPT = 14
LOOKS_S = 300
DAY_MS = 24 * 3600 * 1000
STAMP = "%Y-%m-%dT%H%M%S.%fZ"


class Restored(NamedTuple):
    """What was put back: what it holds, where the replaced database is kept, whether phones are still let in."""

    contents: copies.Contents
    kept: Path | None
    phones: bool


class Backup(NamedTuple):
    """One backup: its file, what it holds, its SHA-256."""

    file: Path
    contents: copies.Contents
    checksum: str


def folder() -> Path:
    """Where backups go by themselves."""
    chosen = current_app.config["BACKUP_FOLDER"]
    return Path(chosen) if chosen else (store.file() or Path(current_app.instance_path, "x")).parent / "backups"


def make(now_ms: int, target: Path | None = None) -> Backup:
    """Backs the database up while it is in use: a file and its SHA-256 beside it.

    target: a folder; None: our own, where only the last 14 stay. Raises Unusable, and OSError for the folder.
    """
    store.storage().check()
    into = target or folder()
    into.mkdir(mode=0o700, parents=True, exist_ok=True)
    file = into / f"{_prefix()}{datetime.fromtimestamp(now_ms / 1000, UTC):{STAMP}}{_ending()}"
    part = file.with_name(f"{file.name}.part")
    try:
        copies.make(store.url(), part)
        contents = copies.look_into(part)
        checksum = copies.checksum(part)
        # The sum comes first: a backup under its own name always has one.
        _beside(file).write_text(f"{checksum}  {file.name}\n", encoding="utf-8")
        part.replace(file)
    except BaseException:
        part.unlink(missing_ok=True)
        raise
    if target is None:
        _forget_old(into)
    return Backup(file, contents, checksum)


def make_if_due(now_ms: int) -> Backup | None:
    """A backup when the newest, or the beginning of the shop, is a day old; else None."""
    newest = newest_ms() or store.begun_ms()
    return make(now_ms) if newest is not None and now_ms >= newest + DAY_MS else None


def newest_ms() -> int | None:
    """When the newest backup in our own folder was made (ms); None: there is none."""
    found = _kept(folder())
    return _made_ms(found[-1]) if found else None


def keep_backed_up(app: Flask) -> None:
    """Looks now and then whether a backup is due, as long as the process runs; of several, one comes first."""
    while True:
        time.sleep(random.uniform(0, LOOKS_S))
        with app.app_context():
            make_if_due_or_say(clock.system_now_ms())
        time.sleep(LOOKS_S)


def make_if_due_or_say(now_ms: int) -> None:
    """The same as make_if_due, and what goes wrong is a line in the log."""
    try:
        if made := make_if_due(now_ms):
            log.warning("backed up: %s, %d events", made.file, made.contents.events)
    except (Unusable, OSError) as error:
        log.error("there is no new backup: %s", error)
        if isinstance(error, Unusable) and error.code == "damaged":
            store.storage().found("damaged", error)


def check(file: Path | None) -> Backup:
    """Looks through a backup, or through the database. Raises Unusable: `damaged`, `checksum`, `newer`, `no_copy`."""
    if file is None:
        part = folder() / f"check-{os.getpid()}.part"
        part.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        try:
            copies.make(store.url(), part)
            return Backup(part, copies.look_into(part), copies.checksum(part))
        finally:
            part.unlink(missing_ok=True)
    found = copies.look_into(file)
    store.missing_migrations(found.version)
    checksum = copies.checksum(file)
    if _beside(file).exists() and _beside(file).read_text(encoding="utf-8").split()[:1] != [checksum]:
        raise Unusable("checksum")
    return Backup(file, found, checksum)


def restore(file: Path, now_ms: int) -> Restored:
    """Puts a backup in the place of the database.

    Phones that meet the log again offer all they hold: it has a new log_id. Let in are those that are today, not those
    of the backup (`copies.put_back`). Raises Unusable; nothing is changed then.
    """
    contents = check(file).contents
    stamp = f"{datetime.fromtimestamp(now_ms / 1000, UTC):{STAMP}}"
    place = store.file()
    keep = place.with_name(f"{place.name}.replaced-{stamp}") if place else folder() / f"replaced-{stamp}{_ending()}"
    store.close()
    keep.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    phones = copies.put_back(store.url(), file, keep)
    store.mark_begun()
    return Restored(contents, keep if keep.exists() else None, phones)


def _prefix() -> str:
    """What the backups of this database begin with: one folder may have those of several."""
    return f"{Path(str(store.url().database)).stem}-"


def _ending() -> str:
    return ".sqlite" if store.file() else ".dump"


def _beside(file: Path) -> Path:
    """The file with the SHA-256 of a backup, as `sha256sum -c` reads it."""
    return file.with_name(f"{file.name}.sha256")


def _kept(into: Path) -> list[Path]:
    """The backups in a folder, oldest first."""
    return sorted(one for one in into.glob(f"{_prefix()}????-??-??T*Z.*") if one.suffix in (".sqlite", ".dump"))


def _made_ms(file: Path) -> int:
    return round(1000 * datetime.strptime(file.stem.removeprefix(_prefix()), STAMP).replace(tzinfo=UTC).timestamp())


def _forget_old(into: Path) -> None:
    """Leaves the newest backups, and nothing of those that were broken off a day ago."""
    for one in _kept(into)[:-KEPT]:
        one.unlink()
        _beside(one).unlink(missing_ok=True)
    for one in into.glob("*.part"):
        if one.stat().st_mtime < time.time() - 24 * 3600:
            one.unlink()
