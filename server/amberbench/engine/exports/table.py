"""The list of batches and a batch's timeline as CSV (RFC 4180), the same on the server and on the phone."""

from ..batch.log import corrected_ms, in_order, well_formed
from ..core import check

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
)
BODY_COLUMNS = (
    "seconds_s",
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
    "text",
)
TIMELINE_COLUMNS = ("at", "kind", "counts") + BODY_COLUMNS + ("typed_at", "device_id", "event_id")
# What a spreadsheet takes for the beginning of a formula, and what it skips before one (from memory; a test holds it).
FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
# What may part cells or lines, however the file is opened.
PARTS = (";", "\t", "\r", "\n")
DAY_S = 86400


def batches(request: "TableBatchesRequest") -> "TableBatchesReply":
    """The list of batches as CSV.

    Request: batches (summaries). Reply: text, a row a batch under a row of names; kg in kilograms, times in ISO 8601,
    UTC; `pieces_are` says counted or planned. An empty cell: not known.
    Raises: nothing of its own.
    Source: memory for RFC 4180 and for what a spreadsheet takes for a formula.
    """
    return {"text": _csv(BATCH_COLUMNS, [_batch(one) for one in request["batches"]])}


def _batch(one: "Readable") -> "Document":
    row = dict(one)
    row["opened_at"], row["closed_at"] = iso(one["opened_at_ms"]), iso(one["closed_at_ms"])
    row["pieces_are"] = None if one["pieces"] is None else "planned" if one["good_kg"] is None else "counted"
    return row


def timeline(request: "TableTimelineRequest") -> "TableTimelineReply":
    """What happened in a batch as CSV.

    Request: events (in any order), ignored (ids of those that did not fit). Reply: text, a row an event in the order
    of the log; `counts` says yes, taken_back or did_not_fit; `typed_at` is filled where somebody typed it in later.
    Events without the members every event has are left out.
    Raises: nothing of its own.
    Source: memory for RFC 4180 and for what a spreadsheet takes for a formula.
    """
    events: "list[Any]" = [one for one in request["events"] if well_formed(one)]
    sound = in_order(events)
    named = [one["body"].get("event_id") for one in sound if one["kind"] == "undone"]
    undone = {one for one in named if type(one) is str}
    ignored = set(request["ignored"])
    return {"text": _csv(TIMELINE_COLUMNS, [_happening(one, undone, ignored) for one in sound])}


def _happening(event: "Readable", undone: set[str], ignored: set[str]) -> "Document":
    row, event_id = {name: event["body"].get(name) for name in BODY_COLUMNS}, event["id"]
    row["counts"] = "taken_back" if event_id in undone else "did_not_fit" if event_id in ignored else "yes"
    row["at"] = iso(corrected_ms(event))
    row["typed_at"] = iso(event["body"].get("typed_at_ms"))
    row["kind"], row["device_id"], row["event_id"] = event["kind"], event["device_id"], event_id
    return row


def _csv(columns: tuple[str, ...], rows: "list[Document]") -> str:
    lines = [",".join(columns)]
    for row in rows:
        lines.append(",".join([cell(row[name]) for name in columns]))
    return "\r\n".join(lines) + "\r\n"


def cell(value: float | str | None) -> str:
    """One value as a cell: empty for what is not known, words guarded so that no spreadsheet runs them."""
    if type(value) is bool:
        return "true" if value else "false"
    if check.is_number(value):
        return _digits(value)
    if type(value) is not str:
        return ""
    value = _harmless(value)
    if any(mark in value for mark in ',"\r\n') or value != value.strip():
        return '"' + value.replace('"', '""') + '"'
    return value


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


def iso(at_ms: float | None) -> str | None:
    """An instant (ms since 1970) in ISO 8601, UTC, whole seconds; None for none.

    Relation: days since 0000-03-01 in eras of 400 years, so that leap days come last. Source: arithmetic of the
    proleptic Gregorian calendar; a test holds it to Python's own.
    """
    if not check.is_number(at_ms) or not 0 <= at_ms < 2e14:
        return None
    seconds = int(at_ms // 1000)
    days, rest = seconds // DAY_S + 719468, seconds % DAY_S
    era, day = days // 146097, days % 146097
    year = (day - day // 1460 + day // 36524 - day // 146096) // 365
    in_year = day - (365 * year + year // 4 - year // 100)
    shifted = (5 * in_year + 2) // 153
    date = in_year - (153 * shifted + 2) // 5 + 1
    month = shifted + 3 if shifted < 10 else shifted - 9
    shown = (era * 400 + year + (1 if month < 3 else 0), month, date, rest // 3600, rest // 60 % 60, rest % 60)
    return "%04d-%02d-%02dT%02d:%02d:%02dZ" % shown
