"""An order for Friday becomes a batch, the batch stands in the plan of the day, and a pin stays there."""

from playwright.sync_api import expect

from e2e import axe
from e2e.phone import Phone
from e2e.test_trade_story import button, takes_an_order


def test_an_order_becomes_a_batch_that_the_day_shows_and_a_pin_stays(phone: Phone):
    phone.page.get_by_role("link", name="Orders", exact=True).tap()
    takes_an_order(phone)
    phone.page.get_by_role("link", name="Plan what is missing").tap()
    plan = phone.page.get_by_role("button", name="Plan a batch of")
    expect(plan.first).to_be_visible(timeout=15_000)
    assert axe.faults(phone.page, at_the_bench=False) == []
    plan.first.tap()
    expect(phone.page.get_by_role("button", name="Keep this plan and start")).to_be_enabled(timeout=15_000)
    button(phone, "Keep this plan and start")
    phone.leaves_the_bench()
    strip = phone.page.get_by_role("img", name="Melt and pour")
    expect(strip).to_be_visible(timeout=15_000)
    phone.page.get_by_role("link", name="The day, task by task").tap()
    expect(phone.page.get_by_text("Fill boxes: Corner bakery")).to_be_visible()
    button_of = phone.page.get_by_role("button", name="Pin to a time").first
    button_of.tap()
    phone.page.get_by_label("Begins at").fill("16:40")
    button(phone, "Pin here")
    expect(phone.page.get_by_text("Pinned: it stays there.")).to_be_visible(timeout=15_000)
    assert axe.faults(phone.page, at_the_bench=False) == []
    boxing = phone.page.locator("li.card", has_text="Fill boxes: Corner bakery")
    boxing.get_by_role("button", name="Pin to a time").tap()
    phone.page.get_by_label("Begins at").fill("16:50")
    button(phone, "Pin here")
    expect(boxing).to_contain_text("Pinned: it stays there.", timeout=15_000)
    phone.page.reload()
    expect(phone.page.get_by_text("Pinned: it stays there.")).to_have_count(2, timeout=15_000)
    assert phone.errors == []
