"""What all commands share: the application on a database, and sentences."""

from typing import TYPE_CHECKING, Any

import click

from . import text

if TYPE_CHECKING:
    from flask import Flask

    from .store import Unusable

database_option = click.option("--database", metavar="URL", help="Database; else AMBERBENCH_DATABASE_URL, else a file.")


def application(database: str | None, **overrides: Any) -> "Flask":
    """The application on a database; imported here, for a command without one starts five times faster."""
    from .app import create_app

    try:
        return create_app(overrides | ({"SQLALCHEMY_DATABASE_URI": database} if database else {}))
    except ModuleNotFoundError as error:
        if error.name not in ("psycopg", "psycopg2"):
            raise
        raise click.ClickException(text.sentence("server.no_driver", {})) from error


def say(code: str, error: bool = False, **values: Any) -> None:
    click.echo(text.sentence(f"server.{code}", values), err=error)


def refusal(error: "Unusable", place: object = None) -> click.ClickException:
    """What to say of data that cannot be used: where they lie, what is wrong and, where it is known, why."""
    from . import store

    said = text.sentence(f"server.data_{error.code}", error.values)
    reason = f" ({error.values['reason']})" if error.values["reason"] else ""
    return click.ClickException(f"{place or store.place()}: {said}{reason}")
