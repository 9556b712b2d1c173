"""What is made, one folder a kind; the rest of the engine knows them by this list."""

from . import chocolate, cluster, slab, standup

KINDS = (slab.KIND, cluster.KIND, chocolate.KIND, standup.KIND)
# The kind of documents older than their member `kind`.
OLDEST = slab.KIND.name
