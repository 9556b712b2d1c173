"""A slab is dipped and salted from a bowl of chocolate that is kept in temper beside it, off line."""

import re
from collections.abc import Iterator

from playwright.sync_api import expect

from e2e.conftest import KillableBrowser
from e2e.phone import Phone
from e2e.test_take_along import is_one_page
from e2e.walk_chocolate import BOWL, DIPPED, plans_dipped, plans_the_bowl, pours_the_slab, reads_the_bowl


def passes_through(states: Iterator[str]) -> None:
    for _ in states:
        pass


def has_the_bowl_in_temper(phone: Phone) -> None:
    """From the desk: a bowl of 2 kg, melted, seeded, in range, a good strip."""
    passes_through(plans_the_bowl(phone))
    phone.taps()
    phone.taps("As planned")
    phone.types("55")
    reads_the_bowl(phone, "46.5")
    phone.taps()
    reads_the_bowl(phone, "31.8")
    phone.is_at("temper_check")
    phone.taps()
    phone.is_at("use")


def is_ready_to_dip(phone: Phone) -> None:
    """A slab planned to be dipped, poured, cooled, cut."""
    passes_through(plans_dipped(phone))
    pours_the_slab(phone)
    phone.cools()
    for step in ("loosen", "prebottom", "flip", "score", "cut"):
        phone.is_at(step)
        phone.taps()
    phone.is_at("temper_check")


def clock_names(phone: Phone) -> list[str]:
    """The clocks in their row, soonest first."""
    return phone.bench.locator(".clock-name").all_inner_texts()


def sees_the_record(phone: Phone, *told: str) -> None:
    """From a batch that was closed; what its timeline tells."""
    phone.is_at("closed")
    phone.page.get_by_role("button", name="See the record").tap()
    for words in told:
        expect(phone.page.locator(".timeline")).to_contain_text(words)


def test_slab_is_dipped_and_salted_while_the_bowl_keeps_its_clock(phone: Phone):
    phone.loses_the_network()
    is_ready_to_dip(phone)
    phone.leaves_the_bench()
    has_the_bowl_in_temper(phone)
    phone.leaves_the_bench()
    phone.returns_to(DIPPED)
    phone.taps()
    phone.taps("Start")
    # The big number is this batch's own clock; the bowl's stands in the row with its batch's name.
    assert clock_names(phone) == [f"{BOWL} B: Test the bowl"]
    phone.waits_for_the_ring(200)
    expect(phone.ring.first).to_contain_text("Salt these")
    expect(phone.ring.get_by_role("button")).to_contain_text("Salted")
    assert len(phone.facts_of("salted")) == 0
    # The knuckle that silences it says that they are salted.
    phone.silences()
    phone.is_at("dip")
    assert len(phone.facts_of("salted")) == 1
    phone.waits_for_the_ring(600)
    expect(phone.ring.first).to_contain_text(re.compile("Salt these|Test the bowl"))
    phone.silences()
    phone.taps("All dipped")
    phone.is_at("set")
    phone.leaves_the_bench()
    phone.returns_to(BOWL)
    phone.taps("Done dipping")
    phone.types("0.6")
    phone.types("56")
    phone.taps()
    sees_the_record(phone, "Strip: set and shiny")
    expect(phone.page.get_by_role("row", name=re.compile("^Left over"))).to_contain_text("lot 56")
    phone.page.get_by_role("link", name="The record as one printed page").tap()
    is_one_page(phone)
    expect(phone.page.locator(".paper .cautions")).to_contain_text("Keep water and steam away")
    phone.page.get_by_role("button", name="Back", exact=True).tap()
    phone.opens_place("Records")
    expect(phone.page.get_by_role("link", name=re.compile(BOWL))).to_contain_text("of chocolate melted")
    phone.returns_to(DIPPED)
    phone.taps()
    phone.is_at("count")
    phone.types("280")
    phone.types("0.1")
    phone.taps()
    sees_the_record(phone, "Marked or salted", "Set hard")
    # A recall of chocolate asks for it.
    expect(phone.page.get_by_role("row", name=re.compile("^Chocolate"))).to_contain_text(f"{BOWL} B, lot 55")
    kinds = [event["kind"] for event in phone.facts()]
    salt = phone.page.get_by_role("row", name=re.compile("^Salt"))
    expect(salt).to_contain_text(f"put on {kinds.count('salted')} time")
    assert kinds.count("seeded") == 1
    opened = {event["body"]["plan"]["kind"]: event["body"]["plan"] for event in phone.facts_of("batch_opened")}
    assert opened["slab"]["finish"] == "dipped"
    assert opened["slab"]["reply"]["dip"]["salt"] == "flaky sea salt"
    assert opened["chocolate"]["reply"]["seed_kg"] > 0.4
    assert phone.errors == []


def test_plan_of_a_dipped_product_leads_to_the_bowl_it_wants(phone: Phone):
    passes_through(plans_dipped(phone))
    answer = phone.page.locator(".plan-answer")
    expect(answer).to_contain_text("of chocolate in temper")
    expect(answer).to_contain_text("flaky sea salt")
    phone.page.get_by_role("button", name="Plan its bowl of chocolate").tap()
    weight = phone.page.get_by_label("Chocolate in temper", exact=True)
    assert 1.2 < float(weight.input_value()) < 2
    phone.answered()
    weight.fill("0")
    expect(phone.refused().first).to_contain_text("too low")
    weight.fill("-2")
    expect(phone.refused().first).to_contain_text("too low")


def test_bowl_clock_is_right_after_a_killed_browser(killable: KillableBrowser):
    phone = killable.opens()
    phone.installs()
    has_the_bowl_in_temper(phone)
    address = phone.page.url
    phone.passes(2_000)
    killable.is_killed()
    phone = killable.opens(later_ms=20 * 60_000)
    phone.page.goto(address)
    expect(phone.ring.first).to_be_visible()
    phone.silences()
    phone.is_at("rewarm")
