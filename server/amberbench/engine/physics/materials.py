"""Thermal properties from composition, by the component polynomials of Choi & Okos (1986).

Valid from −40 to 150 °C without ice. For unfrozen, non-porous foods simple volume-fraction models predict the
conductivity within about ±10 % (Carson 2006). Fat melting is not included: up to 12.7 kJ/kg for caramel.
"""

from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document, Readable
    from ..types import MaterialsHeatReply, MaterialsHeatRequest, MaterialsPropertiesReply, MaterialsPropertiesRequest


COMPONENTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
LOWEST_C, HIGHEST_C = -40.0, 150.0

# a0, a1, a2 of a0 + a1·t + a2·t², t in °C. Source: choi_okos_1986; water specific heat with the constant 4.1762 that
# the ASHRAE 1998 example needs (later SI tables print 4.1289). Specific heat in J/(kg K).
CONDUCTIVITY = {
    "water": (5.7109e-1, 1.7625e-3, -6.7036e-6),
    "protein": (1.7881e-1, 1.1958e-3, -2.7178e-6),
    "fat": (1.8071e-1, -2.7604e-4, -1.7749e-7),
    "carbohydrate": (2.0141e-1, 1.3874e-3, -4.3312e-6),
    "fibre": (1.8331e-1, 1.2497e-3, -3.1683e-6),
    "ash": (3.2962e-1, 1.4011e-3, -2.9069e-6),
}
DENSITY = {
    "water": (9.9718e2, 3.1439e-3, -3.7574e-3),
    "protein": (1.3299e3, -5.1840e-1, 0.0),
    "fat": (9.2559e2, -4.1757e-1, 0.0),
    "carbohydrate": (1.5991e3, -3.1046e-1, 0.0),
    "fibre": (1.3115e3, -3.6589e-1, 0.0),
    "ash": (2.4238e3, -2.8063e-1, 0.0),
}
HEAT_CAPACITY = {
    "water": (4176.2, -9.0864e-2, 5.4731e-3),
    "protein": (2008.2, 1.2089, -1.3129e-3),
    "fat": (1984.2, 1.4733, -4.8008e-3),
    "carbohydrate": (1548.8, 1.9625, -5.9399e-3),
    "fibre": (1845.9, 1.8306, -4.6509e-3),
    "ash": (1092.6, 1.8896, -3.6817e-3),
}
# Liquid water's specific heat below 0 °C (supercooled), same source.
WATER_BELOW_ZERO = (4081.7, -5.3062, 9.9516e-1)

# Mass fractions: water, protein, fat, carbohydrate, fibre, ash. Source: usda_sr28, the food number beside each row;
# carbohydrate by difference with the fibre taken out.
FOODS = {
    "caramel": (0.0850, 0.0460, 0.0810, 0.7700, 0.000, 0.0180),  # 19074
    "almond": (0.0241, 0.2096, 0.5254, 0.1011, 0.109, 0.0307),  # 12063 dry roasted
    "cashew": (0.0170, 0.1531, 0.4635, 0.2969, 0.030, 0.0395),  # 12085 dry roasted
    "hazelnut": (0.0531, 0.1495, 0.6075, 0.0700, 0.097, 0.0229),  # 12120
    "macadamia": (0.0136, 0.0791, 0.7577, 0.0522, 0.086, 0.0114),  # 12131
    "peanut": (0.0181, 0.2435, 0.4966, 0.1286, 0.084, 0.0292),  # 16390 dry roasted
    "pecan": (0.0112, 0.0950, 0.7427, 0.0415, 0.094, 0.0156),  # 12143 dry roasted
    "pistachio": (0.0437, 0.2016, 0.4532, 0.1657, 0.106, 0.0299),  # 12151
    "walnut": (0.0407, 0.1523, 0.6521, 0.0701, 0.067, 0.0178),  # 12155
    "pretzel": (0.0313, 0.1004, 0.0293, 0.7699, 0.034, 0.0351),  # 19047
}
# Measured: specific heat 15–40 °C and conductivity at 30 °C from beckett_2009; density of solid bars between 1230
# and 1333 kg/m³, as measured on bars (student project, 2012), here 1300.
CHOCOLATE = {"conductivity_w_mk": 0.27, "density_kg_m3": 1300.0, "heat_capacity_j_kgk": 1590.0}


def resolved(material: "Readable | str") -> "Readable":
    """A material as a composition or constants: names looked up, fractions normalised.

    Raises Problem `unknown_material`, or `composition_sum` when the fractions do not sum to 1 ± 0.02.
    """
    if isinstance(material, str):
        if material.endswith("_chocolate"):
            return CHOCOLATE
        if material not in FOODS:
            raise Problem("material", "unknown_material", material, accepted=sorted(FOODS))
        return _normalised(dict(zip(COMPONENTS, FOODS[material])))
    if "conductivity_w_mk" in material:
        return material
    return _normalised(material)


def _normalised(composition: "Readable") -> "Document":
    total = sum(composition[name] for name in COMPONENTS)
    if total < 0.98 or total > 1.02:
        raise Problem("material", "composition_sum", total, 0.98, 1.02)
    mixture = {name: composition[name] / total for name in COMPONENTS}
    mixture["density_kg_m3"] = composition.get("density_kg_m3")
    return mixture


