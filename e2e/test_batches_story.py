"""More caramel than one slab takes: the plan says how many batches, starts the first and offers the next."""

import re

from playwright.sync_api import expect

from e2e.phone import Phone


def test_too_much_for_one_slab_is_started_as_the_first_of_several_and_the_next_is_offered(phone: Phone):
    phone.opens_place("Plan")
    phone.page.get_by_label("Caramel", exact=True).fill("7")
    phone.answered()
    in_all = re.compile(r"First of 3\s*7(\.0+)?\skg and \d+ pieces in all")
    expect(phone.page.locator(".plan-card")).to_contain_text(in_all)
    phone.start.tap()
    phone.page.wait_for_url(re.compile("/bench/"))
    phone.leaves_the_bench()
    phone.opens_place("Bench")
    expect(phone.page.get_by_role("link", name="1/3")).to_be_visible()
    for number in (2, 3):
        expect(phone.page.get_by_text(re.compile(f"batch {number} of 3"))).to_be_visible()
        phone.page.get_by_role("button", name="Start the next batch").tap()
        phone.page.wait_for_url(re.compile("/bench/"))
        phone.leaves_the_bench()
        phone.opens_place("Bench")
        expect(phone.page.get_by_role("link", name=f"{number}/3")).to_be_visible()
    expect(phone.page.get_by_role("button", name="Start the next batch")).to_have_count(0)
    weights = [fact["body"]["plan"]["reply"]["caramel_kg"] for fact in phone.facts_of("batch_opened")]
    assert len(weights) == 3
    assert abs(sum(weights) - 7) < 0.001
    assert phone.errors == []


def test_the_rest_of_a_series_is_offered_days_later_until_it_is_taken_off(phone: Phone):
    phone.opens_place("Plan")
    phone.page.get_by_label("Caramel", exact=True).fill("7")
    phone.answered()
    phone.start.tap()
    phone.page.wait_for_url(re.compile("/bench/"))
    phone.leaves_the_bench()
    phone.page.get_by_role("button", name=re.compile("^Call it back")).tap()
    expect(phone.page.get_by_text("No batch is running")).to_be_visible()
    phone.page.clock.fast_forward(3 * 24 * 3_600_000)
    phone.page.reload()
    later = phone.page.get_by_role("button", name="Start the next batch")
    expect(later).to_be_visible()
    phone.page.get_by_role("button", name=re.compile("^Do not make the rest")).tap()
    expect(later).to_have_count(0)
    phone.page.get_by_role("button", name="Take that back").tap()
    expect(later).to_be_visible()
    phone.page.get_by_role("button", name=re.compile("^Do not make the rest")).tap()
    expect(phone.page.get_by_text("no more batches are made")).to_be_visible()
    phone.page.reload()
    expect(phone.page.get_by_text("No batch is running")).to_be_visible()
    expect(later).to_have_count(0)
    assert phone.errors == []


def test_old_caramel_in_a_plan_is_weighed_first_at_the_bench(phone: Phone):
    phone.opens_place("Plan")
    phone.unfolds()
    phone.page.get_by_label("Old caramel", exact=True).fill("0.3")
    phone.answered()
    expect(phone.page.locator(".plan-card")).to_contain_text("of it old caramel")
    phone.start.tap()
    phone.page.wait_for_url(re.compile("/bench/"))
    phone.is_at("set_up")
    phone.taps("All ready")
    phone.is_at("weigh")
    expect(phone.page.locator("h1")).to_contain_text(re.compile("Weigh 300\\sg of old caramel first"))
    phone.taps("As planned")
    expect(phone.page.locator("h1")).to_contain_text("Weigh out 1.8")
    assert [fact["body"]["kg"] for fact in phone.facts_of("old_weighed")] == [0.3]
    assert phone.errors == []
