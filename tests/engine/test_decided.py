"""What was decided stands in the events: an engine with other constants, or one that cannot decide, folds the same."""

import copy
import json
import pkgutil
from importlib import import_module
from typing import Any

import pytest

from amberbench import engine
from amberbench.engine import VERSION, catalogue
from amberbench.engine.batch import decisions, events, run
from amberbench.engine.core.log import in_order, well_formed
from tests.bench import Bench, planned_bowl, planned_clusters
from tests.engine.test_old_logs import KEPT, LOGS, NAMES

Event = dict[str, Any]


def told_now(one: dict[str, Any]) -> tuple[dict[str, Any], list[Event]]:
    """(plan, events) of a kept log as phones of now would have told it: each event decided when it was told."""
    plan, done = KEPT["plans"][one["plan"]], list[Event]()
    sound = in_order([event for event in one["events"] if well_formed(event)])
    for event in sound:
        state = catalogue.call("run.replay", {"plan": copy.deepcopy(plan), "events": done})["run"]
        fact = {"kind": event["kind"], "at_ms": event["at_ms"] + event["offset_ms"], "body": event["body"]}
        [decided] = catalogue.call("run.decide", {"run": state, "facts": [fact]})["decided"]
        done.append(event if decided is None else dict(event, body=event["body"] | {"decided": decided}))
    return plan, done


def replayed(plan: dict[str, Any], log: list[Event]) -> str:
    return json.dumps(catalogue.call("run.replay", {"plan": copy.deepcopy(plan), "events": log})["run"])


def retune(monkeypatch: pytest.MonkeyPatch) -> int:
    """Makes every constant of every step, product and law another one; how many there are."""
    changed = 0
    for room in ("physics", "steps", "products"):
        for found in pkgutil.walk_packages([f"{engine.__path__[0]}/{room}"], f"{engine.__name__}.{room}."):
            module = import_module(found.name)
            for name, value in vars(module).items():
                if name.isupper() and type(value) is float:
                    monkeypatch.setattr(module, name, 1.37 * value)
                    changed += 1
    return changed


@pytest.mark.parametrize("one", LOGS, ids=NAMES)
def test_batch_stays_to_the_byte_when_every_constant_changes(one: dict[str, Any], monkeypatch: pytest.MonkeyPatch):
    plan, log = told_now(one)
    before = replayed(plan, log)
    assert retune(monkeypatch) > 150
    assert replayed(plan, log) == before


def test_batch_told_without_decisions_follows_the_constants_of_the_engine(monkeypatch: pytest.MonkeyPatch):
    one = next(one for one in LOGS if one["run"]["cluster"] and one["run"]["cluster"]["fills"] > 2)
    plan = KEPT["plans"][one["plan"]]
    before = replayed(plan, one["events"])
    retune(monkeypatch)
    assert replayed(plan, one["events"]) != before


@pytest.mark.parametrize("one", LOGS, ids=NAMES)
def test_fold_of_decided_events_asks_no_planner(one: dict[str, Any], monkeypatch: pytest.MonkeyPatch):
    plan, log = told_now(one)
    before = replayed(plan, log)

    def refuse(*_: Any) -> Any:
        raise AssertionError("a fold decided")

    for kind in decisions.DECIDES:
        monkeypatch.setitem(decisions.DECIDES, kind, refuse)
    assert replayed(plan, log) == before


@pytest.mark.parametrize("one", LOGS, ids=NAMES)
def test_decided_events_taken_one_by_one_come_to_the_same(one: dict[str, Any]):
    plan, log = told_now(one)
    undone = {event["body"].get("event_id") for event in log if event["kind"] == "undone"}
    log = [event for event in log if event["kind"] != "undone" and event["id"] not in undone]
    state = run.opened(copy.deepcopy(plan))
    for event in log:
        state = catalogue.call("run.apply", {"run": state, "event": event})["run"]
    assert json.dumps(state) == replayed(plan, log)


def test_decision_says_which_engine_took_it():
    bench = Bench(planned_bowl())
    bench.sets_up_bowl()
    fact = {"kind": "bowl_read", "at_ms": bench.now_ms, "body": {"bowl_c": 40.0, "seen": 0}}
    [decided] = catalogue.call("run.decide", {"run": bench.run, "facts": [fact]})["decided"]
    assert decided["engine"] == VERSION


def test_nothing_is_decided_of_what_does_not_fit_or_needs_none():
    bench = Bench(planned_clusters())
    facts = [
        {"kind": "tray_laid", "at_ms": bench.now_ms, "body": {}},
        {"kind": "ready_checked", "at_ms": bench.now_ms, "body": {}},
        {"kind": "of_a_newer_version", "at_ms": bench.now_ms, "body": {}},
        {"kind": "filled", "at_ms": bench.now_ms, "body": {"kg": "much"}},
    ]
    assert catalogue.call("run.decide", {"run": bench.run, "facts": facts})["decided"] == [None] * 4


def laying() -> Bench:
    bench = Bench(planned_clusters())
    bench.sets_up_clusters()
    bench.tells("filled", 900, kg=0.9, bulk_c=75.0)
    return bench


@pytest.mark.parametrize("decided", [{}, "soon", {"fill": {"kg": -1}}, None, [], {"bowl_kg": float("nan")}])
def test_event_with_a_broken_decision_counts_and_is_decided_anew(decided: Any):
    bench = laying()
    bench.does("tray_laid", 300, decided=decided)
    whole = laying()
    whole.does("tray_laid", 300)
    assert bench.run == whole.run


def test_decision_is_taken_anew_when_another_phone_told_something_before_it():
    one, other = laying(), laying()
    other.does("fill_read", 200, surface_c=64.0)
    reading = dict(other.events[-1], device_id="phone-b", id="phone-b-9")
    one.tells("tray_laid", 300)
    plain = laying()
    plain.does("tray_laid", 300)
    alone = replayed(one.plan, [*plain.events, reading])
    assert replayed(one.plan, [*one.events, reading]) == alone


def test_every_decision_is_described_among_the_fields_of_its_event():
    described = {kind for kind, body in events.EVENTS.items() if "decided" in body}
    assert described == set(decisions.DECIDES)
    assert described <= set(run.FOLDS)
