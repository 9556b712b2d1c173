"""What travels on paper and in tables: a filled-in batch sheet, the list of batches, a timeline."""

from ..core.describe import boolean, document, integer, many, number, record, text

# A batch sheet has fewer rows; whoever writes on its back has room too.
MOST_ROWS = 40


def _instant(meaning, **more):
    return number("ms", 0, 9e13, meaning, **more)


BURST = {
    "at_ms": _instant("when it was started"),
    "seconds_s": number("s", 1, 600, "time set on the oven"),
    "free": boolean("whether it stirred freely after it", default=False),
    "surface_c": number("°C", 0, 150, "infrared reading after the stir", default=None),
}
FEEL = {
    "at_ms": _instant("when it was read or pressed"),
    "surface_c": number("°C", -10, 150, "infrared reading of the slab", default=None),
    "firm": boolean("whether the middle felt firm enough to cut", default=None),
}
FILL = {
    "at_ms": _instant("when the funnel was filled"),
    "surface_c": number("°C", 0, 150, "infrared reading into it", default=None),
}
TRAY = {
    "laid_at_ms": _instant("when it was laid", default=None),
    "second_at_ms": _instant("when it had its second deposit", default=None),
    "freed_at_ms": _instant("when it came off its paper", default=None),
}
PLANNED_FILL = record(
    {
        "fill_kg": number("kg", 0.001, 20, "one fill of the funnel"),
        "low_c": number("°C", 20, 150, "coolest that the bowl is ready at"),
    },
    "what the plan of clusters has; null: a slab",
    default=None,
)
SHEET = {
    "after_ms": _instant("corrected time of the newest event the batch has"),
    "now_ms": _instant("corrected time of typing"),
    "weighed_at_ms": _instant("when all was ready and weighed in", default=None),
    "weighed_kg": number("kg", 0.01, 50, "caramel weighed in", default=None),
    "lot": text(60, "lot of the caramel", default=None),
    "bursts": many(record(BURST, "a burst"), 0, MOST_ROWS, "bursts in their order", default=[]),
    "poured_at_ms": _instant("when the slab was poured", default=None),
    "slab": many(record(FEEL, "a look at the slab"), 0, MOST_ROWS, "readings and touch tests in order", default=[]),
    "cut_at_ms": _instant("when it was cut", default=None),
    "fill": PLANNED_FILL,
    "nuts_clear": boolean("whether nut-free work was finished before nuts came out", default=False),
    "fills": many(record(FILL, "a fill"), 0, MOST_ROWS, "fills of the funnel in order", default=[]),
    "trays": many(record(TRAY, "a tray"), 0, MOST_ROWS, "trays in laying order", default=[]),
    "loose_kg": number("kg", 0, 50, "loose pieces that go back to their lot", default=None),
    "planned_pieces": integer(0, 1000000, "pieces the plan has; null: any count is believed", default=None),
    "pieces": integer(0, 100000, "good pieces counted", default=None),
    "rest_kg": number("kg", 0, 50, "trim and other leftovers", default=None),
    "notes": many(text(2000, "a note"), 0, 4, "who made it, what was seen", default=[]),
}
WRITTEN = {
    "kind": text(40, "what happened"),
    "at_ms": number("ms", 0, 1e14, "when, corrected"),
    "body": document("its body, with `typed_at_ms`"),
}
SUMMARY = {
    "batch_id": text(64, "the batch"),
    "name": text(200, "its name", default=""),
    "kind": text(40, "slab", default=""),
    "opened_at_ms": number("ms", -2e14, 2e14, "opened"),
    "closed_at_ms": number("ms", -2e14, 2e14, "closed, or null", default=None),
    "step": text(40, "the open step", default=None),
    "pieces": integer(0, 1000000000, "counted, else planned", default=None),
    "caramel_kg": number("kg", -1e300, 1e300, "weighed in, else planned", default=None),
    "good_kg": number(
        "kg", -1e300, 1e300, "pieces counted by planned mass of one; null before the count", default=None
    ),
    "device_id": text(64, "the phone that opened it", default=""),
    "events": integer(0, 1000000000, "how many events it has", default=0),
}
CSV = {"text": text(100000000, "CSV by RFC 4180")}
FUNCTIONS = {
    "paper.events": {
        "request": SHEET,
        "reply": {"events": many(record(WRITTEN, "an event"), 1, 500, "in the order of the log")},
    },
    "table.batches": {
        "request": {"batches": many(record(SUMMARY, "a batch"), 0, 1000000, "summaries, newest first")},
        "reply": CSV,
    },
    "table.timeline": {
        "request": {
            "events": many(document("an event", unread=True), 0, 20000, "events, in any order"),
            "ignored": many(text(80, "an id"), 0, 100, "events that did not fit", default=[]),
        },
        "reply": CSV,
    },
}
