"""After how many pieces to salt, so that the coat still takes it."""

import math

from ...core.check import constant

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document
    from ...types import ChocolateSaltingRequest


# Salting one piece, and the share of the setting time within which the last of them is to have its salt: a coat takes
# salt less and less before it takes none (both assumed).
SALT_S, IN_TIME_SHARE = 2.0, 0.8


def salting(request: "ChocolateSaltingRequest") -> "Document":
    """How many pieces may be dipped before the first of them sets too far: salt every so many.

    Request: dip_s (s, from piece to piece), set_s (s), salt_each_kg (kg) or null, pieces or null, basis, batches.
    Reply: every, salt_kg (kg) or null, inputs.
    Raises: Problem too_low or too_high (salt of nothing, or more than 2 g a piece).
    Relation: floor(0.8 · set_s / (dip_s + 2 s)), at least 1: so many are dipped, then all of them salted, before the
    first has set for more than 80 % of its time. A hand slower than the chocolate salts each piece as it is set down.
    Source: practice for set_s (a strip begins to set within two to three minutes); assumed for 2 s and 80 %.
    """
    salt = None
    if request["salt_each_kg"] is not None and request["pieces"] is not None:
        salt = request["salt_each_kg"] * request["pieces"]
    every = math.floor(IN_TIME_SHARE * request["set_s"] / (request["dip_s"] + SALT_S) + 1e-9)
    rows = [constant("salting.salt_s", SALT_S, "s"), constant("salting.in_time_share", IN_TIME_SHARE, "")]
    return {"every": max(1, every), "salt_kg": salt, "inputs": rows}
