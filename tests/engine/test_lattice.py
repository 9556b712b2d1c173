"""Where deposits go on a tray."""

import math
import random
from itertools import pairwise

import pytest

from amberbench.engine.products.cluster import lattice

# Width, height, diameter; square, staggered along width, along height. The first and the third are published
# puzzles (14 circles; 18 tins as 4-3-4-3-4), the fifth a published hint of five rows; the others were worked by hand.
COUNTED = [
    (8.0, 2.0 + 3.0 * math.sqrt(3.0), 2.0, 12, 14, 12),
    (8.0, 8.0, 2.0, 16, 14, 14),
    (4.0, 1.0 + 2.0 * math.sqrt(3.0), 1.0, 16, 18, 14),
    (632.0, 632.0, 8.0, 6241, 7144, 7144),
    (1.0, 1.0, 0.22, 16, 20, 20),
    (450.0, 320.0, 45.0, 70, 76, 72),
    (450.0, 320.0, 40.0, 88, 95, 90),
    (320.0, 450.0, 40.0, 88, 90, 95),
    (400.0, 300.0, 50.0, 48, 45, 50),
    (100.0, 100.0, 10.0, 100, 105, 105),
]
# n circles in a square, and the side of the least square that holds n of radius 1 (published, cut off): nothing that
# fits in a square can hold more.
SQUARES = [(1, 2.0), (2, 3.414), (3, 3.931), (4, 4.0), (5, 4.828), (6, 5.328), (7, 5.732), (8, 5.863), (9, 6.0),
           (10, 6.747), (11, 7.022), (12, 7.144), (13, 7.463), (14, 7.732)]  # fmt: skip


def tray(rng):
    """(length, width, rim, spread, pitch) in m of a tray that a shop may have."""
    spread_m = rng.uniform(0.02, 0.07)
    sides = rng.uniform(0.15, 0.65), rng.uniform(0.12, 0.5)
    return (*sides, rng.uniform(0.0, 0.02), spread_m, spread_m + rng.uniform(0.0, 0.02))


def walked(along_m, across_m, pitch_m):
    """Points of each lattice inside a rectangle, by laying out far too many and looking at each: brute force."""
    counts = []
    for turned, lean in ((False, 0.0), (False, 0.5), (True, 0.5)):
        wide, high = (across_m, along_m) if turned else (along_m, across_m)
        apart = math.sqrt(1.0 - lean * lean) * pitch_m
        inside = 0
        for row in range(80):
            for place in range(-1, 80):
                x, y = (place + lean * (row % 2)) * pitch_m, row * apart
                inside += -1e-9 <= x <= wide + 1e-9 and y <= high + 1e-9
        counts.append(inside)
    return counts


def oler(along, across):
    """The most points at least 1 apart in a rectangle (Oler 1961, from memory)."""
    return math.floor(2.0 / math.sqrt(3.0) * along * across + along + across + 1.0 + 1e-6)


def hold_to_it(trays, rng):
    for _ in range(trays):
        length_m, width_m, rim_m, spread_m, pitch_m = tray(rng)
        pattern, points = lattice.best(length_m, width_m, rim_m, spread_m, pitch_m)
        room = [side - 2.0 * rim_m - spread_m for side in (length_m, width_m)]
        counts = walked(*room, pitch_m)
        assert len(points) == max(counts) == counts[lattice.PATTERNS.index(pattern)]
        assert len(points) <= oler(*(side / pitch_m for side in room))
        edge_m = rim_m + 0.5 * spread_m - 1e-8
        assert all(edge_m <= x <= length_m - edge_m and edge_m <= y <= width_m - edge_m for x, y in points)
        assert closest(points) >= pitch_m - 1e-8


def closest(points):
    """The least distance between two points, by looking along a line swept over them."""
    swept, found = sorted(points), math.inf
    for index, (x, y) in enumerate(swept):
        for other in swept[index + 1 :]:
            if other[0] - x >= found:
                break
            found = min(found, math.hypot(other[0] - x, other[1] - y))
    return found


def test_tray_holds_the_most_of_three_lattices_inside_its_rim_and_never_more_than_can_be():
    hold_to_it(60, random.Random("trays"))


@pytest.mark.prove
def test_ten_thousand_trays_hold_the_most_of_three_lattices():
    hold_to_it(10000, random.Random("many trays"))


@pytest.mark.parametrize(("along", "across", "diameter", "square", "staggered", "turned"), COUNTED)
def test_counts_are_those_known(along, across, diameter, square, staggered, turned):
    room = along - diameter, across - diameter
    rows = (
        lattice.square_rows(*room, diameter),
        lattice.staggered_rows(*room, diameter),
        lattice.staggered_rows(*reversed(room), diameter),
    )
    assert [sum(number for _, number in one) for one in rows] == [square, staggered, turned]
    assert len(lattice.best(along, across, 0.0, diameter, diameter)[1]) == max(square, staggered, turned)


@pytest.mark.parametrize(("number", "side"), SQUARES)
def test_a_square_too_small_for_so_many_circles_never_holds_them(number, side):
    # The sides are cut off after three decimals, so that less than them is too small for sure.
    assert len(lattice.best(side - 0.001, side - 0.001, 0.0, 2.0, 2.0)[1]) < number


@pytest.mark.parametrize("number", [1, 4, 9])
def test_square_lattice_reaches_the_best_there_is_where_it_is_the_best(number):
    side = 2.0 * math.sqrt(number)
    assert len(lattice.best(side, side, 0.0, 2.0, 2.0)[1]) == number


def test_deposits_are_laid_row_by_row_back_and_forth():
    pattern, points = lattice.best(0.40, 0.30, 0.01, 0.036, 0.042)
    assert pattern in lattice.PATTERNS
    steps = [math.dist(one, other) for one, other in pairwise(points)]
    assert max(steps) <= 2.0 * 0.042 + 1e-9


def test_room_left_over_is_shared_between_both_sides():
    _, points = lattice.best(0.40, 0.30, 0.01, 0.05, 0.06)
    for axis, side_m in ((0, 0.40), (1, 0.30)):
        places = [point[axis] for point in points]
        assert min(places) == pytest.approx(side_m - max(places))


def test_tray_turned_by_a_quarter_holds_as_many():
    assert len(lattice.best(0.45, 0.32, 0.0, 0.04, 0.04)[1]) == len(lattice.best(0.32, 0.45, 0.0, 0.04, 0.04)[1])


def test_tray_smaller_than_a_deposit_holds_none():
    assert lattice.best(0.05, 0.3, 0.01, 0.04, 0.05)[1] == []
    assert len(lattice.best(0.06, 0.06, 0.01, 0.04, 0.05)[1]) == 1
