"""The plan of the days: when each task starts, who does it, which orders are late and what would help."""

from ..core.problems import Problem
from .days import MINUTE_S, PEOPLE, Work
from .placing import NoPlace, Placing
from .search import improved, order_of, value

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable


def plan(request: "Readable") -> "Document":
    """A plan of one day or several: late jobs fewest, then least late, then finished soonest, then least idle.

    Request: tasks (hands_s, then wait_s, both (s); people and `uses` while hands are on it; `keeps` a thing until a
    task is over; `after` others, from least_s to most_s (s) later; earliest_s; pinned_s or begun_s, where it stands,
    all (s)), jobs (due_s (s); contains: allergens, null for one that does not share the bench), resources (name,
    count), people (how many), hours (spans at work; none: round the clock), wash_s, now_s (s); times from the start of
    the first day. rounds: how often all tasks may be placed to look for a better plan; seed; order: `order` of an
    earlier reply.
    Reply: tasks (start_s, hands_end_s, end_s; what it takes; wash_s: when the wash before it begins, or null, all
    (s)), jobs (end_s, late_s, spare_s (s)), late_jobs, late_s, end_s (s), conflicts (pinned tasks that cannot stand
    there, and what they want), helps (what one more of would make fewer late or less late: late_jobs, late_s (s)),
    order (task ids, for the next call), rounds.
    Raises: Problem named_twice, not_an_option (an unknown task, job or thing), task_after_itself,
    ends_before_it_begins (hours, most_s below least_s), too_many_people (people of a task), no_place (tasks: it fits
    nowhere within the hours).
    Relation: groups of tasks that must follow each other in time are placed one by one, each as early as it can go
    (serial schedule generation); the order is improved by tabu search over swaps at the ends of critical blocks.
    In whole minutes. Checked against published optima of job shops, reference/data/jobshop_instances.csv.
    Source: practice for the wash; for the search none but the checks.
    """
    work = Work(request)
    placing, used = _placed(work, request)
    late = value(placing)
    return {
        "tasks": [_task_row(placing, number) for number in range(len(work.tasks))],
        "jobs": [_job_row(placing, number) for number in range(len(work.jobs))],
        "late_jobs": late[0],
        "late_s": late[1] * MINUTE_S,
        "end_s": late[2] * MINUTE_S,
        "conflicts": [{"task": work.tasks[number].id, "wants": name} for number, name in placing.conflicts],
        "helps": _helps(request, placing) if late[0] else [],
        "order": [work.tasks[work.groups[index][0]].id for index in order_of(placing)],
        "rounds": used,
    }


def _placed(work: Work, request: "Readable") -> tuple[Placing, int]:
    numbers = {task.id: task.number for task in work.tasks}
    known = [work.group_of[numbers[name]] for name in request["order"] if name in numbers]
    missing = [index for index in work.group_order if index not in known]
    try:
        return improved(work, known + missing if known else None, request["rounds"], request["seed"])
    except NoPlace as none:
        number: "Any" = none.args[0]
        raise Problem("tasks[" + str(number) + "]", "no_place", work.tasks[number].id) from None


def _task_row(placing: Placing, number: int) -> "Document":
    task, start = placing.work.tasks[number], placing.starts[number]
    index = placing.work.group_of[number]
    takes = []
    for name in sorted(placing.uses):
        for unit, used in enumerate(placing.uses[name]):
            if [one for one in used if one.number == number and one.start == start]:
                takes.append({"name": name, "unit": unit + 1})
    first = min(placing.starts[one] for one in placing.work.groups[index]) == start
    wash = placing.washes.get(index) if first else None
    return {
        "id": task.id,
        "start_s": start * MINUTE_S,
        "hands_end_s": (start + task.hands) * MINUTE_S,
        "end_s": placing.end(number) * MINUTE_S,
        "takes": takes,
        "wash_s": None if wash is None else wash * MINUTE_S,
    }


def _job_row(placing: Placing, number: int) -> "Document":
    job = placing.work.jobs[number]
    ends = [placing.end(task.number) for task in placing.work.tasks if task.job == number]
    end = max(ends) if ends else placing.work.now
    over = None if job["due"] is None else end - job["due"]
    return {
        "id": job["id"],
        "end_s": end * MINUTE_S,
        "late_s": max(0, over or 0) * MINUTE_S,
        "spare_s": None if over is None else max(0, -over) * MINUTE_S,
    }


def _helps(request: "Readable", placing: Placing) -> "list[Document]":
    """What one more of would help, the most useful first: late jobs and minutes late with it, in the same order."""
    now = value(placing)
    order = order_of(placing)
    found = []
    for name in sorted(placing.work.free):
        more = dict(request)
        if name == PEOPLE:
            more["people"] = request["people"] + 1
        else:
            more["resources"] = [dict(one, count=one["count"] + (one["name"] == name)) for one in request["resources"]]
        try:
            then = value(Placing(Work(more), order))
        except NoPlace:  # in that order it does not fit; another may, but nobody waits for a search here
            continue
        if then[:2] < now[:2]:
            found.append((then[:2], name))
    return [{"name": name, "late_jobs": then[0], "late_s": then[1] * MINUTE_S} for then, name in sorted(found)]
