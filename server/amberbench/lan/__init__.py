"""HTTPS for the shop's own phones: a private authority, a certificate for this machine, and a page that explains."""

from . import names
from .authority import Outside, Unreadable, discard_authority
from .certificate import Certificate, OwnCertificate
from .names import NoName
from .page import answering_the_check, page

__all__ = [
    "Certificate",
    "NoName",
    "Outside",
    "OwnCertificate",
    "Unreadable",
    "answering_the_check",
    "discard_authority",
    "names",
    "page",
]
