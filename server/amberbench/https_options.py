"""How `serve` comes to HTTPS: by two files, by the shop's own authority, or by a proxy in front of it."""

import io
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from . import config, phone_commands, text
from .commands import say

if TYPE_CHECKING:
    from flask import Flask

    from .lan import Certificate
    from .serving import Listener

# What serves is imported where it is needed, as the application is.

OWN_FOLDER = "certificates"
port = click.IntRange(0, 65535)
pem = click.Path(exists=True, dir_okay=False, path_type=Path)
OPTIONS = (
    click.option("--host", help="Address to listen at.  [default: 127.0.0.1; with --lan every one]"),
    click.option("--port", default=8765, show_default=True, type=port, help="0 takes a free one."),
    click.option("--cert", type=pem, help="Certificate (PEM), for HTTPS."),
    click.option("--key", type=pem, help="Its private key (PEM)."),
    click.option("--lan", is_flag=True, help="HTTPS for the phones of this network, by an authority made here."),
    click.option("--name", "names", multiple=True, help="With --lan: a further name or address of this machine."),
    click.option("--page-port", type=port, help="With --lan: port of the page that explains.  [default: the next]"),
    click.option("--without-name-constraints", is_flag=True, help="With --lan: for phones that refuse the authority."),
    click.option("--new-authority", is_flag=True, help="With --lan: every phone must trust the new one."),
    click.option(
        "--behind-proxy",
        "proxies",
        type=click.IntRange(0, 5),
        default=0,
        help="That so many proxies in front of it bring HTTPS: their X-Forwarded headers are believed.",
    ),
)


def https_options(command: Callable[..., None]) -> Callable[..., None]:
    """Gives a command the options."""
    for option in reversed(OPTIONS):
        command = option(command)
    return command


@dataclass
class Https:
    """What was asked for. Raises click's exceptions where that makes no sense."""

    host: str | None
    port: int
    cert: Path | None
    key: Path | None
    lan: bool
    names: tuple[str, ...]
    page_port: int | None
    without_name_constraints: bool
    new_authority: bool
    proxies: int

    def __post_init__(self) -> None:
        if (self.cert is None) != (self.key is None):
            raise _misused("certificate_and_key")
        if self.lan and (self.cert or self.proxies):
            raise _misused("lan_alone")
        if not self.lan and (self.names or self.page_port or self.without_name_constraints or self.new_authority):
            raise _misused("lan_only")
        self.listen_at = self.host or ("" if self.lan else "127.0.0.1")
        if not (self.cert or self.lan or self.proxies or config.is_loopback(self.listen_at)):
            raise _misused("needs_certificate", host=self.listen_at)

    def certificate(self) -> "Certificate | None":
        """What HTTPS is served with; an authority is made where there is none. Raises OSError for unusable files."""
        from . import lan

        if self.cert and self.key:
            return lan.Certificate(self.cert, self.key)
        if not self.lan:
            return None
        folder = config.data_folder() / OWN_FOLDER
        if self.new_authority:
            lan.discard_authority(folder)
        try:
            made = lan.OwnCertificate(folder, self._reached_by, not self.without_name_constraints)
        except lan.Unreadable as error:
            raise click.ClickException(_sentence("lan_unreadable", file=error)) from error
        except lan.NoName as error:
            raise _misused("lan_name", name=error) from error
        except lan.Outside as error:
            raise click.ClickException(_sentence("lan_outside", name=error)) from error
        if made.is_new:
            say("lan_made", folder=folder)
        return made

    def listeners(self, app: "Flask", certificate: "Certificate | None") -> "list[Listener]":
        """Where the app is served, and with an own authority the page beside it."""
        from . import lan
        from .serving import Listener

        if certificate:
            app.config["CERTIFICATE"] = certificate
        context = certificate.context if certificate else None
        if not isinstance(certificate, lan.OwnCertificate):
            return [Listener(app, self.listen_at, self.port, context)]
        beside = (self.port + 1 if self.port else 0) if self.page_port is None else self.page_port
        served = Listener(lan.answering_the_check(app), self.listen_at, self.port, context)
        return [served, Listener(lan.page(certificate, served, "/"), self.listen_at, beside)]

    def check_sign_in(self, app: "Flask") -> None:
        """Raises a UsageError where everybody would be let in who reaches more than this computer."""
        if not app.config["SIGN_IN"] and (self.proxies or not config.is_loopback(self.listen_at)):
            raise _misused("needs_sign_in")
        app.config["HOSTS"] |= {self.listen_at.lower()}

    def announce(self, app: "Flask", listeners: "list[Listener]", certificate: "Certificate | None") -> None:
        """Says where it is, how phones come to trust it, and what pairs the owner's."""
        import segno

        from . import lan

        name = certificate.wanted()[0] if isinstance(certificate, lan.OwnCertificate) else None
        say("at", address=listeners[0].address(name))
        if isinstance(certificate, lan.OwnCertificate):
            address = listeners[1].address(name)
            say("lan_page", address=address)
            drawn = io.StringIO()
            segno.make_qr(address).terminal(drawn, compact=True)
            with suppress(UnicodeEncodeError):
                click.echo(drawn.getvalue())
            say("lan_fingerprint", fingerprint=certificate.fingerprint())
        address = app.config["ADDRESS"] or listeners[0].address(name or self._certified(certificate))
        phone_commands.say_owners_link(app, address)

    def _certified(self, certificate: "Certificate | None") -> str | None:
        """A name by which phones reach it, where it listens at every address."""
        return certificate.names[0] if certificate and self.listen_at in ("0.0.0.0", "::") else None

    def _reached_by(self) -> list[str]:
        from . import lan

        return [*self.names, *lan.names.of_this_machine()]


def _sentence(code: str, **values: Any) -> str:
    return text.sentence(f"server.{code}", values)


def _misused(code: str, **values: Any) -> click.UsageError:
    return click.UsageError(_sentence(code, **values))
