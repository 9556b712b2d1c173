"""The fields of a stand-up test, and its event."""

from ...core.field_kinds import boolean, choice, many, number, record, together
from ...core.fields import BASIS, INPUTS, SEEN, decided
from ...physics.fields import MATERIAL, ROOM, STIFFER, VISCOSITY

VERDICTS = ("firm", "borderline", "slumps")
FUNCTIONS = {
    "flow.stand_up_test": {
        "request": together(
            {
                "heights": many(
                    record(
                        {
                            "at_s": number("s", 0, 3e6, "time since the cube was set down"),
                            "height_m": number("m", 0.0005, 0.3, "its height then"),
                        },
                        "one measurement",
                    ),
                    2,
                    50,
                    "heights of the cube, the fresh one first",
                ),
                "room_c": ROOM,
                "material": MATERIAL,
            },
            BASIS,
        ),
        "reply": together(
            {
                "lost_fraction": number("", 0, 1, "share of its first height that is lost"),
                "verdict": choice(VERDICTS, "whether it stays square in this room"),
                "viscosity_pa_s": dict(VISCOSITY, meaning="viscosity in this room, at least"),
                "stiffer_k": STIFFER,
                "square_to_c": number(
                    "°C", -300, 200, "warmest room in which it stays square for an hour; null: unknown", default=None
                ),
            },
            INPUTS,
        ),
    },
}


EVENTS = {
    "stood": together(
        {"height_m": number("m", 0.0005, 0.3, "height of the cube of a stand-up test")},
        SEEN,
        decided(
            {
                "verdict": choice(VERDICTS, "what its heights say so far; null: nothing yet", default=None),
                "last": boolean("whether the test is over with it"),
            }
        ),
    ),
}
