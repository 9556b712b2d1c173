"""Heat from a face to the air and the room: natural convection from a horizontal plate, radiation, a fan, or given.

Relations: Nu = 0.54 Ra^¼ (10⁴–10⁷) and 0.15 Ra^⅓ (10⁷–10¹¹) for a hot side up, 0.27 Ra^¼ (10⁵–10¹⁰) for a hot side
down, length A/P (source mcadams); a cold plate swaps the two. Air properties at the film temperature from the values
printed at 30 and 60 °C (source cengel_air). Radiation to surroundings at air temperature, linear in the difference.
Correlations of this kind differ by 15 % in the total coefficient: that is what the loss factor is for.
"""

from math import sqrt

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document


STEFAN_BOLTZMANN = 5.670374419e-8  # W/(m² K⁴)
KELVIN = 273.15

# Convection under a table fan, W/(m² K). A plate 0.35 m long in 3 m/s has 11 by the laminar plate relation
# (0.664 Re^½ Pr^⅓); a fan's stirred air gives more. Assumed.
FAN_W_M2K = 15.0

# g·β·Pr/ν² in 1/(m³ K) and the conductivity of air in W/(m K): (30 °C, 60 °C). Source: cengel_air.
RAYLEIGH_30, RAYLEIGH_60 = 9.113e7, 5.900e7
AIR_30, AIR_60 = 0.02588, 0.02808


def plate_length_m(length_m: float, width_m: float) -> float:
    """Area over perimeter of a rectangle in m: the length in the plate relations."""
    return 0.5 * length_m * width_m / (length_m + width_m)


def face(setting: "Document | str", emissivity: float, plate_m: float, up: bool) -> tuple[str, float, float, bool]:
    """A face as (kind, given or emissivity, plate length in m, whether it faces up), for `coefficient`."""
    if isinstance(setting, dict):
        return ("given", float(setting["h_w_m2k"]), plate_m, up)
    if setting == "insulated":
        return ("given", 0.0, plate_m, up)
    return (setting, emissivity, plate_m, up)


def coefficient(face_is: tuple[str, float, float, bool], surface_c: float, air_c: float) -> float:
    """Heat-transfer coefficient in W/(m² K) of a face at surface_c in air at air_c, radiation included."""
    kind, emissivity, plate_m, up = face_is
    if kind == "given":
        return emissivity
    convection = FAN_W_M2K if kind == "fan" else natural_convection(plate_m, surface_c, air_c, up)
    return convection + radiation(emissivity, surface_c, air_c)


def radiation(emissivity: float, surface_c: float, air_c: float) -> float:
    """Radiation in W/(m² K) of a face at surface_c to surroundings at air_c."""
    hot, cold = surface_c + KELVIN, air_c + KELVIN
    return emissivity * STEFAN_BOLTZMANN * (hot + cold) * (hot * hot + cold * cold)


def natural_convection(plate_m: float, surface_c: float, air_c: float, up: bool) -> float:
    """Natural convection in W/(m² K) of a horizontal plate of length A/P = plate_m in m."""
    warmer = surface_c - air_c
    share = (0.5 * (surface_c + air_c) - 30.0) / 30.0
    air = AIR_30 + share * (AIR_60 - AIR_30)
    # Film temperatures far outside 20–60 °C (a chilled stone) keep the factor positive.
    factor = RAYLEIGH_30 * (RAYLEIGH_60 / RAYLEIGH_30) ** share
    rayleigh = factor * abs(warmer) * plate_m * plate_m * plate_m
    if (warmer > 0.0) == up:
        nusselt = 0.54 * sqrt(sqrt(rayleigh)) if rayleigh < 1e7 else 0.15 * rayleigh ** (1.0 / 3.0)
    else:
        nusselt = 0.27 * sqrt(sqrt(rayleigh))
    return nusselt * air / plate_m
