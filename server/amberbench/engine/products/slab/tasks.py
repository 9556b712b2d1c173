"""What a slab asks of a day: melt and pour, cut once it is cool, dip or wrap, count."""

from .. import hands

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document

HEIGHT_M = 0.01  # of a product whose height nobody has said (assumed)
COOL_S = 3 * 3600.0  # of a plan that does not say (assumed)
CUT_S = 600.0  # loosening, turning over, scoring (assumed)


def tasks(plan: "Any", run: "Any") -> "list[Document]":
    """The tasks of a slab by its plan document and its run, in order."""
    pieces = hands.figure(plan, "reply", "cut", "pieces") or 0.0
    melt_s = hands.figure(plan, "reply", "melt", "total_s") or hands.figure(plan, "reply", "jacket", "seconds_s")
    refitted_s = hands.figure(run, "cool", "ready_s")
    cool_s = refitted_s or hands.figure(plan, "reply", "cool", "ready_s") or COOL_S
    poured = ("set_up", "weigh", "lot", "melt")
    kept = [{"name": name, "until": "cut"} for name in ("bars", "base")]
    oven = [] if hands.figure(plan, "reply", "jacket", "seconds_s") else ["oven"]
    return [
        hands.task(
            "melt",
            poured,
            hands.SET_UP_S + (melt_s or hands.MELT_S),
            waits="cool",
            wait_s=min(hands.LONGEST_S * 2, cool_s),
            uses=oven + ["bowl"],
            keeps=kept,
        ),
        hands.task(
            "cut", ("loosen", "prebottom", "flip", "score", "cut"), CUT_S + hands.EACH_S * pieces, uses=["base"]
        ),
    ] + hands.finished(plan, pieces)


def piece_kg(row: "Any", density: float) -> float | None:
    """Caramel in a centre (kg) of a product of the shop, or None: its sizes are not known."""
    sizes = [hands.figure(row, "piece_" + name + "_m") for name in ("length", "width")]
    height_m = hands.figure(row, "slab_height_m") or HEIGHT_M
    return sizes[0] * sizes[1] * height_m * density if sizes[0] and sizes[1] else None


def most_kg(row: "Any", shop: "Any", density: float) -> float:
    """The caramel (kg) for which the largest table has room at a product's height."""
    areas = [
        (hands.figure(one, "max_length_m") or 0.0) * (hands.figure(one, "max_width_m") or 0.0)
        for one in hands.rows(shop, "tables")
    ]
    known = [area for area in areas if area > 0.0]
    return max(known) * (hands.figure(row, "slab_height_m") or HEIGHT_M) * density if known else hands.MOST_KG
