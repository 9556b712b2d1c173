"""Due clocks: not to be missed, silenced by one tap that does nothing else; and a screen that stays on."""

import pytest
from playwright.sync_api import BrowserContext, expect

from e2e import browser_probes, ruler
from e2e.browser_probes import BrowserProbe
from e2e.cautions import caution_faults
from e2e.phone import Phone

# The contract of the bench: the time a ring sounds and pauses, and when the button arms again.
RING_MS, PAUSE_MS, ARM_MS = 20_000, 10_000, 700
SCORCHED = "96"


@pytest.fixture
def listening(context: BrowserContext) -> BrowserProbe:
    return BrowserProbe(context)


@pytest.fixture
def wired(listening: BrowserProbe, context: BrowserContext) -> Phone:
    """A phone with a wiretap, ready to work, its batch at the first burst."""
    return at_the_first_burst(Phone(context.new_page()))


def at_the_first_burst(phone: Phone) -> Phone:
    phone.installs()
    phone.plans_and_starts()
    phone.sets_up()
    return phone


def rings(phone: Phone) -> Phone:
    phone.starts_a_burst()
    phone.waits_for_the_ring()
    return phone


def too_hot(phone: Phone) -> None:
    """The block stirs freely after one burst and reads far too hot, until the phone believes it."""
    rings(phone).silences()
    phone.taps("Stirs freely")
    for _ in range(4):
        if phone.step != "read" or phone.ring.count():
            break
        phone.types(SCORCHED)


def test_the_first_tap_only_silences_and_the_button_arms_700_ms_later(phone: Phone):
    at_the_first_burst(phone)
    rings(phone)
    stands_still(phone)
    before = phone.facts()
    phone.page.locator(".ring").tap(position={"x": 195, "y": 790})
    shows(phone)
    expect(phone.ring).to_have_count(0)
    expect(phone.button).to_have_attribute("data-armed", "false")
    phone.passes(ARM_MS - 200)
    phone.page.touchscreen.tap(195, 760)
    shows(phone)
    assert phone.facts() == before, "a tap wrote something before the button was armed"
    phone.passes(500)
    expect(phone.button).to_have_attribute("data-armed", "true")
    phone.page.touchscreen.tap(195, 760)
    written(phone, len(before) + 1)
    assert phone.facts()[-1]["kind"] == "stirred"


@pytest.mark.firefox_too
def test_two_taps_in_a_hurry_are_one(phone: Phone):
    phone.plans_and_starts()
    stands_still(phone)
    before = len(phone.facts())
    phone.button.tap()
    phone.page.touchscreen.tap(195, 760)
    written(phone, before + 1)
    shows(phone)
    phone.page.touchscreen.tap(195, 760)
    phone.passes(ARM_MS + 100)
    assert [fact["kind"] for fact in phone.facts()[before:]] == ["ready_checked"]
    phone.page.touchscreen.tap(195, 760)
    written(phone, before + 2)


def test_half_typed_digits_outlast_a_ring_of_another_batch(phone: Phone):
    at_the_first_burst(phone)
    phone.starts_a_burst()
    weighs_in_another_batch(phone)
    phone.keys("1.")
    phone.waits_for_the_ring()
    expect(phone.page.locator(".ring")).to_have_count(0)
    expect(phone.page.locator(".ring-strip")).to_contain_text("Turn")
    expect(phone.page.locator(".ring-strip")).to_contain_text("Squares, 24 mm")
    phone.keys("9")
    expect(phone.ring).to_have_count(0)
    expect(phone.page.locator("output")).to_contain_text("1.")
    expect(phone.page.locator("output")).not_to_contain_text("9")
    phone.passes(ARM_MS)
    phone.keys("8")
    phone.taps("Use")
    assert phone.facts_of("weighed")[-1]["body"]["kg"] == 1.8


def test_too_hot_takes_the_whole_screen_even_while_typing(phone: Phone):
    """The caramel is watched in a second tab; the first one is typing another batch's weight."""
    at_the_first_burst(phone)
    melting = phone.page.url
    weighs_in_another_batch(phone)
    phone.keys("1.")
    watcher = Phone(phone.page.context.new_page(), fake_clock=False)
    watcher.fake_clock = True
    watcher.page.goto(melting)
    watcher.is_at("burst")
    too_hot(watcher)
    phone.page.bring_to_front()
    expect(phone.page.locator(".ring.ring-hot")).to_contain_text("Too hot")
    phone.passes(750)
    phone.page.locator(".ring").tap()
    expect(phone.ring).to_have_count(0)
    expect(phone.page.locator("output")).to_contain_text("1.")
    watcher.passes(50)
    expect(watcher.ring).to_have_count(0)


def weighs_in_another_batch(phone: Phone) -> None:
    phone.leaves_the_bench()
    phone.plans_and_starts()
    phone.taps()
    phone.is_at("weigh")


