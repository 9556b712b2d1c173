"""Takes in what `stream_export` writes, or a table typed by hand: rows become events, all of them or none.

A row without an id is something new, checked as if it were typed on a phone; its id is made of what it says, so that
the same file taken in twice adds nothing. A row with an id is taken as it stands; where it is here already and says the
same, nothing is written.
"""

import csv
import hashlib
import io
import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from amberbench import text
from amberbench.engine import VERSION, catalogue, fields
from amberbench.engine.core import check
from amberbench.engine.core.problems import Problem
from amberbench.store import reading, stream_queries

from . import events, shop, stream_cells, stream_export, strict_json
from .event_validation import NAME
from .stream_cells import Fact, Row
from .uuid7 import uuid7s

Document = dict[str, Any]
DEVICE = "import"
CHECKED = ("received", "made", "placed", "packed")
"""What the engine checks of the whole as it does before a phone writes it."""
CELL = re.compile(r"line\[(\d+)\](?:\.(\w+))?")
AT_LINE = re.compile(r"\[(\d+)\]")
COLUMN_OF = {
    "lot": {"pack_amount": "amount", "batch_id": "made_from", "into_lot_id": "merged_into"},
    "order": {"wanted_ms": "wanted_at", "by": "handed_by", "why": "cancelled_why", "lines": "what"},
    "pack": {"from": "batches", "count": "packed", "n": "printed"},
}


class Told(NamedTuple):
    """The rows of one document, its id, and whether it is something new that had none."""

    stream_id: str
    rows: list[Row]
    is_new: bool


def take_in(kind: str, file: str, now_ms: int) -> dict[str, int]:
    """Stores all that a file of a kind says: `{added, known}`, how many documents are new and how many were here.

    file: CSV or JSON, as `stream_export` writes them; of CSV also what a spreadsheet makes of it (semicolons with
    decimal commas, a byte-order mark, columns left out). Raises Problem, and then nothing is stored: the field is
    "line[<number>].<column>" of a table, a path of a JSON document. Raises quotas.TooMuch.
    """
    if "\0" in file:
        raise Problem("file", "broken_text")
    if file.lstrip("\ufeff \r\n\t").startswith("{"):
        return _take_events(kind, _read_json(kind, file), now_ms)
    own_shop = _shop_of(now_ms)
    written: list[Document] = []
    counts = {"added": 0, "known": 0}
    for told in _by_document(kind, rows_of(kind, file)):
        here = _kept(kind, told.stream_id)
        if here is not None:
            _must_say(kind, here, told, "already_here")
        else:
            written += _made(kind, told, own_shop)
        counts["added" if here is None else "known"] += 1
    own_ids = uuid7s(now_ms)
    numbered = [event | {"id": next(own_ids), "seq": seq} for seq, event in enumerate(written, 1)]
    events.push_whole(numbered, now_ms)
    return counts


def cell_name(field: str, language: str) -> str | None:
    """What people call a cell that is the field of a problem; None for a field that is none."""
    cell = CELL.fullmatch(field)
    return text.sentence("server.line", {"n": cell[1], "column": cell[2] or "1"}, language) if cell else None


def rows_of(kind: str, file: str) -> list[Row]:
    """The rows of a table. Raises Problem for a column that is none, or cells beyond the last."""
    lines = file.removeprefix("\ufeff")
    first = lines.split("\n", 1)[0]
    semicolons = first.count(";") > first.count(",")
    reader = csv.reader(io.StringIO(lines, newline=""), delimiter=";" if semicolons else ",")
    head = [cell.strip() for cell in next(reader, [])]
    for name in head or [""]:
        if name not in stream_export.COLUMNS[kind] or head.count(name) > 1:
            raise Problem("line[1]", "not_an_option", name, accepted=list(stream_export.COLUMNS[kind]))
    found = []
    begins = reader.line_num + 1
    try:
        for cells in reader:
            if len(cells) > len(head):
                raise Problem(f"line[{begins}]", "too_many", len(cells), 0, len(head))
            if any(cells):
                plain = [stream_export.plain(cell) for cell in cells]
                found.append(Row(begins, dict(zip(head, plain, strict=False)), semicolons))
            begins = reader.line_num + 1
    except csv.Error as error:
        raise Problem(f"line[{begins}]", "cell", str(error), accepted=["RFC 4180"]) from None
    return found


