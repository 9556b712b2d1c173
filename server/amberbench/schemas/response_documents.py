"""What the API answers besides plans, described as the engine describes its documents; and all documents by name."""

from amberbench.engine import documents as engine_documents
from amberbench.engine.core.documents import count, instant, listed, words
from amberbench.engine.core.field_kinds import boolean, choice, document, integer, record, together
from amberbench.engine.trace.fields import FUNCTIONS as TRACE

from .records import Field

POSITION = {"position": count("the server's order")}
FLAGS = {"flags": listed(words("a flag"), "what the server noticed: future, other_shop, relayed, ahead")}
CLOCK = {
    "received_ms": instant("when the request came in"),
    "sent_ms": instant("when the reply went out"),
}
LOG = {"log_id": words("which log this is: another one, another database")}
CURSOR = {
    "cursor": count("`after` of the next pull"),
    "cursor_mark": words(
        "`seen` of the next pull: tells whether the log is as it was; null: it is empty", nullable=True
    ),
}
SERVED = together(
    engine_documents.DOCUMENTS["BenchEvent"]["fields"],
    POSITION,
    {"received_ms": instant("when the server got it")},
    FLAGS,
)
EVENTS = listed(document("an event", of="ServedEvent"), "events, in the order of the log")
SUMMARIES = listed(document("a batch", of="Summary"), "batches in a line, newest first")
PUSH_ANSWER = together(
    {
        "id": words("its id; null: it had none", nullable=True),
        "result": choice(("stored", "known", "refused"), "what became of it"),
        "code": words("why it was refused: key of the sentence problem.<code>", nullable=True),
        "field": words("which member is wrong", nullable=True),
    },
    {"position": dict(POSITION["position"], nullable=True)},
    FLAGS,
)
WITH_EVENTS = {
    "broken": words("what broke in the app as its events were folded; null: nothing", nullable=True),
    "events": EVENTS,
    "set_aside": listed(document("an event", of="ServedEvent"), "more than a day ahead: in no fold"),
}
SERVER_RECORD = {
    "summary": document("the batch in a line", of="Summary"),
    "plan": document("its plan; null: its opening has not come, or holds none", of="PlanDocument", nullable=True),
    "run": document("its run; null: it cannot be folded", of="Run", nullable=True),
    "broken": words("what broke in the app as its events were folded; null: nothing", nullable=True, optional=True),
    "events": EVENTS,
    "set_aside": listed(document("an event", of="ServedEvent"), "more than a day ahead: in no fold"),
}
ROLES = ("reader", "bench", "owner")
PHONE = {
    "phone_id": words("its id"),
    "name": words("its name"),
    "role": choice(ROLES, "reader: look and print; bench: run, record, plan; owner: shop, prices, phones"),
    "device_id": words("the name under which it writes events"),
    "paired_ms": instant("when it was paired"),
    "seen_ms": instant("when it was last here, to five minutes"),
    "own": boolean("whether it is the phone that asks"),
    "relayed": count("events in its name that came through another phone; in a list alone", optional=True),
}
RESPONSES: dict[str, Field] = {
    # Members that newer apps added are handed on.
    "ServedEvent": record(SERVED, "an event as a phone wrote it, and what the server added", more=True),
    "PushAnswer": record(PUSH_ANSWER, "what became of one event"),
    "Pushed": record(
        together({"answers": listed(document("an answer", of="PushAnswer"), "in the order of the events")}, LOG, CLOCK),
        "an answer for each event that was sent, and the server's clock",
    ),
    "TakenIn": record(
        {"added": count("documents that are new"), "known": count("documents that were here already")},
        "what a file that was taken in brought",
    ),
    "Pulled": record(
        together(LOG, {"events": EVENTS, "more": boolean("whether there is more")}, CURSOR),
        "events after a cursor, in the server's order",
    ),
    "Batches": record(
        {"batches": SUMMARIES, "more": boolean("whether there are older ones")}, "the list of batches, newest first"
    ),
    **{
        name: described
        for kind in ("Lot", "Order", "Pack")
        for name, described in (
            (
                f"{kind}s",
                record(
                    {
                        "documents": listed(document("one", of=kind), "latest first"),
                        "more": boolean("whether there are older ones"),
                    },
                    f"a page of the list of {kind.lower()}s",
                ),
            ),
            (
                f"{kind}Record",
                record(together({"document": document("it", of=kind, nullable=True)}, WITH_EVENTS), "it"),
            ),
        )
    },
    "Traced": record(
        {
            "trace": record(TRACE["trace.walk"]["reply"], "both ways"),
            "names": listed(
                record({"node": words("<kind>/<id>"), "name": words("what it is called")}, "a name"),
                "what the nearest are called",
            ),
        },
        "what went into something and what came of it",
    ),
    "Contributions": record(
        {"contributions": listed(document("a batch", of="Lesson"), "newest first")},
        "what batches closed last teach",
    ),
    "ServerRecord": record(SERVER_RECORD, "everything about one batch"),
    "Health": record(
        together(
            {
                "app": words("always amberbench"),
                "engine_version": words("version of the engine"),
                "shop_id": words("the shop; null: there is none yet", nullable=True),
                "errors": count("mistakes of the app since the server started", optional=True),
                "backup_ms": dict(
                    instant("when the newest backup was made; null: there is none"), nullable=True, optional=True
                ),
                "certificate_until_ms": dict(instant("when the certificate of the server ends"), optional=True),
                "certificate_days_left": integer(
                    -(10**6), 10**6, "whole days until then; below zero once it has ended", optional=True
                ),
                "role": choice(ROLES, "what this phone may do; an older server says nothing", optional=True),
            },
            LOG,
            CLOCK,
        ),
        "who answers, and its clock",
    ),
    "HealthForStrangers": record({"paired": boolean("always false")}, "what the server says to who is not paired"),
    "PairedPhone": record(PHONE, "a paired phone"),
    "Phones": record(
        {"phones": listed(document("a phone", of="PairedPhone"), "in the order they were paired")}, "all of them"
    ),
    "PairingOffer": record(
        {
            "link": words("opened on the phone, it pairs it"),
            "picture": words("the link as a QR code: address of a picture (a data URI)"),
            "digits": words("eight digits that do the same; null: only the link", nullable=True),
            "expires_ms": instant("good until then"),
        },
        "what lets one phone in, once",
    ),
    "Snapshot": record(
        together(
            LOG,
            {
                "shop": document("the shop; null: there is none yet", of="Shop", nullable=True),
                "events": dict(EVENTS, meaning="those of the shop, and of batches not closed"),
                "summaries": SUMMARIES,
            },
            CURSOR,
            {"next": dict(count("`after` of the next page; null: this is the last"), nullable=True, optional=True)},
        ),
        "what a phone starts from",
    ),
    "ProblemDetails": record(
        {
            "type": words("about:blank"),
            "title": words("name of the status"),
            "status": count("the status"),
            "detail": words("a plain sentence"),
            "errors": listed(document("one thing", of="ProblemDocument"), "what is wrong with which field"),
            "instance": words("of a mistake of the app: its name in the server's log", optional=True),
            "reason": words("why the data cannot be used: key of the sentence server.data_<reason>", optional=True),
        },
        "every error (RFC 9457, application/problem+json)",
    ),
}
DOCUMENTS: dict[str, Field] = engine_documents.DOCUMENTS | RESPONSES
