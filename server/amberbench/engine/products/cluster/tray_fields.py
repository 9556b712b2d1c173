"""When a tray takes a second deposit, when it comes free, and the chill it needs where its room leaves it too warm."""

from ...core.field_kinds import number, record

SECOND = record(
    {
        "from_s": number("s", 0, 1e8, "from when it is tacky"),
        "to_s": number("s", 0, 1e8, "from when it is too cold to weld"),
    },
    "when a second deposit may go on, after the first was laid; null: none is planned",
    default=None,
)
FREE = record(
    {
        "from_s": number("s", 0, 1e8, "when it is most likely free from tray and paper"),
        "to_s": number("s", 0, 1e8, "90 % point"),
    },
    "when the tray can be freed, after its last deposit was laid",
)
CHILL = record(
    {
        "from_c": number("°C", -5, 50, "hottest point when the tray goes into the refrigerator"),
        "fridge_c": number("°C", 0, 15, "air of the refrigerator"),
        "seconds_s": number("s", 0, 1e6, "time there until it can be freed"),
    },
    "the chill of a tray that is not free by free.from_s; null: the room frees it",
    default=None,
)
