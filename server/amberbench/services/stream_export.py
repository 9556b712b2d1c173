"""Lots, orders and boxes packed as tables (CSV), a line of an order a row, and as one JSON document."""

import csv
import io
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from typing import Any

from . import stream_documents, strict_json

Document = dict[str, Any]
Column = Callable[[Document], Any]
RUN_AS_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def _time(name: str) -> Column:
    return lambda row: (
        None if row[name] is None else datetime.fromtimestamp(row[name] / 1000, UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    )


COLUMNS: dict[str, dict[str, Column]] = {
    "lot": {
        "received_at": _time("received_ms"),
        "amount": lambda lot: lot["amount"],
        "price_minor": lambda lot: lot["price_minor"],
        "opened_at": _time("opened_ms"),
        "discarded": lambda lot: sum(one["amount"] for one in lot["discarded"]) or None,
        "counted_left": lambda lot: lot["counts"][-1]["left"] if lot["counts"] else None,
    },
    "order": {"wanted_at": _time("wanted_ms"), "placed_at": _time("placed_ms")},
    "pack": {
        "packed_at": _time("at_ms"),
        "batches": lambda pack: " ".join(f"{one['batch_id']}:{one['pieces']}" for one in pack["from"]),
        "lots": lambda pack: " ".join(f"{one['lot_id']}:{one['amount']:g}" for one in pack["lots"]),
        "weighed_boxes": lambda pack: len(pack["net_kg"]) or None,
    },
}
PLAIN = {
    "lot": ("material", "unit", "supplier", "supplier_lot", "packs", "currency", "best_by", "made_from", "remelts",
            "merged_into"),
    "order": ("customer", "state", "price_minor", "currency", "note", "repeats", "counter", "box_id", "product_id",
              "count", "mass_kg"),
    "pack": ("box_id", "packed", "count", "code", "made_on", "best_by", "seconds", "printed"),
}  # fmt: skip


def as_csv(kind: str) -> str:
    """All of a kind as CSV (RFC 4180), latest first; times are ISO 8601, UTC. A cell that a spreadsheet would run as a
    formula begins with an apostrophe."""
    file = io.StringIO(newline="")
    writer = csv.writer(file)
    columns = COLUMNS[kind]
    writer.writerow(["id", *columns, *PLAIN[kind]])
    for row in _rows(kind):
        cells = [row["id"], *(made(row) for made in columns.values()), *(row.get(name) for name in PLAIN[kind])]
        writer.writerow([_cell(cell) for cell in cells])
    return file.getvalue()


def _rows(kind: str) -> Iterator[Document]:
    for document in stream_documents.all_of(kind):
        if kind == "order" and document["lines"]:
            yield from (document | line for line in document["lines"])
        else:
            yield document


def _cell(value: Any) -> Any:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:.12g}"
    return f"'{value}" if isinstance(value, str) and value.startswith(RUN_AS_FORMULA) else value


def as_json(kind: str) -> str:
    """All of a kind as one JSON document `{app, holds, documents}`, latest first."""
    return strict_json.write({"app": "amberbench", "holds": f"{kind}s", "documents": stream_documents.all_of(kind)})
