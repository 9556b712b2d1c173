"""The fields of the room's air and of caramel that flows."""

from ...core.field_kinds import number, together
from ...core.fields import BASIS, INPUTS, WARNINGS
from ...physics.fields import CHOCOLATE, DEW_POINT, HUMIDITY_OR_NONE, ROOM

AIR = {
    "dew_point_c": dict(DEW_POINT, default=None),
    "warnings": WARNINGS,
}
FUNCTIONS = {
    "room.advise": {
        "request": together(
            {
                "room_c": ROOM,
                "humidity": HUMIDITY_OR_NONE,
                "surface_c": number(
                    "°C", -30, 60, "coldest surface that meets the air: chilled slab, dipped piece", default=None
                ),
                "centre_c": number("°C", -30, 60, "centres that are to be dipped", default=None),
                "chocolate": dict(CHOCOLATE, nullable=True, meaning="the kind of chocolate; null: none is used"),
            },
            BASIS,
        ),
        "reply": together(AIR, INPUTS),
    },
}