def _at(polynomial: tuple[float, float, float], temp_c: float) -> float:
    return polynomial[0] + temp_c * (polynomial[1] + temp_c * polynomial[2])


def volume_fractions(mixture: "Readable", temp_c: float) -> tuple[list[float], float]:
    """Volume fraction of each component and the specific volume (m³/kg) of a normalised composition."""
    volumes = [mixture[name] / _at(DENSITY[name], temp_c) for name in COMPONENTS]
    total = sum(volumes)
    return [volume / total for volume in volumes], total


def conductivity(material: "Readable", temp_c: float) -> float:
    """Thermal conductivity in W/(m K) of a resolved material: parallel rule, the ASHRAE choice for liquids."""
    if "conductivity_w_mk" in material:
        given: float = material["conductivity_w_mk"]
        return given
    fractions, _ = volume_fractions(material, temp_c)
    return sum(share * _at(CONDUCTIVITY[name], temp_c) for name, share in zip(COMPONENTS, fractions))


def density(material: "Readable", temp_c: float) -> float:
    """Density in kg/m³ of a resolved material without air.

    A weighed density is taken to be that at 21 °C and keeps the composition's thermal expansion.
    """
    if "conductivity_w_mk" in material:
        given: float = material["density_kg_m3"]
        return given
    by_composition = 1.0 / volume_fractions(material, temp_c)[1]
    if material.get("density_kg_m3") is None:
        return by_composition
    weighed: float = material["density_kg_m3"]
    return weighed * by_composition * volume_fractions(material, 21.0)[1]


def heat_polynomial(material: "Readable") -> tuple[float, float, float]:
    """(a0, a1, a2) of the specific heat in J/(kg K) of a resolved material, exact from 0 to 150 °C."""
    if "conductivity_w_mk" in material:
        return (material["heat_capacity_j_kgk"], 0.0, 0.0)
    terms = [0.0, 0.0, 0.0]
    for name in COMPONENTS:
        for power in range(3):
            terms[power] += material[name] * HEAT_CAPACITY[name][power]
    return (terms[0], terms[1], terms[2])


def heat_capacity(material: "Readable", temp_c: float) -> float:
    """Specific heat in J/(kg K) of a resolved material at a temperature in °C."""
    value = _at(heat_polynomial(material), temp_c)
    if temp_c < 0.0 and "water" in material:
        value += material["water"] * (_at(WATER_BELOW_ZERO, temp_c) - _at(HEAT_CAPACITY["water"], temp_c))
    return value


def _integral(polynomial: tuple[float, float, float], temp_c: float) -> float:
    return temp_c * (polynomial[0] + temp_c * (polynomial[1] / 2.0 + temp_c * polynomial[2] / 3.0))


def enthalpy(material: "Readable", temp_c: float) -> float:
    """Enthalpy in J/kg of a resolved material over that at 0 °C, by exact integration of the polynomials."""
    value = _integral(heat_polynomial(material), temp_c)
    if temp_c < 0.0 and "water" in material:
        value += material["water"] * (_integral(WATER_BELOW_ZERO, temp_c) - _integral(HEAT_CAPACITY["water"], temp_c))
    return value


def properties(request: "MaterialsPropertiesRequest") -> "MaterialsPropertiesReply":
    """Density, specific heat, conductivity and diffusivity of a material at a temperature.

    Request: material (name, composition or constants), temp_c (°C).
    Reply: density_kg_m3 (kg/m³), heat_capacity_j_kgk (J/(kg K)), conductivity_w_mk (W/(m K)), diffusivity_m2_s (m²/s).
    Raises: Problem unknown_material, composition_sum, too_low or too_high (temp_c outside −40…150 °C).
    Relation: component polynomials, ASHRAE mixing rules; conductivity ±10 %, specific heat spread ±15 % between models.
    Example: USDA caramel at 51 °C has 1895.6 J/(kg K), 1419.0 kg/m³ and 0.2956 W/(m K).
    Source: choi_okos_1986.
    """
    material, temp_c = resolved(request["material"]), request["temp_c"]
    rho, cp, k = density(material, temp_c), heat_capacity(material, temp_c), conductivity(material, temp_c)
    return {
        "density_kg_m3": rho,
        "heat_capacity_j_kgk": cp,
        "conductivity_w_mk": k,
        "diffusivity_m2_s": k / (rho * cp),
    }


def heat(request: "MaterialsHeatRequest") -> "MaterialsHeatReply":
    """Heat a mass takes up between two temperatures.

    Request: material, mass_kg (kg), from_c (°C), to_c (°C).
    Reply: energy_j (J), negative when it cools.
    Raises: Problem unknown_material, composition_sum, too_low or too_high (outside −40…150 °C).
    Relation: exact integral of the specific-heat polynomials; fat melting not included.
    Example: 1 kg of USDA caramel from 21 to 74 °C takes 100 177 J.
    Source: choi_okos_1986.
    """
    material = resolved(request["material"])
    rise = enthalpy(material, request["to_c"]) - enthalpy(material, request["from_c"])
    return {"energy_j": request["mass_kg"] * rise}
