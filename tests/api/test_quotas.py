"""More than a shop could mean: refused with a sentence, and nothing of it stored."""

import pytest

from amberbench import text
from amberbench.services import quotas
from tests.log import Phone, pulled, push, results, uuid7
from tests.problem_shape import assert_problem
from tests.services.test_backup import JPEG


def test_ten_thousand_events_at_once_are_refused_and_the_phone_may_halve_them(client):
    events = [Phone().event("freed") for _ in range(10_000)]
    assert_problem(client.post("/api/events", json={"events": events}), 413)
    assert_problem(client.post("/api/events", json={"events": events[:5000]}), 422, "too_many", "events")
    assert pulled(client)["events"] == []


def test_stream_takes_so_many_events_and_not_one_more(client, monkeypatch):
    monkeypatch.setattr(quotas, "MOST_IN_STREAM", 5)
    phone, other = Phone(), Phone()
    events = [phone.event("noted", text="x") for _ in range(7)]
    answers = push(client, *events[:6], events[5], other.event("freed"))
    assert results(answers) == ["stored"] * 5 + ["refused"] * 2 + ["stored"]
    assert (answers[5]["code"], answers[5]["field"]) == ("too_many", "stream")
    assert results(push(client, events[6], events[0])) == ["refused", "known"]
    assert len(pulled(client)["events"]) == 6


def test_stream_takes_so_many_bytes(client, monkeypatch):
    phone = Phone()
    for _ in range(9):
        push(client, *[phone.event("noted", text="x" * 1000) for _ in range(30)])
    monkeypatch.setattr(quotas, "MOST_STREAM_BYTES", 310_000)
    assert results(push(client, *[phone.event("noted", text="x" * 14_000) for _ in range(3)])) == ["stored"] * 2 + [
        "refused"
    ]


def test_device_that_sent_enough_today_is_asked_to_come_again_tomorrow(client, clock, monkeypatch):
    monkeypatch.setattr(quotas, "MOST_IN_DAY", 5)
    phone, other = Phone(), Phone(device_id="other")
    push(client, *[phone.event("noted", text="x") for _ in range(4)])
    two = [phone.event("noted", text="y") for _ in range(2)]
    answer = client.post("/api/events", json={"events": two})
    assert_problem(answer, 429)
    assert answer.headers["Retry-After"] == "3600"
    assert answer.get_json()["detail"] == text.sentence("server.status_429", {})
    assert results(push(client, other.event("freed"))) == ["stored"]
    assert len(pulled(client)["events"]) == 5
    clock.now_ms += quotas.DAY_MS
    assert results(push(client, *two)) == ["stored"] * 2


@pytest.mark.parametrize("limit", ["MOST_PHOTOS_IN_DAY", "MOST_PHOTO_BYTES"])
def test_photos_of_a_day_have_their_measure(client, clock, monkeypatch, limit):
    monkeypatch.setattr(quotas, limit, {"MOST_PHOTOS_IN_DAY": 2, "MOST_PHOTO_BYTES": 2 * len(JPEG)}[limit])

    def sends(photo_id):
        return client.put(f"/api/photos/{photo_id}", data=JPEG, content_type="image/jpeg")

    first = uuid7()
    assert [sends(one).status_code for one in (first, uuid7(), first)] == [204, 204, 204]
    assert_problem(sends(uuid7()), 429)
    assert sends(first).status_code == 204
    clock.now_ms += quotas.DAY_MS
    assert sends(uuid7()).status_code == 204


def test_photo_of_a_hundred_megabytes_is_refused_before_it_is_read(client):
    photo = JPEG[:3] + bytes(100 * 1024 * 1024) + JPEG[-2:]
    answer = client.put(f"/api/photos/{uuid7()}", data=photo, content_type="image/jpeg")
    assert "2 MB" in assert_problem(answer, 413)["detail"]
