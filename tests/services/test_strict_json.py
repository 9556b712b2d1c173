"""JSON, read strictly."""

import time
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine.core.problems import Problem
from amberbench.services import strict_json

DOCUMENTS = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**53), 2**53)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0")),
    lambda inner: (
        st.lists(inner, max_size=4)
        | st.dictionaries(st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0")), inner, max_size=4)
    ),
    max_leaves=20,
)


@given(DOCUMENTS)
def test_what_is_written_reads_back_the_same(document):
    assert strict_json.read(strict_json.write(document)) == document


@given(st.binary(max_size=200))
def test_any_bytes_are_a_document_or_a_problem(data):
    with suppress(Problem):
        strict_json.write(strict_json.read(data))


@pytest.mark.parametrize(
    ("text", "field"),
    [
        ('{"a": [{"b": NaN}]}', "a[0].b"),
        ("[1, Infinity]", "[1]"),
        ("-Infinity", "request"),
        ('{"a": {"b": "\\ud800"}}', "a.b"),
        ('{"a": ["x\\u0000"]}', "a[0]"),
        ('{"a": {"\\uDfff": 1}}', "a"),
        ('"\\uD83d"', "request"),
        ('"\ud83d"', "request"),
        ('{"a": {"b": 1, "b": 1}}', "b"),
        ('{"a": -9007199254740993}', "a"),
    ],
)
def test_fault_is_named_by_its_place(text, field):
    with pytest.raises(Problem) as caught:
        strict_json.read(text)
    assert caught.value.field == field


def test_escaped_characters_and_pairs_are_read():
    assert strict_json.read('["\\ud83d\\ude00", "\\\\ud800", "\\u00b0"]') == ["\U0001f600", "\\ud800", "°"]


def test_forty_deep_is_read_and_one_more_is_not():
    assert strict_json.read("[" * 40 + "]" * 40)
    with pytest.raises(Problem, match="too_deep"):
        strict_json.read("[" * 41 + "]" * 41)


def test_long_name_over_a_long_list_costs_no_memory_or_time():
    text = '{"' + "n" * 500_000 + '": [' + ",".join(["1"] * 500_000) + "]}"
    began = time.process_time()
    strict_json.read(text)
    assert time.process_time() - began < 5.0
    with pytest.raises(Problem) as caught:
        strict_json.read(text.replace(",1]", ",NaN]"))
    assert len(caught.value.field) < 100
