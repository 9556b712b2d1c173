"""From batches and orders to the tasks that `schedule.plan` places: what is over is gone, what runs has begun."""

from ..batch import plan_and_run_checks
from ..batch.courses import KIND_OF
from ..core import allergens
from ..core.check import figure
from ..core.problems import Problem
from ..products.hands import rows
from . import remaining_tasks
from .fields import DAY

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ..core.annotations import Document, Readable

# Boxes are ready so long before they are fetched (assumed); to begin with boxes, to fill and close one (assumed).
READY_S, BOXES_S, BOX_S = 900.0, 300.0, 45.0
# Nothing stands further from the first day (`schedule.plan` takes fourteen days).
FAR_S = 12 * 24 * 3600.0
OPEN_S, CLOSE_S, NOON_MS = 28800.0, 61200.0, 43200000.0
# `schedule.plan` takes 400.
MOST_TASKS = 340


class Day:
    """What a day is planned of: its clock, its hours, what the shop has, and how much slower or faster it is."""

    def __init__(self, request: "Readable") -> None:
        shop: "Any" = request["shop"]
        self.start_ms: float = request["days"][0]["midnight_ms"]
        self.now_s = self.seconds(request["now_ms"])
        from_s, to_s = figure(shop, "open_s"), figure(shop, "close_s")
        if from_s is None or to_s is None or not from_s + 3600.0 <= to_s <= 86400.0:
            from_s, to_s = OPEN_S, CLOSE_S
        work_days = _words(shop, "work_days")
        at_work = [one for one in request["days"] if one["weekday"] in work_days] or request["days"]
        # Clocks are put on or back at night: hours of the day are told from noon.
        zeros = [one["midnight_ms"] if one["noon_ms"] is None else one["noon_ms"] - NOON_MS for one in at_work]
        self.hours = [{"from_s": at + from_s, "to_s": at + to_s} for at in [self.seconds(zero) for zero in zeros]]
        self.span_s = to_s - from_s
        self.things = _things(shop)
        self.people = min(20, max(1, len(rows(shop, "people"))))
        self.factors = remaining_tasks.factors(request["closed"])

    def seconds(self, at_ms: float) -> float:
        """An instant in seconds from the start of the first day."""
        return min(FAR_S, max(-FAR_S, (at_ms - self.start_ms) / 1000.0))


def tasks(request: "Readable") -> "Document":
    """The request of `schedule.plan` for the batches that are planned or run and the orders that are open.

    Request: shop (its document), days [{weekday, midnight_ms (ms), noon_ms (ms, by the clock)}] in their order, now_ms
    (ms), batches [{id, plan, run}], orders [{order_id, wanted_ms, pinned_ms (ms; where its boxing was pinned), lines
    [{box_id, product_id, missing}]}] (of `orders.overview`, those wanted first in front), closed [{plan, run}]
    (batches that are over: they tell how long a task takes here).
    Reply: day (tasks, jobs, resources, people, hours, wash_s, now_s (s): for `schedule.plan`), rows [{id, batch_id,
    order_id, name, begun, pinned}] (a row a task, in the same order), start_ms (ms, where its seconds begin),
    left_out (ids of batches for which there was no room).
    Raises: Problem not_a_document (shop), not_a_run (run), not_a_plan (plan), named_twice (batches, orders).
    Relation: times of the batch's plan; of hands, times the median of what three closed batches or more of the kind
    took, within a factor of two. A task is over when the step that ends it is, and has begun with the first; over its
    time it takes five minutes more. Dipping, wrapping, counting and boxing are done in goes of two hours. Boxes wait
    for the batches that make what is in them, and are ready a quarter of an hour before they are wanted.
    Source: practice for what is dipped and wrapped the same day, assumed for the rest.
    """
    if type(request["shop"]) is not dict:
        raise Problem("shop", "not_a_document")
    day = Day(request)
    found: "Document" = {"tasks": [], "jobs": [], "rows": [], "left_out": [], "last": {}}
    for index, batch in enumerate(request["batches"]):
        if batch["id"] in [one["id"] for one in found["jobs"]]:
            raise Problem("batches[" + str(index) + "].id", "named_twice", batch["id"])
        plan_and_run_checks.check_run(batch["run"])
        plan_and_run_checks.check_plan(batch["plan"])
        _add_batch(day, batch, found)
    free = {one["id"]: _pieces(one) for one in request["batches"]}
    for index, order in enumerate(request["orders"]):
        if order["order_id"] in [one["order_id"] for one in found["rows"]]:
            raise Problem("orders[" + str(index) + "].order_id", "named_twice", order["order_id"])
        _add_order(day, order, request, free, found)
    resources = [{"name": name, "count": day.things[name]} for name in sorted(day.things)]
    return {
        "day": {
            "tasks": found["tasks"],
            "jobs": found["jobs"],
            "resources": resources,
            "people": day.people,
            "hours": day.hours,
            "wash_s": DAY["wash_s"]["default"],
            "now_s": max(0.0, day.now_s),
        },
        "rows": found["rows"],
        "start_ms": day.start_ms,
        "left_out": found["left_out"],
    }


