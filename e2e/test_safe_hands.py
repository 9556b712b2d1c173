"""An unwashed batch says so, one can be thrown away, and two of one name are told apart."""

import re
from typing import Any

import pytest
from playwright.sync_api import expect

from e2e.phone import BETWEEN_TAPS_MS, Phone
from e2e.server import Server
from e2e.sync_helpers import PATIENCE, all_sent, exchanges, record
from e2e.walk_cluster import has_a_keypad_for_lots, keeps_a_sheet, plans_clusters

# Of the table of planned beside happened: how wide it is, and its room.
WIDTHS = """() => {
    const table = document.querySelector(".compared");
    return [table.scrollWidth, table.parentElement.clientWidth];
}"""


def has_pecans_on_the_bench(phone: Phone) -> None:
    """Clusters until their nuts lie on the tray, with a lot of letters, digits and a dash."""
    has_a_keypad_for_lots(phone)
    expect(phone.bench.locator("h1")).to_contain_text("pecan")
    phone.letters("P-")
    phone.page.locator(".keys").get_by_role("button", name="123, digits").tap()
    phone.types("07")
    phone.is_at("under")
    phone.taps()
    phone.leaves_the_bench()


def test_a_wash_passed_over_asks_why_and_marks_every_piece(phone: Phone, server: Server):
    has_pecans_on_the_bench(phone)
    assert phone.facts_of("under_lot_named")[0]["body"]["lot"] == "P-07"
    batch_id = phone.plans_and_starts(at="wash")
    phone.opens("More")
    phone.opens("Skip this step")
    assert phone.facts_of("step_skipped") == []
    phone.passes(BETWEEN_TAPS_MS)
    phone.page.get_by_role("dialog").get_by_role("button", name="no time").tap()
    phone.is_at("set_up")
    phone.leaves_the_bench()
    expect(phone.page.get_by_role("link", name="Squares, 24 mm B")).to_contain_text("May contain pecans")
    phone.page.get_by_role("button", name="Throw it away: Squares, 24 mm B").tap()
    phone.passes(BETWEEN_TAPS_MS)
    phone.page.get_by_role("button", name="only a trial").tap()
    expect(phone.page.get_by_text("Squares, 24 mm B was thrown away.")).to_be_visible()
    phone.opens_place("Records")
    row = phone.page.get_by_role("link", name="Squares, 24 mm B")
    expect(row).to_contain_text("Thrown away: only a trial")
    expect(row).to_contain_text("May contain pecans")
    row.tap()
    first = phone.page.locator(".desk main .card p").first
    expect(first).to_have_text("Thrown away: only a trial")
    why = "May contain pecans. Not washed off before this batch: no time."
    expect(phone.page.locator(".desk main")).to_contain_text(why)
    all_sent(phone)
    table = phone.page.request.get("/api/batches.csv").text()
    assert re.search(r"Squares, 24 mm B.*pecan.*trial", table)
    assert "P-07" in table
    phone.page.get_by_role("button", name="Take that back").tap()
    expect(phone.page.locator(".desk main")).not_to_contain_text("Thrown away:")
    phone.page.get_by_role("link", name="The record as one printed page").tap()
    expect(phone.page.locator(".paper")).to_contain_text(why)
    all_sent(phone)
    run = record(server, batch_id)["run"]
    assert (run["thrown_away"], run["may_contain"], run["closed_at_ms"]) == (None, ["pecan"], None)


def test_a_batch_is_thrown_away_from_its_bench_and_taken_back_there(phone: Phone):
    phone.plans_and_starts()
    phone.taps()
    phone.opens("More")
    phone.opens("Throw it away")
    phone.page.get_by_role("dialog").get_by_label("In your own words").fill("Grainy")
    phone.page.get_by_role("dialog").get_by_role("button", name="another reason").tap()
    phone.is_at("closed")
    expect(phone.bench).to_contain_text("Thrown away: Grainy")
    phone.passes(BETWEEN_TAPS_MS)
    phone.page.get_by_role("button", name="Undo closing").tap()
    phone.is_at("weigh")


