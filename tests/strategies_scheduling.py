"""Sensible requests drawn at random for the plan of some days."""

from tests import strategies_batch
from tests.bench import NINE_OCLOCK_MS
from tests.drawing import maybe

THINGS = ("oven", "bars", "table")
ALLERGENS = (["milk"], ["milk", "almond"], ["milk", "pecan"], None)
HOUR_S = 3600


def task(rng, job, step, before):
    """One task of a batch: hands for minutes, sometimes a wait of up to two hours."""
    one = {"id": f"{job}.{step}", "job": job, "hands_s": 60 * rng.randrange(5, 46)}
    maybe(rng, one, "wait_s", 60 * rng.randrange(10, 121))
    maybe(rng, one, "uses", [rng.choice(THINGS)])
    if before:
        link = {"task": before}
        maybe(rng, link, "least_s", 60 * rng.randrange(0, 20), 0.2)
        maybe(rng, link, "most_s", 60 * rng.randrange(30, 240), 0.4)
        one["after"] = [link]
    return one


def day(rng, jobs=4, steps=4):
    """A day of some batches, with hours, one to three people and an hour for most of the batches."""
    tasks, rows = [], []
    for number in range(rng.randrange(1, jobs + 1)):
        job = f"batch {number + 1}"
        row = {"id": job, "contains": rng.choice(ALLERGENS)}
        maybe(rng, row, "due_s", HOUR_S * rng.randrange(9, 18), 0.8)
        rows.append(row)
        count = rng.randrange(1, steps + 1)
        first = len(tasks)
        for step in range(count):
            tasks.append(task(rng, job, step, tasks[-1]["id"] if step else None))
        if rng.random() < 0.3:
            tasks[first]["keeps"] = [{"name": "table", "until": tasks[-1]["id"]}]
    days = [{"from_s": day * 24 * HOUR_S + 8 * HOUR_S, "to_s": day * 24 * HOUR_S + 18 * HOUR_S} for day in range(3)]
    things = [{"name": name, "count": rng.randrange(1, 3)} for name in THINGS]
    request = {"tasks": tasks, "jobs": rows, "resources": things, "people": rng.randrange(1, 4), "hours": days}
    maybe(rng, request, "now_s", HOUR_S * rng.randrange(8, 12))
    maybe(rng, request, "rounds", rng.randrange(1, 12))
    return request


SHOP = {
    "people": [{"id": "ann"}, {"id": "ben"}],
    "ovens": [{"id": "oven"}],
    "bars": [{"id": "bars", "count": 8}],
    "bases": [{"id": "marble"}, {"id": "board"}],
    "boxes": [{"id": "nine", "lines": [{"product_id": "squares", "count": 9}]}],
    "open_s": 8 * HOUR_S,
    "close_s": 18 * HOUR_S,
    "work_days": ["monday", "tuesday", "wednesday"],
}


def asked(rng):
    """Some batches some steps along, some orders, and closed batches that tell how long a task took."""
    midnight_ms = NINE_OCLOCK_MS - 9 * 3600000
    days = ["monday", "tuesday", "wednesday", "thursday"]
    rows = [{"weekday": name, "midnight_ms": midnight_ms + 864e5 * number} for number, name in enumerate(days)]
    benches = [strategies_batch.any_bench(rng) for _ in range(rng.randrange(4))]
    batches = [{"id": f"b{number}", "plan": one.plan, "run": one.run} for number, one in enumerate(benches)]
    lines = [{"box_id": "nine", "missing": rng.randrange(30)}, {"product_id": "squares", "missing": 12}]
    orders = [{"order_id": f"o{number}", "lines": lines} for number in range(rng.randrange(3))]
    for one in orders:
        maybe(rng, one, "wanted_ms", midnight_ms + 864e5 * rng.uniform(0, 16))
        maybe(rng, one, "pinned_ms", midnight_ms + 864e5 * rng.uniform(0, 3), 0.3)
    request = {"shop": SHOP, "days": rows, "now_ms": NINE_OCLOCK_MS + rng.uniform(0, 2e7)}
    closed = [{"plan": one["plan"], "run": one["run"]} for one in batches] * 3
    return request | {"batches": batches, "orders": orders, "closed": closed}


SENSIBLE = {"schedule.plan": day, "schedule.tasks": asked}
