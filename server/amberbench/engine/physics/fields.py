"""The fields of materials, of what things lie on, of room and air."""

from ..core.field_kinds import choice, either, many, number, record, together
from ..core.fields import BASIS, INPUTS
from .slump import SOFTEST_K, STIFFEST_K
from .viscosity import DRY_GLASS_C

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document


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


def surface(words: tuple[str, ...], meaning: str, default: str) -> "Document":
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

HUMIDITY = number("", 0.01, 1, "relative humidity as a fraction")
HUMIDITY_OR_NONE = dict(
    HUMIDITY, meaning="relative humidity as a fraction; null: nobody measured it", default=None, measure_by="hygrometer"
)
DEW_POINT = number("°C", -100, 60, "temperature of a surface that just begins to sweat")
VISCOSITY = number("Pa s", 0, 1e13, "viscosity")
STIFFER = number(
    "K",
    SOFTEST_K,
    STIFFEST_K,
    "it is as stiff as reckoned by its water in a room so much colder; null: no test said so",
    default=None,
    measure_by="stand_up_test",
)
VESSEL = record(
    {
        "mass_kg": number("kg", 0.01, 20, "mass of the empty vessel"),
        "heat_capacity_j_kgk": number(
            "J/(kg K)", 300, 3000, "specific heat of the vessel", default=800.0, basis="assumed", source="memory"
        ),
    },
    "the bowl or jug; null: an ordinary one nobody weighed",
    default=None,
)
FUNCTIONS = {
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
    "room.dew_point": {
        "request": {"temp_c": number("°C", -40, 50, "temperature of the air"), "humidity": HUMIDITY},
        "reply": {"dew_point_c": DEW_POINT},
    },
    "flow.viscosity": {
        "request": together(
            {
                "temp_c": number("°C", -40, 150, "temperature of the caramel"),
                "moisture": number("", 0.01, 0.3, "mass fraction of water in the caramel"),
                "fat": number(
                    "",
                    0,
                    0.5,
                    "mass fraction of fat",
                    default=0.081,
                    basis="published",
                    source="usda_sr28",
                    measure_by="caramel_label",
                ),
                "dry_glass_c": number(
                    "°C",
                    0,
                    120,
                    "glass temperature of its solids without water",
                    default=DRY_GLASS_C,
                    basis="assumed",
                    source="sucrose_glass",
                    measure_by="stand_up_test",
                ),
                "glass_c": number("°C", -130, 120, "its glass temperature, where known; null: by water", default=None),
            },
            BASIS,
        ),
        "reply": together(
            {
                "viscosity_pa_s": VISCOSITY,
                "low_pa_s": number("Pa s", 0, 1e13, "10 % point"),
                "high_pa_s": number("Pa s", 0, 1e14, "90 % point"),
                "glass_c": number("°C", -140, 120, "glass temperature"),
            },
            INPUTS,
        ),
    },
}

CHOCOLATE = choice(
    ("dark_chocolate", "milk_chocolate", "white_chocolate"),
    "the kind of chocolate",
    default="dark_chocolate",
    basis="assumed",
    source="assumed",
)
PIECES = tuple(name for name in MATERIAL_NAMES if name not in ("caramel",))
