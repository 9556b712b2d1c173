"""The shop: the fold of its events, kept as a document that every `shop_set` renews."""

from collections.abc import Sequence
from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine import catalogue
from amberbench.engine.shop import fold as engine_shop
from amberbench.store import queries, reading, writing
from amberbench.store.models import EventRow, ShopRow

from . import documents, initial_shop_events, set_aside, stream_documents, strict_json, unexpected_errors
from .documents import NewEvents
from .event_validation import columns_of, parse_event
from .uuid7 import uuid7, uuid7s

SEED = "seed"
"""The device that writes what a shop begins with."""


def document() -> dict[str, Any] | None:
    """The shop document, or None before there is one."""
    with reading() as session:
        row = queries.shop(session)
        return None if row is None else strict_json.read(row.document)


def begin(seed: str | None, now_ms: int, language: str, trade: str | None = None) -> bool:
    """Makes sure that there is a shop and that its document is this engine's fold; whether a shop was begun.

    seed: JSON of `seed_data` to begin with, in this language; None: an empty shop. trade: JSON of its invented
    deliveries, boxes and orders, which count from today; None: none. A document of a server that knew no
    `shop_set` becomes events first.
    """
    with writing() as session:
        row = queries.shop(session)
        if row is None:
            given = strict_json.read(seed) if seed is not None else {"id": uuid7(now_ms)}
            session.add(ShopRow(id=given["id"], document="{}", changed_ms=now_ms))
            facts = initial_shop_events.of_nothing() if seed is None else initial_shop_events.of_seed(given, language)
            # At the beginning of time: whatever a person says stands over it, also what a phone brings back later.
            traded = strict_json.read(trade) if trade is not None else {"events": []}
            told = list(initial_shop_events.of_trade(traded, now_ms, language))
            _write(session, given["id"], [*_edits(given["id"], facts, 0), *told], now_ms)
            session.flush()
            for kind, stream_id in {tuple(one["stream"].split("/")) for one in told}:
                stream_documents.refold(session, kind, stream_id)
        elif not queries.events_of(session, "shop", row.id):
            facts = initial_shop_events.of_document(strict_json.read(row.document))
            edits = _edits(row.id, facts or initial_shop_events.of_nothing(), row.changed_ms)
            _write(session, row.id, edits, row.changed_ms)
        fold(session, now_ms)
        return row is None


def fold_new_events(session: Session, new: NewEvents) -> None:
    """Folds the shop after new events of a shop have come.

    A shop of which nobody has said anything gives way to the one that phones bring back: its log was lost.
    """
    session.flush()
    row = queries.shop(session)
    said = queries.shops_edited(session, engine_shop.KIND, SEED)
    if row is not None and said and row.id not in said:
        row.id = said[0]
    fold(session, new.received_ms)


def positions_to_start_from(session: Session, _: int | None) -> Sequence[queries.Positions]:
    """Where the events of the shop are."""
    row = queries.shop(session)
    return [] if row is None else [queries.positions_of("shop", row.id)]


def rebuild() -> int:
    """Makes the shop's document anew from the log."""
    with writing() as session:
        row = queries.shop(session)
        if row is None:
            return 0
        fold(session, row.changed_ms)
        return 1


def fold(session: Session, now_ms: int) -> None:
    """Folds the shop's events anew and keeps the document. Whatever goes wrong stays here: events must be kept."""
    session.flush()
    row = queries.shop(session)
    if row is None:
        return
    events, _ = set_aside.split(session, [documents.event(one) for one in queries.events_of(session, "shop", row.id)])
    try:
        reply = catalogue.call("shop.fold", {"shop_id": row.id, "events": events})
    except Exception as error:
        unexpected_errors.record("the shop could not be folded", error)
        return
    row.document = strict_json.write(reply["shop"])
    row.changed_ms = now_ms


def _edits(shop_id: str, facts: list[initial_shop_events.Body], at_ms: int) -> list[dict[str, Any]]:
    return [{"stream": f"shop/{shop_id}", "kind": engine_shop.KIND, "at_ms": at_ms, "body": body} for body in facts]


def _write(session: Session, shop_id: str, told: Sequence[dict[str, Any]], now_ms: int) -> None:
    """Appends events of the seeding device, in their order."""
    same = {"v": 1, "shop_id": shop_id, "device_id": SEED, "offset_ms": 0}
    for seq, (event_id, one) in enumerate(zip(uuid7s(now_ms), told, strict=False), start=1):
        event = parse_event({"id": event_id, "seq": seq, **same, **one})
        session.add(EventRow(**columns_of(event), received_ms=now_ms))
