"""A slab of caramels, from the plan to the closed batch, with and without a network."""

from typing import Any

import pytest
from playwright.sync_api import expect

from e2e.conftest import KillableBrowser
from e2e.phone import Phone
from e2e.server import Server

WHOLE_SLAB = [
    "batch_opened",
    "ready_checked",
    "weighed",
    "lot_named",
    "poured",
    "touched",
    "freed",
    "prebottomed",
    "flipped",
]
WHOLE_SLAB += ["scored", "cut", "counted", "weighed_out", "closed"]


def server_has(server: Server) -> list[dict[str, Any]]:
    return [event for event in server.asks("/api/events?after=0&limit=500")["events"] if event["batch_id"]]


def arrives(phone: Phone, server: Server) -> None:
    """Everything on the phone comes to be on the server, once and in order."""
    for _ in range(60):
        if len(server_has(server)) >= len(phone.facts()):
            break
        phone.passes(5_000)
    there, here = server_has(server), phone.facts()
    assert [event["id"] for event in there] == [event["id"] for event in here]
    assert len({event["id"] for event in there}) == len(there)


def works_a_whole_slab(phone: Phone) -> None:
    phone.plans_and_starts()
    phone.sets_up()
    phone.melts()
    phone.taps("Poured")
    phone.cools()
    phone.cuts_and_closes()


def test_a_slab_is_planned_melted_poured_cut_and_closed(phone: Phone, server: Server):
    works_a_whole_slab(phone)
    kinds = [event["kind"] for event in phone.facts()]
    assert [kind for kind in kinds if kind in WHOLE_SLAB] == WHOLE_SLAB
    arrives(phone, server)
    assert phone.errors == []


def test_the_same_slab_without_a_network_from_the_first_tap(phone: Phone, server: Server):
    phone.loses_the_network()
    works_a_whole_slab(phone)
    assert server_has(server) == []
    phone.finds_the_network()
    arrives(phone, server)
    assert phone.errors == []


def test_server_away_for_two_hours_is_not_noticed(phone: Phone, server: Server):
    phone.plans_and_starts()
    phone.sets_up()
    server.stop()
    phone.melts()
    phone.taps("Poured")
    phone.page.clock.fast_forward(7_200_000)
    server.start()
    arrives(phone, server)
    phone.cools()
    phone.cuts_and_closes()
    arrives(phone, server)


@pytest.mark.firefox_too
def test_reload_in_the_middle_of_a_burst_keeps_the_clock(phone: Phone):
    phone.plans_and_starts()
    phone.sets_up()
    phone.starts_a_burst()
    phone.passes(20_000)
    phone.loses_the_network()
    phone.page.reload()
    phone.is_at("burst")
    expect(phone.page.locator(".number")).to_contain_text("0:3")
    phone.waits_for_the_ring(45)
    phone.silences()
    phone.is_at("turn")


def begins(killable: KillableBrowser, later_ms: int = 0) -> Phone:
    """A batch that is ready for its first burst, in a browser that may be killed."""
    phone = killable.opens(later_ms)
    phone.installs()
    phone.plans_and_starts()
    phone.sets_up()
    return phone


def rings_late(killable: KillableBrowser, batch: str, later_ms: int, clock: str, step: str) -> None:
    """The browser is killed; opened again later and without a network it rings the overdue clock and says how late."""
    killable.is_killed()
    phone = killable.opens(later_ms)
    phone.loses_the_network()
    phone.page.goto(batch)
    expect(phone.ring).to_contain_text(clock)
    expect(phone.ring).to_contain_text("ago")
    phone.silences()
    phone.is_at(step)


def test_browser_killed_in_a_burst_rings_late_and_says_so(killable: KillableBrowser):
    phone = begins(killable)
    phone.starts_a_burst()
    rings_late(killable, phone.page.url, 100_000, "Turn", "turn")


def test_browser_killed_while_a_slab_cools_rings_at_once(killable: KillableBrowser):
    phone = begins(killable)
    phone.melts()
    phone.taps("Poured")
    rings_late(killable, phone.page.url, 4 * 3_600_000, "Press the slab", "touch")


@pytest.mark.parametrize("later_ms", [-31_536_000_000, -86_400_000, 7_200_000])
def test_wrong_phone_clock_still_times_a_burst(later_ms: int, killable: KillableBrowser, server: Server):
    phone = begins(killable, later_ms)
    phone.starts_a_burst()
    started = phone.page.evaluate("Date.now()")
    phone.waits_for_the_ring()
    assert 55_000 <= phone.page.evaluate("Date.now()") - started <= 62_000
    phone.silences()
    phone.taps()
    arrives(phone, server)
    assert all(abs(event["offset_ms"] + later_ms) < 5_000 for event in server_has(server))
