"""What every story has: a server of its own, a phone-sized Chromium, a page of the bench."""

import os
import signal
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Error, Playwright

from e2e import chromium
from e2e.phone import Phone
from e2e.server import ForkedServer, Server

VIEWPORT = {"width": 390, "height": 844}
PHONE: dict[str, Any] = {
    "viewport": VIEWPORT,
    "device_scale_factor": 2,
    "has_touch": True,
    "is_mobile": True,
    "locale": "en-GB",
    "timezone_id": "UTC",
    "color_scheme": "dark",
    "permissions": ["screen-wake-lock"],
}


@pytest.fixture(scope="session")
def chromium_path() -> str:
    path = chromium.find()
    assert path, "no Chromium: run `python e2e/chromium.py`"
    return path


@pytest.fixture(scope="session")
def browser_type_launch_args(chromium_path: str) -> dict[str, Any]:
    return {"executable_path": chromium_path, "args": chromium.FLAGS}


@pytest.fixture(scope="session")
def next_server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Callable[[], Server]]:
    """Hands out servers; the next one starts while a story is told with this one."""
    begun: list[Server] = []

    def take() -> Server:
        for _ in range(2 - len(begun)):
            begun.append(ForkedServer(tmp_path_factory.mktemp("server")))
            begun[-1].begin()
        server = begun.pop(0)
        server.wait()
        return server

    yield take
    for server in begun:
        server.kill()


@pytest.fixture
def server(next_server: Callable[[], Server]) -> Iterator[Server]:
    server = next_server()
    yield server
    server.kill()


@pytest.fixture
def context(browser: Browser, server: Server) -> Iterator[BrowserContext]:
    context = browser.new_context(base_url=server.url, **PHONE)
    yield context
    context.close()


@pytest.fixture
def phone(context: BrowserContext) -> Phone:
    """A phone that has opened the app once and has everything it needs without a network."""
    phone = Phone(context.new_page())
    phone.installs()
    return phone


@pytest.fixture
def other(browser: Browser, server: Server, phone: Phone) -> Iterator[Phone]:
    """A second phone in the same shop, that has opened the app after the first."""
    context = browser.new_context(base_url=server.url, **PHONE)
    other = Phone(context.new_page())
    other.installs()
    yield other
    context.close()


@pytest.fixture
def killable(playwright: Playwright, chromium_path: str, server: Server, tmp_path: Path) -> Iterator["KillableBrowser"]:
    browser = KillableBrowser(playwright, chromium_path, tmp_path / "profile", server.url)
    yield browser
    browser.close()


class KillableBrowser:
    """A browser whose profile stays on the disk when its process is killed."""

    def __init__(self, playwright: Playwright, path: str, profile: Path, url: str) -> None:
        self.playwright, self.path, self.profile, self.url = playwright, path, profile, url
        self.context: BrowserContext | None = None

    def opens(self, later_ms: int = 0) -> Phone:
        """Opens the app's browser again, with the phone's clock so much later (or earlier) than the real one."""
        self.context = self.playwright.chromium.launch_persistent_context(
            self.profile, executable_path=self.path, args=chromium.FLAGS, base_url=self.url, **PHONE
        )
        page = self.context.pages[0]
        phone = Phone(page, fake_clock=False)
        phone.fake_clock = True
        page.clock.install(time=(time.time() * 1000 + later_ms) / 1000)
        return phone

    def is_killed(self) -> None:
        """SIGKILL for every process of this profile, as a flat battery would."""
        for process in Path("/proc").glob("[0-9]*"):
            try:
                words = (process / "cmdline").read_bytes()
            except OSError:
                continue
            if str(self.profile).encode() in words:
                os.kill(int(process.name), signal.SIGKILL)
        self.close()

    def close(self) -> None:
        if self.context is not None:
            with suppress(Error):  # a killed browser cannot be closed again
                self.context.close()
            self.context = None
