"""Coating against geometry worked out by hand, as a table made independently of this engine."""

from typing import Any

import pytest

from amberbench.engine import catalogue

CENTRE = {"length_m": 0.025, "width_m": 0.025, "height_m": 0.0127}
# Length and width in mm (all 12.7 mm high), thickness on every face in mm, coating in g, its share of the finished
# weight. Geometry: grown box less box, caramel 1429.5 and chocolate 1300 kg/m³, computed apart from the engine.
SHARES = [
    (25, 25, 0.5, 1.721, 0.1317), (25, 25, 0.8, 2.835, 0.1999), (25, 25, 1.0, 3.612, 0.2415),
    (25, 25, 1.5, 5.683, 0.3337), (25, 25, 2.0, 7.939, 0.4117), (25, 25, 2.7, 11.427, 0.5018),
    (22, 22, 1.0, 3.017, 0.2556), (22, 22, 2.5, 8.783, 0.4999), (30, 20, 1.1, 3.940, 0.2657),
    (30, 20, 1.5, 5.585, 0.3389), (25.4, 25.4, 0.8, 2.901, 0.1985), (25.4, 25.4, 2.7, 11.670, 0.4991),
]  # fmt: skip


def coated(**request: Any) -> dict[str, Any]:
    return catalogue.call("chocolate.coating", {"pieces": 1, "bowl_reserve_kg": 0} | request)


def even(thickness_m):
    return {"bottom": thickness_m, "side": thickness_m, "top": thickness_m}


@pytest.mark.parametrize(("length", "width", "thickness", "grams", "share"), SHARES)
def test_a_centre_takes_the_coating_of_the_table(length, width, thickness, grams, share):
    piece = {"length_m": length / 1000, "width_m": width / 1000, "height_m": 0.0127}
    found = coated(piece=piece, thickness_m=even(thickness / 1000))
    assert 1000 * found["per_piece_kg"] == pytest.approx(grams, abs=6e-4)
    assert found["share"] == pytest.approx(share, abs=6e-5)


def test_an_enrobed_centre_of_an_inch_is_a_quarter_chocolate():
    assert coated(piece=CENTRE, method="enrober_with_bottomer")["share"] == pytest.approx(0.241, abs=5e-4)


def test_small_caramel_with_its_own_densities():
    """19 × 19 × 9.5 mm, 4.5 g: 27 % at 0.8 mm to 43 % at 1.5 mm (geometry, chocolate at 1280 kg/m³, by hand)."""
    piece = {"length_m": 0.019, "width_m": 0.019, "height_m": 0.0095}
    for thickness_m, share in ((0.0008, 0.27), (0.001, 0.32), (0.0012, 0.37), (0.0015, 0.43)):
        found = coated(piece=piece, centre_kg=0.0045, thickness_m=even(thickness_m))
        # 1300 in place of 1280 kg/m³ moves the share by less than half a hundredth.
        assert found["share"] == pytest.approx(share, abs=0.01)