def _by_document(kind: str, rows: list[Row]) -> Iterator[Told]:
    """Rows by their id; each row without one by itself, under an id made of what it says and how often it does."""
    found: dict[str, list[Row]] = {}
    alike: dict[str, int] = {}
    new = set()
    for row in rows:
        stream_id = row.text("id")
        if not stream_id:
            says = repr([kind, sorted(row.cells.items())])
            alike[says] = alike.get(says, 0) + 1
            stream_id = "i-" + hashlib.sha256(f"{says}{alike[says]}".encode()).hexdigest()[:32]
            new.add(stream_id)
        elif not NAME.fullmatch(stream_id):
            raise row.cell_problem("id", "malformed", stream_id)
        found.setdefault(stream_id, []).append(row)
    for stream_id, own in found.items():
        yield Told(stream_id, own, stream_id in new)


def _shop_of(now_ms: int) -> Document:
    """What new rows are checked with."""
    own = shop.document() or {}
    bought = [f"{name}/{row['id']}" for name in ("caramels", "chocolates", "materials") for row in own.get(name, [])]
    return {
        "now_ms": now_ms,
        "id": own.get("id", ""),
        "currency": own.get("currency", ""),
        "materials": bought,
        "boxes": [row["id"] for row in own.get("boxes", [])],
        "products": [row["id"] for row in own.get("products", [])],
    }


def _made(kind: str, told: Told, own_shop: Document) -> list[Document]:
    """The events that the rows of one document tell of, checked, still without ids. Raises Problem."""
    now_ms = own_shop["now_ms"]
    made: list[Document] = []
    for fact in stream_cells.FACTS[kind](told.rows, now_ms if told.is_new else None):
        try:
            body = _checked(kind, told, fact, own_shop)
        except Problem as problem:
            raise _at_its_cell(kind, fact, problem) from None
        if fact.at_ms > now_ms:
            when, now = stream_export.time(fact.at_ms), stream_export.time(now_ms)
            raise fact.rows[0].cell_problem(fact.time, "later_than_now", when, [now])
        envelope = {"v": 1, "shop_id": own_shop["id"], "device_id": DEVICE, "at_ms": fact.at_ms, "offset_ms": 0}
        made.append(
            envelope | {"stream": f"{kind}/{told.stream_id}", "batch_id": None, "kind": fact.kind, "body": body}
        )
    numbered = [event | {"id": str(seq), "seq": seq} for seq, event in enumerate(made)]
    folded = catalogue.call(f"{kind}.fold", {"id": told.stream_id, "events": numbered})["document"]
    _must_say(kind, folded, told, "does_not_follow")
    return made


def _checked(kind: str, told: Told, fact: Fact, own_shop: Document) -> Document:
    """The body of an event; of something new it must also make sense in this shop. Raises Problem."""
    full = check.checked(fields.STREAM_EVENTS[kind][fact.kind], fact.body)
    if told.is_new and fact.kind in CHECKED:
        today = stream_export.time(own_shop["now_ms"])[:10]
        asked = {"kind": fact.kind, "body": fact.body, "today": today} | {
            name: own_shop[name] for name in ("currency", "now_ms")
        }
        own = {
            "lot": {"lot_id": told.stream_id, "materials": own_shop["materials"]},
            "order": {"today_ms": 0, "boxes": own_shop["boxes"], "products": own_shop["products"]},
            "pack": {"boxes": own_shop["boxes"]},
        }
        catalogue.call(f"{kind}.check", asked | own[kind])
    return {name: full[name] for name in fact.body}


