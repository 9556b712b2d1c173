"""The commands that look after the data: backup, check, restore, export, import, move."""

from pathlib import Path
from typing import IO

import click

from . import text
from .commands import database_option, on_data, say
from .services import clock


@click.command()
@click.argument("folder", required=False, type=click.Path(file_okay=False, path_type=Path))
@database_option
def backup(folder: Path | None, database: str | None) -> None:
    """Backs up everything recorded, also while the server runs.

    Without a FOLDER into "backups" beside the data, where the last 14 stay.
    """
    from .services import backup as backups

    with on_data(database):
        made = backups.make(clock.system_now_ms(), folder)
        say("backed_up", file=made.file, **made.contents._asdict(), checksum=made.checksum)


@click.command()
@click.argument("file", required=False, type=click.Path(path_type=Path))
@database_option
def check(file: Path | None, database: str | None) -> None:
    """Looks through a backup, or through the data, for damage."""
    from . import store
    from .services import backup as backups

    with on_data(database, file):
        found = backups.check(file)
        say("checked", place=file or store.place(), **found.contents._asdict())


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@database_option
def restore(file: Path, database: str | None) -> None:
    """Puts a backup in the place of the data, with the server stopped. What was there is kept beside it."""
    from . import store
    from .services import backup as backups

    with on_data(database, file):
        made = backups.restore(file, clock.system_now_ms())
        say("restored", file=file, place=store.place(), **made.contents._asdict())
        if made.kept:
            say("replaced", file=made.kept)
        say("phones_kept" if made.phones else "phones_anew")


@click.command("export")
@click.argument("file", type=click.File("w", encoding="utf-8", lazy=False), default="-")
@database_option
def export_log(file: IO[str], database: str | None) -> None:
    """Writes the whole log, photos included, as lines of JSON."""
    from .services import log_file

    with on_data(database):
        for line in log_file.lines():
            file.write(line + "\n")


@click.command("import")
@click.argument("file", type=click.File("r", encoding="utf-8"), default="-")
@database_option
def import_log(file: IO[str], database: str | None) -> None:
    """Takes in what export wrote, into a database in which no shop was begun."""
    from .services import log_file, setup

    with on_data(database, Path(file.name)):
        setup.migrate(clock.system_now_ms())
        events, photos = log_file.take_in(file)
        say("taken_in", events=events, photos=photos)


@click.command()
@click.argument("kind", type=click.Choice(("lots", "orders", "packs")))
@click.argument("file", type=click.File("r", encoding="utf-8"), default="-")
@database_option
def import_table(kind: str, file: IO[str], database: str | None) -> None:
    """Takes in lots, orders or boxes packed from CSV or JSON as the server gives them, or from CSV typed by hand.

    All of it, or nothing where a line cannot be read.
    """
    from .engine.core.problems import Problem
    from .services import stream_import

    with on_data(database, Path(file.name)):
        try:
            taken = stream_import.take_in(kind.removesuffix("s"), file.read(), clock.system_now_ms())
        except Problem as problem:
            name = stream_import.cell_name(problem.field, text.FALL_BACK)
            raise click.ClickException(text.problem_sentence(problem.document(), named=name)) from problem
        say("table_taken_in", added=taken["added"], known=taken["known"])


@click.command()
@click.argument("target", metavar="URL")
@database_option
def move(target: str, database: str | None) -> None:
    """Moves everything into another, empty database, with the server stopped: from SQLite to PostgreSQL, or back.

    The log stays the same log: phones go on as they were. The old database stays as it is; serve it no more.
    """
    from . import store
    from .services import log_file, setup
    from .store import copies

    with on_data(target):
        setup.migrate(clock.system_now_ms())
        engine, place = store.db.engine, store.place()
    with on_data(database):
        setup.migrate(clock.system_now_ms())
        store.close()
        copies.assert_free(store.url())
        try:
            with engine.begin() as connection:
                rows = log_file.move_into(connection)
        finally:
            engine.dispose()
        say("moved", place=place, n=rows)
    with on_data(target):
        store.mark_begun()


COMMANDS = (backup, check, restore, export_log, import_log, import_table, move)
