"""Two phones off line and the server; orders, stock, packing; chance: one state everywhere, nothing lost or twice."""

import random

import pytest

from amberbench.engine import catalogue, fields
from tests import strategies_streams
from tests.log import BEGUN, Phone, pulled, push

FIRST = {"lot": ["received", "made"], "order": ["placed"], "pack": ["packed"]}
STREAMS = [("lot", "l0"), ("lot", "l1"), ("order", "o0"), ("order", "o1"), ("pack", "k0")]


class TradingPhone:
    """A phone that writes off line, sends in pieces (some twice) and pulls what the server has."""

    def __init__(self, name, rng, story, cursor):
        self.phone, self.rng, self.story = Phone(device_id=name), rng, story
        self.known, self.unsent, self.cursor = {}, [], cursor

    def writes(self, kind, stream_id):
        """One more fact of a stream; now and then one is taken back."""
        stream = f"{kind}/{stream_id}-{self.story}"
        own = [one for one in self.known.values() if one["stream"] == stream]
        self.phone.now_ms += self.rng.randrange(1, 400_000)
        if own and self.rng.random() < 0.15:
            event = self.phone.event("undone", event_id=self.rng.choice(own)["id"])
        else:
            what = self.rng.choice(FIRST[kind] if not own else sorted(fields.STREAM_EVENTS[kind]))
            event = self.phone.event(what, **strategies_streams.body(self.rng, what))
        event |= {"stream": stream, "batch_id": None}
        self.known[event["id"]] = event
        self.unsent.append(event)

    def exchanges(self, client):
        """Sends some of what waits, part of it twice, then takes what is new."""
        some = self.unsent[: self.rng.randrange(len(self.unsent) + 1)]
        push(client, *some, *some[:1])
        if self.rng.random() < 0.8:  # else the answer was lost: it is sent again
            self.unsent = self.unsent[len(some) :]
        more = True
        while more:
            page = pulled(client, self.cursor)
            self.known.update((event["id"], event) for event in page["events"])
            self.cursor, more = page["cursor"], page["more"]

    def documents(self):
        """Every stream folded from what this phone has."""
        found = {}
        for kind, stream_id in STREAMS:
            name = f"{stream_id}-{self.story}"
            events = [one for one in self.known.values() if one["stream"] == f"{kind}/{name}"]
            self.rng.shuffle(events)
            if events:
                found[kind, name] = catalogue.call(f"{kind}.fold", {"id": name, "events": events})["document"]
        return found


def story(client, seed, start):
    """Its documents, and where the next story begins in the log."""
    rng = random.Random(seed)
    phones = [TradingPhone(f"phone-{name}-{seed}", rng, seed, start) for name in "ab"]
    for _ in range(rng.randrange(20, 45)):
        phone = rng.choice(phones)
        if rng.random() < 0.8:
            phone.writes(*rng.choice(STREAMS))
        else:
            phone.exchanges(client)
    written = {event for phone in phones for event in phone.known}
    for phone in phones * 2:
        while phone.unsent:
            phone.exchanges(client)
        phone.exchanges(client)
    assert [set(phone.known) for phone in phones] == [written, written]
    one, other = (phone.documents() for phone in phones)
    kept = {key: client.get(f"/api/{key[0]}s/{key[1]}").get_json()["document"] for key in one}
    assert one == other == kept
    return one, phones[0].cursor


def overviews(documents):
    """What both phones show; what does not add up is shown, whoever asks."""
    by_kind = {kind: [one for (of, _), one in documents.items() if of == kind] for kind in FIRST}
    uses = [use | {"at_ms": pack["at_ms"] or 0} for pack in by_kind["pack"] for use in pack["lots"]]
    request = {"lots": by_kind["lot"], "uses": uses, "today": strategies_streams.TODAY}
    stock = catalogue.call("stock.overview", request)
    orders = {"orders": by_kind["order"], "packs": by_kind["pack"], "now_ms": strategies_streams.NOW_MS}
    orders |= {"today": strategies_streams.TODAY, "today_ms": strategies_streams.MIDNIGHT_MS}
    return len(stock["to_count"]) + len(catalogue.call("orders.overview", orders)["differing"])


def stories(client, seeds):
    """So many stories in one log; how much did not add up, and was shown."""
    differing, start = 0, BEGUN
    for seed in seeds:
        documents, start = story(client, seed, start)
        differing += overviews(documents)
    return differing


def test_five_interleavings_of_two_phones_end_in_one_state(client):
    assert stories(client, range(5)) > 0


@pytest.mark.prove
def test_a_thousand_interleavings_of_two_phones_end_in_one_state(client):
    assert stories(client, range(1000, 2000)) > 0
