"""The log as several phones use it: pushed in pieces, again, in any order, with answers lost, between other pulls."""

import copy
from typing import Any

import pytest
from flask.testing import FlaskClient
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from amberbench.engine import catalogue
from amberbench.services import folding
from tests.log import Event, Phone, pulled, push, results, uuid7

DEVICES = ("phone-a", "phone-b", "phone-c")
device = st.sampled_from(DEVICES)
error = st.integers(-(10**7), 10**7)
KINDS: tuple[tuple[str, dict[str, Any]], ...] = (
    ("ready_checked", {}),
    ("weighed", {"kg": 1.8, "lot": "A-117"}),
    ("burst_started", {"seconds_s": 60}),
    ("stirred", {"free": True}),
    ("read", {"surface_c": 73.5}),
    ("poured", {}),
    ("touched", {"firm": True}),
    ("taken_over", {}),
    ("from_a_newer_app", {"x": 1}),
    ("closed", {}),
)


class Device:
    """What one phone has written, has had acknowledged, and has pulled."""

    def __init__(self, phone: Phone, cursor: int) -> None:
        self.phone = phone
        self.outbox: list[Event] = []
        self.acknowledged: list[Event] = []
        self.cursor = cursor
        self.seen: dict[str, Event] = {}


class Shift(RuleBasedStateMachine):
    """One batch on three phones and the real server."""

    def __init__(self, client: FlaskClient) -> None:
        super().__init__()
        self.client = client
        self.begun = self.newest()
        self.batch_id = uuid7()
        self.devices = {name: Device(Phone(self.batch_id, name), self.begun) for name in DEVICES}
        self.written: dict[str, Event] = {}

    def newest(self) -> int:
        cursor, more = 0, True
        while more:
            page = pulled(self.client, cursor)
            cursor, more = page["cursor"], page["more"]
        return cursor

    def keep(self, name: str, event: Event) -> None:
        self.devices[name].outbox.append(event)
        self.written[event["id"]] = event

    @initialize(name=device)
    def somebody_opens_the_batch(self, name: str) -> None:
        self.keep(name, self.devices[name].phone.opens())

    @rule(
        name=device,
        what=st.sampled_from(KINDS),
        passes_ms=st.integers(0, 90_000),
        error_ms=st.integers(-(10**7), 10**7),
    )
    def writes(self, name: str, what: tuple[str, dict[str, Any]], passes_ms: int, error_ms: int) -> None:
        phone = self.devices[name].phone
        phone.now_ms += passes_ms
        kind, body = what
        self.keep(name, {**phone.event(kind, **body), "offset_ms": error_ms})

    @rule(name=device, data=st.data())
    def takes_back(self, name: str, data: st.DataObject) -> None:
        event_id = data.draw(st.sampled_from(sorted(self.written)))
        self.keep(name, self.devices[name].phone.event("undone", event_id=event_id))

    @rule(name=device, data=st.data(), answer_is_lost=st.booleans())
    def pushes(self, name: str, data: st.DataObject, answer_is_lost: bool) -> None:
        """Some of what waits and some of what is long acknowledged, in any order, some of it twice."""
        own = self.devices[name]
        known = own.outbox + own.acknowledged
        if not known:
            return
        group = data.draw(st.lists(st.sampled_from(known), min_size=1, max_size=12))
        answers = push(self.client, *copy.deepcopy(group))
        assert [answer["id"] for answer in answers] == [event["id"] for event in group]
        assert set(results(answers)) <= {"stored", "known"}
        for event, result in zip(group, results(answers), strict=True):
            assert event not in own.acknowledged or result == "known"
        if not answer_is_lost:
            own.acknowledged += [event for event in own.outbox if event in group]
            own.outbox = [event for event in own.outbox if event not in group]

    @precondition(lambda self: any(one.outbox for one in self.devices.values()))
    @rule(data=st.data(), broken=st.sampled_from([{"id": 7}, {}, {"kind": None}, "no event"]))
    def pushes_beside_something_broken(self, data: st.DataObject, broken: Any) -> None:
        own = data.draw(st.sampled_from([one for one in self.devices.values() if one.outbox]))
        event = own.outbox.pop(0)
        own.acknowledged.append(event)
        assert results(push(self.client, broken, event))[0] == "refused"

    @precondition(lambda self: any(one.acknowledged for one in self.devices.values()))
    @rule(data=st.data())
    def reuses_an_id(self, data: st.DataObject) -> None:
        stored = [event for one in self.devices.values() for event in one.acknowledged]
        event = data.draw(st.sampled_from(stored))
        assert results(push(self.client, {**event, "seq": event["seq"] + 1000})) == ["refused"]

    @rule(name=device, limit=st.integers(1, 7))
    def pulls(self, name: str, limit: int) -> None:
        own = self.devices[name]
        page = pulled(self.client, own.cursor, limit)
        positions = [event["position"] for event in page["events"]]
        assert positions == sorted(set(positions))
        assert all(own.cursor < position <= page["cursor"] for position in positions)
        assert page["cursor"] >= own.cursor
        assert page["cursor"] == own.cursor or positions[-1] == page["cursor"]
        assert not own.seen.keys() & {event["id"] for event in page["events"]}
        own.cursor = page["cursor"]
        own.seen |= {event["id"]: event for event in page["events"]}

    @invariant()
    def everything_acknowledged_is_in_the_log_once(self) -> None:
        log = pulled(self.client, self.begun)["events"]
        ids = [event["id"] for event in log]
        assert len(ids) == len(set(ids))
        assert set(ids) <= set(self.written)
        assert {event["id"] for one in self.devices.values() for event in one.acknowledged} <= set(ids)
        for event in log:
            assert {**event, **self.written[event["id"]]} == event

    @invariant()
    def the_record_is_the_log_folded(self) -> None:
        log = pulled(self.client, self.begun)["events"]
        opening = next((event for event in log if event["kind"] == "batch_opened"), None)
        answer = self.client.get(f"/api/batches/{self.batch_id}")
        if opening is None:
            assert answer.status_code == 404
            return
        run = catalogue.call("run.replay", {"plan": opening["body"]["plan"], "events": log})["run"]
        record = answer.get_json()
        assert record["run"] == run
        assert record["summary"]["events"] == len(log)

    def teardown(self) -> None:
        """The shift ends: everybody sends, everybody pulls, everybody has the same."""
        for own in self.devices.values():
            if own.outbox:
                push(self.client, *own.outbox)
        for name, own in self.devices.items():
            before = -1
            while own.cursor != before:
                before = own.cursor
                self.pulls(name, 5)
            assert own.seen.keys() == self.written.keys()
        record = self.client.get(f"/api/batches/{self.batch_id}").get_json()
        with self.client.application.app_context():
            folding.rebuild()
        assert self.client.get(f"/api/batches/{self.batch_id}").get_json() == record


def shifts(client: FlaskClient, count: int) -> None:
    run_state_machine_as_test(lambda: Shift(client), settings=settings(max_examples=count, stateful_step_count=25))


def test_whatever_the_phones_do_the_log_keeps_everything_once(client: FlaskClient):
    shifts(client, 15)


@pytest.mark.prove
def test_the_same_for_two_hundred_shifts(client: FlaskClient):
    shifts(client, 200)
