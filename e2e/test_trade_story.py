"""A delivery and an order off line, on a phone; both reach the server once, and a second phone hands over."""

from typing import Any

from playwright.sync_api import expect

from e2e import axe
from e2e.cautions import caution_faults
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent


def listed(server: Server, place: str) -> list[dict[str, Any]]:
    documents: list[dict[str, Any]] = server.asks(f"/api/{place}")["documents"]
    return documents


def button(phone: Phone, name: str) -> None:
    phone.page.get_by_role("button", name=name, exact=True).tap()
    phone.passes(100)


def writes_a_delivery(phone: Phone) -> None:
    phone.page.get_by_role("link", name="Stock", exact=True).tap()
    expect(phone.page.get_by_text("Nothing is written down yet.")).to_be_visible()
    phone.page.get_by_role("link", name="A delivery came").tap()
    button(phone, "Firm caramel")
    for _ in range(3):
        button(phone, "One more: Packs")
    phone.page.get_by_label("Lot on the label").fill("118")
    phone.page.get_by_label("Best by").fill("2027-09-30")
    phone.page.get_by_label("Price of all").fill("64.80")
    button(phone, "Keep the delivery")
    expect(phone.page.get_by_role("heading", level=1, name="Firm caramel, lot 118")).to_be_visible()


def takes_an_order(phone: Phone) -> None:
    """The customer's name, then five taps, of six that it may take: day, hour, box, how many, place."""
    phone.page.get_by_role("link", name="New order").tap()
    phone.page.get_by_label("Customer").fill("Corner bakery")
    hour = phone.page.get_by_role("button", name="3:00 pm").or_(phone.page.get_by_role("button", name="15:00"))
    taps = [
        phone.page.get_by_role("group", name="Day").get_by_role("button").nth(4),
        hour.first,
        phone.page.get_by_role("button", name="Box of 9 salted squares", exact=True),
        phone.page.get_by_role("button", name="40", exact=True),
        phone.page.get_by_role("button", name="Place the order", exact=True),
    ]
    assert len(taps) <= 6
    for one in taps:
        one.tap()
        phone.passes(100)
    expect(phone.page.get_by_role("link", name="Corner bakery")).to_contain_text("40 × Box of 9 salted squares")


def weighs_in_of_the_lot(phone: Phone) -> str:
    """A batch takes of the delivery with one tap on its lot; the batch's id."""
    batch_id = phone.plans_and_starts()
    phone.taps()
    expect(phone.page.get_by_role("heading", name="Which lots go in?")).to_be_visible()
    assert list(caution_faults(phone)) == []
    assert axe.faults(phone.page, at_the_bench=True) == []
    phone.page.get_by_role("button", name="Firm caramel, lot 118").tap()
    phone.opens("Take these")
    phone.types("1.8")
    phone.is_at("burst")
    (weighed,) = phone.facts_of("weighed")
    assert weighed["body"]["lot"] == "118"
    assert [one["amount"] for one in weighed["body"]["lots"]] == [1.8]
    return batch_id


def test_delivery_and_order_off_line_reach_the_server_once_and_are_handed_over(phone: Phone, server: Server):
    phone.loses_the_network()
    writes_a_delivery(phone)
    phone.page.get_by_role("link", name="Back").tap()
    expect(phone.page.get_by_role("link", name="Firm caramel, lot 118")).to_contain_text("9.6")
    phone.opens_place("Bench")
    batch_id = weighs_in_of_the_lot(phone)
    phone.page.goto("/stock")
    expect(phone.page.get_by_role("link", name="Firm caramel, lot 118")).to_contain_text("7.8")
    phone.opens_place("Bench")
    phone.page.get_by_role("link", name="Orders", exact=True).tap()
    takes_an_order(phone)
    assert axe.faults(phone.page, at_the_bench=False) == []
    assert (listed(server, "lots"), listed(server, "orders")) == ([], [])
    phone.finds_the_network()
    all_sent(phone)
    (lot,) = listed(server, "lots")
    assert (lot["supplier_lot"], lot["amount"], lot["price_minor"], lot["best_by"]) == ("118", 9.6, 6480, "2027-09-30")
    batches = {one["batch_id"]: one for one in server.asks("/api/batches")["batches"]}
    assert [(one["lot_id"], one["amount"]) for one in batches[batch_id]["label"]["uses"]] == [(lot["id"], 1.8)]
    (order,) = listed(server, "orders")
    assert (order["customer"], order["customer_id"], order["state"]) == ("Corner bakery", "bakery", "open")
    # Forty boxes at nine euros.
    assert order["price_minor"] == 36_000
    phone.page.get_by_role("link", name="Corner bakery").tap()
    button(phone, "Hand over")
    expect(phone.page.get_by_text("Handed over: 40")).to_be_visible()
    all_sent(phone)
    assert listed(server, "orders")[0]["state"] == "handed"
    assert phone.errors == []
