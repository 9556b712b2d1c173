"""Every request is checked against its fields before anything is computed."""

import pytest

from amberbench.engine.core import check
from amberbench.engine.core import field_kinds as kinds
from amberbench.engine.core.problems import Problem

KNOWN = {
    "mass_kg": kinds.number("kg", 0.05, 10, "mass"),
    "rows": kinds.integer(1, 9, "rows", default=2),
    "free": kinds.boolean("stirs freely", default=None),
    "name": kinds.text(5, "name", default=""),
    "way": kinds.choice(("a", "b"), "way", default="a"),
    "oven": kinds.record({"rated_w": kinds.number("W", 200, 3500, "power", default=900.0)}, "oven", default={}),
    "bars_m": kinds.many(kinds.number("m", 0.002, 0.1, "bar"), 1, 3, "bars", default=None),
    "frame": kinds.either(
        [
            kinds.choice(("fit",), "find one"),
            kinds.record({"length_m": kinds.number("m", 0, 5, "length")}, "by size"),
            kinds.record({"area_m2": kinds.number("m²", 0, 5, "area")}, "by area"),
        ],
        "frame",
        default="fit",
    ),
    "plan": kinds.document("a plan", default=None),
}


def problem(request):
    with pytest.raises(Problem) as caught:
        check.checked(KNOWN, request)
    return caught.value


def test_defaults_are_filled_in_at_every_depth():
    full = check.checked(KNOWN, {"mass_kg": 1})
    assert full == {
        "mass_kg": 1, "rows": 2, "free": None, "name": "", "way": "a", "oven": {"rated_w": 900.0}, "bars_m": None,
        "frame": "fit", "plan": None,
    }  # fmt: skip


def test_a_checked_request_passes_again_unchanged():
    full = check.checked(KNOWN, {"mass_kg": 1, "frame": {"area_m2": 2}, "bars_m": [0.01]})
    assert check.checked(KNOWN, full) == full


@pytest.mark.parametrize(
    ("more", "field", "code"),
    [
        ({"mass_kg": None}, "mass_kg", "missing"),
        ({"mass_kg": True}, "mass_kg", "not_a_number"),
        ({"mass_kg": "2.5"}, "mass_kg", "not_a_number"),
        ({"mass_kg": [1]}, "mass_kg", "not_a_number"),
        ({"mass_kg": float("nan")}, "mass_kg", "not_finite"),
        ({"mass_kg": float("inf")}, "mass_kg", "not_finite"),
        ({"mass_kg": 0}, "mass_kg", "too_low"),
        ({"mass_kg": -1}, "mass_kg", "too_low"),
        ({"mass_kg": 1e300}, "mass_kg", "too_high"),
        ({"mass_kg": 10**400}, "mass_kg", "too_high"),
        ({"rows": 2.5}, "rows", "not_whole"),
        ({"rows": False}, "rows", "not_a_number"),
        ({"free": 1}, "free", "not_true_or_false"),
        ({"name": 5}, "name", "not_text"),
        ({"name": "too long"}, "name", "too_long"),
        ({"way": "c"}, "way", "not_an_option"),
        ({"way": 1}, "way", "not_an_option"),
        ({"oven": 900}, "oven", "not_a_record"),
        ({"oven": {"watts": 900}}, "oven.watts", "unknown_field"),
        ({"oven": {"rated_w": True}}, "oven.rated_w", "not_a_number"),
        ({"bars_m": 0.01}, "bars_m", "not_a_list"),
        ({"bars_m": []}, "bars_m", "too_few"),
        ({"bars_m": [0.01] * 4}, "bars_m", "too_many"),
        ({"bars_m": [0.01, "x"]}, "bars_m[1]", "not_a_number"),
        ({"frame": "guess"}, "frame", "not_an_option"),
        ({"frame": {"length_m": 6}}, "frame.length_m", "too_high"),
        ({"frame": {"area_m2": -1}}, "frame.area_m2", "too_low"),
        ({"frame": {}}, "frame.length_m", "missing"),
        ({"plan": {"deep": [{"er": float("nan")}]}}, "plan", "not_finite"),
        ({"plan": {"deep": -float("inf")}}, "plan", "not_finite"),
        ({"stranger": 1}, "stranger", "unknown_field"),
        ({"": 1}, '""', "unknown_field"),
    ],
)
def test_what_is_wrong_is_named(more, field, code):
    found = problem({"mass_kg": 1} | more)
    assert (found.field, found.code) == (field, code)


def test_of_several_wrong_fields_the_first_by_name_is_told_on_server_and_phone_alike():
    assert problem({"way": "c", "oven": {"rated_w": 1}, "rows": 0}).field == "mass_kg"


def test_a_problem_carries_value_range_and_unit():
    found = problem({"mass_kg": 11})
    assert (found.given, found.low, found.high, found.unit) == (11, 0.05, 10, "kg")
    assert str(found) == found.document()["message"] == "mass_kg: too_high"


def test_an_unknown_field_lists_the_known_ones():
    assert problem({"mass_kg": 1, "mas_kg": 2}).accepted == sorted(KNOWN)


@pytest.mark.parametrize("request_", [None, [], "text", 3, True])
def test_a_request_that_is_no_record_is_refused(request_):
    assert problem(request_).code == "not_a_record"


@pytest.mark.parametrize(
    ("value", "fine"), [(1, True), (-2.5, True), (True, False), ("1", False), (None, False), (float("nan"), False),
                        (float("inf"), False), (10**400, False)],
)  # fmt: skip
def test_a_number_is_a_finite_int_or_float(value, fine):
    assert check.is_number(value) is fine


def rows(request):
    full = check.checked(KNOWN, {name: request[name] for name in request if name != "basis"})
    return {row["field"]: row for row in check.inputs(KNOWN, request, full)}


def test_a_given_value_is_typed_and_a_default_keeps_its_own_basis():
    found = rows({"mass_kg": 1.8})
    assert found["mass_kg"]["basis"] == "typed"
    assert found["oven.rated_w"]["basis"] == "assumed"
    assert found["mass_kg"]["unit"] == "kg"
    assert "name" not in found


def test_the_request_may_say_that_a_value_was_measured():
    assert rows({"mass_kg": 1.8, "basis": {"mass_kg": "measured"}})["mass_kg"]["basis"] == "measured"


@pytest.mark.parametrize("basis", [{"mass_kg": "guessed"}, {"mass_kg": 1}, "typed"])
def test_a_basis_is_one_of_the_four_words(basis):
    with pytest.raises(Problem):
        rows({"mass_kg": 1.8, "basis": basis})


def test_long_and_nested_values_are_not_repeated_in_a_problem():
    assert len(problem({"mass_kg": "9" * 4000}).document()["given"]) < 100
    assert problem({"mass_kg": {"a": 1}}).document()["given"] == "…"
