"""Plans over the network: the engine's own answers, in any usual unit."""

import json
import re
from pathlib import Path

import pytest

from amberbench.engine import catalogue
from tests.bench import SLAB_REQUEST
from tests.problem_shape import assert_problem
from tests.strategies_deposit import ON_NUTS

MELT = {"mass_kg": 1.134, "oven": {"rated_w": 1000}}
REQUESTS = {
    "melt": ("melt.plan", MELT),
    "slab": ("slab.plan", SLAB_REQUEST),
    "jacket": (
        "melt.plan_jacket",
        {"block": {"length_m": 0.2, "width_m": 0.15, "height_m": 0.06}, "jacket_c": 88, "chopped_m": 0.03},
    ),
    "cooling": ("cool.plan", {"thickness_m": 0.012}),
    "frame": (
        "cut.fit_frame",
        {"pieces": 100, "piece_length_m": 0.024, "piece_width_m": 0.024, "max_length_m": 0.5, "max_width_m": 0.4},
    ),
    "clusters": ("cluster.plan", ON_NUTS),
    "coating": ("chocolate.coating", {"piece": {"length_m": 0.024, "width_m": 0.024, "height_m": 0.01}, "pieces": 80}),
    "bowl": ("chocolate.plan", {"mass_kg": 2, "melt_c": 46, "seed_c": 20, "bowl": {"mass_kg": 0.8}}),
    "temper": ("chocolate.temper", {"mass_kg": 1.5, "melt_c": 46, "seed_c": 20}),
    "room": ("room.advise", {"room_c": 23, "humidity": 0.6, "centre_c": 12}),
    "standup": (
        "flow.stand_up_test",
        {"heights": [{"at_s": 0, "height_m": 0.012}, {"at_s": 86400, "height_m": 0.0115}]},
    ),
}


@pytest.mark.parametrize("name", REQUESTS)
def test_plan_is_exactly_what_the_engine_says(readonly_client, name):
    function, request = REQUESTS[name]
    response = readonly_client.post(f"/api/plans/{name}", json=request)
    assert response.status_code == 200, response.get_json()
    assert response.get_json() == catalogue.call(function, request)


def test_example_of_the_readme_works(readonly_client):
    told = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    path, body = re.search(r"curl http://127\.0\.0\.1:8765(\S+) .*?-d '(.*?)'\n```", told, re.DOTALL).groups()
    reply = readonly_client.post(path, json=json.loads(body)).get_json()
    assert reply["caramel_kg"] == pytest.approx(4 * 0.45359237)


@pytest.mark.parametrize(
    ("given", "mass_kg"),
    [
        (2.5, 2.5),
        ("2.5 lb", 2.5 * 0.45359237),
        ("2.5lb", 2.5 * 0.45359237),
        ("  40 oz ", 40 * 0.45359237 / 16),
        ({"value": 2.5, "unit": "lb"}, 2.5 * 0.45359237),
        ({"value": 1200, "unit": "g"}, 1.2),
        ("2 pounds", 2 * 0.45359237),
        ({"value": 0.1, "unit": "stone"}, 0.1 * 14 * 0.45359237),
        ("1.2e3 g", 1.2),
        (".5 kg", 0.5),
    ],
)
def test_mass_is_taken_in_any_usual_unit(readonly_client, given, mass_kg):
    # Exact factors: NIST SP 811 (2008), appendix B.8; a stone is 14 lb.
    response = readonly_client.post("/api/plans/melt", json=MELT | {"mass_kg": given})
    assert response.status_code == 200, response.get_json()
    row = next(row for row in response.get_json()["inputs"] if row["field"] == "mass_kg")
    assert row["value"] == pytest.approx(mass_kg, rel=1e-12)
    assert row["basis"] == "typed"


@pytest.mark.parametrize(
    ("field", "given", "si"),
    [
        ("room_c", "70 °F", 190 / 9),
        ("room_c", {"value": 294.15, "unit": "kelvin"}, 21.0),
        ("room_c", "70 degF", 190 / 9),
        ("thickness_m", "0.5 in", 0.0127),
        ("thickness_m", "12 mm", 0.012),
        ("thickness_m", {"value": 0.5, "unit": "inch"}, 0.0127),
        ("contact_m2k_w", {"value": 0.004, "unit": "m² K/W"}, 0.004),
        ("length_m", "1 foot", 0.3048),
    ],
)
def test_other_quantities_too(readonly_client, field, given, si):
    response = readonly_client.post("/api/plans/cooling", json={"thickness_m": 0.01, field: given})
    assert response.status_code == 200, response.get_json()
    row = next(row for row in response.get_json()["inputs"] if row["field"] == field)
    assert row["value"] == pytest.approx(si, rel=1e-12)


