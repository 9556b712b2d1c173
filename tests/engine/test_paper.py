"""A sheet filled in by hand ends in the record and in what is learnt as a batch by the phone does."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.problems import Problem
from tests.bench import NINE_OCLOCK_MS, planned_slab

MINUTE_MS = 60_000
NOW_MS = NINE_OCLOCK_MS + 24 * 60 * MINUTE_MS
# Readings as a 1 kW oven would give on 1.8 kg (the plan's own expectations); touch tests near the plan's ready time.
SHEET = {
    "after_ms": NINE_OCLOCK_MS - 30_500,
    "now_ms": NOW_MS,
    "weighed_at_ms": NINE_OCLOCK_MS,
    "weighed_kg": 1.8,
    "lot": "B-2",
    "bursts": [
        {"at_ms": NINE_OCLOCK_MS + 2 * n * MINUTE_MS, "seconds_s": 60, "free": n > 2, "surface_c": 38.0 + 7 * n}
        for n in range(5)
    ],
    "poured_at_ms": NINE_OCLOCK_MS + 12 * MINUTE_MS,
    "slab": [
        {"at_ms": NINE_OCLOCK_MS + 40 * MINUTE_MS, "surface_c": 45.0},
        {"at_ms": NINE_OCLOCK_MS + 70 * MINUTE_MS, "surface_c": 33.0, "firm": False},
        {"at_ms": NINE_OCLOCK_MS + 95 * MINUTE_MS, "firm": True},
    ],
    "cut_at_ms": NINE_OCLOCK_MS + 120 * MINUTE_MS,
    "pieces": 201,
    "rest_kg": 0.12,
    "notes": ["Made by hand"],
}


def folded(sheet):
    """(the events, the run after them) of a sheet typed back into a batch that was opened before."""
    plan = planned_slab()
    written = catalogue.call("paper.events", sheet)["events"]
    events = [{"kind": "batch_opened", "at_ms": sheet["after_ms"], "body": {"plan": plan}}, *written]
    log = [
        dict(one, id=f"e{seq}", v=1, shop_id="s", device_id="p", seq=seq, offset_ms=0, batch_id="b")
        for seq, one in enumerate(events)
    ]
    return written, catalogue.call("run.replay", {"plan": plan, "events": log})["run"]


def test_every_box_of_the_sheet_counts():
    _, run = folded(SHEET)
    assert run["ignored"] == []
    assert run["closed_at_ms"] is not None
    assert (run["weighed_kg"], run["lot"], run["pieces"]) == (1.8, "B-2", 201)
    assert [burst["reading_c"] for burst in run["melt"]["bursts"]] == [38.0, 45.0, 52.0, 59.0, 66.0]
    assert [burst["seconds_s"] for burst in run["melt"]["bursts"]] == [60.0] * 5
    assert [touch["firm"] for touch in run["cool"]["touches"]] == [False, True]
    assert len(run["cool"]["readings"]) == 2
    assert run["out"] == [{"kg": 0.12, "what": "rest"}]


def test_learning_takes_it_in():
    _, run = folded(SHEET)
    told = catalogue.call("learn.contribution", {"batch_id": "b", "plan": planned_slab(), "run": run})["contribution"]
    assert told["oven"] is not None
    assert told["base"] is not None
    assert told["pieces"] == {"planned": planned_slab()["reply"]["cut"]["pieces"], "counted": 201}


def test_every_event_says_that_it_was_typed_later():
    written, _ = folded(SHEET)
    assert {one["body"]["typed_at_ms"] for one in written} == {NOW_MS}
    times = [one["at_ms"] for one in written]
    assert times == sorted(set(times))
    poured = next(one for one in written if one["kind"] == "poured")
    assert poured["at_ms"] - SHEET["poured_at_ms"] == pytest.approx(0, abs=2)


def test_an_empty_sheet_is_refused_and_a_note_alone_closes_the_batch():
    empty = {"after_ms": NINE_OCLOCK_MS, "now_ms": NOW_MS}
    with pytest.raises(Problem) as caught:
        catalogue.call("paper.events", empty)
    assert (caught.value.field, caught.value.code) == ("weighed_kg", "missing")
    written, run = folded(empty | {"notes": ["Not made: the oven is broken"]})
    assert [one["kind"] for one in written] == ["noted", "closed"]
    assert run["closed_at_ms"] is not None


def test_whole_minutes_may_overlap_and_keep_their_order():
    bursts = [
        {"at_ms": NINE_OCLOCK_MS, "seconds_s": 80, "surface_c": 40},
        {"at_ms": NINE_OCLOCK_MS + MINUTE_MS, "seconds_s": 60},
    ]
    written, run = folded(SHEET | {"bursts": bursts})
    assert run["ignored"] == []
    assert [burst["reading_c"] for burst in run["melt"]["bursts"]] == [40, None]
    times = [one["at_ms"] for one in written]
    assert times == sorted(set(times))


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"poured_at_ms": NINE_OCLOCK_MS}, "poured_at_ms", "out_of_order"),
        ({"after_ms": NINE_OCLOCK_MS + 2 * MINUTE_MS}, "weighed_at_ms", "out_of_order"),
        ({"cut_at_ms": NOW_MS + 10 * MINUTE_MS}, "cut_at_ms", "still_to_come"),
        ({"poured_at_ms": None}, "poured_at_ms", "needs_pour"),
        ({"slab": [{"at_ms": NINE_OCLOCK_MS + 40 * MINUTE_MS}]}, "slab[0].surface_c", "missing"),
        ({"bursts": [{"at_ms": NINE_OCLOCK_MS}]}, "bursts[0].seconds_s", "missing"),
        ({"weighed_kg": 90}, "weighed_kg", "too_high"),
        ({"planned_pieces": 204, "pieces": 9999}, "pieces", "too_high"),
        ({"rest_kg": 12.0}, "rest_kg", "too_high"),
    ],
)
def test_what_cannot_have_been_is_a_problem_at_its_box(change, field, code):
    with pytest.raises(Problem) as caught:
        catalogue.call("paper.events", SHEET | change)
    assert (caught.value.field, caught.value.code) == (field, code)
