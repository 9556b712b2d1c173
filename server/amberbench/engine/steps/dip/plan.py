"""Dipping the pieces of a batch: chocolate, outside size, and how many before they are marked or salted."""

from ..coat import plan as coat
from . import salt_interval
from .fields import AT_BENCH, COATED_AS

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable


def plan(
    dip: "Readable", pieces: int, piece: "Readable | None", centre_kg: float, material: str, prebottom_m2: float
) -> "Document":
    """What dipping takes, as `fields.DIP_REPLY`.

    `dip`: a checked `fields.DIP`; `piece` {length_m, width_m, height_m} of an undipped one, or null for a cluster;
    `centre_kg` its weight; `prebottom_m2` the area that gets the pre-bottom, or null. Raises as chocolate.coating.
    """
    wanted: "Any" = {name: dip[name] for name in COATED_AS}
    wanted.update(pieces=pieces, piece=piece, centre_kg=centre_kg, material=material, prebottom_m2=prebottom_m2)
    reply = coat.plan(wanted)
    reply.update({name: dip[name] for name in AT_BENCH})
    salting: "Any" = {
        "dip_s": dip["dip_s"],
        "set_s": dip["set_s"],
        "salt_each_kg": dip["salt_each_kg"],
        "pieces": pieces,
    }
    reply.update(salt_interval.salting(salting))
    return reply
