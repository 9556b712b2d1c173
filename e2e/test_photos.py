"""Photos of a batch: taken without a network, kept small and without a place, seen on both phones in the end."""

import re
import urllib.error
import urllib.request

import pytest
from playwright.sync_api import Locator, expect

from e2e import axe, ruler
from e2e.camera import SECRET, hands_over, kept, snap, takes_photo
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import PATIENCE, all_sent, exchanges, hears, record, send
from tests.log import Phone as Writer

# No room for a picture, as a browser tells it: the whole transaction is taken back.
NO_ROOM = """() => {
    const put = IDBObjectStore.prototype.put;
    let full = true;
    globalThis.noRoom = (is) => { full = is; };
    IDBObjectStore.prototype.put = function (...all) {
        const request = put.apply(this, all);
        if (full && this.name === "photos") this.transaction.abort();
        return request;
    };
}"""
SIZES = ((360, 640), (390, 760), (390, 844))


def photo(server: Server, photo_id: str) -> bytes | None:
    try:
        with urllib.request.urlopen(f"{server.url}/api/photos/{photo_id}", timeout=10) as answer:
            found: bytes = answer.read()
            return found
    except urllib.error.HTTPError:
        return None


def arrives(phone: Phone, server: Server, photo_id: str) -> bytes:
    for _ in range(PATIENCE):
        if found := photo(server, photo_id):
            return found
        exchanges(phone)
    raise AssertionError("the photo has not reached the server")


def thumbs(phone: Phone) -> Locator:
    return phone.page.get_by_role("button", name=re.compile(phone.word("Photo of").split("{")[0]))


def looks_at_the_record(phone: Phone, batch_id: str) -> None:
    phone.page.goto(f"/batches/{batch_id}")
    expect(phone.page.get_by_role("heading", name=phone.word("Photos"))).to_be_visible()


def test_a_photo_taken_off_line_stands_in_the_record_and_reaches_the_other_phone(
    phone: Phone, other: Phone, server: Server
):
    batch_id = phone.plans_and_starts()
    phone.loses_the_network()
    phone.opens("More")
    taken = snap(phone)
    assert SECRET in taken
    takes_photo(phone)
    phone.closes_sheet()
    phone.taps()
    phone.is_at("weigh")
    body = phone.facts_of("photographed")[0]["body"]
    mine = kept(phone, body["photo_id"])
    assert mine is not None
    # Upright and at most 1600 px long; of what the camera added nothing is left.
    assert (body["width_px"], body["height_px"], body["bytes"]) == (1200, 1600, len(mine))
    assert len(mine) < len(taken)
    assert b"Exif" not in mine
    assert SECRET not in mine
    phone.leaves_the_bench()
    expect(phone.page.get_by_text("1 photo is still to be sent to the server.")).to_be_visible()
    looks_at_the_record(phone, batch_id)
    expect(thumbs(phone)).to_have_count(1)
    expect(phone.page.locator(".timeline")).to_contain_text("Photo taken")

    phone.page.route("**/api/photos/*", lambda route: route.abort())
    phone.finds_the_network()
    all_sent(phone)
    hears(other, len(phone.facts()))
    looks_at_the_record(other, batch_id)
    expect(other.page.get_by_text("Not sent yet: it is still on the phone that took it.")).to_be_visible()
    assert photo(server, body["photo_id"]) is None

    phone.page.unroute("**/api/photos/*")
    assert arrives(phone, server, body["photo_id"]) == mine
    other.loses_the_network()
    looks_at_the_record(other, batch_id)
    expect(other.page.get_by_text("Not on this phone: it comes when there is a network.")).to_be_visible()
    other.finds_the_network()
    exchanges(other)
    expect(thumbs(other)).to_have_count(1)
    picture = thumbs(other).get_by_role("img")
    other.page.wait_for_function("() => document.querySelector('.photo img').naturalWidth === 1200")
    expect(picture).to_have_attribute("alt", re.compile(r"^Photo of \d\d?:\d\d"))
    assert kept(other, body["photo_id"]) is None
    assert record(server, batch_id)["run"]["photos"] == 1
    assert phone.errors == other.errors == []


@pytest.mark.parametrize("language", ["en", "es"])
def test_a_photo_opens_over_the_whole_screen_and_closes_again(language: str, phone: Phone):
    phone.speaks(language)
    batch_id = phone.plans_and_starts()
    phone.opens("More")
    takes_photo(phone)
    assert "\n".join(faults(phone, at_the_bench=True)) == ""
    looks_at_the_record(phone, batch_id)
    thumbs(phone).tap()
    dialog = phone.page.get_by_role("dialog")
    expect(dialog.get_by_role("img")).to_be_visible()
    assert faults(phone, at_the_bench=False) == []
    box = dialog.get_by_role("button").bounding_box()
    assert box
    assert box["height"] >= 88
    assert box["y"] + box["height"] <= 844
    dialog.get_by_role("button", name=phone.word("Close the photo")).tap()
    expect(dialog).to_have_count(0)
    expect(thumbs(phone)).to_be_focused()
    assert faults(phone, at_the_bench=False) == []


def faults(phone: Phone, at_the_bench: bool) -> list[str]:
    found = []
    for width, height in SIZES:
        phone.page.set_viewport_size({"width": width, "height": height})
        ruler.settles(phone)
        found += ruler.bench_faults(phone) if at_the_bench else ruler.desk_faults(phone)
    for scheme in ("light", "dark"):
        phone.page.emulate_media(color_scheme=scheme)
        ruler.settles(phone)
        found += [f"in the {scheme}: {fault}" for fault in axe.faults(phone.page, at_the_bench)]
    return found


def test_a_closed_batch_takes_a_photo_in_its_record(phone: Phone, server: Server):
    writer = Writer()
    send(server, writer.whole_batch())
    looks_at_the_record(phone, writer.batch_id)
    takes_photo(phone)
    takes_photo(phone)
    expect(thumbs(phone)).to_have_count(2)
    for fact in phone.facts_of("photographed"):
        arrives(phone, server, fact["body"]["photo_id"])
    run = record(server, writer.batch_id)["run"]
    assert (run["photos"], run["ignored"], run["closed_at_ms"] is None) == (2, [], False)
    expect(phone.page.get_by_text("None yet.")).to_have_count(0)


def test_a_full_phone_says_so_and_the_batch_goes_on(phone: Phone):
    phone.plans_and_starts()
    content = snap(phone)
    phone.page.evaluate(NO_ROOM)
    phone.opens("More")
    hands_over(phone, content)
    said = "This phone could not keep the photo: it may be full. The batch goes on."
    expect(phone.page.locator(".photo-said")).to_have_text(said)
    assert phone.facts_of("photographed") == []
    phone.closes_sheet()
    phone.taps()
    phone.is_at("weigh")
    phone.page.evaluate("() => noRoom(false)")
    phone.opens("More")
    takes_photo(phone)


def test_a_file_that_is_no_picture_is_said_to_be_none(phone: Phone):
    phone.plans_and_starts()
    phone.opens("More")
    hands_over(phone, b"\xff\xd8\xff not a picture \xff\xd9")
    said = "This file could not be read as a picture. The batch goes on."
    expect(phone.page.locator(".photo-said")).to_have_text(said)
    assert phone.facts_of("photographed") == []
    takes_photo(phone)
    assert phone.errors == []
