"""A minute of real time at the bench: how late the clock rings. In a file of its own, since it mostly waits."""

from playwright.sync_api import BrowserContext, expect

from e2e.phone import Phone

# What the bench promises.
LATE_MS = 100


def test_a_burst_of_a_real_minute_rings_within_a_tenth_of_a_second(context: BrowserContext):
    phone = Phone(context.new_page(), fake_clock=False)
    phone.installs()
    phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    expect(phone.ring).to_be_visible(timeout=70_000)
    mark = phone.page.evaluate(
        """() => performance.getEntriesByName("ring:turn").map((one) =>
            ({ lateMs: one.detail.lateMs, at: performance.timeOrigin + one.startTime }))"""
    )
    assert len(mark) == 1
    started = phone.facts_of("burst_started")[0]
    assert started["body"]["seconds_s"] == 60
    assert 0 <= mark[0]["lateMs"] <= LATE_MS
    # And by a clock the app does not read: half a millisecond of rounding either way.
    assert -1 <= mark[0]["at"] - (started["at_ms"] + 60_000) <= LATE_MS