def _words(shop: "Any", name: str) -> "list[Any]":
    found = shop.get(name)
    return found if type(found) is list else []


def _things(shop: "Any") -> dict[str, int]:
    """How many of each there are; what nobody has counted holds nothing up."""
    bars = sum(figure(one, "count") or 0.0 for one in rows(shop, "bars"))
    counts = {
        "oven": len(rows(shop, "ovens")),
        "bowl": len(rows(shop, "vessels")),
        "base": len(rows(shop, "bases")),
        "bars": int(bars // 4) + len(rows(shop, "frames")),
    }
    return {name: min(50, counts[name]) for name in counts if counts[name]}


def _add_batch(day: Day, batch: "Readable", found: "Document") -> None:
    """Adds what is left to do of a batch."""
    run: "Any" = batch["run"]
    tasks, rows = remaining_tasks.left(day, batch)
    if not tasks:
        return
    if len(found["tasks"]) + len(tasks) > MOST_TASKS:
        found["left_out"].append(batch["id"])
        return
    held = allergens.in_label_order(_words(run, "contains") + _words(run, "may_contain"))
    shares = KIND_OF[run["kind"]].shares_bench
    found["jobs"].append({"id": batch["id"], "due_s": None, "contains": held if shares else None})
    found["rows"] += rows
    found["tasks"] += tasks
    found["last"][batch["id"]] = tasks[-1]["id"]


def _pieces(batch: "Readable") -> float:
    """Good pieces that a batch will give, or gave."""
    run: "Any" = batch["run"]
    return run["pieces"] or figure(batch["plan"], "reply", "good") or figure(run, "planned", "pieces") or 0.0


def _add_order(day: Day, order: "Readable", request: "Readable", free: "dict[str, float]", found: "Document") -> None:
    """Adds the boxing of an order, after the batches that make what it wants; `free`: their pieces that are left."""
    wants, boxes = _wants(order, request["shop"])
    before = []
    for batch in request["batches"]:
        product_id = batch["plan"].get("product_id")
        taken = min(free.get(batch["id"], 0.0), wants.get(product_id, 0.0)) if type(product_id) is str else 0.0
        if taken > 0.0:
            free[batch["id"]] -= taken
            wants[product_id] -= taken
            before.append(batch["id"])
    if not boxes or len(found["tasks"]) >= MOST_TASKS:
        return
    job = "order/" + order["order_id"]
    due_s = None
    if order["wanted_ms"] is not None and day.seconds(order["wanted_ms"]) < FAR_S:
        due_s = max(-FAR_S, day.seconds(order["wanted_ms"]) - READY_S)
    found["jobs"].append({"id": job, "due_s": due_s, "contains": None})
    hands_s = min(day.span_s, BOXES_S + BOX_S * boxes)
    after = [{"task": found["last"][one], "least_s": None, "most_s": None} for one in before if one in found["last"]]
    boxing = remaining_tasks.whole(job + "/box", job, hands_s, after)
    if order["pinned_ms"] is not None:
        boxing["pinned_s"] = remaining_tasks.pinned_s(day, order["pinned_ms"])
    found["tasks"].append(boxing)
    found["rows"].append(remaining_tasks.row(found["tasks"][-1], None, order["order_id"], "box"))


def _wants(order: "Readable", shop: "Any") -> "tuple[dict[str, float], float]":
    """Pieces by product that an order still wants, and boxes to fill."""
    contents = {one.get("id"): rows(one, "lines") for one in rows(shop, "boxes") if type(one.get("id")) is str}
    wants: "dict[str, float]" = {}
    boxes = 0.0
    for line in order["lines"]:
        boxes += line["missing"] if line["box_id"] is not None else 1.0 if line["missing"] > 0.0 else 0.0
        inside = contents.get(line["box_id"], []) if line["box_id"] is not None else [line]
        for one in inside:
            name, count = one.get("product_id"), figure(one, "count") if line["box_id"] is not None else 1.0
            if type(name) is str and count:
                wants[name] = wants.get(name, 0.0) + count * line["missing"]
    return wants, boxes
