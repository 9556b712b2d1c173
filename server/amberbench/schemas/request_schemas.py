"""Schemas of the requests to the API besides plans. Its answers are described in `response_documents`."""

import marshmallow as ma
from marshmallow import fields as ma_fields

from amberbench.engine.core import field_kinds as kinds

from .fault import fault, schema_messages
from .fields import Count, ListOf, Plain
from .response_documents import ROLES

MOST_EVENTS = 500
ANY = (dict, list, str, int, float, bool)


class Push(ma.Schema):
    """Events to store."""

    error_messages = schema_messages(["events"])
    events = ListOf(
        kinds.many(kinds.document("an event"), 0, MOST_EVENTS, "events, oldest first"),
        Plain(kinds.document("an event", default=None), ANY, "not_a_document"),
        metadata={"description": "events, oldest first"},
    )


class PullQuery(ma.Schema):
    """Where to go on, and how far."""

    after = Count(kinds.integer(0, 2**53, "the cursor of the last pull", default=0), load_default=0)
    limit = Count(kinds.integer(1, MOST_EVENTS, "most events wanted", default=MOST_EVENTS), load_default=MOST_EVENTS)
    seen = ma_fields.String(load_default=None, metadata={"description": "`cursor_mark` of the last pull"})


class SnapshotQuery(ma.Schema):
    """Which page of what a phone starts from."""

    after = Count(kinds.integer(0, 2**53, "`next` of the page before; 0: the first", default=None), load_default=None)
    upto = Count(kinds.integer(0, 2**53, "`cursor` of the first page", default=None), load_default=None)


class StreamDocumentsQuery(ma.Schema):
    """Which page of the list of lots, orders or boxes packed."""

    before = ma_fields.String(load_default=None, metadata={"description": "id that the last page ended with"})
    search = ma_fields.String(load_default="", metadata={"description": "words that all stand in it"})
    only_open = ma_fields.Boolean(
        load_default=False,
        metadata={"description": "whether to leave out what is over"},
        error_messages={"invalid": [fault("not_true_or_false", {})]},
    )
    limit = Count(kinds.integer(1, 1000, "most wanted", default=200), load_default=200)


class TableFile(ma.Schema):
    """A file to take in."""

    error_messages = schema_messages(["file"])
    file = Plain(kinds.text(2**31, "CSV or JSON, as it stands in the file"), (str,), "not_text")


class TraceQuery(ma.Schema):
    """Where to trace from."""

    start = ma_fields.String(load_default="", metadata={"description": "<kind>/<id> of anything that is traced"})


class BatchesQuery(ma.Schema):
    """Which page of the list."""

    before = ma_fields.String(load_default=None, metadata={"description": "batch_id that the last page ended with"})
    limit = Count(kinds.integer(1, 1000, "most batches wanted", default=200), load_default=200)


class Offered(ma.Schema):
    """The phone to let in."""

    error_messages = schema_messages(["name", "role"])
    name = Plain(kinds.text(80, "what people call the phone"), (str,), "not_text")
    role = Plain(kinds.choice(ROLES, "what it may do"), (str,), "not_text")


class Pairing(ma.Schema):
    """A code, and the phone that brings it."""

    error_messages = schema_messages(["code", "device_id"])
    code = Plain(kinds.text(80, "the code of a link, or eight digits"), (str,), "not_text")
    device_id = Plain(kinds.text(64, "the name under which the phone writes events"), (str,), "not_text")
