"""The fields of the funnel and its fills."""

from ...core.describe import number, record, together
from ...core.fields import SEEN
from ...physics.fields import MATERIAL, ROOM
from ..melt.fields import MELT

LOSS = number(
    "W/(m² K)",
    1,
    60,
    "heat the fill loses through wall and open top",
    default=10.0,
    basis="assumed",
    source="assumed",
    measure_by="funnel_readings",
)
FUNNEL = record(
    {
        "volume_m3": number("m³", 0.0002, 0.01, "brimful"),
        "fill": number("", 0.25, 1, "share that is filled", default=0.75, basis="assumed", source="practice"),
        "h_w_m2k": LOSS,
    },
    "the funnel",
)
WINDOW_LOW = dict(MELT["window_low_c"], meaning="coolest temperature to deposit at")
FILL = {
    "h_w_m2k": LOSS,
    "material": MATERIAL,
    "room_c": ROOM,
    "window_low_c": WINDOW_LOW,
    "limit_c": MELT["limit_c"],
    "pace_kg_s": number("kg/s", 1e-6, 3, "what runs out of the funnel, pauses included"),
}


FUNCTIONS = {
    "deposit.fill": {
        "request": together(
            FILL,
            {
                "now_c": number("°C", 0, 150, "temperature of the fill"),
                "fill_kg": number("kg", 0.005, 20, "caramel in the funnel now"),
            },
        ),
        "reply": {"seconds_s": number("s", 0, 1e8, "time until it leaves the window or is empty; 0: it is too cool")},
    },
}


EVENTS = {
    "filled": together(
        {
            "kg": number("kg", 0.001, 20, "caramel in the funnel then"),
            "bulk_c": number("°C", 20, 150, "its temperature as believed"),
            "sd_k": number("K", 0, 60, "standard deviation of bulk_c, as believed; null: as usual", default=None),
            "bowl_c": number("°C", 20, 150, "what stays in the bowl, as believed; null: as warm", default=None),
        },
        SEEN,
    ),
    "fill_read": together({"surface_c": number("°C", 0, 150, "infrared reading into the funnel")}, SEEN),
    "fill_ended": together(
        {
            "left_kg": number("kg", 0, 20, "what goes back from the funnel into the bowl", default=0.0),
            "bulk_c": number("°C", 20, 150, "temperature of the bowl with it, as believed"),
        },
        SEEN,
    ),
}
