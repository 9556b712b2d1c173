"""Undo lies where no key lay and can itself be undone; keypads are whole on every screen."""

import re

from playwright.sync_api import expect

from e2e.cautions import caution_faults
from e2e.languages import reads_in
from e2e.phone import BETWEEN_TAPS_MS, Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, hears, record, seen_faults
from e2e.walk_cluster import has_a_keypad_for_lots

SIZES = ((320, 568), (360, 640), (390, 844), (844, 390), (195, 422), (1024, 768))
RECTS = """(what) => [...document.querySelectorAll(what)].map((one) => {
    const { left, top, right, bottom } = one.getBoundingClientRect();
    return { left, top, right, bottom };
})"""
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
