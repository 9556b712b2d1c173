"""Reads the cells of tables of lots, orders and boxes packed: the facts that their rows tell of."""

from collections.abc import Callable
from datetime import datetime
from math import isclose
from typing import Any, NamedTuple

from amberbench.engine.core.problems import Problem

from . import stream_export

Document = dict[str, Any]
TIMES = ("received_at", "opened_at", "merged_at", "wanted_at", "placed_at", "handed_at", "cancelled_at", "packed_at")
A_TIME, A_NUMBER, YES_OR_NO = "2027-03-31T15:00:00Z", "2.5", ("yes", "no")
MOST_AT_ONCE = 100_000
"""So many labels, or boxes taken back, one event tells of."""


class Row(NamedTuple):
    """A row of a table: the line of the file it begins in, its cells by column, and whether commas are decimal."""

    line: int
    cells: dict[str, str]
    commas: bool = False

    def cell_problem(self, column: str, code: str, given: Any = None, accepted: list[str] | None = None) -> Problem:
        """The problem of one cell, to raise."""
        return Problem(f"line[{self.line}].{column}", code, given, accepted=accepted)

    def text(self, column: str) -> str:
        """What stands in a cell; "" for nothing."""
        return self.cells.get(column, "")

    def or_none(self, column: str) -> str | None:
        """What stands in a cell; None for nothing."""
        return self.cells.get(column) or None

    def number(self, column: str) -> float | None:
        """A number; None for nothing. Raises Problem."""
        cell = self.text(column).strip()
        return self.as_number(column, cell) if cell else None

    def as_number(self, column: str, cell: str) -> float:
        """The number that a text is. Raises Problem."""
        text = cell.replace(",", ".") if self.commas else cell
        try:
            number = float(text) if "_" not in text else None
        except ValueError:
            number = None
        if number is None:
            raise self.cell_problem(column, "cell", cell, [A_NUMBER])
        return int(number) if number.is_integer() and abs(number) < 2**53 else number

    def time(self, column: str) -> float | None:
        """An instant (ms); None for nothing. Raises Problem."""
        cell = self.text(column).strip()
        return self.as_time(column, cell) if cell else None

    def as_time(self, column: str, cell: str) -> float:
        """The instant (ms) that a text names, its distance from UTC included. Raises Problem."""
        try:
            at = datetime.fromisoformat(cell)
        except ValueError:
            raise self.cell_problem(column, "cell", cell, [A_TIME]) from None
        if at.tzinfo is None:
            raise self.cell_problem(column, "cell", cell, [A_TIME])
        return round((at - stream_export.EPOCH).total_seconds() * 1000)

    def yes(self, column: str, otherwise: bool = False) -> bool:
        """Whether a cell says yes. Raises Problem."""
        cell = self.text(column).strip().lower()
        if cell and cell not in YES_OR_NO:
            raise self.cell_problem(column, "cell", cell, list(YES_OR_NO))
        return cell == "yes" if cell else otherwise

    def several(self, column: str, parting: str) -> list[str]:
        """The parts of a cell of several."""
        return [one for one in self.text(column).split(parting) if one]

    def pairs(self, column: str, example: str) -> list[tuple[str, float]]:
        """What a cell says as "<id>:<number>" several times. Raises Problem."""
        found = []
        for one in self.several(column, " "):
            name, colon, number = one.rpartition(":")
            if not colon:
                raise self.cell_problem(column, "cell", one, [example])
            found.append((stream_export.decoded(name), self.as_number(column, number)))
        return found

    def says_the_same(self, column: str, text: str) -> bool:
        """Whether a filled cell says the same as a text of `stream_export`: numbers and times by what they mean."""
        cell = self.cells[column]
        if cell == text:
            return True
        try:
            if column in TIMES:
                return self.as_time(column, cell.strip()) == self.as_time(column, text)
            return isclose(self.as_number(column, cell.strip()), self.as_number(column, text), rel_tol=1e-9)
        except Problem:
            return cell.strip().lower() == text in YES_OR_NO


