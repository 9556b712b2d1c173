"""Tempering chocolate by seed, keeping the bowl in its working range, and salting in time."""

import math

from ...core.check import constant
from ...core.problems import Problem
from ...core.statistics import SD_TO_10_PERCENT
from ...physics import pot as physics_pot

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from ...core.annotations import Document, Readable
    from ...physics.pot import Pot
    from ...types import ChocolateHoldRequest, ChocolateTemperReply, ChocolateTemperRequest, Input, Step, Warning


# Melt, cool and work, each from and to in °C. Two tables of practice, read: melt 50–55 / 45–50 / 45–50 and 45–50 /
# 40–45 / 40 (here both together), cool 28–29 / 27–28 for both; white 26–27 in the first, kept here, 24–25 in the
# second; work from the first.
TARGETS = {
    "dark_chocolate": (45.0, 55.0, 28.0, 29.0, 31.0, 32.0),
    "milk_chocolate": (40.0, 50.0, 27.0, 28.0, 30.0, 31.0),
    "white_chocolate": (40.0, 50.0, 26.0, 27.0, 29.0, 30.0),
}
LINES = ("melt_low_c", "melt_high_c", "cool_low_c", "cool_high_c", "work_low_c", "work_high_c")
UPWARDS = ("cool_low_c", "cool_high_c", "work_low_c", "work_high_c", "melt_low_c", "melt_high_c")
# Source beckett_2009: specific heat at 40–60 and at 15–40 °C in J/(kg K), latent heat in J/kg (white as milk: assumed).
LIQUID_J_KGK, SOLID_J_KGK = 1670.0, 1590.0
LATENT_J_KG = {"dark_chocolate": 46000.0, "milk_chocolate": 44000.0, "white_chocolate": 44000.0}
SEED_MELTS_C = 33.8  # crystal form V, the one wanted (wille_lutton_1966)
MOST_SEED = 0.5  # more of the whole than this as seed is no longer stirred in by hand (assumed)
LEAST_HANDY_KG = 0.9  # less loses its temper too fast by hand (common practice, no published source)
WARM_THICK_CHOCOLATE_K = 0.5  # warmed by so little when too thick (from memory)
# Share of its latent heat that a tempered bowl gives off per kelvin it falls, as new crystals grow: 0 to 4 %, evenly.
# Assumed: it carries some 1 to 4 % of its fat as crystals and is too thick with many more (from memory).
CRYSTAL_SHARE, CRYSTAL_SHARE_SD = 0.02, 0.0115


def lines(request: "Readable") -> "Document":
    """The heat lines (°C, by name) of the shop's own chocolate, else of its kind; refused when out of order."""
    given = request["targets"]
    if given is None:
        return dict(zip(LINES, TARGETS[request["chocolate"]]))
    for index in range(1, len(UPWARDS)):
        lower, upper = UPWARDS[index - 1], UPWARDS[index]
        if given[lower] > given[upper]:
            raise Problem("targets." + upper, "heat_line_too_low", given[upper], low=given[lower], unit="°C")
    result: "Document" = given
    return result


def seed_kg(request: "Readable", melted_kg: float, melt_c: float) -> float:
    """Seed in kg for so much chocolate melted to melt_c (°C), when all of it melts: `plan`'s balance, at the bench."""
    melt_gives_j_kg, seed_takes_j_kg, bowl_gives_j = _heats_between(request, melt_c)
    return min(
        (melted_kg * melt_gives_j_kg + bowl_gives_j) / seed_takes_j_kg, MOST_SEED / (1.0 - MOST_SEED) * melted_kg
    )


def _heats_between(request: "Readable", melt_c: float) -> tuple[float, float, float]:
    """(J each kg of the melt gives, J each kg of seed takes, J the bowl gives) until all are at the working range."""
    end_c, seed_c = lines(request)["work_high_c"], _seed_c(request)
    bowl = request["bowl"]
    bowl_j_k = physics_pot.VESSEL_SHARE * bowl["mass_kg"] * bowl["heat_capacity_j_kgk"] if bowl else 0.0
    seed_takes_j_kg = SOLID_J_KGK * (end_c - seed_c) + LATENT_J_KG[request["chocolate"]]
    return LIQUID_J_KGK * (melt_c - end_c), seed_takes_j_kg, bowl_j_k * (melt_c - end_c)


def _seed_c(request: "Readable") -> float:
    result: float = request["room_c"] if request["seed_c"] is None else request["seed_c"]
    return result


def remedies(line: "Readable") -> "list[Warning]":
    """What to do with a bowl that is too warm, too cool, too thick."""
    low_c, high_c = line["work_low_c"], line["work_high_c"]
    return [
        {"code": "chocolate_too_warm", "values": {"bowl_high_c": high_c}},
        {"code": "chocolate_too_cool", "values": {"bowl_low_c": low_c, "bowl_high_c": high_c}},
        {"code": "chocolate_too_thick", "values": {"warmer_k": WARM_THICK_CHOCOLATE_K, "bowl_high_c": high_c}},
    ]


