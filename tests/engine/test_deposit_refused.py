"""Plans of clusters that cannot be, each refused by field and value."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests.strategies_deposit import ON_A_BED, ON_NUTS


def problem(name, request):
    with pytest.raises(Problem) as caught:
        catalogue.call(name, request)
    return caught.value


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"tray": {"length_m": 0.3, "width_m": 0.035}}, "tray.width_m", "tray_smaller_than_deposit"),
        ({"tray": {"length_m": 0.2, "width_m": 0.1, "rim_m": 0.04}}, "tray.rim_m", "rim_leaves_no_room"),
        ({"tray": {"length_m": 0.2, "width_m": 0.1}, "gap_m": 0.15}, "gap_m", "gap_leaves_no_room"),
        ({"rows": [{"clusters": 9, "deposit_kg": 0.3}]}, "rows[0].deposit_kg", "heavier_than_fill"),
        ({"second_kg": 0.3}, "second_kg", "heavier_than_fill"),
        ({"rows": [{"clusters": -1, "deposit_kg": 0.01}]}, "rows[0].clusters", "too_low"),
        ({"rows": [{"clusters": 2.5, "deposit_kg": 0.01}]}, "rows[0].clusters", "not_whole"),
        ({"rows": []}, "rows", "give_one_of"),
        ({"caramel_kg": 1.0}, "rows", "give_one_of"),
        ({"rows": [], "caramel_kg": 1.0}, "deposit_kg", "missing"),
        ({"rows": [], "deposit_kg": 0.01}, "caramel_kg", "missing"),
        ({"rows": [], "caramel_kg": 0.1, "deposit_kg": 0.2}, "caramel_kg", "too_little_caramel"),
        ({"rows": [{"clusters": 20000, "deposit_kg": 0.05}] * 2}, "rows", "too_many_batches"),
        ({"rows": [{"clusters": 2, "deposit_kg": 0.01}]}, "rows[0].clusters", "too_little_caramel"),
        ({"under": [{"material": "pecan", "kg_each": 0.002, "count": -4}]}, "under[0].count", "too_low"),
        ({"under": [{"material": "gravel", "kg_each": 0.002}]}, "under[0].material", "not_an_option"),
        ({"under": [{"material": {"water": 0.2}, "kg_each": 0.002}]}, "under[0].material", "composition_sum"),
        ({"bed": ON_A_BED["bed"]}, "under", "give_one_of"),
        ({"spread_m": 0.02}, "spread_m", "spread_too_narrow"),
        ({"second_kg": -0.001}, "second_kg", "too_low"),
        ({"funnel": {"volume_m3": 0.001, "fill": 1.2}}, "funnel.fill", "too_high"),
        ({"window_low_c": 78.0}, "window_low_c", "window_upside_down"),
        ({"window_high_c": 95.0}, "window_high_c", "line_above_line"),
        ({"deposits_per_min": 0}, "deposits_per_min", "too_low"),
        ({"room_c": 40.0, "window_low_c": 41.0, "window_high_c": 43.0}, "room_c", "room_too_warm_for_deposits"),
    ],
)  # fmt: skip
def test_what_makes_no_sense_is_refused_by_field_and_value(change, field, code):
    request = ON_NUTS | {"funnel": {"volume_m3": 0.0002}} | change
    found = problem("cluster.plan", request)
    assert (found.field, found.code) == (field, code)


@pytest.mark.parametrize(
    ("change", "field", "end"),
    [
        ({"tray": {"length_m": 0.2, "width_m": 0.1}, "gap_m": 0.15}, "gap_m", "high"),
        ({"tray": {"length_m": 0.2, "width_m": 0.1, "rim_m": 0.04}}, "tray.rim_m", "high"),
        ({"spread_m": 0.02}, "spread_m", "low"),
    ],
)
def test_what_is_accepted_in_place_of_a_refused_value_is_accepted(change, field, end):
    request = ON_NUTS | change
    found = problem("cluster.plan", request)
    accepted = getattr(found, end)
    assert found.field == field
    mended = {"tray": request["tray"] | {"rim_m": accepted}} if field == "tray.rim_m" else {field: accepted}
    assert catalogue.call("cluster.plan", request | mended)["per_tray"] >= 1


def test_shares_of_a_mixed_bed_have_to_add_up():
    bed = {"materials": [{"material": "peanut", "share": 0.5}, {"material": "almond", "share": 0.3}], "bed_kg_m2": 4}
    found = problem("cluster.plan", ON_A_BED | {"bed": bed})
    assert (found.field, found.code) == ("bed.materials", "shares_sum")
    assert found.given == pytest.approx(0.8)


def test_deposits_too_unlike_for_one_window_are_refused():
    rows = [{"clusters": 20, "deposit_kg": 0.02}, {"clusters": 20, "deposit_kg": 0.004}]
    request = ON_NUTS | {"rows": rows, "spread_m": 0.045, "second_kg": 0.001}
    assert problem("cluster.plan", request).code == "no_time_to_weld"


def test_a_funnel_hotter_than_the_limit_is_refused():
    found = problem("deposit.fill", {"pace_kg_s": 0.003, "now_c": 95.0, "fill_kg": 1.0})
    assert (found.field, found.code, found.given, found.high) == ("now_c", "funnel_too_hot", 95.0, 93.3)
