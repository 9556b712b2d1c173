"""A batch sheet filled in by hand becomes events of the batch log; and as such events they say when they were typed."""

from ..core.problems import Problem
from ..core.prompts import MOST_TIMES, most_pieces
from ..steps.deposit.trays import FRESH_K
from ..steps.melt.prompts import STIR_S

MINUTE_MS = 60000.0
# A phone's clock and a kitchen's differ a little (assumed).
AHEAD_MS = 5 * MINUTE_MS


def events(request):
    """What a filled-in batch sheet says, as events in the order of the log.

    Request: after_ms, now_ms (corrected times, ms: of the batch's newest event, of typing), weighed_at_ms (ms),
    weighed_kg (kg), lot, bursts, poured_at_ms (ms), slab, cut_at_ms (ms), planned_pieces, pieces, rest_kg (kg), notes;
    of clusters fill {fill_kg (kg), low_c (°C)} as planned, nuts_clear, fills, trays, loose_kg (kg).
    Reply: events [{kind, at_ms (ms), body}]; each body says when it was typed, so that nobody takes a time written by
    hand for one that a phone saw. What the sheet leaves empty is left out; the last event closes the batch.
    Raises: Problem out_of_order (a time more than a minute before what must come before it: sheets have whole
    minutes), still_to_come (a time after now), needs_pour (pressed or read before anything was poured), too_high (a
    count or a rest that the bench would not believe either),
    missing (nothing stands on the sheet; a tray that was laid again or freed without being laid, or laid without a
    fill).
    Relation: a stir ends a burst when its seconds are over; the reading of a burst follows STIR_S later. A fill is as
    much as planned, and where it was not read FRESH_K over what the bowl is ready at. The funnel is emptied after the
    last tray.
    Source: practice for STIR_S, assumed for the rest.
    """
    sheet = _Sheet(request["after_ms"], request["now_ms"])
    _weigh(sheet, request)
    _hot(sheet, request)
    _free(sheet, request["trays"])
    if request["poured_at_ms"] is not None:
        sheet.add("poured", "poured_at_ms", request["poured_at_ms"])
    elif request["slab"]:
        raise Problem("poured_at_ms", "needs_pour")
    for index, one in enumerate(request["slab"]):
        _feel(sheet, "slab[" + str(index) + "]", one)
    if request["cut_at_ms"] is not None:
        sheet.add("cut", "cut_at_ms", request["cut_at_ms"])
    _count(sheet, request)
    for text in request["notes"]:
        if text:
            sheet.then("noted", {"text": text})
    if not sheet.events:
        raise Problem("weighed_kg", "missing")
    sheet.then("closed", {})
    return {"events": sheet.events}


def _count(sheet, request):
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
        if weighed_kg is not None and rest_kg > MOST_TIMES * weighed_kg:
            raise Problem("rest_kg", "too_high", rest_kg, 0, MOST_TIMES * weighed_kg, "kg")
        sheet.then("weighed_out", {"kg": rest_kg, "what": "rest"})


def _weigh(sheet, request):
    """All ready, and weighing in."""
    if request["weighed_at_ms"] is not None:
        sheet.add("ready_checked", "weighed_at_ms", request["weighed_at_ms"])
    if request["nuts_clear"]:
        sheet.then("allergens_checked", {})
    if request["fill"] is not None and request["weighed_at_ms"] is not None:
        sheet.then("under_laid", {})
    if request["weighed_kg"] is not None:
        sheet.then("weighed", {"kg": request["weighed_kg"], "lot": request["lot"]})
    elif request["lot"]:
        sheet.then("lot_named", {"lot": request["lot"]})


def _hot(sheet, request):
    """Bursts, fills and trays, as they came: [(time, field, kind, what stands there)] of each, merged."""
    bursts = [
        (one["at_ms"], "bursts[" + str(row) + "].at_ms", "burst_started", one)
        for row, one in enumerate(request["bursts"])
    ]
    fills = [
        (one["at_ms"], "fills[" + str(row) + "].at_ms", "filled", _filled(request, one))
        for row, one in enumerate(request["fills"])
    ]
    steps = _merged([bursts, fills] + _laid(request))
    for index, (at_ms, field, kind, one) in enumerate(steps):
        if kind == "burst_started":
            # A reading never past the next start or the pour: whole minutes leave little room.
            after_ms = steps[index + 1][0] if index + 1 < len(steps) else request["poured_at_ms"]
            _burst(sheet, field, one, after_ms)
        else:
            sheet.add(kind, field, at_ms, one)


