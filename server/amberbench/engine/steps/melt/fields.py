"""The fields of the melt: oven, vessel, heat lines, history, bursts."""

from ...core.field_kinds import boolean, choice, document, integer, many, number, record, text, together
from ...core.fields import BASIS, INPUTS, SEEN, decided
from ...physics.fields import MATERIAL, ROOM, START, VESSEL
from ..common.fields import BOWL_KG

LEVEL = integer(1, 100, "power level on the dial in %; 100 is full power")
FULL = dict(LEVEL, default=100)
OVEN = record(
    {
        "rated_w": number("W", 200, 3500, "power on the rating plate", default=None),
        "power_w": number("W", 100, 3500, "power that this mass absorbs, as measured", default=None),
        "power_sd_w": number("W", 1, 1500, "standard deviation of power_w", default=None),
        "measured_in": text(
            20,
            "melts: power_w was measured in melts, its spread has that of caramel and bowl in it; water: rated_w is"
            " what a water test measured",
            default=None,
        ),
        "turntable": boolean("whether it turns the bowl", default=True, basis="assumed", source="assumed"),
        "unevenness": number(
            "",
            1,
            4,
            "hottest rise over mean rise in one burst; null: by turntable",
            default=None,
            basis="assumed",
            source="memory",
            measure_by="hot_spot_readings",
        ),
        "unevenness_sd": number("", 0, 2, "standard deviation of unevenness; null: none", default=None),
        "levels_percent": many(
            integer(1, 100, "one of them in %"),
            0,
            20,
            "power levels its dial offers; none: full power alone",
            default=[],
        ),
    },
    "the microwave oven",
)
MELT = together(
    {
        "mass_kg": BOWL_KG,
        "start_c": START,
        "window_low_c": number(
            "°C",
            30,
            120,
            "coolest bulk temperature to pour at",
            default=71.0,
            default_in={"°F": 160},
            basis="assumed",
            source="practice",
            measure_by="caramel_label",
        ),
        "window_high_c": number(
            "°C",
            30,
            120,
            "hottest bulk temperature to pour at",
            default=77.0,
            default_in={"°F": 170},
            basis="assumed",
            source="practice",
            measure_by="caramel_label",
        ),
        "room_c": ROOM,
        "material": MATERIAL,
        "limit_c": number(
            "°C",
            40,
            140,
            "scorch limit for any spot",
            default=93.3,
            default_in={"°F": 200},
            basis="assumed",
            source="practice",
            measure_by="caramel_label",
        ),
        "warn_c": number(
            "°C",
            40,
            140,
            "bulk temperature from which it darkens",
            default=82.0,
            default_in={"°F": 180},
            basis="assumed",
            source="practice",
            measure_by="caramel_label",
        ),
        "stop_c": number(
            "°C",
            40,
            140,
            "bulk temperature at which heating stops",
            default=85.0,
            default_in={"°F": 185},
            basis="assumed",
            source="practice",
            measure_by="caramel_label",
        ),
        "burst_s": number("s", 5, 300, "longest burst", default=60.0, basis="assumed", source="practice"),
        "step_s": number(
            "s", 1, 30, "what the oven can set: 1, 5, 10, 15 or 30", default=5.0, basis="assumed", source="assumed"
        ),
        "oven": OVEN,
        "vessel": VESSEL,
    },
    BASIS,
)
HAPPENINGS = ("burst", "spot", "stir", "reading", "rest")
HISTORY = many(
    record(
        {
            "kind": choice(HAPPENINGS, "what happened"),
            "seconds_s": number("s", 0, 36000, "length of the burst or rest", default=None),
            "level_percent": FULL,
            "free": boolean("whether it stirs freely", default=None),
            "surface_c": number("°C", 0, 150, "infrared reading, or the hottest spot before the stir", default=None),
        },
        "one happening",
    ),
    0,
    400,
    "what happened so far, in order",
)
BURST = record(
    {
        "seconds_s": number("s", 1, 300, "length of the burst"),
        "level_percent": FULL,
        "expected_c": number("°C", -1e6, 1e6, "bulk temperature expected after it and a stir"),
        "low_c": number("°C", -1e6, 1e6, "10 % point of expected_c"),
        "high_c": number("°C", -1e6, 1e6, "90 % point of expected_c"),
        "hottest_c": number("°C", -1e6, 1e6, "hottest spot before the stir, 95 % point; 98 % until a reading is due"),
    },
    "one burst",
)
MELT_REPLY = together(
    {
        "bursts": many(BURST, 0, 60, "the plan, to be corrected by every reading; none when it starts in the window"),
        "total_s": number("s", 0, 36000, "bursts and stirs together"),
        "energy_j": number("J", -1e8, 1e8, "energy the caramel and the vessel take up"),
    },
    INPUTS,
)
FUNCTIONS = {
    "melt.oven_from_water_test": {
        "request": {
            "water_kg": number("kg", 0.2, 3, "water"),
            "start_c": number("°C", 0, 60, "stirred water before"),
            "end_c": number("°C", 1, 95, "stirred water after"),
            "seconds_s": number("s", 20, 600, "time"),
            "container_kg": number("kg", 0.01, 5, "empty container", default=None),
            "room_c": number("°C", -5, 45, "room temperature", default=None),
        },
        "reply": {
            "power_w": number("W", 0, 5000, "power the water absorbed"),
            "power_sd_w": number("W", 0, 5000, "its standard deviation"),
        },
    },
    "melt.plan": {"request": MELT, "reply": MELT_REPLY},
    "melt.next_burst": {
        "request": together(
            MELT,
            {
                "history": HISTORY,
                "start_sd_k": number(
                    "K",
                    0,
                    60,
                    "standard deviation of start_c, where more than a block's; null: as a block's",
                    default=None,
                ),
            },
        ),
        "reply": {
            "action": choice(("burst", "ready", "read_again", "rest", "stop"), "what to do"),
            "seconds_s": number("s", 0, 3600, "length of the burst or rest, 0 otherwise"),
            "level_percent": LEVEL,
            "then": choice(("turn", "stir"), "what follows the burst"),
            "read": boolean("whether a reading is wanted after this burst"),
            "spot": boolean("whether the hottest spot is to be read before the stir"),
            "bulk_c": number("°C", -1e6, 1e6, "bulk temperature now"),
            "bulk_low_c": number("°C", -1e6, 1e6, "10 % point"),
            "bulk_high_c": number("°C", -1e6, 1e6, "90 % point"),
            "expected_c": number("°C", -1e6, 1e6, "bulk temperature after the burst and a stir"),
            "expected_low_c": number("°C", -1e6, 1e6, "10 % point of expected_c"),
            "expected_high_c": number("°C", -1e6, 1e6, "90 % point of expected_c"),
            "hottest_c": number(
                "°C", -1e6, 1e6, "hottest spot in the burst, 95 % point; 98 % until a reading was trusted"
            ),
            "power_w": number("W", 0, 5000, "power this mass absorbs, as believed now"),
            "power_sd_w": number("W", 0, 5000, "its standard deviation"),
            "reason": document("why", of="Sentence"),
        },
    },
}

