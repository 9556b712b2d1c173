"""A shop that lets only paired phones in: the owner's by the printed link, a second by digits; revoked, it works on."""

import os
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, expect

from e2e.conftest import PHONE
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent


class GuardedServer(Server):
    """One that lets only paired phones in."""

    def begin(self) -> None:
        off = os.environ.pop("AMBERBENCH_SIGN_IN")
        try:
            super().begin()
        finally:
            os.environ["AMBERBENCH_SIGN_IN"] = off


@pytest.fixture
def server(tmp_path: Path) -> Iterator[Server]:
    with GuardedServer(tmp_path) as server:
        yield server


@pytest.fixture
def second_context(browser: Browser, server: Server) -> Iterator[BrowserContext]:
    context = browser.new_context(base_url=server.url, **PHONE)
    yield context
    context.close()


def test_second_phone_is_paired_works_is_revoked_and_works_on(
    server: Server, context: BrowserContext, second_context: BrowserContext
) -> None:
    link = re.search(r"http://\S+/pair#\S+", server.log.read_text())
    assert link
    owner = context.new_page()
    owner.goto(link[0])
    expect(owner.get_by_role("heading", name="This phone is paired")).to_be_visible()
    owner.goto("/settings")
    owner.get_by_label("Name of another phone").fill("By the microwave")
    owner.get_by_role("button", name="Show a code").tap()
    expect(owner.get_by_role("img", name="Code to be scanned")).to_be_visible()
    digits = re.search(r"\d{4} \d{4}", owner.get_by_text("Good until").inner_text())
    assert digits

    second = Phone(second_context.new_page())
    second.page.goto("/")
    expect(second.page.get_by_text("This phone is not paired")).to_be_visible()
    second.page.get_by_role("link", name="Pair this phone").tap()
    second.page.get_by_label("Eight digits").fill("1234 567")
    second.page.get_by_role("button", name="Pair this phone").tap()
    expect(second.page.get_by_text("The code has eight digits; 7 stand here.")).to_be_visible()
    second.page.get_by_label("Eight digits").fill("1234 5678")
    second.page.get_by_role("button", name="Pair this phone").tap()
    expect(second.page.get_by_text("This code is not known")).to_be_visible()
    second.page.get_by_label("Eight digits").fill(digits[0])
    second.page.get_by_role("button", name="Pair this phone").tap()
    expect(second.page.get_by_text("By the microwave")).to_be_visible()
    # The code is used up: it goes, and the phone stands in the list, with one time of day.
    expect(owner.get_by_role("img", name="Code to be scanned")).to_have_count(0)
    expect(owner.get_by_text(re.compile(r"^By the microwave last seen [^:]*\d+:\d+[^:]*$"))).to_be_visible()

    second.page.get_by_role("link", name="Bench").first.tap()
    second.page.get_by_text(re.compile("^Ready to work without a network")).wait_for()
    second.plans_and_starts()
    second.leaves_the_bench()
    all_sent(second)
    second.page.goto("/shop")
    expect(second.page.get_by_text("Only an owner's phone changes the shop")).to_be_visible()
    second.page.goto("/")
    owner.goto("/settings")
    owner.get_by_role("button", name="Let it in no more").tap()
    owner.get_by_role("button", name="Yes, let By the microwave in no more").tap()
    expect(owner.get_by_text("By the microwave")).to_have_count(0)

    second.returns_to("Squares")
    second.sets_up()
    second.leaves_the_bench()
    expect(second.page.get_by_text("This phone is not paired")).to_be_visible()
    expect(second.page.get_by_text(re.compile("still to be sent to the server"))).to_be_visible()
    second.page.goto("/settings")
    expect(second.page.get_by_text("This phone is not paired")).to_be_visible()
    expect(second.page.get_by_text("The server does not answer")).to_have_count(0)
    second.page.goto(pairing_link(server))
    expect(second.page.get_by_role("heading", name="This phone is paired")).to_be_visible()
    second.page.goto("/")
    all_sent(second)


def pairing_link(server: Server) -> str:
    """Of `amberbench pair`, asked beside the running server."""
    command = [sys.executable, "-m", "amberbench", "pair", "--name", "Again", "--address", server.url, *server.keeps]
    said = subprocess.run(command, check=True, capture_output=True, text=True, timeout=30).stdout
    link = re.search(r"http://\S+/pair#\S+", said)
    assert link, said
    return link[0]
