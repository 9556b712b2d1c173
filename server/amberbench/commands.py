"""What all commands share: the application on a database, and sentences."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

import click

from amberbench.engine.core.problems import Problem

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


@contextmanager
def on_data(database: str | None, file: object = None) -> "Iterator[Flask]":
    """The application on a database, let go of in the end; what is wrong there, or with a file, becomes a sentence."""
    from . import store

    app = application(database)
    with app.app_context():
        try:
            yield app
        except store.Unusable as error:
            raise refusal(error, None if error.code == "in_use" else file) from error
        except OSError as error:
            raise click.ClickException(f"{error.filename}: {error.strerror}") from error
        except Problem as problem:
            raise click.UsageError(text.problem_sentence(problem.document())) from problem
        finally:
            store.close()


def say(code: str, error: bool = False, **values: Any) -> None:
    click.echo(text.sentence(f"server.{code}", values), err=error)


def refusal(error: "Unusable", place: object = None) -> click.ClickException:
    """What to say of data that cannot be used: where they lie, what is wrong and, where it is known, why."""
    from . import store

    said = text.sentence(f"server.data_{error.code}", error.values)
    reason = f" ({error.values['reason']})" if error.values["reason"] else ""
    return click.ClickException(f"{place or store.place()}: {said}{reason}")
