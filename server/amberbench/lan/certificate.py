"""The certificate that is served: read again, or renewed, while the server runs; new handshakes take the new one."""

import asyncio
import datetime
import logging
import ssl
from collections.abc import Callable, Sequence
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding

from . import authority
from .names import LOOPBACK, named_in

LOOK_S = 3600
log = logging.getLogger(__name__)


def _now() -> datetime.datetime:
    return datetime.datetime.now(datetime.UTC)


class Certificate:
    """That of a file, which its owner may replace. Raises OSError when it cannot be read or is not its key's."""

    def __init__(self, cert: Path, key: Path) -> None:
        self.cert, self.key = cert, key
        self.context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
        self.names: list[str] = []
        self.served: bytes | None = None
        self.look_again()

    def look_again(self) -> None:
        """Takes what is in the files now."""
        pem = self.cert.read_bytes()
        if pem == self.served:
            return
        self.context.load_cert_chain(self.cert, self.key)
        certificate = x509.load_pem_x509_certificate(pem)
        self.names[:] = named_in(certificate)
        self.until = certificate.not_valid_after_utc
        self.served = pem

    def days_left(self) -> int:
        """Whole days until it ends; below zero once it has."""
        return (self.until - _now()).days

    def until_ms(self) -> int:
        """When it ends."""
        return int(self.until.timestamp() * 1000)

    async def keep(self) -> None:
        """Looks again every hour, for as long as it is served."""
        while True:
            await asyncio.sleep(LOOK_S)
            try:
                self.look_again()
            except (OSError, ValueError, authority.Unreadable, authority.Outside):
                log.exception("The certificate could not be renewed; the one of before is still served")


class OwnCertificate(Certificate):
    """That of this machine, made by its own authority and renewed before it ends or when an address is new."""

    def __init__(self, folder: Path, names: Callable[[], Sequence[str]], constrained: bool) -> None:
        """Raises what `authority.authority` and `authority.leaf` raise."""
        self.folder, self.wanted = folder, names
        self.is_new = not (folder / authority.AUTHORITY_FILE).exists()
        self.authority = authority.authority(folder, [*names(), *LOOPBACK], constrained, _now())
        super().__init__(folder / authority.LEAF_FILE, folder / authority.LEAF_FILE)

    def look_again(self) -> None:
        """Renews it where that is due."""
        authority.leaf(self.folder, [*self.wanted(), *LOOPBACK], _now())
        super().look_again()

    def to_trust(self) -> bytes:
        """The authority's certificate, as phones install it (DER)."""
        return self.authority.public_bytes(Encoding.DER)

    def fingerprint(self) -> str:
        """The authority's, to compare on phone and screen (SHA-256)."""
        return self.authority.fingerprint(SHA256()).hex(" ", 2).upper()
