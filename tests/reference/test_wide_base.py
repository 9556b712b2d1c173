"""A slab on a base wider than it, against conduction in three dimensions: a quarter of a rectangle on a rectangle.

Explicit finite volumes of our own, with the loss of the bare base above and below. No publication says how much sooner
a slab is ready on a wider base.
"""

import itertools

import numpy as np
import pytest

from amberbench.engine import catalogue
from amberbench.engine.physics import convection
from tests.slabs import BASES

CARAMEL = {"conductivity_w_mk": 0.296, "density_kg_m3": 1419.0, "heat_capacity_j_kgk": 1896.0}
USUAL = {"thickness_m": 0.0127, "room_c": 21.0, "start_c": 74.0, "target_c": 27.0, "contact_m2k_w": 0.005}
SLAB_ROWS, CELLS = 6, 6


def widths(side_m, base_m):
    """Cells of half a side of the slab, and from there to the end of the base, each wider than the one before."""
    found, margin = [0.5 * side_m / CELLS] * CELLS, 0.5 * (base_m - side_m)
    if margin > 1e-9:
        shares = 1.15 ** np.arange(max(2, int(CELLS * margin / side_m)))
        found += list(margin * shares / shares.sum())
    return np.array(found)


class Block:
    """Layers of one stuff over a grid of cells; temperatures in °C."""

    def __init__(self, wide, deep, height_m, rows, conductivity, capacity_j_m3k, start_c):
        self.k, self.c, self.rise, self.area = conductivity, capacity_j_m3k, height_m / rows, np.outer(wide, deep)
        self.temps = np.full((rows, len(wide), len(deep)), float(start_c))
        self.across = [2.0 / (one[:-1] + one[1:]) for one in (wide, deep)]
        self.faces = self.across[0][:, None] * deep, wide[:, None] * self.across[1]
        finest = [1.0 / min(one) ** 2 for one in (wide, deep)] + [1.0 / self.rise**2 if rows > 1 else 0.0]
        self.longest_s = 0.4 * capacity_j_m3k / conductivity / sum(finest)

    def gained(self):
        """W into each cell by conduction within the block."""
        gain, temps = np.zeros_like(self.temps), self.temps
        for axis, face in ((0, self.area / self.rise), (1, self.rise * self.faces[0]), (2, self.rise * self.faces[1])):
            flow = -self.k * face * np.diff(temps, axis=axis)
            before = [(0, 0)] * 3
            before[axis] = (1, 0)
            after = [(0, 0)] * 3
            after[axis] = (0, 1)
            gain += np.pad(flow, before) - np.pad(flow, after)
        return gain


def ready_min(sides_m, base_sides_m, base, stone_m=None, base_start_c=None, top="still_air", **other):
    """Minutes until the middle of a slab is at target_c, on the middle of a base."""
    case = USUAL | other
    usual_m, k, density, heat, shine = BASES[base]
    height_m, room_c = stone_m or usual_m, case["room_c"]
    wide, deep = (widths(*one) for one in zip(sides_m, base_sides_m, strict=True))
    capacity = CARAMEL["density_kg_m3"] * CARAMEL["heat_capacity_j_kgk"]
    slab_is = (case["thickness_m"], SLAB_ROWS, CARAMEL["conductivity_w_mk"], capacity, case["start_c"])
    slab = Block(wide[:CELLS], deep[:CELLS], *slab_is)
    rows = 3 if height_m / k > 0.002 else 1
    below = Block(wide, deep, height_m, rows, k, density * heat, room_c if base_start_c is None else base_start_c)
    bare = below.area.copy()
    bare[:CELLS, :CELLS] = 0.0
    plate, base_plate = (one[0] * one[1] / (2.0 * sum(one)) for one in (sides_m, base_sides_m))

    def loss(kind, emissivity, plate_m, up, temps, area):
        at_c = float((temps * area).sum() / area.sum()) if area.any() else room_c
        return convection.coefficient((kind, emissivity, plate_m, up), at_c, room_c) * (temps - room_c)

    between = 0.5 * slab.rise / slab.k + case["contact_m2k_w"] + 0.5 * below.rise / k
    step_s, at_s = min(slab.longest_s, below.longest_s, 0.4 * below.c * below.rise * between), 0.0
    while True:
        hottest = slab.temps[:, 0, 0].max()
        into, under = slab.gained(), below.gained()
        joint = slab.area / between * (slab.temps[-1] - below.temps[0, :CELLS, :CELLS])
        into[-1] -= joint
        under[0, :CELLS, :CELLS] += joint
        into[0] -= slab.area * loss(top, 0.95, plate, True, slab.temps[0], slab.area)
        under[0] -= bare * loss(top, shine, base_plate, True, below.temps[0], bare)
        under[-1] -= below.area * loss("still_air", shine, base_plate, False, below.temps[-1], below.area)
        for block, gain in ((slab, into), (below, under)):
            block.temps += step_s * gain / (block.c * block.rise * block.area)
        at_s += step_s
        now = slab.temps[:, 0, 0].max()
        if now <= case["target_c"]:
            return (at_s - step_s * (case["target_c"] - now) / (hottest - now)) / 60.0


