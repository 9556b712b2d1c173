"""Clusters with a second deposit, off line from the plan to the record, and through a reload."""

import re
from typing import Any

from playwright.sync_api import Locator, expect

from e2e.languages import reads_in
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, exchanges, record
from e2e.test_take_along import is_one_page
from e2e.walk_cluster import CLUSTERS, cluster_shift, plans_clusters, until_the_fill, weighs_ten


def test_clusters_are_laid_twice_freed_and_counted_without_a_network(phone: Phone, server: Server):
    phone.loses_the_network()
    for state in cluster_shift(phone):
        if state == "record, a weighing that cannot be":
            # Of two sizes, those of the first teach its deposit.
            expect(phone.page.locator(".guide")).to_contain_text(re.compile(r"from those of 9\s?g"))
        if state == "wait until it is tacky":
            # Its clock goes on, and rings.
            phone.page.reload()
            phone.is_at("wait")
            expect(phone.bench.locator(".clock-name").first).to_contain_text("Tacky?")
    assert len(phone.facts_of("tray_laid")) == len(phone.facts_of("second_laid")) == 1
    # The tray was laid at once after the fill.
    filled, again = (phone.facts_of(kind)[0]["at_ms"] for kind in ("filled", "second_laid"))
    second = phone.facts_of("batch_opened")[0]["body"]["plan"]["reply"]["second"]
    assert second["from_s"] <= (again - filled) / 1000 <= second["to_s"]
    row = phone.page.get_by_role("row", name=re.compile("Trays with a second deposit"))
    expect(row).to_contain_text("1")
    expect(phone.page.locator(".timeline")).to_contain_text("First row tacky")
    phone.page.get_by_role("link", name="The record as one printed page").tap()
    is_one_page(phone)
    expect(phone.page.locator(".paper .cautions")).to_contain_text("Heat glove on the funnel hand")
    phone.finds_the_network()
    all_sent(phone)
    run = record(server, phone.facts()[-1]["batch_id"])["run"]
    assert run["ignored"] == []
    assert run["pieces"] == 38
    assert phone.errors == []


def says_size(phone: Phone, number: int, clusters: str, deposit: str) -> Locator:
    """Fills in a size of the plan; its group of fields."""
    group = phone.page.get_by_role("group", name=f"Size {number}", exact=True)
    group.get_by_label("Clusters", exact=True).fill(clusters)
    group.get_by_label("One deposit", exact=True).fill(deposit)
    return group


def test_clusters_of_several_sizes_are_planned_printed_and_laid_by_size(phone: Phone, server: Server):
    next(plans_clusters(phone))
    more = phone.page.get_by_role("button", name="Another size")
    more.tap()
    more.tap()
    says_size(phone, 1, "12", "9")
    heavy = says_size(phone, 2, "5", "900")
    says_size(phone, 3, "12", "8")
    # The sentence stands at the size that cannot be, and goes with it.
    assert phone.refused().count() == heavy.locator(".field-problem").count() == 1
    heavy.get_by_role("button", name="Leave this size out").tap()
    phone.answered()
    sizes = re.compile(r"12 of 9\s?g and 12 of 8\s?g")
    expect(phone.page.locator(".sentences")).to_contain_text(sizes)
    expect(phone.page.get_by_text(re.compile("^Tray 1: "))).to_contain_text(sizes)
    circles = phone.page.locator(".picture circle.deposit")
    assert circles.count() == 24
    assert len({one.get_attribute("r") for one in circles.all()}) == 2
    phone.page.get_by_role("button", name="Print the plan").tap()
    is_one_page(phone)
    expect(phone.page.locator(".paper")).to_contain_text(sizes)
    phone.page.get_by_role("button", name="Back").tap()
    expect(phone.page.get_by_role("group", name="Size 2").get_by_label("Clusters", exact=True)).to_have_value("12")
    phone.start.tap()
    for state in until_the_fill(phone):
        if state == "what goes under":
            expect(phone.page.locator(".say")).to_have_text("To each place: 3\u00a0× pecan.")
    phone.taps()
    phone.is_at("lay")
    expect(phone.page.locator(".say")).to_contain_text(sizes)
    reads_in(phone.page, "es")
    expect(phone.page.locator(".say")).to_contain_text(re.compile(r"12 de 9\s?g y 12 de 8\s?g"))
    all_sent(phone)
    rows = phone.facts_of("batch_opened")[0]["body"]["plan"]["request"]["rows"]
    assert [(row["clusters"], round(row["deposit_kg"], 9)) for row in rows] == [(12, 0.009), (12, 0.008)]
    assert record(server, phone.facts()[-1]["batch_id"])["run"]["ignored"] == []
    assert phone.errors == []


def basis_planned(phone: Phone) -> dict[str, Any]:
    """What the sizes of the next plan of clusters rest on."""
    next(plans_clusters(phone))
    phone.start.tap()
    phone.is_at("set_up")
    rows = phone.facts_of("batch_opened")[-1]["body"]["plan"]["reply"]["inputs"]
    sizes = ("rows[0].deposit_kg", "second_kg", "spread_m")
    return {row["field"]: row["basis"] for row in rows if row["field"] in sizes}


def test_ten_clusters_teach_the_funnel_on_every_phone_until_it_is_taken_back(phone: Phone, other: Phone):
    phone.page.goto("/shop/funnels/funnel-hand")
    weighs_ten(phone, "205", "", ("37", "40", "43"))
    guide = phone.page.locator(".guide")
    # 205 g less ten times three pecans of 1.5 g: 16 g of caramel, 9 of 14 parts of it first.
    expect(guide).to_contain_text(re.compile(r"One deposit: 10\.3\s?g"))
    expect(guide).to_contain_text(re.compile(r"Width: 40\s?mm"))
    guide.get_by_role("button", name=f"Keep it for {CLUSTERS}").tap()
    expect(guide.get_by_role("status")).to_contain_text(f"{CLUSTERS}: deposit and width measured.")
    all_sent(phone)
    exchanges(other)
    assert basis_planned(other) == {"rows[0].deposit_kg": "measured", "second_kg": "measured", "spread_m": "measured"}
    guide.get_by_role("button", name="Undo").tap()
    expect(guide.get_by_role("status")).to_be_empty()
    assert set(basis_planned(phone).values()) == {"assumed"}
