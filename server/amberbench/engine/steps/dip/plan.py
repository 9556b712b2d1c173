"""Dipping the pieces of a batch: chocolate, outside size, salt in time, and how often the bowl is warmed meanwhile."""

import math

from ..coat import plan as coat
from ..temper import plan as temper
from . import salt_interval
from .fields import AT_BENCH, COATED_AS

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable


LEAST_BOWL_KG = 0.05  # an emptier bowl is not reckoned with (assumed)


def plan(
    dip: "Readable",
    pieces: int,
    piece: "Readable | None",
    centre_kg: float,
    material: str,
    prebottom_m2: float,
    room_c: float,
) -> "Document":
    """What dipping takes, as `fields.DIP_REPLY`.

    `dip`: a checked `fields.DIP`; `piece` {length_m, width_m, height_m} of an undipped one, or null for a cluster;
    `centre_kg` its weight; `prebottom_m2` the area that gets the pre-bottom, or null; `room_c` in °C. Raises as
    chocolate.coating.
    """
    wanted: "Any" = {name: dip[name] for name in COATED_AS}
    wanted.update(pieces=pieces, piece=piece, centre_kg=centre_kg, material=material, prebottom_m2=prebottom_m2)
    reply: "Any" = coat.plan(wanted)
    reply.update({name: dip[name] for name in AT_BENCH})
    salting: "Any" = {
        "dip_s": dip["dip_s"],
        "set_s": dip["set_s"],
        "salt_each_kg": dip["salt_each_kg"],
        "pieces": pieces,
    }
    salted = salt_interval.salting(salting)
    inputs = reply["inputs"] + salted["inputs"]
    reply.update(salted)
    reply["inputs"] = inputs
    reply.update(_kept_warm(dip, pieces, reply, room_c))
    dipped: "Document" = reply
    return dipped


def _kept_warm(dip: "Readable", pieces: int, coated: "Readable", room_c: float) -> "Document":
    """How long dipping takes, how long a full bowl stays in its range, and how often it is warmed until all are dipped.

    The bowl empties evenly; one cycle takes as long as chocolate of its kind falls from the upper to the lower end of
    its working range, by Simpson's rule over the emptying. An enrober keeps its own temperature.
    """
    marked = dip["salt_each_kg"] or dip["top_mark"]
    dip_all_s = pieces * (dip["dip_s"] + (salt_interval.SALT_S if marked else 0.0))
    bowl: "Any" = {"chocolate": dip["chocolate"], "targets": None, "bowl": None, "room_c": room_c}
    line = temper.lines(bowl)
    if dip["method"] != "fork" or room_c >= line["work_low_c"]:
        return {"dip_all_s": dip_all_s, "holds_s": None, "rewarms": 0}

    def holds_s(share: float) -> float:
        kg = coated["reserve_kg"] + share * (coated["coating_kg"] + coated["drip_kg"])
        held = dict(bowl, mass_kg=max(kg, LEAST_BOWL_KG))
        return temper.cooling_between(held, line["work_high_c"], line["work_low_c"])[0]

    full_s = holds_s(1.0)
    cycles = dip_all_s * (1.0 / full_s + 4.0 / holds_s(0.5) + 1.0 / holds_s(0.0)) / 6.0
    return {"dip_all_s": dip_all_s, "holds_s": full_s, "rewarms": max(0, math.ceil(cycles - 1e-9) - 1)}
