"""A lot is the fold of its events: received or made, opened, counted, thrown away, poured to another."""

from ..core import stream_fold
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable
    from ..types import (
        DiscardedBody,
        LeftCountedBody,
        Lot,
        LotFoldReply,
        LotFoldRequest,
        MadeBody,
        MergedBody,
        PhotographedBody,
        ReceivedBody,
    )


def fold(request: "LotFoldRequest") -> "LotFoldReply":
    """A lot after all of its events, whatever order they come in; the same id counts once.

    Request: id (the lot), events.
    Reply: document (the lot), ignored [{id, why}]. A later `received` or `made` corrects the one before.
    Raises: Problem for a request that is none; an event never raises.
    Source: practice.
    """
    lot = dict(stream_fold.begun(fields.LOT), amount=0.0)
    result: "LotFoldReply" = stream_fold.fold(request, fields.EVENTS, lot, FOLDS)
    return result


def _receive(lot: "Lot", body: "ReceivedBody", at_ms: float, event: "Readable") -> None:
    for name in ("material", "unit", "supplier_id", "supplier", "supplier_lot", "packs", "price_minor", "currency"):
        lot[name] = body[name]
    lot["amount"] = body["packs"] * body["pack_amount"]
    _came(lot, body["best_by"], at_ms)


def _make(lot: "Lot", body: "MadeBody", at_ms: float, event: "Readable") -> None:
    for name in ("material", "unit", "amount", "remelts"):
        lot[name] = body[name]
    lot["made_from"] = body["batch_id"]
    _came(lot, body["best_by"], at_ms)


def _came(lot: "Lot", best_by: str | None, at_ms: float) -> None:
    lot["best_by"] = stream_fold.day_or_none(best_by)
    if lot["received_ms"] is None:
        lot["received_ms"] = at_ms


def _open(lot: "Lot", body: "Readable", at_ms: float, event: "Readable") -> None:
    if lot["opened_ms"] is None:
        lot["opened_ms"] = at_ms


def _count(lot: "Lot", body: "LeftCountedBody", at_ms: float, event: "Readable") -> None:
    lot["counts"].append({"at_ms": at_ms, "left": body["left"]})


def _discard(lot: "Lot", body: "DiscardedBody", at_ms: float, event: "Readable") -> None:
    lot["discarded"].append({"at_ms": at_ms, "amount": body["amount"], "why": body["why"], "text": body["text"]})


def _merge(lot: "Lot", body: "MergedBody", at_ms: float, event: "Readable") -> None:
    lot["merged_into"], lot["merged_ms"], lot["adds"] = body["into_lot_id"], at_ms, body["adds"]


def _photograph(lot: "Lot", body: "PhotographedBody", at_ms: float, event: "Readable") -> None:
    lot["photo_id"] = body["photo_id"]


FOLDS: "dict[str, stream_fold.Fold]" = {
    "received": _receive,
    "made": _make,
    "opened": _open,
    "left_counted": _count,
    "discarded": _discard,
    "merged": _merge,
    "photographed": _photograph,
}
