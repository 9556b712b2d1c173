"""A private authority, trusted by the shop's phones alone, and the certificates it signs for this machine.

Both lie in a folder that only its owner reads, each with its key in one file. The authority may sign for private
addresses and the names it was made with (RFC 5280, section 4.2.1.10): with its key nobody can pose as others.
"""

import datetime
import ipaddress
import os
import socket
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from cryptography import x509
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from .names import general_name, named_in

AUTHORITY_FILE, LEAF_FILE = "authority.pem", "server.pem"
DAY = datetime.timedelta(days=1)
AUTHORITY_LASTS, LEAF_LASTS = 3650 * DAY, 397 * DAY
"""Phones take a server's certificate for 825 days at most, also of an own authority (Apple, support article 103769)."""
RENEW_BEFORE = 60 * DAY
# RFC 1918, 3927, 4193, 4291.
PRIVATE = (
    "10.0.0.0/8",
    "172.16.0.0/12",
    "192.168.0.0/16",
    "169.254.0.0/16",
    "127.0.0.0/8",
    "fc00::/7",
    "fe80::/10",
    "::1/128",
)


class Unreadable(Exception):
    """The authority's file is there and cannot be used; another authority would have to be trusted on every phone."""


class Outside(Exception):
    """A name the authority may not sign for."""


Signed = tuple[x509.Certificate, ec.EllipticCurvePrivateKey]


def authority(folder: Path, names: Sequence[str], constrained: bool, now: datetime.datetime) -> x509.Certificate:
    """The authority of a folder, made where there is none. Raises Unreadable and NoName."""
    if (folder / AUTHORITY_FILE).exists():
        return _authority(folder)[0]
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    key = ec.generate_private_key(ec.SECP256R1())
    title = f"Amberbench {socket.gethostname()[:40]} {now:%Y-%m-%d}"
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, title)])
    builder = _builder(subject, subject, key, now, AUTHORITY_LASTS)
    builder = builder.add_extension(x509.BasicConstraints(ca=True, path_length=0), critical=True)
    builder = builder.add_extension(_usage(signs_certificates=True), critical=True)
    if constrained:
        builder = builder.add_extension(x509.NameConstraints(_permitted(names), None), critical=True)
    certificate = builder.sign(key, hashes.SHA256())
    _keep(folder / AUTHORITY_FILE, certificate, key)
    return certificate


def discard_authority(folder: Path) -> None:
    """Lays the authority of a folder aside, under the time of its end: another is made at the next start."""
    with suppress(FileNotFoundError):
        (folder / AUTHORITY_FILE).rename(
            folder / f"authority-until-{datetime.datetime.now(datetime.UTC):%Y%m%dT%H%M%S}.pem"
        )


def leaf(folder: Path, names: Sequence[str], now: datetime.datetime) -> Path:
    """The file of this machine's certificate and key; made anew where it ends soon, lacks a name, has another issuer.

    Raises Unreadable, and Outside for a name that the authority may not sign for.
    """
    file, (issuer, signing) = folder / LEAF_FILE, _authority(folder)
    wanted = list(dict.fromkeys(general_name(one) for one in names))
    if _serves(file, issuer, names, now):
        return file
    for name in wanted:
        if not _may_sign(issuer, name):
            raise Outside(str(name.value))
    key = ec.generate_private_key(ec.SECP256R1())
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Amberbench")])
    ends = min(now + LEAF_LASTS - DAY, issuer.not_valid_after_utc)
    builder = _builder(subject, issuer.subject, key, now, ends - now + DAY)
    builder = builder.add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
    builder = builder.add_extension(_usage(signs_certificates=False), critical=True)
    builder = builder.add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
    builder = builder.add_extension(x509.SubjectAlternativeName(wanted), critical=False)
    issued_by = x509.AuthorityKeyIdentifier.from_issuer_public_key(signing.public_key())
    builder = builder.add_extension(issued_by, critical=False)
    _keep(file, builder.sign(signing, hashes.SHA256()), key)
    return file


def _authority(folder: Path) -> Signed:
    try:
        return _read(folder / AUTHORITY_FILE)
    except (OSError, ValueError) as error:
        raise Unreadable(str(folder / AUTHORITY_FILE)) from error


def _read(file: Path) -> Signed:
    pem = file.read_bytes()
    key = serialization.load_pem_private_key(pem, None)
    if not isinstance(key, ec.EllipticCurvePrivateKey):
        raise ValueError(file)
    return x509.load_pem_x509_certificate(pem), key


def _serves(file: Path, issuer: x509.Certificate, names: Sequence[str], now: datetime.datetime) -> bool:
    try:
        certificate, _ = _read(file)
        certificate.verify_directly_issued_by(issuer)
    except (OSError, ValueError, InvalidSignature):
        return False
    lasts = certificate.not_valid_before_utc <= now and now + RENEW_BEFORE < certificate.not_valid_after_utc
    return lasts and {str(general_name(one).value) for one in names} <= set(named_in(certificate))


def _builder(
    subject: x509.Name,
    issuer: x509.Name,
    key: ec.EllipticCurvePrivateKey,
    now: datetime.datetime,
    lasts: datetime.timedelta,
) -> x509.CertificateBuilder:
    """A certificate that holds from a day ago, for phones whose clock is behind."""
    return (
        x509.CertificateBuilder(issuer, subject, key.public_key(), x509.random_serial_number())
        .not_valid_before(now - DAY)
        .not_valid_after(now - DAY + lasts)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
    )


def _usage(signs_certificates: bool) -> x509.KeyUsage:
    return x509.KeyUsage(
        digital_signature=not signs_certificates,
        key_cert_sign=signs_certificates,
        crl_sign=signs_certificates,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        encipher_only=False,
        decipher_only=False,
    )


def _permitted(names: Sequence[str]) -> list[x509.GeneralName]:
    networks = [ipaddress.ip_network(one) for one in PRIVATE]
    permitted: list[x509.GeneralName] = [x509.IPAddress(one) for one in networks]
    for name in map(general_name, names):
        if isinstance(name, x509.DNSName):
            permitted.append(name)
        elif not any(name.value in network for network in networks):
            permitted.append(x509.IPAddress(ipaddress.ip_network(name.value)))
    return permitted


def _may_sign(issuer: x509.Certificate, name: x509.GeneralName) -> bool:
    try:
        constraints = issuer.extensions.get_extension_for_class(x509.NameConstraints).value
    except x509.ExtensionNotFound:
        return True
    permitted = [one.value for one in constraints.permitted_subtrees or []]
    if isinstance(name, x509.DNSName):
        return any(name.value == one or name.value.endswith(f".{one}") for one in permitted if isinstance(one, str))
    return any(name.value in one for one in permitted if not isinstance(one, str))


def _keep(file: Path, certificate: x509.Certificate, key: ec.EllipticCurvePrivateKey) -> None:
    """Writes both into one file that only its owner reads, whole or not at all."""
    plain, unlocked = serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    written = file.with_suffix(".new")
    written.unlink(missing_ok=True)
    with open(os.open(written, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as opened:
        opened.write(certificate.public_bytes(serialization.Encoding.PEM))
        opened.write(key.private_bytes(serialization.Encoding.PEM, plain, unlocked))
        opened.flush()
        os.fsync(opened.fileno())
    written.replace(file)
