"""What a phone starts from and pulls comes in pages of at most 2 MB, also for phones that know nothing of pages."""

import pytest

from tests.conforming import is_document
from tests.log import BEGUN, Phone, pulled, push

MOST = 2 * 1024 * 1024


@pytest.fixture
def large(client):
    """Forty notes of 250 kB in each of two running batches, and a closed batch between them."""
    phones = [Phone(), Phone()]
    push(client, *[phone.opens() for phone in phones])
    for n in range(20):
        for phone in phones:
            push(client, *[phone.event("noted", text="é" * 30_000) for _ in range(4)])
        if n == 10:
            push(client, *Phone().whole_batch())
    return phones


def get(client, path):
    answer = client.get(path)
    assert len(answer.get_data()) <= MOST
    return answer.get_json()


def snapshot_pages(client, between=lambda: None):
    page = get(client, "/api/snapshot?after=0")
    upto = page["cursor"]
    pages = [page]
    while page["next"] is not None:
        between()
        page = get(client, f"/api/snapshot?after={page['next']}&upto={upto}")
        is_document("Snapshot", page)
        assert page["cursor"] == upto
        pages.append(page)
    return pages


def test_snapshot_in_pages_holds_each_event_once_and_shop_and_summaries_at_first(client, large):
    pages = snapshot_pages(client)
    ids = [one["id"] for page in pages for one in page["events"]]
    running = {phone.batch_id for phone in large}
    assert len(pages) > 3
    assert len(set(ids)) == len(ids) == BEGUN + 2 * 81
    assert {one["batch_id"] for page in pages for one in page["events"]} == running | {None}
    assert [page["shop"] is None for page in pages] == [False] + [True] * (len(pages) - 1)
    assert [len(page["summaries"]) for page in pages] == [3] + [0] * (len(pages) - 1)


def test_batch_closed_between_two_pages_still_comes_whole(client, large):
    phone = large[0]
    events = iter([phone.event("ready_checked"), phone.event("closed")])
    pages = snapshot_pages(client, lambda: push(client, *[one for one in [next(events, None)] if one]))
    page = pulled(client, pages[0]["cursor"])
    got = [one for page in (*pages, page) for one in page["events"] if one["batch_id"] == phone.batch_id]
    assert len({one["id"] for one in got}) == 83
    assert got[-1]["kind"] == "closed"


def test_phone_that_knows_no_pages_gets_a_part_and_pulls_the_rest(client, large):
    started = get(client, "/api/snapshot")
    assert started["next"] is None
    got, at = {one["id"] for one in started["events"]}, started
    more = True
    while more:
        at = get(client, f"/api/events?after={at['cursor']}&seen={at['cursor_mark']}")
        got |= {one["id"] for one in at["events"]}
        more = at["more"]
    assert len(got) == BEGUN + 2 * 81 + 11


def test_small_log_comes_as_it_always_did(client):
    phone = Phone()
    push(client, phone.opens())
    whole = client.get("/api/snapshot").get_json()
    assert (whole["cursor"], whole["next"], len(whole["events"])) == (BEGUN + 1, None, BEGUN + 1)
    (paged,) = snapshot_pages(client)
    assert paged == whole
