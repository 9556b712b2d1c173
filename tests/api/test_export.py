"""Files to take along: CSV of the list and of a timeline, JSON of the whole log."""

import csv
import io
import json
from copy import deepcopy

import pytest

from amberbench.services import events
from tests.log import BEGUN, Phone, push
from tests.problem_shape import assert_problem


def rows(response):
    assert response.status_code == 200
    assert response.headers["Content-Type"].startswith("text/csv; charset=utf-8")
    assert response.headers["Content-Disposition"].startswith("attachment; filename=amberbench-")
    return list(csv.DictReader(io.StringIO(response.get_data().decode("utf-8"), newline=""), strict=True))


def test_list_has_a_row_for_every_batch_newest_first(client):
    phones = [Phone() for _ in range(3)]
    for day, phone in enumerate(phones):
        phone.now_ms += (day - 3) * 86_400_000
        push(client, *phone.whole_batch())
    found = rows(client.get("/api/batches.csv"))
    assert [row["batch_id"] for row in found] == [phone.batch_id for phone in phones[::-1]]
    assert (found[0]["pieces"], found[0]["pieces_are"], found[0]["caramel_kg"]) == ("205", "counted", "1.8")
    assert found[0]["opened_at"].endswith("Z")


def test_list_goes_beyond_one_page(client, monkeypatch):
    monkeypatch.setattr("amberbench.services.export.PAGE", 2)
    for _ in range(5):
        push(client, Phone().opens())
    assert len({row["batch_id"] for row in rows(client.get("/api/batches.csv"))}) == 5
    assert len(client.get("/api/log.json").get_json()["events"]) == BEGUN + 5


def test_timeline_tells_each_event_in_order(client):
    phone = Phone()
    whole = phone.whole_batch()
    push(client, *whole[::-1])
    found = rows(client.get(f"/api/batches/{phone.batch_id}.csv"))
    assert [row["kind"] for row in found] == [event["kind"] for event in whole]
    assert found[2]["lot"] == "A-117"
    # The burst was ended when its minute was not over: it fits; what did not would say so.
    assert {row["counts"] for row in found} == {"yes"}


def test_log_holds_what_the_server_holds(client):
    phone = Phone()
    push(client, *phone.whole_batch())
    document = client.get("/api/log.json").get_json()
    assert (document["app"], document["holds"]) == ("amberbench", "log")
    assert document["events"] == client.get("/api/events").get_json()["events"]


def test_log_goes_out_page_by_page_also_to_who_takes_gzip(client, monkeypatch):
    monkeypatch.setattr("amberbench.services.export.PAGE", 2)
    pulls, usual = [], events.pull
    monkeypatch.setattr(events, "pull", lambda *given: pulls.append(given) or usual(*given))
    push(client, *Phone().whole_batch())
    response = client.get("/api/log.json", headers={"Accept-Encoding": "gzip"})
    pieces = response.iter_encoded()
    begun = next(pieces) + next(pieces)
    assert (response.status_code, len(pulls)) == (200, 1)
    whole = json.loads(begun + b"".join(pieces))
    assert len(pulls) == -(-len(whole["events"]) // 2)
    assert whole["events"] == client.get("/api/events").get_json()["events"]


def test_unknown_batch_has_no_timeline(client):
    assert_problem(client.get("/api/batches/nobody.csv"), 404)


def planned(phone, **cut):
    """The opening of a batch with a plan changed so."""
    opening = deepcopy(phone.opens())
    opening["body"]["plan"]["name"] = "Squares;=1+1;x"
    opening["body"]["plan"]["reply"]["cut"] |= cut
    return opening


def test_name_that_another_separator_would_make_a_formula_stays_words(client):
    push(client, planned(Phone()))
    file = client.get("/api/batches.csv").get_data(as_text=True)
    cells = [cell for row in csv.reader(io.StringIO(file), delimiter=";") for cell in row]
    assert "'=1+1" in cells
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]


@pytest.mark.parametrize("pieces", [5_000_000_000, 2**52, 1e300, -7, "many"])
def test_absurd_plan_spoils_its_own_row_alone(client, pieces):
    sound, absurd = Phone(), Phone()
    push(client, sound.opens(), planned(absurd, pieces=pieces))
    assert client.get("/api/batches").status_code == 200
    found = {row["batch_id"]: row for row in rows(client.get("/api/batches.csv"))}
    assert found.keys() == {sound.batch_id, absurd.batch_id}
    assert (found[sound.batch_id]["pieces"], found[absurd.batch_id]["pieces"]) == ("204", "")
