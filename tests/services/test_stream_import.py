"""Lots, orders and boxes packed go out as CSV or JSON and come in the same; what cannot be read changes nothing."""

import json
import random

import pytest
from click.testing import CliRunner

from amberbench.cli import main as command
from amberbench.engine import fields
from amberbench.services import setup, stream_export
from amberbench.store import db
from tests import strategies_streams
from tests.conftest import application
from tests.log import Phone, push
from tests.problem_shape import assert_problem

DAY_MS = 86_400_000
KINDS = sorted(fields.STREAM_EVENTS)


def written(client, kind, rng, number):
    """Streams of a kind by two phones: most of what people write, some that makes no sense, some taken back."""
    for nth in range(number):
        known = fields.STREAM_EVENTS[kind]
        first = {"lot": ["received", "made"], "order": ["placed"], "pack": ["packed"]}[kind]
        log = strategies_streams.events_of(rng, known, first)
        phone = Phone(device_id=f"phone-{kind}-{nth}")
        ids = {one["id"]: phone.event(one["kind"])["id"] for one in log}
        sent = []
        for one in log:
            body = {"event_id": ids[one["body"]["event_id"]]} if "event_id" in one["body"] else one["body"]
            own = {"id": ids[one["id"]], "at_ms": one["at_ms"], "offset_ms": rng.choice([0, 0.5]), "body": body}
            sent.append(phone.event(one["kind"]) | own | {"stream": f"{kind}/s-{nth}", "batch_id": None})
        push(client, *sent)


def taken(client, kind, form):
    return client.get(f"/api/{kind}s.{form}").get_data(as_text=True)


def bring(client, kind, file):
    return client.post(f"/api/{kind}s", json={"file": file})


@pytest.fixture
def empty(tmp_path, clock):
    """The client of a shop of one's own in which there is nothing, a day later."""
    clock.now_ms += DAY_MS
    app = application(tmp_path / "empty.sqlite", clock)
    with app.app_context():
        setup.set_up(None, clock.now_ms)
    yield app.test_client()
    with app.app_context():
        db.engine.dispose()


def comes_in_again(client, request, kind, form, seed, number):
    written(client, kind, random.Random(f"{kind}{form}{seed}"), number)
    file = taken(client, kind, form)
    empty = request.getfixturevalue("empty")
    reply = bring(empty, kind, file)
    assert reply.status_code == 200, reply.get_json()
    added = reply.get_json()["added"]
    assert added >= number * 3 / 4
    assert taken(empty, kind, form) == file
    assert bring(empty, kind, file).get_json() == {"added": 0, "known": added}
    assert taken(empty, kind, form) == file


@pytest.mark.parametrize("form", ["csv", "json"])
@pytest.mark.parametrize("kind", KINDS)
def test_what_goes_out_comes_in_again_to_the_byte(client, request, kind, form):
    comes_in_again(client, request, kind, form, 0, 8)


@pytest.mark.prove
@pytest.mark.parametrize("form", ["csv", "json"])
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("seed", range(1, 11))
def test_what_goes_out_comes_in_again_to_the_byte_at_length(client, request, kind, form, seed):
    comes_in_again(client, request, kind, form, seed, 40)


def test_table_typed_by_hand_places_orders_once(client):
    product = client.get("/api/shop").get_json()["products"][0]["id"]
    typed = (
        "\ufeffcustomer;wanted_at;product_id;count;mass_kg;note\r\n"
        f"Corner bakery;2025-12-05T15:00:00+01:00;{product};40;;'=2+2\r\n"
        f"Marta;2025-12-06T09:00Z;{product};;1,5;\r\n"
    )
    assert bring(client, "order", typed).get_json() == {"added": 2, "known": 0}
    assert bring(client, "order", typed).get_json() == {"added": 0, "known": 2}
    late, early = client.get("/api/orders").get_json()["documents"]
    assert (late["lines"][0]["mass_kg"], late["state"]) == (1.5, "open")
    assert (early["customer"], early["note"], early["wanted_ms"]) == ("Corner bakery", "=2+2", 1_764_943_200_000)


def test_cell_that_a_spreadsheet_would_run_is_told_from_one_that_begins_with_an_apostrophe():
    for text in ("=1+1", "'=1+1", "''=1", "@a", "'tis", "-3 °C", "+", "'", "\tx"):
        order = stream_export._cell(text)
        assert not order.startswith(("=", "+", "-", "@", "\t"))
        assert stream_export.plain(order) == text


