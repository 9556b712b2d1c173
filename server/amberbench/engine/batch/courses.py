"""The courses of a batch: for each kind its steps in order, and the event that ends each.

An event ends a step of the same name in every kind that has it. The order is common practice, no published source.
"""

from ..products import KINDS

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Readable


KIND_OF = {kind.name: kind for kind in KINDS}
STEPS = {kind.name: kind.course for kind in KINDS}
ORDER = {kind.name: [step for step, _ in kind.course] for kind in KINDS}
STEP_OF = {event: step for kind in KINDS for step, event in kind.course}


def open_step(run: "Readable") -> str:
    """The first step after the furthest one done: steps that were passed over stay so."""
    order, furthest = ORDER[run["kind"]], -1
    for index, step in enumerate(order):
        if step in run["done"]:
            furthest = index
    melt = run["melt"]
    if melt is not None and melt["last_at_ms"] is not None:
        furthest = max(furthest, order.index("melt") - 1)
    without = KIND_OF[run["kind"]].without
    for step in order[furthest + 1 :]:
        if step not in without or not without[step](run):
            return step
    return "closed"
