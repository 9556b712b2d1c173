"""A cube stands for three days; its clock and its heights outlive the page, and plans know what it said."""

from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.walk_stand import DAY_MS, HOUR_MS, keeps_the_verdict, measures, starts_the_test


def test_cube_stands_three_days_through_reloads_and_its_verdict_stands_on_the_next_plan(phone: Phone):
    for _ in starts_the_test(phone):
        pass
    phone.loses_the_network()
    for wait_ms, height in ((HOUR_MS, "19.5"), (DAY_MS - HOUR_MS, "18"), (2 * DAY_MS, "16")):
        phone.page.reload()
        phone.is_at("stand")
        expect(phone.bench.locator(".number-row")).to_be_visible()
        for _ in measures(phone, wait_ms, height):
            pass
    for _ in keeps_the_verdict(phone):
        pass
    assert [round(one["body"]["height_m"], 4) for one in phone.facts_of("stood")] == [0.02, 0.0195, 0.018, 0.016]
    phone.opens_place("Plan")
    phone.answered()
    expect(phone.page.get_by_text("This caramel slumps on standing.")).to_be_visible()


def test_cube_that_would_have_grown_is_asked_again(phone: Phone):
    for _ in starts_the_test(phone):
        pass
    phone.opens("Measure now")
    phone.keys("21")
    phone.passes(750)
    phone.button.tap()
    expect(phone.page.locator(".asked")).to_be_visible()
    assert len(phone.facts_of("stood")) == 1
