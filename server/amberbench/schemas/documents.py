"""What travels besides plans: events, summaries, the shop. Replies are documented here and held to it by the tests."""

import marshmallow as ma
from marshmallow import fields as ma_fields

from amberbench.engine.core import describe as kinds

from .fault import schema_messages
from .fields import Count, ListOf, Plain

MOST_EVENTS = 500
ANY = (dict, list, str, int, float, bool)


def _milliseconds(meaning: str, nullable: bool = False) -> ma_fields.Float:
    return ma_fields.Float(required=True, allow_none=nullable, metadata={"description": f"{meaning} [ms since 1970]"})


def _words(meaning: str, nullable: bool = False) -> ma_fields.String:
    return ma_fields.String(required=True, allow_none=nullable, metadata={"description": meaning})


class Push(ma.Schema):
    """Events to store."""

    error_messages = schema_messages(["events"])
    events = ListOf(
        kinds.many(kinds.document("an event"), 0, MOST_EVENTS, "events, oldest first"),
        Plain(kinds.document("an event", default=None), ANY, "not_a_document"),
        metadata={"description": "events, oldest first"},
    )


class Answer(ma.Schema):
    """What became of one event."""

    id = _words("its id, or null when it had none", nullable=True)
    result = ma_fields.String(required=True, validate=ma.validate.OneOf(["stored", "known", "refused"]))
    position = ma_fields.Integer(required=True, allow_none=True, metadata={"description": "the server's order"})
    flags = ma_fields.List(ma_fields.String(), required=True, metadata={"description": "future, other_shop, ahead"})
    code = _words("why it was refused: key of the sentence problem.<code>", nullable=True)
    field = _words("which member is wrong", nullable=True)


class Pushed(ma.Schema):
    """An answer for each event, in the order they were sent, and the server's clock."""

    log_id = _words("which log this is: another one, another database")
    answers = ma_fields.List(ma_fields.Nested(Answer), required=True)
    received_ms = _milliseconds("when the request came in")
    sent_ms = _milliseconds("when the reply went out")


class Event(ma.Schema):
    """A fact as a phone wrote it, and what the server added."""

    class Meta:
        unknown = ma.INCLUDE  # members of newer apps are handed on

    id = _words("UUIDv7 in small letters")
    v = ma_fields.Integer(required=True)
    shop_id = _words("the shop")
    device_id = _words("the phone")
    seq = ma_fields.Integer(required=True, metadata={"description": "the phone's own count"})
    at_ms = _milliseconds("the phone's clock")
    offset_ms = ma_fields.Float(
        required=True, metadata={"description": "server clock minus phone clock, estimated [ms]"}
    )
    batch_id = _words("the batch, or null", nullable=True)
    kind = _words("what happened")
    body = ma_fields.Dict(required=True)
    position = ma_fields.Integer(required=True, metadata={"description": "the server's order"})
    received_ms = _milliseconds("when the server got it")
    flags = ma_fields.List(ma_fields.String(), required=True)


class PullQuery(ma.Schema):
    """Where to go on, and how far."""

    after = Count(kinds.integer(0, 2**53, "the cursor of the last pull", default=0), load_default=0)
    seen = ma_fields.String(load_default=None, metadata={"description": "`cursor_mark` of the last pull"})
    limit = Count(kinds.integer(1, MOST_EVENTS, "most events wanted", default=MOST_EVENTS), load_default=MOST_EVENTS)


class Pulled(ma.Schema):
    """Events after a cursor."""

    log_id = _words("which log this is: another one, another database")
    events = ma_fields.List(ma_fields.Nested(Event), required=True)
    cursor = ma_fields.Integer(required=True, metadata={"description": "`after` of the next pull"})
    cursor_mark = _words("`seen` of the next pull: tells whether the log is as it was", nullable=True)
    more = ma_fields.Boolean(required=True, metadata={"description": "whether there is more already"})


class Summary(ma.Schema):
    """One batch in a line."""

    batch_id = _words("the batch")
    name = _words("its name")
    kind = _words("slab, cluster, chocolate, standup")
    opened_at_ms = _milliseconds("opened")
    closed_at_ms = _milliseconds("closed, or null", nullable=True)
    step = _words("the open step; null when the events could not be folded", nullable=True)
    pieces = ma_fields.Integer(
        required=True, allow_none=True, metadata={"description": "counted, else planned; null for a bowl"}
    )
    caramel_kg = ma_fields.Float(
        required=True, allow_none=True, metadata={"description": "caramel or chocolate weighed in, else planned [kg]"}
    )
    good_kg = ma_fields.Float(
        required=True, allow_none=True, metadata={"description": "pieces counted × planned mass of one [kg]"}
    )
    device_id = _words("the phone that opened it")
    events = ma_fields.Integer(required=True, metadata={"description": "how many events it has"})


