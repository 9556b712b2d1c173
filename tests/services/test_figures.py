"""Figures as people read them: the server's formatter passes the examples that the phone's passes too."""

import json
from pathlib import Path

import pytest

from amberbench.engine.core.units import UNITS
from amberbench.text.figures import METRIC, SPECIFICATION, figure, finer_to_tell_apart

EXAMPLES = json.loads(Path(__file__).parents[1].joinpath("figures.json").read_text(encoding="utf-8"))


def spaced(text):
    return text.replace("_", SPECIFICATION["unit_space"]).replace("~", SPECIFICATION["part_space"])


@pytest.mark.parametrize(("name", "value", "language", "units", "text"), EXAMPLES["figures"])
def test_a_figure_is_written_as_the_specification_says(name, value, language, units, text):
    assert figure(name, value, language, EXAMPLES["units"][units]) == spaced(text)


@pytest.mark.parametrize(("name", "value", "limit", "units", "given", "accepted"), EXAMPLES["told_apart"])
def test_a_value_over_its_limit_never_reads_like_the_limit(name, value, limit, units, given, accepted):
    units = EXAMPLES["units"][units]
    finer = finer_to_tell_apart(name, value, limit, units=units)
    assert [figure(name, one, "en", units, finer) for one in (value, limit)] == [spaced(given), spaced(accepted)]


@pytest.mark.parametrize(("name", "value", "toward", "units", "text"), EXAMPLES["limits"])
def test_a_limit_reads_as_what_is_still_accepted(name, value, toward, units, text):
    assert figure(name, value, "en", EXAMPLES["units"][units], toward=toward) == spaced(text)


def test_the_units_figures_are_shown_in_are_the_engines():
    shown = {
        unit: (one["dimension"], one["factor"], one.get("offset", 0)) for unit, one in SPECIFICATION["units"].items()
    }
    assert {unit: shown[unit] for unit in UNITS} == UNITS


def test_every_unit_a_reader_may_choose_has_its_ladder_and_every_rung_a_unit():
    ladders, units = SPECIFICATION["ladders"], SPECIFICATION["units"]
    choices = {unit for one in SPECIFICATION["chosen"].values() for unit in one["unit"].values()}
    choices |= set(METRIC.values()) | set(SPECIFICATION["fixed"].values()) | {"g", "oz", "lb", "cm", "m", "in", "°F"}
    assert choices - set(ladders) == set()
    assert {rung["unit"] for ladder in ladders.values() for rung in ladder} - set(units) == {""}
    assert all(
        "below" not in ladder[-1] and all("below" in rung for rung in ladder[:-1]) for ladder in ladders.values()
    )


def test_a_number_too_large_for_any_scale_is_called_infinite():
    assert figure("mass_kg", float("inf")) == spaced("∞_kg")
    assert figure("length_m", -(10**400)) == spaced("−∞_mm")
    assert figure("power_w", 1e299) == spaced("1e+299_W")
