"""Lots, orders and boxes packed as tables (CSV) and as one JSON document: all that `stream_import` makes them of again.

A lot or boxes packed are a row each. Of an order each line is a row, and after them each line that was handed over.
"""

import csv
import io
from datetime import UTC, datetime, timedelta
from typing import Any
from urllib.parse import unquote

from amberbench.engine import VERSION, catalogue
from amberbench.engine.core import log as engine_log

from . import stream_documents, strict_json
from .event_validation import OF_THE_SERVER

Document = dict[str, Any]
Cells = dict[str, str]

RUN_AS_FORMULA = ("=", "+", "-", "@", "\t", "\r", "'")
"""A text cell that begins so gets an apostrophe in front; one that begins with an apostrophe too, so that it is told
from these."""
COLUMNS = {
    "lot": ("id", "material", "unit", "amount", "packs", "supplier", "supplier_id", "supplier_lot", "price_minor",
            "currency", "best_by", "received_at", "opened_at", "counts", "discarded", "made_from", "remelts",
            "merged_into", "merged_at", "merged_adds"),
    "order": ("id", "customer", "customer_id", "wanted_at", "placed_at", "state", "what", "box_id", "product_id",
              "count", "mass_kg", "pack_id", "handed_at", "handed_by", "price_minor", "currency", "note", "repeats",
              "counter", "cancelled_at", "cancelled_why"),
    "pack": ("id", "box_id", "packed", "count", "code", "made_on", "best_by", "seconds", "packed_at", "batches", "lots",
             "net_kg", "printed"),
}  # fmt: skip
EPOCH = datetime(1970, 1, 1, tzinfo=UTC)


def as_csv(kind: str) -> str:
    """All of a kind as CSV (RFC 4180), latest first, but those of which all was taken back; times are ISO 8601, UTC."""
    file = io.StringIO(newline="")
    writer = csv.DictWriter(file, COLUMNS[kind])
    writer.writeheader()
    at = stream_documents.KINDS[kind].at
    nothing = catalogue.call(f"{kind}.fold", {"id": "", "events": []})["document"]
    told = [one for one in stream_documents.all_of(kind) if one | {"id": ""} != nothing]
    for document in sorted(told, key=lambda one: (round(one[at] or 0), one["id"]), reverse=True):
        writer.writerows(rows(kind, document))
    return file.getvalue()


def as_json(kind: str) -> str:
    """All of a kind as one JSON document `{app, holds, engine_version, documents, events}`: documents latest first, and
    the events of which this engine folds them, as they were written."""
    documents = stream_documents.all_of(kind)
    events = sorted(stream_documents.events_of(kind), key=lambda event: (event["stream"], engine_log.total_key(event)))
    own = [{name: value for name, value in event.items() if name not in OF_THE_SERVER} for event in events]
    about = {"app": "amberbench", "holds": f"{kind}s", "engine_version": VERSION}
    return strict_json.write(about | {"documents": documents, "events": own})


def rows(kind: str, document: Document) -> list[Cells]:
    """The rows of one document."""
    return [{name: _cell(row.get(name)) for name in COLUMNS[kind]} for row in ROWS[kind](document)]


def _lot(lot: Document) -> list[Document]:
    counts = [f"{time(one['at_ms'])} {one['left']:.12g}" for one in lot["counts"]]
    discarded = [
        " ".join(filter(None, (time(one["at_ms"]), f"{one['amount']:.12g}", one["why"], coded(one["text"]))))
        for one in lot["discarded"]
    ]
    times = {"received_at": time(lot["received_ms"]), "opened_at": time(lot["opened_ms"])}
    merged = {"merged_at": time(lot["merged_ms"]), "merged_adds": lot["adds"] if lot["merged_into"] else None}
    packs = lot["packs"] or None
    return [lot | times | merged | {"packs": packs, "counts": "; ".join(counts), "discarded": "; ".join(discarded)}]


def _order(order: Document) -> list[Document]:
    cancelled = order["cancelled"] or {"at_ms": None, "why": None}
    own = order | {
        "wanted_at": time(order["wanted_ms"]),
        "placed_at": time(order["placed_ms"]),
        "cancelled_at": time(cancelled["at_ms"]),
        "cancelled_why": cancelled["why"],
    }
    wanted = [own | line | {"what": "wanted"} for line in order["lines"]]
    handed = [
        own | line | {"what": "handed", "handed_at": time(line["at_ms"]), "handed_by": line["by"]}
        for line in order["handed"]
    ]
    return wanted + handed or [own]


def _pack(pack: Document) -> list[Document]:
    batches = " ".join(f"{coded(one['batch_id'])}:{one['pieces']}" for one in pack["from"])
    lots = " ".join(f"{coded(one['lot_id'])}:{one['amount']:.12g}" for one in pack["lots"])
    weighed = " ".join(f"{one:.12g}" for one in pack["net_kg"])
    return [pack | {"packed_at": time(pack["at_ms"]), "batches": batches, "lots": lots, "net_kg": weighed}]


ROWS = {"lot": _lot, "order": _order, "pack": _pack}


def time(ms: float | None) -> str:
    """An instant in ISO 8601, UTC, to the second where it is whole; "" for none."""
    if ms is None:
        return ""
    whole = round(ms)
    at = EPOCH + timedelta(milliseconds=whole)
    return at.isoformat(timespec="milliseconds" if whole % 1000 else "seconds").replace("+00:00", "Z")


def coded(text: str) -> str:
    """A text inside a cell of several, without what parts these."""
    for sign in "% ;:":
        text = text.replace(sign, f"%{ord(sign):02X}")
    return text


def decoded(text: str) -> str:
    """The text that `coded` has coded."""
    return unquote(text)


def _cell(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.12g}"
    text = str(value)
    return f"'{text}" if isinstance(value, str) and text.startswith(RUN_AS_FORMULA) else text


def plain(cell: str) -> str:
    """The text that a cell stands for."""
    return cell[1:] if cell[:1] == "'" and cell[1:].startswith(RUN_AS_FORMULA) else cell
