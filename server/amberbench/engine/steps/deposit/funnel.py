"""A funnel of caramel that cools while it empties: how long a fill stays in its window.

The fill is a cone, 60° at the tip, and keeps this shape as it sinks. It cools as the ball that fits into it, which has
the same volume over surface, with a tenth more resistance inside: within 3 % at the falls that matter here.
"""

import math

from ...core.check import is_above
from ...core.problems import Problem
from ...physics import materials
from ...physics.sphere import CoolingSphere

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Readable
    from ...types import DepositFillReply, DepositFillRequest


TIP_DEG = 60.0  # of the funnel, seen from the side; assumed
NOTHING_KG = 1e-6  # what is left of subtracting all that ran out has no warmth of its own (rounding)
CONE_INSIDE = 1.1  # resistance of a cone's inside over that of its ball, by fine grids of emptying cones of 60°


def ball_m(volume_m3: float) -> float:
    """Radius in m of the sphere with the same volume-to-surface ratio as a cone of this volume, its top included."""
    half = math.radians(0.5 * TIP_DEG)
    top_m = (3.0 * math.tan(half) * volume_m3 / math.pi) ** (1.0 / 3.0)
    result: float = top_m * (1.0 - math.sin(half)) / math.cos(half)
    return result


def seconds(fill: "Readable", now_c: float, fill_kg: float) -> float:
    """Time in s until a fill of fill_kg at now_c, emptying at fill["pace_kg_s"], leaves its window or is empty.

    fill: as `fields.FILL`.
    """
    low_c, room_c, empty_s = fill["window_low_c"], fill["room_c"], fill_kg / fill["pace_kg_s"]
    if now_c <= low_c:
        return 0.0
    if low_c <= room_c:
        result: float = empty_s
        return result
    ball, fourier_s = _ball(fill, 0.5 * (now_c + low_c), fill_kg)
    found = ball.fourier_at((low_c - room_c) / (now_c - room_c))
    return empty_s if found is None else found * fourier_s


def warm_s(fill: "Readable", now_c: float, fill_kg: float) -> float:
    """Time in s that a fill stays in its window, emptying at fill["pace_kg_s"]: no shorter in a larger funnel and no
    longer with a quicker hand. One that is empty before: as if it emptied just so slowly that it is empty then."""
    low_c, room_c = fill["window_low_c"], fill["room_c"]
    if now_c <= low_c or low_c <= room_c:
        return seconds(fill, now_c, fill_kg)
    ball, fourier_s = _ball(fill, 0.5 * (now_c + low_c), fill_kg)
    excess = (low_c - room_c) / (now_c - room_c)
    found = ball.fourier_at(excess)
    return fourier_s * (ball.empty_when_at(excess) if found is None else found)


def cooled_c(fill: "Readable", now_c: float, fill_kg: float, seconds_s: float) -> float:
    """Mean temperature in °C of a fill after a time in s, emptying as in `seconds`."""
    if seconds_s <= 0.0 or fill_kg < NOTHING_KG or now_c <= fill["room_c"]:
        return now_c
    ball, fourier_s = _ball(fill, now_c, fill_kg)
    result: float = fill["room_c"] + (now_c - fill["room_c"]) * ball.mean_excess(
        min(seconds_s / fourier_s, ball.empties)
    )
    return result


def _ball(fill: "Readable", middle_c: float, fill_kg: float) -> "tuple[CoolingSphere, float]":
    """(the ball that stands for a fill, s for its Fourier number to rise by 1), caramel as at middle_c."""
    material = materials.resolved(fill["material"])
    density, k = materials.density(material, middle_c), materials.conductivity(material, middle_c)
    radius_m = ball_m(fill_kg / density)
    fourier_s = radius_m * radius_m * density * materials.heat_capacity(material, middle_c) / k
    empty_s = fill_kg / fill["pace_kg_s"]
    return CoolingSphere(fill["h_w_m2k"] * radius_m / k, empty_s / fourier_s, CONE_INSIDE), fourier_s


def fill(request: "DepositFillRequest") -> "DepositFillReply":
    """How long the fill in the funnel stays warm enough, from a reading.

    Request: h_w_m2k (W/(m² K)), material, room_c (°C), window_low_c (°C), limit_c (°C), pace_kg_s (kg/s), now_c (°C,
    stirred or in the middle), fill_kg (kg).
    Reply: seconds_s (s) until it leaves the window at its low end, or is empty before that; 0 when it is out already.
    Raises: Problem funnel_too_hot (now_c above limit_c), unknown_material, composition_sum.
    Relation: mean of a ball in air, exact series (incropera), with the ratio of volume to surface of a cone of 60°,
    shrinking in shape as it runs out at pace_kg_s; the fill starts at one temperature.
    Source: incropera, choi_okos_1986; assumed for h_w_m2k and the cone.
    """
    if is_above(request["now_c"], request["limit_c"], "°C"):
        raise Problem("now_c", "funnel_too_hot", request["now_c"], high=request["limit_c"], unit="°C")
    return {"seconds_s": seconds(request, request["now_c"], request["fill_kg"])}
