"""The commands that look after the phones: pair, phones, revoke."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import click

from amberbench.engine.core.problems import Problem

from . import commands, config, text
from .commands import database_option, say
from .services import clock, roles

if TYPE_CHECKING:
    from flask import Flask

    from .services.pairing import Offer


def say_owners_link(app: "Flask", address: str) -> None:
    """Says what pairs the owner's phone, while there is none; then, where others reach it, what lets one more in.

    address: of the server, as phones reach it.
    """
    from .services import pairing
    from .store import Unusable

    with app.app_context():
        try:
            if not app.config["SIGN_IN"]:
                return
            if pairing.has_owner():
                if not config.is_loopback(urlsplit(address).hostname or ""):
                    say("pair_more", address=address)
                return
            name = text.sentence("server.owners_phone", {})
            offer = pairing.offer(address, name, roles.OWNER, clock.system_now_ms(), with_digits=False)
        except Unusable:  # It has been said.
            return
    _show(offer, "pair_owner")


def _show(offer: "Offer", code: str) -> None:
    """Prints a pairing; the QR code only where another device can follow it."""
    if not config.is_loopback(urlsplit(offer.link).hostname or ""):
        click.echo(offer.terminal())
    digits = offer.digits or ""
    say(code, link=offer.link, digits=f"{digits[:4]} {digits[4:]}")


@contextmanager
def _data(database: str | None) -> Iterator[None]:
    """The application on a database brought up to date; what is wrong becomes a sentence."""
    from . import store

    with commands.application(database).app_context():
        try:
            store.upgrade()
            yield
        except store.Unusable as error:
            raise commands.refusal(error) from error
        except Problem as problem:
            raise click.UsageError(text.problem_sentence(problem.document())) from problem


@click.command()
@click.option("--name", default="Phone", show_default=True, help="What people call the phone.")
@click.option("--role", type=click.Choice(roles.ROLES), default=roles.BENCH, show_default=True, help="What it may do.")
@click.option(
    "--address", envvar="AMBERBENCH_ADDRESS", default="http://127.0.0.1:8765/", show_default=True, help="Of the server."
)
@database_option
def pair(name: str, role: str, address: str, database: str | None) -> None:
    """Lets one more phone in: a link, as a QR code too, and eight digits; good for five minutes, once."""
    from .services import pairing

    with _data(database):
        _show(pairing.offer(address, name, role, clock.system_now_ms()), "pair")


@click.command()
@database_option
def phones(database: str | None) -> None:
    """Lists the paired phones: id, role, last seen (UTC), name."""
    from .services import pairing

    with _data(database):
        for phone in pairing.phones():
            seen = datetime.fromtimestamp(phone.seen_ms / 1000, UTC).isoformat(timespec="minutes")
            click.echo(f"{phone.phone_id}  {phone.role:6}  {seen}  {phone.name}")


@click.command()
@click.argument("phone_id")
@database_option
def revoke(phone_id: str, database: str | None) -> None:
    """Lets a paired phone in no more; what it recorded stays on it until it is paired again."""
    from .services import pairing

    with _data(database):
        if not pairing.revoke(phone_id, clock.system_now_ms()):
            raise click.ClickException(text.sentence("server.no_such_phone", {"id": phone_id}))
    say("revoked")


COMMANDS = (pair, phones, revoke)
