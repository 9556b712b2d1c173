"""Taking it along: one printed page, files without a network."""

import csv
import io
import json
from collections.abc import Iterator
from contextlib import closing
from typing import Any

from playwright.sync_api import Page, expect
from pypdfium2 import PdfDocument

from e2e.languages import reads_in
from e2e.phone import Phone
from e2e.server import Server
from e2e.walk_chocolate import plans_dipped
from e2e.walk_cluster import CLUSTERS, keeps_a_sheet
from tests.log import Phone as Writer

SIZES = ("A4", "Letter")


def pages(page: Page, size: str) -> int:
    with closing(PdfDocument(page.pdf(format=size, print_background=True))) as printed:
        return len(printed)


def is_one_page(phone: Phone) -> None:
    """The paper that is shown prints on one page of either size, black on white, nothing of it cut off."""
    phone.page.locator(".paper").wait_for()
    phone.passes(500)
    for size in SIZES:
        assert pages(phone.page, size) == 1
    seen = phone.page.evaluate("""() => {
        const paper = document.querySelector(".paper"), style = getComputedStyle(paper);
        const inner = paper.firstElementChild;
        return [style.color, style.backgroundColor, inner.scrollHeight - paper.clientHeight,
            inner.scrollWidth - paper.clientWidth];
    }""")
    assert seen[:2] == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    assert seen[2] <= 0
    assert seen[3] <= 0


def long_batch() -> tuple[str, list[dict[str, Any]]]:
    """A batch of forty bursts, each read, and as many long notes: far more than anybody does."""
    writer = Writer()
    events = [writer.opens(), writer.event("ready_checked"), writer.event("weighed", kg=1.8, lot="A-117")]
    for n in range(40):
        writer.now_ms += 60_000
        events.append(writer.event("burst_started", seconds_s=20, advised_s=20))
        writer.now_ms += 20_000
        events += [writer.event("stirred", free=True), writer.event("read", surface_c=40 + n / 2)]
        events.append(writer.event("noted", text=f"Note {n}: " + "thick, then thin, then thick again; " * 12))
    return writer.batch_id, [
        *events,
        writer.event("poured"),
        writer.event("counted", pieces=190),
        writer.event("closed"),
    ]


def prints(phone: Phone) -> Iterator[None]:
    """The paper that is shown is one page in English, then in Spanish: twice what else is held of it; then English."""
    is_one_page(phone)
    yield
    turns(phone, "es")
    is_one_page(phone)
    yield
    turns(phone, "en")


def turns(phone: Phone, language: str) -> None:
    reads_in(phone.page, language)
    phone.language = language


def goes_back(phone: Phone) -> None:
    phone.page.get_by_role("button", name="Back", exact=True).tap()


def test_plan_and_sheet_print_on_one_page(phone: Phone):
    phone.opens_place("Plan")
    phone.answered()
    phone.page.get_by_role("button", name="Print the plan").tap()
    for _ in prints(phone):
        expect(phone.page.locator(".paper .rests li")).not_to_have_count(0)
        expect(phone.page.locator(".paper svg")).to_have_count(3)
    phone.page.emulate_media(color_scheme="light")
    is_one_page(phone)
    goes_back(phone)
    phone.keeps_on_paper()
    for _ in prints(phone):
        pass


def test_plan_of_a_dipped_product_prints_with_its_chocolate_on_one_page(phone: Phone):
    next(plans_dipped(phone))
    phone.page.get_by_role("button", name="Print the plan").tap()
    for _ in prints(phone):
        expect(phone.page.locator(".paper")).to_contain_text("flaky sea salt")


def test_plan_of_clusters_prints_on_one_page(phone: Phone):
    phone.opens_place("Plan")
    for product, allergens in ((CLUSTERS, ("milk", "pecans")), ("Pretzel clusters", ("wheat", "peanuts"))):
        phone.page.get_by_label("Product", exact=True).select_option(label=product)
        phone.page.wait_for_url("**/plan/clusters")
        phone.answered()
        phone.page.get_by_role("button", name="Print the plan").tap()
        paper = phone.page.locator(".paper")
        for _ in prints(phone):
            for one in allergens:
                expect(paper).to_contain_text(phone.word(one))
            expect(paper.locator("svg")).to_have_count(2)
            expect(paper.locator(".rests li")).not_to_have_count(0)
        goes_back(phone)


def test_sheet_of_clusters_prints_on_one_page(phone: Phone):
    for sizes, clusters in ((False, "40"), (True, "200")):
        keeps_a_sheet(phone, clusters, sizes)
        paper = phone.page.locator(".paper")
        reply = phone.facts_of("batch_opened")[-1]["body"]["plan"]["reply"]
        rows = [len(reply["melt"]["bursts"]) + 4 + reply["reheats"], reply["fills"] + 2, reply["trays"] + 1]
        back = sum(1 for number in rows if number > 12)
        assert (back > 0) == sizes
        for _ in prints(phone):
            expect(paper).to_contain_text(phone.word("Tray laid"))
            printed = [table.locator("tbody tr").count() for table in paper.locator("table.by-hand").all()]
            assert printed == [min(12, number) for number in rows]
            expect(paper.get_by_text(phone.word("Further rows: on the back."))).to_have_count(back)
        goes_back(phone)


def test_a_very_long_record_prints_on_one_page_and_says_what_it_leaves_out(phone: Phone):
    batch_id, events = long_batch()
    assert phone.page.request.post("/api/events", data={"events": events}).ok
    phone.page.goto(f"/batches/{batch_id}")
    phone.page.locator(".timeline li").first.wait_for()
    assert pages(phone.page, "A4") > 1, "the count of pages can tell one from several"
    phone.page.goto(f"/batches/{batch_id}/paper")
    for _ in prints(phone):
        hidden = phone.page.locator(".paper .timeline li[hidden]").count()
        assert hidden > 0
        expect(phone.page.locator(".paper .left-out")).to_contain_text(str(hidden))
        expect(phone.page.locator(".paper header")).to_contain_text("A-117")


def saved(phone: Phone, button: str) -> str:
    with phone.page.expect_download() as waiting:
        phone.page.get_by_role("button", name=phone.word(button)).tap()
    return waiting.value.path().read_text(encoding="utf-8")


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def test_files_are_the_same_with_a_network_and_without(phone: Phone, server: Server):
    writer = Writer()
    events = [*writer.whole_batch()[:-1], writer.event("noted", text="=1+1"), writer.event("closed")]
    assert phone.page.request.post("/api/events", data={"events": events}).ok
    phone.opens_place("Records")
    expect(phone.page.get_by_role("link", name="Sea salt squares")).to_be_visible()
    with_network = saved(phone, "This list, as CSV")
    phone.page.get_by_role("link", name="Sea salt squares").tap()
    phone.page.locator(".timeline li").first.wait_for()
    phone.loses_the_network()
    timeline = rows(saved(phone, "What happened, as CSV"))
    record = json.loads(saved(phone, "The whole record, as JSON"))
    phone.opens_place("Records")
    without = saved(phone, "This list, as CSV")
    assert rows(without) == rows(with_network)
    assert rows(without)[0]["pieces"] == "205"
    assert [row["kind"] for row in timeline] == [event["kind"] for event in events]
    assert timeline[-2]["text"] == "'=1+1"
    assert (record["holds"], record["summary"]["pieces"]) == ("record", 205)
    everything = json.loads(saved(phone, "Everything recorded, as JSON"))
    assert any(event["kind"] == "shop_set" for event in everything["events"])
