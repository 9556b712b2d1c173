"""A phone-sized Chromium, and its CPU slowed by the developer tools."""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, CDPSession, Page, sync_playwright

from e2e import chromium
from e2e.conftest import PHONE
from e2e.phone import Phone
from e2e.server import Server

RATE = 4
"""How much slower than this machine the phone is taken to be."""

SLOW = "Emulation.setCPUThrottlingRate"

LOOP_STEPS_JS = 10_000_000
TIME_LOOP_JS = f"""() => {{
    const started = performance.now();
    let x = 1.0;
    for (let i = 0; i < {LOOP_STEPS_JS}; i++) x = x * 1.0000001 + 1e-9;
    globalThis.amberbenchMeasured = x;
    return performance.now() - started;
}}"""
"""The same loop in a page, in JavaScript; returns ms."""


@contextmanager
def opened(profile: Path, url: str, **options: Any) -> Iterator[BrowserContext]:
    """A browser with its profile on the disk: what was stored is there when it is opened again."""
    path = chromium.find()
    if path is None:
        raise RuntimeError("no Chromium: run `python -m e2e.chromium`")
    with sync_playwright() as playwright:
        context = playwright.chromium.launch_persistent_context(
            profile, executable_path=path, args=chromium.FLAGS, base_url=url, **PHONE | options
        )
        try:
            yield context
        finally:
            context.close()


@contextmanager
def installed(folder: Path, server: Server) -> Iterator[Page]:
    """The page of a phone that has everything it needs of a server; its profile lies in the folder."""
    with opened(folder / "profile", server.url) as context:
        page = context.pages[0]
        Phone(page, fake_clock=False).installs()
        yield page


def slow_page(page: Page, rate: float = RATE) -> CDPSession:
    """Slows the page's main thread; the session must be kept for as long as that should last."""
    session = page.context.new_cdp_session(page)
    session.send(SLOW, {"rate": rate})
    return session


def ask_workers(page: Page, method: str, params: dict[str, Any]) -> list[str]:
    """Sends a command to the sessions of the page's workers; what they answered, as JSON texts."""
    session = page.context.new_cdp_session(page)
    attached: list[str] = []
    answers: list[str] = []
    session.on("Target.attachedToTarget", lambda event: attached.append(event["sessionId"]))
    session.on("Target.receivedMessageFromTarget", lambda event: answers.append(event["message"]))
    session.send("Target.setAutoAttach", {"autoAttach": True, "waitForDebuggerOnStart": False, "flatten": False})
    message = json.dumps({"id": 1, "method": method, "params": params})
    for target in attached:
        session.send("Target.sendMessageToTarget", {"sessionId": target, "message": message})
    page.wait_for_timeout(300)
    return [answer for answer in answers if json.loads(answer).get("id") == 1]
