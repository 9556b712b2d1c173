"""The plan of some days: it holds to people, things, hours and waits, and finds the least lateness."""

import itertools
import random

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests import strategies_scheduling
from tests.strategies_scheduling import HOUR_S

MINUTE_S = 60


def plan(tasks, **request):
    jobs = request.pop("jobs", [{"id": name} for name in dict.fromkeys(task["job"] for task in tasks)])
    return catalogue.call("schedule.plan", {"tasks": tasks, "jobs": jobs, **request})


def starts(reply):
    return {row["id"]: row["start_s"] / MINUTE_S for row in reply["tasks"]}


def task(name, minutes, after=None, **more):
    before = [] if after is None else [{"task": after}]
    return {"id": name, "job": name[0], "hands_s": minutes * MINUTE_S, "after": before, **more}


def overlaps(spans):
    spans = sorted(spans)
    return any(one[1] > other[0] for one, other in itertools.pairwise(spans))


def broken_rules(request, reply):
    """What a plan breaks of what was asked, read off the reply alone."""
    asked = {one["id"]: one for one in request["tasks"]}
    rows = {row["id"]: row for row in reply["tasks"]}
    ends = {name: row["end_s"] for name, row in rows.items()}
    busy, found = {}, []
    for name, row in rows.items():
        one = asked[name]
        kept = {keep["name"]: keep.get("until") or name for keep in one.get("keeps", [])}
        for taken in row["takes"]:
            until = ends[kept[taken["name"]]] if taken["name"] in kept else row["hands_end_s"]
            busy.setdefault((taken["name"], taken["unit"]), []).append((row["start_s"], until))
        for link in one.get("after", []):
            waited = row["start_s"] - ends[link["task"]]
            if not link.get("least_s", 0) <= waited <= link.get("most_s", 1e9):
                found.append(f"{name} {waited} s after {link['task']}")
        if not any(
            span["from_s"] <= row["start_s"] and row["hands_end_s"] <= span["to_s"] for span in request["hours"]
        ):
            found.append(f"{name} out of hours")
        if row["start_s"] < request.get("now_s", 0):
            found.append(f"{name} in the past")
    return found + [f"{unit} twice" for unit, spans in busy.items() if overlaps(spans)]


@pytest.mark.parametrize("seed", range(60))
def test_a_plan_holds_to_people_things_hours_and_waits(seed):
    request = strategies_scheduling.day(random.Random(seed))
    assert broken_rules(request, catalogue.call("schedule.plan", request)) == []


def fewest_late(request):
    """The least (late jobs, minutes late) over every order, each task as early as it goes: slow and simple."""
    tasks, things = request["tasks"], {one["name"]: one["count"] for one in request["resources"]}
    things["people"] = request["people"]
    due = {job["id"]: job.get("due_s", 1e12) for job in request["jobs"]}
    opens = request["hours"][0]["from_s"]

    def free_at(start, length, spans, count):
        edges = [start, *[span[0] for span in spans if start < span[0] < start + length]]
        return all(sum(span[0] <= at < span[1] for span in spans) < count for at in edges)

    def first(one, earliest, busy):
        length, wants = one["hands_s"], ["people", *one.get("uses", [])]
        candidates = sorted({earliest, *[span[1] for name in wants for span in busy[name] if span[1] > earliest]})
        return next(at for at in candidates if all(free_at(at, length, busy[name], things[name]) for name in wants))

    def search(done, busy, late):
        if len(done) == len(tasks):
            return late
        best = (99, 1e12)
        for one in tasks:
            if one["id"] in done or any(link["task"] not in done for link in one.get("after", [])):
                continue
            earliest = max([opens, *[done[link["task"]] for link in one.get("after", [])]])
            start = first(one, earliest, busy)
            end = start + one["hands_s"] + one.get("wait_s", 0)
            last = not any(link["task"] == one["id"] for other in tasks for link in other.get("after", []))
            over = max(0, end - due[one["job"]]) if last else 0
            more = (late[0] + (over > 0), late[1] + over)
            if more < best:
                span = (start, start + one["hands_s"])
                taken = {name: [*busy[name], span] for name in ["people", *one.get("uses", [])]}
                best = min(best, search({**done, one["id"]: end}, busy | taken, more))
        return best

    return search({}, {name: [] for name in things}, (0, 0))


def small_day(seed):
    """Three batches of one or two tasks that barely fit before their hours."""
    rng = random.Random(seed)
    tasks = []
    for job in "abc":
        for step in range(rng.randrange(1, 3)):
            one = task(f"{job}{step}", rng.randrange(10, 60), f"{job}{step - 1}" if step else None)
            one["wait_s"] = MINUTE_S * rng.choice([0, 0, 30, 90])
            one["uses"] = rng.choice([[], ["oven"], ["table"]])
            tasks.append(one)
    jobs = [{"id": job, "due_s": 8 * HOUR_S + MINUTE_S * rng.randrange(40, 220)} for job in "abc"]
    things = [{"name": "oven", "count": 1}, {"name": "table", "count": 1}]
    hours = [{"from_s": 8 * HOUR_S, "to_s": 48 * HOUR_S}]
    return {"tasks": tasks, "jobs": jobs, "resources": things, "people": rng.randrange(1, 3), "hours": hours,
            "rounds": 60}  # fmt: skip


