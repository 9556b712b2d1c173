"""The run of a kind poured between bars, at its beginning; `reply` is the plan's."""

from ...steps.cool import fold as cool_fold
from ...steps.jacket import fold as jacket_fold

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document


def begin(reply: "Document") -> "Document":
    return {
        "planned": {
            "caramel_kg": reply["caramel_kg"],
            "pieces": reply["cut"]["pieces"],
            "piece_kg": reply["cut"]["piece_kg"],
            "length_m": reply["pour"]["length_m"],
            "width_m": reply["pour"]["width_m"],
            "bar_height_m": reply["pour"]["bar_height_m"],
        },
        "melt": jacket_fold.melt_opened(reply),
        "cool": cool_fold.opened(reply),
    }
