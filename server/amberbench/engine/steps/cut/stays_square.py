"""Whether a cut centre stays square until it is dipped, in the room it waits in."""

from ...core.check import constant
from ...physics import materials, slump

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from ...types import Input, Warning


SQUARE_LOST = 0.05  # no more than this of its height and it is still square, as in a stand-up test; assumed
# From the cut to the first dip, and as long as any centre waits that is not dipped; assumed.
BEFORE_DIPPING_S, UNDIPPED_S = 600.0, 3600.0
# What a verdict says without the heights that it came from: at its line after a day at 21 °C, for a cube of 20 mm.
STIFFER_K = {"firm": 6.9, "borderline": 4.1}


def reckoned(
    request: "Readable", height_m: float, dip: "Readable | None"
) -> "tuple[Document | None, list[Warning], list[Input]]":
    """({lost_fraction, seconds_s, warmest_c} of the centre that waits longest, warnings, input rows).

    request: room_c (°C), material, stiffer_k (K) or null, firmness or null; dip: the reply of dipping, or null. None
    where nothing is known of the caramel's water.
    """
    material = materials.resolved(request["material"])
    glass = slump.glass_of(material)
    if glass is None:
        return None, [], []
    stiffer = request["stiffer_k"]
    if stiffer is None:
        stiffer = STIFFER_K.get(request["firmness"], 0.0)
    seconds_s = UNDIPPED_S if dip is None else BEFORE_DIPPING_S + dip["dip_all_s"]
    lost = slump.lost_in_room(material, glass, stiffer, height_m, seconds_s, request["room_c"])
    warmest_c = slump.warmest_c(material, glass, stiffer, height_m, seconds_s, SQUARE_LOST)
    warnings: "list[Warning]" = []
    if lost > SQUARE_LOST:
        values = {"lost_percent": float(round(100.0 * lost)), "wait_s": seconds_s, "warmest_c": warmest_c}
        warnings.append({"code": "centres_sink" if dip is None else "centres_sink_before_dip", "values": values})
    rows = [constant("flow.square_lost", SQUARE_LOST, "")]
    if request["stiffer_k"] is None:
        rows.append(constant("flow.stiffer_k", stiffer, "K", measure_by="stand_up_test"))
    return {"lost_fraction": lost, "seconds_s": seconds_s, "warmest_c": warmest_c}, warnings, rows
