"""Clusters with a second deposit, off line from the plan to the record, and through a reload."""

import re
from typing import Any

from playwright.sync_api import expect

from e2e.between import all_sent, exchanges, record
from e2e.phone import Phone
from e2e.server import Server
from e2e.test_take_along import is_one_page
from e2e.walk_cluster import CLUSTERS, cluster_shift, lays, plans_clusters, until_the_fill, weighs_ten


def test_clusters_are_laid_twice_freed_and_counted_without_a_network(phone: Phone, server: Server):
    phone.loses_the_network()
    for _ in cluster_shift(phone):
        pass
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


def test_clocks_of_funnel_and_tray_survive_a_reload(phone: Phone):
    for stretch in (plans_clusters, until_the_fill):
        for _ in stretch(phone):
            pass
    states = lays(phone)
    while next(states) != "wait until it is tacky":
        pass
    phone.page.reload()
    phone.is_at("wait")
    names = phone.bench.locator(".clock-name").all_inner_texts()
    assert "Tacky?" in " ".join(names)
    phone.waits_for_the_ring(400)
    phone.silences()