@pytest.mark.parametrize(
    ("given", "code"),
    [
        ("2.5 in", "wrong_unit"),
        ({"value": 2.5, "unit": "in"}, "wrong_unit"),
        ("2.5 furlong", "wrong_unit"),
        ("2.5 °C", "wrong_unit"),
        ("2.5 zorkmid", "unknown_unit"),
        ("2.5 kg*1e9", "unknown_unit"),
        ("2.5 kg**2", "unknown_unit"),
        ("2**99 kg", "unknown_unit"),
        ("2*3 kg", "unknown_unit"),
        ("__import__('os') kg", "not_a_quantity"),
        ("2.5 __class__", "unknown_unit"),
        ("1e9999 kg", "unknown_unit"),
        ("1e400 kg", "not_finite"),
        ("nan kg", "not_a_quantity"),
        ("inf kg", "not_a_quantity"),
        ("２.５ kg", "not_a_quantity"),
        ("½ kg", "not_a_quantity"),
        ("2,5 kg", "unknown_unit"),
        ("2.5 k\u0261", "unknown_unit"),
        ("2.5", "no_unit"),
        ("", "not_a_quantity"),
        ("kg", "not_a_quantity"),
        ("9" * 5000 + " kg", "not_a_quantity"),
        (True, "not_a_number"),
        ([2.5], "not_a_number"),
        (None, "missing"),
        ({"value": 2.5}, "not_a_quantity"),
        ({"value": "2.5", "unit": "kg"}, "not_a_quantity"),
        ({"value": True, "unit": "kg"}, "not_a_quantity"),
        ({"value": 2.5, "unit": 7}, "unknown_unit"),
        ({"value": 2.5, "unit": "kg", "per": "bowl"}, "not_a_quantity"),
        ({"value": 1e308, "unit": "metric_ton"}, "not_finite"),
        (0, "too_low"),
        (-1.2, "too_low"),
        (1e9, "too_high"),
        ("3 tonne", "too_high"),
    ],
)
def test_bad_mass_is_refused_by_name(readonly_client, given, code):
    document = assert_problem(
        readonly_client.post("/api/plans/melt", json=MELT | {"mass_kg": given}), 422, code, "mass_kg"
    )
    if code in ("wrong_unit", "unknown_unit", "no_unit"):
        assert document["errors"][0]["accepted"] == ["g", "kg", "oz", "lb"]


def test_sentence_names_field_value_and_what_is_accepted(readonly_client):
    document = readonly_client.post("/api/plans/melt", json=MELT | {"mass_kg": "2.5 in"}).get_json()
    for words in ("2.5 in", "kg", "lb"):
        assert words in document["detail"]
    document = readonly_client.post("/api/plans/melt", json=MELT | {"room_c": 800}).get_json()
    for words in ("800\u202f°C", "−5\u202f°C", "45\u202f°C"):
        assert words in document["detail"]


def test_all_that_is_wrong_with_the_shape_is_said_at_once(readonly_client):
    request = {"mass_kg": "2.5 in", "room_c": True, "oven": {"rated_w": [], "colour": "white"}, "bowl": 1}
    document = assert_problem(readonly_client.post("/api/plans/melt", json=request), 422)
    found = {(error["field"], error["code"]) for error in document["errors"]}
    assert found == {
        ("mass_kg", "wrong_unit"),
        ("room_c", "not_a_number"),
        ("oven.rated_w", "not_a_number"),
        ("oven.colour", "unknown_field"),
        ("bowl", "unknown_field"),
    }


