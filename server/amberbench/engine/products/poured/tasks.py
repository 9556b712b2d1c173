"""What a kind poured between bars asks of a day: melt and pour, cut once it is cool, dip or wrap, count."""

from ...core.check import figure
from .. import hands

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from ...core.annotations import Document
    from ..kind import Kind

COOL_S = 3 * 3600.0  # of a plan that does not say (assumed)
CUT_S = 600.0  # loosening, turning over, scoring, rolling (assumed)


def tasks_of(kind: "Kind") -> "Callable[[Any, Any], list[Document]]":
    """The function that gives the tasks of such a kind by a plan document and a run, in order."""
    steps = [step for step, _ in kind.course]
    after_cooling = tuple(steps[steps.index("cool") + 1 : steps.index("cut") + 1])
    return lambda plan, run: _tasks(plan, run, after_cooling)


def _tasks(plan: "Any", run: "Any", cutting: tuple[str, ...]) -> "list[Document]":
    pieces = figure(plan, "reply", "cut", "pieces") or 0.0
    melt_s = figure(plan, "reply", "melt", "total_s") or figure(plan, "reply", "jacket", "seconds_s")
    refitted_s = figure(run, "cool", "ready_s")
    cool_s = refitted_s or figure(plan, "reply", "cool", "ready_s") or COOL_S
    poured = ("set_up", "weigh", "lot", "melt")
    kept = [{"name": name, "until": "cut"} for name in ("bars", "base")]
    oven = [] if figure(plan, "reply", "jacket", "seconds_s") else ["oven"]
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
        hands.task("cut", cutting, CUT_S + hands.EACH_S * pieces, uses=["base"]),
    ] + hands.finished(plan, pieces)
