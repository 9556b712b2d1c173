"""What a first visit costs: every byte the server sends until the phone says that it needs no network; the files of
the places beside the bench, which come when the bench can work, are told apart."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from e2e.phone import Phone
from e2e.server import Server

from . import browser, wire
from .table import Row, kb, size_row

DIST = Path(__file__).parents[2] / "pwa/dist"
MOST_BYTES = 400_000
PLACE = "/assets/place-"
"""How the files of the places begin."""
LANGUAGE_OF = {"en-GB": "en", "es-MX": "es-MX"}
"""Locale → the language the phone opens in."""
REST_MS = 8_000
"""By then a phone has stored what it did not wait for: it begins after three seconds."""


def rows() -> Iterator[Row]:
    """First visits in two languages, counted between browser and server, so that workers and the service worker are in
    it; and what comes after them by itself."""
    for locale, language in LANGUAGE_OF.items():
        first, places, rest = visit(locale, language)
        name = f"first load, {locale}, over the wire with heads"
        yield size_row(name, first, "built files as they are", plain_bytes(), MOST_BYTES)
        yield Row(f"then, {locale}: every place, until it needs no network", kb(places), "", "", "")
        yield Row(f"after it, {locale}: other languages, invented shop", kb(rest), "", "", "")


def visit(locale: str, language: str) -> tuple[int, int, int]:
    """The bytes sent until the phone needs no network, without the places and of the places; and those it fetches by
    itself afterwards."""
    with (
        TemporaryDirectory() as folder,
        Server(Path(folder)) as server,
        wire.counted(server.port) as relay,
        browser.opened(Path(folder) / "profile", relay.url, locale=locale) as context,
    ):
        phone = Phone(context.pages[0], fake_clock=False)
        phone.language = language
        phone.installs()
        sent = relay.sent.copy()
        phone.passes(REST_MS)
        places = sum(size for path, size in sent.items() if path.startswith(PLACE))
        return sent.total() - places, places, relay.sent.total() - sent.total()


def plain_bytes() -> int:
    """The built files that have a compressed twin, uncompressed (bytes)."""
    return sum(file.stat().st_size for file in DIST.rglob("*") if file.with_name(f"{file.name}.br").exists())
