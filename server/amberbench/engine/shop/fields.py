"""What can be set of a shop: its own fields and those of each list, with units, limits and what stands until then.

The shop is the fold of `shop_set {doc, field, value, basis}`. A doc is "shop" or "<list>/<id>"; a field may be a
dotted path inside its row. A field without a default is null until somebody sets it.
"""

from ..core.allergens import ALLERGENS
from ..core.field_kinds import boolean, choice, document, integer, many, number, text
from ..physics.fields import BASE, HUMIDITY_OR_NONE, MATERIAL_NAMES, ROOM, STIFFER, VESSEL
from ..products import KINDS, OLDEST, remelt
from ..products.capacity import VESSEL_VOLUME
from ..products.cluster.fields import CLUSTER_REQUEST
from ..steps.coat.fields import COATING
from ..steps.cool.fields import COOL, FIRM
from ..steps.cut.fields import PIECE
from ..steps.deposit.fields import FUNNEL
from ..steps.dip.fields import AT_BENCH as DIP
from ..steps.dip.fields import SALTING
from ..steps.jacket.fields import WATER
from ..steps.melt.fields import MELT, OVEN
from ..steps.temper.fields import FUNCTIONS as CHOCOLATE
from ..steps.temper.fields import TARGETS
from . import business_fields
from .business_fields import NAME

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document


LANGUAGES = ("en", "es", "es-MX")
TABLE_M = (0.05, 5)

SHOP = {
    "name": text(80, "the shop's name", default=""),
    "invented": boolean("whether it is a shop to try things with", default=False),
    "language": choice(LANGUAGES, "language of screens and prints", default="en"),
    "units.mass": choice(("kg", "g", "lb", "oz"), "unit of weights", default="kg"),
    "units.length": choice(("mm", "cm", "m", "in"), "unit of lengths", default="mm"),
    "units.temperature": choice(("°C", "°F"), "unit of temperatures", default="°C"),
    "units.power": choice(("W",), "unit of powers", default="W"),
    "room_c": ROOM,
    "humidity": HUMIDITY_OR_NONE,
    "fridge_c": dict(COOL["fridge_c"], meaning="air of its refrigerator"),
}
SHOP.update(business_fields.SHOP)
OVENS = {
    "name": NAME,
    "rated_w": dict(OVEN["fields"]["rated_w"], meaning="power on the rating plate, or as a water test measured it"),
    "turntable": OVEN["fields"]["turntable"],
    "step_s": MELT["step_s"],
    "unevenness": OVEN["fields"]["unevenness"],
    "levels_percent": OVEN["fields"]["levels_percent"],
}
# Specific heat in J/(kg K) of what a bowl is made of; from memory.
MADE_OF = {"glass": 800.0, "ceramic": 850.0, "plastic": 1700.0, "silicone": 1300.0, "steel": 500.0}
METALS = ("steel",)
VESSELS = {
    "name": NAME,
    "mass_kg": VESSEL["fields"]["mass_kg"],
    "volume_m3": VESSEL_VOLUME,
    "made_of": choice(sorted(MADE_OF), "what it is made of; sets heat_capacity_j_kgk", default="glass"),
    "heat_capacity_j_kgk": VESSEL["fields"]["heat_capacity_j_kgk"],
    "jacketed": boolean("whether it stands in a water jacket instead of going into the oven", default=False),
    "water_c": dict(
        WATER, meaning="what its jacket's water is kept at", default=88.0, basis="assumed", source="practice"
    ),
}
BASES = {
    "name": NAME,
    "base": dict(BASE, nullable=False),
    "length_m": dict(COOL["base_length_m"], meaning="how long it is; null: no longer than the slab"),
    "width_m": dict(COOL["base_width_m"], meaning="how wide it is; null: no wider than the slab"),
    "thickness_m": dict(COOL["base_thickness_m"], meaning="how thick it is; null: as usual for what it is made of"),
    "contact_m2k_w": COOL["contact_m2k_w"],
    "bottom": COOL["bottom"],
}
BARS = {
    "height_m": number("m", 0.002, 0.1, "height of a bar"),
    "count": integer(1, 200, "how many there are; four close a frame", default=4),
    "length_m": number("m", 0.05, 5, "length of a bar"),
}
TABLES = {
    "name": NAME,
    "max_length_m": number("m", TABLE_M[0], TABLE_M[1], "longest frame it has room for"),
    "max_width_m": number("m", TABLE_M[0], TABLE_M[1], "widest frame"),
}
FRAMES = {
    "name": NAME,
    "length_m": number("m", 0.02, 5, "length inside"),
    "width_m": number("m", 0.02, 5, "width inside"),
}
TRAYS = {
    "name": NAME,
    "length_m": number("m", 0.02, 5, "length inside"),
    "width_m": number("m", 0.02, 5, "width inside"),
    "rim_m": number("m", 0, 0.2, "kept clear along every edge", default=0.02, basis="assumed", source="assumed"),
}


def _part(name: str) -> "Document":
    return number("", 0, 1, "mass fraction of " + name + " on the label; null: as in firm caramel", default=None)