def test_it_rings_20_s_pauses_and_rings_again_until_a_tap(wired: Phone, listening: BrowserProbe):
    rings(wired)
    due = wired.facts_of("burst_started")[0]["at_ms"] + 60_000
    wired.passes(2 * RING_MS + 2 * PAUSE_MS + 5_000)
    wired.silences()
    silenced = wired.page.evaluate("Date.now()")
    wired.passes(2 * RING_MS)

    def tones(from_ms: float, to_ms: float) -> int:
        return listening.heard(wired.page, from_ms, to_ms)

    slack = 1_500
    period = RING_MS + PAUSE_MS
    for start in (due, due + period):
        assert tones(start, start + RING_MS) > 20
        assert tones(start + RING_MS + slack, start + period - slack) == 0
    assert tones(due + 2 * period, silenced) > 0
    assert tones(silenced + slack, silenced + 2 * RING_MS) == 0


def test_too_hot_never_pauses(wired: Phone, listening: BrowserProbe):
    too_hot(wired)
    expect(wired.page.locator(".ring-hot")).to_be_visible()
    start = wired.page.evaluate("Date.now()")
    wired.passes(60_000)
    for second in range(2, 58, 2):
        span = (start + second * 1000, start + (second + 2) * 1000)
        assert listening.heard(wired.page, *span) > 0, f"silent at {second} s"


@pytest.mark.firefox_too
def test_a_reload_rings_again_what_nobody_acknowledged_and_only_that(phone: Phone):
    at_the_first_burst(phone)
    rings(phone)
    phone.page.reload()
    expect(phone.ring).to_contain_text("Turn")
    phone.silences()
    phone.waits_until(browser_probes.ACKNOWLEDGED)  # a hand is slower than the disk, a test is not
    phone.page.reload()
    phone.is_at("turn")
    phone.passes(2 * RING_MS)
    expect(phone.ring).to_have_count(0)


def test_a_clock_that_runs_unheard_after_a_reload_asks_for_one_tap(wired: Phone, listening: BrowserProbe):
    wired.starts_a_burst()
    bench, before = wired.page.url, wired.facts()
    for place in ("/", bench):
        wired.page.goto(place)
        listening.shows_untouched(wired.page, ".act-tap")
        expect(wired.tap_to_ring).to_have_text("Tap once so that it can ring")
    wired.tap_to_ring.tap()
    expect(wired.tap_to_ring).to_have_count(0)
    assert wired.facts() == before, "the tap that lets it ring did something else"
    wired.waits_for_the_ring()
    assert listening.heard(wired.page, before[-1]["at_ms"], before[-1]["at_ms"] + RING_MS + 60_000) > 0


def test_any_tap_lets_it_ring_and_does_its_own_work(wired: Phone, listening: BrowserProbe):
    wired.starts_a_burst()
    wired.page.reload()
    listening.shows_untouched(wired.page, ".act-tap")
    assert [*ruler.size_faults(wired), *caution_faults(wired)] == []
    wired.page.get_by_role("button", name="First aid").tap()
    expect(wired.tap_to_ring).to_have_count(0)
    expect(wired.page.get_by_role("dialog")).to_be_visible()


def test_the_tap_that_silences_asks_for_the_lock_again(wired: Phone, listening: BrowserProbe):
    rings(wired)
    wired.page.evaluate("() => { WakeLock.prototype.refused = WakeLock.prototype.request; }")
    wired.page.evaluate("() => { WakeLock.prototype.request = () => Promise.reject(new DOMException('no')); }")
    listening.loses_the_lock(wired.page)
    expect(wired.page.locator(".trouble")).to_have_count(1)
    wired.page.evaluate("() => { WakeLock.prototype.request = WakeLock.prototype.refused; }")
    held = len(listening.locks(wired.page))
    wired.silences()
    wired.page.wait_for_function(f"() => locks.length === {held + 1}")
    expect(wired.page.locator(".trouble")).to_have_count(0)


def test_the_screen_is_kept_on_while_a_clock_runs_and_no_longer(wired: Phone, listening: BrowserProbe):
    assert listening.locks(wired.page) == []
    wired.starts_a_burst()
    wired.page.wait_for_function("() => locks.length === 1")
    listening.loses_the_lock(wired.page)
    wired.page.wait_for_function("() => locks.length === 2")
    assert listening.locks(wired.page) == [False, True]
    wired.taps("Out early")
    wired.page.wait_for_function("() => locks.at(-1).released")
    expect(wired.page.locator(".trouble")).to_have_count(0)


@pytest.mark.parametrize("phone_is", [browser_probes.refuses_to_stay_awake, browser_probes.knows_no_wake_lock])
def test_a_phone_that_does_not_stay_awake_says_so(context: BrowserContext, phone_is):
    phone_is(context)
    phone = at_the_first_burst(Phone(context.new_page()))
    expect(phone.page.locator(".trouble")).to_have_count(0)
    phone.starts_a_burst()
    expect(phone.page.locator(".trouble")).to_contain_text("does not keep its screen on")
    phone.leaves_the_bench()
    phone.opens_place("Settings")
    expect(phone.page.get_by_text("keep the screen on. Set")).to_be_visible()


def stands_still(phone: Phone) -> None:
    """From here on the phone's time moves only when it is told to, however slow this machine is."""
    phone.page.clock.pause_at(phone.page.evaluate("Date.now()") / 1000 + 1)


def shows(phone: Phone) -> None:
    """Lets the screen draw, in a moment too short to count."""
    phone.passes(20)


def written(phone: Phone, count: int) -> None:
    for _ in range(100):
        if len(phone.facts()) >= count:
            break
        shows(phone)
    assert len(phone.facts()) == count
