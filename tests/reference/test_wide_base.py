"""A slab on a table wider than it, against conduction over thickness and width: discs of the same area, in rings.

Explicit finite volumes of our own, with the loss of bare stone above and below. No publication says how much sooner a
slab is ready on a wider table.
"""

import itertools

import numpy as np
import pytest

from amberbench.engine import catalogue
from amberbench.engine.physics import convection

CARAMEL = {"conductivity_w_mk": 0.296, "density_kg_m3": 1419.0, "heat_capacity_j_kgk": 1896.0}
MARBLE = (3.5, 2.8e6, 0.93)
ROOM_C, START_C, SLAB_M, CONTACT = 21.0, 74.0, 0.0127, 0.005
SLAB_ROWS, STONE_ROWS = 8, 3


def losses(up, emissivity, plate_m, surface_c):
    """W/(m² K) of a face, at its mean temperature."""
    return convection.coefficient(("still_air", emissivity, plate_m, up), float(np.mean(surface_c)), ROOM_C)


def ready_min(side_m, base_side_m, stone_m, target_c):
    """Minutes until the middle of a square slab is at target_c, taken as a disc of its area on a disc of the base's."""
    radius, base_radius = side_m / np.pi**0.5, base_side_m / np.pi**0.5
    inner = np.linspace(0.0, radius, 13)
    outer = np.linspace(radius, base_radius, max(2, int((base_radius - radius) / 0.015) + 1))[1:]
    edges = np.concatenate([inner, outer]) if base_side_m > side_m else inner
    middles, rings = 0.5 * (edges[1:] + edges[:-1]), np.pi * np.diff(edges**2)
    covered = len(inner) - 1
    k, (k_stone, c_stone, shine) = CARAMEL["conductivity_w_mk"], MARBLE
    c = CARAMEL["density_kg_m3"] * CARAMEL["heat_capacity_j_kgk"]
    dz, db = SLAB_M / SLAB_ROWS, stone_m / STONE_ROWS
    slab = np.full((SLAB_ROWS, covered), START_C)
    stone = np.full((STONE_ROWS, len(rings)), ROOM_C)
    walls = 2.0 * np.pi * edges[1:-1] / np.diff(middles)
    plate, base_plate = 0.25 * side_m, 0.25 * base_side_m
    step, at_s = 0.2 * min(dz * dz * c / k, db * db * c_stone / k_stone), 0.0
    while True:
        hottest = slab[:, 0].max()
        heat, into = np.zeros_like(slab), np.zeros_like(stone)
        for grid, gain, height, conductivity in ((slab, heat, dz, k), (stone, into, db, k_stone)):
            down = conductivity / height * rings[: grid.shape[1]] * (grid[:-1] - grid[1:])
            gain[:-1] -= down
            gain[1:] += down
            across = conductivity * height * walls[: grid.shape[1] - 1] * (grid[:, :-1] - grid[:, 1:])
            gain[:, :-1] -= across
            gain[:, 1:] += across
        joint = rings[:covered] / (0.5 * dz / k + CONTACT + 0.5 * db / k_stone) * (slab[-1] - stone[0, :covered])
        heat[-1] -= joint
        into[0, :covered] += joint
        heat[0] -= rings[:covered] * (slab[0] - ROOM_C) / (1.0 / losses(True, 0.95, plate, slab[0]) + 0.5 * dz / k)
        bare = stone[0, covered:]
        if len(bare):
            into[0, covered:] -= rings[covered:] * (bare - ROOM_C) * losses(True, shine, base_plate, bare)
        into[-1] -= rings * (stone[-1] - ROOM_C) * losses(False, shine, base_plate, stone[-1])
        slab += step * heat / (c * dz * rings[:covered])
        stone += step * into / (c_stone * db * rings)
        at_s += step
        now = slab[:, 0].max()
        if now <= target_c:
            return (at_s - step * (target_c - now) / (hottest - now)) / 60.0


def by_the_engine(side_m, base_side_m, stone_m, target_c):
    return plan_of(side_m, base_side_m, stone_m, target_c)["ready_s"] / 60.0


def plan_of(side_m, base_side_m, stone_m, target_c):
    request = {"thickness_m": SLAB_M, "material": CARAMEL, "room_c": ROOM_C, "start_c": START_C, "target_c": target_c}
    request |= {"base": "marble", "base_length_m": base_side_m, "base_width_m": base_side_m}
    sides = {"length_m": side_m, "width_m": side_m, "base_thickness_m": stone_m}
    return catalogue.call("cool.plan", request | sides)


@pytest.mark.parametrize(
    ("side_m", "base_side_m", "stone_m"),
    [
        (0.35, 0.35, 0.01),
        (0.35, 0.35, 0.02),
        (0.35, 0.35, 0.05),
        (0.35, 0.6, 0.02),
        (0.35, 0.6, 0.03),
        (0.35, 0.5, 0.05),
        (0.2, 0.28, 0.02),
        (0.2, 0.6, 0.02),
    ],
)
def test_slab_on_a_wider_table_is_ready_as_by_conduction_over_its_width(side_m, base_side_m, stone_m):
    """A wide table is felt no more than this; late rather than early, for a touch decides."""
    known = ready_min(side_m, base_side_m, stone_m, 27.0)
    assert 0.92 * known < by_the_engine(side_m, base_side_m, stone_m, 27.0) < 1.28 * known


@pytest.mark.parametrize("stone_m", [0.02, 0.03, 0.05])
@pytest.mark.parametrize(("side_m", "wider"), [(0.15, 1.4), (0.15, 2.0), (0.2, 1.4), (0.2, 3.0), (0.27, 1.4)])
def test_small_slab_on_a_wide_stone_is_ready_within_the_stated_range(side_m, wider, stone_m):
    """Up to 49 % late, which alone took up all the range; room, start, contact and loss are off beside it."""
    plan = plan_of(side_m, wider * side_m, stone_m, 27.0)
    known_s = 60.0 * ready_min(side_m, wider * side_m, stone_m, 27.0)
    late, low = (np.log(plan["ready_s"] / one) for one in (known_s, plan["ready_low_s"]))
    assert -0.5 * low <= late <= 0.9 * low


def test_table_far_beyond_the_slab_brings_nothing_more():
    """Three and six times the area: within 2 % by both; heat does not come so far."""
    for ready in (ready_min, by_the_engine):
        three, six = (ready(0.35, 0.35 * times**0.5, 0.02, 27.0) for times in (3.0, 6.0))
        assert six == pytest.approx(three, rel=0.02)


def test_slab_is_never_ready_later_on_a_larger_table():
    sides = [0.1, 0.35, 0.36, 0.4, 0.45, 0.5, 0.6, 0.8, 1.2, 3.0]
    times = [by_the_engine(0.35, side, 0.02, 27.0) for side in sides]
    for smaller, larger in itertools.pairwise(times):
        assert larger <= smaller * 1.001
    assert times[-1] < 0.95 * times[0]
