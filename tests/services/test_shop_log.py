"""A shop begins once, as the invented one, empty, or out of the document an older server kept; edits fold into it."""

import json
from datetime import datetime
from uuid import RFC_4122, UUID

import pytest
from sqlalchemy import text

from amberbench.config import demo_shop_file, demo_trade_file
from amberbench.engine import catalogue
from amberbench.services import setup, shop, streams
from amberbench.services.uuid7 import uuid7s
from amberbench.store import writing
from tests.bench import NINE_OCLOCK_MS
from tests.conftest import application
from tests.log import BEGUN, Phone, pulled, push, results

DEMO = demo_shop_file().read_text(encoding="utf-8")
NOW = int(NINE_OCLOCK_MS)


@pytest.fixture
def app_without_database(tmp_path):
    """An application whose database does not exist yet."""
    app = application(tmp_path / "bare.sqlite")
    with app.app_context():
        yield app


def events_of(app):
    return pulled(app.test_client(), 0)["events"]


def test_invented_shop_is_written_into_the_log_once(app_without_database):
    assert setup.set_up(DEMO, NOW) is True
    before = events_of(app_without_database)
    assert (len(before), {one["device_id"] for one in before}) == (BEGUN, {"seed"})
    assert setup.set_up(DEMO, NOW) is False
    assert setup.set_up(None, NOW) is False
    assert events_of(app_without_database) == before
    assert shop.document()["ovens"][0]["rated_w"] == 1000


def test_what_a_shop_begins_with_has_ids_one_after_the_other_from_a_random_one(app_without_database):
    setup.set_up(DEMO, NOW)
    ids = [UUID(one["id"]) for one in events_of(app_without_database)]
    assert [one.int for one in ids] == list(range(ids[0].int, ids[0].int + BEGUN))
    assert {(one.version, one.variant, one.int >> 80) for one in ids} == {(7, RFC_4122, NOW)}
    assert len({next(uuid7s(NOW)) for _ in range(100)}) == 100


def test_empty_shop_has_an_id_of_its_own_and_nothing_else(app_without_database):
    assert setup.set_up(None, NOW) is True
    document = shop.document()
    assert document["id"] == app_without_database.test_client().get("/api/health").get_json()["shop_id"]
    assert (document["invented"], document["ovens"], document["products"]) == (False, [], [])
    assert [one["body"]["field"] for one in events_of(app_without_database)] == ["invented"]


def older_document():
    """As servers kept it before the shop was a fold: rows, and `figures` for what they rest on."""
    return {
        "id": "our-shop", "name": "Ours", "invented": False, "language": "es", "about": "…",
        "units": {"mass": "lb", "length": "in", "temperature": "°F", "power": "W"}, "room_c": 24,
        "ovens": [{"id": "a", "name": "Oven", "rated_w": 950, "turntable": True, "step_s": 10, "unevenness": None}],
        "vessels": [{"id": "b", "name": "Bowl", "mass_kg": 1.1, "heat_capacity_j_kgk": 900}],
        "bases": [{"id": "c", "name": "Sheet", "base": "steel_sheet", "contact_m2k_w": 0.005, "bottom": "still_air"}],
        "bars": [{"height_m": 0.0127, "count": 4, "length_m": 0.5}],
        "tables": [{"max_length_m": 0.7, "max_width_m": 0.5}],
        "caramels": [{"id": "d", "name": "Soft", "block_kg": 2.5, "limit_c": 92, "warn_c": 80, "stop_c": 84,
                      "windows": {"slab": {"low_c": 68, "high_c": 74}}, "contains": ["milk"],
                      "material": {"water": 0.1, "protein": 0.04, "fat": 0.1, "carbohydrate": 0.74, "fibre": 0,
                                   "ash": 0.02}}],
        "products": [{"id": "e", "name": "Squares", "kind": "slab", "caramel_id": "d", "piece_length_m": 0.0254,
                      "piece_width_m": 0.0254, "slab_height_m": 0.0127, "trim_m": 0.006, "kerf_m": 0, "per_box": 12,
                      "prebottom": True}],
        "figures": {"ovens[].rated_w": {"unit": "W", "basis": "measured", "source": "assumed"}},
    }  # fmt: skip


def holds(new, old, path=""):
    """Every value of the old document stands in the new one."""
    for name, value in old.items():
        if name in ("about", "figures"):
            continue
        if isinstance(value, dict):
            holds(new[name], value, f"{path}.{name}")
        elif isinstance(value, list) and value and isinstance(value[0], dict):
            assert len(new[name]) == len(value)
            for one, other in zip(new[name], value, strict=True):
                holds(one, other, f"{path}.{name}")
        else:
            assert new[name] == pytest.approx(value) if isinstance(value, float) else new[name] == value, (
                f"{path}.{name}"
            )