def lateness_against_every_order(seeds):
    """How many small days are as good as the best of every order, and the worst minutes by which one is later."""
    equal, worst = 0, 0.0
    for seed in seeds:
        request = small_day(seed)
        best, reply = fewest_late(request), catalogue.call("schedule.plan", request)
        found = (reply["late_jobs"], reply["late_s"])
        assert found >= best
        equal += found == best
        worst = max(worst, (reply["late_s"] - best[1]) / MINUTE_S)
    return equal, worst


def test_small_days_are_as_little_late_as_the_best_of_every_order():
    equal, worst = lateness_against_every_order(range(60))
    assert equal >= 57
    assert worst <= 20


@pytest.mark.prove
def test_300_small_days_are_as_little_late_as_the_best_of_every_order():
    equal, worst = lateness_against_every_order(range(300))
    print(f"\n{equal} of 300 small days equal the best of every order; the worst is {worst:g} minutes later")
    assert equal >= 285
    assert worst <= 20


def test_a_pot_that_is_getting_cold_is_never_kept_waiting_by_other_work():
    hot = [task("a0", 10), task("a1", 20)]
    hot[1]["after"] = [{"task": "a0", "most_s": 0}]
    found = starts(plan([task("b0", 15), *hot, task("c0", 12)], order=["a0", "b0", "a1", "c0"]))
    assert found["a1"] == found["a0"] + 10


def test_bars_are_taken_until_the_slab_is_cut():
    slab = [task("a0", 10, wait_s=3600, keeps=[{"name": "bars", "until": "a1"}]), task("a1", 20, "a0")]
    other = [task("b0", 10, wait_s=3600, keeps=[{"name": "bars", "until": "b1"}]), task("b1", 20, "b0")]
    found = starts(plan(slab + other, resources=[{"name": "bars", "count": 1}]))
    assert found["b0"] == found["a1"] + 20 or found["a0"] == found["b1"] + 20


def test_a_wash_lies_before_a_batch_that_must_not_meet_what_was_there():
    nuts_first = plan([task("a0", 30), task("b0", 30)], order=["a0", "b0"], wash_s=900,
                      jobs=[{"id": "a", "contains": ["milk", "pecan"]}, {"id": "b", "contains": ["milk"]}])  # fmt: skip
    rows = {row["id"]: row for row in nuts_first["tasks"]}
    assert (rows["b0"]["wash_s"], rows["b0"]["start_s"]) == (1800, 2700)


def test_free_of_nuts_comes_first_when_that_saves_the_wash():
    reply = plan([task("a0", 30), task("b0", 30)], wash_s=900, rounds=30,
                 jobs=[{"id": "a", "contains": ["milk", "pecan"]}, {"id": "b", "contains": ["milk"]}])  # fmt: skip
    assert [row["wash_s"] for row in reply["tasks"]] == [None, None]
    assert reply["end_s"] == 3600


def test_twenty_minutes_late_moves_nothing_pinned_and_nothing_that_runs():
    tasks = [task("a0", 30), task("a1", 20, "a0"), task("b0", 25, pinned_s=7200), task("c0", 40)]
    before = starts(plan(tasks))
    late = [dict(tasks[0], begun_s=0, hands_s=50 * MINUTE_S), *tasks[1:]]
    after = starts(plan(late, now_s=30 * MINUTE_S))
    assert (after["a0"], after["b0"]) == (before["a0"], before["b0"]) == (0, 120)
    assert after["a1"] >= 50


def test_a_pinned_task_that_cannot_stand_there_says_what_it_wants():
    reply = plan([task("a0", 30, begun_s=0), task("b0", 25, pinned_s=600)])
    assert reply["conflicts"] == [{"task": "b0", "wants": "people"}]
    waits = plan([task("a0", 30), task("a1", 20, "a0", pinned_s=600)], people=2)
    assert {"task": "a1", "wants": "a0"} in waits["conflicts"]


def test_a_late_order_says_what_one_more_of_would_help():
    tasks = [task(f"{job}0", 60, uses=["oven"]) for job in "ab"]
    reply = plan(tasks, resources=[{"name": "oven", "count": 1}], people=2,
                 jobs=[{"id": job, "due_s": 3600} for job in "ab"])  # fmt: skip
    assert (reply["late_jobs"], reply["late_s"]) == (1, 3600)
    assert reply["helps"] == [{"name": "oven", "late_jobs": 0, "late_s": 0}]


def test_going_on_from_an_earlier_order_is_never_worse():
    for seed in range(20):
        request = strategies_scheduling.day(random.Random(seed))
        first = catalogue.call("schedule.plan", dict(request, rounds=5))
        then = catalogue.call("schedule.plan", dict(request, rounds=5, seed=2, order=first["order"]))
        assert (then["late_jobs"], then["late_s"]) <= (first["late_jobs"], first["late_s"])


REFUSED = [
    ("named_twice", [task("a0", 5), task("a0", 5)], {}),
    ("task_after_itself", [task("a0", 5, "a1"), task("a1", 5, "a0")], {}),
    ("not_an_option", [task("a0", 5, "z9")], {}),
    ("not_an_option", [task("a0", 5, uses=["crane"])], {}),
    ("too_many_people", [task("a0", 5, people=3)], {}),
    ("ends_before_it_begins", [task("a0", 5)], {"hours": [{"from_s": 10, "to_s": 5}]}),
    ("no_place", [task("a0", 500)], {"hours": [{"from_s": 0, "to_s": 3600}]}),
]


@pytest.mark.parametrize(("code", "tasks", "more"), REFUSED)
def test_what_cannot_be_planned_is_refused_by_name(code, tasks, more):
    with pytest.raises(Problem) as refused:
        plan(tasks, **more)
    assert refused.value.code == code
