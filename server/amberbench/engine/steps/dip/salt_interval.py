"""After how many pieces to salt, so that the coat still takes it."""

import math

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document
    from ...types import ChocolateSaltingRequest


def salting(request: "ChocolateSaltingRequest") -> "Document":
    """How many pieces may be dipped before the first of them has set: salt every so many.

    Request: dip_s (s, from piece to piece), set_s (s), salt_each_kg (kg) or null, pieces or null, basis, batches.
    Reply: every, salt_kg (kg) or null, inputs.
    Raises: Problem too_low or too_high (salt of nothing, or more than 2 g a piece).
    Relation: floor(set_s / dip_s), at least 1: a hand slower than the chocolate salts each piece as it is set down.
    Source: practice for set_s (a strip begins to set within two to three minutes).
    """
    salt = None
    if request["salt_each_kg"] is not None and request["pieces"] is not None:
        salt = request["salt_each_kg"] * request["pieces"]
    return {"every": max(1, math.floor(request["set_s"] / request["dip_s"] + 1e-9)), "salt_kg": salt}