def _at_its_cell(kind: str, fact: Fact, problem: Problem) -> Problem:
    """A problem of an event as one of the cell it was read from."""
    index = AT_LINE.search(problem.field) if problem.field.startswith("lines") else None
    row = fact.rows[min(int(index[1]), len(fact.rows) - 1)] if index else fact.rows[0]
    names = [COLUMN_OF[kind].get(part, part) for part in AT_LINE.sub("", problem.field).split(".")]
    column = fact.column or next((name for name in reversed(names) if name in stream_export.COLUMNS[kind]), names[-1])
    given = row.cells.get(column) if problem.given is None else problem.given
    path, limits = f"line[{row.line}].{column}", (problem.low, problem.high, problem.unit)
    return Problem(path, problem.code, given, *limits, accepted=problem.accepted)


def _must_say(kind: str, document: Document, told: Told, code: str) -> None:
    """Refuses rows of which a cell that is filled in says other than the document. Raises Problem."""
    expected = stream_export.rows(kind, document)
    if len(told.rows) != len(expected):
        raise told.rows[0].cell_problem("id", code, document["id"], [str(len(expected))])
    for row, cells in zip(stream_cells.in_order(kind, told.rows), expected, strict=True):
        for column, cell in row.cells.items():
            plain = stream_export.plain(cells[column])
            if cell and not row.says_the_same(column, plain):
                raise row.cell_problem(column, code, cell, [plain] if plain else [])


def _kept(kind: str, stream_id: str) -> Document | None:
    """The document that stands under an id; None where nothing does. Raises Problem for one that is broken."""
    with reading() as session:
        row = stream_queries.one(session, kind, stream_id)
        if row is not None and not row.document:
            raise Problem("id", "already_here", stream_id)
        return strict_json.read(row.document) if row and row.document else None


def _read_json(kind: str, file: str) -> Document:
    try:
        document: Document = strict_json.read(file.lstrip("\ufeff"))
    except Problem as problem:
        code = "not_an_export" if problem.code == "not_json" else problem.code
        raise Problem("file", code, problem.given, problem.low, problem.high, accepted=[f"{kind}s"]) from None
    return document


def _take_events(kind: str, given: Any, now_ms: int) -> dict[str, int]:
    """Stores the events of a JSON file; its documents must be what they fold to. Raises Problem."""
    holds = given.get("holds"), type(given.get("events")), type(given.get("documents"))
    if holds != (f"{kind}s", list, list):
        raise Problem("file", "not_an_export", accepted=[f"{kind}s"])
    by_id: dict[str, list[Document]] = {}
    for index, event in enumerate(given["events"]):
        stream = event.get("stream") if isinstance(event, dict) else None
        if not isinstance(stream, str) or not stream.startswith(f"{kind}/"):
            raise Problem(f"events[{index}].stream", "not_an_option", stream, accepted=[f"{kind}/…"])
        by_id.setdefault(stream.split("/")[1], []).append(event)
    for index, document in enumerate(given["documents"]):
        stream_id = document.get("id") if isinstance(document, dict) else None
        if stream_id not in by_id:
            raise Problem(f"documents[{index}].id", "not_an_option", stream_id, accepted=sorted(by_id)[:5])
        if given.get("engine_version") == VERSION:  # another engine may fold the same to another document
            _must_be_folded(kind, document, by_id[stream_id], f"documents[{index}]")
    before = {stream_id for stream_id in by_id if _kept(kind, stream_id) is not None}
    events.push_whole(given["events"], now_ms)
    return {"added": len(by_id.keys() - before), "known": len(before)}


def _must_be_folded(kind: str, document: Document, own: list[Document], path: str) -> None:
    folded = catalogue.call(f"{kind}.fold", {"id": document["id"], "events": own})["document"]
    for name in sorted(document.keys() & folded.keys()):
        if document[name] != folded[name]:
            raise Problem(f"{path}.{name}", "does_not_follow", document[name], accepted=[folded[name]])
