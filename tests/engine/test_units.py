"""The closed list of units, held to pint."""

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core import units
from amberbench.engine.core.problems import Problem

PINT = pint.UnitRegistry(autoconvert_offset_to_baseunit=True)
NAMES = {"°C": "degC", "°F": "degF", "in": "inch", "l": "liter", "ml": "milliliter", "h": "hour", "min": "minute"}
PAIRS = [(a, b) for a in units.UNITS for b in units.UNITS if units.UNITS[a][0] == units.UNITS[b][0]]


def convert(value, from_, to):
    return catalogue.call("units.convert", {"value": value, "from": from_, "to": to})["value"]


def test_the_list_is_the_contracts():
    assert set(units.UNITS) == set("g kg oz lb mm cm m in °C °F ml l W min h s".split(" "))  # noqa: SIM905


@pytest.mark.parametrize(("from_", "to"), PAIRS)
@pytest.mark.parametrize("value", [0.0, 1.0, 2.5, -40.0, 170.0])
def test_conversion_agrees_with_pint(from_, to, value):
    theirs = PINT.Quantity(value, NAMES.get(from_, from_)).to(NAMES.get(to, to)).magnitude
    assert convert(value, from_, to) == pytest.approx(theirs, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize(
    ("value", "from_", "to", "exact"),
    [(1, "lb", "g", 453.59237), (1, "oz", "g", 28.349523125), (1, "in", "mm", 25.4), (212, "°F", "°C", 100.0),
     (-40, "°F", "°C", -40.0), (1, "h", "min", 60.0)],
)  # fmt: skip
def test_exact_factors(value, from_, to, exact):
    # NIST SP 811 (2008), appendix B.8.
    assert convert(value, from_, to) == pytest.approx(exact, rel=1e-14)


@given(value=st.floats(-1e6, 1e6), pair=st.sampled_from(PAIRS))
def test_there_and_back_is_the_same(value, pair):
    assert convert(convert(value, *pair), *reversed(pair)) == pytest.approx(value, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("from_", "to", "field", "code"),
    [("stone", "kg", "from", "unknown_unit"), ("kg", "KG", "to", "unknown_unit"), ("in", "kg", "to", "wrong_unit"),
     ("°C", "W", "to", "wrong_unit"), ("", "m", "from", "unknown_unit")],
)  # fmt: skip
def test_a_unit_that_does_not_fit_is_named_with_those_that_would(from_, to, field, code):
    with pytest.raises(Problem) as caught:
        convert(1, from_, to)
    assert (caught.value.field, caught.value.code) == (field, code)
    assert caught.value.accepted
