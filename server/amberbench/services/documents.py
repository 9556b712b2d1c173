"""Rows as the documents that travel."""

import json
from typing import Any

from amberbench.store.models import BatchRow, EventRow


def event(row: EventRow) -> dict[str, Any]:
    """An event as the phone wrote it, with its position, when it was received and its flags."""
    more = json.loads(row.more) if row.more else {}
    own = {
        "id": row.id,
        "v": row.v,
        "shop_id": row.shop_id,
        "device_id": row.device_id,
        "seq": row.seq,
        "at_ms": whole(row.at_ms),
        "offset_ms": whole(row.offset_ms),
        "batch_id": row.batch_id,
        "kind": row.kind,
        "body": json.loads(row.body),
        "position": row.position,
        "received_ms": row.received_ms,
        "flags": flags(row),
    }
    return more | own


def flags(row: EventRow) -> list[str]:
    """What the server noticed about an event: "future", "other_shop"."""
    return row.flags.split(",") if row.flags else []


def summary(row: BatchRow) -> dict[str, Any]:
    """One line of the list of batches."""
    return {
        "batch_id": row.batch_id,
        "name": row.name,
        "kind": row.kind,
        "opened_at_ms": whole(row.opened_at_ms),
        "closed_at_ms": None if row.closed_at_ms is None else whole(row.closed_at_ms),
        "step": row.step,
        "pieces": row.pieces,
        "caramel_kg": row.caramel_kg,
        "good_kg": row.good_kg,
        "device_id": row.device_id,
        "events": row.events,
    }


def whole(number: float) -> float:
    """A number without a ".0" it does not need."""
    return int(number) if number == int(number) else number
