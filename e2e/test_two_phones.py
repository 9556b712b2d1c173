"""One batch on two phones: it moves from one to the other; what both tap without hearing of each other counts once."""

from typing import Any

import pytest
from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, hears, record, seen_faults, tapped_elsewhere


def both_wait(ms: int, *phones: Phone) -> None:
    for phone in phones:
        phone.passes(ms)


def test_a_batch_moves_to_another_phone_and_back_with_its_clock(phone: Phone, other: Phone):
    batch_id = phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    all_sent(phone)
    hears(other, len(phone.facts()))
    card = other.page.get_by_role("link", name="Squares, 24 mm")
    expect(card).to_contain_text("On another phone")
    card.tap()
    other.looks()
    expect(other.bench).to_contain_text("Another phone runs this batch. Its clocks ring there.")
    due = other.page.locator(".number").first.text_content()
    assert due
    other.taps("Take it over here")
    expect(other.bench).not_to_contain_text("Another phone")
    expect(other.page.get_by_role("button", name="Out early")).to_be_visible()
    all_sent(other)
    hears(phone, len(other.facts()))
    phone.looks()
    expect(phone.bench).to_contain_text("Another phone took this batch over at")
    expect(phone.button).to_have_text("Take it over here")
    other.waits_for_the_ring()
    both_wait(75_000, phone)
    expect(phone.ring).to_have_count(0)
    other.silences()
    phone.taps("Take it over here")
    phone.waits_for_the_ring(5)
    phone.silences()
    assert phone.page.url.endswith(batch_id)
    phone.is_at("turn")
    phone.taps()
    phone.is_at("burst")


def test_two_hands_off_line_tap_the_same_steps_and_all_three_agree(phone: Phone, other: Phone, server: Server):
    batch_id = phone.plans_and_starts()
    phone.taps()
    all_sent(phone)
    hears(other, len(phone.facts()))
    other.page.goto(f"/bench/{batch_id}")
    for one in (phone, other):
        one.loses_the_network()
    other.taps("Take it over here")
    for one in (phone, other):
        one.is_at("weigh")
        one.taps("As planned")
        one.taps("No lot")
        one.starts_a_burst()
        one.waits_for_the_ring()
        one.silences()
        one.taps()
        one.is_at("burst")
    written = {fact["id"] for one in (phone, other) for fact in one.facts()}
    for one in (phone, other, phone):
        one.finds_the_network()
        all_sent(one)
    for one in (phone, other):
        hears(one, len(written))
        one.is_at("burst")
    found = record(server, batch_id)
    assert {event["id"] for event in found["events"]} == written
    assert [fact["id"] for fact in phone.facts()] == [fact["id"] for fact in other.facts()]
    assert len(found["run"]["melt"]["bursts"]) == 1
    assert len(found["run"]["ignored"]) == 4, "weigh-in, skipped lot, start and turn of the second hand"


BURST = {"seconds_s": 300, "advised_s": 60, "then": "turn", "from_c": 21.0, "expected_c": 34.0}
ELSEWHERE: tuple[tuple[str, dict[str, Any], str], ...] = (
    ("taken_over", {}, "set_up"),
    ("ready_checked", {}, "weigh"),
    ("weighed", {"kg": 1.8, "lot": None}, "lot"),
    ("lot_named", {"lot": "117"}, "burst"),
    ("burst_started", BURST, "burst"),
    ("poured", {"bulk_c": 74.0}, "cool"),
    ("touched", {"firm": True}, "loosen"),
)


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_batch_that_another_phone_runs_can_be_watched_at_every_step(language: str, phone: Phone, server: Server):
    phone.speaks(language)
    phone.plans_and_starts()
    faults = []
    for kind, body, step in ELSEWHERE:
        all_sent(phone)
        known = len(phone.facts())
        tapped_elsewhere(server, phone, kind, body)
        hears(phone, known + 1)
        phone.is_at(step)
        expect(phone.button).to_have_text(phone.word("Take it over here"))
        expect(phone.bench.get_by_role("button")).to_have_count(3)  # first aid, more, take over
        faults += [f"{kind}: {fault}" for fault in seen_faults(phone, kind)]
    assert not faults, "\n".join(faults)
