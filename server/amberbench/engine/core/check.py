"""Checks a request against its fields, fills in the defaults, and lists the inputs with their basis."""

from . import units
from .field_kinds import BASES
from .fields import BATCHES
from .problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any, TypeGuard

    from ..types import Input
    from .annotations import Readable


def checked(fields: "Readable", request: "Any", path: str = "") -> "Any":
    """The request with every default filled in.

    Raises Problem for a field that is missing, unknown, of the wrong kind, not finite or out of range: of several for
    the first by name, as dicts keep no order everywhere.
    """
    if type(request) is not dict:
        raise Problem(path or "request", "not_a_record", request)
    unknown = [str(key) for key in request if key not in fields]
    if unknown:
        raise Problem(_join(path, min(unknown) or '""'), "unknown_field", accepted=sorted(fields))
    full = {}
    try:
        for name in fields:
            full[name] = _value(fields[name], request, name, _join(path, name))
    except Problem:
        for name in sorted(fields):
            _value(fields[name], request, name, _join(path, name))
    return full


def _join(path: str, name: str) -> str:
    return path + "." + name if path else name


def _value(field: "Readable", request: "Readable", name: str, path: str) -> "Any":
    if name in request and request[name] is not None:
        return CHECKS[field["kind"]](field, request[name], path)
    # Where null means something of its own (no base), it is not "left out".
    if name in request and field.get("nullable"):
        return None
    if "default" not in field:
        raise Problem(path, "missing", low=field.get("low"), high=field.get("high"), unit=field.get("unit"))
    default = field["default"]
    # A record's default may leave its own fields to their defaults.
    if type(default) is dict and field["kind"] == "record":
        return checked(field["fields"], default, path)
    return default


def default_in(field: "Readable", own_units: "Readable | Any") -> "Any":
    """The default of a field, a round figure in one of these units; None where it has none."""
    rounds = field.get("default_in", {})
    for unit in rounds:
        if unit in own_units:
            return units.to_si(rounds[unit], unit)
    return field.get("default")


LARGEST = 1e300
# A limit in °C reads as a whole degree of either scale, which is typed back: half a degree Fahrenheit lies between. Of
# other units converting leaves no more than the noise of binary fractions.
ONE_FIGURE_K, ONE_FIGURE_SHARE = 0.5 / 1.8, 1e-9


def is_above(value: float, limit: float, unit: str = "") -> bool:
    """Whether a value lies above a limit, by more than reading both in another unit may change."""
    return value > limit + _slack(limit, unit)


def is_below(value: float, limit: float, unit: str = "") -> bool:
    """Whether a value lies below a limit, by more than reading both in another unit may change."""
    return value < limit - _slack(limit, unit)


def _slack(limit: float, unit: str) -> float:
    return ONE_FIGURE_K if unit == "°C" else ONE_FIGURE_SHARE * abs(limit)


def is_number(value: "Any") -> "TypeGuard[float]":
    """True for an int or float that arithmetic in floats can take; a bool is not a number, nor is NaN or infinity."""
    return type(value) in (int, float) and bool(-LARGEST <= value <= LARGEST)


def figure(document: "Any", *path: str) -> float | None:
    """A number deep in a plan, or None: an older plan, or one of a newer version, may not say it."""
    for name in path:
        document = document.get(name) if type(document) is dict else None
    return float(document) if is_number(document) and 0.0 <= document <= 1e14 else None


def _number(field: "Readable", value: "Any", path: str) -> "Any":
    low, high, unit = field["low"], field["high"], field["unit"]
    if type(value) not in (int, float):
        raise Problem(path, "not_a_number", value, low, high, unit)
    if type(value) is float and value - value != 0:
        raise Problem(path, "not_finite", str(value), low, high, unit)
    if is_below(value, low, unit):
        raise Problem(path, "too_low", value, low, high, unit)
    if is_above(value, high, unit):
        raise Problem(path, "too_high", value, low, high, unit)
    return value


def _integer(field: "Readable", value: "Any", path: str) -> int:
    _number(field, value, path)
    if value != int(value):
        raise Problem(path, "not_whole", value, field["low"], field["high"])
    return int(value)


def _boolean(field: "Readable", value: "Any", path: str) -> bool:
    if type(value) is not bool:
        raise Problem(path, "not_true_or_false", value)
    return value


def _text(field: "Readable", value: "Any", path: str) -> str:
    if type(value) is not str:
        raise Problem(path, "not_text", value)
    if len(value) > field["most"]:
        raise Problem(path, "too_long", len(value), high=field["most"])
    return value


def _choice(field: "Readable", value: "Any", path: str) -> str:
    if type(value) is not str or value not in field["options"]:
        raise Problem(path, "not_an_option", value, accepted=field["options"])
    return value


def _record(field: "Readable", value: "Any", path: str) -> "Any":
    return checked(field["fields"], value, path)


def _many(field: "Readable", value: "Any", path: str) -> "list[Any]":
    if type(value) not in (list, tuple):
        raise Problem(path, "not_a_list", value)
    if len(value) < field["least"]:
        raise Problem(path, "too_few", len(value), low=field["least"], high=field["most"])
    if len(value) > field["most"]:
        raise Problem(path, "too_many", len(value), low=field["least"], high=field["most"])
    item = field["item"]
    if "unread" in item:
        return list(value)
    return [CHECKS[item["kind"]](item, one, path + "[" + str(index) + "]") for index, one in enumerate(value)]


