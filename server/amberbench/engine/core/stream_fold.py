"""Streams that are no batch (a lot, an order, boxes packed): each document is the fold of its events.

Folding is total: an event that makes no sense is listed in `ignored` and changes nothing.
"""

from . import check, dates, log
from .field_kinds import document, integer, many, number, text
from .problems import Problem
from .unfit import Unfit

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable, Mapping
    from typing import Any

    from .annotations import Document, Readable

    # Adds a checked body to a document, by when it happened (ms, corrected) and the event itself.
    Fold = Callable[[Any, Any, float, Readable], None]

MOST_IGNORED = 50
ID = text(64, "its id")
OR_NONE = text(64, "an id, or null", default=None)
DAY = text(10, "a day, YYYY-MM-DD", default=None)
MONEY = integer(0, 1000000000000, "in the smallest coin of its currency", default=None)
CURRENCY = text(3, "ISO 4217 code of its currency; empty: that of the shop", default="")
AT = number("ms", -1e15, 1e15, "when, corrected")
AT_OR_NONE = dict(AT, default=None)
BY = {"by": text(64, "the person at the phone", default=None)}
BACK_AND_FORTH = {"undone": {"event_id": text(80, "the event")}, "redone": {"event_id": text(80, "the event")}}


def fold(request: "Readable", known: "Mapping[str, Readable]", begun: "Document", folds: "Mapping[str, Fold]") -> "Any":
    """`{document, ignored}` of `{id, events}`: each event once, in the order of the log, undone ones as not there."""
    made = begun
    made["id"] = request["id"]
    ignored: "list[Document]" = []
    sound: "dict[str, Document]" = {}
    for event in request["events"]:
        if log.well_formed(event):
            sound[event["id"]] = event
        else:
            ignored.append(_passed_over(event, "malformed"))
    ordered = sorted(sound.values(), key=log.total_key)
    undone = log.taken_back(ordered)
    for event in ordered:
        if event["kind"] in log.BACK_AND_FORTH or event["id"] in undone:
            continue
        why = _added(made, event, known, folds)
        if why is not None:
            ignored.append(_passed_over(event, why))
    return {"document": made, "ignored": ignored[:MOST_IGNORED]}


def begun(known: "Mapping[str, Readable]") -> "Document":
    """A document of which nothing is known: its defaults, lists of its own."""
    made: "Document" = {}
    for name in known:
        value = known[name].get("default")
        made[name] = list(value) if type(value) is list else value
    return made


def _added(
    made: "Document", event: "Document", known: "Mapping[str, Readable]", folds: "Mapping[str, Fold]"
) -> "str | None":
    """Adds an event to the document; why it does not count, or null."""
    if event["kind"] not in folds:
        return "unknown_kind"
    fields, written = known[event["kind"]], event["body"]
    try:
        body = check.checked(fields, {name: written[name] for name in fields if name in written})
        folds[event["kind"]](made, body, log.corrected_ms(event), event)
    except Problem as problem:
        return problem.code
    except Unfit as unfit:
        return str(unfit)
    return None


def _passed_over(event: "Any", why: str) -> "Document":
    name = event.get("id") if type(event) is dict else None
    return {"id": name if type(name) is str else None, "why": why}


def day_or_none(written: "str | None") -> "str | None":
    """A day as it was written; what is none is left out: the rest of the event is a fact all the same."""
    return written if written is not None and dates.is_day(written) else None


def checked_body(request: "Readable", known: "Mapping[str, Readable]") -> "Any":
    """The body of an event that is to be written, checked. Raises Problem for its kind and each field."""
    if request["kind"] not in known:
        raise Problem("kind", "not_an_option", request["kind"], accepted=sorted(known))
    if type(request["body"]) is not dict:
        raise Problem("body", "not_a_record", request["body"])
    return check.checked(known[request["kind"]], request["body"])


def refuse_no_day(body: "Readable", names: "tuple[str, ...]") -> None:
    """Refuses what is no day of the calendar. Raises Problem malformed."""
    for name in names:
        if body.get(name) is not None and not dates.is_day(body[name]):
            raise Problem(name, "not_a_day", body[name])


def refuse_other_currency(body: "Readable", own: str) -> None:
    """Refuses a price in another currency than the shop's. Raises Problem other_currency."""
    if body.get("price_minor") is not None and body["currency"] not in ("", own):
        raise Problem("currency", "other_currency", body["currency"], accepted=[own])


def of_fold(name: str) -> "Document":
    """The description of the fold of one kind of stream into a document of this name."""
    return {
        "request": {
            "id": ID,
            "events": many(document("an event", unread=True, of="LoggedEvent"), 0, 20000, "events, in any order"),
        },
        "reply": {
            "document": document("the document", of=name),
            "ignored": many(document("an event that does not count", of="Ignored"), 0, MOST_IGNORED, "passed over"),
        },
    }
