"""The shop's authority and the certificates it signs, judged by OpenSSL and by the verifier of `cryptography`."""

import datetime
import ipaddress
import os
import ssl
import stat
import subprocess

import pytest
from cryptography import x509
from cryptography.x509.oid import ExtendedKeyUsageOID

from amberbench.lan import Certificate, NoName, Outside, OwnCertificate, Unreadable, authority, discard_authority
from amberbench.lan.authority import AUTHORITY_FILE, LEAF_FILE

NAMES = ["192.168.4.20", "shop.home.arpa", "203.0.113.7"]
DAY = datetime.timedelta(days=1)
NOW = datetime.datetime(2026, 3, 1, 12, tzinfo=datetime.UTC)


@pytest.fixture
def folder(tmp_path):
    authority.authority(tmp_path / "own", NAMES, True, NOW)
    return tmp_path / "own"


def read(file):
    return x509.load_pem_x509_certificate(file.read_bytes())


def names(certificate):
    found = certificate.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    return {str(one.value) for one in found}


def test_leaf_is_what_phones_ask_for(folder):
    leaf = read(authority.leaf(folder, NAMES, NOW))
    assert leaf.not_valid_after_utc - leaf.not_valid_before_utc <= 397 * DAY
    assert leaf.not_valid_before_utc == NOW - DAY
    assert names(leaf) == set(NAMES)
    usage = leaf.extensions.get_extension_for_class(x509.ExtendedKeyUsage).value
    assert list(usage) == [ExtendedKeyUsageOID.SERVER_AUTH]
    root = read(folder / AUTHORITY_FILE)
    assert root.subject.rfc4514_string().startswith("CN=Amberbench ")
    assert root.extensions.get_extension_for_class(x509.BasicConstraints).value == x509.BasicConstraints(True, 0)
    assert root.extensions.get_extension_for_class(x509.NameConstraints).critical


def test_keys_are_for_their_owner_alone(folder):
    old = os.umask(0)
    try:
        authority.leaf(folder, NAMES, NOW)
    finally:
        os.umask(old)
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert {stat.S_IMODE(one.stat().st_mode) for one in folder.iterdir()} == {0o600}
    assert {one.name for one in folder.iterdir()} == {AUTHORITY_FILE, LEAF_FILE}


@pytest.mark.parametrize(
    ("name", "accepted"),
    [
        *((one, True) for one in ("192.168.4.20", "shop.home.arpa", "203.0.113.7", "192.168.77.1")),
        *((one, False) for one in ("198.51.100.1", "example.org", "other.home.arpa")),
    ],
)
def test_openssl_takes_nothing_outside_the_constraints(folder, tmp_path, monkeypatch, name, accepted):
    if not accepted:
        with pytest.raises(Outside, match=name):
            authority.leaf(folder, [name], NOW)
    # Signed all the same, as by somebody who took the key.
    monkeypatch.setattr(authority, "_may_sign", lambda *_: True)
    leaf = authority.leaf(folder, [name], NOW)
    command = ["openssl", "verify", "-attime", str(int(NOW.timestamp())), "-CAfile", folder / AUTHORITY_FILE, leaf]
    verified = subprocess.run(command, capture_output=True, text=True, timeout=20, check=False)
    assert (verified.returncode == 0) is accepted, verified.stderr
    assert accepted or "permitted subtree violation" in verified.stderr


def test_authority_without_constraints_signs_for_any_name(tmp_path):
    authority.authority(tmp_path, [], False, NOW)
    assert names(read(authority.leaf(tmp_path, ["example.org", "198.51.100.1"], NOW))) == {
        "example.org",
        "198.51.100.1",
    }


@pytest.mark.parametrize(
    ("later", "wanted", "renewed"),
    [
        *(
            (days * DAY, NAMES, renewed)
            for days, renewed in ((0, False), (300, False), (340, True), (500, True), (-3, True))
        ),
        (0 * DAY, ["192.168.4.21"], True),
        (0 * DAY, NAMES[:1], False),
    ],
)
def test_leaf_is_renewed_when_it_ends_soon_or_lacks_a_name(folder, later, wanted, renewed):
    before = authority.leaf(folder, NAMES, NOW).read_bytes()
    assert (authority.leaf(folder, wanted, NOW + later).read_bytes() != before) is renewed


def test_leaf_of_another_authority_or_a_torn_one_is_made_anew(folder):
    before = authority.leaf(folder, NAMES, NOW).read_bytes()
    (folder / LEAF_FILE).write_bytes(before[:300])
    again = authority.leaf(folder, NAMES, NOW).read_bytes()
    assert again != before
    discard_authority(folder)
    authority.authority(folder, NAMES, True, NOW)
    assert authority.leaf(folder, NAMES, NOW).read_bytes() != again
    assert len(list(folder.glob("authority-until-*.pem"))) == 1


def test_authority_stays_and_a_damaged_one_is_never_replaced_in_silence(folder):
    before = (folder / AUTHORITY_FILE).read_bytes()
    authority.authority(folder, ["10.0.0.1"], False, NOW)
    assert (folder / AUTHORITY_FILE).read_bytes() == before
    (folder / AUTHORITY_FILE).write_bytes(before[:400])
    with pytest.raises(Unreadable):
        authority.authority(folder, NAMES, True, NOW)
    assert (folder / AUTHORITY_FILE).read_bytes() == before[:400]


@pytest.mark.parametrize("name", ["a b", "", "shop_1", "-x", "a..b", "*.example.org", "300.1.1.1", "a" * 64])
def test_what_is_no_name_is_refused(folder, name):
    with pytest.raises(NoName):
        authority.leaf(folder, [name], NOW)


def test_new_address_and_new_leaf_are_taken_while_it_is_served(tmp_path):
    wanted = ["192.168.4.20"]
    own = OwnCertificate(tmp_path, lambda: wanted, True)
    assert own.is_new
    assert own.days_left() == 395
    listed = own.names
    wanted.append("192.168.9.9")
    own.look_again()
    assert "192.168.9.9" in listed
    assert {ipaddress.ip_address(one) for one in ("192.168.4.20", "127.0.0.1", "::1")} <= {
        ipaddress.ip_address(one) for one in own.names if one != "localhost"
    }
    assert not OwnCertificate(tmp_path, lambda: wanted, True).is_new


def test_certificate_of_two_files_is_read_again_when_its_owner_replaces_it(tmp_path, folder):
    cert = key = tmp_path / "given.pem"
    cert.write_bytes(authority.leaf(folder, NAMES, NOW).read_bytes())
    given = Certificate(cert, key)
    before = given.until_ms()
    cert.write_bytes(authority.leaf(folder, NAMES, NOW + 340 * DAY).read_bytes())
    given.look_again()
    assert given.until_ms() - before == 340 * DAY / datetime.timedelta(milliseconds=1)
    cert.write_text("torn")
    with pytest.raises(ssl.SSLError):
        given.look_again()
    assert given.days_left() is not None
