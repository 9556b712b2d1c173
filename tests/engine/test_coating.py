"""Chocolate for centres and clusters."""

from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem

CENTRE = {"length_m": 0.024, "width_m": 0.024, "height_m": 0.01}


def coated(**request: Any) -> dict[str, Any]:
    return catalogue.call("chocolate.coating", {"pieces": 80} | request)


def codes(reply):
    return [one["code"] for one in reply["warnings"]]


def test_all_of_it_adds_up():
    found = coated(piece=CENTRE, prebottom_m=0.0005, bowl_reserve_kg=0.4)
    assert found["coating_kg"] == pytest.approx(80 * found["per_piece_kg"])
    assert found["prebottom_kg"] == pytest.approx(80 * 1300 * 0.024 * 0.024 * 0.0005)
    assert found["drip_kg"] == pytest.approx(0.05 * found["coating_kg"])
    parts = ("coating_kg", "prebottom_kg", "drip_kg", "reserve_kg")
    assert found["total_kg"] == pytest.approx(sum(found[part] for part in parts))
    assert (found["reserve_kg"], found["depth_m"]) == (0.4, None)


def test_finished_piece_is_larger_by_its_coating_and_its_pre_bottom():
    layer = {"bottom": 0.001, "side": 0.0015, "top": 0.002}
    outside = coated(piece=CENTRE, thickness_m=layer, prebottom_m=0.0005)["outside_m"]
    assert outside == pytest.approx({"length_m": 0.027, "width_m": 0.027, "height_m": 0.0135})


def test_by_hand_it_is_thicker_than_from_the_enrober_and_both_are_assumed():
    by_hand, enrobed = coated(piece=CENTRE), coated(piece=CENTRE, method="enrober_with_bottomer")
    assert by_hand["per_piece_kg"] > enrobed["per_piece_kg"]
    for reply, thickness_m in ((by_hand, 0.0015), (enrobed, 0.001)):
        row = next(row for row in reply["inputs"] if row["field"] == "coating.thickness_m")
        assert (row["value"], row["basis"]) == (thickness_m, "assumed")


@pytest.mark.parametrize("pickup", [0.05, 0.4, 1.0])
def test_measured_pick_up_decides_the_mass_and_with_it_the_size(pickup):
    found = coated(piece=CENTRE, pickup=pickup, centre_kg=0.0083)
    assert found["per_piece_kg"] == pytest.approx(pickup * 0.0083, rel=1e-6)
    thickness_m = 0.5 * (found["outside_m"]["length_m"] - 0.024)
    again = coated(piece=CENTRE, thickness_m={"bottom": thickness_m, "side": thickness_m, "top": thickness_m})
    assert again["per_piece_kg"] == pytest.approx(found["per_piece_kg"], rel=1e-6)


def test_clusters_go_by_pick_up():
    found = coated(pickup=0.5, centre_kg=0.018, bowl_reserve_kg=0.3)
    assert found["coating_kg"] == pytest.approx(0.72)
    assert found["share"] == pytest.approx(1 / 3)
    assert found["outside_m"] is None


def test_pre_bottom_of_a_whole_slab_goes_by_its_area():
    assert coated(piece=CENTRE, prebottom_m=0.0005, prebottom_m2=0.06)["prebottom_kg"] == pytest.approx(0.039)


def test_enrober_without_a_bottomer_wants_the_pre_bottom():
    assert codes(coated(piece=CENTRE, method="enrober")) == ["prebottom_wanted"]
    for change in ({"prebottom_m": 0.0005}, {"method": "fork"}, {"method": "enrober_with_bottomer"}):
        assert codes(coated(**({"piece": CENTRE, "method": "enrober"} | change))) == []


def test_an_enrober_without_a_bottomer_leaves_the_underside_to_the_pre_bottom():
    """Common practice, no published source. By hand: 27 × 27 × 14.2 mm less 25 × 25 × 13.2 mm are 2101.8 mm³, 2.732 g
    of 1300 kg/m³; the pre-bottom of half a millimetre 0.406 g."""
    piece = {"length_m": 0.025, "width_m": 0.025, "height_m": 0.0127}
    found = coated(piece=piece, method="enrober", prebottom_m=0.0005, pieces=1, bowl_reserve_kg=0, drip_share=0)
    assert found["per_piece_kg"] == pytest.approx(0.002732, abs=1e-6)
    assert found["total_kg"] == pytest.approx(0.003139, abs=1e-6)
    assert found["outside_m"]["height_m"] == pytest.approx(0.0142)
    both = coated(piece=piece, method="enrober_with_bottomer", pieces=1)
    assert both["outside_m"]["height_m"] == pytest.approx(0.0147)


def test_piece_too_large_for_its_pocket_is_told():
    oblong = CENTRE | {"length_m": 0.03}
    fits = {"length_m": 0.0271, "width_m": 0.0331, "height_m": 0.0131}
    assert codes(coated(piece=oblong, pocket_m=fits)) == []
    for side in fits:
        assert codes(coated(piece=oblong, pocket_m=fits | {side: fits[side] - 0.001})) == ["larger_than_pocket"]


@pytest.mark.parametrize(
    ("request_", "field", "code"),
    [
        ({}, "piece", "coating_without_size"),
        ({"pickup": 0.4}, "centre_kg", "missing"),
        ({"pickup": 0.4, "centre_kg": 0.02, "prebottom_m": 0.001}, "prebottom_m2", "missing"),
        ({"piece": CENTRE, "thickness_m": {"bottom": 0, "side": 0, "top": 0}}, "thickness_m", "no_coating"),
        ({"piece": CENTRE, "pieces": 0}, "pieces", "too_low"),
    ],
)
def test_what_cannot_be_coated_is_refused(request_, field, code):
    with pytest.raises(Problem) as caught:
        coated(**request_)
    assert (caught.value.field, caught.value.code) == (field, code)
