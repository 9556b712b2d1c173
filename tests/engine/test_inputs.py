"""Every constant of the engine's own that moves a plan is among its inputs: each is moved a little and looked for."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.physics import bases
from amberbench.engine.physics import convection as surfaces
from amberbench.engine.physics import pot as heating
from amberbench.engine.products.cluster import plan as deposit
from amberbench.engine.products.cluster import tray_cooling as clusters
from amberbench.engine.steps.cool import cooling_curve as cooling
from amberbench.engine.steps.cool import time_spread as cooling_range
from amberbench.engine.steps.deposit import funnel, schedule
from amberbench.engine.steps.deposit import trays as trays_cluster
from amberbench.engine.steps.melt import burst_length as melt_guard
from amberbench.engine.steps.melt import estimate as melt_estimate
from amberbench.engine.steps.melt import oven
from amberbench.engine.steps.melt import plan as melt
from amberbench.engine.steps.temper import plan as temper
from tests.strategies_deposit import ON_NUTS

MELT = {"mass_kg": 0.9, "oven": {"rated_w": 1000}, "vessel": {"mass_kg": 0.8}}
STONE = {"thickness_m": 0.02, "conductivity_w_mk": 3.5, "density_kg_m3": 2800, "heat_capacity_j_kgk": 1000}
COOL = {"thickness_m": 0.0127, "top": "fan", "base": {"layers": [STONE]}, "room_c": 15.0}

# Not listed: the spread of a figure that is itself listed, limits that keep absurd requests in range, definitions of
# 10 % and 90 %, the step of a slope, and published properties of air and of nature, and of shapes.
LEFT_OUT = {
    "MAGNETRON_START_SD_S", "VESSEL_SHARE_SD", "LOAD_LEAST", "MOST_SD_K", "MOST_POWER_W", "LEAST_POWER_W", "LONGEST_S",
    "SD_TO_10_PERCENT", "STEFAN_BOLTZMANN", "KELVIN", "RAYLEIGH_30", "RAYLEIGH_60", "AIR_30", "AIR_60", "CONE_INSIDE",
    "CRYSTAL_SHARE_SD", "ROOM_STEP_K",
}  # fmt: skip


def constants(*modules):
    """(module, name) of every number a module sets for itself."""
    return [
        pytest.param(module, name, id=f"{'_'.join(module.__name__.split('.')[-2:])}.{name}")
        for module in modules
        for name, value in vars(module).items()
        if name.isupper() and type(value) is float and name not in LEFT_OUT
    ]


def moved_but_not_listed(name, request, monkeypatch, module, constant):
    """The answers before and after a constant is moved by a twentieth, when no input shows it."""
    before = catalogue.call(name, request)
    monkeypatch.setattr(module, constant, 1.05 * getattr(module, constant))
    after = catalogue.call(name, request)
    inputs = before.pop("inputs"), after.pop("inputs")
    return before != after and inputs[0] == inputs[1]


@pytest.mark.parametrize(("module", "constant"), constants(heating, oven, melt, melt_estimate, melt_guard))
@pytest.mark.parametrize("oven", [{"rated_w": 1000}, {"power_w": 550}], ids=["plate", "measured"])
def test_a_constant_that_moves_the_melt_is_an_input(oven, module, constant, monkeypatch):
    assert not moved_but_not_listed("melt.plan", MELT | {"oven": oven}, monkeypatch, module, constant)


@pytest.mark.parametrize(("module", "constant"), constants(bases, cooling, cooling_range, surfaces))
def test_a_constant_that_moves_the_cooling_is_an_input(module, constant, monkeypatch):
    assert not moved_but_not_listed("cool.plan", COOL, monkeypatch, module, constant)


CLUSTERS = (clusters, funnel, bases, cooling, deposit, trays_cluster, schedule)


@pytest.mark.parametrize(("module", "constant"), constants(*CLUSTERS))
def test_a_constant_that_moves_clusters_is_an_input(module, constant, monkeypatch):
    assert not moved_but_not_listed("cluster.plan", ON_NUTS, monkeypatch, module, constant)


@pytest.mark.parametrize(("module", "constant"), constants(temper, heating, oven))
def test_a_constant_that_moves_a_bowl_is_an_input(module, constant, monkeypatch):
    bowl = {"mass_kg": 2.0, "room_c": 20.0, "melt_c": 46.0, "bowl": {"mass_kg": 1.0}}
    assert not moved_but_not_listed("chocolate.plan", bowl, monkeypatch, module, constant)


def test_a_constant_left_out_would_be_found(monkeypatch):
    assert moved_but_not_listed("melt.plan", MELT, monkeypatch, oven, "MAGNETRON_START_SD_S")
