"""What a label says against the rules of the reference tables, each with how it is known.

Guide only: local rules decide.
"""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem

WORDS = [
    {"allergen": "milk", "words": ["milk", "leche"]},
    {"allergen": "soya", "words": ["soya", "soy"]},
    {"allergen": "almond", "words": ["almond"]},
    {"allergen": "wheat", "words": ["wheat"]},
]
CARAMEL = {
    "name": "Caramel",
    "ingredients": "glucose syrup, sugar, cream (milk), butter (milk), salt",
    "contains": ["milk"],
    "kg": 1.8,
}
CHOCOLATE = {
    "name": "Dark chocolate",
    "ingredients": "cocoa mass, sugar, cocoa butter, emulsifier: soya lecithin",
    "contains": ["soya"],
    "kg": 0.6,
}
ALMONDS = {"name": "Almonds", "ingredients": "almonds", "contains": ["almond"], "kg": 0.9}
SALT = {"name": "Sea salt", "ingredients": "salt", "contains": [], "kg": 0.01}


def content(*parts, rule="us", **more):
    request = {
        "rule": rule,
        "name": "Almond caramels",
        "parts": list(parts),
        "words": WORDS,
        "label_kg": 0.113,
        "face_m2": 0.01,
        "best_by": "2027-01-20",
        "made_on": "2026-12-01",
        "address": "1 Main St",
    }
    return catalogue.call("label.content", dict(request, **more))


def listed(reply):
    return "".join(run["text"] for run in reply["ingredients"])


def strong(reply):
    return [run["text"] for run in reply["ingredients"] if run["is_strong"]]


def told(reply):
    return [one["code"] for one in reply["warnings"]]


def test_the_heaviest_stands_first_and_parts_of_a_part_in_brackets():
    # Order: 21 CFR 101.4(a), seen; brackets: 101.4(b)(2), from memory. A list with its own gets square ones.
    assert listed(content(SALT, CHOCOLATE, CARAMEL, ALMONDS)) == (
        "Caramel [glucose syrup, sugar, cream (milk), butter (milk), salt], almonds, "
        "Dark chocolate (cocoa mass, sugar, cocoa butter, emulsifier: soya lecithin), salt."
    )


def test_two_blocks_with_the_same_list_are_one_and_weigh_as_one():
    halves = [dict(CHOCOLATE, kg=0.5), ALMONDS, dict(CHOCOLATE, name="Dark drops", kg=0.5)]
    reply = content(*halves)
    assert listed(reply).startswith("Dark chocolate (")
    assert listed(reply).count("cocoa mass") == 1


def test_equal_weights_keep_the_order_they_were_given_in():
    assert listed(content(dict(SALT, kg=0.9), ALMONDS)) == "salt, almonds."


def test_the_us_names_allergens_on_a_line_of_their_own_and_marks_none_in_the_list():
    # 21 USC 343(w)(1), seen: the word "Contains", or the source in the list.
    reply = content(CARAMEL, CHOCOLATE, ALMONDS)
    assert reply["contains"] == ["milk", "almond", "soya"]
    assert strong(reply) == []


@pytest.mark.parametrize("rule", ["eu", "uk"])
def test_europe_marks_allergen_words_in_the_list_and_has_no_line_of_its_own(rule):
    # Commission Notice 2017/C 428/01, seen: the allergen's own word alone needs to stand out. The UK's from memory.
    reply = content(CARAMEL, CHOCOLATE, ALMONDS, rule=rule)
    assert reply["contains"] == []
    assert strong(reply) == ["milk", "milk", "almond", "soya"]


def test_an_allergen_that_no_word_of_the_list_names_is_added_and_told():
    bare = dict(CARAMEL, ingredients="sugar, cream, butter")
    reply = content(bare, rule="eu")
    assert listed(reply) == "Caramel (sugar, cream, butter, milk)."
    assert strong(reply) == ["milk"]
    assert reply["warnings"][-1] == {"code": "allergen_added", "values": {"name": "Caramel", "allergen": "milk"}}


def test_a_word_inside_another_is_no_allergen():
    reply = content(dict(CARAMEL, ingredients="sugar, cornsilkmilk, milkfat"), rule="eu")
    assert listed(reply) == "Caramel (sugar, cornsilkmilk, milkfat)."
    assert strong(reply) == ["milk"]


def test_celery_is_an_allergen_in_the_eu_alone_and_pine_nuts_in_the_us_alone():
    # 21 USC 321(qq) and annex II, seen; pine nuts on the list of FDA's guidance of January 2025 (seen in summaries).
    both = dict(SALT, ingredients="celery salt, pine nuts", contains=["celery", "pine_nut"])
    assert content(both)["allergens"] == ["pine_nut"]
    assert content(both, rule="eu")["allergens"] == ["celery"]


def test_what_was_on_the_bench_unwashed_may_be_in_it_unless_it_is():
    reply = content(CARAMEL, may_contain=["milk", "pecan", "celery"])
    assert reply["may_contain"] == ["pecan"]


@pytest.mark.parametrize("kindless", ["nuts"])
def test_nuts_of_no_kind_keep_a_label_from_being_complete(kindless):
    # 21 USC 343(w)(2), seen: the specific nut.
    reply = content(CARAMEL, dict(SALT, contains=[kindless]))
    assert "kind_missing" in told(reply)
    assert not reply["is_complete"]


