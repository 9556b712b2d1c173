"""What is wrong with a database that cannot be used now: one word each, by what the database or its file says."""

import logging
import os
import shutil
import sqlite3
import threading
import time
from pathlib import Path

from sqlalchemy import ExceptionContext

log = logging.getLogger(__name__)

BY_SQLITE = {
    sqlite3.SQLITE_FULL: "full",
    sqlite3.SQLITE_READONLY: "read_only",
    sqlite3.SQLITE_CORRUPT: "damaged",
    sqlite3.SQLITE_NOTADB: "damaged",
    sqlite3.SQLITE_BUSY: "busy",
    sqlite3.SQLITE_LOCKED: "busy",
    sqlite3.SQLITE_PROTOCOL: "busy",
    sqlite3.SQLITE_IOERR: "unusable",
    sqlite3.SQLITE_CANTOPEN: "unusable",
    sqlite3.SQLITE_PERM: "unusable",
}
# PostgreSQL's error codes (its manual, appendix A): disk full, read only, data and index corrupted, too many clients,
# shutting down, crashed, starting, deadlock, serialization, lock not available.
BY_SQLSTATE = {"53100": "full", "25006": "read_only", "XX001": "damaged", "XX002": "damaged", "53300": "busy"}
BY_SQLSTATE |= dict.fromkeys(("57P01", "57P02", "57P03"), "unreachable")
BY_SQLSTATE |= dict.fromkeys(("40P01", "40001", "55P03"), "busy")
LOGGED_AGAIN_S = 3600
LEAST_FREE = 256 * 1024
"""Bytes: with less on the disk it is full; SQLite needs some to open a file, and a push may bring 2 MB."""


class Unusable(Exception):
    """The data cannot be used now; `code` names the sentence `server.data_<code>`, `values` what stands in it."""

    def __init__(self, code: str, reason: object = "", **values: object) -> None:
        super().__init__(f"{code}: {reason}" if reason else code)
        self.code, self.values = code, {"reason": str(reason)} | values


def code_of(error: BaseException | None) -> str | None:
    """The word for an error of the database's driver; None: it is no fault of the storage."""
    if isinstance(error, sqlite3.Error):
        return BY_SQLITE.get(getattr(error, "sqlite_errorcode", 0) & 0xFF)
    state = getattr(error, "sqlstate", None)
    if state is None or state.startswith("08"):
        return "unreachable" if type(error).__name__ == "OperationalError" else None
    return BY_SQLSTATE.get(state)


class Storage:
    """The file of an application's database, if it is one, and what was found wrong with it."""

    def __init__(self, file: Path | None) -> None:
        self.file = file
        self.fault: str | None = None
        self.blocked: Unusable | None = None
        self.prepared_by: int | None = None
        """The thread that makes the database ready beside the serving; it alone is not blocked."""
        self._opened: tuple[int, int] | None = None
        self._logged = ("", -float(LOGGED_AGAIN_S))

    def note_opened(self) -> None:
        """Remembers which file was opened first: another one under its name is another database."""
        if self.file and self._opened is None:
            self._opened = _identity(self.file)

    def check(self, writes: bool = False) -> None:
        """Raises Unusable when the file is gone, is another one, is damaged or, to write, cannot be written.

        Also when the database could not be used at the start.
        """
        if self.blocked and threading.get_ident() != self.prepared_by:
            raise self.blocked
        if self.file is None or self._opened is None:
            return
        now = _identity(self.file)
        if now is None:
            raise self.found("missing")
        if now != self._opened:
            raise self.found("replaced")
        if self.fault == "damaged":
            raise self.found("damaged")
        if writes and not os.access(self.file, os.W_OK):
            raise self.found("read_only")

    def check_room(self) -> None:
        """Raises Unusable `full` when the disk of a file is, before a write has failed."""
        if self.file and self.file.exists() and shutil.disk_usage(self.file.parent).free < LEAST_FREE:
            raise self.found("full")

    def found(self, code: str, reason: object = "") -> Unusable:
        """Remembers a fault and logs it in one line, the same one at most once an hour."""
        if code != "busy":
            self.fault = code
            before, at_s = self._logged
            if before != code or time.monotonic() > at_s + LOGGED_AGAIN_S:
                told = " ".join(str(one) for one in (code, self.file, reason) if one)
                log.error("the database cannot be used: %s", told)
                self._logged = (code, time.monotonic())
        return Unusable(code, reason)

    def translate(self, context: ExceptionContext) -> None:
        """Raises Unusable in place of a driver's error that the storage is at fault for."""
        error = context.original_exception
        if code := code_of(error):
            raise self.found(self._cause() if code == "unusable" else code, error) from error

    def _cause(self) -> str:
        """Why a file could not be opened or written, where the disk tells: SQLite needs room to open one, too."""
        if self.file and self.file.exists():
            if not os.access(self.file, os.W_OK):
                return "read_only"
            if shutil.disk_usage(self.file.parent).free < LEAST_FREE:
                return "full"
        return "unusable"


def _identity(file: Path) -> tuple[int, int] | None:
    try:
        found = file.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino
