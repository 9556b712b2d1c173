"""What a phone starts from."""

from typing import Any

from amberbench.store import queries, reading

from . import documents, streams, strict_json

KEPT_MS = 90 * 24 * 3600 * 1000
"""Summaries of batches closed within 90 days come along; older ones are read on line."""


def snapshot(now_ms: int) -> dict[str, Any]:
    """`{log_id, shop, events, summaries, cursor, cursor_mark}`: events of the shop and of batches not closed.

    Pulls go on after the cursor; cursor_mark names the event there, None before the first.

    The cursor is read first: an event stored meanwhile may come twice, and can never be missed.
    """
    with reading() as session:
        newest = queries.last_event(session)
        shop = queries.shop(session)
        return {
            "log_id": queries.log_id(session),
            "shop": None if shop is None else strict_json.read(shop.document),
            "events": [documents.event(row) for row in streams.events_to_start_from(session)],
            "summaries": [documents.summary(row) for row in queries.batches_closed_since(session, now_ms - KEPT_MS)],
            "cursor": newest.position if newest else 0,
            "cursor_mark": documents.cursor_token(newest) if newest else None,
        }
