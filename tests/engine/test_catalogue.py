"""Whatever is asked, the engine answers or says what is wrong: it never breaks."""

import json
import math
import random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from amberbench.engine import catalogue, fields
from amberbench.engine.core.problems import Problem
from tests import strategies
from tests.conforming import conforms

SEEDS = st.integers(0, 2**48)
# Under the profile of `make prove` as many as that asks for.
EACH = 30 if settings.default.derandomize else settings.default.max_examples
MODEST = settings(max_examples=EACH, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def answer(name, request):
    """The reply, checked against its fields, or the problem."""
    try:
        reply = catalogue.call(name, request)
    except Problem as problem:
        document = problem.document()
        assert document["field"]
        assert document["code"]
        json.dumps(document, allow_nan=False)
        return problem
    conforms(name, reply, spoilt=name.startswith("run."))
    return reply


def test_every_function_has_fields_and_every_field_a_function():
    assert sorted(catalogue.FUNCTIONS) == sorted(fields.FUNCTIONS) == sorted(strategies.SENSIBLE)


@pytest.mark.parametrize("name", strategies.NAMES)
@given(seed=SEEDS)
@MODEST
def test_a_sensible_request_gets_a_reply_as_described(name, seed):
    conforms(name, catalogue.call(name, strategies.sensible(name, random.Random(seed))))


@pytest.mark.parametrize("name", strategies.NAMES)
@given(seed=SEEDS)
@MODEST
def test_fields_anywhere_in_range_get_a_reply_or_a_problem(name, seed):
    answer(name, strategies.anywhere(fields.FUNCTIONS[name]["request"], random.Random(seed)))


@pytest.mark.parametrize("name", strategies.NAMES)
@given(seed=SEEDS)
@MODEST
def test_a_sensible_request_with_some_fields_moved_gets_a_reply_or_a_problem(name, seed):
    answer(name, strategies.nudged(name, random.Random(seed)))


@pytest.mark.parametrize("name", strategies.NAMES)
@given(seed=SEEDS)
@MODEST
def test_one_spoilt_value_gets_a_reply_or_a_problem(name, seed):
    answer(name, strategies.spoilt(name, random.Random(seed)))


@pytest.mark.parametrize("name", strategies.NAMES)
@given(request=strategies.json_like())
@MODEST
def test_anything_json_can_carry_gets_a_reply_or_a_problem(name, request):
    answer(name, request)


@given(name=st.text(max_size=20))
@MODEST
def test_an_unknown_function_is_a_problem_that_lists_the_known(name):
    if name not in catalogue.FUNCTIONS and name not in catalogue.RENAMED:
        with pytest.raises(Problem) as caught:
            catalogue.call(name, {})
        assert caught.value.code == "unknown_function"
        assert caught.value.accepted == sorted(catalogue.FUNCTIONS)


@pytest.mark.parametrize(("old", "new"), sorted(catalogue.RENAMED.items()))
def test_an_old_name_of_a_function_is_answered_with_the_new_one(old, new):
    assert new in catalogue.FUNCTIONS
    assert old not in catalogue.FUNCTIONS
    with pytest.raises(Problem) as caught:
        catalogue.call(old, {})
    assert (caught.value.code, caught.value.given, caught.value.accepted) == ("renamed_function", old, [new])


def test_text_in_gives_text_out_and_a_problem_stays_a_document():
    fine = json.loads(catalogue.call_text("units.convert", '{"value": 2.5, "from": "lb", "to": "kg"}'))
    assert math.isclose(fine["reply"]["value"], 1.133980925)
    wrong = json.loads(catalogue.call_text("units.convert", '{"value": true, "from": "lb", "to": "kg"}'))
    assert wrong["problem"]["code"] == "not_a_number"
    assert wrong["problem"]["field"] == "value"


@pytest.mark.parametrize("text", ["", "{", "nonsense", "[1,", '{"value": 1e400, "from": "m", "to": "m"}', "null", "3"])
def test_text_that_is_no_request_is_a_problem(text):
    assert "problem" in json.loads(catalogue.call_text("units.convert", text))


def test_a_number_may_come_as_a_whole_number():
    as_float = catalogue.call("materials.properties", {"temp_c": 21.0})
    assert catalogue.call("materials.properties", {"temp_c": 21}) == as_float
