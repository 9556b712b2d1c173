"""WebKitGTK by plain WebDriver (W3C, "WebDriver" level 2), with a profile that stays, on a screen that nobody sees."""

import json
import os
import shutil
import signal
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from e2e import debian
from e2e.server import PATIENCE_S, free_port

PROGRAMS = {"WebKitWebDriver": "webkit2gtk-driver", "xvfb-run": "xvfb", "xauth": "xauth"}
# What Debian's Python needs for our shell.
BINDINGS = {
    "python3-gi": "usr/lib/python3/dist-packages/gi",
    "gir1.2-webkit2-4.1": "usr/lib/*/girepository-1.0/WebKit2-4.1*",
}
SHELL = Path(__file__).with_name("gtk_shell.py")
TRUSTED = Path("/etc/ssl/certs/ca-certificates.crt")
"""The authorities that WebKitGTK trusts: the system's."""


def missing() -> list[str]:
    """The Debian packages that are wanted and not installed."""
    absent = [package for program, package in PROGRAMS.items() if not shutil.which(program)]
    return absent + [package for package, files in BINDINGS.items() if not any(Path("/").glob(files))]


class Browser:
    """One session; elements are named by CSS selectors, buttons and links by how their words begin."""

    def __init__(self, driver: str, profile: Path) -> None:
        self.driver, self.session = driver, ""
        options = {"webkitgtk:browserOptions": {"binary": str(SHELL), "args": [str(profile)]}}
        self.session = "/session/" + self.asks("/session", {"capabilities": {"alwaysMatch": options}})["sessionId"]

    def asks(self, path: str, body: dict[str, Any] | None = None, method: str = "POST") -> Any:
        data = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self.driver + self.session + path, data, method=method)
        try:
            with urllib.request.urlopen(request, timeout=120) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as error:
            raise AssertionError(f"{path}: {error.read().decode()[:300]}") from error

    def opens(self, url: str) -> None:
        self.asks("/url", {"url": url})

    def reloads(self) -> None:
        self.asks("/refresh", {})

    def runs(self, script: str, *arguments: Any) -> Any:
        return self.asks("/execute/sync", {"script": script, "args": arguments})

    def waits_for(self, script: str, *arguments: Any, most_s: float = PATIENCE_S) -> Any:
        """What the script returns, once that is something."""
        deadline = time.monotonic() + most_s
        while time.monotonic() < deadline:
            if found := self.runs(script, *arguments):
                return found
            time.sleep(0.1)
        seen = self.runs("return document.body.innerText")
        raise AssertionError(f"in vain: {script} {arguments}\n{seen}")

    def presses(self, selector: str, words: str = "") -> None:
        """The first control shown that matches and whose words or label begin so."""
        element = self.waits_for(
            """return [...document.querySelectorAll(arguments[0])].find((one) => one.checkVisibility() &&
                one.ariaDisabled !== "true" && one.dataset.armed !== "false" &&
                (one.ariaLabel ?? one.innerText).trim().startsWith(arguments[1]))""",
            selector,
            words,
        )
        (name,) = element.values()
        self.asks(f"/element/{name}/click", {})

    def fills(self, selector: str, text: str) -> None:
        """Types over what stands there."""
        (name,) = self.waits_for("return document.querySelector(arguments[0])", selector).values()
        self.runs("document.querySelector(arguments[0]).select()", selector)
        self.asks(f"/element/{name}/value", {"text": text})


@contextmanager
def opened(profile: Path, instead: dict[Path, Path] | None = None) -> Iterator[Browser]:
    """A browser with the profile in a folder; instead: files that it finds in the place of the system's (as root)."""
    url = f"http://127.0.0.1:{(port := free_port())}"
    mounts = [f"mount --bind {file} {place}" for place, file in (instead or {}).items()]
    run = " && ".join([*mounts, f"exec xvfb-run -a WebKitWebDriver --port={port}"])
    alone = ["unshare", "--mount"] if mounts else []
    # A group of its own: the screen, the driver and its browser end together.
    driver = subprocess.Popen([*alone, "sh", "-c", run], start_new_session=True)
    try:
        browser = Browser(answering(url), profile)
        yield browser
        with suppress(AssertionError):  # it ends before it can answer
            browser.asks("/window", method="DELETE")
    finally:
        os.killpg(driver.pid, signal.SIGTERM)
        driver.wait(PATIENCE_S)


def answering(url: str) -> str:
    deadline = time.monotonic() + PATIENCE_S
    while time.monotonic() < deadline:
        with suppress(OSError), urllib.request.urlopen(f"{url}/status", timeout=2):
            return url
        time.sleep(0.1)
    raise RuntimeError("WebKit's driver does not answer")


if __name__ == "__main__":
    if debian.can_install():
        for package in missing():
            debian.install(package)
    print(f"WebKitGTK: missing {', '.join(missing())}" if missing() else "WebKitGTK: installed")
    sys.exit(1 if missing() else 0)
