"""Marshmallow fields that speak of faults in the engine's words. Shape only: the engine checks ranges."""

import re
from collections.abc import Mapping
from typing import Any

import marshmallow as ma

from amberbench.engine.core.problems import Problem

from . import units
from .fault import fault
from .records import Field


class _Described(ma.fields.Field[Any]):
    """A field made from the engine's description of it."""

    def __init__(self, described: Field, **more: Any) -> None:
        self.described = described
        missing = [fault("missing", described)]
        super().__init__(
            required="default" not in described,
            allow_none="default" in described,
            error_messages={"required": missing, "null": missing},
            **more,
        )

    def refuse(self, code: str, given: Any = None, accepted: list[str] | None = None) -> ma.ValidationError:
        """The error to raise."""
        return ma.ValidationError([fault(code, self.described, given, accepted)])


class Quantity(_Described):
    """A number in the field's unit, `{"value": 2.5, "unit": "lb"}` or "2.5 lb"."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        unit = self.described["unit"]
        if type(value) in (int, float):
            return value
        if isinstance(value, str):
            parts = units.split(value)
            if parts is None:
                raise self.refuse("not_a_quantity", value[:60], units.accepted(unit))
            return self._si(parts[0], parts[1], value)
        if isinstance(value, dict):
            if set(value) != {"value", "unit"} or type(value["value"]) not in (int, float):
                raise self.refuse("not_a_quantity", None, units.accepted(unit))
            if not isinstance(value["unit"], str):
                raise self.refuse("unknown_unit", None, units.accepted(unit))
            return self._si(float(value["value"]), value["unit"].strip(), value["unit"][:60])
        raise self.refuse("not_a_number", value)

    def _si(self, value: float, unit: str, given: str) -> float:
        wanted = self.described["unit"]
        if unit == "" and wanted != "":
            raise self.refuse("no_unit", given, units.accepted(wanted))
        try:
            return units.to_si(value, unit, wanted)
        except Problem as problem:
            raise self.refuse(problem.code, given, problem.accepted) from None


class Plain(_Described):
    """A value of one of some types, as it stands."""

    def __init__(self, described: Field, types: tuple[type, ...], code: str, **more: Any) -> None:
        self.types, self.code = types, code
        super().__init__(described, **more)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        if type(value) not in self.types:
            raise self.refuse(self.code, value)
        options = self.described.get("options")
        if options and value not in options:
            raise self.refuse("not_an_option", value[:60], list(options))
        return value


class Record(_Described):
    """A record by its own schema."""

    def __init__(self, described: Field, schema: type[ma.Schema], **more: Any) -> None:
        self.schema = schema()
        super().__init__(described, **more)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        if not isinstance(value, dict):
            raise self.refuse("not_a_record", value)
        return self.schema.load(value)


class ListOf(_Described):
    """A list of one kind of item."""

    def __init__(self, described: Field, item: ma.fields.Field[Any], **more: Any) -> None:
        self.item = item
        super().__init__(described, **more)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        if not isinstance(value, list):
            raise self.refuse("not_a_list", value)
        least, most = self.described["least"], self.described["most"]
        if not least <= len(value) <= most:
            code = "too_few" if len(value) < least else "too_many"
            raise ma.ValidationError([fault(code, {"low": least, "high": most}, len(value))])
        items, faults = [], {}
        for index, one in enumerate(value):
            try:
                items.append(self.item.deserialize(one))
            except ma.ValidationError as error:
                faults[index] = error.messages
        if faults:
            raise ma.ValidationError(faults)
        return items


class Either(_Described):
    """A word, or the record whose names fit best: as the engine's `check` chooses."""

    def __init__(self, described: Field, records: list[Record], plain: list[ma.fields.Field[Any]], **more: Any) -> None:
        self.records, self.plain = records, plain
        super().__init__(described, **more)

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        if isinstance(value, dict) and self.records:
            return max(self.records, key=lambda record: _shared(record, value)).deserialize(value)
        if not self.plain:
            raise self.refuse("not_a_record", value)
        return self.plain[0].deserialize(value)


def _shared(record: Record, value: dict[str, Any]) -> int:
    return sum(1 for name in value if name in record.described["fields"])


class Count(_Described):
    """A whole number in a query: digits only."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        if not re.fullmatch(r"[0-9]{1,16}", str(value), re.ASCII):
            raise self.refuse("not_whole", str(value)[:60])
        count = int(value)
        if count < self.described["low"] or count > self.described["high"]:
            raise self.refuse("too_low" if count < self.described["low"] else "too_high", count)
        return count
