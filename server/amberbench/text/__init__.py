"""Every sentence of server, engine problems and phone: `<language>/*.json`, and how values stand in them."""

import json
import re
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from typing import Any

from .figures import SPECIFICATION, dimension_of, figure, finer_to_tell_apart

FOLDER = Path(__file__).parent
VARIANTS: dict[str, dict[str, Any]] = json.loads((FOLDER / "languages.json").read_text(encoding="utf-8"))["variants"]
FALL_BACK = "en"
PLACEHOLDER = re.compile(r"\{(\w+)\}")
PLACE = re.compile(r"\[\d+\]")  # of an entry in a list
# A limit is rounded to the side that is accepted, so that it may be typed as it reads.
TOWARD = {"given": 0, "low": 1, "high": -1}
UNIT_SUFFIX = re.compile(r"_(kg|m2|m3|m|c|k|s|w)$")


def languages() -> list[str]:
    """The languages there are texts for, English first."""
    others = sorted(one.name for one in FOLDER.iterdir() if any(one.glob("*.json")) and one.name != FALL_BACK)
    return [FALL_BACK, *others]


def chain(language: str) -> list[str]:
    """Where a reader's words are looked for: in a variant, then in its language."""
    return list(dict.fromkeys([language, language.split("-")[0]]))


def varied(sentence: str, variant: str) -> str:
    """A sentence of a language in the words of its variant."""
    return _pattern(variant).sub(lambda match: _in_case_of(match[0], VARIANTS[variant]["words"]), sentence)


@cache
def _pattern(variant: str) -> re.Pattern[str]:
    longest_first = sorted(VARIANTS[variant]["words"], key=len, reverse=True)
    return re.compile(rf"(?<![\w{{])(?:{'|'.join(longest_first)})(?![\w}}])", re.IGNORECASE)


def _in_case_of(found: str, words: dict[str, str]) -> str:
    word = words[found.lower()]
    return word[0].upper() + word[1:] if found[0].isupper() else word


def language_of(locale: str) -> str | None:
    """The language a reader of a locale ("es-US", "en-GB", in any case) gets; None where there are no texts for it."""
    lower = locale.lower()
    for variant, rule in VARIANTS.items():
        if lower in (one.lower() for one in rule["read_by"]):
            return variant
    return next((one for one in languages() if one == lower.split("-")[0]), None)


def sentence(code: str, values: dict[str, Any], language: str = FALL_BACK) -> str:
    """The sentence of a key, its placeholders filled in metric units; the key itself when nobody has it.

    The suffix of a value's name decides its form: _kg, _m, _m2, _c, _k, _s, _w, _at_ms. A sentence with forms for one
    and for others goes by the value `n`.
    """
    found = catalogue(language).get(code) or catalogue(FALL_BACK).get(code)
    if found is None:
        return code
    chosen = found if isinstance(found, str) else found["one" if values.get("n") == 1 else "other"]
    return PLACEHOLDER.sub(lambda match: _filled(match[1], values, match[0], language), chosen)


def problem_sentence(problem: dict[str, Any], language: str = FALL_BACK, named: str | None = None) -> str:
    """A problem document as a plain sentence: field, value and what is accepted; named: what its field is called."""
    last = PLACE.sub("", problem["field"].split(".")[-1])
    name, unit = _measured_as(problem["field"], last, problem.get("unit") or "")
    figures = {one: problem.get(one) for one in ("given", "low", "high")}
    finer = finer_to_tell_apart(name, *figures.values())
    shown = {one: _shown(name, value, unit, language, finer, TOWARD[one]) for one, value in figures.items()}
    accepted = ", ".join(_word(one, language) for one in problem.get("accepted") or [])
    values = shown | {"field": named or _field_name(problem["field"], last, language), "accepted": accepted}
    return sentence(f"problem.{problem['code']}", values, language)


@cache
def catalogue(language: str) -> dict[str, Any]:
    """Every sentence of a language by its key, or its plural forms; none where there is no such language."""
    if language not in languages():
        return {}
    found: dict[str, Any] = {}
    if language in VARIANTS:
        for key, said in catalogue(language.split("-")[0]).items():
            forms = said.items() if isinstance(said, dict) else ()
            found[key] = {form: varied(one, language) for form, one in forms} or varied(said, language)
    for file in sorted((FOLDER / language).glob("*.json")):
        found.update(json.loads(file.read_text(encoding="utf-8")))
    return found


def _filled(name: str, values: dict[str, Any], unfilled: str, language: str) -> str:
    return formatted(name, values[name], language) if name in values else unfilled


def formatted(name: str, value: Any, language: str = FALL_BACK, finer: int = 0, toward: int = 0) -> str:
    """A value as a reader sees it, in metric units: formatted("mass_kg", 1.134) → "1.13 kg"."""
    if isinstance(value, list | tuple):
        return ", ".join(formatted(name, one, language) for one in value)
    if value is None or value != value:  # NaN
        return str(SPECIFICATION["nothing"])
    if isinstance(value, bool) or not isinstance(value, int | float):
        return str(value)
    if name.endswith("_at_ms") or name == "due_ms":
        return datetime.fromtimestamp(value / 1000, UTC).strftime("%H:%M UTC")
    return figure(name, value, language, finer=finer, toward=toward)


def _shown(name: str, value: Any, unit: str, language: str, finer: int, toward: int) -> str:
    if value is None:
        return ""
    return formatted(name, value, language, finer, toward) + (unit if isinstance(value, int | float) else "")


def _measured_as(field: str, last: str, unit: str) -> tuple[str, str]:
    """(the name that says what the values of a problem measure, the unit to write behind them where no name does)."""
    whole = PLACE.sub("", field).replace(".", "_")
    name = whole if dimension_of(whole) else last
    suffix = SPECIFICATION["suffix_of"].get(unit)
    if suffix:
        # "These seconds give 5000 W": what is shown is not what the field measures.
        return name if dimension_of(name) == dimension_of(suffix) else suffix, ""
    return name, "" if dimension_of(name) or not unit else f"{SPECIFICATION['unit_space']}{unit}"


def _field_name(path: str, last: str, language: str) -> str:
    for key in (f"field.{PLACE.sub('', path)}", f"field.{last}"):
        found = sentence(key, {}, language)
        if found != key:
            return found
    return UNIT_SUFFIX.sub("", last).replace("_", " ")


def _word(one: Any, language: str) -> str:
    found = sentence(f"word.{one}", {}, language)
    return str(one) if found == f"word.{one}" else found
