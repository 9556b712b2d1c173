"""What a bowl of chocolate asks of a day: melt and temper, and clear away once nobody dips any more."""

from ...core.check import figure
from .. import hands

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document


def tasks(plan: "Any", run: "Any") -> "list[Document]":
    """The tasks of a bowl by its plan document and its run, in order; the dipping is a task of what is dipped."""
    tempered = ("set_up", "weigh", "lot", "melt_bowl", "temper_check")
    hold_s = min(hands.SAME_DAY_S, figure(plan, "reply", "hold", "seconds_s") or 0.0)
    return [
        hands.task("temper", tempered, hands.TEMPER_S, waits="use", wait_s=hold_s, uses=["oven"]),
        hands.task("clear", ("weigh_out", "leftover", "close"), hands.COUNT_S),
    ]
