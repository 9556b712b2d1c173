"""How large a batch of clusters of the shop can be, and what it takes: by `cluster.plan`'s own weights."""

from ...core import check
from ...core.check import figure
from .. import capacity, hands
from . import fields
from .job import ClusterWeights

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable

MOST_CLUSTERS: int = fields.ROWS["item"]["fields"]["clusters"]["high"]
# What of a request to cluster.plan decides how much caramel so many clusters take.
NAMES = ("second_kg", "window_low_c", "window_high_c", "material", "residue", "vessel_volume_m3")
FIELDS = dict({name: fields.CLUSTER_REQUEST[name] for name in NAMES}, deposit_kg=fields.DEPOSIT_KG)


def asked(row: "Any", shop: "Any", caramel: "Any") -> "Any":
    """What cluster.plan is asked of a product besides how many, in the largest bowl.

    Raises: Problem for what is out of range.
    """
    found: "Document" = {"material": caramel.get("material"), "vessel_volume_m3": hands.largest_bowl_m3(shop)}
    for name in ("deposit_kg", "second_kg"):
        found[name] = row["cluster"].get(name)
    for name in ("low_c", "high_c"):
        found["window_" + name] = figure(caramel, "windows", "deposit", name)
    return check.checked(FIELDS, {name: found[name] for name in found if found[name] is not None})


def _weights(request: "Readable", pieces: int) -> ClusterWeights:
    row = {"clusters": pieces, "deposit_kg": request["deposit_kg"]}
    return ClusterWeights(dict(request, rows=[row], caramel_kg=None, yield_share=1.0))


def most_pieces(request: "Readable", kg: float | None = None) -> int:
    """The most clusters that one bowl and, where it is said, so much caramel (kg) give; 0: not even one."""
    one = _weights(request, 1)
    most_kg: float = one.most_kg * capacity.ROUNDING
    most = int((most_kg if kg is None else min(kg, most_kg)) / one.caramel_kg + 1e-9)
    return most if most < MOST_CLUSTERS else MOST_CLUSTERS


def caramel_kg(request: "Readable", pieces: int) -> float | None:
    """Caramel to weigh in (kg) for so many clusters, with what stays in bowl and funnel."""
    kg: float = _weights(request, pieces).caramel_kg
    return kg
