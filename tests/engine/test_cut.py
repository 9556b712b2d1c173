"""Centres from a frame, and a frame for centres."""

import itertools
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem

SQUARES = {"piece_length_m": 0.024, "piece_width_m": 0.024, "trim_m": 0.005, "kerf_m": 0.0}


def cut(**request):
    return catalogue.call("cut.plan", {"thickness_m": 0.01, **request})


def frames(**request):
    return catalogue.call("cut.fit_frame", request)["frames"]


def problem(name, **request):
    with pytest.raises(Problem) as caught:
        catalogue.call(name, request)
    return caught.value


def test_a_frame_made_for_eight_by_ten_squares_gives_them():
    reply = cut(length_m=0.25, width_m=0.202, **SQUARES)
    assert (reply["rows"], reply["columns"], reply["pieces"], reply["rotated"]) == (8, 10, 80, False)


def test_a_pan_of_eight_inches_without_trim_gives_eight_by_eight_inch_squares():
    inches = {"length_m": 8, "width_m": 8, "piece_length_m": 1, "piece_width_m": 1, "trim_m": 0}
    assert cut(**{name: number * 0.0254 for name, number in inches.items()})["pieces"] == 64


def test_batons_are_turned_where_more_fit():
    reply = cut(length_m=0.19, width_m=0.07, piece_length_m=0.06, piece_width_m=0.018, trim_m=0.005)
    assert reply["rotated"]
    assert (reply["rows"], reply["columns"]) == (1, 10)


def test_cuts_run_along_the_centres_and_through_the_middle_of_the_loss():
    reply = cut(length_m=0.1, width_m=0.06, piece_length_m=0.02, piece_width_m=0.02, trim_m=0.004, kerf_m=0.002)
    # By hand: 4 + 20 + half of 2, then every 22 mm, and the far edge of the last centre.
    assert reply["cuts_across_m"] == pytest.approx([0.004, 0.025, 0.047, 0.069, 0.090])
    assert reply["cuts_along_m"] == pytest.approx([0.004, 0.025, 0.046])


def test_what_was_not_typed_is_among_the_inputs_of_a_cut_and_of_a_frame():
    sizes = {"piece_length_m": 0.024, "piece_width_m": 0.024}
    cut_rows = cut(length_m=0.25, width_m=0.202, **sizes)["inputs"]
    table = {"pieces": 80, "max_length_m": 0.6, "max_width_m": 0.4}
    frame_rows = catalogue.call("cut.fit_frame", sizes | table | {"kerf_m": 0.0, "basis": {"kerf_m": "measured"}})
    for rows, kerf in ((cut_rows, "assumed"), (frame_rows["inputs"], "measured")):
        basis = {row["field"]: row["basis"] for row in rows}
        assert (basis["trim_m"], basis["kerf_m"], basis["piece_length_m"]) == ("assumed", kerf, "typed")


SIZES = {
    "length_m": st.floats(0.08, 0.6), "width_m": st.floats(0.08, 0.4), "piece_length_m": st.floats(0.01, 0.06),
    "piece_width_m": st.floats(0.01, 0.06), "trim_m": st.floats(0, 0.008), "kerf_m": st.floats(0, 0.003),
}  # fmt: skip


@given(**SIZES)
def test_every_centre_lies_inside_the_trim_and_none_more_would_fit(**request):
    reply = cut(**request)
    sizes = (request["piece_length_m"], request["piece_width_m"])
    along, across = reversed(sizes) if reply["rotated"] else sizes
    for cuts, side, piece in (
        (reply["cuts_across_m"], request["length_m"], along),
        (reply["cuts_along_m"], request["width_m"], across),
    ):
        assert cuts == sorted(cuts)
        assert cuts[0] == request["trim_m"]
        left_over = side - request["trim_m"] - cuts[-1]
        assert -1e-8 <= left_over < piece + request["kerf_m"]
    assert len(reply["cuts_along_m"]) == reply["rows"] + 1
    assert len(reply["cuts_across_m"]) == reply["columns"] + 1


@given(**SIZES)
def test_centres_and_trim_weigh_what_the_slab_weighs(**request):
    reply = cut(**request)
    # 1429.518 kg/m³ at 21 °C: component polynomials (choi_okos_1986), USDA caramel.
    slab_kg = 1429.518 * 0.01 * request["length_m"] * request["width_m"]
    assert reply["pieces"] * reply["piece_kg"] + reply["trim_kg"] == pytest.approx(slab_kg, rel=1e-6)
    assert reply["trim_kg"] >= 0.0


@given(**SIZES)
def test_turning_the_frame_changes_nothing(**request):
    turned = request | {"length_m": request["width_m"], "width_m": request["length_m"]}
    assert cut(**turned)["pieces"] == cut(**request)["pieces"]


