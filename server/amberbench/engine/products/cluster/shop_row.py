"""What the shop keeps of a product laid in clusters, besides what every product has."""

from ...core.check import figure
from ...core.field_kinds import choice
from ...physics.fields import PIECES
from .fields import CLUSTER_REQUEST
from .tray_fields import BED, COUNTED

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


_COUNTED = COUNTED["item"]["fields"]
SHOP_ROW = {
    "deposit_kg": dict(CLUSTER_REQUEST["deposit_kg"], meaning="one first deposit"),
    "second_kg": CLUSTER_REQUEST["second_kg"],
    "spread_m": dict(CLUSTER_REQUEST["spread_m"], default=None),
    "gap_m": CLUSTER_REQUEST["gap_m"],
    "bed_kg_m2": dict(BED["fields"]["bed_kg_m2"], meaning="laid as a level bed; null: counted out", default=None),
}
for _name in ("under", "also"):
    SHOP_ROW[_name] = choice(PIECES, "what lies under the caramel; null: nothing", default=None)
    SHOP_ROW[_name + "_each_kg"] = dict(_COUNTED["kg_each"], default=None)
    SHOP_ROW[_name + "_count"] = dict(_COUNTED["count"], default=3)


def piece_kg(row: "Any", density: float) -> float | None:
    """Caramel in a cluster (kg) of a product of the shop, or None: its deposit is not known."""
    first_kg = figure(row, "cluster", "deposit_kg")
    return first_kg + (figure(row, "cluster", "second_kg") or 0.0) if first_kg else None
