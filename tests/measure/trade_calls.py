"""Timed engine calls of a shop's trade: 90 days traced, a day of six batches planned; all of it invented."""

import json
from functools import cache
from typing import Any

from amberbench.engine import catalogue
from amberbench.engine.trace import graph
from tests.bench import Bench, dipped_slab, planned_bowl, planned_clusters, planned_slab
from tests.strategies_scheduling import HOUR_S, SHOP

from .engine_calls import Calls

DAYS, BATCHES_A_DAY, ORDERS_A_DAY = 90, 6, 5.5
"""What a phone holds of a busy shop: 2,000 orders a year."""
TRACE = f"trace.walk, a lot among {DAYS} days"
FIRST = "six-batch day: tasks and a first plan"
BETTER = "six-batch day: ten rounds of looking for a better"
TARGETS_S = {TRACE: 0.300, FIRST: 1.0, BETTER: 1.0}
"""What somebody waits for who asks where a lot went, or opens the day; ours, no published source."""
DAY_MS = 86_400_000


def trade_calls() -> dict[str, Calls]:
    """By the name of its row."""
    asked = day_asked()
    tasks = catalogue.call("schedule.tasks", asked)
    first = catalogue.call("schedule.plan", tasks["day"] | {"rounds": 1})
    better = tasks["day"] | {"rounds": 10, "order": first["order"]}
    plan = ("schedule.plan", json.dumps(tasks["day"] | {"rounds": 1}))
    return {
        TRACE: [("trace.walk", json.dumps({"start": "lot/caramels-3", "links": linked("lot/caramels-3")}))],
        FIRST: [("schedule.tasks", json.dumps(asked)), plan],
        BETTER: [("schedule.plan", json.dumps(better))],
    }


@cache
def day_asked() -> dict[str, Any]:
    """Six batches that were planned and not begun, an order for the boxes of each slab and a week of days."""
    plans = [planned_slab(), planned_slab(), dipped_slab(), dipped_slab(), planned_clusters(), planned_bowl()]
    benches = [Bench(plan | {"product_id": f"p{nth}"}, device=f"phone-{nth}") for nth, plan in enumerate(plans)]
    midnight_ms = benches[0].now_ms - 9 * HOUR_S * 1000
    week = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
    boxes = [{"id": f"box-{nth}", "lines": [{"product_id": f"p{nth}", "count": 9}]} for nth in range(5)]
    orders = [
        {"order_id": f"o{nth}", "wanted_ms": midnight_ms + DAY_MS + (9 + nth) * HOUR_S * 1000,
         "lines": [{"box_id": f"box-{nth}", "missing": 10}]}
        for nth in range(5)
    ]  # fmt: skip
    return {
        "shop": SHOP | {"boxes": boxes},
        "days": [{"weekday": name, "midnight_ms": midnight_ms + DAY_MS * nth} for nth, name in enumerate(week)],
        "now_ms": max(bench.now_ms for bench in benches),
        "batches": [{"id": f"b{nth}", "plan": one.plan, "run": one.run} for nth, one in enumerate(benches)],
        "orders": orders,
    }


def linked(start: str) -> str:
    """What went into what in those days, but for links not around a lot (`around` of state/tracing.ts leaves those
    out): each batch of its day's caramel and chocolate, in boxes of its own, most handed over."""
    links: list[graph.Link] = []
    for nth in range(DAYS * BATCHES_A_DAY):
        lots = (f"lot/caramels-{nth // (5 * BATCHES_A_DAY)}", f"lot/dark-{nth // (9 * BATCHES_A_DAY)}")
        links += [(lot, f"batch/{nth:036}") for lot in lots]
        links += [(f"batch/{nth:036}", f"pack/{nth:036}"), (f"lot/boxes-{nth // 100}", f"pack/{nth:036}")]
    for nth in range(int(DAYS * ORDERS_A_DAY)):
        links += [(f"pack/{nth:036}", f"order/{nth:036}"), (f"order/{nth:036}", f"customer/Customer {nth % 40}")]
    reply = graph.both_ways(start, links)
    ahead = {start, *reply["forward"]}
    return "\n".join(f"{one}\t{other}" for one, other in links if one in ahead)
