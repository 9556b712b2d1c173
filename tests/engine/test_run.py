"""A batch is the fold of its events."""

import json
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue, fields
from amberbench.engine.batch import run
from tests.bench import Bench, planned_slab


def whole_batch() -> Bench:
    bench = Bench()
    bench.sets_up()
    bench.melts()
    bench.taps(30)  # poured
    bench.does("slab_read", 1800, surface_c=45.0)
    bench.does("touched", 3600, firm=False)
    bench.does("touched", 700, firm=True)
    for kind in ("freed", "flipped", "scored", "cut"):
        bench.does(kind, 120)
    bench.does("counted", 900, pieces=205)
    bench.does("weighed_out", 30, kg=0.09, what="rest")
    bench.does("closed", 30)
    return bench


def test_nothing_is_heated_before_the_bench_is_set_up():
    bench = Bench()
    assert bench.advice["step"] == "set_up"
    assert bench.advice["caution"]["word"] == "WARNING"
    bench.taps()
    assert bench.advice["step"] == "weigh"


def test_a_whole_batch_runs_from_set_up_to_closed():
    bench = whole_batch()
    assert bench.run["ignored"] == []
    assert bench.run["pieces"] == 205
    assert bench.advice["step"] == "closed"
    assert bench.advice["clocks"] == []


def at_the_close() -> Bench:
    bench = whole_batch()
    bench.events.pop()
    return bench


def test_what_stays_in_the_bowl_may_be_weighed_once_before_the_batch_is_closed():
    bench = at_the_close()
    (choice,) = bench.advice["choices"]
    entry = choice["entry"]
    assert (bench.advice["step"], choice["code"], entry["name"]) == ("close", "button.weigh_bowl", "bowl_kg")
    bench.does(entry["kind"], 20, **entry["body"], **{entry["field"]: 0.036})
    assert bench.run["ignored"] == []
    assert (bench.advice["step"], bench.advice["choices"]) == ("close", [])
    bench.taps()
    told = catalogue.call("learn.contribution", {"batch_id": "batch-1", "plan": bench.plan, "run": bench.run})
    assert told["contribution"]["residue"] == pytest.approx(0.036 / 1.8)


def test_bowl_on_the_scale_with_its_caramel_is_more_than_the_keypad_takes():
    entry = at_the_close().advice["choices"][0]["entry"]
    assert entry["low"] == 0.0
    assert 0.1 < entry["high"] < planned_slab()["request"]["vessel"]["mass_kg"]


def test_bowl_can_be_weighed_when_the_rest_was_not():
    bench = Bench()
    bench.sets_up()
    bench.melts()
    bench.taps(30)
    bench.does("touched", 5000, firm=True)
    bench.does("counted", 900, pieces=205)
    bench.does("step_skipped", 5, step="weigh_out")
    assert bench.advice["choices"][0]["entry"]["body"] == {"what": "bowl", "seen": 0}


def test_block_is_turned_after_the_first_burst_and_stirred_after_the_next():
    bench = Bench()
    bench.sets_up()
    bench.taps()
    bench.waits(61)
    assert bench.advice["step"] == "turn"
    bench.taps(20)
    bench.taps()
    bench.waits(61)
    assert bench.advice["step"] == "stir"


def test_burst_clock_is_due_when_the_oven_stops():
    bench = Bench()
    bench.sets_up()
    bench.taps()
    seconds_s = bench.events[-1]["body"]["seconds_s"]
    (clock,) = bench.advice["clocks"]
    assert clock["due_ms"] == bench.now_ms + 1000 * seconds_s
    assert clock["sound"] == "stir"


def test_burst_taken_out_early_counts_only_its_seconds():
    bench = Bench()
    bench.sets_up()
    bench.taps()
    bench.does("burst_ended", 20)
    bench.taps()
    assert bench.run["melt"]["history"][0] == {"kind": "burst", "seconds_s": 20.0}


def test_no_clock_rings_for_a_bowl_that_was_taken_out_early():
    bench = Bench()
    bench.sets_up()
    bench.taps()
    bench.does("burst_ended", 20)
    assert bench.advice["clocks"] == []
    assert bench.advice["step"] == "turn"


def test_reading_is_asked_for_once_it_stirs_freely():
    bench = Bench()
    bench.sets_up()
    for _ in range(2):
        bench.taps()
        bench.waits(61)
        bench.does("stirred", 40, free=False)
        assert bench.advice["step"] == "burst"
    bench.taps()
    bench.waits(61)
    bench.does("stirred", 40, free=True)
    assert bench.advice["step"] == "read"
    assert bench.advice["entry"]["field"] == "surface_c"


def test_a_usual_melt_is_ready_in_a_few_bursts():
    bench = Bench()
    bench.sets_up()
    assert 3 <= bench.melts() <= 10
    assert bench.advice["action"]["kind"] == "poured"


def test_long_pause_cools_the_caramel():
    bench = Bench()
    bench.sets_up()
    bench.melts()
    before_c = bench.advice["melt"]["bulk_c"]
    bench.waits(900)
    assert bench.advice["melt"]["bulk_c"] < before_c - 1


def test_reading_over_the_stop_line_rings_too_hot():
    bench = Bench()
    bench.sets_up()
    bench.melts()
    for _ in range(3):
        bench.does("stirred", 5, free=True)
        bench.does("read", 5, surface_c=92.0)
    assert "too_hot" in [clock["name"] for clock in bench.advice["clocks"]]
    assert bench.advice["action"]["kind"] == "rested"


