"""The command `amberbench`: thin, each command calls one service."""

import json
import sys
from typing import TYPE_CHECKING, Any

import click
from click.core import ParameterSource

from amberbench.engine.core.problems import Problem

from . import config, data_commands, phone_commands, text
from .commands import application, database_option, on_data, refusal, say
from .https_options import Https, https_options
from .schemas import engine_types, phone_types
from .services import clock, plans, strict_json

if TYPE_CHECKING:
    from flask import Flask

# The application is imported where it is needed: `compute` starts five times faster without it.


def _begun_with(empty: bool, language: str, without_trade: bool) -> tuple[str | None, str, str | None]:
    """What a new shop begins with: its seed, the language of that, its trade."""
    seed = None if empty else config.demo_shop_file().read_text(encoding="utf-8")
    trade = None if empty or without_trade else config.demo_trade_file().read_text(encoding="utf-8")
    return seed, language, trade


def _set_up(app: "Flask", empty: bool = False, language: str = text.FALL_BACK, without_trade: bool = False) -> bool:
    from .services import setup
    from .store import Unusable

    with app.app_context():
        earlier = config.earlier_file()
        seed, _, trade = _begun_with(empty, language, without_trade)
        try:
            if file := setup.import_earlier_database(earlier):
                say("taken_along", earlier=earlier, file=file)
            return setup.set_up(seed, clock.system_now_ms(), language, trade)
        except Unusable as error:
            raise refusal(error) from error


def _keep_access_log(app: "Flask") -> None:
    """Beside the data, where they are a file; else on standard error."""
    from . import store
    from .api import outermost

    with app.app_context():
        file = store.file()
    outermost.keep_log(file and file.with_name(f"{file.name}.access.log"))


language_option = click.option(
    "--language",
    type=click.Choice(text.languages()),
    default=text.FALL_BACK,
    show_default=True,
    help="Language of the invented shop, where there is none yet.",
)

trade_option = click.option(
    "--without-trade", is_flag=True, help="The invented shop without its invented deliveries, boxes and orders."
)


@click.group()
@click.version_option(package_name="amberbench")
def main() -> None:
    """From an order to cut, dipped and boxed caramels."""


@main.command()
@https_options
@language_option
@trade_option
@database_option
def serve(language: str, without_trade: bool, database: str | None, **asked: Any) -> None:
    """Serves the app and its API, and sets up the database where there is none."""
    from .services import setup
    from .serving import listen

    https = Https(**asked)
    app = application(database, **({"PROXIES": https.proxies} if https.proxies else {}))
    https.check_sign_in(app)
    begun = False
    try:
        begun = _set_up(app, language=language, without_trade=without_trade)
    except click.ClickException as refused:
        # Phones are told why: they would take silence for a server that is off.
        refused.show()
    setup.go_on_beside(app, *_begun_with(False, language, without_trade))
    if begun:
        say("demo_shop")
    elif click.get_current_context().get_parameter_source("language") is ParameterSource.COMMANDLINE:
        say("language_kept")
    try:
        certificate = https.certificate()
        listeners = https.listeners(app, certificate)
        _keep_access_log(app)
        listen(
            listeners, lambda: https.announce(app, listeners, certificate), certificate.keep if certificate else None
        )
    except OSError as error:
        raise click.ClickException(
            text.sentence("server.cannot_listen", {"host": https.listen_at, "port": str(https.port)})
        ) from error


@main.command()
@click.argument("name", required=False)
@click.option("--list", "listed", is_flag=True, help="Name the functions.")
def compute(name: str | None, listed: bool) -> None:
    """Computes one function of the engine: JSON on standard input, JSON on standard output."""
    if listed:
        click.echo("\n".join(plans.functions()))
        return
    if name is None:
        raise click.UsageError(text.sentence("server.name_or_list", {}))
    try:
        click.echo(plans.compute(name, sys.stdin.buffer.read()))
    except Problem as problem:
        document = problem.document()
        click.echo(strict_json.write(document | {"message": text.problem_sentence(document)}), err=True)
        sys.exit(2)


@main.command()
@click.option("--empty", is_flag=True, help="An empty shop, to be filled in on a phone.")
@language_option
@trade_option
@database_option
def begin(empty: bool, language: str, without_trade: bool, database: str | None) -> None:
    """Begins a shop where there is none: the invented demonstration shop, or an empty one."""
    begun = "seeded_empty" if empty else "seeded"
    with on_data(database) as app:
        say(begun if _set_up(app, empty, language, without_trade) else "not_seeded")


for command in (*data_commands.COMMANDS, *phone_commands.COMMANDS):
    main.add_command(command)

# Its name of before, for scripts that have it; chocolate has a seed of its own.
main.add_command(click.Command("seed", callback=begin.callback, params=begin.params, help=begin.help, hidden=True))


@main.command()
@database_option
def rebuild(database: str | None) -> None:
    """Makes all batches anew from the log."""
    from .services import streams

    with on_data(database) as app:
        _set_up(app)
        say("rebuilt", n=streams.rebuild()["batch"])


@main.command()
def openapi() -> None:
    """Prints the OpenAPI document."""
    reply = application("sqlite://").test_client().get("/api/openapi.json")
    click.echo(json.dumps(reply.get_json(), indent=1, ensure_ascii=False, sort_keys=True))


@main.command()
@click.argument("language", type=click.Choice(["typescript", "python"]), default="typescript")
def types(language: str) -> None:
    """Prints pwa/src/engine/types.ts, or server/amberbench/engine/types.py, made from the engine's descriptions."""
    made = {"typescript": phone_types.phone_types, "python": engine_types.engine_types}
    click.echo(made[language](), nl=False)
