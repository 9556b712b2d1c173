"""Finds a Firefox for the stories, or installs Debian's where we are root. It is driven by WebDriver BiDi."""

import os
import shutil
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from types import SimpleNamespace
from typing import Any

import pytest
from playwright.sync_api import Locator, Page

from e2e import debian
from e2e.server import PATIENCE_S

DOWNLOADS = TemporaryDirectory(prefix="downloads")
# A phone's scroll bars lie over the page and take no width of it.
OVERLAID = {"widget.gtk.overlay-scrollbars.enabled": True, "ui.useOverlayScrollbars": 1}
LAUNCH = {"channel": "moz-firefox", "downloads_path": DOWNLOADS.name, "firefox_user_prefs": OVERLAID}

MUTE = "Firefox starts no audio on a machine without a sound card: no tone is heard, every tap has failed to start one"
# Stories that cannot be told in Firefox, and why.
FIRST_VISIT = "test_languages.py::test_a_first_visit_waits_for_the_texts_it_reads_and_stores_the_others_afterwards"
NOT_TOLD = {
    "test_languages.py::test_a_language_not_yet_on_the_phone": (
        "its driver takes the network from pages alone: the service worker goes on fetching"
    ),
    "test_scan.py": "its camera is a file, which Chromium alone takes for one",
    "test_our_mistakes.py": "its driver cannot run a script in a worker, where the mistake is planted",
    f"{FIRST_VISIT}[firefox-es": "the driver sets a language for pages alone; the service worker chooses the texts",
    "test_rings.py::test_it_rings_20_s_pauses": MUTE,
    "test_rings.py::test_too_hot_never_pauses": MUTE,
    "test_rings.py::test_a_clock_that_runs_unheard": MUTE,
    "test_rings.py::test_any_tap_lets_it_ring": MUTE,
    "test_rings.py::test_a_phone_that_does_not_stay_awake": MUTE + "; that trouble is told first",
}


def find() -> str | None:
    """The path of an installed Firefox, or None: `AMBERBENCH_FIREFOX` first, then PATH."""
    named = os.environ.get("AMBERBENCH_FIREFOX")
    return named or shutil.which("firefox-esr") or shutil.which("firefox")


def why_not(story: pytest.Item) -> str | None:
    """Why this story is not told in Firefox, if it is not."""
    return next((why for name, why in NOT_TOLD.items() if story.nodeid.startswith(f"e2e/{name}")), None)


@contextmanager
def pressed_by_a_mouse() -> Iterator[None]:
    """WebDriver BiDi's Firefox on a desk has no touch: every tap is a click at the same place."""

    def touchscreen(page: Page) -> Any:
        return SimpleNamespace(tap=page.mouse.click)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Locator, "tap", Locator.click)
        patch.setattr(Page, "touchscreen", property(touchscreen))
        patch.setattr(Page, "expect_download", saved_file)
        yield


@contextmanager
def saved_file(_: Page) -> Iterator[SimpleNamespace]:
    """In place of `expect_download`: Firefox gives a file that a page made no id, and the driver passes over it."""
    folder, waiting = Path(DOWNLOADS.name), SimpleNamespace()
    before, deadline = set(folder.iterdir()), time.monotonic() + PATIENCE_S
    yield waiting
    while not (made := [one for one in folder.iterdir() if one not in before and one.stat().st_size]):
        assert time.monotonic() < deadline, "nothing was saved"
        time.sleep(0.05)
    (file,) = made
    waiting.value = SimpleNamespace(path=lambda: file, save_as=partial(shutil.copy, file))


if __name__ == "__main__":
    if find() is None and debian.can_install():
        debian.install("firefox-esr", "firefox")
    path = find()
    print(f"Firefox: {path}" if path else "No Firefox could be found or installed: its e2e stories cannot run.")
    sys.exit(0 if path else 1)
