"""A batch on paper: the sheet of a plan, filled in by hand and typed back."""

import re
from datetime import UTC, datetime, timedelta

import pytest
from playwright.sync_api import expect

from e2e import ruler
from e2e.languages import reads_in
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent
from e2e.walk_cluster import keeps_a_sheet


class Sheet:
    """A sheet filled in at the kitchen's clock, minutes after the batch was planned, and the form it is typed into."""

    def __init__(self, phone: Phone) -> None:
        self.phone = phone
        planned = phone.facts_of("batch_opened")[0]["at_ms"] / 1000
        self.begun = datetime.fromtimestamp(planned, UTC).replace(second=0) + timedelta(minutes=1)

    def time(self, label: str, minute: int, nth: int = 0) -> None:
        at = (self.begun + timedelta(minutes=minute)).strftime("%H:%M")
        self.phone.page.get_by_label(self.phone.word(label), exact=True).nth(nth).fill(at)

    def box(self, label: str, value: str, nth: int = 0) -> None:
        self.phone.page.get_by_label(self.phone.word(label), exact=True).nth(nth).fill(value)

    def tick(self, group: str, name: str, option: str) -> None:
        self.phone.page.get_by_role("group", name=group).get_by_label(option, exact=True).check(force=True)

    def is_kept(self) -> None:
        self.phone.page.get_by_role("button", name=self.phone.word("Write it into the record")).tap()
        self.phone.passes(300)

    def is_refused(self, box: str, typed: str) -> None:
        """Times out of order: nothing is written, and what was typed is still there after a reload."""
        self.is_kept()
        page = self.phone.page
        expect(page.get_by_role("alert").first).to_contain_text("is before what comes first")
        assert [fact["kind"] for fact in self.phone.facts()] == ["batch_opened"]
        page.reload()
        expect(page.get_by_label(box)).to_have_value(typed)


def opened_hours_later(phone: Phone) -> Sheet:
    """The batch was run without a phone or a network; its sheet is opened to be typed in."""
    phone.loses_the_network()
    phone.page.clock.fast_forward(6 * 3_600_000)
    phone.page.get_by_role("button", name="Type the paper sheet in").tap()
    return Sheet(phone)


def fill_in(sheet: Sheet) -> None:
    """A whole sheet, as a 1.8 kg batch may go."""
    sheet.box("Made by", "Whoever was there")
    sheet.box("Lot", "B-7")
    sheet.time("All ready at", 1)
    sheet.box("Weighed out", "1.8")
    for n in range(6):
        sheet.time("Started at", 4 + 2 * n, n)
        sheet.box("Seconds set", "60", n)
        sheet.box("Reading", str(35 + 7 * n), n)
        if n > 2:
            sheet.tick(f"Burst {n + 1}", "No lumps", "yes")
    sheet.time("Poured at", 20)
    sheet.time("At", 110)
    sheet.tick("Reading or touch test 1", "Firm?", "not yet")
    sheet.time("At", 140, 1)
    sheet.tick("Reading or touch test 2", "Firm?", "yes")
    sheet.time("Cut at", 170)
    sheet.box("Good centres", "190")
    sheet.box("Rest: trim, broken ones", "0.2")
    sheet.box("Notes", "A calm day")


def test_a_batch_is_run_on_paper_and_typed_back_without_a_network(phone: Phone, server: Server):
    phone.opens_place("Plan")
    phone.answered()
    batch_id = phone.keeps_on_paper()
    sheet = opened_hours_later(phone)
    fill_in(sheet)
    sheet.time("Poured at", 6)
    sheet.is_refused("Good centres", "190")
    sheet.time("Poured at", 20)
    sheet.is_kept()
    expect(phone.page.get_by_role("heading", name="Planned and happened")).to_be_visible()
    expect(phone.page.locator(".compared")).to_contain_text("190")
    expect(phone.page.get_by_text("Note: Made by Whoever was there")).to_be_visible()
    expect(phone.page.get_by_text("typed in later").first).to_be_visible()
    phone.finds_the_network()
    all_sent(phone)
    record = phone.page.request.get(f"/api/batches/{batch_id}").json()
    assert record["run"]["ignored"] == []
    assert (record["run"]["pieces"], record["run"]["lot"]) == (190, "B-7")
    assert [burst["reading_c"] for burst in record["run"]["melt"]["bursts"]] == [35, 42, 49, 56, 63, 70]
    assert all(event["body"]["typed_at_ms"] for event in record["events"][1:])


def test_clusters_are_run_on_paper_and_typed_back_without_a_network(phone: Phone, server: Server):
    phone.keeps_every_language()
    batch_id = keeps_a_sheet(phone, "40")
    sheet = opened_hours_later(phone)
    expect(phone.page.get_by_label("Poured at")).to_have_count(0)
    for language in ("es", "en"):
        reads_in(phone.page, language)
        for width, height in ((360, 640), (390, 844)):
            phone.page.set_viewport_size({"width": width, "height": height})
            assert ruler.size_faults(phone) == []
    sheet.box("Lot", "C-3")
    sheet.time("All ready at", 1)
    sheet.box("Weighed out", "0.6")
    phone.page.get_by_role("group", name=phone.word("Work without these done and covered?")).get_by_label(
        "yes", exact=True
    ).check(force=True)
    phone.page.get_by_label(re.compile("^Lot of the .*[?]$")).first.fill("N-5")
    for n in range(3):
        sheet.time("Started at", 4 + 2 * n, n)
        sheet.box("Seconds set", "30", n)
        sheet.box("Reading", str(45 + 12 * n), n)
    sheet.time("Tray laid", 14)
    sheet.time("Second deposit", 25)
    sheet.time("Tray free of its parchment", 110)
    sheet.box("Good clusters", "39")
    sheet.box("Loose pieces", "0.03")
    # Laid out of a funnel that nobody filled: the sentence stands where the fill is missing, and above the button.
    sheet.is_kept()
    expect(phone.page.get_by_role("alert")).to_have_count(2)
    assert [fact["kind"] for fact in phone.facts()] == ["batch_opened"]
    sheet.time("Filled", 12)
    sheet.time("Second deposit", 13)
    sheet.is_refused("Good clusters", "39")
    sheet.time("Second deposit", 25)
    sheet.is_kept()
    expect(phone.page.get_by_role("heading", name="Planned and happened")).to_be_visible()
    expect(phone.page.locator(".compared")).to_contain_text("39")
    phone.finds_the_network()
    all_sent(phone)
    run = phone.page.request.get(f"/api/batches/{batch_id}").json()["run"]
    assert run["ignored"] == []
    assert (run["pieces"], run["lot"], run["out"]) == (39, "C-3", [{"kg": 0.03, "what": "loose"}])
    assert run["cluster"]["under_lots"][0]["lot"] == "N-5"
    [tray] = run["cluster"]["laid"]
    assert (tray["second_ms"] - tray["laid_ms"]) / 60_000 == pytest.approx(11, abs=0.1)
    assert tray["freed_ms"] is not None
    assert phone.errors == []
