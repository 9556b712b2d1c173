"""A batch sheet filled in by hand becomes events of the batch log; and as such events they say when they were typed."""

from .advise_melt import STIR_S
from .problems import Problem
from .prompts import MOST_TIMES, most_pieces

MINUTE_MS = 60000.0
# A phone's clock and a kitchen's differ a little (assumed).
AHEAD_MS = 5 * MINUTE_MS


def events(request):
    """What a filled-in batch sheet says, as events in the order of the log.

    Request: after_ms, now_ms (corrected times, ms: of the batch's newest event, of typing), weighed_at_ms (ms),
    weighed_kg (kg), lot, bursts, poured_at_ms (ms), slab, cut_at_ms (ms), planned_pieces, pieces, rest_kg (kg), notes.
    Reply: events [{kind, at_ms (ms), body}]; each body says when it was typed, so that nobody takes a time written by
    hand for one that a phone saw. What the sheet leaves empty is left out; the last event closes the batch.
    Raises: Problem out_of_order (a time more than a minute before what must come before it: sheets have whole
    minutes), still_to_come (a time after now), needs_pour (pressed or read before anything was poured), too_high (a
    count or a rest that the bench would not believe either),
    missing (nothing stands on the sheet).
    Relation: a stir ends a burst when its seconds are over; the reading of a burst follows STIR_S later.
    Source: practice for STIR_S, assumed for the rest.
    """
    sheet = _Sheet(request["after_ms"], request["now_ms"])
    _melt(sheet, request)
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
    if pieces is not None:
        if planned is not None and pieces > most_pieces(planned):
            raise Problem("pieces", "too_high", pieces, 0, most_pieces(planned))
        sheet.then("counted", {"pieces": pieces})
    if rest_kg is not None:
        if weighed_kg is not None and rest_kg > MOST_TIMES * weighed_kg:
            raise Problem("rest_kg", "too_high", rest_kg, 0, MOST_TIMES * weighed_kg, "kg")
        sheet.then("weighed_out", {"kg": rest_kg, "what": "rest"})


def _melt(sheet, request):
    """Weighing in and the bursts."""
    bursts = request["bursts"]
    if request["weighed_at_ms"] is not None:
        sheet.add("ready_checked", "weighed_at_ms", request["weighed_at_ms"])
    if request["weighed_kg"] is not None:
        sheet.then("weighed", {"kg": request["weighed_kg"], "lot": request["lot"]})
    elif request["lot"]:
        sheet.then("lot_named", {"lot": request["lot"]})
    for index, one in enumerate(bursts):
        sheet.add("burst_started", "bursts[" + str(index) + "].at_ms", one["at_ms"], {"seconds_s": one["seconds_s"]})
        sheet.later("stirred", one["seconds_s"], {"free": one["free"]})
        if one["surface_c"] is not None:
            # Never past the next start or the pour: whole minutes leave little room.
            after = bursts[index + 1]["at_ms"] if index + 1 < len(bursts) else request["poured_at_ms"]
            sheet.later("read", STIR_S, {"surface_c": one["surface_c"]}, after)


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
