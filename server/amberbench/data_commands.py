"""The commands that look after the data: backup, check, restore."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import click

from . import commands
from .commands import database_option, say
from .services import clock


@contextmanager
def _data(database: str | None, file: Path | None = None) -> Iterator[None]:
    """The application on a database; what is wrong with it, or with a file, becomes a sentence."""
    from .store import Unusable

    with commands.application(database).app_context():
        try:
            yield
        except Unusable as error:
            raise commands.refusal(error, file) from error
        except OSError as error:
            raise click.ClickException(f"{error.filename}: {error.strerror}") from error


@click.command()
@click.argument("folder", required=False, type=click.Path(file_okay=False, path_type=Path))
@database_option
def backup(folder: Path | None, database: str | None) -> None:
    """Backs up everything recorded, also while the server runs.

    Without a FOLDER into "backups" beside the data, where the last 14 stay.
    """
    from .services import backup as backups

    with _data(database):
        made = backups.make(clock.system_now_ms(), folder)
        say("backed_up", file=made.file, **made.contents._asdict(), checksum=made.checksum)


@click.command()
@click.argument("file", required=False, type=click.Path(path_type=Path))
@database_option
def check(file: Path | None, database: str | None) -> None:
    """Looks through a backup, or through the data, for damage."""
    from . import store
    from .services import backup as backups

    with _data(database, file):
        found = backups.check(file)
        say("checked", place=file or store.place(), **found.contents._asdict())


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@database_option
def restore(file: Path, database: str | None) -> None:
    """Puts a backup in the place of the data, with the server stopped. What was there is kept beside it."""
    from . import store
    from .services import backup as backups

    with _data(database, file):
        found, kept = backups.restore(file, clock.system_now_ms())
        say("restored", file=file, place=store.place(), **found.contents._asdict())
        if kept:
            say("replaced", file=kept)


COMMANDS = (backup, check, restore)
