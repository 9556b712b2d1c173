"""Undo lies where no key lay and can itself be undone, an unwashed batch says so, and one can be thrown away."""

import re
from typing import Any

import pytest
from playwright.sync_api import expect

from e2e.cautions import caution_faults
from e2e.languages import reads_in
from e2e.phone import BETWEEN_TAPS_MS, Phone
from e2e.server import Server
from e2e.sync_helpers import PATIENCE, all_sent, exchanges, hears, record, seen_faults
from e2e.walk_cluster import keeps_a_sheet, plans_clusters

SIZES = ((320, 568), (360, 640), (390, 844), (844, 390), (195, 422), (1024, 768))
RECTS = """(what) => [...document.querySelectorAll(what)].map((one) => {
    const { left, top, right, bottom } = one.getBoundingClientRect();
    return { left, top, right, bottom };
})"""
# Of the table of planned beside happened: how wide it is, and its room.
WIDTHS = """() => {
    const table = document.querySelector(".compared");
    return [table.scrollWidth, table.parentElement.clientWidth];
}"""
Box = dict[str, float]


def seen_at_each_size(phone: Phone, what: str) -> dict[tuple[int, int], list[Box]]:
    found = {}
    for width, height in SIZES:
        phone.page.set_viewport_size({"width": width, "height": height})
        phone.passes(50)
        found[width, height] = phone.page.evaluate(RECTS, what)
    phone.page.set_viewport_size({"width": 390, "height": 844})
    phone.passes(50)
    return found


def lie_over_each_other(one: Box, other: Box) -> bool:
    across = one["left"] < other["right"] and other["left"] < one["right"]
    return across and one["top"] < other["bottom"] and other["top"] < one["bottom"]


def undone(phone: Phone) -> list[str]:
    return [fact["kind"] for fact in phone.facts() if fact["kind"] in ("undone", "redone")]


def test_undo_lies_nowhere_where_a_key_lay_on_the_screen_before(phone: Phone):
    """From keypad to keypad and from a keypad to a step, on every size of screen."""
    phone.plans_and_starts()
    phone.taps()
    phone.is_at("weigh")
    keys = seen_at_each_size(phone, ".key")
    for typed, step in (("1.8", "lot"), ("117", "burst")):
        phone.types(typed)
        phone.is_at(step)
        undo = seen_at_each_size(phone, ".undo, .redo")
        for size in SIZES:
            assert keys[size]
            assert undo[size], f"no undo at {size}"
            over = [one for one in undo[size] for key in keys[size] if lie_over_each_other(one, key)]
            assert over == [], f"at {size}"


def keypad_faults(phone: Phone, name: str) -> list[str]:
    """Of a keypad with nothing and with something typed, in English and in Spanish, on every size of screen."""
    found = []
    for language in ("en", "es"):
        reads_in(phone.page, language)
        found += [f"{name}, {language}, {fault}" for fault in caution_faults(phone)]
    reads_in(phone.page, "en")
    phone.page.set_viewport_size({"width": 390, "height": 844})
    phone.passes(BETWEEN_TAPS_MS)
    return found


def test_keypads_are_whole_on_every_screen_with_their_cautions(phone: Phone):
    """Each key and the button that sends it: 320 × 568, on its side, letters twice as large; after an undo too."""
    has_a_keypad_for_lots(phone)
    found = keypad_faults(phone, "lot")
    phone.letters("P")
    found += keypad_faults(phone, "letters")
    phone.opens("DEF")
    found += keypad_faults(phone, "three letters")
    phone.page.locator(".keys").get_by_role("button", name="D", exact=True).tap()
    phone.taps()
    phone.is_at("under")
    phone.taps()
    phone.is_at("weigh")
    found += keypad_faults(phone, "weigh")
    phone.keys("1")
    found += keypad_faults(phone, "weigh, typed")
    phone.takes_back_digits(1)
    phone.undoes()
    phone.is_at("under")
    phone.undoes()
    phone.is_at("under_lot")
    found += keypad_faults(phone, "lot, taken back")
    assert found == [], "\n".join(found)


def test_the_place_of_the_key_that_deletes_takes_nothing_back(phone: Phone):
    phone.plans_and_starts()
    phone.taps()
    phone.is_at("weigh")
    phone.keys("1")
    delete = phone.page.locator(".keys").get_by_role("button", name="Delete the last digit")
    box = delete.bounding_box()
    assert box
    place = (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    for wait_ms in (0, 1000, 2000):
        phone.passes(wait_ms)
        phone.page.touchscreen.tap(*place)
    phone.passes(BETWEEN_TAPS_MS)
    phone.is_at("weigh")
    assert undone(phone) == []


def test_a_finger_that_taps_on_where_a_key_was_does_not_undo(phone: Phone):
    """Letters so large that undo may come to lie there: within the last seconds a tap is meant for the key."""
    phone.plans_and_starts()
    phone.taps()
    phone.draws_with("main.bench:not(.bench-entry) .undo { position: fixed; inset: 300px 0 0 0; }")
    phone.types("1.8")
    phone.is_at("lot")
    phone.types("117")
    phone.is_at("burst")
    phone.page.locator(".undo").tap()
    phone.passes(BETWEEN_TAPS_MS)
    assert undone(phone) == []
    phone.passes(3_000)
    phone.page.locator(".undo").tap()
    phone.is_at("lot")
    assert undone(phone) == ["undone"]


def test_undo_says_what_it_took_back_and_can_itself_be_undone_without_a_network(phone: Phone, server: Server):
    batch_id = phone.plans_and_starts()
    phone.sets_up()
    phone.loses_the_network()
    phone.undoes()
    phone.is_at("lot")
    phone.undoes()
    phone.is_at("weigh")
    back = phone.page.get_by_role("button", name=re.compile("Taken back: Weigh.(in|out). Put it back"))
    expect(back).to_be_visible()
    assert seen_faults(phone, "redo") == []
    phone.page.set_viewport_size({"width": 390, "height": 844})
    phone.page.reload()
    phone.passes(BETWEEN_TAPS_MS)
    back.tap()
    phone.is_at("lot")
    phone.passes(BETWEEN_TAPS_MS)
    phone.page.get_by_role("button", name="Taken back: Lot. Put it back").tap()
    phone.is_at("burst")
    expect(phone.page.locator(".redo")).to_have_count(0)
    assert undone(phone) == ["undone", "undone", "redone", "redone"]
    phone.finds_the_network()
    all_sent(phone)
    run = record(server, batch_id)["run"]
    assert (run["weighed_kg"], run["lot"]) == (1.8, "117")


def test_what_one_phone_took_back_the_other_puts_back(phone: Phone, other: Phone, server: Server):
    batch_id = phone.plans_and_starts()
    phone.sets_up()
    phone.undoes()
    phone.is_at("lot")
    all_sent(phone)
    hears(other, len(phone.facts()))
    other.page.goto(f"/bench/{batch_id}")
    other.taps("Take it over here")
    other.is_at("lot")
    other.passes(BETWEEN_TAPS_MS)
    other.page.get_by_role("button", name="Taken back: Lot. Put it back").tap()
    other.is_at("burst")
    all_sent(other)
    hears(phone, len(other.facts()))
    phone.is_at("burst")
    assert record(server, batch_id)["run"]["lot"] == "117"


def has_a_keypad_for_lots(phone: Phone) -> None:
    """Clusters, as far as the lot of their nuts."""
    for _ in plans_clusters(phone):
        pass
    phone.taps()
    phone.taps()
    phone.is_at("under_lot")


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