LABEL = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
FUNNELS = {
    "name": NAME,
    "volume_m3": FUNNEL["fields"]["volume_m3"],
    "fill": FUNNEL["fields"]["fill"],
    "deposits_per_min": CLUSTER_REQUEST["deposits_per_min"],
}
CARAMELS = {
    "name": NAME,
    "material": choice(MATERIAL_NAMES, "the built-in material it is most like", default="caramel"),
    "block_kg": number("kg", 0.05, 50, "weight of one block as bought", default=None),
    "density_kg_m3": number("kg/m³", 800, 1700, "weighed at room temperature; null: from its make-up", default=None),
    "windows.slab.low_c": MELT["window_low_c"],
    "windows.slab.high_c": MELT["window_high_c"],
    "windows.deposit.low_c": CLUSTER_REQUEST["window_low_c"],
    "windows.deposit.high_c": CLUSTER_REQUEST["window_high_c"],
    "limit_c": MELT["limit_c"],
    "warn_c": MELT["warn_c"],
    "stop_c": MELT["stop_c"],
    "target_c": dict(COOL["target_c"], meaning="hottest point of a slab of it that this shop calls ready to cut"),
    "contains": many(choice(ALLERGENS, "an allergen"), 0, 40, "allergens on its label", default=["milk"]),
    "remelts_allowed": remelt.REQUEST["remelts_allowed"],
    "squeeze": FIRM["squeeze"],
    "firmness": FIRM["firmness"],
    "stiffer_k": STIFFER,
}
CARAMELS.update(business_fields.BOUGHT)
for _name in LABEL:
    CARAMELS["label." + _name + "_share"] = _part(_name)
CHOCOLATES = {
    "name": NAME,
    "chocolate": CHOCOLATE["chocolate.temper"]["request"]["chocolate"],
    "set_s": SALTING["set_s"],
    "contains": dict(CARAMELS["contains"], default=[]),
}
CHOCOLATES.update(business_fields.BOUGHT)
for _name in TARGETS["fields"]:
    CHOCOLATES["targets." + _name] = dict(TARGETS["fields"][_name], default=None)
PRODUCTS = {
    "name": NAME,
    "kind": choice([kind.name for kind in KINDS if kind.in_shop], "how it is made", default=OLDEST),
    "caramel_id": text(64, "the caramel it is made of", default=None),
    "piece_length_m": PIECE["piece_length_m"],
    "piece_width_m": PIECE["piece_width_m"],
    "slab_height_m": number("m", 0.002, 0.1, "slab height"),
    "trim_m": PIECE["trim_m"],
    "kerf_m": PIECE["kerf_m"],
    "per_box": integer(1, 500, "centres in a box", default=None),
    "contains": dict(
        CARAMELS["contains"], meaning="allergens on its own label: what it is made of besides", default=[]
    ),
    "prebottom": boolean("whether it gets a thin coat below before it is cut", default=False),
    "finish": choice(("plain", "dipped", "wrapped"), "what becomes of the cut pieces", default="plain"),
    "chocolate_id": text(64, "the chocolate it is dipped in", default=None),
    "coating.method": COATING["method"],
    "coating.thickness_m": number("m", 0.0001, 0.01, "all round; null: that of the method", default=None),
    "coating.pickup_share": dict(COATING["pickup"]),
    "coating.prebottom_m": dict(COATING["prebottom_m"], default=0.0005),
    "coating.bowl_width_m": COATING["bowl_width_m"],
    "coating.dip_s": DIP["dip_s"],
    "coating.top_mark": DIP["top_mark"],
    "coating.salt": DIP["salt"],
    "coating.salt_each_kg": DIP["salt_each_kg"],
}
for _kind in KINDS:
    for _name in _kind.shop_row:
        PRODUCTS[_kind.name + "." + _name] = _kind.shop_row[_name]
for _name in ("length_m", "width_m", "height_m"):
    PRODUCTS["pocket." + _name] = number("m", 0.002, 0.5, "inside of the box's pocket; null: unknown", default=None)
THERMOMETERS = {
    "name": NAME,
    "reads_low_k": number("K", -10, 10, "how much too cold it reads", default=0.0, basis="assumed", source="assumed"),
    "sd_k": number("K", 0.1, 10, "scatter of its readings", default=2.0, basis="assumed", source="memory"),
}
LISTS = {
    "ovens": OVENS,
    "vessels": VESSELS,
    "bases": BASES,
    "bars": BARS,
    "tables": TABLES,
    "frames": FRAMES,
    "trays": TRAYS,
    "funnels": FUNNELS,
    "caramels": CARAMELS,
    "chocolates": CHOCOLATES,
    "products": PRODUCTS,
    "thermometers": THERMOMETERS,
    "materials": business_fields.MATERIALS,
    "boxes": business_fields.BOXES,
    "customers": business_fields.CUSTOMERS,
    "suppliers": business_fields.SUPPLIERS,
    "people": business_fields.PEOPLE,
}
REMOVED = boolean("whether the row is taken away", default=False)

FUNCTIONS = {
    "shop.fold": {
        "request": {
            "shop_id": text(64, "the shop; null: that of the first event", default=None),
            "events": many(
                document("an event", unread=True, of="BenchEvent"), 0, 200000, "events of kind shop_set, in any order"
            ),
        },
        "reply": {
            "shop": document("the shop document", of="Shop"),
            "ignored": many(document("an event that does not count", of="Ignored"), 0, 50, "what was passed over"),
        },
    },
    "shop.check": {
        "request": {
            "doc": text(90, "shop, or <list>/<id>"),
            "values": document("values by field, as the form has them; null: not set", of="Values"),
        },
        "reply": {"values": document("the same, as the log takes them", of="Values")},
    },
    "shop.density": {
        "request": {
            "mass_kg": number("kg", 0.005, 20, "weight of the caramel"),
            "volume_m3": number("m³", 1e-6, 0.02, "volume it fills"),
        },
        "reply": {"density_kg_m3": number("kg/m³", 800, 1700, "its density")},
    },
}
