"""A slab whose block melts in a water jacket: hours by the browser's clock, to the pour and beyond, off line."""

import re

from playwright.sync_api import expect

from e2e.conftest import KillableBrowser
from e2e.phone import Phone
from e2e.walk_jacket import chooses_the_jacket, jacket_until_the_pour, starts, waits_for_hours

SIX_MINUTES_MS = 360_000


def starts_in_the_jacket(phone: Phone) -> None:
    chooses_the_jacket(phone)
    for _ in starts(phone):
        pass


def looks_and_reads(phone: Phone) -> None:
    """From the ringing look clock to a reading in the window."""
    phone.silences()
    phone.is_at("look")
    phone.taps("Stirs freely")
    phone.is_at("read")
    phone.types("74")
    phone.is_at("pour")


def test_a_block_melts_in_a_water_jacket_without_a_network(phone: Phone):
    phone.loses_the_network()
    for _ in jacket_until_the_pour(phone):
        pass
    phone.taps("Poured")
    phone.cools()
    phone.cuts_and_closes()
    kinds = [event["kind"] for event in phone.facts()]
    assert kinds.count("jacket_started") == 1
    assert "water_topped" in kinds
    assert "burst_started" not in kinds
    assert phone.facts_of("batch_opened")[0]["body"]["plan"]["oven_id"] is None
    phone.page.get_by_role("button", name="See the record").tap()
    expect(phone.page.get_by_role("row", name=re.compile("Block in to pouring"))).to_contain_text("1 h")
    expect(phone.page.get_by_role("img", name=re.compile("Water jacket: soft through"))).to_be_visible()
    expect(phone.page.locator(".timeline")).to_contain_text("Into the water jacket")
    assert phone.errors == []


def test_chopped_takes_less_time_and_boiling_water_is_refused(phone: Phone):
    chooses_the_jacket(phone)
    soft = phone.page.locator(".plan-line", has_text="Soft at")
    whole = soft.inner_text()
    phone.page.get_by_role("radio", name="Chopped").tap()
    phone.answered()
    expect(soft).not_to_have_text(whole)
    phone.page.get_by_label("Size of the pieces", exact=True).fill("")
    expect(phone.refused().first).to_contain_text("is too low")
    phone.page.get_by_role("radio", name="Whole").tap()
    phone.answered()
    phone.page.get_by_label("Jacket water", exact=True).fill("")
    expect(phone.refused().first).to_contain_text("is missing")
    phone.page.get_by_label("Jacket water", exact=True).fill("100")
    expect(phone.refused().first).to_contain_text("would scorch caramel at the wall")
    phone.page.get_by_label("Jacket water", exact=True).fill("70")
    expect(phone.refused().first).to_contain_text("At least 73")


def test_look_clock_survives_a_reload_and_goes_into_the_calendar(phone: Phone):
    starts_in_the_jacket(phone)
    due_ms = phone.page.evaluate("Date.now()") + 1000 * phone.facts_of("jacket_started")[0]["body"]["low_s"]
    phone.passes(2_000)
    phone.page.reload()
    phone.is_at("soften")
    phone.page.get_by_role("button", name="More").tap()
    with phone.page.expect_download() as saved:
        phone.page.get_by_role("button", name="Into the calendar: Block soft?").tap()
    text = saved.value.path().read_text(encoding="utf-8")
    assert "TRIGGER;RELATED=END:PT0S" in text
    waits_for_hours(phone, "look")
    assert phone.page.evaluate("Date.now()") - due_ms < SIX_MINUTES_MS
    looks_and_reads(phone)


def test_look_clock_survives_a_killed_browser(killable: KillableBrowser):
    phone = killable.opens()
    phone.installs()
    starts_in_the_jacket(phone)
    address = phone.page.url
    phone.passes(3_000)
    killable.is_killed()
    phone = killable.opens(later_ms=3 * 3_600_000)
    phone.page.goto(address)
    expect(phone.ring.first).to_be_visible()
    looks_and_reads(phone)
