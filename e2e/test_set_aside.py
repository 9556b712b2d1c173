"""A phone whose clock is far ahead writes into batch and shop: the others go on, and see what was set aside."""

from typing import Any

from playwright.sync_api import expect

from e2e.phone import Phone
from e2e.server import Server
from e2e.sync_helpers import all_sent, hears
from tests.log import uuid7

YEAR_5138_MS = 1e14


def writes_far_ahead(server: Server, like: dict[str, Any], **told: Any) -> None:
    event = like | {"id": uuid7(), "device_id": "its-clock-is-wrong", "at_ms": YEAR_5138_MS} | told
    (answer,) = server.asks("/api/events", {"events": [event]})["answers"]
    assert (answer["result"], answer["flags"]) == ("stored", ["future", "ahead"])


def test_batch_and_shop_go_on_and_say_what_was_set_aside(phone: Phone, server: Server):
    batch_id = phone.plans_and_starts()
    all_sent(phone)
    (opening,) = phone.facts()
    writes_far_ahead(server, opening, kind="noted", body={"text": "from far ahead"})
    edit = {"doc": "caramels/caramel-firm", "field": "contains", "value": [], "basis": "typed"}
    writes_far_ahead(server, opening, kind="shop_set", stream=f"shop/{opening['shop_id']}", batch_id=None, body=edit)
    hears(phone, 2)
    phone.sets_up()
    all_sent(phone)
    assert max(fact["at_ms"] for fact in phone.facts() if fact["device_id"] == opening["device_id"]) < YEAR_5138_MS / 10
    assert server.asks(f"/api/batches/{batch_id}")["summary"]["step"] == "melt"
    phone.page.goto(f"/batches/{batch_id}")
    aside = phone.page.get_by_text("1 entry is kept but counts nowhere")
    expect(aside).to_be_visible()
    expect(phone.page.get_by_text("from far ahead")).to_be_visible()
    phone.page.goto("/shop")
    expect(phone.page.get_by_text("2 entries are kept but count nowhere")).to_be_visible()
    (caramel,) = [one for one in server.asks("/api/shop")["caramels"] if one["id"] == "caramel-firm"]
    assert caramel["contains"] == ["milk"]
    # Decided by hand: the edit stays out, the note counts.
    note = phone.page.get_by_role("listitem").filter(has_text="from far ahead")
    note.get_by_role("button", name="Let it count").tap()
    expect(phone.page.get_by_text("1 entry is kept but counts nowhere")).to_be_visible()
    phone.page.get_by_role("button", name="Leave out").tap()
    expect(phone.page.get_by_text("counts nowhere")).to_have_count(0)
    all_sent(phone)
    found = server.asks(f"/api/batches/{batch_id}")
    assert "from far ahead" in [one["body"].get("text") for one in found["events"]]
    assert found["set_aside"] == []
    (caramel,) = [one for one in server.asks("/api/shop")["caramels"] if one["id"] == "caramel-firm"]
    assert caramel["contains"] == ["milk"]