def test_a_frame_smaller_than_a_centre_names_the_side_and_the_least():
    found = problem("cut.plan", length_m=0.3, width_m=0.03, thickness_m=0.01, **SQUARES)
    assert (found.field, found.code, found.given) == ("width_m", "frame_smaller_than_centre", 0.03)
    assert found.low == pytest.approx(0.034)
    long = {"piece_length_m": 0.06, "piece_width_m": 0.02, "trim_m": 0.0, "thickness_m": 0.01}
    assert problem("cut.plan", length_m=0.05, width_m=0.05, **long).low == pytest.approx(0.06)


def test_trim_larger_than_the_frame_is_refused():
    found = problem("cut.plan", length_m=0.3, width_m=0.1, thickness_m=0.01, **(SQUARES | {"trim_m": 0.05}))
    assert (found.field, found.code) == ("trim_m", "trim_larger_than_frame")
    assert found.high == pytest.approx(0.05)


# fit_frame -----------------------------------------------------------------------------------------------------------


def every_frame(case):
    """Brute force in whole micrometres: every grid of rows and columns laid out centre by centre, both ways round."""
    pieces, a, b, trim, kerf, longest, widest = case
    found = set()
    for along, across in {(a, b), (b, a)}:
        for rows, columns in itertools.product(range(1, 200), repeat=2):
            length = 2 * trim + along * columns + kerf * (columns - 1)
            width = 2 * trim + across * rows + kerf * (rows - 1)
            if width > widest:
                break
            if length <= longest and rows * columns >= pieces:
                found.add((length, width))
    return found


def drawn_case(rng):
    sides = [rng.randrange(15_000, 60_001, 500) for _ in range(2)]
    if rng.random() < 0.4:
        sides[1] = sides[0]
    table = (rng.randrange(150_000, 700_001, 1000), rng.randrange(150_000, 450_001, 1000))
    return rng.randrange(1, 120), *sides, rng.randrange(0, 12_001, 500), rng.choice([0, 0, 500, 1500]), *table


def asked(case):
    names = ("piece_length_m", "piece_width_m", "trim_m", "kerf_m", "max_length_m", "max_width_m")
    return {"pieces": case[0]} | {name: value * 1e-6 for name, value in zip(names, case[1:], strict=True)}


def test_the_smallest_frame_is_that_of_brute_force_in_a_thousand_cases():
    rng = random.Random(20)
    none = 0
    for _ in range(1000):
        case = drawn_case(rng)
        every = every_frame(case)
        if not every:
            none += 1
            assert problem("cut.fit_frame", **asked(case)).code == "no_frame_fits"
            continue
        found = frames(**asked(case))
        areas = [frame["length_m"] * frame["width_m"] * 1e12 for frame in found]
        assert areas[0] == pytest.approx(min(length * width for length, width in every), rel=1e-9)
        assert areas == sorted(areas)
        sides = {(round(frame["length_m"] * 1e6), round(frame["width_m"] * 1e6)) for frame in found}
        assert len(sides) == len(found)
        assert sides <= every
    assert 100 < none < 600


def test_every_frame_of_brute_force_is_as_large_as_one_listed():
    rng = random.Random(21)
    for _ in range(200):
        case = drawn_case(rng)
        every = every_frame(case)
        if every and len(found := frames(**asked(case))) < 40:
            listed = [(frame["length_m"] * 1e6 - 1, frame["width_m"] * 1e6 - 1) for frame in found]
            both = listed + [(width, length) for length, width in listed]
            assert all(any(length >= x and width >= y for x, y in both) for length, width in every)


@given(seed=st.integers(0, 2**32))
def test_a_frame_found_gives_its_centres_when_cut(seed):
    case = drawn_case(random.Random(seed))
    if every_frame(case):
        request = asked(case)
        for frame in frames(**request)[:5]:
            if min(frame["length_m"], frame["width_m"]) < 0.02:
                continue  # cut.plan takes no frame as small as that
            sizes = {name: request[name] for name in SQUARES}
            reply = cut(length_m=frame["length_m"], width_m=frame["width_m"], **sizes)
            assert reply["pieces"] >= frame["pieces"] == frame["rows"] * frame["columns"] >= case[0]
            wanted_m2 = case[0] * request["piece_length_m"] * request["piece_width_m"]
            area_m2 = frame["length_m"] * frame["width_m"]
            assert frame["waste"] == pytest.approx(1 - wanted_m2 / area_m2, abs=1e-9)


def test_too_many_centres_says_how_many_the_table_holds():
    found = problem("cut.fit_frame", pieces=1000, max_length_m=0.25, max_width_m=0.202, **SQUARES)
    assert (found.field, found.code, found.high) == ("pieces", "no_frame_fits", 80)
    assert frames(pieces=80, max_length_m=0.25, max_width_m=0.202, **SQUARES)[0]["pieces"] == 80


def test_a_table_smaller_than_a_centre_is_named():
    found = problem("cut.fit_frame", pieces=1, max_length_m=0.3, max_width_m=0.03, **SQUARES)
    assert (found.field, found.code) == ("max_width_m", "frame_smaller_than_centre")
