"""Dew point and vapour of the room's air."""

import math

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..types import RoomDewPointReply, RoomDewPointRequest


# Magnus form with the constants of the World Meteorological Organization, over water, −40 to 50 °C.
MAGNUS, MAGNUS_C = 17.62, 243.12


def log_vapour_pressure(temp_c: float) -> float:
    """Logarithm of the saturation pressure of water at a temperature in °C, over that at 0 °C."""
    return MAGNUS * temp_c / (MAGNUS_C + temp_c)


def dew_c(temp_c: float, humidity: float) -> float:
    """Dew point in °C of air at temp_c (°C) and a relative humidity (fraction)."""
    gamma = math.log(humidity) + log_vapour_pressure(temp_c)
    return MAGNUS_C * gamma / (MAGNUS - gamma)


def dew_point(request: "RoomDewPointRequest") -> "RoomDewPointReply":
    """Dew point of the room's air: what is colder than this sweats.

    Request: temp_c (°C), humidity (fraction).
    Reply: dew_point_c (°C).
    Raises: Problem too_low or too_high (humidity outside 0.01 to 1, temp_c outside −40 to 50 °C).
    Relation: γ = ln(humidity) + 17.62 · T / (243.12 + T); 243.12 · γ / (17.62 − γ). Within 0.4 % of saturation
    pressure over water.
    Example: 22 °C and 55 % give 12.5 °C.
    Source: wmo_magnus.
    """
    return {"dew_point_c": dew_c(request["temp_c"], request["humidity"])}