class Fact(NamedTuple):
    """An event's kind, when it happened (ms), its body, the rows it was read from, the column that says when, and the
    column that says all of it, where one does."""

    kind: str
    at_ms: float
    body: Document
    rows: list[Row]
    time: str
    column: str | None = None


def in_order(kind: str, rows: list[Row]) -> list[Row]:
    """The rows of one document in the order in which `stream_export` writes them."""
    if kind != "order":
        return rows
    return sorted(rows, key=lambda row: (_is_handed(row), (row.time("handed_at") or 0) if _is_handed(row) else 0))


def _lot(rows: list[Row], now_ms: int | None) -> list[Fact]:
    row = rows[0]
    came_ms = row.time("received_at")
    if came_ms is None:
        came_ms = now_ms
    packs, amount = row.number("packs"), row.number("amount")
    what = {"material": row.text("material"), "unit": row.or_none("unit"), "best_by": row.or_none("best_by")}
    delivery: Document = {name: row.text(name) for name in ("supplier", "supplier_lot", "currency")}
    delivery |= {"supplier_id": row.or_none("supplier_id"), "price_minor": row.number("price_minor")}
    is_delivery = packs is not None or now_ms is not None or any(value not in ("", None) for value in delivery.values())
    is_made = row.or_none("made_from") is not None or bool(row.number("remelts")) or not is_delivery
    found = []
    if came_ms is not None and (packs is not None or not is_made):
        packs = 1 if packs is None else packs
        each = amount / packs if amount is not None and packs else amount
        body = what | delivery | {"packs": packs, "pack_amount": each}
        found.append(Fact("received", came_ms, body, rows, "received_at"))
    if came_ms is not None and is_made:
        left_of = {"batch_id": row.or_none("made_from"), "amount": amount, "remelts": row.number("remelts")}
        found.append(Fact("made", came_ms, what | left_of, rows, "received_at"))
    opened_ms, merged_ms = row.time("opened_at"), row.time("merged_at")
    if opened_ms is not None:
        found.append(Fact("opened", opened_ms, {}, rows, "opened_at"))
    for at_ms, words in _happenings(row, "counts", 2, f"{A_TIME} {A_NUMBER}"):
        body = {"left": row.as_number("counts", words[0])}
        found.append(Fact("left_counted", at_ms, body, rows, "counts", "counts"))
    for at_ms, words in _happenings(row, "discarded", 3, f"{A_TIME} {A_NUMBER} spoilt"):
        body = {"amount": row.as_number("discarded", words[0]), "why": words[1]}
        body["text"] = stream_export.decoded(words[2]) if len(words) > 2 else ""
        found.append(Fact("discarded", at_ms, body, rows, "discarded", "discarded"))
    if merged_ms is not None:
        merged = {"into_lot_id": row.or_none("merged_into"), "adds": row.yes("merged_adds", otherwise=True)}
        found.append(Fact("merged", merged_ms, merged, rows, "merged_at"))
    return found


def _happenings(row: Row, column: str, least: int, example: str) -> list[tuple[float, list[str]]]:
    """What a cell says as "<when> <words>" several times: (ms, words)."""
    found = []
    for one in row.several(column, "; "):
        at, *words = one.split(" ")
        if len(words) < least - 1:
            raise row.cell_problem(column, "cell", one, [example])
        found.append((row.as_time(column, at), words))
    return found


def _is_handed(row: Row) -> bool:
    what = row.text("what").strip() or ("handed" if row.or_none("handed_at") else "wanted")
    if what not in ("wanted", "handed"):
        raise row.cell_problem("what", "cell", what, ["wanted", "handed"])
    return what == "handed"


def _line(row: Row) -> Document:
    return {
        "box_id": row.or_none("box_id"),
        "product_id": row.or_none("product_id"),
        "count": row.number("count"),
        "mass_kg": row.number("mass_kg"),
    }


