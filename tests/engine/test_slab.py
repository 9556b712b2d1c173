"""A slab as a whole: from caramel in hand, centres or boxes to everything the bench needs."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from amberbench.engine import catalogue, fields
from amberbench.engine.core import check
from amberbench.engine.core.problems import Problem
from tests.bench import SLAB_REQUEST

SQUARES = {
    "slab_height_m": 0.010, "piece_length_m": 0.024, "piece_width_m": 0.024, "trim_m": 0.005,
    "oven": {"rated_w": 1000}, "bars_m": [0.010],
}  # fmt: skip


def planned(**request):
    return catalogue.call("slab.plan", SQUARES | request)


def problem(**request):
    with pytest.raises(Problem) as caught:
        planned(**request)
    return caught.value


def test_caramel_in_hand_is_all_used_and_comes_up_to_the_bars():
    reply = planned(have={"kg": 1.8})
    pour = reply["pour"]
    assert reply["caramel_kg"] == 1.8
    assert pour["slab_height_m"] == pour["bar_height_m"] == 0.010
    assert pour["volume_m3"] * 1410.047 == pytest.approx(1.8 * 0.98, rel=1e-5)  # choi_okos_1986, caramel at 74 °C


def test_a_fitted_frame_holds_whole_rows_with_no_more_trim_than_asked():
    reply = planned(have={"kg": 1.8})
    across = reply["pour"]["width_m"] - reply["cut"]["rows"] * 0.024
    assert across == pytest.approx(2 * 0.005)
    along = reply["pour"]["length_m"] - reply["cut"]["columns"] * 0.024
    assert 2 * 0.005 <= along < 2 * 0.005 + 0.024


@settings(deadline=None, max_examples=40)
@given(kg=st.floats(0.5, 3.0), piece_m=st.floats(0.015, 0.05), other_m=st.floats(0.015, 0.05))
def test_no_frame_of_the_same_area_gives_more_centres(kg, piece_m, other_m):
    reply = planned(have={"kg": kg}, piece_length_m=piece_m, piece_width_m=other_m)
    area_m2 = reply["pour"]["area_m2"]
    for step in range(400):
        width_m = 0.03 + step * 0.37 / 399
        length_m = area_m2 / width_m
        if 0.03 < length_m <= 0.6:
            sizes = {"piece_length_m": piece_m, "piece_width_m": other_m, "trim_m": 0.005, "thickness_m": 0.01}
            try:
                pieces = catalogue.call("cut.plan", sizes | {"length_m": length_m, "width_m": width_m})["pieces"]
            except Problem:
                continue
            assert pieces <= reply["cut"]["pieces"]


def test_centres_wanted_get_the_smallest_frame_that_holds_them():
    reply = planned(want={"pieces": 80})
    best = catalogue.call("cut.fit_frame", {
        "pieces": 80, "piece_length_m": 0.024, "piece_width_m": 0.024, "trim_m": 0.005, "max_length_m": 0.6,
        "max_width_m": 0.4})["frames"]  # fmt: skip
    assert reply["cut"]["pieces"] >= 80
    assert reply["pour"]["area_m2"] == pytest.approx(best[0]["length_m"] * best[0]["width_m"])
    assert reply["frames"] == best[1:9]


def test_boxes_are_centres():
    assert planned(want={"boxes": 5, "per_box": 16})["caramel_kg"] == planned(want={"pieces": 80})["caramel_kg"]


def test_caramel_needed_includes_residue_and_trim():
    reply = planned(want={"pieces": 80}, residue=0.03)
    centres_kg = reply["cut"]["pieces"] * reply["cut"]["piece_kg"]
    assert centres_kg + reply["cut"]["trim_kg"] == pytest.approx(reply["caramel_kg"] * 0.97)
    assert reply["cut"]["trim_kg"] > 0


def test_whole_blocks_are_opened_and_the_rest_is_named():
    reply = planned(have={"kg": 1.8}, block_kg=0.5)
    assert reply["blocks"] == 4
    assert reply["leftover_kg"] == pytest.approx(0.2)
    assert planned(have={"kg": 2.0}, block_kg=0.5)["blocks"] == 4


def test_a_frame_in_hand_takes_what_fills_it_and_leaves_what_makes_no_other_slab():
    frame = {"length_m": 0.3, "width_m": 0.25}
    reply = planned(have={"kg": 1.12}, frame=frame)
    assert reply["caramel_kg"] == planned(want={"pieces": 90}, frame=frame)["caramel_kg"] < 1.12
    assert [one["code"] for one in reply["warnings"]] == ["more_than_frame_holds"]
    assert reply["leftover_kg"] == pytest.approx(1.12 - reply["caramel_kg"])


def test_too_little_caramel_for_a_frame_in_hand_makes_a_lower_slab_and_says_so():
    reply = planned(have={"kg": 0.8}, frame={"length_m": 0.3, "width_m": 0.25})
    assert reply["caramel_kg"] == 0.8
    assert reply["pour"]["slab_height_m"] < 0.010
    assert [one["code"] for one in reply["warnings"]] == ["slab_below_bars"]
    assert reply["cool_request"]["thickness_m"] == reply["pour"]["slab_height_m"]


def test_half_a_block_at_half_an_inch_gives_95_to_100_square_inches():
    # Common practice, no published source.
    reply = planned(have={"kg": 2.5 * 0.45359237}, slab_height_m=0.0127, bars_m=None)
    assert 95 <= reply["pour"]["area_m2"] / 0.0254**2 <= 100


def test_the_bench_gets_the_full_requests_of_melt_and_cool():
    reply = catalogue.call("slab.plan", SLAB_REQUEST)
    for name, request in (("melt.plan", reply["melt_request"]), ("cool.plan", reply["cool_request"])):
        known = fields.FUNCTIONS[name]["request"]
        assert set(request) == set(known)
        assert check.checked(known, request) == request
        again = catalogue.call(name, request)
        part = reply[name.split(".")[0]]
        assert {key: again[key] for key in part if key != "inputs"} == {
            key: part[key] for key in part if key != "inputs"
        }
    assert reply["melt_request"]["mass_kg"] == reply["caramel_kg"]
    assert reply["cool_request"]["length_m"] == reply["pour"]["length_m"]


def test_every_input_is_listed_once_with_its_basis():
    reply = planned(have={"kg": 1.8}, room_c=20.0, basis={"room_c": "measured"})
    listed = [row["field"] for row in reply["inputs"]]
    assert len(listed) == len(set(listed))
    rows = {row["field"]: row for row in reply["inputs"]}
    assert rows["room_c"]["basis"] == "measured"
    assert rows["have.kg"]["basis"] == "typed"
    assert rows["residue"]["basis"] == "assumed"
    assert rows["residue"]["measure_by"] == "bowl_residue"
    assert reply["pour"]["inputs"] == reply["melt"]["inputs"] == reply["cool"]["inputs"] == []


def test_what_was_measured_stays_measured_in_the_bench_requests():
    reply = planned(
        have={"kg": 1.8}, room_c=20.0, oven={"power_w": 600}, basis={"room_c": "measured", "oven.power_w": "measured"}
    )
    assert reply["melt_request"]["basis"]["room_c"] == "measured"
    assert reply["melt_request"]["basis"]["oven.power_w"] == "measured"
    assert reply["melt_request"]["basis"]["window_low_c"] == "assumed"
    cooling = {row["field"]: row for row in catalogue.call("cool.plan", reply["cool_request"])["inputs"]}
    assert cooling["room_c"]["basis"] == "measured"
    assert cooling["base"]["basis"] == "assumed"
    assert cooling["base"]["source"] == "en_12524"
    assert (cooling["target_c"]["basis"], cooling["target_c"]["source"]) == ("assumed", "practice")


def test_what_decides_when_it_is_ready_and_how_long_a_burst_may_be_is_among_the_inputs():
    rows = {row["field"]: row for row in planned(have={"kg": 1.8}, target_c=26.0)["inputs"]}
    assert (rows["target_c"]["value"], rows["target_c"]["basis"]) == (26.0, "typed")
    assert (rows["burst_s"]["value"], rows["burst_s"]["basis"], rows["burst_s"]["source"]) == (
        60,
        "assumed",
        "practice",
    )
    warmer, cooler = (planned(have={"kg": 1.8}, target_c=target_c)["cool"]["ready_s"] for target_c in (26.0, 24.0))
    assert warmer < cooler
    assert max(one["seconds_s"] for one in planned(have={"kg": 1.8}, burst_s=30)["melt"]["bursts"]) <= 30


def test_every_default_has_a_source_and_none_is_called_published_without_a_publication():
    for row in planned(have={"kg": 1.8}, vessel={"mass_kg": 0.9})["inputs"]:
        if row["basis"] != "typed":
            assert row["source"], row["field"]
        if row["basis"] == "published":
            assert row["source"] not in ("practice", "assumed", "memory"), row["field"]


@pytest.mark.parametrize(
    ("request_", "field", "code"),
    [
        ({}, "have", "give_one_of"),
        ({"have": {"kg": 1}, "want": {"pieces": 9}}, "have", "give_one_of"),
        ({"want": {}}, "want", "give_one_of"),
        ({"want": {"pieces": 9, "boxes": 2, "per_box": 4}}, "want", "give_one_of"),
        ({"want": {"boxes": 3}}, "want.per_box", "missing"),
        ({"want": {"per_box": 3}}, "want.boxes", "missing"),
        ({"want": {"boxes": 1000, "per_box": 6}}, "want.boxes", "too_high"),
        ({"want": {"pieces": 1}, "piece_length_m": 0.01, "piece_width_m": 0.01, "trim_m": 0}, "want.pieces",
         "no_frame_fits"),
        ({"want": {"pieces": 1}, "piece_length_m": 0.3, "piece_width_m": 0.3, "slab_height_m": 0.1, "bars_m": None},
         "want.pieces", "more_than_a_bowl"),
        ({"want": {"pieces": 5000}, "vessel_volume_m3": 0.0003, "piece_length_m": 0.05, "piece_width_m": 0.05},
         "want.pieces", "too_many_batches"),
        ({"want": {"pieces": 9}, "frame": {"length_m": 2, "width_m": 2}}, "frame.length_m", "more_than_a_bowl"),
        ({"want": {"pieces": 1}}, "want.pieces", "too_little_caramel"),
        ({"have": {"kg": 2}, "frame": {"length_m": 0.02, "width_m": 0.2}}, "frame.length_m",
         "frame_smaller_than_centre"),
        ({"have": {"kg": 2}, "trim_m": 0.1, "frame": {"length_m": 0.15, "width_m": 0.2}}, "trim_m",
         "trim_larger_than_frame"),
        ({"have": {"kg": 2}, "windows": {"low_c": 90}}, "windows.low_c", "window_upside_down"),
        ({"have": {"kg": 2}, "start_c": 100}, "start_c", "start_above_window"),
        ({"have": {"kg": 2}, "oven": {}}, "oven.rated_w", "oven_without_power"),
        ({"have": {"kg": 2}, "material": {"water": 0.5}}, "material", "composition_sum"),
        ({"have": {"kg": True}}, "have.kg", "not_a_number"),
    ],
)  # fmt: skip
def test_a_slab_that_makes_no_sense_names_its_own_field(request_, field, code):
    found = problem(**request_)
    assert (found.field, found.code) == (field, code)


def test_the_limit_told_is_one_that_works():
    found = problem(want={"pieces": 9}, frame={"length_m": 2, "width_m": 2})
    assert planned(want={"pieces": 9}, frame={"length_m": found.high, "width_m": 2})["caramel_kg"] == pytest.approx(10)


def test_more_caramel_gives_no_fewer_centres():
    counts = [planned(have={"kg": 0.5 + 0.1 * step})["cut"]["pieces"] for step in range(25)]
    assert all(more >= less for less, more in pairwise(counts))
