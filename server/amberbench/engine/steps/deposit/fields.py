"""The fields of the funnel and its fills."""

from ...core.field_kinds import choice, number, record, together
from ...core.fields import SEEN, decided
from ...physics.fields import MATERIAL, ROOM
from ..melt.fields import MELT

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document

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
# Deposits are laid from 160 to 180 °F, a slab is poured up to 170 °F (common practice, no published source).
WINDOW_LOW = dict(MELT["window_low_c"], meaning="coolest temperature to deposit at")
WINDOW_HIGH = dict(
    MELT["window_high_c"], meaning="hottest temperature to deposit at", default=82.0, default_in={"°F": 180}
)
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


def _instant(meaning: str, **more: "Any") -> "Document":
    return number("ms", 0, 1e17, meaning, **more)


def _kg(meaning: str, **more: "Any") -> "Document":
    return number("kg", 0, 1e3, meaning, **more)


FUNNEL_DECIDED = {
    "fill": record(
        {
            "at_ms": _instant("when it was told of last"),
            "filled_ms": _instant("when it was filled"),
            "seen_ms": _instant("when it was filled or read"),
            "kg": _kg("what is in it"),
            "now_c": number("°C", -1e3, 1e3, "how warm it is, as believed"),
            "filled_c": number("°C", -1e3, 1e3, "how warm it was when filled", default=150.0),
            "sd_k": number("K", 0, 1e3, "standard deviation of now_c"),
            "lost_k": number("K", -1e3, 1e3, "what it has lost since it was filled or read", default=0.0),
            "sure_c": number("°C", -1e4, 1e3, "how warm it is, on the safe side"),
            "thick_ms": _instant("when it leaves its window, on the safe side"),
            "likely_ms": _instant("when it likely does"),
            "due_ms": _instant("when it has to be seen to"),
            "why": choice(("thick", "low", "anew"), "why then"),
        },
        "what is in the funnel; null: nothing",
        default=None,
    ),
    "bowl_kg": _kg("what is in the bowl; null: not known", default=None),
    "base_kg": _kg("what bowl and funnel held when this task began; null: none has", default=None),
    "begun_ms": _instant("when it began; null: none has", default=None),
    "under_way": choice(("lay", "second"), "what was begun and is not done; null: nothing", default=None),
}
MELT_DECIDED = {
    "melt": record(
        {
            "mass_kg": _kg("caramel that is heated from now on"),
            "start_c": number("°C", -1e3, 1e3, "how warm it is, as believed"),
            "start_sd_k": number("K", 0, 1e3, "standard deviation of start_c"),
            "power_w": number("W", 0, 1e5, "power it absorbs, as this melt has shown; null: as before", default=None),
            "power_sd_w": number("W", 0, 1e5, "its standard deviation; null: as before", default=None),
        },
        "the melt that begins in the bowl; null: none does",
        default=None,
    ),
}
# A fill begins one always.
FILL_MELT = {"melt": {name: MELT_DECIDED["melt"][name] for name in MELT_DECIDED["melt"] if name != "default"}}

EVENTS = {
    "filled": together(
        {
            "kg": number("kg", 0.001, 20, "caramel in the funnel then"),
            "bulk_c": number("°C", 20, 150, "its temperature as believed"),
            "sd_k": number("K", 0, 60, "standard deviation of bulk_c, as believed; null: as usual", default=None),
            "bowl_c": number("°C", 20, 150, "what stays in the bowl, as believed; null: as warm", default=None),
        },
        SEEN,
        decided(together(FUNNEL_DECIDED, FILL_MELT)),
    ),
    "fill_read": together(
        {"surface_c": number("°C", 0, 150, "infrared reading into the funnel")}, SEEN, decided(FUNNEL_DECIDED)
    ),
    "fill_ended": together(
        {
            "left_kg": number("kg", 0, 20, "what goes back from the funnel into the bowl", default=0.0),
            "bulk_c": number("°C", 20, 150, "temperature of the bowl with it, as believed"),
        },
        SEEN,
        decided(together(FUNNEL_DECIDED, MELT_DECIDED)),
    ),
}
