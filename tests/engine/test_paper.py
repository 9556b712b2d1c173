"""A sheet filled in by hand ends in the record and in what is learnt as a batch by the phone does."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests.bench import NINE_OCLOCK_MS, planned_clusters, planned_slab

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


def at(minute):
    return NINE_OCLOCK_MS + minute * MINUTE_MS


def cluster_sheet(**change):
    """Clusters as their plan has them: each tray filled for, laid, laid again after a quarter of an hour and freed."""
    reply = planned_clusters()["reply"]
    trays = range(reply["trays"])
    return SHEET | {
        "fill": {"fill_kg": reply["fill_kg"], "low_c": reply["melt_request"]["window_low_c"]},
        "weighed_kg": reply["caramel_kg"], "nuts_clear": True, "poured_at_ms": None, "slab": [], "cut_at_ms": None,
        "bursts": SHEET["bursts"] + [{"at_ms": at(14.5), "seconds_s": 20, "free": True, "surface_c": 70.0}],
        "fills": [{"at_ms": at(12), "surface_c": 71.0}, {"at_ms": at(15)}],
        "trays": [
            {"laid_at_ms": at(13 + n), "second_at_ms": at(26 + n), "freed_at_ms": at(120 + 10 * n)} for n in trays
        ],
        "pieces": 78, "loose_kg": 0.05,
    } | change  # fmt: skip


def folded(sheet, plan=None):
    """(the events, the run after them) of a sheet typed back into a batch that was opened before."""
    plan = plan or planned_slab()
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


def test_power_levels_and_old_caramel_come_back_from_paper():
    request = planned_slab()["request"] | {"old": {"kg": 0.3, "remelts": 0}}
    plan = planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)}
    bursts = [dict(one, level_percent=50 if n == 1 else 100) for n, one in enumerate(SHEET["bursts"])]
    _, run = folded(SHEET | {"old_kg": 0.31, "bursts": bursts}, plan)
    assert run["ignored"] == []
    assert run["remelt"]["weighed_kg"] == 0.31
    assert [burst.get("level_percent") for burst in run["melt"]["bursts"]] == [None, 50, None, None, None]
    _, at_full = folded(SHEET, plan)
    told = [
        catalogue.call("learn.contribution", {"batch_id": "b", "plan": plan, "run": one})["contribution"]["oven"]
        for one in (run, at_full)
    ]
    assert told[0]["power_w"] > told[1]["power_w"]


def test_the_lots_of_nuts_come_back_from_paper_in_their_order():
    _, run = folded(cluster_sheet(under_lots=[{"material": "pecan", "lot": "N-5"}]), planned_clusters())
    assert run["ignored"] == []
    assert run["cluster"]["under_lots"] == [{"material": "pecan", "lot": "N-5"}]
    assert "under_lot" in run["done"]


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
        ({"old_kg": 2.5}, "old_kg", "too_high"),
        (
            {"bursts": [{"at_ms": NINE_OCLOCK_MS, "seconds_s": 60, "level_percent": 0}]},
            "bursts[0].level_percent",
            "too_low",
        ),
    ],
)
def test_what_cannot_have_been_is_a_problem_at_its_box(change, field, code):
    with pytest.raises(Problem) as caught:
        catalogue.call("paper.events", SHEET | change)
    assert (caught.value.field, caught.value.code) == (field, code)


def test_a_sheet_of_clusters_says_its_fills_and_trays_in_the_order_they_came():
    written, run = folded(cluster_sheet(), planned_clusters())
    assert run["ignored"] == []
    assert run["closed_at_ms"] is not None
    assert (run["pieces"], run["out"]) == (78, [{"kg": 0.05, "what": "loose"}, {"kg": 0.12, "what": "rest"}])
    kinds = [one["kind"] for one in written]
    trays = planned_clusters()["reply"]["trays"]
    assert [kinds.count(kind) for kind in ("filled", "tray_laid", "second_laid")] == [2, trays, trays]
    assert [one["body"]["free"] for one in written if one["kind"] == "tray_freed"] == [True] * trays
    # The bowl was heated again between the second tray and the second fill.
    second_fill = len(kinds) - 1 - kinds[::-1].index("filled")
    assert kinds[second_fill - 3 : second_fill] == ["burst_started", "stirred", "read"]
    assert kinds[:5] == ["ready_checked", "allergens_checked", "under_laid", "weighed", "burst_started"]
    assert kinds.index("funnel_emptied") == len(kinds) - 1 - kinds[::-1].index("second_laid") + 1
    fills = [one["body"] for one in written if one["kind"] == "filled"]
    low_c = planned_clusters()["reply"]["melt_request"]["window_low_c"]
    assert [one["bulk_c"] for one in fills] == [71.0, low_c + 1.0]
    times = [one["at_ms"] for one in written]
    assert times == sorted(set(times))


def test_what_a_sheet_of_clusters_leaves_empty_is_left_out():
    sheet = cluster_sheet(nuts_clear=False, trays=[{"laid_at_ms": at(13)}], pieces=None, loose_kg=None, rest_kg=None)
    written, run = folded(sheet, planned_clusters())
    assert run["ignored"] == []
    kinds = {one["kind"] for one in written}
    assert not kinds & {"allergens_checked", "second_laid", "tray_freed", "separated", "counted", "weighed_out"}
    learned = catalogue.call("learn.contribution", {"batch_id": "b", "plan": planned_clusters(), "run": run})
    assert learned["contribution"]["oven"] is not None


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"fills": []}, "fills[0].at_ms", "missing"),
        ({"fills": [{"at_ms": at(14)}]}, "trays[0].laid_at_ms", "out_of_order"),
        ({"trays": [{"second_at_ms": at(30)}]}, "trays[0].laid_at_ms", "missing"),
        ({"trays": [{"laid_at_ms": at(20), "second_at_ms": at(19)}]}, "trays[0].second_at_ms", "out_of_order"),
        ({"trays": [{"laid_at_ms": at(20)}, {"laid_at_ms": at(17)}]}, "trays[1].laid_at_ms", "out_of_order"),
        ({"trays": [{"laid_at_ms": at(20), "freed_at_ms": at(14)}]}, "trays[0].freed_at_ms", "out_of_order"),
        ({"fill": None}, "fill", "missing"),
        ({"planned_pieces": 80, "pieces": 9999}, "pieces", "too_high"),
    ],
)
def test_what_cannot_have_been_of_clusters_is_a_problem_at_its_box(change, field, code):
    with pytest.raises(Problem) as caught:
        catalogue.call("paper.events", cluster_sheet(**change))
    assert (caught.value.field, caught.value.code) == (field, code)
