"""The commands that look after the phones: pair, phones, revoke."""

from contextlib import suppress
from datetime import UTC, datetime
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import click

from . import config, text
from .commands import database_option, on_data, say
from .services import clock, roles

if TYPE_CHECKING:
    from flask import Flask

    from .services.pairing import Offer

ADDRESS = ".address"


def say_owners_link(app: "Flask", address: str) -> None:
    """Says what pairs the owner's phone, while there is none; then, where others reach it, what lets one more in.

    address: of the server, as phones reach it; kept for `amberbench pair`.
    """
    from . import store
    from .services import pairing
    from .store import Unusable

    with app.app_context():
        if file := store.beside(ADDRESS):
            with suppress(OSError):
                file.touch(mode=0o600)
                file.write_text(address)
        try:
            if not app.config["SIGN_IN"]:
                return
            if pairing.has_owner():
                if not _is_of_this_computer(address):
                    say("pair_more", address=address)
                return
            name = text.sentence("server.owners_phone", {})
            offer = pairing.offer(address, name, roles.OWNER, clock.system_now_ms(), with_digits=False)
        except Unusable:  # It has been said.
            return
    _show(offer, "pair_owner")


def _show(offer: "Offer", code: str) -> None:
    """Prints a pairing; the QR code only where another device can follow it."""
    if not _is_of_this_computer(offer.link):
        click.echo(offer.terminal())
    digits = offer.digits or ""
    say(code, link=offer.link, digits=f"{digits[:4]} {digits[4:]}")


@click.command()
@click.option("--name", default="Phone", show_default=True, help="What people call the phone.")
@click.option("--role", type=click.Choice(roles.ROLES), default=roles.BENCH, show_default=True, help="What it may do.")
@click.option(
    "--address", envvar="AMBERBENCH_ADDRESS", help="Of the server, as the phone reaches it.  [default: where it served]"
)
@database_option
def pair(name: str, role: str, address: str | None, database: str | None) -> None:
    """Lets one more phone in: a link, as a QR code too, and eight digits; good for five minutes, once."""
    from .services import pairing, setup

    with on_data(database):
        setup.migrate(clock.system_now_ms())
        address = address or _served_at()
        _show(pairing.offer(address, name, role, clock.system_now_ms()), "pair")
    if _is_of_this_computer(address):
        say("pair_here")


def _served_at() -> str:
    """The address at which the server of these data was last started; before that its usual one."""
    from . import store

    file = store.beside(ADDRESS)
    return file.read_text() if file and file.exists() else "http://127.0.0.1:8765/"


def _is_of_this_computer(address: str) -> bool:
    """Whether no other device comes to an address: it is this computer's own, or stands for every one it has."""
    host = urlsplit(address).hostname or ""
    return host in ("0.0.0.0", "::") or config.is_loopback(host)


@click.command()
@database_option
def phones(database: str | None) -> None:
    """Lists the paired phones: id, role, last seen (UTC), name."""
    from .services import pairing, setup

    with on_data(database):
        setup.migrate(clock.system_now_ms())
        for phone in pairing.phones():
            seen = datetime.fromtimestamp(phone.seen_ms / 1000, UTC).isoformat(timespec="minutes")
            click.echo(f"{phone.phone_id}  {phone.role:6}  {seen}  {phone.name}")


@click.command()
@click.argument("phone_id")
@database_option
def revoke(phone_id: str, database: str | None) -> None:
    """Lets a paired phone in no more; what it recorded stays on it until it is paired again."""
    from .services import pairing, setup

    with on_data(database):
        setup.migrate(clock.system_now_ms())
        if not pairing.revoke(phone_id, clock.system_now_ms()):
            raise click.ClickException(text.sentence("server.no_such_phone", {"id": phone_id}))
    say("revoked")


COMMANDS = (pair, phones, revoke)
