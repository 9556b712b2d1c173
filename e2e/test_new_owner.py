"""What stopped a new owner who had only the README: each thing once, in the invented shop with its orders and stock."""

from playwright.sync_api import expect

from e2e.camera import snap
from e2e.phone import Phone
from e2e.test_people import chooses
from e2e.test_trade_story import button
from e2e.test_week_story import said, server  # noqa: F401


def says_how_the_shop_works(phone: Phone) -> None:
    phone.page.goto("/shop/shop")
    phone.page.get_by_text("Rules, an hour of work").tap()
    phone.page.get_by_label("Rules for labels and net contents", exact=True).select_option(label="European Union")
    phone.page.get_by_label("An hour of work costs", exact=True).fill("21.50")
    phone.page.get_by_label("Work ends at", exact=True).select_option(value="64800")
    phone.page.get_by_label("Saturday", exact=True).check()
    button(phone, "Keep")
    said(phone, "Changed ")
    phone.page.goto("/packs/invented-nine")
    said(phone, "The shop follows this rule.")


def sees_who_did_what(phone: Phone) -> None:
    """A label's photo outlasts a reload before the delivery is kept, and stands on the lot's page afterwards."""
    phone.page.goto("/stock/new")
    chooses(phone, "Who is at this phone?", "First worker")
    button(phone, "Firm caramel")
    phone.page.get_by_label("Lot on the label", exact=True).fill("L-9")
    photo = {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": snap(phone, 400, 300)}
    phone.page.locator("input[type=file][accept='image/*']").set_input_files(files=[photo])  # type: ignore[list-item]
    said(phone, "Kept until the delivery is.")
    phone.page.reload()
    expect(phone.page.get_by_role("img", name="The label of the pack")).to_be_visible()
    phone.page.get_by_label("Best by", exact=True).fill("2027-03-31")
    phone.page.get_by_label("Price of all", exact=True).fill("12")
    button(phone, "Keep the delivery")
    expect(phone.page.get_by_role("heading", level=1, name="Firm caramel, lot L-9")).to_be_visible()
    expect(phone.page.locator(".pane-one").get_by_text("Best by 31 Mar 2027")).to_be_visible()
    expect(phone.page.get_by_role("img", name="The label of the pack")).to_be_visible()
    phone.page.get_by_text("What happened", exact=True).tap()
    expect(phone.page.locator(".timeline li", has_text="Delivery written down")).to_contain_text("First worker")


def orders_by_the_piece_and_by_weight(phone: Phone) -> None:
    phone.page.goto("/orders/new")
    phone.page.get_by_label("Customer", exact=True).fill("Jo")
    phone.page.get_by_role("group", name="Day").get_by_role("button").nth(4).tap()
    phone.page.get_by_role("group", name="Hour").get_by_role("button").nth(2).tap()
    button(phone, "Box of 9 salted squares")
    phone.page.get_by_label("Box of 9 salted squares", exact=True).fill("2")
    phone.page.get_by_text("By weight, price, note").tap()
    phone.page.get_by_role("group", name="Loose, by weight").get_by_role("button").first.tap()
    phone.page.get_by_role("group", name="Loose, by weight").get_by_role("textbox").fill("0.3")
    phone.page.get_by_role("group", name="Wanted every week").get_by_label("yes", exact=True).check(force=True)
    button(phone, "Place the order")
    expect(phone.page.get_by_role("link", name="Jo")).to_contain_text("2 + 300 g still to pack")


def test_a_new_owner_is_stopped_by_none_of_it(phone: Phone):
    says_how_the_shop_works(phone)
    sees_who_did_what(phone)
    orders_by_the_piece_and_by_weight(phone)
    # Boxes of what nobody has made or planned are not the next thing to do.
    phone.page.goto("/")
    said(phone, "Ordered, but in no plan yet: ")
    expect(phone.page.get_by_text("Next: Fill boxes")).to_have_count(0)
    phone.page.goto("/orders")
    phone.page.get_by_role("link", name="Jo").tap()
    button(phone, "Hand over")
    said(phone, "Handed over: 2 ×")
    phone.page.goto("/orders")
    said(phone, "Jo, every week: 2 × ")
    button(phone, "Place the order")
    expect(phone.page.get_by_role("link", name="Jo").first).to_contain_text("still to pack")
    expect(phone.page.get_by_text("every week")).to_have_count(0)
    assert phone.errors == []
