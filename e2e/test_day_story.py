"""Three batches at once on one phone: a slab cools while chocolate is tempered and clusters are laid, off line."""

import itertools
import os
import re

from playwright.sync_api import expect

from e2e import ruler
from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, record
from e2e.test_chocolate_story import has_the_bowl_in_temper, passes_through
from e2e.walk_chocolate import BOWL
from e2e.walk_cluster import plans_clusters, until_the_fill

SECOND, CLUSTERS = "Squares, 24 mm D", "Pecan clusters C"
# The row of clocks: where each stands, and whether its words are whole.
CLOCKS = """() => [...document.querySelectorAll(".clocks > li:not(.clocks-rest)")].map((one) => {
    const { left, right, top } = one.getBoundingClientRect();
    const cut = [...one.querySelectorAll("b, .clock-name")].some((text) => text.scrollWidth > text.clientWidth);
    return { left, right, top, cut, words: one.innerText };
})"""


def has_clocks_in_one_row(phone: Phone, count: int) -> None:
    """Beside each other and whole, on a usual and on a narrow phone."""
    for width, height in ((360, 780), (390, 844)):
        phone.page.set_viewport_size({"width": width, "height": height})
        ruler.settles(phone)
        clocks = phone.page.evaluate(CLOCKS)
        assert len(clocks) == len({clock["words"] for clock in clocks}) == count
        assert len({clock["top"] for clock in clocks}) == 1, clocks
        assert not any(clock["cut"] for clock in clocks), clocks
        assert all(one["right"] <= other["left"] for one, other in itertools.pairwise(clocks)), clocks
        assert clocks[0]["left"] >= 0
        assert clocks[-1]["right"] <= width


def looks_right(phone: Phone, name: str) -> None:
    """Sizes, contrasts and room on three phones, dark and light."""
    faults = []
    for width, height in ((360, 640), (360, 780), (390, 844)):
        phone.page.set_viewport_size({"width": width, "height": height})
        for scheme in ("light", "dark"):
            phone.page.emulate_media(color_scheme=scheme)
            ruler.settles(phone)
            faults += ruler.bench_faults(phone) if phone.at_the_bench else ruler.desk_faults(phone)
            if folder := os.environ.get("AMBERBENCH_SHOTS"):
                path = f"{folder}/day-{name}-{phone.language}-{height}-{scheme}.png"
                phone.page.screenshot(path=path, scale="css")
    assert faults == []


def rests(phone: Phone) -> None:
    """What rings while the hands are elsewhere is silenced."""
    if phone.ring.count():
        phone.silences()


def test_a_slab_cools_while_clusters_are_laid_and_chocolate_is_tempered(phone: Phone, server: Server):
    phone.keeps_every_language()
    phone.loses_the_network()
    phone.plans_and_starts()
    phone.sets_up()
    phone.melts()
    phone.taps("Poured")
    phone.leaves_the_bench()
    # The slab takes this chocolate below: no wash between the two.
    has_the_bowl_in_temper(phone)
    phone.leaves_the_bench()
    passes_through(plans_clusters(phone))
    phone.is_at("wash")
    expect(phone.bench).to_contain_text("Wash off soya")
    phone.taps("Washed")
    passes_through(until_the_fill(phone))
    phone.taps()
    phone.is_at("lay")
    rests(phone)
    phone.leaves_the_bench()
    # Nuts lie on the bench: nothing nut-free begins before a wash, and the day says so.
    expect(phone.page.locator(".wash").first).to_contain_text("pecans")
    looks_right(phone, "today")
    phone.plans_and_starts(at="wash")
    expect(phone.bench).to_contain_text("Wash off pecans")
    has_clocks_in_one_row(phone, 3)
    looks_right(phone, "wash")
    phone.leaves_the_bench()
    phone.speaks("es")
    phone.returns_to(SECOND)
    has_clocks_in_one_row(phone, 3)
    looks_right(phone, "wash")
    phone.taps("Washed")
    phone.is_at("set_up")
    rests(phone)
    phone.leaves_the_bench()
    # Washed once, clean for all: only what stays to be done asks for a wash; what rings soon goes first, then what is
    # hot, for which nobody stops to wash.
    expect(phone.page.locator(".card b")).to_have_text([re.compile(BOWL), CLUSTERS, "Squares, 24 mm", SECOND])
    expect(phone.page.locator(".wash")).to_have_text([re.compile("nueces pecanas")])
    phone.finds_the_network()
    all_sent(phone)
    ids = {event["body"]["plan"]["name"]: event["batch_id"] for event in phone.facts_of("batch_opened")}
    runs = {name: record(server, batch_id)["run"] for name, batch_id in ids.items()}
    assert [name for name, run in runs.items() if run["wash"]["washed_ms"]] == [CLUSTERS, SECOND]
    assert [run["wash"]["wanted"] for run in runs.values()] == [None] * 4
    assert [run["ignored"] for run in runs.values()] == [[]] * 4
    told = [event["body"] for event in phone.facts_of("wash_told") if event["batch_id"] == ids[SECOND]]
    assert told[0]["allergens"] == ["pecan"]
    assert CLUSTERS in told[0]["after"]
    assert len(server.asks("/api/batches")["batches"]) == 4
    assert phone.errors == []