HEAD = "id,customer,wanted_at,placed_at,box_id,product_id,count,mass_kg,state,what,handed_at\n"
REFUSED = [
    ("order", "id,customer,colour\n", "line[1]", "not_an_option"),
    ("order", "", "line[1]", "not_an_option"),
    ("order", HEAD + "a,,,,,,,,,,,,\n", "line[2]", "too_many"),
    ("order", HEAD + "a b,,,,,,,,,,\n", "line[2].id", "malformed"),
    ("order", HEAD + "a,A,tomorrow,,x,,3,,,,\n", "line[2].wanted_at", "cell"),
    ("order", HEAD + "a,A,2025-12-05T15:00,,x,,3,,,,\n", "line[2].wanted_at", "cell"),
    ("order", HEAD + "a,A,2025-12-05T15:00Z,2025-11-20T15:00Z,x,,many,,,,\n", "line[2].count", "cell"),
    ("order", HEAD + 'a,"A\nB",2025-12-05T15:00Z,2025-11-20T15:00Z,x,,1,,,,\n'
     "a,,,,x,,0,,,,\n", "line[4].count", "too_low"),
    ("order", HEAD + "a,A,2025-12-05T15:00Z,2025-11-20T15:00Z,x,,3,,handed,,\n", "line[2].state", "does_not_follow"),
    ("order", HEAD + "a,A,2025-12-05T15:00Z,2026-11-20T15:00Z,x,,3,,,,\n", "line[2].placed_at", "later_than_now"),
    ("order", HEAD + "a,A,2025-12-05T15:00Z,2025-11-20T15:00Z,x,,3,,,gone,\n", "line[2].what", "cell"),
    ("order", HEAD + "a,A,2025-12-05T15:00Z,2025-11-20T15:00Z,x,,3,,,handed,\n", "line[2].handed_at", "cell"),
    ("order", HEAD + ",A,2025-12-05T15:00Z,,,,3,,,,\n", "line[2].what", "give_one_of"),
    ("order", HEAD + ",A,2025-12-05T15:00Z,,no-such-box,,3,,,,\n", "line[2].box_id", "not_in_shop"),
    ("lot", "material,amount,best_by\nmaterials/none,2,\n", "line[2].material", "not_in_shop"),
    ("lot", "id,material,amount,received_at,counts\na,m,2,2025-11-20T15:00Z,2025-11-20T16:00:00Z\n",
     "line[2].counts", "cell"),
    ("lot", "id,material,amount,received_at,discarded\na,m,2,2025-11-20T15:00Z,2025-11-20T16:00:00Z 1 eaten\n",
     "line[2].discarded", "not_an_option"),
    ("lot", "id,material,amount,received_at,price_minor\na,m,2,2025-11-20T15:00Z,-5\n",
     "line[2].price_minor", "too_low"),
    ("lot", "id,material,amount,received_at,best_by\na,m,2,2025-11-20T15:00Z,2025-02-30\n",
     "line[2].best_by", "does_not_follow"),
    ("pack", "id,box_id,packed,packed_at,batches\na,x,5,2025-11-20T15:00Z,b-1\n", "line[2].batches", "cell"),
    ("pack", "id,box_id,packed,count,packed_at\na,x,5,6,2025-11-20T15:00Z\n", "line[2].count", "too_low"),
    ("pack", "id,box_id,packed,packed_at,seconds\na,x,5,2025-11-20T15:00Z,maybe\n", "line[2].seconds", "cell"),
    ("order", '{"holds": "lots"}', "file", "not_an_export"),
    ("order", "{", "file", "not_an_export"),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "file", "field", "code"), REFUSED)
def test_what_cannot_be_read_is_named_by_line_column_and_value_and_nothing_comes_in(client, kind, file, field, code):
    good = {"order": "b,B,2025-12-05T15:00Z,2025-11-20T15:00Z,x,,3,,,,\n"}.get(kind, "")
    reply = bring(client, kind, file + good if file.startswith(HEAD) else file)
    detail = assert_problem(reply, 422, code, field)["detail"]
    if field.startswith("line["):
        line, _, column = field.removeprefix("line[").partition("]")
        assert detail.startswith(f"Line {line}, {column.removeprefix('.') or 1}")
    assert client.get(f"/api/{kind}s").get_json()["documents"] == []


def test_what_is_here_and_says_something_else_is_refused_and_stays(client):
    line = "a,Marta,2025-12-05T15:00:00Z,2025-11-20T15:00:00Z,x,,3,,,,\n"
    assert bring(client, "order", HEAD + line).get_json()["added"] == 1
    reply = bring(client, "order", HEAD + line.replace(",3,", ",4,"))
    assert "“4” differs" in assert_problem(reply, 422, "already_here", "line[2].count")["detail"]
    assert client.get("/api/orders/a").get_json()["document"]["lines"][0]["count"] == 3


def test_json_of_other_events_or_changed_documents_is_refused_whole(client):
    written(client, "order", random.Random(3), 3)
    file = json.loads(taken(client, "order", "json"))
    other = json.loads(json.dumps(file))
    other["events"][-1]["stream"] = "shop/demo-shop"
    assert_problem(bring(client, "order", json.dumps(other)), 422, "not_an_option")
    other = json.loads(json.dumps(file))
    other["documents"][0]["note"] = "two more"
    assert_problem(bring(client, "order", json.dumps(other)), 422, "does_not_follow", "documents[0].note")
    other = json.loads(json.dumps(file))
    other["events"][-1]["kind"] = "cancelled_by_somebody"
    other["documents"] = []
    assert_problem(bring(client, "order", json.dumps(other)), 422, "id_reused")
    assert taken(client, "order", "json") == json.dumps(file, ensure_ascii=False, separators=(",", ":"))


def test_reader_may_take_a_file_along_but_none_in(shop):
    client = shop.test_client()
    assert_problem(client.post("/api/orders", json={"file": HEAD}), 401)


def test_command_takes_in_a_file_and_says_which_line_it_cannot_read(client, database, tmp_path):
    file = tmp_path / "orders.csv"
    good = "a,Marta,2025-12-05T15:00:00Z,2025-11-20T15:00:00Z,x,,3,,,,\n"
    ask = ["import-table", "orders", str(file), "--database", f"sqlite:///{database}"]
    file.write_text(HEAD + good.replace(",3,", ",three,"), encoding="utf-8")
    refused = CliRunner().invoke(command, ask)
    assert refused.exit_code == 1
    assert "Line 2, count: “three” cannot be read. Accepted: 2.5." in refused.output
    file.write_text(HEAD + good, encoding="utf-8")
    assert "1 new" in CliRunner().invoke(command, ask).output
    assert client.get("/api/orders/a").get_json()["document"]["customer"] == "Marta"