def plan_of(sides_m, base_sides_m, base, stone_m=None, base_start_c=None, top="still_air", **other):
    request = USUAL | other | {"material": CARAMEL, "base": base, "base_start_c": base_start_c, "top": top}
    request |= {"length_m": sides_m[0], "width_m": sides_m[1], "base_thickness_m": stone_m}
    return catalogue.call("cool.plan", request | {"base_length_m": base_sides_m[0], "base_width_m": base_sides_m[1]})


def by_the_engine(*case, **other):
    return plan_of(*case, **other)["ready_s"] / 60.0


def assert_ready_as_in_three_dimensions(*case, **other):
    known_s, plan = 60.0 * ready_min(*case, **other), plan_of(*case, **other)
    assert 0.9 * known_s < plan["ready_s"] < 1.12 * known_s
    assert plan["ready_low_s"] < known_s < plan["ready_high_s"]


@pytest.mark.parametrize("stone_m", [0.02, 0.05])
@pytest.mark.parametrize("wider", [1.4, 3.0])
@pytest.mark.parametrize("side_m", [0.1, 0.15, 0.35])
def test_slab_on_a_wider_stone_is_ready_as_in_three_dimensions(side_m, wider, stone_m):
    """Slabs of 15 cm and less came up to 49 % late, as all that lies beyond the slab was one warmer base."""
    assert_ready_as_in_three_dimensions((side_m, side_m), (wider * side_m, wider * side_m), "marble", stone_m)


@pytest.mark.parametrize("base", ["granite", "steel_sheet", "wood_board"])
def test_slab_on_any_wider_base_is_ready_as_in_three_dimensions(base):
    assert_ready_as_in_three_dimensions((0.2, 0.2), (0.3, 0.3), base)


@pytest.mark.prove
@pytest.mark.parametrize("base", sorted(BASES))
def test_prove_slabs_of_all_sizes_on_all_bases_are_ready_as_in_three_dimensions(base):
    for side_m, wider in itertools.product((0.1, 0.15, 0.2, 0.27, 0.35), (1.0, 1.2, 1.6, 3.0)):
        for stone_m in (0.02, 0.03, 0.05) if base == "marble" else (None,):
            sides = (side_m, side_m), (wider * side_m, wider * side_m)
            assert_ready_as_in_three_dimensions(*sides, base, stone_m)


@pytest.mark.parametrize(
    ("sides_m", "base_sides_m"), [((0.1, 0.3), (0.4, 0.5)), ((0.1, 0.3), (0.12, 0.6)), ((0.3, 0.15), (0.35, 0.5))]
)
def test_long_slab_is_ready_as_in_three_dimensions(sides_m, base_sides_m):
    assert_ready_as_in_three_dimensions(sides_m, base_sides_m, "marble")


@pytest.mark.parametrize(
    "other",
    [
        {"thickness_m": 0.008},
        {"thickness_m": 0.025},
        {"room_c": 18.0},
        {"room_c": 24.0},
        {"start_c": 85.0},
        {"target_c": 32.0},
        {"target_c": 24.0},
        {"contact_m2k_w": 0.001},
        {"top": "fan"},
        {"base_start_c": 4.0},
        {"base_start_c": 10.0},
        {"base_start_c": 35.0},
    ],
    ids=str,
)
def test_small_slab_that_is_not_the_usual_one_is_ready_as_in_three_dimensions(other):
    assert_ready_as_in_three_dimensions((0.15, 0.15), (0.3, 0.3), "marble", **other)


def test_table_far_beyond_the_slab_brings_nothing_more():
    """Three and six times the area: within 2 % by both; heat does not come so far."""
    for ready in (ready_min, by_the_engine):
        three, six = (ready((0.35, 0.35), (0.35 * times**0.5,) * 2, "marble") for times in (3.0, 6.0))
        assert six == pytest.approx(three, rel=0.02)


def test_slab_is_never_ready_later_on_a_larger_table():
    for side_m in (0.12, 0.35):
        times = [by_the_engine((side_m, side_m), (wide, wide), "marble") for wide in (0.1, 0.36, 0.4, 0.5, 0.8, 3.0)]
        for smaller, larger in itertools.pairwise(times):
            assert larger <= smaller * 1.001
        assert times[-1] < 0.95 * times[0]


def test_ready_goes_evenly_from_a_table_as_large_as_the_slab_to_one_ever_so_little_larger():
    times = [by_the_engine((0.15, 0.15), (0.15 + over, 0.15 + over), "marble") for over in (0.0, 1e-6, 1e-5, 1e-4)]
    assert times == pytest.approx([times[0]] * 4, rel=0.003)
