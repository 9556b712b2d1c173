"""Hands are free: what was tapped wrongly is taken back, steps are skipped or overtaken, two batches run at once."""

import re

from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import tapped_elsewhere

UNDONE = (("Undo Burst", "burst"), ("Undo Lot", "lot"), ("Undo Weigh.out", "weigh"), ("Undo Set.up", "set_up"))
SKIPPED = ("loosen", "prebottom", "flip", "score", "cut")


def test_undo_names_what_it_takes_back_and_leads_back_across_a_reload(phone: Phone):
    phone.plans_and_starts()
    seen = []
    phone.taps()
    phone.is_at("weigh")
    phone.taps("As planned")
    phone.is_at("lot")
    phone.types("117")
    phone.is_at("burst")
    asked = phone.bench.locator("h1").text_content()
    phone.starts_a_burst()
    expect(phone.page.get_by_role("button", name="Undo Burst")).to_be_visible()
    phone.page.reload()
    phone.is_at("burst")
    for name, step in UNDONE:
        phone.passes(750)
        button = phone.page.get_by_role("button", name=re.compile(name))
        expect(button).not_to_have_attribute("aria-disabled", "true")
        button.tap()
        phone.is_at(step)
        if not seen:
            expect(phone.bench.locator("h1")).to_have_text(asked or "")
        seen.append(step)
    expect(phone.page.get_by_text("Nothing to undo yet")).to_be_visible()
    phone.page.reload()
    phone.is_at("set_up")
    assert [fact["kind"] for fact in phone.facts()][-4:] == ["undone"] * 4


def test_steps_are_skipped_and_taken_in_another_order(phone: Phone, server: Server):
    """Another pair of hands pours while this phone still waits for the first burst; what was passed is passed."""
    phone.plans_and_starts()
    phone.taps()
    phone.is_at("weigh")
    phone.taps("As planned")
    phone.taps("No lot")
    phone.is_at("burst")
    tapped_elsewhere(server, phone, "poured", {"bulk_c": 74})
    arrives_at(phone, "cool")
    expect(phone.page.get_by_role("button", name="Firm already")).to_have_count(0)
    phone.page.clock.fast_forward(45 * 60_000)
    phone.passes(1_000)
    phone.taps("Firm already")
    phone.is_at("loosen")
    for step in SKIPPED:
        phone.is_at(step)
        phone.opens("More")
        phone.page.get_by_role("dialog").get_by_role("button", name="Skip this step").tap()
        phone.passes(100)
    phone.is_at("count")
    assert [fact["body"]["step"] for fact in phone.facts_of("step_skipped")] == ["lot", *SKIPPED]


def arrives_at(phone: Phone, step: str) -> None:
    for _ in range(40):
        if phone.step == step:
            return
        phone.passes(5_000)
    raise AssertionError(f"still at {phone.step}")


def test_two_batches_run_side_by_side_with_their_clocks_in_one_row(phone: Phone):
    phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    first = phone.page.url
    phone.leaves_the_bench()
    second = phone.plans_and_starts()
    assert second not in first
    clocks = phone.page.get_by_role("list", name="Running clocks").get_by_role("listitem")
    expect(clocks).to_have_count(1)
    expect(clocks).to_contain_text("Squares, 24 mm: Turn")
    clocks.get_by_role("link").tap()
    phone.is_at("burst")
    assert phone.page.url == first
    phone.waits_for_the_ring()
    phone.silences()
    phone.is_at("turn")
    by_batch = {fact["batch_id"] for fact in phone.facts() if fact["batch_id"]}
    assert len(by_batch) == 2
