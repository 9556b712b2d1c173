"""Finds a Firefox for the stories, or installs Debian's where we are root. It is driven by WebDriver BiDi."""

import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from types import SimpleNamespace
from typing import Any

import pytest
from playwright.sync_api import Locator, Page

from e2e import debian

LAUNCH = {"channel": "moz-firefox"}

MUTE = "Firefox starts no audio on a machine without a sound card: no tone is heard, every tap has failed to start one"
PAGES = "the pages of a PDF are counted in its plain text, which Firefox compresses"
# Stories that cannot be told in Firefox, and why.
NOT_TOLD = {
    "test_https.py": "an authority is put into the profile by the store that Chromium alone reads",
    "test_rings.py::test_it_rings_20_s_pauses": MUTE,
    "test_rings.py::test_too_hot_never_pauses": MUTE,
    "test_rings.py::test_a_clock_that_runs_unheard": MUTE,
    "test_rings.py::test_any_tap_lets_it_ring": MUTE,
    "test_rings.py::test_a_phone_that_does_not_stay_awake": MUTE + "; that trouble is told first",
    "test_take_along.py::test_plan": PAGES,
    "test_take_along.py::test_sheet": PAGES,
    "test_take_along.py::test_a_very_long_record": PAGES,
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
        yield


if __name__ == "__main__":
    if find() is None and debian.can_install():
        debian.install("firefox-esr", "firefox")
    path = find()
    print(f"Firefox: {path}" if path else "No Firefox could be found or installed: its e2e stories cannot run.")
    sys.exit(0 if path else 1)
