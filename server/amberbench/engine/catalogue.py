"""What may be reached from outside: the functions of the bench, and those that only the desk asks for.

On the phone the latter come as a file of their own, after the first load: whatever is not asked for while somebody
stands at the bench belongs here, not in `bench_catalogue`.
"""

from . import fields as _fields  # noqa: F401 - it adds its fields to those of the bench
from .bench_catalogue import FUNCTIONS, RENAMED, call, call_text
from .cost import batch as cost
from .cost import months
from .exports import paper, table
from .labelling import content, dates, declarations, net_contents
from .learning import apply, contribution
from .learning import fold as learning_fold
from .needs import gather
from .needs import plan as needs
from .orders import check as orders_check
from .orders import fold as orders_fold
from .orders import overview as orders_overview
from .pack import boxes as pack_boxes
from .pack import check as pack_check
from .pack import fold as pack_fold
from .scheduling import plan as scheduling
from .scheduling import tasks as scheduling_tasks
from .stock import check as stock_check
from .stock import fold as stock_fold
from .stock import overview as stock_overview
from .trace import graph as trace

__all__ = ["FUNCTIONS", "RENAMED", "call", "call_text"]

FUNCTIONS.update(
    {
        "learn.contribution": contribution.contribution_request,
        "learn.fold": learning_fold.fold,
        "learn.apply": apply.apply_request,
        "schedule.plan": scheduling.plan,
        "schedule.tasks": scheduling_tasks.tasks,
        "needs.gather": gather.gather,
        "needs.plan": needs.plan,
        "trace.walk": trace.walk,
        "cost.batch": cost.cost,
        "cost.box": cost.cost_of_box,
        "cost.months": months.by_month,
        "cost.price": cost.price,
        "net.check": net_contents.check,
        "label.content": content.content,
        "label.net_weight": declarations.net_weight,
        "label.nutrition": declarations.nutrition,
        "label.check_digit": declarations.check_digit,
        "label.lot_code": dates.lot_code,
        "label.best_by": dates.best_by,
        "paper.events": paper.events,
        "table.batches": table.batches,
        "table.timeline": table.timeline,
        "lot.fold": stock_fold.fold,
        "lot.check": stock_check.check,
        "stock.overview": stock_overview.overview,
        "order.fold": orders_fold.fold,
        "order.check": orders_check.check,
        "orders.overview": orders_overview.overview,
        "pack.fold": pack_fold.fold,
        "pack.check": pack_check.check,
        "pack.boxes": pack_boxes.boxes,
    }
)
