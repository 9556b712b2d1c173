"""The room's air: dew point, and what temperature and humidity do to chocolate and caramel."""

import math

from .check import constant
from .cool import COLD_ROOM_C

# Magnus form with the constants of the World Meteorological Organization, over water, −40 to 50 °C.
MAGNUS, MAGNUS_C = 17.62, 243.12
# Humidity at the surface from which sugar dissolves and blooms: dark 82–85 %, milk 78 % (read in a guide for makers;
# another trade page says 68 %); white taken as milk.
SUGAR_BLOOM = {"dark_chocolate": 0.82, "milk_chocolate": 0.78, "white_chocolate": 0.78}
# Common practice, no published source: air for coating at most 22 °C and 55 %; centres at 21 to 26 °C.
HUMID, SETTING_C = 0.55, 22.0
CENTRE_LOW_C, CENTRE_HIGH_C = 21.0, 26.0
SOFT_C = 24.0  # from memory: caramel cuts cleanly at 18 to 24 °C
FAT_BLOOM_C = 24.0  # from memory: storage or cycling above about 24 to 26 °C


def vapour(temp_c):
    """Logarithm of the saturation pressure of water at a temperature in °C, over that at 0 °C."""
    return MAGNUS * temp_c / (MAGNUS_C + temp_c)


def dew_c(temp_c, humidity):
    """Dew point in °C of air at temp_c (°C) and a relative humidity (fraction)."""
    gamma = math.log(humidity) + vapour(temp_c)
    return MAGNUS_C * gamma / (MAGNUS - gamma)


def dew_point(request):
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


def advise(request):
    """Dew point of the room, and what its air will do to chocolate, centres and caramel.

    Request: room_c (°C), humidity (fraction), surface_c (°C, coldest surface in the air) or null, centre_c (°C) or
    null, chocolate, basis, batches.
    Reply: dew_point_c (°C), warnings (code, values; what to do is in the sentence), inputs.
    Warnings: condensation (surface_c, dew_point_c), sugar_bloom (humidity_percent, most_percent), humid_room
    (humidity_percent, most_percent), fat_bloom (room_c, most_c), slow_setting (room_c, most_c), soft_caramel (room_c),
    cold_room (room_c), cold_centres (centre_c, low_c), warm_centres (centre_c, high_c).
    Raises: Problem too_low or too_high (humidity outside 0.01 to 1).
    Relation: humidity at a surface is the room's vapour over saturation at the surface, by the Magnus form; it sweats
    at 1. Lines by chocolate and practice.
    Source: wmo_magnus for dew point and humidity; practice for the lines of sugar bloom, setting and centres; memory
    for fat bloom and soft caramel; assumed for a cold room.
    """
    room_c = request["room_c"]
    dew = dew_c(room_c, request["humidity"])
    surfaces = [one for one in (request["surface_c"], request["centre_c"]) if one is not None]
    coldest_c = min(surfaces + [room_c])
    return {
        "dew_point_c": dew,
        "warnings": _air(request, dew, coldest_c) + _warmth(room_c) + _centres(request["centre_c"]),
        "inputs": [
            constant("room.sugar_bloom", SUGAR_BLOOM[request["chocolate"]], "", "practice"),
            constant("room.humid", HUMID, "", "practice"),
            constant("room.setting_c", SETTING_C, "°C", "practice"),
            constant("room.fat_bloom_c", FAT_BLOOM_C, "°C", "memory"),
            constant("room.soft_c", SOFT_C, "°C", "memory"),
            constant("room.cold_room_c", COLD_ROOM_C, "°C"),
            constant("room.centre_low_c", CENTRE_LOW_C, "°C", "practice"),
            constant("room.centre_high_c", CENTRE_HIGH_C, "°C", "practice"),
        ],
    }


def _air(request, dew, coldest_c):
    """Warnings of water: on the coldest surface first, in the room only where nothing worse is said."""
    if coldest_c <= dew + 1e-9:
        return [{"code": "condensation", "values": {"surface_c": coldest_c, "dew_point_c": dew}}]
    humidity = math.exp(vapour(dew) - vapour(coldest_c))
    most = SUGAR_BLOOM[request["chocolate"]]
    if humidity > most:
        values = {"humidity_percent": 100.0 * humidity, "most_percent": 100.0 * most}
        return [{"code": "sugar_bloom", "values": values}]
    if request["humidity"] > HUMID:
        values = {"humidity_percent": 100.0 * request["humidity"], "most_percent": 100.0 * HUMID}
        return [{"code": "humid_room", "values": values}]
    return []


def _warmth(room_c):
    """Warnings of the room's temperature."""
    found = []
    if room_c > SETTING_C:
        found.append({"code": "slow_setting", "values": {"room_c": room_c, "most_c": SETTING_C}})
    if room_c > FAT_BLOOM_C:
        found.append({"code": "fat_bloom", "values": {"room_c": room_c, "most_c": FAT_BLOOM_C}})
    if room_c > SOFT_C:
        found.append({"code": "soft_caramel", "values": {"room_c": room_c}})
    if room_c < COLD_ROOM_C:
        found.append({"code": "cold_room", "values": {"room_c": room_c}})
    return found


def _centres(centre_c):
    """Warnings of centres that are to be dipped."""
    if centre_c is None:
        return []
    if centre_c < CENTRE_LOW_C:
        return [{"code": "cold_centres", "values": {"centre_c": centre_c, "low_c": CENTRE_LOW_C}}]
    if centre_c > CENTRE_HIGH_C:
        return [{"code": "warm_centres", "values": {"centre_c": centre_c, "high_c": CENTRE_HIGH_C}}]
    return []