def _refuse(request: "Readable", line: "Readable", melt_c: float, seed_c: float) -> None:
    if melt_c < line["melt_low_c"]:
        raise Problem("melt_c", "melt_too_cool", melt_c, low=line["melt_low_c"], unit="°C")
    if melt_c > line["melt_high_c"]:
        raise Problem("melt_c", "melt_too_warm", melt_c, high=line["melt_high_c"], unit="°C")
    melts_c = min(SEED_MELTS_C, line["work_high_c"])
    if request["room_c"] >= line["cool_low_c"]:
        raise Problem("room_c", "room_too_warm_for_chocolate", request["room_c"], high=line["cool_low_c"], unit="°C")
    if seed_c >= melts_c:
        raise Problem("seed_c", "seed_melts", seed_c, high=melts_c, unit="°C")


def plan(request: "ChocolateTemperRequest") -> "ChocolateTemperReply":
    """How much seed cools a melt to its working range, and the heat lines of each step.

    Request: chocolate, targets {melt_low_c, melt_high_c, cool_low_c, cool_high_c, work_low_c, work_high_c (°C)} or
    null, mass_kg (kg, seed included), melt_c (°C) or null, seed_c (°C) or null, room_c (°C), bowl {mass_kg (kg),
    heat_capacity_j_kgk (J/(kg K))} or null (none counted), basis, batches.
    Reply: seed_kg (kg), melt_kg (kg), seed_share, steps (name, low_c and high_c in °C), remedies, warnings, inputs.
    Warnings: small_bowl (mass_kg, handy_kg), heavy_bowl (seed_percent, most_percent): cut to the most seed.
    Raises: Problem melt_too_cool, melt_too_warm (melt_c), seed_melts (seed_c at or above what the seed bears),
    room_too_warm_for_chocolate (room_c), heat_line_too_low (targets out of order).
    Relation: heat given by the melt and by the share of the bowl that follows it = heat taken by the seed, warmed and
    melted, all ending at the upper end of the working range; nothing lost to the room. So it is the most seed a bowl
    can take: one that stands long wants less, and some should stay unmelted.
    Example: dark from 45 to 32 °C with seed of 20 °C takes 25.0 % seed; 1 kg in a glass bowl of 1.5 kg takes 35.8 %.
    Source: beckett_2009 for heats (white chocolate's latent heat assumed), wille_lutton_1966 for the seed's melting
    point, practice for heat lines and a small bowl; memory for what a thick bowl is warmed by.
    """
    line = lines(request)
    melt_c = line["melt_low_c"] if request["melt_c"] is None else request["melt_c"]
    _refuse(request, line, melt_c, _seed_c(request))
    melt_gives_j_kg, seed_takes_j_kg, bowl_gives_j = _heats_between(request, melt_c)
    wanted = (melt_gives_j_kg + bowl_gives_j / request["mass_kg"]) / (melt_gives_j_kg + seed_takes_j_kg)
    share = min(wanted, MOST_SEED)
    return {
        "seed_kg": share * request["mass_kg"],
        "melt_kg": (1.0 - share) * request["mass_kg"],
        "seed_share": share,
        "steps": _steps(line),
        "remedies": remedies(line),
        "warnings": _bowl_warnings(request["mass_kg"], wanted),
        "inputs": _assumed(request, line) + _heats(request["chocolate"]) + _bowl_rows(request),
    }


def _bowl_warnings(mass_kg: float, wanted: float) -> "list[Warning]":
    found: "list[Warning]" = []
    if mass_kg < LEAST_HANDY_KG:
        found.append({"code": "small_bowl", "values": {"mass_kg": mass_kg, "handy_kg": LEAST_HANDY_KG}})
    if wanted > MOST_SEED:
        values = {"seed_percent": float(math.ceil(100.0 * wanted)), "most_percent": 100.0 * MOST_SEED}
        found.append({"code": "heavy_bowl", "values": values})
    return found


def _steps(line: "Readable") -> "list[Step]":
    """The heat lines of each step."""
    ranges: "list[tuple[Any, float, float]]" = [
        ("melt", line["melt_low_c"], line["melt_high_c"]),
        ("seed", line["work_high_c"], max(line["work_high_c"], SEED_MELTS_C)),
        ("cool", line["cool_low_c"], line["cool_high_c"]),
        ("work", line["work_low_c"], line["work_high_c"]),
    ]
    return [{"name": name, "low_c": low_c, "high_c": high_c} for name, low_c, high_c in ranges]


def _heats(chocolate: str) -> "list[Input]":
    """Input rows of the heats in the balance, the seed's melting point and the remedy for a thick bowl."""
    return [
        constant("temper.liquid_j_kgk", LIQUID_J_KGK, "J/(kg K)", "beckett_2009", "published"),
        constant("temper.solid_j_kgk", SOLID_J_KGK, "J/(kg K)", "beckett_2009", "published"),
        constant("temper.seed_melts_c", SEED_MELTS_C, "°C", "wille_lutton_1966", "published"),
        constant("temper.thick_k", WARM_THICK_CHOCOLATE_K, "K", "memory"),
        _latent_row(chocolate),
    ]


