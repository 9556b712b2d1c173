"""What a phone starts from."""

from typing import Any

from sqlalchemy.orm import Session

from amberbench.store import queries, reading

from . import documents, streams, strict_json

KEPT_MS = 90 * 24 * 3600 * 1000
"""Summaries of batches closed within 90 days come along; older ones are read on line."""


def snapshot(now_ms: int, after: int | None = None, upto: int | None = None) -> dict[str, Any]:
    """`{log_id, shop, events, summaries, cursor, cursor_mark, next}`: events of the shop and of batches not closed.

    At most 2 MB. A phone that asks page by page says `after` which event: at first 0, then `next`, and `upto` which the
    log had come, the first page's cursor; only that page has shop and summaries, and the last one's `next` is None.
    One that does not gets a cursor behind the last event that found room.

    Pulls go on after the cursor; cursor_mark names the event there, None before the first.

    The cursor is read first: an event stored meanwhile may come twice, and can never be missed.
    """
    with reading() as session:
        newest = queries.last_event(session) if upto is None else queries.event_at(session, upto)
        end = newest.position if newest else 0
        shop = queries.shop(session)
        document: dict[str, Any] = {"log_id": queries.log_id(session), "shop": None, "summaries": []}
        if not after:
            document["shop"] = None if shop is None else strict_json.read(shop.document)
            document["summaries"] = _summaries(session, now_ms)
        room = documents.PAGE - len(strict_json.write(document).encode())
        page, is_cut = documents.page(streams.events_to_start_from(session, after or 0, end), room)
        if is_cut and after is None:
            newest = page[-1]
        return document | {
            "events": [documents.event(row) for row in page],
            "cursor": newest.position if newest else 0,
            "cursor_mark": documents.cursor_token(newest) if newest else None,
            "next": page[-1].position if is_cut and after is not None else None,
        }


def _summaries(session: Session, now_ms: int) -> list[dict[str, Any]]:
    """Those of batches closed lately, newest first, as many as find room."""
    found, room = [], documents.PAGE // 2
    for row in queries.batches_closed_since(session, now_ms - KEPT_MS):
        summary = documents.summary(row)
        room -= len(strict_json.write(summary).encode())
        if room < 0:
            break
        found.append(summary)
    return found
