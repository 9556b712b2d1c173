"""Pieces counted at the bench are packed, weighed, found again by three digits, traced, and one box is taken back."""

import re

from playwright.sync_api import expect

from e2e import axe
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, exchanges, send
from tests.bench import planned_slab
from tests.log import Phone as Writer

DELIVERY = {
    "material": "caramels/caramel-firm",
    "packs": 4,
    "pack_amount": 2.4,
    "supplier_lot": "A-117",
    "price_minor": 9600,
}


def button(phone: Phone, name: str) -> None:
    phone.page.get_by_role("button", name=name, exact=True).tap()
    phone.passes(100)


def said(phone: Phone, words: str) -> None:
    expect(phone.page.get_by_text(words).first).to_be_visible()


def cut_slab() -> tuple[str, list[dict[str, object]]]:
    """A slab of the shop's salted squares, counted elsewhere."""
    writer = Writer()
    plan = planned_slab() | {"product_id": "square-salted-20", "name": "Salted squares"}
    events = [
        one | {"body": one["body"] | ({"plan": plan} if "plan" in one["body"] else {})} for one in writer.whole_batch()
    ]
    for one in events:
        if one["kind"] == "counted":
            one["body"] = {"pieces": 174}
    delivery = Writer().event("received", **DELIVERY) | {"stream": "lot/l-117", "batch_id": None}
    return writer.batch_id, [*events, delivery]


def packs(phone: Phone) -> None:
    """19 of 20 boxes: there are pieces for no more, and the twentieth is asked about."""
    said(phone, "174 good: 19 × Box of 9 salted squares and 3 loose")
    phone.page.get_by_role("link", name="Pack boxes").tap()
    button(phone, "One more: How many boxes")
    button(phone, "They are packed")
    said(phone, "6 pieces more than are left")
    button(phone, "One less: How many boxes")
    # The slab was closed a year ago by the phone's clock: its best by is asked about too.
    button(phone, "They are packed")
    button(phone, "Yes, keep it so")
    expect(phone.page.get_by_role("heading", name="Net contents")).to_be_visible()


def weighs(phone: Phone) -> None:
    """With its box: 28 g and 66 g; a figure ten times off is asked again."""
    button(phone, "EU and UK")
    field = phone.page.get_by_label("On the scale, box and all", exact=True)
    field.fill("0.688 kg")
    button(phone, "Keep the weight")
    said(phone, "Is the unit right?")
    for count, kg in enumerate(("0.094", "0.095", "0.093"), 1):
        field.fill(f"{kg} kg")
        button(phone, "Keep the weight")
        said(phone, f"{count} weighed")
    said(phone, "above the label")
    said(phone, "A guide only: your local rules decide.")


def prices(phone: Phone) -> None:
    """The box gets the price that leaves two thirds of it, by what the batch cost."""
    phone.opens_place("Shop")
    phone.page.get_by_role("link", name="Boxes").tap()
    phone.page.get_by_role("link", name="Box of 9 salted squares").tap()
    phone.page.get_by_text("Cost, and price for a wanted margin").tap()
    said(phone, "A box costs")
    take = phone.page.get_by_role("button", name="as its price")
    of_sixty = take.text_content() or ""
    phone.page.get_by_label("Wanted margin (%)", exact=True).fill("67")
    expect(take).not_to_have_text(of_sixty)
    price = re.sub(r"[^\d.]", "", take.text_content() or "")
    assert axe.faults(phone.page, at_the_bench=False) == []
    take.tap()
    expect(phone.page.get_by_label("Price", exact=True)).to_have_value(price)
    said(phone, "it leaves")
    button(phone, "Keep")


def test_counted_pieces_are_packed_weighed_and_found_again_by_three_digits(phone: Phone, server: Server):
    batch_id, events = cut_slab()
    send(server, events)
    exchanges(phone)
    phone.opens_place("Records")
    phone.page.get_by_role("link", name="Salted squares").tap()
    phone.loses_the_network()
    packs(phone)
    assert axe.faults(phone.page, at_the_bench=False) == []
    weighs(phone)
    phone.opens_place("Records")
    phone.page.get_by_label("Search: lot, code, customer, name, day").fill("117")
    phone.page.get_by_role("link", name="Firm caramel, lot A-117").tap()
    said(phone, "By what this phone holds.")
    expect(phone.page.get_by_role("link", name="19 × Box of 9 salted squares")).to_be_visible()
    assert axe.faults(phone.page, at_the_bench=False) == []
    phone.page.get_by_role("link", name="Recall page").tap()
    said(phone, "packed 19, handed over 0, in hand 19")
    prices(phone)
    phone.finds_the_network()
    all_sent(phone)
    (pack,) = server.asks("/api/packs")["documents"]
    assert (pack["count"], pack["from"]) == (19, [{"batch_id": batch_id, "pieces": 171}])
    assert [round(one, 6) for one in pack["net_kg"]] == [0.066, 0.067, 0.065]
    assert server.asks("/api/trace?start=lot/l-117")["trace"]["forward"] == [f"batch/{batch_id}", f"pack/{pack['id']}"]
    assert phone.errors == []
