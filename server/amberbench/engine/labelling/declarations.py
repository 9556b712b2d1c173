"""What a label declares: the net weight in both units, how high its letters must be, nutrition, check digits.

Guide only: local rules decide.
"""

import math

from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document, Readable

OZ_KG = 0.028349523125
LB_OZ = 16.0
IN_M, IN2_M2 = 0.0254, 0.00064516
# US: letters of the net weight by the area of the package's main face: up to (square inches), height (inches).
LETTERS_US = ((5.0, 1 / 16), (25.0, 1 / 8), (100.0, 3 / 16), (400.0, 1 / 4))
LETTERS_US_MOST = 1 / 2
# EU: letters of the net weight by its grams: up to (g), height (mm).
LETTERS_EU = ((50.0, 2.0), (200.0, 3.0), (1000.0, 4.0))
LETTERS_EU_MOST = 6.0
FAT = ("fat", "saturated_fat", "trans_fat")
SUGARS = ("carbohydrate", "fibre", "sugars", "added_sugars", "protein")
NUTRIENTS = ("energy_kcal",) + FAT + ("cholesterol_mg", "sodium_mg") + SUGARS
# So far below a tie two figures are one: 2.675 is not 2.67499999.
TIE = 1e-9


def net_weight(request: "Readable") -> "Document":
    """The declared net weight in both units, neither saying more than there is, and how high it must be printed.

    Request: label_kg (kg, what the box is declared with), rule (us or eu), face_m2 (m², the package's main face; null:
    unknown).
    Reply: grams (g, whole below 1 kg), ounces (oz, to hundredths), pounds (whole) and rest_ounces (oz, what is left of
    them), letter_m (m, least height of its letters; null: the face is unknown), area_wanted (whether it is asked for).
    Raises: none of its own.
    Relation: each figure rounded down, so that it does not overstate. us: by the face of the package, not of the label;
    the lower-case o is measured where there is one. eu: by the weight.
    Source: cfr_801_62 for the US, rounding down too; eu_net_weight for the EU.
    """
    label = request["label_kg"]
    ounces = math.floor(label / OZ_KG * 100.0 + 1e-6) / 100.0
    pounds = int(ounces / LB_OZ + TIE)
    face = request["face_m2"]
    letter: float | None
    if request["rule"] == "eu":
        letter = _height(LETTERS_EU, LETTERS_EU_MOST, label * 1000.0) / 1000.0
    else:
        letter = None if face is None else _height(LETTERS_US, LETTERS_US_MOST, face / IN2_M2) * IN_M
    return {
        "grams": math.floor(label * 1000.0 + 1e-6),
        "ounces": ounces,
        "pounds": pounds,
        "rest_ounces": math.floor((ounces - pounds * LB_OZ) * 100.0 + 0.5) / 100.0,
        "letter_m": letter,
        "area_wanted": request["rule"] == "us" and face is None,
    }


def _height(rows: "tuple[tuple[float, float], ...]", most: float, value: float) -> float:
    for up_to, height in rows:
        if value <= up_to + TIE:
            return height
    return most


def nutrition(request: "Readable") -> "Document":
    """Figures of a nutrition panel as they are declared in the US.

    Request: amounts (by nutrient: energy in kcal, what ends in _mg in milligrams, others in grams; null: not known).
    Reply: declared (by nutrient: value in the same unit, less_than: whether it says "less than" that).
    Raises: none of its own.
    Relation: 21 CFR 101.9(c): steps by size, ties up.
    Source: fda_appendix_h; memory that ties go up and that added sugars follow sugars.
    """
    declared: "Document" = {}
    for name in sorted(request["amounts"]):
        if request["amounts"][name] is not None:
            declared[name] = _declared(name, request["amounts"][name])
    return {"declared": declared}


def _declared(name: str, value: float) -> "Document":
    if name == "cholesterol_mg" and 2.0 <= value <= 5.0:
        return {"value": 5.0, "less_than": True}
    if name in SUGARS and 0.5 <= value < 1.0:
        return {"value": 1.0, "less_than": True}
    least, steps = _steps(name)
    if value < least:
        return {"value": 0.0, "less_than": False}
    step = next(size for up_to, size in steps if value <= up_to)
    return {"value": math.floor(value / step + 0.5 + TIE) * step, "less_than": False}


def _steps(name: str) -> "tuple[float, tuple[tuple[float, float], ...]]":
    """From what on a nutrient is not zero, and the steps it is rounded to: (up to, step)."""
    if name == "energy_kcal":
        return 5.0, ((50.0, 5.0), (1e9, 10.0))
    if name in FAT:
        return 0.5, ((5.0 - 1e-9, 0.5), (1e9, 1.0))
    if name == "cholesterol_mg":
        return 2.0, ((1e9, 5.0),)
    if name == "sodium_mg":
        return 5.0, ((140.0, 5.0), (1e9, 10.0))
    return 0.5, ((1e9, 1.0),)


def check_digit(request: "Readable") -> "Document":
    """The check digit of a GS1 number.

    Request: digits (without the check digit).
    Reply: check_digit.
    Raises: Problem not_digits (digits).
    Relation: weights 3, 1, 3 … from the right; what is missing to the next ten.
    Example: 629104150021 has 3.
    Source: check_digits_gs1.
    """
    digits = request["digits"]
    if not digits or [one for one in digits if one not in "0123456789"]:
        raise Problem("digits", "not_digits", digits)
    total = sum(int(digits[-1 - n]) * (1 if n % 2 else 3) for n in range(len(digits)))
    return {"check_digit": (10 - total % 10) % 10}
