"""The fields of cooling: layers, surfaces, milestones, readings."""

from ...core.field_kinds import boolean, choice, document, integer, many, number, record, together
from ...core.fields import BASIS, INPUTS, SEEN, WARNINGS, decided
from ...physics.fields import BASE, MATERIAL, ROOM, surface
from .chill_fields import CHILL
from .cooling_curve import READY_C

COOL = together(
    {
        "thickness_m": number("m", 0.001, 0.1, "slab height"),
        "start_c": number("°C", 20, 150, "temperature when poured", default=74.0, basis="assumed", source="practice"),
        "room_c": ROOM,
        "material": MATERIAL,
        "top": surface(("still_air", "fan"), "how the top gives off heat", "still_air"),
        "base": BASE,
        "contact_m2k_w": number(
            "m² K/W",
            0,
            0.1,
            "resistance of parchment between slab and base",
            default=0.005,
            basis="assumed",
            source="asme_1992",
        ),
        "bottom": surface(("still_air", "fan", "insulated"), "how the underside gives off heat", "still_air"),
        "target_c": number(
            "°C",
            5,
            60,
            "hottest point when ready for the knife",
            default=READY_C,
            basis="assumed",
            source="practice",
            measure_by="clean_cut",
        ),
        "fridge_c": number(
            "°C",
            0,
            15,
            "air of the refrigerator in which it is chilled where the room does not bring target_c",
            default=5.0,
            basis="assumed",
            source="practice",
        ),
        "length_m": number("m", 0.02, 5, "slab length", default=0.35, basis="assumed", source="assumed"),
        "width_m": number("m", 0.02, 5, "slab width", default=0.35, basis="assumed", source="assumed"),
        "base_length_m": number("m", 0.02, 10, "length of the base; null: no larger than the slab", default=None),
        "base_width_m": number("m", 0.02, 10, "width of the base; null: no larger than the slab", default=None),
        "base_thickness_m": number("m", 0.0005, 0.2, "thickness of a built-in base; null: the usual one", default=None),
        "base_start_c": number("°C", -20, 60, "temperature of the base at pouring; null: room", default=None),
        "loss_factor": number(
            "",
            0.2,
            5,
            "heat loss over that of the model",
            default=1.0,
            basis="assumed",
            source="assumed",
            measure_by="cooling_readings",
        ),
        "loss_factor_sd": number(
            "",
            0.01,
            1,
            "standard deviation of the logarithm of loss_factor",
            default=0.2,
            basis="assumed",
            source="assumed",
        ),
        "spread": number(
            "",
            0.05,
            5,
            "spread of start, room and contact from batch to batch, over what is assumed of them",
            default=1.0,
            basis="assumed",
            source="assumed",
            measure_by="cooling_readings",
        ),
    },
    BASIS,
)
SPAN = {
    "at_s": number("s", 0, 1e8, "time after pouring"),
    "low_s": number("s", 0, 1e8, "10 % point"),
    "high_s": number("s", 0, 1e8, "90 % point"),
}
COOL_REPLY = together(
    {
        "ready_s": number("s", 0, 1e8, "time after pouring until it can be cut"),
        "ready_low_s": number("s", 0, 1e8, "10 % point"),
        "ready_high_s": number("s", 0, 1e8, "90 % point"),
        "target_c": number("°C", 5, 60, "hottest point at ready"),
        "chill": record(CHILL, "the chill that makes it ready; null: the room does", default=None),
        "milestones": many(
            record(
                together(
                    {"name": choice(("skin", "tacky", "firm", "free", "ready", "cold"), "what the slab can do then")},
                    SPAN,
                ),
                "one milestone",
            ),
            0,
            6,
            "in order of time; those never reached are left out",
        ),
        "curve": many(
            record(
                {
                    "at_s": number("s", 0, 1e8, "time after pouring"),
                    "core_c": number("°C", -31, 151, "hottest point"),
                    "surface_c": number("°C", -31, 151, "top surface"),
                },
                "one point",
            ),
            2,
            120,
            "core and surface over time",
        ),
        "warnings": WARNINGS,
    },
    INPUTS,
)
COOL_READINGS = {
    "readings": many(
        record(
            {
                "at_s": number("s", 0, 1e6, "time after pouring"),
                "surface_c": number("°C", -10, 150, "infrared reading of the top"),
            },
            "one reading",
        ),
        0,
        60,
        "infrared readings so far",
        default=[],
    ),
    "touches": many(
        record(
            {
                "at_s": number("s", 0, 1e6, "time after pouring"),
                "firm": boolean("whether the middle felt firm enough to cut"),
            },
            "one touch test",
        ),
        0,
        60,
        "touch tests so far",
        default=[],
    ),
    "reading_low_k": number(
        "K", -5, 5, "how cold readings run", default=1.0, basis="assumed", source="emissivity_manuals"
    ),
    "reading_sd_k": number(
        "K", 0.05, 10, "standard deviation of a reading", default=2.0, basis="assumed", source="assumed"
    ),
}
# What tests have said of a caramel: a cube that stood three days, a piece squeezed at delivery.
FIRM = {
    "firmness": choice(
        ("firm", "borderline", "slumps"), "what a stand-up test said of it; null: none was made", default=None
    ),
    "squeeze": choice(("firm", "soft", "brittle"), "how a piece felt at delivery; null: not squeezed", default=None),
}


FUNCTIONS = {
    "cool.plan": {"request": COOL, "reply": COOL_REPLY},
    "cool.refit": {
        "request": together(COOL, COOL_READINGS),
        "reply": together(
            COOL_REPLY,
            {
                "loss_factor": number("", 0.1, 10, "heat loss over that of the model, as fitted"),
                "loss_factor_sd": number("", 0, 2, "standard deviation of its logarithm"),
            },
        ),
    },
}


EVENTS = {
    "poured": {"bulk_c": number("°C", 20, 150, "bulk temperature believed at pouring", default=None)},
    "slab_read": together({"surface_c": number("°C", -10, 150, "infrared reading of the slab")}, SEEN),
    "touched": together(
        {"firm": boolean("whether the middle felt firm enough to cut")},
        SEEN,
        decided({"again_ms": number("ms", 0, 1e15, "when to touch it again; null: it is firm", default=None)}),
    ),
    "chilled": decided({"due_ms": number("ms", 0, 1e15, "when to take it out and touch it")}),
    "cooling_refitted": together(
        {
            "seen": integer(0, 200, "how many readings and touch tests it took in"),
            "reply": document(
                "of the reply of cool.refit: ready_s, ready_low_s, ready_high_s, loss_factor, loss_factor_sd",
                unread=True,
                of="Refitted",
            ),
        },
        decided({"due_ms": number("ms", 0, 1e15, "when to touch it")}),
    ),
}
