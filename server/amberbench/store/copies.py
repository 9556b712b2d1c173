"""Copies of a whole database in one file: made while it is in use, looked into, put back in its place."""

import hashlib
import os
import shutil
import sqlite3
import subprocess
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple
from urllib.parse import quote
from uuid import uuid4

from sqlalchemy import URL

from .models import Base
from .storage_health import Unusable, code_of

SQLITE, DUMP = b"SQLite format 3\0", b"PGDMP"
BESIDE = ("-wal", "-shm")
# Who has just gone is listed for a moment more.
OTHERS = """SELECT pg_sleep(0.5); SELECT count(*) FROM pg_stat_activity
WHERE datname = current_database() AND pid <> pg_backend_pid() AND backend_type = 'client backend'"""


class Contents(NamedTuple):
    """What a copy holds: events, photos, and the last migration it went through."""

    events: int
    photos: int
    version: str


def checksum(file: Path) -> str:
    """SHA-256 of a file, in hexadecimal."""
    with file.open("rb") as content:
        return hashlib.file_digest(content, "sha256").hexdigest()


def make(url: URL, target: Path) -> None:
    """Writes what the database holds at this moment to a file for its owner alone. Raises Unusable.

    Of PostgreSQL the one schema in which the shop lies: those beside it are other shops'.
    """
    target.touch(mode=0o600)
    if url.get_backend_name() == "sqlite":
        copy_sqlite(Path(str(url.database)), target)
    else:
        exactly = '"' + _schema(url).replace('"', '""') + '"'  # else it would be a pattern
        _postgresql(url, "pg_dump", "--format=custom", f"--schema={exactly}", f"--file={target}")
    with target.open("rb") as written:
        os.fsync(written.fileno())


def copy_sqlite(source: Path, target: Path) -> None:
    """Writes a SQLite database to an empty file, with what lies in its write-ahead log."""
    with _opened(source) as connection:
        connection.execute("VACUUM INTO ?", (str(target),))


def look_into(file: Path) -> Contents:
    """What a copy holds, after looking through all of it. Raises Unusable `damaged`, `no_copy`."""
    start = _start(file)
    if start == SQLITE:
        return _look_into_sqlite(file)
    if start.startswith(DUMP):
        return _look_into_dump(file)
    raise Unusable("no_copy")


def _start(file: Path) -> bytes:
    try:
        with file.open("rb") as content:
            return content.read(len(SQLITE))
    except OSError as error:
        raise Unusable("no_copy", error.strerror) from error


def _look_into_sqlite(file: Path) -> Contents:
    with _opened(file, immutable=not file.with_name(f"{file.name}-wal").exists()) as connection:
        said = [row[0] for row in connection.execute("PRAGMA integrity_check")]
        if said != ["ok"]:
            raise Unusable("damaged", said[0].splitlines()[-1])
        tables = _columns(connection)
        if not {"event", "alembic_version"} <= tables.keys():
            raise Unusable("no_copy")
        (version,) = connection.execute("SELECT version_num FROM alembic_version").fetchone()
        counts = (connection.execute(f"SELECT count(*) FROM {one}") for one in ("event", "photo") if one in tables)
        events, *photos = [count for cursor in counts for (count,) in cursor]
    return Contents(events, sum(photos), version)


def _columns(connection: sqlite3.Connection, schema: str = "main") -> dict[str, set[str]]:
    """The columns of every table."""
    found: dict[str, set[str]] = {}
    asked = f"""SELECT one.name, its.name FROM {schema}.sqlite_master AS one
        JOIN pragma_table_info(one.name, '{schema}') AS its WHERE one.type = 'table'"""
    for table, column in connection.execute(asked):
        found.setdefault(table, set()).add(column)
    return found


@contextmanager
def _opened(file: Path, immutable: bool = False) -> Iterator[sqlite3.Connection]:
    """A SQLite file that is there already; its errors as Unusable."""
    address = f"file:{quote(str(file))}?mode={'ro&immutable=1' if immutable else 'rw'}"
    try:
        with closing(sqlite3.connect(address, timeout=10, isolation_level=None, uri=True)) as connection:
            yield connection
    except sqlite3.Error as error:
        raise Unusable(code_of(error) or "damaged", error) from error


def _look_into_dump(file: Path) -> Contents:
    def lines(table: str) -> list[str]:
        said = _run("pg_restore", "--data-only", f"--table={table}", "--file=-", str(file)).splitlines()
        begin = next((index + 1 for index, line in enumerate(said) if line.startswith("COPY ")), len(said))
        return said[begin : said.index("\\.", begin)] if begin < len(said) else []

    _run("pg_restore", f"--file={os.devnull}", str(file))
    version = lines("alembic_version")
    if not version:
        raise Unusable("no_copy")
    return Contents(len(lines("event")), len(lines("photo")), version[0])


def put_back(url: URL, file: Path, keep: Path) -> bool:
    """Puts a copy that was looked into in the place of the database, under a new log_id; keeps what was there.

    Who may come in is as it is today: the phones are those of the replaced database. Where it tells of none, none is
    let in, for some of the copy's may have been revoked since. Returns whether there are any.
    keep: where the replaced database goes. Raises Unusable `in_use`, `other_database`, `other_schema`, and what the
    database says.
    """
    is_sqlite = _start(file) == SQLITE
    if is_sqlite != (url.get_backend_name() == "sqlite"):
        raise Unusable("other_database")
    if is_sqlite:
        return _put_back_sqlite(Path(str(url.database)), file, keep)
    return _put_back_dump(url, file, keep)


