"""What is left to do of a batch, as tasks of `schedule.plan`: from its plan, its log and what other batches took."""

from ..batch import plan_and_run_checks
from ..batch.courses import ORDER, open_step
from ..core.check import figure
from ..products.hands import SET_UP_S
from ..products.tasks import TASKS
from .fields import MOST_S

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import Any

    from ..core.annotations import Document, Readable

# What is over its time takes so long still (assumed).
LEFT_S = 300.0
# What may be done in several goes is done in goes of so long, of so many at most (assumed).
PART_S = 2 * 3600.0
MOST_PARTS = 6
# So many batches tell how long a task takes here; by more than this factor it was something else (assumed).
ENOUGH, MOST_FACTOR = 3, 2.0
NEVER_MS = -1e15


def whole(name: str, job: str, hands_s: float, after: "list[Document]") -> "Document":
    """A task of one person and no thing, that nobody has begun or pinned."""
    return {
        "id": name,
        "job": job,
        "hands_s": hands_s,
        "wait_s": None,
        "people": 1,
        "uses": [],
        "keeps": [],
        "after": after,
        "earliest_s": None,
        "pinned_s": None,
        "begun_s": None,
    }


def row(task: "Readable", batch_id: str | None, order_id: str | None, name: str) -> "Document":
    """What a task is of."""
    begun, pinned = task["begun_s"] is not None, task["pinned_s"] is not None
    return {
        "id": task["id"],
        "batch_id": batch_id,
        "order_id": order_id,
        "name": name,
        "begun": begun,
        "pinned": pinned,
    }


def of_kind(plan: "Any", run: "Any") -> "list[Document]":
    """All tasks of a batch, as its kind lists them."""
    found: "list[Document]" = TASKS[run["kind"]](plan, run) if run["kind"] in TASKS else []
    return found