@pytest.mark.parametrize(
    ("name", "change", "field"),
    [
        ("melt", {"window_low_c": 80, "window_high_c": 75}, None),
        ("melt", {"window_low_c": 90, "window_high_c": 99}, None),
        ("melt", {"start_c": 90}, None),
        ("melt", {"material": "granite"}, "material"),
        ("melt", {"material": {"water": 0.9, "fat": 0.9}}, None),
        ("melt", {"material": {"water": 0.1, "sugar": 0.9}}, "material.sugar"),
        ("melt", {"oven": {}}, None),
        ("melt", {"oven": "hot"}, "oven"),
        ("melt", {"basis": {"mass_kg": "guessed"}}, "basis.mass_kg"),
        ("slab", {"frame": {"length_m": 0.02, "width_m": 0.02}}, None),
        ("slab", {"trim_m": 0.1, "frame": {"length_m": 0.15, "width_m": 0.15}}, None),
        ("slab", {"want": {"pieces": 10}}, None),
        ("slab", {"bars_m": []}, "bars_m"),
        ("slab", {"bars_m": [0.01, "wide"]}, "bars_m[1]"),
        ("slab", {"bars_m": [0.01] * 21}, "bars_m"),
        ("cooling", {"thickness_m": 0}, "thickness_m"),
        ("cooling", {"base": {"layers": [{"thickness_m": 0.01}]}}, "base.layers[0].conductivity_w_mk"),
        ("cooling", {"top": "gale"}, "top"),
        ("frame", {"pieces": 2.5}, "pieces"),
        ("frame", {"pieces": "12"}, "pieces"),
        ("frame", {"trim_m": 0.1, "max_length_m": 0.1}, None),
        ("clusters", {"rows": []}, "rows"),
        ("clusters", {"rows": [{"clusters": -4, "deposit_kg": 0.01}]}, "rows[0].clusters"),
        ("clusters", {"second_kg": -0.001}, "second_kg"),
        ("clusters", {"gap_m": 0.2, "tray": {"length_m": 0.2, "width_m": 0.15}}, "gap_m"),
        ("coating", {"piece": None}, "piece"),
        ("coating", {"piece": None, "pickup": 0.5}, "centre_kg"),
        ("coating", {"pieces": -3}, "pieces"),
        ("coating", {"thickness_m": {"bottom": 0, "side": 0, "top": 0}}, "thickness_m"),
        ("coating", {"thickness_m": {"bottom": -0.001, "side": 0, "top": 0}}, "thickness_m.bottom"),
        ("coating", {"chocolate": "carob"}, "chocolate"),
        ("bowl", {"seed_c": 34}, "seed_c"),
        ("bowl", {"mass_kg": -2}, "mass_kg"),
        ("bowl", {"bowl": {"mass_kg": -1}}, "bowl.mass_kg"),
        ("temper", {"seed_c": 34}, "seed_c"),
        ("temper", {"melt_c": 30}, "melt_c"),
        ("temper", {"melt_c": 60}, "melt_c"),
        ("temper", {"chocolate": "milk_chocolate", "melt_c": 52}, "melt_c"),
        ("temper", {"room_c": 29}, "room_c"),
        ("temper", {"mass_kg": 0}, "mass_kg"),
        ("room", {"humidity": 1.2}, "humidity"),
        ("room", {"humidity": -0.1}, "humidity"),
        ("room", {"humidity": 0}, "humidity"),
        ("room", {"humidity": 55}, "humidity"),
        (
            "standup",
            {"heights": [{"at_s": 0, "height_m": 0.01}, {"at_s": 60, "height_m": 0.011}]},
            "heights[1].height_m",
        ),
        ("standup", {"heights": [{"at_s": 60, "height_m": 0.01}, {"at_s": 60, "height_m": 0.01}]}, "heights[1].at_s"),
        ("standup", {"heights": [{"at_s": 0, "height_m": 0.01}]}, "heights"),
    ],
)
def test_what_makes_no_sense_is_a_problem(readonly_client, name, change, field):
    document = assert_problem(readonly_client.post(f"/api/plans/{name}", json=REQUESTS[name][1] | change), 422)
    if field:
        assert document["errors"][0]["field"] == field


def test_hundredths_are_taken_for_a_share_and_nothing_else_is(readonly_client):
    damp = readonly_client.post("/api/plans/room", json={"room_c": 23, "humidity": "60 %"}).get_json()
    assert damp == readonly_client.post("/api/plans/room", json={"room_c": 23, "humidity": 0.6}).get_json()
    refused = readonly_client.post("/api/plans/room", json={"room_c": 23, "humidity": "60 kg"})
    assert_problem(refused, 422, "wrong_unit", "humidity")
    assert refused.get_json()["detail"].endswith("Accepted units: %.")
