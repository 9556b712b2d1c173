"""The events that any batch has, and the functions that fold them, say what comes next and order a day."""

from ..core.describe import boolean, choice, document, integer, many, number, text, together
from ..physics.fields import SEEN

BURST_ADVICE = {
    "advised_s": number("s", 0, 3600, "what the engine advised", default=None),
    "then": choice(("turn", "stir"), "what follows the burst", default="stir"),
    "read": boolean("whether a reading is wanted after it", default=False),
    "from_c": number("°C", -30, 250, "bulk temperature believed before it", default=None),
    "expected_c": number("°C", -30, 250, "bulk temperature expected after it", default=None),
    "low_c": number("°C", -50, 250, "10 % point of expected_c", default=None),
    "high_c": number("°C", -30, 300, "90 % point of expected_c", default=None),
}
# Two phones may have taken the same step while neither had heard of the other: what the step answers to is told.
OF_BURST = {"started_ms": number("ms", 0, 1e14, "when the burst it belongs to was started", default=None)}
EVENTS = {
    "batch_opened": {
        "plan": document("the plan; folded apart from its event", unread=True, default=None),
        "engine_version": text(20, "version that planned it", default=""),
    },
    "ready_checked": {},
    "weighed": {"kg": number("kg", 0.01, 50, "caramel weighed in"), "lot": text(60, "its lot", default=None)},
    "lot_named": {"lot": text(60, "lot of the caramel")},
    "jacket_started": {
        "seconds_s": number("s", 1, 1e8, "expected until it is in the window"),
        "low_s": number("s", 1, 1e8, "10 % point"),
        "high_s": number("s", 1, 1e8, "90 % point"),
    },
    "water_topped": {},
    "burst_started": together({"seconds_s": number("s", 1, 600, "time set on the oven")}, BURST_ADVICE),
    "burst_ended": OF_BURST,
    "stirred": together({"free": boolean("whether it stirs freely", default=False)}, OF_BURST),
    "read": together({"surface_c": number("°C", 0, 150, "infrared reading")}, SEEN),
    "rested": {"seconds_s": number("s", 1, 3600, "time off the heat")},
    "poured": {"bulk_c": number("°C", 20, 150, "bulk temperature believed at pouring", default=None)},
    "slab_read": together({"surface_c": number("°C", -10, 150, "infrared reading of the slab")}, SEEN),
    "touched": together({"firm": boolean("whether the middle felt firm enough to cut")}, SEEN),
    "cooling_refitted": {
        "seen": integer(0, 200, "how many readings and touch tests it took in"),
        "reply": document(
            "of the reply of cool.refit: ready_s, ready_low_s, ready_high_s, loss_factor, loss_factor_sd", unread=True
        ),
    },
    "freed": {},
    "prebottomed": {},
    "flipped": {},
    "scored": {},
    "cut": {},
    "wrapped": {},
    "stood": together({"height_m": number("m", 0.0005, 0.3, "height of the cube of a stand-up test")}, SEEN),
    "counted": {"pieces": integer(0, 100000, "good pieces")},
    "weighed_out": together(
        {
            "kg": number("kg", 0, 50, "what the scale says"),
            "what": text(40, "what was weighed", default="rest"),
        },
        SEEN,
    ),
    "noted": {"text": text(2000, "a note")},
    "photographed": {
        "photo_id": text(36, "UUIDv7 of the picture, which the phone sends by itself"),
        "bytes": integer(1, 2**21, "its length as JPEG"),
        "width_px": integer(1, 10000, "its width"),
        "height_px": integer(1, 10000, "its height"),
    },
    "taken_over": {},
    "left_out": {
        "left_out": boolean("whether the shop leaves this batch out of what it learns"),
        "reason": text(200, "why; needed to leave out", default=""),
    },
    "step_skipped": {"step": text(40, "the step")},
    "undone": {"event_id": text(80, "the event taken back")},
    "closed": {},
}

RUN = document("the state of a batch, as `run.replay` makes it")
FUNCTIONS = {
    "run.replay": {
        "request": {
            "plan": document("the plan of the batch"),
            "events": many(document("an event", unread=True), 0, 20000, "events, in any order"),
        },
        "reply": {"run": RUN},
    },
    "run.apply": {"request": {"run": RUN, "event": document("an event", unread=True)}, "reply": {"run": RUN}},
    "run.advise": {
        "request": {"run": RUN, "at_ms": number("ms", 0, 1e14, "corrected time now")},
        "reply": {
            "step": text(40, "the step that is open"),
            "say": document("`{code, values}`: the prompt"),
            "number": document("`{name, value, low, high}`: the one number that matters, or null"),
            "clocks": many(document("`{name, due_ms, sound}`"), 0, 20, "running clocks, soonest first"),
            "action": document(
                "`{code, kind, body}`, or `{code, entry}` that opens the keypad: the big button, or null"
            ),
            "choices": many(document("as `action`"), 0, 6, "other buttons of this step"),
            "entry": document(
                "`{kind, field, name, low, high, last, likely_low, likely_high, band_low, band_high, body}`: "
                "a number to type, or null"
            ),
            "caution": document("`{word, code}`: signal word and sentence, or null"),
            "more": document("`{code, values}`: a second, smaller line, or null"),
            "wants": document(
                "`{name, request, kind, body, keep}`: call this function, write what `keep` names of its reply as an "
                "event of this kind; or null"
            ),
            "undo": document("`{event_id, code}`: what undo would take back, or null"),
            "melt": document("the reply of melt.next_burst while melting, for the ladder; or null"),
        },
    },
}
