"""HTTPS for the stories: a server with the shop's own authority, and profiles of browsers that trust it."""

import os
import shutil
import ssl
import subprocess
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, BrowserType

from amberbench.lan import names
from e2e import chromium, debian, firefox
from e2e.server import Server, free_port

# Not loopback: a browser makes no exception for it.
ADDRESS = names.of_this_machine()[0]


class HttpsServer(Server):
    """`amberbench serve --lan`; or, with a file, with the certificate in it, at the same address."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder)
        self.url = f"https://{ADDRESS}:{self.port}"
        self.page = free_port()
        self.data = folder / "data"
        self.with_own_authority()

    def with_own_authority(self) -> None:
        self.arguments = [
            "serve",
            "--without-trade",
            "--lan",
            "--port",
            str(self.port),
            "--page-port",
            str(self.page),
            *self.keeps,
        ]

    def with_certificate(self, file: Path) -> None:
        given = ["--host", ADDRESS, "--cert", str(file), "--key", str(file)]
        self.arguments = ["serve", "--without-trade", "--port", str(self.port), *given, *self.keeps]

    def answers(self) -> bool:
        unchecked = ssl.create_default_context()
        unchecked.check_hostname, unchecked.verify_mode = False, ssl.CERT_NONE
        try:
            with urllib.request.urlopen(f"{self.url}/api/health", timeout=2, context=unchecked) as answer:
                return bool(answer.status == 200)
        except OSError:
            return False


def certutil() -> str:
    """NSS's tool: profiles of browsers take an authority by it. Debian's is installed where we are root."""
    if not shutil.which("certutil") and debian.can_install():
        debian.install("libnss3-tools")
    found = shutil.which("certutil")
    assert found, "certutil is missing: install libnss3-tools (Debian), nss-tools (Fedora) or nss (Homebrew)"
    return found


class Profile:
    """A fresh home with the profile of a Chromium or a Firefox in it."""

    def __init__(self, kind: BrowserType, path: str, home: Path, options: dict[str, Any]) -> None:
        self.kind, self.path, self.home, self.options = kind, path, home, options
        self.is_firefox = kind.name == "firefox"
        # Firefox has a store of its own in each profile; Chromium reads the one at home.
        self.nss = home / ("profile" if self.is_firefox else ".pki/nssdb")

    def trusts(self, authority: Path) -> None:
        """What a hand does on a phone by its settings."""
        at = ["-d", f"sql:{self.nss}"]
        if not (self.nss / "cert9.db").exists():
            self.nss.mkdir(parents=True, exist_ok=True)
            subprocess.run([certutil(), "-N", *at, "--empty-password"], check=True, timeout=60)
        subprocess.run([certutil(), "-A", *at, "-n", "shop", "-t", "C,,", "-i", str(authority)], check=True, timeout=60)

    @contextmanager
    def opened(self, all_names_at: str | None = None) -> Iterator[BrowserContext]:
        """The browser; all_names_at: an address that stands for the name of every machine."""
        how: dict[str, Any] = {"env": {**os.environ, "HOME": str(self.home)}}
        if self.is_firefox:
            how |= firefox.LAUNCH
            how["firefox_user_prefs"] = {"network.dns.forceResolve": all_names_at} if all_names_at else {}
        else:
            rules = [f"--host-resolver-rules=MAP *.example {all_names_at}"] if all_names_at else []
            how["args"] = [*chromium.FLAGS, *rules]
        context = self.kind.launch_persistent_context(
            self.home / "profile", executable_path=self.path, **how, **self.options
        )
        yield context
        context.close()
