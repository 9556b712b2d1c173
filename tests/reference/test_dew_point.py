"""Dew point against a table and examples of the Magnus form.

Constants of the World Meteorological Organization, 17.62 and 243.12 °C, as quoted second-hand. The table was worked out
apart from the engine, to a tenth.
"""

import math

import pytest

from amberbench.engine import catalogue

HUMIDITIES = (0.30, 0.40, 0.50, 0.55, 0.60, 0.65, 0.70, 0.80)
TABLE = {
    14: (-3.3, 0.6, 3.7, 5.1, 6.4, 7.5, 8.6, 10.6),
    16: (-1.6, 2.4, 5.6, 7.0, 8.2, 9.4, 10.5, 12.5),
    18: (0.1, 4.2, 7.4, 8.8, 10.1, 11.3, 12.4, 14.5),
    20: (1.9, 6.0, 9.3, 10.7, 12.0, 13.2, 14.4, 16.4),
    22: (3.6, 7.8, 11.1, 12.5, 13.9, 15.1, 16.3, 18.4),
    24: (5.3, 9.6, 12.9, 14.4, 15.8, 17.0, 18.2, 20.3),
    26: (7.1, 11.4, 14.8, 16.3, 17.6, 18.9, 20.1, 22.3),
    28: (8.8, 13.1, 16.6, 18.1, 19.5, 20.8, 22.0, 24.2),
    30: (10.5, 14.9, 18.4, 20.0, 21.4, 22.7, 23.9, 26.2),
}


def dew(temp_c, humidity):
    return catalogue.call("room.dew_point", {"temp_c": temp_c, "humidity": humidity})["dew_point_c"]


@pytest.mark.parametrize("temp_c", TABLE)
def test_dew_point_of_the_table(temp_c):
    found = [dew(temp_c, humidity) for humidity in HUMIDITIES]
    assert found == pytest.approx(TABLE[temp_c], abs=0.051)


@pytest.mark.parametrize(
    ("temp_c", "humidity", "dew_point_c"), [(20, 0.5, 9.3), (22, 0.55, 12.5), (24, 0.6, 15.8), (26, 0.65, 18.9)]
)
def test_dew_point_of_the_examples(temp_c, humidity, dew_point_c):
    assert dew(temp_c, humidity) == pytest.approx(dew_point_c, abs=0.051)


@pytest.mark.parametrize("temp_c", [14, 20, 26, 30])
@pytest.mark.parametrize("humidity", [0.3, 0.5, 0.7])
def test_other_constants_in_use_agree_within_their_own_accuracy(temp_c, humidity):
    """17.625 and 243.04 °C, said to hold within 0.35 K from −40 to 60 °C (quoted second-hand)."""
    gamma = math.log(humidity) + 17.625 * temp_c / (243.04 + temp_c)
    assert dew(temp_c, humidity) == pytest.approx(243.04 * gamma / (17.625 - gamma), abs=0.35)
