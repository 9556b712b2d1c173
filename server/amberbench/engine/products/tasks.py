"""By kind, what its batches ask of a day; a kind that is not here asks for nobody's hands.

And by kind, how large a batch of a product of the shop can be and what it takes, as its planner has it.
"""

from . import KINDS, chocolate, cluster, slab
from .chocolate import tasks as chocolate_tasks
from .cluster import sizes as cluster_sizes
from .cluster import tasks as cluster_tasks
from .poured import tasks as poured_tasks
from .slab import sizes as slab_sizes

TASKS = {one.name: poured_tasks.tasks_of(one) for one in KINDS if "cool" in one.parts}
TASKS.update({cluster.KIND.name: cluster_tasks.tasks, chocolate.KIND.name: chocolate_tasks.tasks})
SIZES = {slab.KIND.name: slab_sizes, cluster.KIND.name: cluster_sizes}