class BatchesQuery(ma.Schema):
    """Which page of the list."""

    before = ma_fields.String(load_default=None, metadata={"description": "batch_id that the last page ended with"})
    limit = Count(kinds.integer(1, 1000, "most batches wanted", default=200), load_default=200)


class Batches(ma.Schema):
    """The list of batches, newest first."""

    batches = ma_fields.List(ma_fields.Nested(Summary), required=True)
    more = ma_fields.Boolean(required=True)


class Contribution(ma.Schema):
    """What one closed batch teaches."""

    batch_id = _words("the batch")
    name = _words("its name")
    closed_at_ms = _milliseconds("closed")
    reason = _words("why the shop leaves it out, or null", nullable=True)
    contribution = ma_fields.Dict(
        required=True, allow_none=True, metadata={"description": "as learn.contribution makes it"}
    )


class Contributions(ma.Schema):
    """What the batches closed last teach, newest first."""

    contributions = ma_fields.List(ma_fields.Nested(Contribution), required=True)


class Record(ma.Schema):
    """Everything about one batch."""

    summary = ma_fields.Nested(Summary, required=True)
    plan = ma_fields.Dict(required=True, allow_none=True)
    run = ma_fields.Dict(required=True, allow_none=True, metadata={"description": "as run.replay makes it"})
    events = ma_fields.List(ma_fields.Nested(Event), required=True, metadata={"description": "in the order of the log"})
    set_aside = ma_fields.List(
        ma_fields.Nested(Event), required=True, metadata={"description": "more than a day ahead: in no fold"}
    )


class Health(ma.Schema):
    """Who answers, and its clock."""

    app = _words("always amberbench")
    engine_version = _words("version of the engine")
    shop_id = _words("the shop, or null before there is one", nullable=True)
    log_id = _words("which log this is: another one, another database")
    received_ms = _milliseconds("when the request came in")
    sent_ms = _milliseconds("when the reply went out")


class Shop(ma.Schema):
    """The shop document."""

    class Meta:
        unknown = ma.INCLUDE

    id = _words("the shop")
    name = _words("its name")
    invented = ma_fields.Boolean(required=True)
    language = _words("en, es")
    units = ma_fields.Dict(required=True)
    room_c = ma_fields.Float(required=True, metadata={"description": "usual room temperature [°C]"})
    ovens = ma_fields.List(ma_fields.Dict(), required=True)
    vessels = ma_fields.List(ma_fields.Dict(), required=True)
    bases = ma_fields.List(ma_fields.Dict(), required=True)
    bars = ma_fields.List(ma_fields.Dict(), required=True)
    tables = ma_fields.List(ma_fields.Dict(), required=True)
    frames = ma_fields.List(ma_fields.Dict(), required=True)
    trays = ma_fields.List(ma_fields.Dict(), required=True)
    thermometers = ma_fields.List(ma_fields.Dict(), required=True)
    basis = ma_fields.Dict(required=True, metadata={"description": "what a value rests on, by <list>/<id>.<field>"})
    caramels = ma_fields.List(ma_fields.Dict(), required=True)
    products = ma_fields.List(ma_fields.Dict(), required=True)


class Snapshot(ma.Schema):
    """What a phone starts from."""

    log_id = _words("which log this is: another one, another database")
    shop = ma_fields.Nested(Shop, required=True, allow_none=True)
    events = ma_fields.List(
        ma_fields.Nested(Event), required=True, metadata={"description": "of the shop, and of batches not closed"}
    )
    summaries = ma_fields.List(ma_fields.Nested(Summary), required=True)
    cursor = ma_fields.Integer(required=True)
    cursor_mark = _words("tells whether the log is as it was; null before the first event", nullable=True)


class Error(ma.Schema):
    """One thing wrong with one field."""

    field = _words("dotted path in the request")
    code = _words("key of the sentence problem.<code>")
    message = _words("the sentence")
    given = ma_fields.Raw(required=True, allow_none=True)
    low = ma_fields.Float(required=True, allow_none=True)
    high = ma_fields.Float(required=True, allow_none=True)
    unit = _words("unit of low and high", nullable=True)
    accepted = ma_fields.List(ma_fields.Raw(), required=True, allow_none=True)


class ProblemDetails(ma.Schema):
    """Every error (RFC 9457, application/problem+json)."""

    type = _words("about:blank")
    title = _words("name of the status")
    status = ma_fields.Integer(required=True)
    detail = _words("a plain sentence")
    errors = ma_fields.List(ma_fields.Nested(Error), required=True)
