"""The fields of materials, of what things lie on, of room and air."""

from ..core.describe import BASES, choice, document, either, integer, many, number, record, text

MATERIAL_NAMES = (
    "caramel",
    "dark_chocolate",
    "milk_chocolate",
    "white_chocolate",
    "almond",
    "cashew",
    "hazelnut",
    "macadamia",
    "peanut",
    "pecan",
    "pistachio",
    "walnut",
    "pretzel",
)
COMPOSITION = record(
    {
        "water": number("", 0, 1, "mass fraction of water"),
        "protein": number("", 0, 1, "mass fraction of protein", default=0.0),
        "fat": number("", 0, 1, "mass fraction of fat", default=0.0),
        "carbohydrate": number("", 0, 1, "mass fraction of carbohydrate without fibre", default=0.0),
        "fibre": number("", 0, 1, "mass fraction of fibre", default=0.0),
        "ash": number("", 0, 1, "mass fraction of ash", default=0.0),
        "density_kg_m3": number("kg/m³", 300, 3000, "weighed density; null: from the composition", default=None),
    },
    "mass fractions that sum to 1 ± 0.02",
)
CONSTANTS = record(
    {
        "conductivity_w_mk": number("W/(m K)", 0.005, 500, "thermal conductivity"),
        "density_kg_m3": number("kg/m³", 1, 20000, "density"),
        "heat_capacity_j_kgk": number("J/(kg K)", 100, 10000, "specific heat"),
    },
    "constant thermal properties",
)
MATERIAL = either(
    [choice(MATERIAL_NAMES, "a built-in material"), COMPOSITION, CONSTANTS],
    "a built-in material, a composition or constants",
    default="caramel",
    basis="published",
    source="usda_sr28",
    measure_by="caramel_label",
)


def surface(words, meaning, default):
    """How a face gives heat to the air: a word, or a given coefficient."""
    return either(
        [
            choice(words, meaning),
            record({"h_w_m2k": number("W/(m² K)", 0, 500, "heat-transfer coefficient, radiation included")}, meaning),
        ],
        meaning,
        default=default,
        basis="assumed",
        source="mcadams",
    )


BASE_NAMES = ("steel_sheet", "aluminium_tray", "marble", "granite", "wood_board")
LAYER = record(
    {
        "thickness_m": number("m", 0.0001, 0.2, "thickness of the layer"),
        "conductivity_w_mk": number("W/(m K)", 0.005, 500, "thermal conductivity"),
        "density_kg_m3": number("kg/m³", 1, 20000, "density"),
        "heat_capacity_j_kgk": number("J/(kg K)", 100, 10000, "specific heat"),
    },
    "one layer of the base",
)
BASE = either(
    [
        choice(BASE_NAMES, "a built-in base"),
        record(
            {
                "layers": many(LAYER, 1, 4, "layers from the slab downwards"),
                "area_ratio": number("", 1, 20, "base area over slab area", default=1.0),
            },
            "a base of one's own",
        ),
    ],
    "what the slab lies on; null: bottom face given by `bottom` alone",
    default="marble",
    nullable=True,
    basis="assumed",
    source="en_12524",
    measure_by="cooling_readings",
)
ROOM = number(
    "°C", -5, 45, "room temperature", default=21.0, basis="assumed", source="assumed", measure_by="room_thermometer"
)
START = number(
    "°C",
    -30,
    150,
    "temperature before heating",
    default=21.0,
    basis="assumed",
    source="assumed",
    measure_by="block_reading",
)
BATCHES = integer(0, 1000000, "closed batches it was measured from, or null", default=None)
# Two phones may have taken the same step while neither had heard of the other: what the step answers to is told.
SEEN = {"seen": integer(0, 100000, "how many of its kind had been counted when it was tapped", default=None)}
BASIS = {
    "basis": document("basis of fields by dotted path: typed, measured, published or assumed", default=None),
    "batches": document("how many closed batches a measured field rests on, by dotted path", default=None),
}
INPUTS = {
    "inputs": many(
        record(
            {
                "field": text(80, "dotted path of the field"),
                "value": document("the value used"),
                "unit": text(20, "its unit"),
                "basis": choice(BASES, "where the value comes from"),
                "source": text(40, "source key, or null", default=None),
                "measure_by": text(40, "the test that measures it, or null", default=None),
                "n": BATCHES,
            },
            "one input and its basis",
        ),
        0,
        200,
        "every input that went into the answer",
    )
}
WARNINGS = many(
    record({"code": text(40, "key of the sentence"), "values": document("numbers in it")}, "one"), 0, 10, "what to mind"
)
FUNCTIONS = {
    "units.convert": {
        "request": {
            "value": number("", -1e12, 1e12, "what to convert"),
            "from": text(8, "its unit"),
            "to": text(8, "the unit wanted"),
        },
        "reply": {"value": number("", -1e16, 1e16, "the converted value")},
    },
    "materials.properties": {
        "request": {"material": MATERIAL, "temp_c": number("°C", -40, 150, "temperature")},
        "reply": {
            "density_kg_m3": number("kg/m³", 0, 20000, "density"),
            "heat_capacity_j_kgk": number("J/(kg K)", 0, 10000, "specific heat"),
            "conductivity_w_mk": number("W/(m K)", 0, 500, "thermal conductivity"),
            "diffusivity_m2_s": number("m²/s", 0, 5, "thermal diffusivity"),
        },
    },
    "materials.heat": {
        "request": {
            "material": MATERIAL,
            "mass_kg": number("kg", 0, 1000, "mass"),
            "from_c": number("°C", -40, 150, "first temperature"),
            "to_c": number("°C", -40, 150, "last temperature"),
        },
        "reply": {"energy_j": number("J", -1e10, 1e10, "heat taken up; negative when cooling")},
    },
}
