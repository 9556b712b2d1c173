"""One name for every record and document that is described, shared by the OpenAPI document and the generated types.

A record has two forms: as it is *asked* (what has a default may be left out) and as it is *given* (all of it is there).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from amberbench.engine import fields
from amberbench.engine.documents import BODIES

Field = dict[str, Any]
"""One description out of the engine's fields: kind, meaning and, by kind, unit, low, high, options, item, …"""
Fields = dict[str, Field]
Key = tuple[int, bool]
"""Identity of a dict of fields, and whether it is as asked."""


@dataclass(frozen=True)
class Record:
    """A record in one form."""

    name: str
    fields: Fields
    asked: bool
    meaning: str


class RecordRegistry:
    """Every record that requests, replies, events and documents reach, by name.

    Documents are called by their names, requests, replies and bodies after their function or event
    (`MeltPlanRequest`, `StirredBody`), inner records after the field that holds them (`Oven`), where another has that
    name with that of what holds it in front. Of two forms of one record the later is "Full" or "Asked".
    """

    def __init__(self, documents: dict[str, Field], requests_asked: bool) -> None:
        """`documents`: by name; `requests_asked`: whether requests and bodies are as asked, or as they were checked."""
        self.records: dict[Key, Record] = {}
        self.aliases: dict[str, str] = {}
        self.requests_asked, self._named = requests_asked, documents
        # These say nothing without what holds them.
        self._taken: set[str] = {*documents, "Request", "Reply", "Body", "Planned"}
        self._eithers: dict[Key, str] = {}
        tops = [*self._documents(), *self._functions(), *self._bodies()]
        for name, described, asked in tops:
            self._add(name, described["fields"], asked, described["meaning"])
        for _, described, asked in [*self._functions(), *tops]:
            self._add_inner(self.records[id(described["fields"]), asked])
        for name, described in documents.items():
            if described["kind"] == "either":
                self._eithers[id(described["alternatives"]), bool(described.get("asked"))] = name
            if described["kind"] != "record":
                self._reach(name, name, described, bool(described.get("asked")))

    def of(self, fields: Fields, asked: bool) -> str:
        """The name of a record in one form."""
        return self.records[id(fields), asked].name

    def of_either(self, field: Field, asked: bool) -> str | None:
        """The name of the document that has these alternatives, if there is one."""
        return self._eithers.get((id(field["alternatives"]), asked))

    def _documents(self) -> Iterator[tuple[str, Field, bool]]:
        for name, described in self._named.items():
            if described["kind"] == "record":
                yield name, described, bool(described.get("asked"))

    def _functions(self) -> Iterator[tuple[str, Field, bool]]:
        for function, both in fields.FUNCTIONS.items():
            request = {"fields": both["request"], "meaning": f"the request to {function}"}
            yield request_name(function), request, self.requests_asked
            yield reply_name(function), {"fields": both["reply"], "meaning": f"the reply of {function}"}, False

    def _bodies(self) -> Iterator[tuple[str, Field, bool]]:
        for kind, body in BODIES.items():
            yield body_name(kind), {"fields": body, "meaning": f"body of the event {kind}"}, self.requests_asked

    def _add(self, name: str, known: Fields, asked: bool, meaning: str) -> Record | None:
        """The record, if it is new; a second name for one that is known becomes an alias."""
        key = (id(known), asked)
        if key in self.records:
            if self.records[key].name != name:
                self.aliases[name] = self.records[key].name
            return None
        self._taken.add(name)
        self.records[key] = Record(name, known, asked, meaning)
        return self.records[key]

    def _add_inner(self, record: Record) -> None:
        for name, field in record.fields.items():
            self._reach(record.name, pascal(name), field, record.asked)

    def _reach(self, holder: str, wanted: str, field: Field, asked: bool) -> None:
        asked = asked or bool(field.get("asked"))
        if field["kind"] == "record":
            known = field["fields"]
            if (id(known), asked) not in self.records:
                new = self._add(self._free(holder, wanted, known, asked), known, asked, field["meaning"])
                if new:
                    self._add_inner(new)
        elif field["kind"] in ("many", "mapping"):
            self._reach(holder, _singular(wanted), field["item"], asked)
        elif field["kind"] == "either":
            for one in field["alternatives"]:
                first = next(iter(one["fields"])) if one["kind"] == "record" else ""
                self._reach(holder, f"{wanted}By{pascal(first.split('_')[0])}", one, asked)

    def _free(self, holder: str, wanted: str, known: Fields, asked: bool) -> str:
        other = self.records.get((id(known), not asked))
        tries = [f"{'Asked' if asked else 'Full'}{other.name}"] if other else []
        tries += [wanted, holder + wanted, f"{holder}{wanted}{'Asked' if asked else 'Given'}"]
        return next(name for name in tries if name not in self._taken)


def request_name(function: str) -> str:
    return f"{pascal(function)}Request"


def reply_name(function: str) -> str:
    return f"{pascal(function)}Reply"


def body_name(kind: str) -> str:
    return f"{pascal(kind)}Body"


def pascal(name: str) -> str:
    """snake.case as PascalCase."""
    return "".join(part[:1].upper() + part[1:] for part in name.replace(".", "_").split("_"))


def _singular(name: str) -> str:
    if name.endswith("ches"):
        return name[:-2]
    return name[:-1] if name.endswith("s") else name


def may_be_null(field: Field, asked: bool) -> bool:
    """Whether null stands for "left out", or for something of its own."""
    return bool(field.get("nullable")) or ("default" in field and (asked or field["default"] is None))


def may_be_missing(field: Field, asked: bool) -> bool:
    """Whether a record of this form may lack the field."""
    return bool(field.get("optional")) or (asked and "default" in field)
