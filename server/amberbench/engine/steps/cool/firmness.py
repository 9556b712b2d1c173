"""How much colder than a firm caramel a soft one must be to be cut or to take a second deposit."""

from ...core.check import constant

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import Input, Warning


# How much colder a caramel is when it is as stiff as a firm one: cut, and laid upon, that much later (assumed, K).
LOWEST_READY_C = 5.0
SOFTER_K = {"firm": 0.0, "borderline": 1.0, "slumps": 2.0}


def ready_c(request: "Readable") -> float:
    """The hottest point (°C) at which caramel of a request is ready to cut and comes off its paper: its target_c, for
    an ordinary firm caramel where nobody said that of this one."""
    target_c: float = request["target_c"]
    # What a shop calls ready is said of its own caramel.
    if request["basis"].get("target_c", "assumed") != "assumed":
        return target_c
    return max(LOWEST_READY_C, target_c - softness(request["firmness"], request["squeeze"])[0])


def softness(firmness: str | None, squeeze: str | None) -> "tuple[float, list[Warning], list[Input]]":
    """(K colder than a firm caramel, warnings, input rows) by what tests said of it; each may be null.

    A stand-up test decides; without one a piece that felt soft at delivery counts as borderline.
    """
    verdict = firmness or ("borderline" if squeeze == "soft" else "firm")
    softer_k = SOFTER_K[verdict]
    warnings: "list[Warning]" = []
    if softer_k > 0.0:
        warnings.append({"code": verdict + "_caramel", "values": {"softer_k": softer_k}})
    if squeeze == "brittle":
        warnings.append({"code": "brittle_caramel", "values": {}})
    return softer_k, warnings, [constant("flow.softer_k", softer_k, "K")] if softer_k > 0.0 else []
