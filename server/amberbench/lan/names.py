"""By which names and addresses phones reach this machine."""

import ipaddress
import re
import socket
from contextlib import suppress

from cryptography import x509

LOOPBACK = ("localhost", "127.0.0.1", "::1")
LABEL = "[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?"
# The last part is no number: 300.1.1.1 is a slip in an address.
A_NAME = re.compile(rf"(?=.{{1,253}}$)({LABEL}\.)*(?!\d+$){LABEL}")


class NoName(Exception):
    """Neither an address nor the name of a machine."""


def of_this_machine() -> list[str]:
    """The address the network reaches it at first, then its others and its names."""
    addresses = []
    with suppress(OSError), socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        probe.connect(("192.0.2.1", 9))  # Sends nothing: it only asks which of its addresses would be used.
        addresses.append(probe.getsockname()[0])
    name = socket.gethostname().lower()
    with suppress(OSError):
        addresses += socket.gethostbyname_ex(name)[2]
    reached = [one for one in addresses if not ipaddress.ip_address(one).is_loopback]
    names = [name, *([] if "." in name else [f"{name}.local"])]
    return list(dict.fromkeys([*reached, *(one for one in names if A_NAME.fullmatch(one))]))


def general_name(name: str) -> x509.GeneralName:
    """An address, or the name of a machine, as certificates hold it. Raises NoName for what is neither."""
    with suppress(ValueError):
        return x509.IPAddress(ipaddress.ip_address(name))
    if not A_NAME.fullmatch(name.lower()):
        raise NoName(name)
    return x509.DNSName(name.lower())


def named_in(certificate: x509.Certificate) -> list[str]:
    """Every name and address of a certificate."""
    with suppress(x509.ExtensionNotFound):
        found = certificate.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
        return [str(one.value) for one in found if isinstance(one, x509.DNSName | x509.IPAddress)]
    return []
