"""What clusters ask of a day: melt and lay, part them once they are free, dip, count."""

from .. import hands

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document

UNDER_TRAY_S = 180.0  # to lay paper and nuts on a tray (assumed)
FREE_S = 1800.0  # of a plan that does not say (assumed)


def tasks(plan: "Any", run: "Any") -> "list[Document]":
    """The tasks of clusters by their plan document and their run, in order."""
    pieces = hands.figure(plan, "reply", "clusters") or 0.0
    under_s = UNDER_TRAY_S * (hands.figure(plan, "reply", "trays") or 1.0)
    bench_s = hands.figure(plan, "reply", "bench_s") or hands.MELT_S
    free_s = hands.figure(plan, "reply", "free", "from_s") or FREE_S
    laid = ("set_up", "allergens", "under_lot", "under", "weigh", "lot", "melt")
    return [
        hands.task(
            "lay",
            laid,
            hands.SET_UP_S + under_s + bench_s,
            waits="cool_tray",
            wait_s=min(hands.LONGEST_S, free_s),
            uses=["oven", "bowl"],
        ),
        hands.task("part", ("separate",), hands.EACH_S * pieces),
    ] + hands.finished(plan, pieces)


def piece_kg(row: "Any", density: float) -> float | None:
    """Caramel in a cluster (kg) of a product of the shop, or None: its deposit is not known."""
    first_kg = hands.figure(row, "cluster", "deposit_kg")
    return first_kg + (hands.figure(row, "cluster", "second_kg") or 0.0) if first_kg else None


def most_kg(row: "Any", shop: "Any", density: float) -> float:
    """Trays are laid one after the other: none is too many."""
    return hands.MOST_KG
