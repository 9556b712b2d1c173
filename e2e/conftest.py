"""What every story has: a server of its own, a phone-sized Chromium, a page of the bench."""

import os
import signal
import time
from collections.abc import Callable, Iterator
from contextlib import nullcontext, suppress
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, BrowserType, Error

from e2e import chromium, firefox
from e2e.phone import Phone
from e2e.server import ForkedServer, Server

VIEWPORT = {"width": 390, "height": 844}
PHONE: dict[str, Any] = {
    "viewport": VIEWPORT,
    # Sizes are measured in CSS pixels; a screen as fine as a phone's takes a fifth more work to draw.
    "device_scale_factor": 1,
    "has_touch": True,
    "is_mobile": True,
    "locale": "en-GB",
    "timezone_id": "UTC",
    "color_scheme": "dark",
    "permissions": ["screen-wake-lock"],
}


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Beside Chromium a few stories are told in Firefox too; where it is named alone, all that can be."""
    alone = config.option.browser == ["firefox"]
    left = []
    for item in items:
        params = item.callspec.params if hasattr(item, "callspec") else {}
        in_firefox = params.get("browser_name") == "firefox"
        if (alone and not in_firefox) or (in_firefox and not alone and not item.get_closest_marker("firefox_too")):
            left.append(item)
        elif in_firefox and (why := firefox.why_not(item)):
            item.add_marker(pytest.mark.skip(reason=why))
    items[:] = [item for item in items if item not in left]
    config.hook.pytest_deselected(items=left)


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_name: str) -> dict[str, Any]:
    found = {"chromium": chromium, "firefox": firefox}[browser_name]
    path = found.find()
    assert path, f"no {browser_name}: run `python -m {found.__name__}`"
    return {"executable_path": path, **found.LAUNCH}


@pytest.fixture(scope="session")
def browser_type(browser_type: BrowserType, browser_name: str) -> Iterator[BrowserType]:
    with firefox.pressed_by_a_mouse() if browser_name == "firefox" else nullcontext():
        yield browser_type


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
def killable(
    browser_type: BrowserType, browser_type_launch_args: dict[str, Any], server: Server, tmp_path: Path
) -> Iterator["KillableBrowser"]:
    browser = KillableBrowser(browser_type, browser_type_launch_args, tmp_path / "profile", server.url)
    yield browser
    browser.close()


class KillableBrowser:
    """A browser whose profile stays on the disk when its process is killed."""

    def __init__(self, kind: BrowserType, launch: dict[str, Any], profile: Path, url: str) -> None:
        self.kind, self.launch, self.profile, self.url = kind, launch, profile, url
        self.context: BrowserContext | None = None

    def opens(self, later_ms: int = 0) -> Phone:
        """Opens the app's browser again, with the phone's clock so much later (or earlier) than the real one."""
        self.context = self.kind.launch_persistent_context(self.profile, base_url=self.url, **self.launch, **PHONE)
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
