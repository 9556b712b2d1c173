"""Who is at this phone: chosen in two taps, kept, named beside what is tapped; nobody is asked."""

from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.sync_helpers import all_sent


def chooses(phone: Phone, now: str, then: str) -> None:
    phone.page.get_by_role("button", name=now).tap()
    phone.page.get_by_role("dialog").get_by_role("button", name=then).tap()
    expect(phone.page.get_by_role("dialog")).to_have_count(0)
    phone.passes(300)


def test_the_record_says_who_weighed_and_nobody_is_asked(phone: Phone):
    batch = phone.plans_and_starts()
    phone.taps()
    phone.leaves_the_bench()
    phone.loses_the_network()
    chooses(phone, "Who is at this phone?", "First worker")
    phone.page.reload()
    expect(phone.page.get_by_role("button", name="At this phone: First worker")).to_have_text("F")
    phone.returns_to("Squares")
    phone.is_at("weigh")
    phone.types("1.8")
    # At the bench too, with gloves on.
    phone.opens("More")
    chooses(phone, "At this phone: First worker", "Nobody in particular")
    phone.types("117")
    people = {fact["kind"]: fact["body"].get("by") for fact in phone.facts() if fact["kind"] != "wash_told"}
    assert {kind for kind in people if people[kind]} == {"weighed"}
    assert people["weighed"] == "first"
    phone.finds_the_network()
    all_sent(phone)
    phone.page.goto(f"/batches/{batch}")
    named = phone.page.locator(".timeline li", has_text="First worker")
    expect(named).to_have_count(1)
    expect(named).to_contain_text("1.8")
    phone.page.goto(f"/batches/{batch}/paper")
    expect(phone.page.locator(".paper .timeline li", has_text="First worker")).to_have_count(1)
