"""What closed batches teach comes back in the next plan, on every phone, with and without a network."""

import re
from typing import Any

import pytest
from playwright.sync_api import Browser, expect

from e2e import axe, ruler
from e2e.conftest import PHONE
from e2e.phone import Phone
from e2e.server import ForkedServer, Server
from e2e.sync_helpers import all_sent, exchanges, send
from tests.bench import Bench, planned_slab
from tests.log import Phone as Writer
from tests.log import uuid7

WEAK = 0.8  # the simulated oven heats by this share of what its plate promises
BATCHES = 4


def closed_batch(shop: dict[str, Any], day: int) -> list[dict[str, Any]]:
    """A batch as a phone of another month wrote it: a weak oven, a slab that took its time, four centres lost."""
    own = {"oven_id": shop["ovens"][0]["id"], "base_id": shop["bases"][0]["id"], "name": f"Tuesday {day}"}
    made = {"product_id": shop["products"][0]["id"], "caramel_id": shop["caramels"][0]["id"]}
    bench = Bench(planned_slab() | own | made, device=f"phone-{day}")
    bench.sets_up()
    bench.melts(WEAK)
    bench.taps(30)
    cool = bench.plan["reply"]["cool"]
    bench.does("slab_read", cool["ready_low_s"] / 2, surface_c=38.0)
    bench.does("touched", cool["ready_low_s"] / 2, firm=False)
    bench.does("touched", cool["ready_high_s"] - cool["ready_low_s"] + 600, firm=True)
    bench.does("counted", 600, pieces=bench.plan["reply"]["cut"]["pieces"] - 4)
    bench.does("closed", 60)
    batch_id = uuid7(bench.now_ms)
    same = {"shop_id": shop["id"], "batch_id": batch_id}
    day_ms = day * 20 * 86_400_000
    return [one | same | {"id": uuid7(one["at_ms"]), "at_ms": one["at_ms"] + day_ms} for one in bench.events]


@pytest.fixture
def server(tmp_path) -> Any:
    with ForkedServer(tmp_path) as server:
        shop = server.asks("/api/shop")
        for day in range(BATCHES):
            send(server, closed_batch(shop, day))
        yield server


def melting(phone: Phone) -> str:
    """The plan's line on bursts."""
    phone.opens_place("Plan")
    phone.answered()
    return phone.page.locator(".plan-line", has_text="bursts").inner_text()


def opens_learned(phone: Phone) -> None:
    phone.opens_place("Records")
    phone.page.get_by_role("link", name=re.compile("^What the shop has learnt")).tap()
    expect(phone.page.get_by_role("heading", name="What the shop has learnt")).to_be_visible()


def leaves_out(phone: Phone, name: str, reason: str) -> None:
    card = phone.page.locator(".lesson", has=phone.page.get_by_role("link", name=name))
    card.get_by_text("Leave out").first.tap()
    card.get_by_role("button", name=reason).tap()
    expect(card).to_contain_text(f"Left out: {reason}")


def rests_on(phone: Phone, n: int) -> None:
    phone.opens_place("Plan")
    phone.answered()
    expect(phone.page.locator(".sentences")).to_contain_text(re.compile(rf"power learnt from {n} batch"))


def test_the_next_plan_uses_what_four_batches_measured_and_says_so(phone: Phone, server: Server):
    rests_on(phone, BATCHES)
    with_all = melting(phone)
    opens_learned(phone)
    expect(phone.page.locator("main")).to_contain_text(re.compile(r"\d+\sW go into the caramel"))
    expect(phone.page.locator("main")).to_contain_text("less heat than the model says")
    expect(phone.page.locator("main")).to_contain_text(re.compile(r"Cut at \d+\s°C inside"))
    expect(phone.page.locator(".lesson")).to_have_count(BATCHES)
    for day in range(BATCHES):
        leaves_out(phone, f"Tuesday {day}", "The readings are wrong")
    # Nothing is left to learn from: the plan goes by the plate again, whose oven would be quicker.
    phone.opens_place("Plan")
    expect(phone.page.locator(".sentences")).not_to_contain_text("learnt from")
    assert seconds(melting(phone)) < 0.95 * seconds(with_all)
    assert phone.errors == []


def seconds(sentence: str) -> int:
    """The duration in a sentence: "5 min 20 s", "95 s"."""
    units = {"min": 60, "s": 1}
    return sum(units[unit] * int(number) for number, unit in re.findall(r"(\d+)\s(min|s)\b", sentence))


def test_a_batch_left_out_off_line_counts_no_longer_and_the_other_phone_hears(
    phone: Phone, server: Server, browser: Browser
):
    rests_on(phone, BATCHES)
    phone.loses_the_network()
    opens_learned(phone)
    leaves_out(phone, "Tuesday 2", "Something went wrong")
    rests_on(phone, BATCHES - 1)
    phone.finds_the_network()
    all_sent(phone)
    reasons = {one["name"]: one["reason"] for one in server.asks("/api/contributions")["contributions"]}
    assert reasons["Tuesday 2"] == "Something went wrong"
    with browser.new_context(base_url=server.url, **PHONE) as context:
        other = Phone(context.new_page())
        other.installs()
        rests_on(other, BATCHES - 1)
        opens_learned(other)
        other.page.get_by_role("button", name="Take in again").tap()
        rests_on(other, BATCHES)


def test_what_was_learnt_and_the_months_can_be_read_by_everybody(phone: Phone, server: Server):
    material = f"caramels/{server.asks('/api/shop')['caramels'][0]['id']}"
    bought = {"material": material, "packs": 4, "pack_amount": 2.5, "price_minor": 12_000}
    send(server, [Writer().event("received", **bought) | {"stream": "lot/l-1", "batch_id": None}])
    exchanges(phone)
    opens_learned(phone)
    plots = phone.page.locator(".plot")
    expect(plots).to_have_count(3)
    expect(plots.first.get_by_role("img")).to_have_accessible_name(
        re.compile(r"^Good pieces, of those planned. \w+: 9\d %, ")
    )
    phone.page.locator(".lesson").first.get_by_text("Leave out").first.tap()
    ruler.settles(phone)
    assert axe.faults(phone.page, at_the_bench=False) == []
    assert ruler.desk_faults(phone) == []
    phone.page.emulate_media(color_scheme="light")
    ruler.settles(phone)
    assert axe.colour_faults(phone.page, at_the_bench=False) == []