def _either(field: "Readable", value: "Any", path: str) -> "Any":
    """A word goes to the choice, a record to the alternative that shares most field names with it."""
    alternatives = field["alternatives"]
    if type(value) is dict:
        best, shared = None, -1
        for alternative in alternatives:
            if alternative["kind"] == "record":
                same = sum(1 for name in value if name in alternative["fields"])
                if same > shared:
                    best, shared = alternative, same
        if best is not None:
            return _record(best, value, path)
    for alternative in alternatives:
        if alternative["kind"] != "record":
            return CHECKS[alternative["kind"]](alternative, value, path)
    raise Problem(path, "not_a_record", value)


def _document(field: "Readable", value: "Any", path: str) -> "Any":
    if "unread" in field:
        return value
    if type(value) not in (dict, list, str, int, float, bool):
        raise Problem(path, "not_a_document")
    _refuse_not_finite(value, path)
    return value


def _refuse_not_finite(value: "Any", path: str) -> None:
    """Refuses a document with a NaN, an infinity or an absurdly large number anywhere in it, without recursion."""
    waiting: "list[Any]" = [[value]]
    while waiting:
        one = waiting.pop()
        for inner in one.values() if type(one) is dict else one:
            kind = type(inner)
            if kind is dict or kind is list or kind is tuple:
                waiting.append(inner)
            elif (kind is float or kind is int) and not -LARGEST <= inner <= LARGEST:
                raise Problem(path, "not_finite", str(inner))


CHECKS: "dict[str, Callable[[Readable, Any, str], Any]]" = {
    "number": _number,
    "integer": _integer,
    "boolean": _boolean,
    "text": _text,
    "choice": _choice,
    "record": _record,
    "many": _many,
    "either": _either,
    "document": _document,
}


def check_basis(basis: "Readable") -> None:
    """Refuses a basis that is not one of the four words."""
    if type(basis) is not dict:
        raise Problem("basis", "not_a_record", basis)
    for path in sorted(basis):
        if basis[path] not in BASES:
            raise Problem("basis." + path, "not_an_option", basis[path], accepted=list(BASES))


def inputs(fields: "Readable", request: "Readable", full: "Readable") -> "list[Input]":
    """Every number and word that went into an answer, with its basis.

    A value in the request is "typed" unless `request["basis"]` says otherwise; a default carries its own basis. Each
    entry of a list of records has its fields as rows of their own, such as "rows[0].deposit_kg".
    Returns `[{field, value, unit, basis, source, measure_by, n}]`; n is how many closed batches `request["batches"]`
    says a measured value rests on.
    """
    said = request.get("basis") or {}
    check_basis(said)
    rows: "list[Input]" = []
    _list_inputs(fields, request, full, "", said, rows)
    _count_batches(request.get("batches") or {}, rows)
    return rows


def _count_batches(batches: "Readable", rows: "list[Input]") -> None:
    """Fills in how many closed batches each measured value rests on."""
    if type(batches) is not dict:
        raise Problem("batches", "not_a_record", batches)
    for row in rows:
        n = batches.get(row["field"])
        if row["basis"] == "measured" and n is not None:
            row["n"] = _integer(BATCHES, n, "batches." + row["field"])


def _list_inputs(
    fields: "Readable", request: "Any", full: "Readable", path: str, said: "Readable", rows: "list[Input]"
) -> None:
    for name in sorted(fields):
        field, value, here = fields[name], full.get(name), _join(path, name)
        given = type(request) is dict and request.get(name) is not None
        if field["kind"] == "record" and type(value) is dict:
            _list_inputs(field["fields"], request.get(name) if given else {}, value, here, said, rows)
        elif field["kind"] == "many" and field["item"]["kind"] == "record" and value:
            for index, entry in enumerate(value):
                asked = request[name][index] if given else {}
                _list_inputs(field["item"]["fields"], asked, entry, here + "[" + str(index) + "]", said, rows)
        elif field["kind"] in ("number", "integer", "choice", "either", "many", "boolean") and value is not None:
            if value == [] or (type(value) is dict and here not in said and not given):
                continue
            basis: "Any" = said.get(here) or ("typed" if given else field.get("basis", "assumed"))
            # A default handed on by another plan keeps its source.
            usual = value in (default_in(field, ()), default_in(field, field.get("default_in", ())))
            rows.append(
                {
                    "field": here,
                    "value": value,
                    "unit": field.get("unit", ""),
                    "basis": basis,
                    "source": field.get("source") if usual and basis == field.get("basis") else None,
                    "measure_by": field.get("measure_by") if basis == "assumed" else None,
                    "n": None,
                }
            )


def constant(
    field: str,
    value: float,
    unit: str,
    source: str = "assumed",
    basis: "Any" = "assumed",
    measure_by: str | None = None,
) -> "Input":
    """One row of `inputs` for a constant of the engine's own that no request sets."""
    return {
        "field": field,
        "value": value,
        "unit": unit,
        "basis": basis,
        "source": source,
        "measure_by": measure_by,
        "n": None,
    }
