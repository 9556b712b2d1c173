"""Fields of `trace.walk`."""

from ..core.field_kinds import many, record, text

NODE = text(200, "<kind>/<id>: lot, batch, pack, order or customer")
LINK = record({"from": dict(NODE, meaning="what went in"), "to": dict(NODE, meaning="what came of it")}, "a link")
MOST = 200000
FUNCTIONS = {
    "trace.walk": {
        "request": {
            "start": NODE,
            "links": text(402 * MOST, "a line for each: what went in, a tab, what came of it", default=""),
        },
        "reply": {
            "back": many(NODE, 0, MOST, "what went into it, nearest first"),
            "forward": many(NODE, 0, MOST, "what came of it, nearest first"),
            "links": many(LINK, 0, MOST, "the links among them"),
            "deliveries": many(NODE, 0, MOST, "lots it goes back to that came from outside"),
            "customers": many(NODE, 0, MOST, "who got something of it"),
        },
    },
}
