"""Numbers as a reader sees them, in metric units: as fine as scales, rules and infrared thermometers read.

`mark` is the decimal mark of the reader's language.
"""

import math

NARROW_SPACE = "\u202f"
# suffix of the name: (unit, factor from SI, most decimals)
METRIC = {
    "_kg": ("kg", 1.0, 2),
    "_m2": ("m²", 1.0, 3),
    "_m3": ("l", 1000.0, 2),
    "_m": ("mm", 1000.0, 1),
    "_c": ("°C", 1.0, 0),
    "_k": ("°C", 1.0, 1),
    "_w": ("W", 1.0, 0),
}
# The suffix whose numbers are in this unit of the engine.
SUFFIX_OF = {"kg": "_kg", "m": "_m", "m²": "_m2", "m³": "_m3", "°C": "_c", "K": "_k", "W": "_w", "s": "_s"}
# Below this much a finer unit is read more easily.
GRAMS_BELOW_KG = 1.0
# Bars are 12.7 mm high; nobody sets a frame to a tenth.
FRAME_M = 0.1
# Chocolate is in temper within a kelvin.
FINE = "bowl_"


def figure(name: str, value: float, mark: str = ".") -> str:
    """A number with its unit; the suffix of the name says which. A number alone where there is none."""
    if not math.isfinite(value):
        return str(value)
    ending = f"_{name}"
    if ending.endswith("_s"):
        return duration(value)
    for suffix, (unit, factor, decimals) in METRIC.items():
        if ending.endswith(suffix):
            if unit == "kg" and abs(value) < GRAMS_BELOW_KG:
                return f"{rounded(value * 1000.0, gram_decimals(value), mark)}{NARROW_SPACE}g"
            if unit == "mm" and abs(value) >= FRAME_M:
                decimals = 0
            if unit == "°C" and name.startswith(FINE):
                decimals = 1
            return f"{rounded(value * factor, decimals, mark)}{NARROW_SPACE}{unit}"
    return rounded(value, 3, mark)


def gram_decimals(value_kg: float) -> int:
    """Decimals of a weight in grams: a pinch of salt is a hundredth of a gram, a centre a tenth."""
    if abs(value_kg) < 0.001:
        return 2
    return 1 if abs(value_kg) < 0.1 else 0


def rounded(value: float, most: int, mark: str = ".") -> str:
    """A number with at most so many decimals, and none it does not need; very large ones by power of ten."""
    if abs(value) >= 1e9:
        return f"{value:.3g}".replace(".", mark)
    text = f"{value:.{most}f}"
    bare = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if bare == "-0" else bare.replace(".", mark)


def duration(seconds: float) -> str:
    """A duration in words that fit a glance: 45 s, 1 min 40 s, 47 min, 1 h 40 min."""
    whole = math.floor(abs(seconds) + 0.5)
    sign = "−" if seconds < 0 and whole else ""
    if whole < 100:
        return f"{sign}{whole} s"
    if whole < 600:
        return f"{sign}{whole // 60} min" + (f" {whole % 60} s" if whole % 60 else "")
    minutes = math.floor(whole / 60 + 0.5)
    if minutes < 100:
        return f"{sign}{minutes} min"
    return f"{sign}{minutes // 60} h" + (f" {minutes % 60} min" if minutes % 60 else "")