def test_document_of_an_older_server_becomes_events_and_loses_nothing(app_without_database):
    setup.set_up(None, NOW)
    with writing() as session:
        session.execute(text("DELETE FROM event"))
        values = {"document": json.dumps(older_document()), "id": "our-shop"}
        session.execute(text("UPDATE shop SET id = :id, document = :document"), values)
    assert setup.set_up(DEMO, NOW) is False
    document = shop.document()
    holds(document, older_document())
    assert document["basis"]["ovens/a.rated_w"] == "measured"
    written = events_of(app_without_database)
    setup.set_up(DEMO, NOW)
    assert events_of(app_without_database) == written


def edit(phone, doc, field, value):
    phone.batch_id = None
    return phone.event("shop_set", doc=doc, field=field, value=value, basis="typed")


def test_edits_of_two_phones_meet_in_one_shop(client):
    one, other = Phone(device_id="phone-a"), Phone(device_id="phone-b")
    watts, step = edit(one, "ovens/oven-large", "rated_w", 900), edit(other, "ovens/oven-large", "step_s", 15)
    assert results(push(client, watts)) == results(push(client, step)) == ["stored"]
    oven = client.get("/api/shop").get_json()["ovens"][0]
    assert (oven["rated_w"], oven["step_s"], oven["turntable"]) == (900, 15, True)
    snapshot = client.get("/api/snapshot").get_json()
    assert snapshot["shop"] == client.get("/api/shop").get_json()
    assert {watts["id"], step["id"]} <= {event["id"] for event in snapshot["events"]}


def test_edit_that_makes_no_sense_is_stored_and_changes_nothing(client):
    before = client.get("/api/shop").get_json()
    assert results(push(client, edit(Phone(), "ovens/oven-large", "rated_w", "much"))) == ["stored"]
    assert client.get("/api/shop").get_json() == before


def test_invented_shop_lives_with_stock_boxes_and_orders_for_its_week(app_without_database):
    setup.set_up(DEMO, NOW, "es", demo_trade_file().read_text(encoding="utf-8"))
    client = app_without_database.test_client()
    found = {place: client.get(f"/api/{place}").get_json()["documents"] for place in ("lots", "packs", "orders")}
    bought = {one["material"].partition("/")[0] for one in found["lots"]}
    assert bought == {"caramels", "chocolates", "materials"}
    assert all(one["price_minor"] for one in found["lots"])
    # In another currency than the shop's they would cost nothing.
    assert {one["currency"] for one in found["lots"]} == {shop.document()["currency"]}
    assert [one["customer"] for one in found["orders"]] == ["Salón de té", "Panadería de la esquina"]
    days = [
        datetime.fromtimestamp(one["wanted_ms"] / 1000) - datetime.fromtimestamp(NOW / 1000) for one in found["orders"]
    ]
    assert all(0 < day.days <= 7 for day in days)
    assert all(datetime.fromtimestamp(one["wanted_ms"] / 1000).weekday() < 5 for one in found["orders"])
    boxes = {one["id"] for one in shop.document()["boxes"]}
    assert {line["box_id"] for one in found["orders"] for line in one["lines"]} <= boxes
    assert found["packs"][0]["code"].endswith("A")
    for place, documents in found.items():
        for one in documents:
            events = client.get(f"/api/{place}/{one['id']}").get_json()["events"]
            ignored = catalogue.call(f"{place[:-1]}.fold", {"id": one["id"], "events": events})["ignored"]
            assert (one["id"], ignored) == (one["id"], [])


def test_what_is_taken_back_of_the_invented_trade_stands_on_no_list_also_after_a_rebuild(app_without_database):
    setup.set_up(DEMO, NOW, "en", demo_trade_file().read_text(encoding="utf-8"))
    client = app_without_database.test_client()
    (placed,) = client.get("/api/orders/invented-bakery").get_json()["events"]
    undone = Phone().event("undone", event_id=placed["id"]) | {"stream": placed["stream"], "batch_id": None}
    push(client, undone)
    assert "invented-bakery" not in {one["id"] for one in client.get("/api/orders").get_json()["documents"]}
    streams.rebuild()
    assert "invented-bakery" not in {one["id"] for one in client.get("/api/orders").get_json()["documents"]}