def _put_back_sqlite(place: Path, file: Path, keep: Path) -> bool:
    if place.exists():
        _assert_free(place)
    place.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = place.with_name(f"{place.name}.part")
    part.unlink(missing_ok=True)
    make(URL.create("sqlite", database=str(file)), part)
    with _opened(part) as connection:
        if "log" in _columns(connection):
            connection.execute("UPDATE log SET log_id = ?", (str(uuid4()),))
        phones = _take_phones(connection, place)
    for beside in BESIDE:
        # Left over from a database that cannot be opened, or is gone: beside another one it would do harm.
        if (left := place.with_name(place.name + beside)).exists():
            left.rename(keep.with_name(keep.name + beside))
    if place.exists():
        try:
            os.link(place, keep)
        except OSError:  # a file system without links
            shutil.copy2(place, keep)
    part.replace(place)
    return phones


def _take_phones(connection: sqlite3.Connection, replaced: Path) -> bool:
    """Gives a copy the phones of the database that it replaces, as far as that can be read; whether there are any."""
    if "phone" not in _columns(connection):  # older than pairing
        return False
    connection.execute("DELETE FROM pairing")
    connection.execute("DELETE FROM phone")
    with suppress(sqlite3.Error):
        connection.execute("ATTACH ? AS replaced", (f"file:{quote(str(replaced))}?mode=ro",))
        both = ", ".join(_columns(connection)["phone"] & _columns(connection, "replaced").get("phone", set()))
        connection.execute(f"INSERT INTO phone ({both}) SELECT {both} FROM replaced.phone")
    (phones,) = connection.execute("SELECT count(*) FROM phone WHERE revoked_ms IS NULL").fetchone()
    return bool(phones)


def assert_free(url: URL) -> None:
    """Raises Unusable `in_use` when anybody else has a database open."""
    if url.get_backend_name() == "sqlite":
        _assert_free(Path(str(url.database)))
    elif _asked(url, OTHERS) != "0":
        raise Unusable("in_use")


def _assert_free(place: Path) -> None:
    """The same for a SQLite file; writes its write-ahead log into it. One that is damaged is free."""
    try:
        with closing(sqlite3.connect(place, timeout=0, isolation_level=None)) as connection:
            for one in ("PRAGMA locking_mode = EXCLUSIVE", "BEGIN IMMEDIATE", "COMMIT", "PRAGMA journal_mode = DELETE"):
                connection.execute(one).close()
    except sqlite3.Error as error:
        if code_of(error) == "busy":
            raise Unusable("in_use") from error


def _put_back_dump(url: URL, file: Path, keep: Path) -> bool:
    """The same for PostgreSQL, in one transaction; what a newer version has made beside it goes too."""
    schema = _schema(url)
    holds = _run("pg_restore", "--list", str(file))
    if f" TABLE {schema} event " not in holds:
        raise Unusable("other_schema", schema=schema)
    assert_free(url)
    make(url, keep)
    ours = ", ".join([*Base.metadata.tables, "alembic_version"])
    after = ["RESET search_path"]
    if f" TABLE {schema} log " in holds:
        after.append(f"UPDATE log SET log_id = '{uuid4()}'")
    with TemporaryDirectory() as folder:
        copy, phones = Path(folder, "copy.sql"), Path(folder, "phones.sql")
        _run("pg_restore", "--no-owner", f"--schema={schema}", f"--file={copy}", str(file))
        _run("pg_restore", "--data-only", f"--schema={schema}", "--table=phone", f"--file={phones}", str(keep))
        script = [f"--command=DROP TABLE IF EXISTS {ours} CASCADE", f"--file={copy}"]
        if has_phones := f" TABLE {schema} phone " in holds:
            after += ["DELETE FROM pairing", "DELETE FROM phone"]
        script += [f"--command={one}" for one in after]
        script += [f"--file={phones}"] if has_phones else []
        _postgresql(url, "psql", "--no-psqlrc", "--quiet", "--set=ON_ERROR_STOP=1", "--single-transaction", *script)
    return has_phones and _asked(url, "SELECT count(*) FROM phone WHERE revoked_ms IS NULL") != "0"


def _schema(url: URL) -> str:
    """The schema of PostgreSQL in which a database's tables lie."""
    return _asked(url, "SELECT current_schema()")


def _asked(url: URL, question: str) -> str:
    """The one word that PostgreSQL answers last."""
    return _postgresql(url, "psql", "--no-psqlrc", "-tAc", question).strip()


def _postgresql(url: URL, *command: str) -> str:
    """Runs one of PostgreSQL's own tools on a database; the password goes by the environment, where nobody sees it."""
    address = url.set(drivername="postgresql").set(password=None).render_as_string()
    secret = {"PGPASSWORD": str(url.password)} if url.password else {}
    return _run(*command, f"--dbname={address}", **secret)


def _run(*command: str, **environment: str) -> str:
    try:
        done = subprocess.run(command, capture_output=True, text=True, check=True, env=os.environ | environment)
    except FileNotFoundError as error:
        raise Unusable("no_tool", command[0], tool=command[0]) from error
    except subprocess.CalledProcessError as error:
        said = (error.stderr or "").strip().splitlines()
        raise Unusable(
            "damaged" if command[0] == "pg_restore" else "unusable", said[0] if said else command[0]
        ) from error
    return done.stdout
