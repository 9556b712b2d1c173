"""The shop is what its edits amount to, in whatever order they arrive and whoever made them."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.physics import materials
from amberbench.engine.shop import fields as fields_shop
from amberbench.engine.steps.temper import plan as temper
from tests import strategies

_numbers = iter(range(1, 10**9))


def edit(doc, field, value, at_ms=None, device="phone-a", **body):
    """One edit, later than those before it unless a time is given."""
    seq = next(_numbers)
    return {
        "id": f"event-{seq}", "v": 1, "shop_id": "shop", "device_id": device, "seq": seq, "offset_ms": 0,
        "at_ms": seq if at_ms is None else at_ms, "batch_id": None, "kind": "shop_set",
        "body": {"doc": doc, "field": field, "value": value, "basis": "typed"} | body,
    }  # fmt: skip


def fold(*events, shop_id=None):
    return catalogue.call("shop.fold", {"shop_id": shop_id, "events": list(events)})


def shop_of(*events):
    reply = fold(*events)
    assert reply["ignored"] == []
    return reply["shop"]


@given(seed=st.integers(0, 2**32))
def test_the_order_of_arrival_does_not_matter(seed):
    rng = random.Random(seed)
    request = strategies.sensible("shop.fold", rng)
    mixed = rng.sample(request["events"], len(request["events"]))
    ours = catalogue.call("shop.fold", request)
    theirs = catalogue.call("shop.fold", dict(request, events=mixed + mixed[:5]))
    assert ours["shop"] == theirs["shop"]
    assert sorted(map(str, ours["ignored"])) == sorted(set(map(str, theirs["ignored"])))


def test_two_phones_that_edit_different_fields_both_keep_theirs():
    made = edit("ovens/a", "name", "Oven")
    watts = edit("ovens/a", "rated_w", 900, at_ms=1000, device="phone-a")
    step = edit("ovens/a", "step_s", 15, at_ms=1000, device="phone-b")
    oven = shop_of(step, made, watts)["ovens"][0]
    assert (oven["name"], oven["rated_w"], oven["step_s"]) == ("Oven", 900, 15)


def test_two_phones_that_edit_the_same_field_the_later_one_stands_on_both():
    early = edit("ovens/a", "rated_w", 900, at_ms=1000, device="phone-b")
    late = edit("ovens/a", "rated_w", 800, at_ms=1001, device="phone-a")
    assert shop_of(late, early)["ovens"][0]["rated_w"] == 800
    tie = edit("ovens/a", "rated_w", 700, at_ms=1001, device="phone-c")
    assert shop_of(tie, late, early)["ovens"][0]["rated_w"] == 700


def test_a_value_taken_back_gives_way_to_what_stood_before_anybody_said_anything():
    set_high, taken_back = edit("caramels/a", "stop_c", 88), edit("caramels/a", "stop_c", None)
    assert shop_of(set_high)["caramels"][0]["stop_c"] == 88
    assert shop_of(set_high, taken_back)["caramels"][0]["stop_c"] == 85
    assert shop_of(edit("shop", "room_c", 25), edit("shop", "room_c", None))["room_c"] == 21


def test_a_removed_row_is_hidden_and_comes_back_as_it_was():
    rows = [edit("ovens/a", "rated_w", 900), edit("ovens/b", "rated_w", 800)]
    gone = edit("ovens/a", "removed", True)
    assert [one["id"] for one in shop_of(*rows, gone)["ovens"]] == ["b"]
    back = shop_of(*rows, gone, edit("ovens/a", "removed", False))["ovens"]
    assert [(one["id"], one["rated_w"]) for one in back] == [("a", 900), ("b", 800)]


def test_rows_stand_in_the_order_in_which_they_first_appeared():
    shop = shop_of(edit("bars/z", "height_m", 0.01), edit("bars/a", "height_m", 0.006), edit("bars/z", "count", 8))
    assert [one["id"] for one in shop["bars"]] == ["z", "a"]


@pytest.mark.parametrize(
    ("body", "why"),
    [
        ({"doc": "ovens/a", "field": "rated_w", "value": 9}, "too_low"),
        ({"doc": "ovens/a", "field": "rated_w", "value": "much"}, "not_a_number"),
        ({"doc": "ovens/a", "field": "step_s", "value": 7}, "not_an_option"),
        ({"doc": "ovens/a", "field": "colour", "value": "red"}, "unknown_field"),
        ({"doc": "ovens/a", "field": ["rated_w"], "value": 900}, "unknown_field"),
        ({"doc": "ovens/a", "value": 900}, "unknown_field"),
        ({"doc": "kettles/a", "field": "name", "value": "Kettle"}, "not_an_option"),
        ({"doc": "ovens/a b", "field": "name", "value": "Oven"}, "malformed"),
        ({"doc": "ovens/", "field": "name", "value": "Oven"}, "malformed"),
        ({"doc": "shop", "field": "removed", "value": True}, "unknown_field"),
        ({"doc": {"ovens": "a"}, "field": "name", "value": "Oven"}, "malformed"),
        ({"doc": "ovens/a", "field": "rated_w", "value": 900, "basis": "guessed"}, "not_an_option"),
    ],
)
def test_an_edit_that_makes_no_sense_is_named_and_changes_nothing(body, why):
    before = edit("ovens/b", "rated_w", 900)
    wrong = edit("", "", None)
    wrong["body"] = body
    reply = fold(before, wrong)
    assert reply["ignored"] == [{"id": wrong["id"], "why": why}]
    assert reply["shop"] == fold(before)["shop"]


@pytest.mark.parametrize("event", [7, [], {}, {"id": "x"}, {"id": "x", "body": {}, "kind": "shop_set"}])
def test_what_is_no_event_is_passed_over(event):
    assert [one["why"] for one in fold(event)["ignored"]] == ["malformed"]


def test_edits_of_another_shop_and_other_kinds_are_passed_over():
    ours, theirs = edit("shop", "name", "Ours"), edit("shop", "name", "Theirs") | {"shop_id": "elsewhere"}
    reply = fold(ours, theirs, edit("shop", "name", "?") | {"kind": "freed"}, shop_id="shop")
    assert reply["shop"]["name"] == "Ours"
    assert {one["why"] for one in reply["ignored"]} == {"other_shop", "unknown_kind"}


def test_an_empty_log_is_an_empty_shop():
    shop = fold(shop_id="shop")["shop"]
    assert shop["id"] == "shop"
    assert all(shop[name] == [] for name in fields_shop.LISTS)


def test_what_was_said_and_what_merely_stands_are_told_apart_by_their_basis():
    shop = shop_of(edit("ovens/a", "rated_w", 850, basis="measured"), edit("caramels/c", "warn_c", 83))
    basis = shop["basis"]
    assert basis["ovens/a.rated_w"] == "measured"
    assert basis["caramels/c.warn_c"] == "typed"
    assert basis["caramels/c.stop_c"] == "assumed"
    assert "ovens/a.name" not in basis


def test_what_a_bowl_is_made_of_sets_the_heat_it_takes_until_somebody_says_otherwise():
    plastic, own = edit("vessels/a", "made_of", "plastic"), edit("vessels/a", "heat_capacity_j_kgk", 1500)
    assert shop_of(plastic)["vessels"][0]["heat_capacity_j_kgk"] == 1700
    assert shop_of(plastic, own)["vessels"][0]["heat_capacity_j_kgk"] == 1500
    assert shop_of(plastic, own, edit("vessels/a", "made_of", "glass"))["vessels"][0]["heat_capacity_j_kgk"] == 800


def test_a_label_with_only_its_moisture_makes_a_whole_caramel():
    material = shop_of(edit("caramels/a", "label.water_share", 0.11))["caramels"][0]["material"]
    assert material["water"] == 0.11
    assert sum(material[part] for part in materials.COMPONENTS) == pytest.approx(1)
    plain = materials.resolved("caramel")
    assert material["fat"] / material["carbohydrate"] == pytest.approx(plain["fat"] / plain["carbohydrate"])


def test_a_weighed_density_is_what_the_engine_reckons_with():
    caramel = shop_of(edit("caramels/a", "density_kg_m3", 1310))["caramels"][0]
    reply = catalogue.call("materials.properties", {"material": caramel["material"], "temp_c": 21})
    assert reply["density_kg_m3"] == pytest.approx(1310)
    assert shop_of(edit("caramels/a", "name", "Plain"))["caramels"][0]["material"] == "caramel"


@given(label=st.dictionaries(st.sampled_from(fields_shop.LABEL), st.floats(0, 1)))
def test_any_label_makes_a_material_that_can_be_reckoned_with(label):
    edits = [edit("caramels/a", f"label.{part}_share", share) for part, share in label.items()]
    caramel = shop_of(edit("caramels/a", "name", "Any"), *edits)["caramels"][0]
    assert catalogue.call("materials.heat", {"material": caramel["material"], "mass_kg": 1, "from_c": 20, "to_c": 70})


def check(doc, **values):
    return catalogue.call(
        "shop.check", {"doc": doc, "values": {name.replace("__", "."): values[name] for name in values}}
    )


def test_a_form_is_told_which_field_is_wrong_before_anything_is_written():
    with pytest.raises(Problem) as raised:
        check("ovens/a", name="Oven", rated_w=90_000)
    assert (raised.value.field, raised.value.code, raised.value.high) == ("rated_w", "too_high", 3500)
    assert check("ovens/a", name="Oven", rated_w=None)["values"] == {"name": "Oven", "rated_w": None}


def test_heat_lines_must_rise_and_a_label_add_up():
    lines = {"windows__slab__low_c": 71, "windows__slab__high_c": 77, "warn_c": 82, "stop_c": 85, "limit_c": 93}
    check("caramels/a", **lines)
    with pytest.raises(Problem, match="line_above_line"):
        check("caramels/a", **lines | {"warn_c": 76})
    with pytest.raises(Problem, match="window_upside_down"):
        check("caramels/a", **lines | {"windows__slab__low_c": 77})
    with pytest.raises(Problem, match="composition_sum"):
        check("caramels/a", label__fat_share=0.5, label__carbohydrate_share=0.8)


def test_temper_curve_of_a_chocolate_is_whole_and_in_order_or_not_there():
    own = dict(zip(temper.LINES, (41, 48, 26.5, 27.5, 29.5, 30.5), strict=True))
    curve = {"targets__" + name: value for name, value in own.items()}
    assert check("chocolates/a", chocolate="milk_chocolate")["values"] == {"chocolate": "milk_chocolate"}
    check("chocolates/a", **curve)
    with pytest.raises(Problem, match="missing") as raised:
        check("chocolates/a", **curve | {"targets__cool_low_c": None})
    assert raised.value.field == "targets.cool_low_c"
    with pytest.raises(Problem, match="heat_line_too_low"):
        check("chocolates/a", **curve | {"targets__work_low_c": 27})


@pytest.mark.parametrize("salt_kg", [0, -0.0001, 0.1])
def test_product_cannot_be_salted_with_nothing_or_100_g(salt_kg):
    with pytest.raises(Problem) as raised:
        check("products/a", coating__salt_each_kg=salt_kg)
    assert raised.value.field == "coating.salt_each_kg"


def test_density_is_weight_over_volume_and_a_slip_is_seen():
    assert catalogue.call("shop.density", {"mass_kg": 0.325, "volume_m3": 0.00025})["density_kg_m3"] == 1300
    with pytest.raises(Problem, match="density_out_of_reach"):
        catalogue.call("shop.density", {"mass_kg": 0.325, "volume_m3": 0.0005})


def test_metal_vessel_is_refused_unless_it_has_a_water_jacket():
    values = {"name": "Kettle", "mass_kg": 3.0, "made_of": "steel"}
    with pytest.raises(Problem) as caught:
        catalogue.call("shop.check", {"doc": "vessels/v", "values": values})
    assert (caught.value.field, caught.value.code) == ("made_of", "metal_in_oven")
    jacketed = values | {"jacketed": True, "water_c": 88.0}
    assert catalogue.call("shop.check", {"doc": "vessels/v", "values": jacketed})["values"] == jacketed


def test_nobody_says_dairy_free_of_milk_caramel():
    with pytest.raises(Problem) as caught:
        check("caramels/a", contains=["soya"])
    assert (caught.value.field, caught.value.code) == ("contains", "milk_in_caramel")
    check("caramels/a", contains=["milk", "soya"])
    # Of one made without milk the label says so, and what it is made of.
    check("caramels/a", contains=["soya"], label__protein_share=0.01)


@pytest.mark.parametrize("kind", ["milk_chocolate", "white_chocolate"])
def test_milk_chocolate_contains_milk_whatever_was_said(kind):
    with pytest.raises(Problem) as caught:
        check("chocolates/a", chocolate=kind, contains=["soya"])
    assert (caught.value.field, caught.value.code) == ("contains", "milk_in_chocolate")
    check("chocolates/a", chocolate=kind, contains=["milk", "soya"])
    check("chocolates/a", chocolate="dark_chocolate", contains=["soya"])
    kept = edit("chocolates/a", "chocolate", kind)
    for said in ([], ["soya"], ["milk", "soya"]):
        row = shop_of(kept, edit("chocolates/a", "contains", said))["chocolates"][0]
        assert sorted(row["contains"]) == sorted({"milk", *said})
    assert shop_of(kept)["chocolates"][0]["contains"] == ["milk"]