def _order(rows: list[Row], now_ms: int | None) -> list[Fact]:
    row = rows[0]
    wanted = [one for one in rows if not _is_handed(one) and any(value is not None for value in _line(one).values())]
    names = ("customer", "note", "currency")
    body: Document = {name: row.text(name) for name in names} | {"lines": [_line(one) for one in wanted]}
    body |= {name: row.or_none(name) for name in ("customer_id", "repeats")}
    body |= {
        "price_minor": row.number("price_minor"),
        "counter": row.yes("counter"),
        "wanted_ms": row.time("wanted_at"),
    }
    placed_ms = row.time("placed_at")
    placed_ms = now_ms if placed_ms is None else placed_ms
    found = []
    if placed_ms is None:
        found.append(Fact("changed", 0, body, wanted or rows, "placed_at"))
    elif body["wanted_ms"] is None and now_ms is None:
        found.append(Fact("placed", placed_ms, body | {"wanted_ms": 0}, wanted or rows, "placed_at"))
        found.append(Fact("changed", placed_ms, {"wanted_ms": None}, rows, "placed_at"))
    else:
        found.append(Fact("placed", placed_ms, body, wanted or rows, "placed_at"))
    handed: dict[tuple[float, str | None], list[Row]] = {}
    for one in in_order("order", [one for one in rows if _is_handed(one)]):
        at_ms = one.time("handed_at")
        if at_ms is None:
            raise one.cell_problem("handed_at", "cell", "", [A_TIME])
        handed.setdefault((at_ms, one.or_none("handed_by")), []).append(one)
    for (at_ms, by), some in handed.items():
        lines = [_line(one) | {"pack_id": one.or_none("pack_id")} for one in some]
        found.append(Fact("handed_over", at_ms, {"lines": lines, "by": by}, some, "handed_at"))
    cancelled_ms = row.time("cancelled_at")
    if cancelled_ms is not None:
        found.append(Fact("cancelled", cancelled_ms, {"why": row.text("cancelled_why")}, rows, "cancelled_at"))
    return found


def _pack(rows: list[Row], now_ms: int | None) -> list[Fact]:
    row = rows[0]
    packed, in_hand, printed = row.number("packed"), row.number("count"), row.number("printed")
    packed_ms = row.time("packed_at")
    packed_ms = now_ms if packed_ms is None else packed_ms
    found = []
    if packed_ms is not None:
        body = {
            "box_id": row.or_none("box_id"),
            "count": packed,
            "code": row.text("code"),
            "made_on": row.or_none("made_on"),
            "best_by": row.or_none("best_by"),
            "seconds": row.yes("seconds"),
            "from": [{"batch_id": name, "pieces": pieces} for name, pieces in row.pairs("batches", "b-1:12")],
            "lots": [{"lot_id": name, "amount": amount} for name, amount in row.pairs("lots", "l-1:2.5")],
        }
        found.append(Fact("packed", packed_ms, body, rows, "packed_at"))
    at_ms = packed_ms or 0
    for one in row.several("net_kg", " "):
        found.append(Fact("net_weighed", at_ms, {"net_kg": row.as_number("net_kg", one)}, rows, "packed_at", "net_kg"))
    for n in _portions(row, "printed", printed or 0):
        found.append(Fact("labels_printed", at_ms, {"n": n}, rows, "packed_at", "printed"))
    taken_back = 0 if in_hand is None else (packed or 0) - in_hand
    for n in _portions(row, "count", taken_back):
        found.append(Fact("unpacked", at_ms, {"count": n}, rows, "packed_at", "count"))
    return found


def _portions(row: Row, column: str, number: float) -> list[float]:
    """A number in portions that one event takes each; a fraction is left to the check of the event."""
    if number > 1000 * MOST_AT_ONCE:
        raise row.cell_problem(column, "cell", row.text(column), ["1", str(MOST_AT_ONCE)])
    whole = int(number // MOST_AT_ONCE) if number > MOST_AT_ONCE else 0
    rest = number - whole * MOST_AT_ONCE
    return [MOST_AT_ONCE] * whole + ([rest] if rest else [])


FACTS: dict[str, Callable[[list[Row], int | None], list[Fact]]] = {"lot": _lot, "order": _order, "pack": _pack}
