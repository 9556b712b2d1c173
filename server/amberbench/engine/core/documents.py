"""The documents that are exchanged or kept besides requests and replies: how they are described, and the common ones.

Nothing here is read while the engine works, so the phone carries no file called `documents.py`. A document has a name;
another description refers to it by `document(meaning, of=name)`. Besides what a field of a request may say, a field of
a document may be `optional` (documents of an older version lack it) and `nullable` (it may be null); below `asked`
stands a request as it was asked, with what may be left out left out.
"""

from typing import Any

from .field_kinds import BASES, choice, document, integer, many, number, record, text
from .fields import INPUTS, WARNINGS

Field = dict[str, Any]
Fields = dict[str, Field]
LARGEST = 1e300


def mapping(item: Field, meaning: str, **more: Any) -> Field:
    """A document whose keys are names of something; every value is such an item."""
    field: Field = {"kind": "mapping", "meaning": meaning, "item": item}
    field.update(more)
    return field


def nothing(meaning: str, **more: Any) -> Field:
    """Always null, where other documents of its kind have a value."""
    field: Field = {"kind": "nothing", "meaning": meaning, "nullable": True}
    field.update(more)
    return field


def instant(meaning: str, **more: Any) -> Field:
    """A moment in milliseconds since 1970, corrected by what the phone knows of its clock's error."""
    return number("ms", -LARGEST, LARGEST, meaning, **more)


def quantity(unit: str, meaning: str, **more: Any) -> Field:
    """A number without limits of its own."""
    return number(unit, -LARGEST, LARGEST, meaning, **more)


def count(meaning: str, **more: Any) -> Field:
    """How many."""
    return integer(0, 1000000000, meaning, **more)


def words(meaning: str, **more: Any) -> Field:
    """A text without a limit of its own."""
    return text(1000000000, meaning, **more)


def listed(item: Field, meaning: str, **more: Any) -> Field:
    """A list as long as it comes to be."""
    return many(item, 0, 1000000000, meaning, **more)


def without(fields: Fields, *names: str) -> Fields:
    """The fields but for some."""
    return {name: fields[name] for name in fields if name not in names}


def optional(fields: Fields, *names: str) -> Fields:
    """The fields, some of them optional."""
    return {name: dict(fields[name], optional=True) if name in names else fields[name] for name in fields}


def only(fields: Fields, *names: str) -> Fields:
    """Some of the fields."""
    return {name: fields[name] for name in names}


DOCUMENTS = {
    "BasisByField": mapping(choice(BASES, "what the value rests on"), "basis of fields by dotted path"),
    "BatchesByField": mapping(
        quantity("", "batches"), "how many closed batches a measured field rests on, by dotted path"
    ),
    "Values": mapping(document("a number, a word, a list", nullable=True), "values by name; its end says the unit"),
    "ProblemDocument": record(
        {
            "field": words("dotted path in the request"),
            "code": words("key of the sentence problem.<code>"),
            "given": document("what was given", nullable=True),
            "low": quantity("", "least that is accepted", nullable=True),
            "high": quantity("", "most that is accepted", nullable=True),
            "unit": words("unit of low and high", nullable=True),
            "accepted": listed(document("a word or a number"), "what is accepted", nullable=True),
            "message": words("the sentence"),
        },
        "why one field of a request was not accepted",
    ),
    "Warning": record(WARNINGS["item"]["fields"], "what to mind; the code is the key of its sentence"),
    "Input": record(INPUTS["inputs"]["item"]["fields"], "one input and its basis"),
}
