"""A batch sheet filled in by hand becomes events of the batch log; and as such events they say when they were typed."""

from ..core.problems import Problem
from ..core.prompts import SLIP_FACTOR, most_pieces
from ..products import KINDS
from ..steps.common.sheet import Sheet
from ..steps.melt.prompts import SHOWN_STIR_S

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable
    from ..types import PaperEventsRequest


# Kinds may share one.
SHEETS: "list[Any]" = []
for _kind in KINDS:
    if _kind.sheet is not None and _kind.sheet not in SHEETS:
        SHEETS.append(_kind.sheet)


def events(request: "PaperEventsRequest") -> "Document":
    """What a filled-in batch sheet says, as events in the order of the log.

    Request: after_ms, now_ms (corrected times, ms: of the batch's newest event, of typing), weighed_at_ms (ms),
    weighed_kg and old_kg (kg), lot, bursts, poured_at_ms (ms), slab, cut_at_ms (ms), planned_pieces, pieces, rest_kg
    (kg), notes; of clusters fill {fill_kg (kg), low_c (°C)} as planned, nuts_clear, under_lots [{material, lot}],
    fills, trays, loose_kg (kg).
    Reply: events [{kind, at_ms (ms), body}]; each body says when it was typed, so that nobody takes a time written by
    hand for one that a phone saw. What the sheet leaves empty is left out; the last event closes the batch.
    Raises: Problem out_of_order (a time more than a minute before what must come before it: sheets have whole
    minutes), still_to_come (a time after now), needs_pour (pressed or read before anything was poured), too_high (a
    count or a rest that the bench would not believe either),
    missing (nothing stands on the sheet; a tray that was laid again or freed without being laid, or laid without a
    fill).
    Relation: a stir ends a burst when its seconds are over; the reading of a burst follows SHOWN_STIR_S later. A
    fill is as much as planned, and where it was not read FRESH_BOWL_K over what the bowl is ready at. The funnel is
    emptied after the last tray.
    Source: practice for SHOWN_STIR_S, assumed for the rest.
    """
    sheet = Sheet(request["after_ms"], request["now_ms"])
    _weigh(sheet, request)
    _melt_events(sheet, request)
    for own in SHEETS:
        own.after_melting(sheet, request)
    _count(sheet, request)
    for text in request["notes"]:
        if text:
            sheet.then("noted", {"text": text})
    if not sheet.events:
        raise Problem("weighed_kg", "missing")
    sheet.then("closed", {})
    return {"events": sheet.events}


def _count(sheet: "Sheet", request: "Readable") -> None:
    """Good pieces, and the weight of the rest."""
    pieces, planned = request["pieces"], request["planned_pieces"]
    rest_kg, weighed_kg = request["rest_kg"], request["weighed_kg"]
    if request["loose_kg"] is not None:
        sheet.then("weighed_out", {"kg": request["loose_kg"], "what": "loose"})
    if pieces is not None:
        if planned is not None and pieces > most_pieces(planned):
            raise Problem("pieces", "too_high", pieces, 0, most_pieces(planned))
        sheet.then("counted", {"pieces": pieces})
    if rest_kg is not None:
        if weighed_kg is not None and rest_kg > SLIP_FACTOR * weighed_kg:
            raise Problem("rest_kg", "too_high", rest_kg, 0, SLIP_FACTOR * weighed_kg, "kg")
        sheet.then("weighed_out", {"kg": rest_kg, "what": "rest"})


def _weigh(sheet: "Sheet", request: "Readable") -> None:
    """All ready, and weighing in."""
    if request["weighed_at_ms"] is not None:
        sheet.add("ready_checked", "weighed_at_ms", request["weighed_at_ms"])
    for own in SHEETS:
        own.before_weighing(sheet, request)
    if request["old_kg"] is not None:
        if request["weighed_kg"] is not None and request["old_kg"] > request["weighed_kg"]:
            raise Problem("old_kg", "too_high", request["old_kg"], 0, request["weighed_kg"], "kg")
        sheet.then("old_weighed", {"kg": request["old_kg"]})
    if request["weighed_kg"] is not None:
        sheet.then("weighed", {"kg": request["weighed_kg"], "lot": request["lot"]})
    elif request["lot"]:
        sheet.then("lot_named", {"lot": request["lot"]})


def _melt_events(sheet: "Sheet", request: "Readable") -> None:
    """Bursts and what the kinds have besides, as they came: [(time, field, kind, what stands there)], merged."""
    bursts = [
        (one["at_ms"], "bursts[" + str(row) + "].at_ms", "burst_started", one)
        for row, one in enumerate(request["bursts"])
    ]
    columns: "list[list[Any]]" = [bursts]
    until_ms: float | None = None
    for own in SHEETS:
        columns += own.columns(request)
        until_ms = own.hot_until_ms(request) if until_ms is None else until_ms
    steps = _in_time_order(columns)
    for index, (at_ms, field, kind, one) in enumerate(steps):
        if kind == "burst_started":
            # A reading never past the next start or the pour: whole minutes leave little room.
            after_ms = steps[index + 1][0] if index + 1 < len(steps) else until_ms
            _burst(sheet, field, one, after_ms)
        else:
            sheet.add(kind, field, at_ms, one)


def _burst(sheet: "Sheet", field: str, one: "Readable", after_ms: float | None) -> None:
    body = {name: one[name] for name in ("seconds_s", "level_percent")}
    sheet.add("burst_started", field, one["at_ms"], body)
    sheet.later("stirred", one["seconds_s"], {"free": one["free"]})
    if one["surface_c"] is not None:
        sheet.later("read", SHOWN_STIR_S, {"surface_c": one["surface_c"]}, after_ms)


def _in_time_order(columns: "list[list[tuple[float, str, str, Document]]]") -> "list[tuple[float, str, str, Document]]":
    """Rows of several columns in the order of time; each column keeps its own, the earlier one comes first."""
    left, found = [list(column) for column in columns if column], []
    while left:
        column = min(left, key=lambda rows: rows[0][0])
        found.append(column.pop(0))
        left = [rows for rows in left if rows]
    return found