BURST_ADVICE = {
    "advised_s": number("s", 0, 3600, "what the engine advised", default=None),
    "then": choice(("turn", "stir"), "what follows the burst", default="stir"),
    "read": boolean("whether a reading is wanted after it", default=False),
    "level_percent": FULL,
    "spot": boolean("whether the hottest spot is to be read before the stir", default=False),
    "from_c": number("°C", -30, 250, "bulk temperature believed before it", default=None),
    "expected_c": number("°C", -30, 250, "bulk temperature expected after it", default=None),
    "low_c": number("°C", -50, 250, "10 % point of expected_c", default=None),
    "high_c": number("°C", -30, 300, "90 % point of expected_c", default=None),
}
# Two phones may have taken the same step while neither had heard of the other: the event says what it answers.
OF_BURST = {"started_ms": number("ms", 0, 1e14, "when the burst it belongs to was started", default=None)}

PAUSED = {"paused_s": number("s", 0, 36000, "rest before it in which the caramel cooled; null: none", default=None)}
STIRRED = together(
    PAUSED,
    {
        "read_wanted": boolean("whether a reading is wanted after it", default=False),
        "look_ms": number("ms", 0, 1e15, "when a jacket is looked into again; null: it need not be", default=None),
    },
)


EVENTS = {
    "burst_started": together(
        {"seconds_s": number("s", 1, 600, "time set on the oven")}, BURST_ADVICE, decided(PAUSED)
    ),
    "burst_ended": OF_BURST,
    "spot_read": together({"surface_c": number("°C", 0, 150, "the hottest spot, before the stir")}, OF_BURST),
    "stirred": together({"free": boolean("whether it stirs freely", default=False)}, OF_BURST, decided(STIRRED)),
    "read": together({"surface_c": number("°C", 0, 150, "infrared reading")}, SEEN, decided(PAUSED)),
    "rested": {"seconds_s": number("s", 1, 3600, "time off the heat")},
}
