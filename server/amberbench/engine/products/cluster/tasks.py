"""What clusters ask of a day: melt and lay, part them once they are free, dip, count."""

from ...core.check import figure
from .. import hands

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document

UNDER_TRAY_S = 180.0  # to lay paper and nuts on a tray (assumed)
FREE_S = 1800.0  # of a plan that does not say (assumed)


def tasks(plan: "Any", run: "Any") -> "list[Document]":
    """The tasks of clusters by their plan document and their run, in order."""
    pieces = figure(plan, "reply", "clusters") or 0.0
    under_s = UNDER_TRAY_S * (figure(plan, "reply", "trays") or 1.0)
    bench_s = figure(plan, "reply", "bench_s") or hands.MELT_S
    free_s = figure(plan, "reply", "free", "from_s") or FREE_S
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