def _bowl_rows(request: "Readable") -> "list[Input]":
    return [constant("melt.vessel_share", physics_pot.VESSEL_SHARE, "")] if request["bowl"] is not None else []


def _latent_row(chocolate: str) -> "Input":
    """Its latent heat; nobody's measurement was found for white."""
    latent_j_kg = LATENT_J_KG[chocolate]
    if chocolate == "white_chocolate":
        return constant("temper.latent_heat", latent_j_kg, "J/kg")
    return constant("temper.latent_heat", latent_j_kg, "J/kg", "beckett_2009", "published")


def _assumed(request: "Readable", line: "Readable") -> "list[Input]":
    """Rows of the heat lines, when they are those of the kind."""
    if request["targets"] is not None:
        return []
    return [constant("temper." + name, line[name], "°C", "practice", measure_by="chocolate_label") for name in LINES]


def working_time(request: "ChocolateHoldRequest") -> "Document":
    """How long until a bowl of tempered chocolate leaves its working range in this room.

    Request: chocolate, targets {melt_low_c, melt_high_c, cool_low_c, cool_high_c, work_low_c, work_high_c (°C)} or
    null, mass_kg (kg), now_c (°C), room_c (°C), bowl {mass_kg (kg), heat_capacity_j_kgk (J/(kg K))} or null, basis,
    batches.
    Reply: state (in_range, too_warm, too_cool), seconds_s (s), low_s (s), high_s (s), remedy or null, inputs.
    Raises: Problem room_too_warm_for_chocolate (a room that does not cool the bowl), heat_line_too_low (targets out of
    order).
    Relation: heat content over heat loss by still air and radiation, as a bowl of caramel in the melt; new crystals
    give off 2 % of the latent heat per kelvin. Range from the losses and from 0 to 4 % of crystals. A bowl may thicken
    before it is too cool.
    Example: 3 kg of dark in a bowl of 1.5 kg from 32 to 31 °C at 20 °C: about 13 minutes, 7 to 23; practice warms it a
    little every 15 to 20 (common practice, no published source).
    Source: mcadams, beckett_2009, practice for heat lines; assumed for crystals, the spread of losses and the
    bowl's share.
    """
    line, now_c = lines(request), request["now_c"]
    low_c, high_c = line["work_low_c"], line["work_high_c"]
    if request["room_c"] >= low_c:
        raise Problem("room_c", "room_too_warm_for_chocolate", request["room_c"], high=low_c, unit="°C")
    state = "too_warm" if now_c > high_c else "too_cool" if now_c < low_c else "in_range"
    seconds_s, sd = cooling_between(request, now_c, low_c) if state == "in_range" else (0.0, 0.0)
    spread = math.exp(SD_TO_10_PERCENT * sd)
    rows = [constant("temper.loss_sd", physics_pot.LOSS_SD, ""), constant("temper.crystal_share", CRYSTAL_SHARE, "1/K")]
    rows.append(constant("melt.loss_w", bowl_of(request)[0].loss_w(now_c), "W", "mcadams"))
    rows.append(_latent_row(request["chocolate"]))
    return {
        "state": state,
        "seconds_s": seconds_s,
        "low_s": seconds_s / spread,
        "high_s": seconds_s * spread,
        "remedy": {"too_warm": remedies(line)[0], "too_cool": remedies(line)[1]}.get(state),
        "inputs": _assumed(request, line) + rows + _bowl_rows(request),
    }


def bowl_of(request: "Readable") -> "tuple[Pot, float]":
    """(the bowl as a pot of the melt, what growing crystals add to its heat capacity in J/K)."""
    pot = physics_pot.Pot(request["mass_kg"], request["chocolate"], request["bowl"], request["room_c"])
    return pot, CRYSTAL_SHARE * LATENT_J_KG[request["chocolate"]] * request["mass_kg"]


def cooling_between(request: "Readable", from_c: float, to_c: float) -> tuple[float, float]:
    """(seconds a bowl takes between two temperatures in °C, standard deviation of their logarithm)."""
    pot, crystals_j_k = bowl_of(request)
    crystals_sd = CRYSTAL_SHARE_SD / CRYSTAL_SHARE * crystals_j_k / (pot.capacity(to_c) + crystals_j_k)
    sd = math.sqrt(physics_pot.LOSS_SD * physics_pot.LOSS_SD + crystals_sd * crystals_sd)
    return cooling_s(pot, crystals_j_k, from_c, to_c), sd


def cooling_s(pot: "Pot", crystals_j_k: float, from_c: float, to_c: float) -> float:
    """Seconds a bowl takes between two temperatures (°C) above the room's: ∫ capacity over loss, by midpoints.

    `crystals_j_k`: what growing crystals add to its heat capacity, in J/K.
    """
    parts = 40
    step_k = (from_c - to_c) / parts
    middles = [to_c + (index + 0.5) * step_k for index in range(parts)]
    return sum((pot.capacity(one) + crystals_j_k) / pot.loss_w(one) for one in middles) * step_k
