"""What was taken back can be put back, as a fact of the log: in any number, by two phones, without a network."""

from amberbench.engine import catalogue
from amberbench.engine.batch import run
from tests.bench import Bench, planned_slab


def takes_back(bench: Bench) -> str:
    """Takes back what undo names; its id."""
    event_id: str = bench.advice["undo"]["event_id"]
    bench.does("undone", 1, event_id=event_id)
    return event_id


def test_what_was_taken_back_is_named_and_can_be_put_back():
    bench = Bench()
    bench.sets_up()
    before = bench.run
    assert bench.advice["redo"] is None
    weighed = takes_back(bench)
    assert bench.advice["step"] == "weigh"
    assert bench.advice["redo"] == {"event_id": weighed, "code": "undo.weighed"}
    bench.does("redone", 1, event_id=weighed)
    assert bench.run | {"last_at_ms": None} == before | {"last_at_ms": None}
    assert bench.advice["redo"] is None
    assert bench.advice["undo"]["event_id"] == weighed


def test_several_are_put_back_the_last_one_taken_back_first():
    bench = Bench()
    bench.sets_up()
    weighed, ready = takes_back(bench), takes_back(bench)
    assert bench.advice["step"] == "set_up"
    for event_id, step in ((ready, "weigh"), (weighed, "burst")):
        assert bench.advice["redo"]["event_id"] == event_id
        bench.does("redone", 1, event_id=event_id)
        assert bench.advice["step"] == step


def test_hands_that_go_on_leave_nothing_to_put_back():
    bench = Bench()
    bench.sets_up()
    takes_back(bench)
    bench.does("noted", text="weighed the bowl with it")
    assert bench.advice["redo"] is not None
    bench.does("weighed", 10, kg=1.7)
    assert bench.advice["redo"] is None


def test_two_phones_off_line_agree_on_what_was_said_last():
    """One takes back and puts back; the other, which knew of neither, takes back too."""
    bench, other = Bench(), Bench(device="phone-b")
    bench.sets_up()
    weighed = takes_back(bench)
    bench.does("redone", 10, event_id=weighed)
    for at_s, stands in ((5, True), (20, False)):
        theirs = dict(bench.events[-1], id=f"theirs-{at_s}", device_id=other.device, seq=9, kind="undone")
        theirs.update(at_ms=bench.events[-2]["at_ms"] + 1000.0 * at_s, body={"event_id": weighed})
        for events in ([*bench.events, theirs], [theirs, *bench.events]):
            found = run.replay(planned_slab(), events)
            assert (found["weighed_kg"] is not None) == stands
            assert (found["redoable"] is None) == stands


def test_an_event_put_back_after_the_last_one_is_folded_where_it_stood():
    bench = Bench()
    bench.sets_up()
    kept = bench.run
    weighed = takes_back(bench)
    bench.does("redone", 1, event_id=weighed)
    applied = catalogue.call("run.apply", {"run": kept, "event": bench.events[-1]})["run"]
    assert applied["needs_replay"]


def test_a_timeline_counts_what_was_put_back():
    bench = Bench()
    bench.sets_up()
    weighed = takes_back(bench)
    bench.does("redone", 1, event_id=weighed)
    table = catalogue.call("table.timeline", {"events": bench.events})
    counts = {row[table["columns"].index("event_id")]: row[table["columns"].index("counts")] for row in table["rows"]}
    assert counts[weighed] == "yes"
