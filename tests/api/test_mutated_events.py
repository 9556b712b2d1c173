"""Events of real batches of every kind, with something in them changed at random: no 5xx, and nothing breaks after."""

import copy
import random
from collections import Counter
from urllib.parse import quote

import pytest

from tests.bench import planned_slab
from tests.gathered import PLANS_OF_ALL
from tests.log import Phone, push
from tests.measure.events import usual_slab

ODD = [None, True, False, 0, -1, 1, 0.5, -0.0, 1e-300, 1e14, 1e308, -1e308, 2**53, 2**64, 10**40, "", "0", "a" * 70]
ODD += ["=1+1", "NaN", "é\u202e\x00", [], {}, [[]], [None], {"": 1}, {"value": 1, "unit": "kg"}, "a" * 3000]
GROUP = 20
ASKED = ("snapshot", "batches?limit=50", "batches.csv", "contributions", "shop", "health")


def real_batch(chance):
    """A batch of any kind: its opening, then the taps of a slab, of which another kind ignores some."""
    phone = Phone(device_id="mutant")
    opening = phone.event("batch_opened", plan=chance.choice(PLANS_OF_ALL)(), engine_version="0.1.0")
    taps = [phone.event(one["kind"], **one["body"]) for one in usual_slab() if one["kind"] != "batch_opened"]
    edit = phone.event("shop_set", doc="shop", field="name", value="x", basis="typed") | {"batch_id": None}
    return [opening, *taps, edit]


def places(document, way=()):
    """The way to every value in a document."""
    for key, value in document.items() if isinstance(document, dict) else enumerate(document):
        yield (*way, key)
        if isinstance(value, dict | list):
            yield from places(value, (*way, key))


def mutated(event, chance):
    """The event with one to three of its values changed, doubled, renamed or taken away."""
    event = copy.deepcopy(event)
    for _ in range(chance.randint(1, 3)):
        # Few of a plan's thousand values are what a fold reads: rather near the root than deep in a curve.
        deepest = chance.randint(1, 7)
        found = [way for way in places(event) if len(way) <= deepest]
        if not found:
            break
        *way, key = chance.choice(found)
        holder = event
        for step in way:
            holder = holder[step]
        how = chance.randrange(6)
        if how == 0:
            del holder[key]
        elif how == 1 and type(holder[key]) in (int, float):
            holder[key] *= chance.choice([-1, 0, 1e-9, 0.5, 2, 1e3, 1e9])
        elif how == 2 and isinstance(holder[key], list):
            holder[key] = holder[key] * 2
        elif how == 3 and isinstance(holder, dict):
            holder[str(key)[::-1]] = holder.pop(key)
        else:
            holder[key] = copy.deepcopy(chance.choice(ODD))
    return event


def answers(client, events):
    """What becomes of each; a group that cannot be read as a whole is sent in halves, as the phone does."""
    answer = client.post("/api/events", json={"events": events})
    if answer.status_code == 200:
        return [one["result"] for one in answer.get_json()["answers"]]
    assert answer.status_code in (400, 422), (events, answer.get_data(as_text=True))
    half = len(events) // 2
    return answers(client, events[:half]) + answers(client, events[half:]) if half else ["refused"]


def pushes_mutants(client, count, seed):
    """Sends so many mutated events, and as many as they are; what became of each."""
    chance, results = random.Random(seed), []
    while len(results) < 2 * count:
        events = [mutated(one, chance) if chance.random() < 0.5 else one for one in real_batch(chance)]
        for start in range(0, len(events), GROUP):
            results += answers(client, events[start : start + GROUP])
        batch_id = next((one["batch_id"] for one in events if isinstance(one.get("batch_id"), str)), "none")
        for path in (f"batches/{quote(batch_id)}", f"batches/{quote(batch_id)}.csv", chance.choice(ASKED)):
            answer = client.get(f"/api/{path}")
            assert answer.status_code in (200, 404), (seed, len(results), path, answer.get_data(as_text=True)[:600])
    assert set(results) <= {"stored", "known", "refused"}
    for path in ASKED:
        assert client.get(f"/api/{path}").status_code == 200, path
    return results


def test_mutated_events_are_answered_and_everything_can_be_read_after(client):
    results = pushes_mutants(client, 50, seed=7)
    assert {"stored", "refused"} <= set(results)


def test_lot_that_is_no_text_leaves_the_table_of_batches_to_the_others(client):
    push(client, Phone().event("batch_opened", plan=planned_slab() | {"lot": 0}), *Phone().whole_batch())
    assert len(client.get("/api/batches.csv").get_data(as_text=True).splitlines()) == 3


@pytest.mark.prove
def test_twenty_thousand_mutated_events_break_nothing(app_on_each_database):
    client, seed = app_on_each_database.test_client(), random.randrange(10**6)
    counts = Counter(pushes_mutants(client, 20_000, seed))
    faults = client.get("/api/health").get_json()["errors"]
    print(f"\n20,000 mutated events among as many others, from seed {seed}: {counts}, mistakes of ours: {faults}")
