"""What the batch sheet of clusters has of its own: allergens, fills of the funnel, trays laid and freed."""

from ...core.field_kinds import boolean, many, number, record
from ...core.problems import Problem
from ...steps.common.sheet import MOST_ROWS, instant
from ...steps.deposit.trays import FRESH_BOWL_K
from . import fields

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...steps.common.sheet import Sheet


FILL = {
    "at_ms": instant("when the funnel was filled"),
    "surface_c": number("°C", 0, 150, "infrared reading into it", default=None),
}
TRAY = {
    "laid_at_ms": instant("when it was laid", default=None),
    "second_at_ms": instant("when it had its second deposit", default=None),
    "freed_at_ms": instant("when it came off its paper", default=None),
}
PLANNED_FILL = record(
    {
        "fill_kg": number("kg", 0.001, 20, "one fill of the funnel"),
        "low_c": number("°C", 20, 150, "coolest that the bowl is ready at"),
    },
    "what the plan of clusters has; null: a slab",
    default=None,
)
FIELDS = {
    "fill": PLANNED_FILL,
    "nuts_clear": boolean("whether nut-free work was finished before nuts came out", default=False),
    "under_lots": many(record(fields.UNDER_LOT, "a lot"), 0, 20, "lots of what lies under, as planned", default=[]),
    "fills": many(record(FILL, "a fill"), 0, MOST_ROWS, "fills of the funnel in order", default=[]),
    "trays": many(record(TRAY, "a tray"), 0, MOST_ROWS, "trays in laying order", default=[]),
}


def before_weighing(sheet: "Sheet", request: "Readable") -> None:
    """Allergens checked, the lots of what goes under, and that laid."""
    if request["nuts_clear"]:
        sheet.then("allergens_checked", {})
    for seen, one in enumerate(request["under_lots"]):
        sheet.then("under_lot_named", dict(one, seen=seen))
    if request["fill"] is not None and request["weighed_at_ms"] is not None:
        sheet.then("under_laid", {})


def columns(request: "Readable") -> "list[list[tuple[float, str, str, Document]]]":
    """Fills and trays, each a list of (time, field, event, body) in order."""
    fills = [
        (one["at_ms"], "fills[" + str(row) + "].at_ms", "filled", _filled(request, one))
        for row, one in enumerate(request["fills"])
    ]
    return [fills] + _laid(request)


def hot_until_ms(request: "Readable") -> "Any":
    """Unknown: the funnel is emptied after the last tray."""
    return None


def _filled(request: "Readable", one: "Readable") -> "Document":
    """The body of a fill."""
    fill = request["fill"]
    if fill is None:
        raise Problem("fill", "missing")
    warm_c = fill["low_c"] + FRESH_BOWL_K if one["surface_c"] is None else one["surface_c"]
    return {"kg": fill["fill_kg"], "bulk_c": warm_c}


def _laid(request: "Readable") -> "list[list[tuple[float, str, str, Document]]]":
    """The columns of trays laid, and laid again."""
    first: "list[tuple[float, str, str, Document]]" = []
    second: "list[tuple[float, str, str, Document]]" = []
    for row, one in enumerate(request["trays"]):
        path = "trays[" + str(row) + "]."
        if one["laid_at_ms"] is None:
            raise Problem(path + "laid_at_ms", "missing")
        first.append((one["laid_at_ms"], path + "laid_at_ms", "tray_laid", {}))
        if one["second_at_ms"] is not None:
            if one["second_at_ms"] < one["laid_at_ms"]:
                raise Problem(path + "second_at_ms", "out_of_order", one["second_at_ms"], low=one["laid_at_ms"])
            second.append((one["second_at_ms"], path + "second_at_ms", "second_laid", {}))
    if first and not request["fills"]:
        raise Problem("fills[0].at_ms", "missing")
    if first and request["fills"][0]["at_ms"] > first[0][0]:
        raise Problem(first[0][1], "out_of_order", first[0][0], low=request["fills"][0]["at_ms"])
    return [first, second]


def after_melting(sheet: "Sheet", request: "Readable") -> None:
    """The funnel is emptied after the last tray; then they come free one by one."""
    trays = request["trays"]
    if trays:
        sheet.then("funnel_emptied", {})
    for row, one in enumerate(trays):
        if one["freed_at_ms"] is not None:
            sheet.add("tray_freed", "trays[" + str(row) + "].freed_at_ms", one["freed_at_ms"], {"free": True})
    if any(one["freed_at_ms"] is not None for one in trays):
        sheet.then("separated", {})