@pytest.mark.parametrize("rule", ["us", "eu"])
@pytest.mark.parametrize("where", ["contains", "may_contain"])
def test_gluten_of_no_kind_may_be_wheat_and_keeps_a_label_from_being_complete(rule, where):
    # 21 USC 321(qq), seen: wheat alone; annex II of Regulation 1169/2011, seen: the cereal by its name.
    said, may = (["gluten"], []) if where == "contains" else ([], ["gluten"])
    reply = content(CARAMEL, dict(SALT, contains=said), rule=rule, may_contain=may)
    assert {"code": "kind_missing", "values": {"allergen": "gluten"}} in reply["warnings"]
    assert not reply["is_complete"]


def test_where_wheat_is_named_the_us_asks_no_more_of_gluten_and_rye_is_no_answer():
    assert told(content(dict(SALT, contains=["gluten", "wheat"]))) == []
    assert told(content(dict(SALT, contains=["wheat"]), may_contain=["gluten"])) == []
    assert told(content(dict(SALT, contains=["gluten"]), may_contain=["wheat"])) == ["kind_missing"]
    assert told(content(dict(SALT, contains=["gluten", "rye"]))) == ["kind_missing"]
    assert "kind_missing" in told(content(dict(SALT, contains=["gluten", "wheat"]), rule="eu"))


@pytest.mark.parametrize("one", ["fish", "crustaceans"])
def test_the_us_wants_the_species_of_fish_and_crustaceans(one):
    # 21 USC 343(w)(2), seen.
    reply = content(CARAMEL, dict(SALT, contains=[one]))
    assert {"code": "species_missing", "values": {"allergen": one}} in reply["warnings"]
    assert not reply["is_complete"]
    assert "species_missing" not in told(content(CARAMEL, dict(SALT, contains=[one]), rule="eu"))


@pytest.mark.parametrize("order", [1, -1])
@pytest.mark.parametrize("rule", ["us", "eu"])
def test_a_copy_of_one_list_without_its_allergens_takes_none_from_the_other(order, rule):
    known, unknown = CARAMEL, dict(CARAMEL, name="Caramel of June", contains=None)
    reply = content(*[known, unknown][::order], rule=rule)
    assert reply["allergens"] == ["milk"]
    assert "label_unknown" in told(reply)
    assert strong(reply) == (["milk", "milk"] if rule == "eu" else [])


@pytest.mark.parametrize("unknown", [{"ingredients": ""}, {"contains": None}])
def test_a_label_nobody_copied_keeps_the_box_from_being_sold(unknown):
    reply = content(CARAMEL, dict(SALT, **unknown))
    assert {"code": "label_unknown", "values": {"name": "Sea salt"}} in reply["warnings"]
    assert not reply["is_complete"]


def test_more_than_nine_allergens_are_all_named_and_told():
    many = ["milk", "egg", "cashew", "walnut", "wheat", "peanuts", "soya", "sesame", "almond", "pecan"]
    reply = content(dict(SALT, contains=many))
    assert len(reply["contains"]) == 10
    assert {"code": "many_allergens", "values": {"count": 10}} in reply["warnings"]
    assert reply["is_complete"]


@pytest.mark.parametrize(
    ("missing", "code"),
    [({"label_kg": None}, "net_missing"), ({"address": ""}, "address_missing"), ({"best_by": None}, "day_missing")],
)
def test_what_every_label_needs_is_asked_for(missing, code):
    reply = content(CARAMEL, **missing)
    assert told(reply) == [code]
    assert not reply["is_complete"]


def test_of_a_box_nobody_knows_anything_about_nothing_is_said():
    reply = content()
    assert listed(reply) == "."
    assert told(reply) == ["nothing_known"]


def test_a_net_weight_in_the_wrong_unit_is_refused():
    with pytest.raises(Problem) as caught:
        content(CARAMEL, label_kg=113)
    assert (caught.value.field, caught.value.low, caught.value.high) == ("label_kg", 0.005, 25)


def test_best_by_before_it_was_made_is_refused():
    with pytest.raises(Problem) as caught:
        content(CARAMEL, best_by="2026-11-30")
    assert (caught.value.field, caught.value.code) == ("best_by", "best_by_before_made")


def test_the_net_weight_is_that_of_the_rule():
    # 4 oz: 113 g, rounded down; 10 × 10 cm is more than 5 and at most 25 in²: 1/8 in (sister rule 801.62, seen).
    net = content(CARAMEL, label_kg=0.1134)["net"]
    assert (net["grams"], net["ounces"], net["letter_m"]) == (113, 4.0, pytest.approx(0.003175))
    assert content(CARAMEL, rule="uk")["net"]["letter_m"] == pytest.approx(0.003)


@pytest.mark.parametrize(
    ("wanted", "refused"),
    [
        ({"rule": "eu", "net_passed": True}, None),
        ({"rule": "uk", "net_passed": True}, None),
        ({"rule": "eu", "net_passed": True, "label_kg": 0.005}, None),
        ({"rule": "eu", "net_passed": True, "label_kg": 10}, None),
        ({"rule": "us", "net_passed": True}, "e_mark_rule"),
        ({"rule": "eu", "net_passed": True, "label_kg": 10.01}, "e_mark_weight"),
        ({"rule": "eu", "net_passed": True, "label_kg": None}, "e_mark_weight"),
        ({"rule": "eu"}, "e_mark_unchecked"),
    ],
)
def test_e_mark_stands_where_the_eu_rule_for_it_is_met(wanted, refused):
    """5 g to 10 kg of one nominal quantity: from an encyclopedia, the directive was not opened. That the lot passed: in
    the UK's text."""
    reply = content(CARAMEL, CHOCOLATE, e_mark=True, **wanted)
    assert reply["e_mark"] is (refused is None)
    assert [one for one in told(reply) if one.startswith("e_mark")] == ([refused] if refused else [])
    assert content(CARAMEL, **wanted)["e_mark"] is False