def test_second_pour_is_ignored_and_said_so():
    bench = Bench()
    bench.sets_up()
    bench.does("poured")
    again = bench.does("poured")
    assert bench.run["ignored"] == [{"id": again, "why": "already_poured"}]


def test_not_yet_asks_again_in_ten_minutes():
    bench = Bench()
    bench.sets_up()
    bench.does("poured")
    bench.waits(4 * 3600)
    assert bench.advice["step"] == "touch"
    bench.does("touched", firm=False)
    assert bench.advice["step"] == "cool"
    assert bench.advice["number"]["value"] == bench.now_ms + 600_000


def test_firm_already_is_offered_only_once_it_can_be():
    bench = Bench()
    bench.sets_up()
    bench.does("poured")
    bench.waits(300)
    assert bench.advice["choices"] == []
    bench.waits(0.5 * bench.run["cool"]["ready_low_s"])
    assert [choice["code"] for choice in bench.advice["choices"]] == ["button.firm_now"]


def test_reading_of_the_slab_wants_a_refit_and_the_refit_moves_the_clock():
    bench = Bench()
    bench.sets_up()
    bench.does("poured")
    bench.does("slab_read", 1800, surface_c=50.0)
    wants = bench.advice["wants"]
    assert (wants["name"], wants["kind"], wants["body"]) == ("cool.refit", "cooling_refitted", {"seen": 1})
    before_ms = bench.advice["number"]["value"]
    reply = catalogue.call(wants["name"], wants["request"])
    bench.does(wants["kind"], **wants["body"], reply=reply)
    assert bench.advice["wants"] is None
    assert bench.advice["number"]["value"] != before_ms


def test_refit_that_missed_a_reading_is_outdated():
    bench = Bench()
    bench.sets_up()
    bench.does("poured")
    bench.does("slab_read", 1800, surface_c=50.0)
    bench.does("slab_read", 600, surface_c=45.0)
    late = bench.does("cooling_refitted", seen=1, reply={"ready_s": 1})
    assert {"id": late, "why": "outdated"} in bench.run["ignored"]


@pytest.mark.parametrize("position", range(1, 14))
def test_undo_leaves_the_run_as_if_it_had_not_happened(position):
    bench = whole_batch()
    events = [dict(event) for event in bench.events]
    taken = events[position]
    undo = dict(
        events[-1], id="undo-1", seq=999, at_ms=events[-1]["at_ms"] + 1, kind="undone", body={"event_id": taken["id"]}
    )
    without = run.replay(planned_slab(), events[:position] + events[position + 1 :])
    undone = run.replay(planned_slab(), [*events, undo])
    assert undone.pop("redoable") == {"event_id": taken["id"], "kind": "turned" if position == 4 else taken["kind"]}
    assert without.pop("redoable") is None
    for document in (without, undone):
        document.pop("last_at_ms")
    assert undone == without


def test_two_hands_tapping_the_same_step_count_once():
    bench = whole_batch()
    doubled = []
    for event in bench.events:
        twin = dict(event, id=event["id"] + "-b", device_id="phone-b", at_ms=event["at_ms"] + 400)
        doubled += (
            [event, twin]
            if event["kind"] in ("ready_checked", "weighed", "poured", "freed", "cut", "counted")
            else [event]
        )
    once, twice = bench.run, run.replay(planned_slab(), doubled)
    assert len(twice["ignored"]) == 6
    for document in (once, twice):
        document.pop("ignored")
    assert once == twice


@given(st.randoms(use_true_random=False))
def test_order_of_arrival_does_not_matter(shuffler: random.Random):
    bench = whole_batch()
    events = list(bench.events)
    shuffler.shuffle(events)
    assert run.replay(planned_slab(), events + events[:5]) == bench.run


def test_applying_one_by_one_gives_the_same_as_replay():
    bench = whole_batch()
    state = run.opened(planned_slab())
    for event in bench.events:
        state = catalogue.call("run.apply", {"run": state, "event": event})["run"]
    assert state == bench.run


def test_late_event_or_undo_asks_for_a_replay():
    bench = whole_batch()
    late = dict(bench.events[3], id="late")
    undo = dict(bench.events[-1], id="undo", kind="undone", body={"event_id": bench.events[3]["id"]})
    for event in (late, undo):
        assert run.apply(bench.run, event)["needs_replay"]


def test_run_document_stays_under_twenty_kilobytes():
    assert len(json.dumps(whole_batch().run)) < 20_000


LEAF = st.none() | st.booleans() | st.floats() | st.integers() | st.text(max_size=8)
JSON = LEAF | st.lists(LEAF, max_size=2) | st.dictionaries(st.text(max_size=6), LEAF, max_size=2)
BODY = st.dictionaries(
    st.sampled_from(sorted({name for body in fields.EVENTS.values() for name in body})), JSON, max_size=4
)


@given(
    st.lists(
        st.tuples(st.sampled_from([*fields.EVENTS, "from_a_newer_version"]), BODY, st.integers(0, 10**7)), max_size=12
    )
)
def test_folding_never_raises_and_every_run_can_be_advised(happenings):
    bench = Bench()
    for kind, body, after_ms in happenings:
        bench.does(kind, after_ms / 1000, **body)
    assert bench.advice["step"]


@given(st.lists(JSON, max_size=4))
def test_malformed_events_are_ignored_not_lost(rubbish):
    bench = Bench()
    state = run.replay(planned_slab(), bench.events + rubbish)
    assert [row["why"] for row in state["ignored"]] == ["malformed"] * len(rubbish)