def factors(closed: "Sequence[Readable]") -> "dict[tuple[str, str], float]":
    """By kind and task how much longer hands take here than planned."""
    ratios: "dict[tuple[str, str], list[float]]" = {}
    for one in closed:
        run: "Any" = one["run"]
        plan_and_run_checks.check_run(run)
        plan_and_run_checks.check_plan(one["plan"])
        for task in of_kind(one["plan"], run):
            took_s = _took_s(run, task)
            if took_s is not None and took_s > 60.0:
                ratios.setdefault((run["kind"], task["name"]), []).append(took_s / task["hands_s"])
    enough = {key: sorted(ratios[key]) for key in ratios if len(ratios[key]) >= ENOUGH}
    return {key: min(MOST_FACTOR, max(1.0 / MOST_FACTOR, enough[key][len(enough[key]) // 2])) for key in enough}


def _took_s(run: "Any", task: "Readable") -> float | None:
    """How long hands were at a task (s), from the end of the step before it; None: nobody can tell.

    A step is written down when it ends. What begins a batch took from its opening on, but no longer than setting up
    does. Where more time went by until the first step than the task may take, nobody was at it all the time.
    """
    times = _times(run, task["steps"])
    if not times or not task["hands_s"]:
        return None
    order = ORDER[run["kind"]]
    before = _times(run, order[: order.index(task["steps"][0])])
    begun_ms = max(before) if before else max(min(times) - 1000.0 * SET_UP_S, run["opened_at_ms"] or 0.0)
    idle_s = (min(times) - begun_ms) / 1000.0
    return None if idle_s > MOST_FACTOR * task["hands_s"] else (max(times) - begun_ms) / 1000.0


def left(day: "Any", batch: "Readable") -> "tuple[list[Document], list[Document]]":
    """(tasks, rows) of what is left to do of a batch; day: `tasks.Day`."""
    run: "Any" = batch["run"]
    order = ORDER[run["kind"]]
    open_ = open_step(run)
    at = len(order) if open_ == "closed" else order.index(open_)
    tasks: "list[Document]" = []
    rows: "list[Document]" = []
    done_ms = NEVER_MS
    for one in of_kind(batch["plan"], run):
        ends = one["waits"] or one["steps"][-1]
        if order.index(ends) < at:
            done_ms = max([done_ms] + _times(run, one["steps"] + (ends,)))
            continue
        one["hands_s"] *= day.factors.get((run["kind"], one["name"]), 1.0)
        hands_over = order.index(one["steps"][-1]) < at
        begun_ms = _begun_ms(run, one["steps"], open_, done_ms)
        if begun_ms is not None or hands_over:
            goes = [_running(day, run, one, day.start_ms if begun_ms is None else begun_ms, hands_over)]
        else:
            goes = _to_come(day, run, one)
        for number, times in enumerate(goes):
            made = _made(day, batch["id"], one, number, tasks)
            made.update(times)
            tasks.append(made)
            rows.append(row(made, batch["id"], None, one["name"]))
    return tasks, rows


def _times(run: "Any", steps: "Sequence[str]") -> list[float]:
    return [run["done"][step] for step in steps if step in run["done"]]


def _begun_ms(run: "Any", steps: "Sequence[str]", open_: str, done_ms: float) -> float | None:
    """When hands were first at one of some steps, as far as the log tells; None: nobody has begun."""
    times = _times(run, steps)
    if open_ in steps and run["touched_ms"] is not None and run["touched_ms"] > done_ms:
        times.append(run["touched_ms"])
    return min(times) if times else None


def _running(day: "Any", run: "Any", one: "Readable", begun_ms: float, hands_over: bool) -> "Document":
    """The times of what has begun: what is over its time is not over yet."""
    begun_s = day.seconds(begun_ms)
    times = _times(run, one["steps"])
    if hands_over and times:
        hands_s = max(0.0, day.seconds(max(times)) - begun_s)
        waited_s = day.now_s - begun_s - hands_s
        wait_s = one["wait_s"] if one["wait_s"] > waited_s else waited_s + LEFT_S
        return {"begun_s": begun_s, "hands_s": min(MOST_S, hands_s), "wait_s": min(MOST_S, max(0.0, wait_s))}
    hands_s = max(one["hands_s"], day.now_s - begun_s + LEFT_S)
    return {"begun_s": begun_s, "hands_s": min(MOST_S, hands_s), "wait_s": one["wait_s"]}


def _to_come(day: "Any", run: "Any", one: "Readable") -> "list[Document]":
    """The times of what nobody has begun, go by go."""
    parts = max(1, min(MOST_PARTS, int(-(-one["hands_s"] // PART_S)))) if one["parts"] else 1
    hands_s = min(one["hands_s"] / parts, day.span_s)
    goes: "list[Document]" = [{"hands_s": hands_s, "wait_s": 0.0} for _ in range(parts)]
    goes[-1]["wait_s"] = one["wait_s"]
    pinned_ms = figure(run, "pins", one["name"])
    if pinned_ms is not None:
        goes[0]["pinned_s"] = pinned_s(day, pinned_ms)
    return goes


def pinned_s(day: "Any", pinned_ms: float) -> float:
    """Where a pin stands (s from the first day): what was to begin before now may begin now."""
    return float(max(day.seconds(pinned_ms), day.now_s, 0.0))


def _made(day: "Any", batch_id: str, one: "Readable", number: int, before: "Sequence[Readable]") -> "Document":
    """A go of a task, behind the one before it."""
    name = one["name"] + ("." + str(number + 1) if number else "")
    most_s = None if number else one["most_s"]
    after = [{"task": before[-1]["id"], "least_s": None, "most_s": most_s}] if before else []
    made = whole(batch_id + "/" + name, batch_id, 0.0, after)
    kept = [] if number else [keep for keep in one["keeps"] if keep["name"] in day.things]
    made["keeps"] = [{"name": keep["name"], "until": batch_id + "/" + keep["until"]} for keep in kept]
    held = [keep["name"] for keep in kept]
    made["uses"] = [thing for thing in one["uses"] if thing in day.things and thing not in held]
    return made
