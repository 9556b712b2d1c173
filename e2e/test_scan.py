"""The camera reads a code: it fills the form of a delivery, leads to a trace, and goes on without a network."""

from collections.abc import Iterator
from pathlib import Path

import pytest
import segno
from playwright.sync_api import BrowserType, Page, expect

from e2e import chromium
from e2e.conftest import PHONE
from e2e.phone import Phone
from e2e.server import Server

WIDE, HIGH, MODULE = 640, 480, 8


def film(code: str, file: Path) -> None:
    """One picture of a code, black on white, as a film (YUV4MPEG2, from memory)."""
    rows = [list(row) for row in segno.make(code, error="m", micro=False).matrix]
    left, top = (WIDE - MODULE * len(rows)) // 2, (HIGH - MODULE * len(rows)) // 2
    light = [bytearray(b"\xeb" * WIDE) for _ in range(HIGH)]
    for y, row in enumerate(rows):
        for x, dark in enumerate(row):
            for line in range(MODULE) if dark else ():
                at = left + x * MODULE
                light[top + y * MODULE + line][at : at + MODULE] = b"\x10" * MODULE
    colour = b"\x80" * (WIDE * HIGH // 2)
    file.write_bytes(f"YUV4MPEG2 W{WIDE} H{HIGH} F10:1 C420\nFRAME\n".encode() + b"".join(light) + colour)


@pytest.fixture
def seen(browser_type: BrowserType, server: Server, tmp_path: Path) -> Iterator[Page]:
    """A phone whose camera sees a code of GS1: lot 118, best before the last of March 2027."""
    film("01095060001343521527033110118", tmp_path / "code.y4m")
    looks = ["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"]
    looks.append(f"--use-file-for-fake-video-capture={tmp_path / 'code.y4m'}")
    browser = browser_type.launch(executable_path=chromium.find(), args=chromium.FLAGS + looks)
    context = browser.new_context(base_url=server.url, **PHONE | {"permissions": ["camera"]})
    yield context.new_page()
    browser.close()


def test_a_scanned_code_fills_a_delivery_and_finds_it_again_without_a_network(seen: Page):
    phone = Phone(seen, fake_clock=False)
    phone.installs()
    files = seen.evaluate("async () => (await Promise.all((await caches.keys()).map(async (name) => "
                          "(await (await caches.open(name)).keys()).map(({ url }) => url)))).flat()")  # fmt: skip
    assert not [file for file in files if "/scan-" in file], "what reads codes must not burden a first visit"
    seen.goto("/stock/new")
    seen.get_by_role("button", name="Firm caramel", exact=True).tap()
    seen.get_by_role("button", name="Scan a code").tap()
    expect(seen.get_by_label("Lot on the label")).to_have_value("118", timeout=30_000)
    expect(seen.get_by_label("Best by")).to_have_value("2027-03-31")
    seen.get_by_role("button", name="Keep the delivery").tap()
    seen.get_by_role("button", name="Yes, keep it so").tap()
    expect(seen.get_by_role("heading", level=1, name="lot 118")).to_be_visible()
    phone.loses_the_network()
    seen.goto("/batches")
    seen.get_by_role("button", name="Scan a code").tap()
    seen.wait_for_url("**/trace/lot/*", timeout=30_000)