def _burst(sheet, field, one, after_ms):
    sheet.add("burst_started", field, one["at_ms"], {"seconds_s": one["seconds_s"]})
    sheet.later("stirred", one["seconds_s"], {"free": one["free"]})
    if one["surface_c"] is not None:
        sheet.later("read", STIR_S, {"surface_c": one["surface_c"]}, after_ms)


def _merged(columns):
    """Rows of several columns in the order of time; each column keeps its own, the earlier one comes first."""
    left, found = [list(column) for column in columns if column], []
    while left:
        column = min(left, key=lambda rows: rows[0][0])
        found.append(column.pop(0))
        left = [rows for rows in left if rows]
    return found


def _filled(request, one):
    """The body of a fill."""
    fill = request["fill"]
    if fill is None:
        raise Problem("fill", "missing")
    warm_c = fill["low_c"] + FRESH_K if one["surface_c"] is None else one["surface_c"]
    return {"kg": fill["fill_kg"], "bulk_c": warm_c}


def _laid(request):
    """The columns of trays laid, and laid again."""
    first: list = []
    second: list = []
    for row, one in enumerate(request["trays"]):
        path = "trays[" + str(row) + "]."
        if one["laid_at_ms"] is None:
            raise Problem(path + "laid_at_ms", "missing")
        first.append((one["laid_at_ms"], path + "laid_at_ms", "tray_laid", {}))
        if one["second_at_ms"] is not None:
            if one["second_at_ms"] < one["laid_at_ms"]:
                raise Problem(path + "second_at_ms", "out_of_order", one["second_at_ms"], low=one["laid_at_ms"])
            second.append((one["second_at_ms"], path + "second_at_ms", "second_laid", {}))
    if first and not request["fills"]:
        raise Problem("fills[0].at_ms", "missing")
    if first and request["fills"][0]["at_ms"] > first[0][0]:
        raise Problem(first[0][1], "out_of_order", first[0][0], low=request["fills"][0]["at_ms"])
    return [first, second]


def _free(sheet, trays):
    """The funnel is emptied after the last tray; then they come free one by one."""
    if trays:
        sheet.then("funnel_emptied", {})
    for row, one in enumerate(trays):
        if one["freed_at_ms"] is not None:
            sheet.add("tray_freed", "trays[" + str(row) + "].freed_at_ms", one["freed_at_ms"], {"free": True})
    if any(one["freed_at_ms"] is not None for one in trays):
        sheet.then("separated", {})


def _feel(sheet, path, one):
    """A reading of the slab, a touch test, or both at once."""
    if one["surface_c"] is None and one["firm"] is None:
        raise Problem(path + ".surface_c", "missing")
    sheet.mark(path + ".at_ms", one["at_ms"])
    if one["surface_c"] is not None:
        sheet.then("slab_read", {"surface_c": one["surface_c"]})
    if one["firm"] is not None:
        sheet.then("touched", {"firm": one["firm"]})


class _Sheet:
    """Events in their order; `at_ms` is the time of the last one."""

    def __init__(self, after_ms, now_ms):
        self.at_ms = after_ms
        self.now_ms = now_ms
        self.events: list = []

    def mark(self, field, at_ms):
        """Takes a time that stands on the sheet."""
        if at_ms < self.at_ms - MINUTE_MS:
            raise Problem(field, "out_of_order", at_ms, low=self.at_ms)
        if at_ms > self.now_ms + AHEAD_MS:
            raise Problem(field, "still_to_come", at_ms, high=self.now_ms)
        self.at_ms = max(at_ms, self.at_ms)

    def add(self, kind, field, at_ms, body=None):
        """An event whose time stands on the sheet."""
        self.mark(field, at_ms)
        self.then(kind, body or {})

    def later(self, kind, seconds_s, body, most_ms=None):
        """An event some seconds after the last, not after `most_ms`."""
        at_ms = self.at_ms + 1000.0 * seconds_s
        self.at_ms = at_ms if most_ms is None else max(self.at_ms, min(at_ms, most_ms))
        self.then(kind, body)

    def then(self, kind, body):
        """An event right after the last, a millisecond later so that the order stands."""
        self.at_ms += 1.0
        self.events.append({"kind": kind, "at_ms": self.at_ms, "body": dict(body, typed_at_ms=self.now_ms)})
