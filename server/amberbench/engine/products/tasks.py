"""By kind, what its batches ask of a day; a kind that is not here asks for nobody's hands.

And of a product of the shop the caramel in a piece, and the most that one batch takes.
"""

from . import chocolate, cluster, slab
from .chocolate import tasks as chocolate_tasks
from .cluster import tasks as cluster_tasks
from .slab import tasks as slab_tasks

TASKS = {
    slab.KIND.name: slab_tasks.tasks,
    cluster.KIND.name: cluster_tasks.tasks,
    chocolate.KIND.name: chocolate_tasks.tasks,
}
SIZES = {slab.KIND.name: slab_tasks, cluster.KIND.name: cluster_tasks}
