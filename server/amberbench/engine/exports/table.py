"""The list of batches and a batch's timeline as tables of text, which server and phone write as CSV alike."""

from ..core import check
from ..core.log import corrected_ms, in_order, taken_back, well_formed

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable
    from ..types import TableBatchesReply, TableBatchesRequest, TableTimelineReply, TableTimelineRequest


BATCH_COLUMNS = (
    "batch_id",
    "name",
    "kind",
    "opened_at",
    "closed_at",
    "step",
    "pieces",
    "pieces_are",
    "caramel_kg",
    "good_kg",
    "device_id",
    "events",
    "lot",
    "under_lots",
    "contains",
    "labels_known",
    "may_contain",
    "thrown_away",
)
BODY_COLUMNS = (
    "seconds_s",
    "level_percent",
    "free",
    "surface_c",
    "bowl_c",
    "height_m",
    "kg",
    "what",
    "lot",
    "pieces",
    "firm",
    "tacky",
    "good",
    "step",
    "material",
    "reason",
    "text",
)
TIMELINE_COLUMNS = ("at", "kind", "counts") + BODY_COLUMNS + ("typed_at", "device_id", "event_id")
# What a spreadsheet takes for the beginning of a formula, and what it skips before one (from memory; a test holds it).
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
# What may part cells or lines, however the file is opened.
PARTS = (";", "\t", "\r", "\n")
LATEST_MS = 2e14


def batches(request: "TableBatchesRequest") -> "TableBatchesReply":
    """The list of batches as a table.

    Request: batches (summaries). Reply: columns, rows (a row a batch), instants (names of columns that hold seconds
    since 1970); kg in kilograms; `pieces_are` says counted or planned. An empty cell: not known.
    Raises: nothing of its own.
    Source: memory for what a spreadsheet takes for a formula.
    """
    return _table(BATCH_COLUMNS, ("opened_at", "closed_at"), [_batch(one) for one in request["batches"]])


def _batch(one: "Readable") -> "Document":
    row = dict(one)
    row["opened_at"], row["closed_at"] = _seconds(one["opened_at_ms"]), _seconds(one["closed_at_ms"])
    # A list as the server has kept it may lack a label; an older engine knew of none.
    label = one["label"] or {}
    for name in ("lot", "labels_known", "thrown_away"):
        row[name] = label.get(name)
    for name in ("contains", "may_contain"):
        row[name] = ", ".join(label.get(name) or [])
    row["under_lots"] = ", ".join(
        (lies["material"] or "?") + " " + lies["lot"] for lies in label.get("under_lots") or []
    )
    row["pieces_are"] = None if one["pieces"] is None else "planned" if one["good_kg"] is None else "counted"
    return row


def timeline(request: "TableTimelineRequest") -> "TableTimelineReply":
    """What happened in a batch as a table.

    Request: events (in any order), ignored (ids of those that did not fit). Reply: columns, rows (a row an event, in
    the order of the log), instants (names of columns that hold seconds since 1970). `counts` says yes, taken_back or
    did_not_fit; `typed_at` is filled where somebody typed it in later. Events without the members every event has are
    left out.
    Raises: nothing of its own.
    Source: memory for what a spreadsheet takes for a formula.
    """
    events: "list[Any]" = [one for one in request["events"] if well_formed(one)]
    sound = in_order(events)
    undone, ignored = taken_back(sound), set(request["ignored"])
    return _table(TIMELINE_COLUMNS, ("at", "typed_at"), [_happening(one, undone, ignored) for one in sound])


def _happening(event: "Readable", undone: "dict[str, bool]", ignored: set[str]) -> "Document":
    row, event_id = {name: event["body"].get(name) for name in BODY_COLUMNS}, event["id"]
    row["counts"] = "taken_back" if event_id in undone else "did_not_fit" if event_id in ignored else "yes"
    row["at"] = _seconds(corrected_ms(event))
    row["typed_at"] = _seconds(event["body"].get("typed_at_ms"))
    row["kind"], row["device_id"], row["event_id"] = event["kind"], event["device_id"], event_id
    return row


def _table(columns: tuple[str, ...], instants: tuple[str, ...], rows: "list[Document]") -> "TableBatchesReply":
    cells = [[cell(row[name]) for name in columns] for row in rows]
    return {"columns": list(columns), "instants": list(instants), "rows": cells}


def cell(value: float | str | None) -> str:
    """One value as a cell: empty for what is not known, words guarded so that no spreadsheet runs them."""
    if type(value) is bool:
        return "true" if value else "false"
    if check.is_number(value):
        return _digits(value)
    if type(value) is not str:
        return ""
    return _harmless(value)


def _harmless(words: str) -> str:
    """Words with an apostrophe before whatever a spreadsheet would run.

    A formula begins where a cell begins: at the start, and after what another program may take for the end of a cell
    or of a line, because it was told to part at ";" or at tabs and then sees no quotes; spaces and quotes are skipped.
    """
    shown, begun, before = "", True, ""
    for mark in words:
        if begun and mark in FORMULA:
            shown += "'" + before + mark
            begun, before = mark in PARTS, ""
        elif mark in PARTS:
            shown, begun, before = shown + before + mark, True, ""
        elif begun and mark in ' "':
            before += mark
        else:
            shown, begun, before = shown + before + mark, False, ""
    return shown + before


def _digits(value: float) -> str:
    """A number with a point and at most six decimals, none it does not need; a large one by power of ten."""
    if abs(value) < 1e15 and value == int(value):
        return str(int(value))
    if abs(value) >= 1e6:
        return "%.6e" % value
    return ("%.6f" % value).rstrip("0").rstrip(".")


def _seconds(at_ms: float | None) -> int | None:
    """Whole seconds since 1970 of an instant (ms since 1970); None for none, and for one that no calendar shows."""
    if not check.is_number(at_ms) or not 0 <= at_ms < LATEST_MS:
        return None
    return int(at_ms // 1000)
