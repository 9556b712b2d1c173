"""The README's first story in the invented shop: from the bakery's order to labelled boxes handed over."""

from collections.abc import Iterator
from pathlib import Path

import pypdfium2
import pytest
from playwright.sync_api import expect

from e2e import axe
from e2e.phone import Phone
from e2e.server import ForkedServer, Server
from e2e.sync_helpers import all_sent


@pytest.fixture
def server(tmp_path: Path) -> Iterator[Server]:
    """The invented shop as somebody finds it who has just started it: with its deliveries, boxes and orders."""
    server = ForkedServer(tmp_path)
    server.arguments.remove("--without-trade")
    with server:
        yield server


def said(phone: Phone, words: str) -> None:
    expect(phone.page.get_by_text(words).first).to_be_visible()


def button(phone: Phone, name: str) -> None:
    phone.page.get_by_role("button", name=name, exact=True).tap()
    phone.passes(100)


def takes_lots(phone: Phone, *names: str) -> None:
    expect(phone.page.get_by_role("heading", name="Which lots go in?")).to_be_visible()
    for name in names:
        phone.page.get_by_role("button", name=name).tap()
    phone.opens("Take these")


def looks_at_orders_and_plans_what_is_missing(phone: Phone) -> None:
    phone.page.goto("/orders")
    expect(phone.page.get_by_role("link", name="Corner bakery")).to_contain_text("20 × Box of 9 salted squares")
    expect(phone.page.get_by_role("link", name="Tea room")).to_be_visible()
    phone.page.get_by_role("link", name="Plan what is missing").tap()
    # 24 boxes of nine are wanted, six are packed.
    said(phone, "162 good pieces are missing")
    assert axe.faults(phone.page, at_the_bench=False) == []
    phone.page.get_by_role("button", name="Plan a batch of 162").tap()
    phone.answered()


def makes_them(phone: Phone) -> None:
    phone.start.tap()
    phone.is_at("set_up")
    phone.taps()
    takes_lots(phone, "Firm caramel, lot 117", "Firm caramel, lot 121")
    phone.types("2")
    phone.is_at("burst")
    phone.melts()
    phone.taps("Poured")
    phone.is_at("cool")
    phone.cools()
    for step in ("loosen", "prebottom", "flip", "score", "cut"):
        phone.is_at(step)
        phone.taps()
    phone.is_at("temper_check")
    phone.taps()
    takes_lots(phone, "Flaky sea salt, lot 7")
    phone.taps("Start")
    phone.taps("All dipped")
    phone.is_at("set")
    phone.taps("Set")
    phone.is_at("count")
    phone.types("170")
    phone.is_at("weigh_out")
    phone.types("0.1")
    phone.is_at("close")
    phone.taps()
    phone.is_at("closed")
    phone.page.get_by_role("button", name="See the record").tap()


def packs_and_weighs(phone: Phone) -> None:
    said(phone, "Chocolate, what lies under and salt count as planned")
    expect(phone.page.locator("li", has_text="Flaky sea salt:")).to_be_visible()
    phone.page.get_by_role("link", name="Pack boxes").tap()
    button(phone, "They are packed")
    expect(phone.page.get_by_role("heading", name="Net contents")).to_be_visible()
    field = phone.page.get_by_label("On the scale, box and all", exact=True)
    for count in range(1, 19):
        field.fill("0.094 kg")
        button(phone, "Keep the weight")
        said(phone, f"{count} weighed")
    said(phone, "In order")


def prints_labels(phone: Phone, folder: Path) -> None:
    phone.page.get_by_role("link", name="Print or share the labels").tap()
    for wanted in ("Say when it was made", "Print the ℮ mark"):
        phone.page.get_by_role("group", name=wanted).get_by_role("radio", name="yes", exact=True).check()
    preview = phone.page.locator(".label-preview")
    expect(preview).to_contain_text("Made on")
    expect(preview).to_contain_text("soya")
    # All eighteen were weighed and are in order: the mark stands there.
    expect(preview.locator("path")).to_have_count(1)
    phone.page.get_by_label("The line measures", exact=True).fill("60")
    with phone.page.expect_download() as waiting:
        phone.page.get_by_role("button", name="Print or share the labels").tap()
    waiting.value.save_as(folder / "labels.pdf")
    assert len(pypdfium2.PdfDocument(folder / "labels.pdf")) == 18
    expect(phone.page.get_by_text("18 labels were printed before.")).to_be_visible()


def hands_over(phone: Phone) -> None:
    phone.page.goto("/orders")
    phone.page.get_by_role("link", name="Corner bakery").tap()
    button(phone, "Hand over")
    # The oldest boxes go first: the six that were packed before.
    said(phone, "Handed over: 6 × Box of 9 salted squares")
    said(phone, "Handed over: 14 × Box of 9 salted squares")


def test_from_the_bakery_s_order_to_labelled_boxes_handed_over(phone: Phone, server: Server, tmp_path: Path):
    looks_at_orders_and_plans_what_is_missing(phone)
    phone.loses_the_network()
    makes_them(phone)
    packs_and_weighs(phone)
    prints_labels(phone, tmp_path)
    hands_over(phone)
    phone.finds_the_network()
    all_sent(phone)
    orders = {one["customer"]: one for one in server.asks("/api/orders")["documents"]}
    assert (orders["Corner bakery"]["state"], orders["Tea room"]["state"]) == ("handed", "open")
    packs = {one["printed"]: one for one in server.asks("/api/packs")["documents"]}
    assert (packs[18]["packed"], len(packs[18]["net_kg"])) == (18, 18)
    trace = server.asks("/api/trace?start=lot/invented-salt-7")["trace"]["forward"]
    assert f"pack/{packs[18]['id']}" in trace
    assert phone.errors == []
