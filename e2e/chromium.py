"""Finds a Chromium for the tests, or installs one: Debian's where we are root, Playwright's own elsewhere."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from e2e import debian

# The headless shell first: the same engine without a browser's own windows, a fifth less work for each story.
NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
# Debian's Chromium started by root needs no-sandbox; the others keep it from calling out.
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
LAUNCH = {"args": FLAGS}

# Every Chromium started from here draws with the same letters.
os.environ.setdefault("FONTCONFIG_FILE", str(Path(__file__).with_name("fonts.conf")))


def find() -> str | None:
    """The path of an installed Chromium, or None: `AMBERBENCH_CHROMIUM` first, then PATH, then Playwright's."""
    named = os.environ.get("AMBERBENCH_CHROMIUM")
    if named:
        return named
    for name in NAMES:
        if found := shutil.which(name):
            return found
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        own = playwright.chromium.executable_path
    return own if Path(own).exists() else None


def install() -> None:
    """Installs a Chromium by the means this machine allows."""
    if debian.can_install():
        # Older Debians have no shell of its own.
        debian.install("chromium-headless-shell", "chromium", recommended=True)
    else:
        subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], check=True)


if __name__ == "__main__":
    if find() is None:
        install()
    path = find()
    print(f"Chromium: {path}" if path else "No Chromium could be found or installed: the e2e stories cannot run.")
    sys.exit(0 if path else 1)
