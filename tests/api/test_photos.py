"""Pictures of a batch: sent once, kept as they are, given back; nothing but a JPEG of at most 2 MB."""

import json
import threading

import pytest

from amberbench.config import MOST_BODY_BYTES
from tests.log import Phone, push, results, uuid7
from tests.problem_shape import assert_problem

JPEG = b"\xff\xd8\xff\xe0\x00\x10JFIF\x00 amber \xff\xd9"


def of(bytes_long):
    """Bytes that begin and end as a JPEG does."""
    return JPEG[:-2].ljust(bytes_long - 2, b"\0") + JPEG[-2:]


def send(client, photo_id, content=JPEG, kind="image/jpeg", **more):
    return client.put(f"/api/photos/{photo_id}", data=content, content_type=kind, **more)


def test_picture_comes_back_as_it_was_sent(client):
    photo_id = uuid7()
    assert send(client, photo_id).status_code == 204
    found = client.get(f"/api/photos/{photo_id}")
    assert (found.status_code, found.mimetype, found.data) == (200, "image/jpeg", JPEG)
    assert found.headers["X-Content-Type-Options"] == "nosniff"
    assert found.headers["Content-Disposition"] == f"inline; filename=amberbench-{photo_id}.jpg"
    assert found.headers["Cache-Control"] == "private, max-age=31536000, immutable"


def test_same_picture_again_changes_nothing_and_another_one_is_refused(client):
    photo_id = uuid7()
    assert [send(client, photo_id).status_code for _ in range(3)] == [204, 204, 204]
    document = assert_problem(send(client, photo_id, of(100)), 409)
    assert document["detail"] == "Another picture is kept under this id already. It stays."
    assert client.get(f"/api/photos/{photo_id}").data == JPEG


def test_two_phones_that_send_one_id_at_once_leave_one_picture(app):
    photo_id, contents, statuses = uuid7(), [of(200), of(300)], []
    threads = [
        threading.Thread(target=lambda one=one: statuses.append(send(app.test_client(), photo_id, one).status_code))
        for one in contents
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(statuses) == [204, 409]
    assert app.test_client().get(f"/api/photos/{photo_id}").data in contents


def test_two_megabytes_are_taken_and_one_byte_more_is_not(client):
    largest, larger = uuid7(), uuid7()
    assert send(client, largest, of(MOST_BODY_BYTES)).status_code == 204
    assert len(client.get(f"/api/photos/{largest}").data) == MOST_BODY_BYTES
    assert_problem(send(client, larger, of(MOST_BODY_BYTES + 1)), 413)
    assert_problem(client.get(f"/api/photos/{larger}"), 404)


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\xff\xd9",
        JPEG[:-1],
        JPEG[1:],
        JPEG + b"\n",
        b"\x89PNG\r\n\x1a\n" + JPEG,
        b"GIF89a",
        b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
        b"<html>" + JPEG,
        b"{}",
    ],
)
def test_what_is_no_jpeg_is_not_kept(client, content):
    photo_id = uuid7()
    document = assert_problem(send(client, photo_id, content), 422, "not_a_jpeg", "photo")
    assert document["detail"].endswith("this is not a JPEG picture.")
    assert_problem(client.get(f"/api/photos/{photo_id}"), 404)


@pytest.mark.parametrize("kind", [None, "image/png", "image/svg+xml", "text/html", "application/json", "image/jpeg2"])
def test_only_a_jpeg_is_said_to_be_one(client, kind):
    assert_problem(send(client, uuid7(), kind=kind), 415)


@pytest.mark.parametrize(
    "photo_id", ["x", "7", uuid7().upper(), uuid7()[:-1], "%00", "a" * 5000, "'; drop table photo; --", "..%5cphoto"]
)
def test_strange_id_is_refused_and_not_found(client, photo_id):
    assert_problem(send(client, photo_id), 422, "malformed", "photo_id")
    assert_problem(client.get(f"/api/photos/{photo_id}"), 404)


def test_problem_is_told_in_spanish_to_who_reads_it(client):
    document = assert_problem(send(client, uuid7(), b"{}", headers={"Accept-Language": "es"}), 422, "not_a_jpeg")
    assert document["detail"].endswith("esto no es una imagen JPEG.")


def test_event_of_a_photo_counts_it_and_may_come_after_the_closing(client):
    phone = Phone()
    photo = {"photo_id": uuid7(), "bytes": len(JPEG), "width_px": 1600, "height_px": 1200}
    whole = phone.whole_batch()
    whole.insert(5, phone.event("photographed", **photo) | {"at_ms": whole[5]["at_ms"]})
    assert results(push(client, *whole, phone.event("photographed", **photo))) == ["stored"] * 13
    record = client.get(f"/api/batches/{phone.batch_id}").get_json()
    assert record["run"]["photos"] == 2
    assert record["run"]["ignored"] == []
    assert record["run"]["undoable"]["kind"] == "closed"
    assert photo["photo_id"] not in json.dumps(record["run"])


def test_both_endpoints_are_described(readonly_client):
    described = readonly_client.get("/api/openapi.json").get_json()["paths"]["/api/photos/{photo_id}"]
    assert list(described["put"]["requestBody"]["content"]) == ["image/jpeg"]
    assert {"204", "409", "413", "415", "422"} <= set(described["put"]["responses"])
    assert list(described["get"]["responses"]["200"]["content"]) == ["image/jpeg"]
    assert "404" in described["get"]["responses"]
