"""The docstring of every catalogue function: its fields, their units, its problems and its sources."""

import re

import pytest

from amberbench.engine import catalogue, fields
from amberbench.engine.core import sources

NAMES = sorted(catalogue.FUNCTIONS)
# "as `fields.MELT`" and "as melt.plan": the fields are described there.
ELSEWHERE = re.compile(r"\bas `\w+[.\w]*`|\bas \w+\.\w+|\bthe same\b")
UNIT_SUFFIX = re.compile(r"_(kg|m|m2|m3|c|k|s|w|j|ms|m2_s|j_kgk|w_mk|kg_m3|m2k_w|w_m2k|pa_s)$")


def docstring(name):
    return re.sub(r"\s+", " ", catalogue.FUNCTIONS[name].__doc__ or "")


def section(name, heading):
    """The text from `Request:` (or another heading) to the next heading."""
    headings = "Request|Reply|Warnings|Raises|Relation|Example|Source"
    found = re.search(rf"\b{heading}: (.*?)(?=\b(?:{headings}): |$)", docstring(name))
    return found[1] if found else ""


def listed(known):
    for name, field in known.items():
        yield name, field
        if field["kind"] == "record":
            yield from listed(field["fields"])


@pytest.mark.parametrize("name", NAMES)
def test_it_says_what_goes_in_what_comes_out_and_what_is_refused(name):
    assert re.match(r"[A-Z]", docstring(name))
    for heading in ("Request", "Reply", "Raises"):
        assert section(name, heading), f"{name} has no {heading}"


@pytest.mark.parametrize("heading", ["Request", "Reply"])
@pytest.mark.parametrize("name", NAMES)
def test_it_names_its_fields(name, heading):
    text = section(name, heading)
    if not ELSEWHERE.search(text):
        missing = [field for field in fields.FUNCTIONS[name][heading.lower()] if not re.search(rf"\b{field}\b", text)]
        assert missing == []


@pytest.mark.parametrize("heading", ["Request", "Reply"])
@pytest.mark.parametrize("name", NAMES)
def test_every_number_it_names_has_its_unit(name, heading):
    text = section(name, heading)
    for field, description in listed(fields.FUNCTIONS[name][heading.lower()]):
        unit = description.get("unit")
        if unit and re.search(rf"\b{field}\b", text):
            # The unit in brackets behind the name, or behind the last of a row of names.
            assert re.search(rf"\b{field}\b[^()]{{0,160}}\((?:[^()]*\b)?{re.escape(unit)}", text), f"{field} in {unit}"


@pytest.mark.parametrize("name", NAMES)
def test_every_field_like_word_is_a_field(name):
    known = {field for side in ("request", "reply") for field, _ in everything(fields.FUNCTIONS[name][side])}
    for heading in ("Request", "Reply"):
        text = section(name, heading)
        for word in re.findall(r"\b[a-z]+(?:_[a-z0-9]+)+\b", text):
            if UNIT_SUFFIX.search(word):
                assert word in known or ELSEWHERE.search(text), f"{word} is no field of {name}"


def everything(known):
    for name, field in known.items():
        yield name, field
        for part in (field, field.get("item", {}), *field.get("alternatives", [])):
            if part.get("kind") == "record":
                yield from everything(part["fields"])


@pytest.mark.parametrize("name", [name for name in NAMES if not name.startswith("run.")])
def test_its_sources_are_in_the_list(name):
    # The log's rules (run.*) are the contract's own; everything with a number has a source.
    words = re.findall(r"\b[a-z]+(?:_[a-z0-9]+)*\b", re.sub(r"`[^`]*`", "", section(name, "Source")))
    keys = [word for word in words if word in sources.SOURCES]
    assert keys, f"{name} names no source"
    assert [
        word for word in words if "_" in word and word not in sources.SOURCES and not UNIT_SUFFIX.search(word)
    ] == []
