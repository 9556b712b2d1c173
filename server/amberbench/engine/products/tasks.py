"""By kind, what its batches ask of a day; a kind that is not here asks for nobody's hands.

And of a product of the shop the most caramel that one batch takes.
"""

from . import KINDS, chocolate, cluster, hands
from .chocolate import tasks as chocolate_tasks
from .cluster import tasks as cluster_tasks
from .poured import tasks as poured_tasks

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

POURED = [one for one in KINDS if "cool" in one.parts]
TASKS = {one.name: poured_tasks.tasks_of(one) for one in POURED}
TASKS.update({cluster.KIND.name: cluster_tasks.tasks, chocolate.KIND.name: chocolate_tasks.tasks})


def most_kg(row: "Any", shop: "Any", density: float) -> float:
    """The caramel (kg) for which the table has room; trays are laid one after the other: none is too many."""
    is_poured = row["kind"] in [one.name for one in POURED]
    return poured_tasks.most_kg(row, shop, density) if is_poured else hands.MOST_KG
