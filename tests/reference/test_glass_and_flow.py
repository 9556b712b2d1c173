"""Glass temperature and viscosity worked by hand; a spreading mound by Huppert's law."""

import math
from typing import Any

import pytest

from amberbench.engine import catalogue
from tests.strategies_deposit import ON_NUTS


def flowing(temp_c, moisture=0.085, **request: Any) -> dict[str, Any]:
    return catalogue.call("flow.viscosity", {"temp_c": temp_c, "moisture": moisture} | request)


def test_glass_temperature_worked_by_hand():
    """Gordon–Taylor (Berk, Food Process Engineering and Technology, equation 1.13), kelvin, 9.25 % water without fat:
    (0.9075 · 335.15 + 4.7 · 0.0925 · 138.15) / (0.9075 + 4.7 · 0.0925) = 364.21 / 1.34225 = 271.34 K = −1.8 °C.
    Dry solids 62 °C, water −135 °C (138 K, Berk); the weight 4.7 of water is Roos's, from memory."""
    assert flowing(21, moisture=0.0925, fat=0)["glass_c"] == pytest.approx(271.34 - 273.15, abs=0.01)


@pytest.mark.parametrize(
    ("moisture", "glass_c", "at_21", "at_74"),
    [(0.07, 6.9, 8.3, 2.1), (0.085, -1.8, 6.7, 1.6), (0.10, -9.8, 5.5, 1.2), (0.12, -19.3, 4.4, 0.8)],
)
def test_caramel_by_its_water(moisture, glass_c, at_21, at_74):
    """Worked out apart from the engine: Gordon–Taylor as above and Williams–Landel–Ferry (Berk, equation 1.15),
    log₁₀ of Pa s; fat 8.1 % but scaled with the solids for other water, hence the tenths."""
    fat = 0.081 * (1 - moisture) / 0.915
    assert flowing(21, moisture, fat=fat)["glass_c"] == pytest.approx(glass_c, abs=0.1)
    assert math.log10(flowing(21, moisture, fat=fat)["viscosity_pa_s"]) == pytest.approx(at_21, abs=0.06)
    assert math.log10(flowing(74, moisture, fat=fat)["viscosity_pa_s"]) == pytest.approx(at_74, abs=0.06)


def test_viscosity_worked_by_hand():
    """Glass at −1.8 °C, 74 °C: 12 − 17.44 · 75.8 / (51.6 + 75.8) = 1.6235, 42 Pa s; at the glass 10¹² Pa s."""
    assert flowing(74, glass_c=-1.8)["viscosity_pa_s"] == pytest.approx(10**1.6235, rel=1e-3)
    assert flowing(-1.8, glass_c=-1.8)["viscosity_pa_s"] == pytest.approx(1e12)


@pytest.mark.parametrize(("temp_c", "down", "up"), [(74, 1.061, 1.076), (21, 1.420, 1.569)])
def test_range_worked_by_hand(temp_c, down, up):
    """Dry solids 62 ± 10 °C (52 and 62 °C are sources' figures for sucrose, 72 assumed as far above), 9.25 % water: the
    glass moves by 10 · 0.9075 / 1.34225 = 6.761 K. At 74 °C, 75.8 K above it, the logarithm is 1.6235; with 69.0 and
    82.6 K 2.0194 and 1.2676: 0.396 and 0.356, each in quadrature with 1 (assumed). At 21 °C 1.209 and 1.008."""
    found = flowing(temp_c, moisture=0.0925, fat=0)
    middle = math.log10(found["viscosity_pa_s"])
    assert middle - math.log10(found["low_pa_s"]) == pytest.approx(down, abs=0.003)
    assert math.log10(found["high_pa_s"]) - middle == pytest.approx(up, abs=0.003)


def test_the_warmest_deposits_run_wider_by_the_eighth_root_of_how_thin_they_are():
    """Worked by hand for 8.5 % water and 8.1 % fat (USDA 19074, glass −1.8 °C), 71 to 77 °C, spread measured at 74 °C:
    75.8 K above the glass 12 − 17.44 · 75.8 / 127.4 = 1.6236, 78.8 K above it 12 − 17.44 · 78.8 / 130.4 = 1.4611: 1.454
    times thinner. Radius ∝ (V³ / ν)^⅛ (Huppert 1982, abstract read): 1.454^⅛ = 1.0479, so 40 mm become 41.9 mm."""
    reply = catalogue.call("cluster.plan", ON_NUTS | {"gap_m": 0.0015})
    (told,) = [one["values"] for one in reply["warnings"] if one["code"] == "run_together"]
    assert told["spread_m"] == pytest.approx(0.0419, abs=0.00005)
    assert told["gap_m"] == pytest.approx(0.0019, abs=0.00005)
    (thinner,) = [row["value"] for row in reply["inputs"] if row["field"] == "deposit.thinner"]
    assert thinner == pytest.approx(1.454, abs=0.002)


@pytest.mark.parametrize(("lost", "verdict"), [(0.2, "slumps"), (0.1, "borderline")])
def test_mound_that_spreads_by_huppert_loses_height_by_the_quarter_power_of_time(lost, verdict):
    """Huppert 1982 (from memory): a fixed volume on a plate, radius 0.894 (g V³ / 3ν)^⅛ t^⅛, so height ∝ t^−¼."""
    volume_m3, viscosity_m2_s = 8e-6, 1e3

    def height_m(at_s):
        radius_m = 0.894 * (9.81 * volume_m3**3 / (3 * viscosity_m2_s)) ** 0.125 * at_s**0.125
        return 4 / 3 * volume_m3 / (math.pi * radius_m**2)

    first_s = 200000.0  # more than a day passes; sooner, a mound that has lost a tenth is on its way to slump
    last_s = first_s * (1 - lost) ** -4
    heights = [{"at_s": at_s, "height_m": height_m(at_s)} for at_s in (first_s, 0.5 * (first_s + last_s), last_s)]
    found = catalogue.call("flow.stand_up_test", {"heights": heights})
    assert found["lost_fraction"] == pytest.approx(lost)
    assert found["verdict"] == verdict
