"""What a first visit costs: every byte the server sends until the phone says that it needs no network."""

from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from e2e.phone import Phone
from e2e.server import Server

from . import browser, wire
from .table import Row, size_row

DIST = Path(__file__).parents[2] / "pwa/dist"
MOST_BYTES = 400_000


def rows() -> Iterator[Row]:
    """One row, counted between browser and server, so that workers and the service worker are in it."""
    with (
        TemporaryDirectory() as folder,
        Server(Path(folder)) as server,
        wire.counted(server.port) as relay,
        browser.opened(Path(folder) / "profile", relay.url) as context,
    ):
        Phone(context.pages[0], fake_clock=False).installs()
        sent = relay.sent
    yield size_row("first load, over the wire with heads", sent, "built files as they are", plain_bytes(), MOST_BYTES)


def plain_bytes() -> int:
    """The built files that have a compressed twin, uncompressed (bytes)."""
    return sum(file.stat().st_size for file in DIST.rglob("*") if file.with_name(f"{file.name}.br").exists())
