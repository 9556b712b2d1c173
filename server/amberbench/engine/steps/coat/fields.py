"""The fields of coating."""

from ...core.field_kinds import choice, integer, number, record, together
from ...core.fields import BASIS, INPUTS, WARNINGS
from ...physics.fields import CHOCOLATE, MATERIAL

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document


def _size(most_m: float, meaning: str, **more: "Any") -> "Document":
    return record(
        {
            "length_m": number("m", 0.002, most_m, "length"),
            "width_m": number("m", 0.002, most_m, "width"),
            "height_m": number("m", 0.002, most_m, "height"),
        },
        meaning,
        **more,
    )


COATING = together(
    {
        "piece": _size(0.3, "one undipped centre; null: a cluster, coated by pick-up", default=None),
        "centre_kg": number("kg", 0.0005, 1, "weight of one undipped piece; null: by size and material", default=None),
        "pickup": number("", 0.01, 5, "weighed: chocolate taken up over the undipped weight", default=None),
        "thickness_m": record(
            {
                "bottom": number("m", 0, 0.01, "below"),
                "side": number("m", 0, 0.01, "on each side"),
                "top": number("m", 0, 0.01, "above"),
            },
            "thickness of the coating; null: that of the method",
            default=None,
        ),
        "method": choice(
            ("fork", "enrober", "enrober_with_bottomer"),
            "how the pieces are coated",
            default="fork",
            basis="assumed",
            source="assumed",
        ),
        "prebottom_m": number(
            "m", 0, 0.005, "thickness of the pre-bottom; 0: none", default=0.0, basis="assumed", source="assumed"
        ),
        "prebottom_m2": number(
            "m²", 0.0001, 25, "area that gets the pre-bottom, a whole slab; null: the centres' undersides", default=None
        ),
        "pieces": integer(1, 100000, "pieces to coat"),
        "chocolate": CHOCOLATE,
        "material": MATERIAL,
        "bowl_reserve_kg": number(
            "kg",
            0,
            20,
            "chocolate that must stay in the bowl for the last piece to be dipped",
            default=0.3,
            basis="assumed",
            source="assumed",
            measure_by="chocolate_left",
        ),
        "bowl_width_m": number(
            "m",
            0.05,
            1,
            "inside width of the bowl that the pieces are dipped in; null: its depth is not counted",
            default=None,
        ),
        "drip_share": number(
            "",
            0,
            0.5,
            "what drips off or runs into a foot, over the coating",
            default=0.05,
            basis="assumed",
            source="assumed",
            measure_by="chocolate_left",
        ),
        "pocket_m": _size(0.5, "inside of the box's pocket; null: not compared", default=None),
    },
    BASIS,
)
COATING_REPLY = together(
    {
        "per_piece_kg": number("kg", 0, 1e4, "coating of one piece, without its pre-bottom"),
        "share": number("", 0, 1, "share of chocolate, pre-bottom included, in the finished piece"),
        "piece_kg": number("kg", 0, 1e5, "weight of a finished piece"),
        "prebottom_kg": number("kg", 0, 1e5, "chocolate for the pre-bottom"),
        "coating_kg": number("kg", 0, 1e9, "chocolate on all pieces, without the pre-bottom"),
        "drip_kg": number("kg", 0, 1e9, "chocolate that drips off or runs into a foot"),
        "depth_m": number("m", 0, 1, "how deep the last piece is dipped; null: width or size not known", default=None),
        "reserve_kg": number("kg", 0, 1e4, "chocolate that stays in the bowl: the reserve, or what is so deep"),
        "total_kg": number("kg", 0, 1e9, "chocolate to have: coating, pre-bottom, drips, reserve"),
        "outside_m": _size(1e5, "the finished piece; null when its size is not known", default=None),
        "warnings": WARNINGS,
    },
    INPUTS,
)
FUNCTIONS = {
    "chocolate.coating": {"request": COATING, "reply": COATING_REPLY},
}
