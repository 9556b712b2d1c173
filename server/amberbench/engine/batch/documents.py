"""Events, what the bench says, and the plans and runs of all kinds."""

from ..core.documents import count, instant, listed, nothing, quantity, words
from ..core.field_kinds import choice, document, either, integer, record, together
from ..products import KINDS
from ..products.documents import titled
from ..steps.cool.documents import REFITTED
from . import fields
from .events import EVENTS

# What paper brings has it in every body.
# What any event of a batch may say besides; no fold reads it.
SAID = {
    "typed_at_ms": instant("when somebody typed it back from paper", optional=True),
    "by": words("the person at the phone, of the shop's people", optional=True),
}
LOGGED = {
    "id": words("UUIDv7 made on the phone"),
    "device_id": words("the phone"),
    "seq": integer(0, 2**53, "the phone's own count"),
    "at_ms": instant("by the phone's clock"),
    "offset_ms": quantity("ms", "server clock minus phone clock, estimated when it was written"),
    "kind": words("what happened"),
    "body": document("what is told of it", of="Values"),
}
ENVELOPE = together(
    LOGGED,
    {
        "v": integer(0, 2**53, "form of the envelope"),
        "shop_id": words("the shop"),
        "stream": words("what it belongs to: batch/<id>, shop/<id>, or what a newer app knows", optional=True),
        "batch_id": words("the batch of a batch's stream, else null", nullable=True),
    },
)
SIGNAL_WORDS = ("DANGER", "WARNING", "CAUTION", "NOTICE")
SOUNDS = ("stir", "read", "ready", "too_hot")
SENTENCE = {"code": words("key of the sentence"), "values": document("what stands in it", of="Values")}
ENTRY = {
    "kind": words("the event it writes"),
    "field": words("the field of its body"),
    "name": words("its name; the end says the unit"),
    "low": quantity("", "least that is accepted"),
    "high": quantity("", "most that is accepted"),
    "last": quantity("", "what was typed last", nullable=True),
    "likely_low": quantity("", "10 % point of what is expected", nullable=True),
    "likely_high": quantity("", "90 % point of it", nullable=True),
    "band_low": quantity("", "lower end of where it should be", nullable=True),
    "band_high": quantity("", "upper end of it", nullable=True),
    "body": document("the rest of its body", of="Values"),
}
ACTION = {"code": words("full key of its words")}
OPENS_NO_KEYPAD = {"entry": nothing("it opens no keypad", optional=True)}
WRITES_NOTHING = {name: nothing("it writes no event by itself", optional=True) for name in ("kind", "body")}
BUTTON = together(
    ACTION,
    {
        "kind": words("the event it writes"),
        "body": document("its body", of="Values"),
        "reasons": listed(
            words("a code"), "it is asked why first: its body's `reason`, and `text` in words", optional=True
        ),
    },
    OPENS_NO_KEYPAD,
)
FIGURE = {
    "name": words("its name; the end says the unit"),
    "value": quantity("", "the figure"),
    "low": quantity("", "10 % point", nullable=True, optional=True),
    "high": quantity("", "90 % point", nullable=True, optional=True),
}
CLOCK = {
    "name": words("its name"),
    "started_ms": instant("since when it runs"),
    "due_ms": instant("when it rings"),
    "sound": document("how it sounds", of="SoundName"),
    "tells": document("what the tap that silences it writes; none: it only silences", of="EventButton", optional=True),
}
WANTS = {
    "name": choice(("cool.refit",), "the function to call"),
    "request": document("its request", of="RefitRequest"),
    "kind": choice(("cooling_refitted",), "the event that its reply becomes"),
    "body": record(
        {"seen": count("how many readings and touch tests it takes in")},
        "what the event's body holds besides the reply",
    ),
    "keep": listed(choice(tuple(REFITTED), "a field"), "what of the reply is kept"),
}


DOCUMENTS = {
    "LoggedEvent": record(LOGGED, "an event as far as a fold reads it"),
    "BenchEvent": record(
        ENVELOPE, "something that was done or read, as the log keeps it; order: (at_ms + offset_ms, device_id, seq)"
    ),
    "SignalWord": choice(SIGNAL_WORDS, "signal words of ISO 3864-2 and ANSI Z535.6"),
    "SoundName": choice(SOUNDS, "how a clock sounds"),
    "Sentence": record(SENTENCE, "a sentence"),
    "Figure": record(FIGURE, "the one number that matters"),
    "Clock": record(CLOCK, "a running clock"),
    "Entry": record(ENTRY, "a number to type; it writes event `kind` with `body` and the field"),
    "TextEntry": record(
        together(ENTRY, {"low": nothing("words have no range"), "high": nothing("words have no range")}),
        "a text to type",
    ),
    "ToType": either(
        [document("a number", of="Entry"), document("a text", of="TextEntry")], "a number or a text to type"
    ),
    "EventButton": record(BUTTON, "a button that writes an event"),
    "EntryButton": record(
        together(ACTION, {"entry": document("what is typed", of="ToType")}, WRITES_NOTHING),
        "a button that opens the keypad",
    ),
    "Action": either(
        [document("writes an event", of="EventButton"), document("opens the keypad", of="EntryButton")], "a button"
    ),
    "Caution": record(
        {
            "word": document("the signal word", of="SignalWord"),
            "code": words("key of the sentence"),
            "values": document("what stands in it", of="Values", optional=True),
        },
        "what to mind",
    ),
    "Advice": record(
        fields.FUNCTIONS["run.advise"]["reply"], "all that the bench screen draws; codes are full keys of the texts"
    ),
    "Wants": record(WANTS, "call this function, write what `keep` names of its reply as an event of this kind"),
    "Undo": record({"event_id": words("the event"), "code": words("key of its words")}, "what undo would take back"),
    "PlanDocument": either(
        [document(one.name, of=titled(one.name) + "Plan") for one in KINDS], "the plan of a batch", by="kind"
    ),
    "PlanTaken": either(
        [document(one.name, of=titled(one.name) + "PlanTaken") for one in KINDS],
        "what a run takes of the plan of a batch",
        by="kind",
    ),
    "Run": either(
        [document(one.name, of=titled(one.name) + "Run") for one in KINDS], "the state of a batch", by="kind"
    ),
}
BODIES = {kind: together(EVENTS[kind], SAID) for kind in EVENTS}