def test_a_batch_closed_without_a_network_stands_in_the_list_days_later(phone: Phone):
    phone.loses_the_network()
    phone.plans_and_starts()
    phone.taps()
    phone.leaves_the_bench()
    phone.page.get_by_role("button", name="Throw it away: Squares, 24 mm").tap()
    phone.passes(BETWEEN_TAPS_MS)
    phone.page.get_by_role("button", name="burnt").tap()
    expect(phone.page.get_by_text("Squares, 24 mm was thrown away.")).to_be_visible()
    phone.page.clock.fast_forward(2 * 86_400_000)
    phone.page.goto("/batches")
    phone.page.get_by_role("link", name="Squares, 24 mm").tap()
    expect(phone.page.get_by_text("Thrown away: burnt").first).to_be_visible()


def test_an_unused_sheet_is_called_back_and_that_is_taken_back(phone: Phone):
    keeps_a_sheet(phone, "60", False)
    phone.page.goto("/")
    phone.page.get_by_role("button", name="Call it back: not used").tap()
    expect(phone.page.get_by_text("No batch is running.")).to_be_visible()
    assert phone.facts_of("thrown_away")[0]["body"]["reason"] == "unused"
    phone.passes(BETWEEN_TAPS_MS)
    phone.page.get_by_role("button", name="Take that back").tap()
    expect(phone.page.get_by_role("link", name="Pecan clusters")).to_be_visible()


def test_two_phones_off_line_that_gave_one_name_are_told_apart(phone: Phone, other: Phone, server: Server):
    ids: list[Any] = []
    for one in (phone, other):
        one.loses_the_network()
        ids.append(one.plans_and_starts())
        one.leaves_the_bench()
        one.finds_the_network()
    for _ in range(6):
        for one in (phone, other):
            all_sent(one)
            hears_all(one, server)
    assert [record(server, one)["summary"]["name"] for one in ids] == ["Squares, 24 mm", "Squares, 24 mm B"]
    for one in (phone, other):
        one.page.reload()
        expect(one.page.get_by_role("link", name="Squares, 24 mm B")).to_be_visible()


def hears_all(phone: Phone, server: Server) -> None:
    """The phone has all that the server had when it was asked; it may write another name of its own meanwhile."""
    ids = {one["id"] for one in server.asks("/api/events?after=0&limit=500")["events"] if one["batch_id"]}
    for _ in range(PATIENCE):
        if ids <= {one["id"] for one in phone.facts()}:
            return
        exchanges(phone)
    raise AssertionError("the phone has not heard all")


def test_names_of_one_evening_differ_across_products(phone: Phone):
    phone.plans_and_starts()
    phone.leaves_the_bench()
    for _ in plans_clusters(phone):
        pass
    phone.taps()
    phone.leaves_the_bench()
    phone.plans_and_starts()
    names = [fact["body"]["plan"]["name"] for fact in phone.facts_of("batch_opened")]
    assert names == ["Squares, 24 mm", "Pecan clusters B", "Squares, 24 mm C"]


@pytest.mark.parametrize("size", [(320, 568), (390, 844)])
def test_a_record_does_not_run_off_the_screen_whatever_its_lots(phone: Phone, size: tuple[int, int]):
    phone.page.set_viewport_size({"width": size[0], "height": size[1]})
    phone.plans_and_starts()
    phone.taps()
    phone.types("1.8")
    phone.letters("ABCDEFGHIJ")
    phone.letters("KLMNOPQRST")
    phone.taps()
    phone.leaves_the_bench()
    phone.opens_place("Records")
    phone.page.get_by_role("link", name="Squares, 24 mm").tap()
    expect(phone.page.locator(".compared")).to_contain_text("ABCDEFGHIJKLMNOPQRST")
    wide, room = phone.page.evaluate(WIDTHS)
    assert wide <= room
    assert phone.page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
