"""The room's air: dew point, and what temperature and humidity do to chocolate and caramel."""

import math

from ...core.check import constant
from ...physics.humid_air import dew_c, log_vapour_pressure

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ...core.annotations import Document, Readable
    from ...types import Input, RoomAdviseRequest, Warning


COLD_ROOM_C = 18.0  # in a colder room caramel gets brittle before it is cut; assumed
# Humidity at the surface from which sugar dissolves and blooms: dark 82–85 %, milk 78 % (read in a guide for makers;
# another trade page says 68 %); white taken as milk.
SUGAR_BLOOM = {"dark_chocolate": 0.82, "milk_chocolate": 0.78, "white_chocolate": 0.78}
# Common practice, no published source: air for coating at most 22 °C and 55 %; centres at 21 to 26 °C.
HUMID_AIR, WARM_SETTING_C = 0.55, 22.0
CENTRE_LOW_C, CENTRE_HIGH_C = 21.0, 26.0
SOFT_C = 26.0  # in a warmer room no bench brings caramel to the 27 °C at which it is ready for the knife
FAT_BLOOM_C = 24.0  # from memory: storage or cycling above about 24 to 26 °C
READS_AS_K = 0.5  # a room within half a degree of a limit reads as the limit, in °C and in °F: it is not above it


def advise(request: "RoomAdviseRequest") -> "Document":
    """Dew point of the room, and what its air will do to chocolate, centres and caramel.

    Request: room_c (°C), humidity (fraction) or null (nobody measured it), surface_c (°C, coldest surface in the air)
    or null, centre_c (°C) or null, chocolate or null (none is used), basis, batches.
    Reply: dew_point_c (°C) or null, warnings (code, values; what to do is in the sentence), inputs.
    Warnings: condensation (surface_c, dew_point_c); of chocolate sugar_bloom and humid_room (humidity_percent,
    most_percent), fat_bloom and slow_setting (room_c, most_c); without it sticky_caramel (humidity_percent,
    most_percent); soft_caramel (room_c), cold_room (room_c), cold_centres (centre_c, low_c), warm_centres (centre_c,
    high_c).
    Raises: Problem too_low or too_high (humidity outside 0.01 to 1).
    Relation: humidity at a surface is the room's vapour over saturation at the surface, by the Magnus form; it sweats
    at 1. Lines by chocolate and practice.
    Source: wmo_magnus for dew point and humidity; practice for the lines of sugar bloom, setting, centres and soft
    caramel; memory for fat bloom; assumed for a cold room.
    """
    centres = [
        constant("room.centre_low_c", CENTRE_LOW_C, "°C", "practice"),
        constant("room.centre_high_c", CENTRE_HIGH_C, "°C", "practice"),
    ]
    return dict(_air_reply(request), inputs=_constants(request["chocolate"]) + centres)


def for_plan(
    room_c: float, humidity: float | None, chocolate: str | None, surface_c: float | None
) -> "tuple[Document, list[Input]]":
    """What the room does to a batch, as `fields.AIR`, and what that rests on: (reply, input rows).

    `humidity` and `chocolate` may be null; surface_c: of what comes out of the refrigerator, null if nothing does.
    """
    asked = {"room_c": room_c, "humidity": humidity, "surface_c": surface_c, "centre_c": None, "chocolate": chocolate}
    reply = _air_reply(asked)
    # Whether caramel gets firm in this room is said by what cools.
    reply["warnings"] = [one for one in reply["warnings"] if one["code"] != "soft_caramel"]
    return reply, _constants(chocolate)


def _air_reply(request: "Readable") -> "Document":
    room_c, humidity, chocolate = request["room_c"], request["humidity"], request["chocolate"]
    dew, water = None, []
    if humidity is not None:
        dew = dew_c(room_c, humidity)
        surfaces = [one for one in (request["surface_c"], request["centre_c"]) if one is not None]
        water = _air(humidity, dew, min(surfaces + [room_c]), chocolate)
    return {"dew_point_c": dew, "warnings": water + _warmth(room_c, chocolate) + _centres(request["centre_c"])}


def _constants(chocolate: str | None) -> "list[Input]":
    rows = [
        constant("room.humid_share", HUMID_AIR, "", "practice"),
        constant("room.soft_c", SOFT_C, "°C", "practice"),
        constant("room.cold_room_c", COLD_ROOM_C, "°C"),
    ]
    if chocolate is not None:
        rows.append(constant("room.sugar_bloom_share", SUGAR_BLOOM[chocolate], "", "practice"))
        rows.append(constant("room.setting_c", WARM_SETTING_C, "°C", "practice"))
        rows.append(constant("room.fat_bloom_c", FAT_BLOOM_C, "°C", "memory"))
    return rows


def _air(humidity: float, dew: float, coldest_c: float, chocolate: str | None) -> "list[Warning]":
    """Warnings of water: on the coldest surface first, in the room only where nothing worse is said."""
    if coldest_c <= dew + 1e-9:
        return [{"code": "condensation", "values": {"surface_c": coldest_c, "dew_point_c": dew}}]
    at_surface = math.exp(log_vapour_pressure(dew) - log_vapour_pressure(coldest_c))
    if chocolate is not None and at_surface > SUGAR_BLOOM[chocolate]:
        return [_humid("sugar_bloom", at_surface, SUGAR_BLOOM[chocolate])]
    if humidity > HUMID_AIR:
        return [_humid("sticky_caramel" if chocolate is None else "humid_room", humidity, HUMID_AIR)]
    return []


def _humid(code: str, humidity: float, most: float) -> "Warning":
    return {"code": code, "values": {"humidity_percent": 100.0 * humidity, "most_percent": 100.0 * most}}


def _warmth(room_c: float, chocolate: str | None) -> "list[Warning]":
    """Warnings of the room's temperature."""
    found: "list[Warning]" = []
    if chocolate is not None and room_c > WARM_SETTING_C + READS_AS_K:
        found.append({"code": "slow_setting", "values": {"room_c": room_c, "most_c": WARM_SETTING_C}})
    if chocolate is not None and room_c > FAT_BLOOM_C + READS_AS_K:
        found.append({"code": "fat_bloom", "values": {"room_c": room_c, "most_c": FAT_BLOOM_C}})
    if room_c > SOFT_C:
        found.append({"code": "soft_caramel", "values": {"room_c": room_c}})
    if room_c < COLD_ROOM_C:
        found.append({"code": "cold_room", "values": {"room_c": room_c}})
    return found


def _centres(centre_c: float | None) -> "list[Warning]":
    """Warnings of centres that are to be dipped."""
    if centre_c is None:
        return []
    if centre_c < CENTRE_LOW_C:
        return [{"code": "cold_centres", "values": {"centre_c": centre_c, "low_c": CENTRE_LOW_C}}]
    if centre_c > CENTRE_HIGH_C:
        return [{"code": "warm_centres", "values": {"centre_c": centre_c, "high_c": CENTRE_HIGH_C}}]
    return []
