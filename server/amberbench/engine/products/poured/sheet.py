"""What the batch sheet of a kind poured between bars has of its own: the pour, looks at the slab, the cut."""

from ...core.field_kinds import boolean, many, number, record
from ...core.problems import Problem
from ...steps.common.sheet import MOST_ROWS, instant

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Readable
    from ...steps.common.sheet import Sheet


FEEL = {
    "at_ms": instant("when it was read or pressed"),
    "surface_c": number("°C", -10, 150, "infrared reading of the slab", default=None),
    "firm": boolean("whether the middle felt firm enough to cut", default=None),
}
FIELDS = {
    "poured_at_ms": instant("when the slab was poured", default=None),
    "slab": many(record(FEEL, "a look at the slab"), 0, MOST_ROWS, "readings and touch tests in order", default=[]),
    "cut_at_ms": instant("when it was cut", default=None),
}


def before_weighing(sheet: "Sheet", request: "Readable") -> None:
    """Nothing but what every batch has."""


def columns(request: "Readable") -> "list[Any]":
    """What happens while the caramel is hot, besides bursts: nothing."""
    return []


def hot_until_ms(request: "Readable") -> float:
    """When the melt was over (ms), or null."""
    result: float = request["poured_at_ms"]
    return result


def after_melting(sheet: "Sheet", request: "Readable") -> None:
    """The pour, looks at the slab, the cut."""
    if request["poured_at_ms"] is not None:
        sheet.add("poured", "poured_at_ms", request["poured_at_ms"])
    elif request["slab"]:
        raise Problem("poured_at_ms", "needs_pour")
    for index, one in enumerate(request["slab"]):
        _look(sheet, "slab[" + str(index) + "]", one)
    if request["cut_at_ms"] is not None:
        sheet.add("cut", "cut_at_ms", request["cut_at_ms"])


def _look(sheet: "Sheet", path: str, one: "Readable") -> None:
    """A reading of the slab, a touch test, or both at once."""
    if one["surface_c"] is None and one["firm"] is None:
        raise Problem(path + ".surface_c", "missing")
    sheet.mark(path + ".at_ms", one["at_ms"])
    if one["surface_c"] is not None:
        sheet.then("slab_read", {"surface_c": one["surface_c"]})
    if one["firm"] is not None:
        sheet.then("touched", {"firm": one["firm"]})
