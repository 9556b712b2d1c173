"""Numbers as a reader sees them: as fine as scales, rules and infrared thermometers read. `figures.json` says how, for
the phone's `pwa/src/text/figures.ts` too; both pass the examples of `tests/figures.json`.

A unit's factor and offset are exact by definition (NIST SP 811, appendix B.8): SI = value * factor + offset; `typed`
are its decimals while it is typed. `chosen` and `fixed` say which unit a dimension is shown in, by the units a reader
chose. A unit's ladder is how it is written, small values first: the first rung is taken below whose `below` the value
stays once it is rounded, to `decimals`, to one of so many `parts`, or to whole units of the smaller unit `and`. A tie
goes away from zero. `words` are those of a unit that is a word, for one and for more. `fine` and `in_grams` are
patterns of names: chocolate is in temper within a kelvin, and a deposit is weighed in grams wherever caramel is
weighed in pounds.
"""

import json
import math
import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any

SPECIFICATION: dict[str, Any] = json.loads(Path(__file__).with_name("figures.json").read_text(encoding="utf-8"))
METRIC = {"mass": "kg", "length": "mm", "temperature": "°C", "power": "W"}
# From here on by power of ten.
HUGE = 1e9
# What lies beyond is called infinite; a whole number of JSON may be larger than any float.
MOST = 1e300
MOST_FINER = 6


def dimension_of(name: str) -> str:
    """What a name measures, by its suffix: "piece_length_m" → "length"; "" for a plain number."""
    suffixes: dict[str, str] = SPECIFICATION["suffixes"]
    return next((dimension for suffix, dimension in suffixes.items() if f"_{name}".endswith(f"_{suffix}")), "")


def figure(
    name: str, value: float, language: str = "en", units: dict[str, str] = METRIC, finer: int = 0, toward: int = 0
) -> str:
    """An SI value (°C; not NaN) with its unit; the suffix of the name says which. A number alone where there is none.

    `finer` asks for so many decimals more than a reader needs, to tell two values apart. `toward`: 1 rounds up and −1
    down, so that a limit, typed as it reads, is kept; 0 to the nearest.
    """
    value = value if abs(value) < MOST else math.inf if value > 0 else -math.inf
    marks = _marks(language)
    ladder = SPECIFICATION["ladders"][_ladder_name(name, units)]
    rung = next(rung for rung in ladder if _reaches(rung, value))
    if finer:
        rung = {"unit": rung["unit"], "decimals": rung.get("decimals", 1) + finer}
    shown, steps = _measured(rung, value, toward)
    text = _written(rung, abs(shown), steps, marks, language)
    return (SPECIFICATION["minus"] if shown < 0 and steps else "") + text


def finer_to_tell_apart(name: str, value: Any, *others: Any, units: dict[str, str] = METRIC) -> int:
    """How many more decimals `figure` needs until a value reads like none of the others that differ from it.

    0 for what is no number.
    """
    if not isinstance(value, int | float) or value != value:  # NaN
        return 0
    apart = [other for other in others if isinstance(other, int | float) and other != value]
    for finer in range(MOST_FINER):
        if figure(name, value, "en", units, finer) not in [figure(name, other, "en", units, finer) for other in apart]:
            return finer
    return MOST_FINER


def _marks(language: str) -> dict[str, Any]:
    known: dict[str, dict[str, Any]] = SPECIFICATION["marks"]
    return known["en"] if language in SPECIFICATION["written_as_en"] else known.get(language.split("-")[0], known["en"])


def _ladder_name(name: str, units: dict[str, str]) -> str:
    dimension = dimension_of(name)
    if dimension not in SPECIFICATION["chosen"]:
        return str(SPECIFICATION["fixed"].get(dimension, ""))
    chosen = SPECIFICATION["chosen"][dimension]
    unit = chosen["unit"].get(units[chosen["by"]], units[chosen["by"]])
    if dimension == "mass" and unit in ("lb", "oz") and re.search(SPECIFICATION["in_grams"], name):
        return "kg"
    return f"{unit} fine" if dimension == "temperature" and re.search(SPECIFICATION["fine"], name) else unit


def _measured(rung: dict[str, Any], value: float, toward: int = 0) -> tuple[float, float]:
    """The value in a rung's unit, and its size in whole steps of the rung."""
    unit = SPECIFICATION["units"].get(rung["unit"], {"factor": 1})
    shown = (value - unit.get("offset", 0)) / unit["factor"]
    return shown, _nearest(abs(shown) * _steps_in_one(rung), toward if shown >= 0 else -toward)


def _reaches(rung: dict[str, Any], value: float) -> bool:
    return "below" not in rung or _measured(rung, value)[1] / _steps_in_one(rung) < rung["below"]


def _steps_in_one(rung: dict[str, Any]) -> int:
    if "and" in rung:
        units = SPECIFICATION["units"]
        return int(_nearest(units[rung["unit"]]["factor"] / units[rung["and"]]["factor"]))
    return int(rung["parts"]) if "parts" in rung else 10 ** int(rung["decimals"])


def _nearest(size: float, toward: int = 0) -> float:
    """The nearest whole number, ties up, or that above (1) or below (−1); noise of binary fractions decides none."""
    if not math.isfinite(size):
        return size
    plain = float(f"{size:.12g}")
    return math.ceil(plain) if toward > 0 else math.floor(plain + (0.0 if toward else 0.5))


def _written(rung: dict[str, Any], size: float, steps: float, marks: dict[str, Any], language: str) -> str:
    unit = _named(rung["unit"], steps > _steps_in_one(rung), language)
    if size >= HUGE:
        return _with_unit(_by_power(size).replace(".", marks["decimal"]), unit)
    whole, rest = divmod(int(steps), _steps_in_one(rung))
    if "and" in rung:
        parts = [(whole, unit), (rest, rung["and"])]
        return _joined(_with_unit(_grouped(n, marks), one) for n, one in parts if n)
    if "parts" in rung:
        shared = math.gcd(rest, rung["parts"])
        fraction = f"{rest // shared}/{rung['parts'] // shared}"
        words = [_grouped(whole, marks)] * (whole > 0 or rest == 0) + [fraction] * (rest > 0)
        return _with_unit(_joined(words), unit)
    decimals = str(rest).zfill(rung["decimals"]).rstrip("0") if rest else ""
    return _with_unit(_grouped(whole, marks) + (marks["decimal"] + decimals if decimals else ""), unit)


def _named(unit: str, several: bool, language: str) -> str:
    words = SPECIFICATION["words"].get(unit)
    if words:
        return str(words.get(language.split("-")[0], words["en"])[several])
    return str(SPECIFICATION["signs"].get(unit, unit))


def _joined(parts: Iterable[str]) -> str:
    return str(SPECIFICATION["part_space"]).join(parts)


def _by_power(size: float) -> str:
    if math.isinf(size):
        return "∞"
    mantissa, power = f"{size:.2e}".split("e")
    return f"{mantissa.rstrip('0').rstrip('.')}e+{int(power)}"


def _with_unit(number: str, unit: str) -> str:
    return f"{number}{SPECIFICATION['unit_space']}{unit}" if unit else number


def _grouped(whole: int, marks: dict[str, Any]) -> str:
    return f"{whole:,}".replace(",", marks["group"]) if whole >= marks["from"] else str(whole)
