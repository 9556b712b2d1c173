"""Net contents, dates, declarations and check digits against the vectors of the reference tables.

Guide only: local rules decide. "From memory" stands in the name of what nobody has read in a document yet.
"""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.labelling import dates
from amberbench.engine.shop.business_fields import SHOP


def call(name, **request):
    return catalogue.call(name, request)


def net(label_g, errors_g=(), rule="us", lot=200, **more):
    weights = [(label_g + error) / 1000 for error in errors_g]
    return call("net.check", rule=rule, label_kg=label_g / 1000, net_kg=weights, lot_size=lot, **more)


# NIST Handbook 133, table 2-5, from memory: label up to (g), MAV (g). Each gram figure is its pound figure
# × 453.59237 cut off; the row to 117 g is seen in the handbook's chapter 2.2, the row to 263 g second-hand.
MAV_FROM_MEMORY = [
    (54, 3.6), (81, 5.4), (117, 7.2), (154, 9.0), (208, 10.8), (263, 12.7), (317, 14.5), (381, 16.3), (426, 18.1),
    (489, 19.9), (571, 21.7), (635, 23.5), (698, 25.4), (771, 27.2), (852, 29.0), (970, 31.7), (1120, 35.3),
    (1250, 39.0), (1450, 42.6), (1760, 49.8), (2130, 54.4), (2630, 63.5), (3080, 68.0), (3580, 77.1), (4260,
    86.1), (5300, 99.7), (6480, 113), (8020, 127), (10520, 140), (14330, 167), (19230, 199), (24670, 226),
]  # fmt: skip
# Directive 76/211/EEC as the French decree 78-166 of 1978 gives it (seen): label (g), TNE (g, computed from it; that
# shares are rounded up to 0.1 g is from memory), and the label less once and twice that, T1 and T2 (g).
TNE_FROM_MEMORY = [
    (25, 2.3, 22.7, 20.4), (40, 3.6, 36.4, 32.8), (50, 4.5, 45.5, 41.0), (75, 4.5, 70.5, 66.0), (100, 4.5, 95.5, 91.0),
    (113, 5.1, 107.9, 102.8), (120, 5.4, 114.6, 109.2), (125, 5.7, 119.3, 113.6), (150, 6.8, 143.2, 136.4),
    (180, 8.1, 171.9, 163.8), (200, 9.0, 191, 182), (227, 9.0, 218, 209), (250, 9.0, 241, 232), (300, 9.0, 291, 282),
    (340, 10.2, 329.8, 319.6), (400, 12.0, 388, 376), (454, 13.7, 440.3, 426.6), (500, 15.0, 485, 470),
    (750, 15.0, 735, 720), (1000, 15.0, 985, 970), (2000, 30.0, 1970, 1940),
]  # fmt: skip
# P1: weights published on a help page of a statistics package (seen); C1 to C4 constructed. Label (g), errors (g), s,
# SEL, mean and each package. The rule (SEL = SCF × s; a mean below the label passes within it) and the factor 0.635,
# which equals t(0.975)/√12, are from memory.
CASES_FROM_MEMORY = [
    ("P1", 454, [-2, -1, -1, 0, 0, 0, 1, 1, 1, 2, 2, 3], 1.446, 0.9182, "pass", "pass"),
    ("C1", 113, [2, -3, 1, -4, 0, -2, 3, -5, -1, 1, -6, -1], 2.8324, 1.7986, "pass", "pass"),
    ("C2", 113, [-4, -6, -3, -5, -7, -4, -2, -5, -6, -3, -4, -5], 1.446, 0.9182, "fail", "pass"),
    ("C3", 113, [1, 2, 0, 1, -8, 3, 2, 1, 0, 2, 1, 1], 2.8123, 1.7858, "pass", "fail"),
    ("C4", 113, [0, -1, 0, -1, 0, -1, 0, -1, 0, -1, 0, -1], 0.5222, 0.3316, "fail", "pass"),
]  # fmt: skip
# t(0.975, n − 1)/√n, computed; the factors themselves are from memory.
T_OVER_ROOT = {
    2: 8.9846, 3: 2.4841, 4: 1.5912, 5: 1.2417, 6: 1.0494, 7: 0.9248, 8: 0.836, 9: 0.7687, 10: 0.7154, 11: 0.6718,
    12: 0.6354, 24: 0.4223, 48: 0.2904,
}  # fmt: skip
# Ounces, and grams rounded down (computed; NIST SP 1038 4.4.1.2, seen, rounds so that nothing is overstated).
OZ_G = [
    (0.5, 14), (1, 28), (1.5, 42), (2, 56), (2.5, 70), (3, 85), (3.5, 99), (4, 113), (5, 141), (6, 170), (7, 198),
    (8, 226), (9, 255), (10, 283), (12, 340), (14, 396), (16, 453), (20, 566), (24, 680), (32, 907),
]  # fmt: skip
# ISO 8601:2000 5.2.2 (seen) and computed: day, ordinal date, short forms.
DATES = [
    ("1985-04-12", "1985-102", "85102", "5102"),
    ("2025-04-10", "2025-100", "25100", "5100"),
    ("2024-12-31", "2024-366", "24366", "4366"),
    ("2025-12-31", "2025-365", "25365", "5365"),
    ("2024-12-30", "2024-365", "24365", "4365"),
    ("2026-01-01", "2026-001", "26001", "6001"),
    ("2027-01-01", "2027-001", "27001", "7001"),
    ("2024-02-29", "2024-060", "24060", "4060"),
    ("2026-02-09", "2026-040", "26040", "6040"),
]
# FDA Food Labeling Guide, appendix H, 2009 (seen); that ties go up is from memory.
ROUNDED = [
    ("Calories", 4.9, "0"),
    ("Calories", 5, "5"),
    ("Calories", 7.4, "5"),
    ("Calories", 7.5, "10"),
    ("Calories", 47, "45"),
    ("Calories", 50, "50"),
    ("Calories", 50.1, "50"),
    ("Calories", 54.9, "50"),
    ("Calories", 55, "60"),
    ("Calories", 104, "100"),
    ("Calories", 105, "110"),
    ("Calories", 149.9, "150"),
    ("Cholesterol mg", 1.9, "0"),
    ("Cholesterol mg", 2, "less than 5 mg"),
    ("Cholesterol mg", 5, "less than 5 mg"),
    ("Cholesterol mg", 5.1, "5"),
    ("Cholesterol mg", 7.4, "5"),
    ("Cholesterol mg", 7.5, "10"),
    ("Total fat g", 0.49, "0"),
    ("Total fat g", 0.5, "0.5"),
    ("Total fat g", 0.74, "0.5"),
    ("Total fat g", 0.75, "1.0"),
    ("Total fat g", 4.74, "4.5"),
    ("Total fat g", 4.75, "5.0"),
    ("Total fat g", 4.99, "5.0"),
    ("Total fat g", 5, "5"),
    ("Total fat g", 5.49, "5"),
    ("Total fat g", 5.5, "6"),
    ("Total fat g", 9.4, "9"),
    ("Sodium mg", 4.9, "0"),
    ("Sodium mg", 5, "5"),
    ("Sodium mg", 7.4, "5"),
    ("Sodium mg", 7.5, "10"),
    ("Sodium mg", 137.4, "135"),
    ("Sodium mg", 137.5, "140"),
    ("Sodium mg", 140, "140"),
    ("Sodium mg", 140.1, "140"),
    ("Sodium mg", 144.9, "140"),
    ("Sodium mg", 145, "150"),
    ("Carbohydrate / sugars g", 0.49, "0"),
    ("Carbohydrate / sugars g", 0.5, "less than 1 g"),
    ("Carbohydrate / sugars g", 0.99, "less than 1 g"),
    ("Carbohydrate / sugars g", 1, "1"),
    ("Carbohydrate / sugars g", 1.49, "1"),
    ("Carbohydrate / sugars g", 1.5, "2"),
    ("Carbohydrate / sugars g", 21.5, "22"),
]
# GS1 (seen), its member organisations, and the unit tests of its syntax dictionary.
GS1 = [
    ("629104150021", 3), ("730001100001", 7), ("890400021003", 7), ("501234567890", 0), ("0234567", 3),
    ("41600033610", 8), ("123456789012", 8), ("1234567890123", 1), ("12345678901234567", 5),
]  # fmt: skip


@pytest.mark.parametrize(("label_g", "most_g"), MAV_FROM_MEMORY)
def test_one_package_may_be_short_by_the_mav_from_memory(label_g, most_g):
    assert net(label_g)["most_short_kg"] * 1000 == pytest.approx(most_g)


def test_the_lightest_may_be_short_by_a_tenth_and_the_heaviest_by_2_percent_from_memory():
    assert net(30)["most_short_kg"] * 1000 == pytest.approx(3.0)
    assert net(24_900)["most_short_kg"] * 1000 == pytest.approx(498.0)


@pytest.mark.parametrize(("label_g", "short_g", "t1_g", "t2_g"), TNE_FROM_MEMORY)
def test_one_package_may_be_short_by_the_tolerable_error_rounded_from_memory(label_g, short_g, t1_g, t2_g):
    errors = [t1_g - label_g, t1_g - 0.1 - label_g, t2_g - label_g, t2_g - 0.1 - label_g]
    reply = net(label_g, errors, rule="eu", lot=50)
    assert reply["most_short_kg"] * 1000 == pytest.approx(short_g)
    assert (reply["short"], reply["far_short"]) == (3, 1)


@pytest.mark.parametrize(("name", "label_g", "errors_g", "s", "limit", "mean", "each"), CASES_FROM_MEMORY)
def test_the_mean_and_each_package_are_judged_by_the_rule_from_memory(name, label_g, errors_g, s, limit, mean, each):
    reply = net(label_g, errors_g)
    assert reply["sd_kg"] * 1000 == pytest.approx(s, abs=1e-4)
    assert reply["mean_limit_kg"] * 1000 == pytest.approx(limit, abs=1e-3)
    assert (reply["mean"], reply["each"]) == (mean, each)
    assert reply["verdict"] == ("pass" if (mean, each) == ("pass", "pass") else "fail")


@pytest.mark.parametrize(("count", "factor"), T_OVER_ROOT.items())
def test_the_factors_from_memory_are_students_t(count, factor):
    lot = count if count < 12 else {12: 200, 24: 3000, 48: 5000}[count]
    reply = net(113, [-0.1, 0.1] * (count // 2) + [0.0] * (count % 2), lot=lot)
    assert reply["mean_limit_kg"] / reply["sd_kg"] == pytest.approx(factor, abs=1.1e-3)


def test_nothing_is_judged_before_enough_was_weighed_but_a_short_package_is_told_at_once():
    assert net(113, [1, 0, 2])["verdict"] == "open"
    assert net(113, [1, -8])["verdict"] == "fail"
    assert net(113)["wanted"] == 12


def test_one_of_48_may_be_short_from_memory():
    assert net(113, [-8] + [1] * 47, lot=5000)["verdict"] == "pass"
    assert net(113, [-8] * 2 + [1] * 46, lot=5000)["verdict"] == "fail"


def test_more_than_the_plan_wants_move_no_limit_but_a_short_package_is_always_told():
    # 0.635 is the factor of 12, 0.422 that of 24: the limit of 24 at 0.635 would let a lot pass that fails.
    twelve = net(113, [-1.5, 0.5] * 6)
    assert twelve["mean_limit_kg"] / twelve["sd_kg"] == pytest.approx(0.635)
    assert net(113, [-1.5, 0.5] * 12) == twelve
    assert net(113, [-1.5, 0.5] * 12, lot=300)["verdict"] == "fail"
    assert net(113, [1] * 12 + [-8])["verdict"] == "fail"


def test_scales_are_fit_down_to_a_sixth_of_what_a_package_may_be_short():
    # NIST Handbook 133, chapter 2.2 (seen): a pack of 113 g wants a division of 1 g.
    assert net(113)["division_wanted_kg"] * 1000 == pytest.approx(1.2)
    assert net(113, division_kg=0.001)["scale_fits"]
    assert not net(113, division_kg=0.002)["scale_fits"]


def test_the_eu_weighs_a_second_time_where_the_first_leaves_it_open():
    # French order of 20 October 1978, article 11 (seen): 30, 1 and 3, then 60, 4 and 5.
    first = net(100, [-5] * 2 + [1] * 28, rule="eu", lot=400)
    assert (first["each"], first["wanted"]) == ("open", 60)
    half = [-5] * 2 + [1] * 28
    assert net(100, half * 2, rule="eu", lot=400)["each"] == "pass"
    assert net(100, [*half, -5, -5, -5], rule="eu", lot=400)["each"] == "fail"
    assert net(100, [-5] * 3 + [1] * 27, rule="eu", lot=400)["each"] == "fail"


def test_what_the_first_of_an_eu_lot_decided_stands_whatever_is_weighed_after_them():
    # The same article: the second go is for what the first left open; the mean is that of the first 30 (article 10).
    failed, passed = [-5] * 3 + [1] * 27, [-5] + [1] * 29
    for after in ([], [1], [1] * 30):
        assert net(100, failed + after, rule="eu", lot=400)["verdict"] == "fail"
    for after in ([], [-5], [-5] * 4, [-5] * 30):
        reply = net(100, passed + after, rule="eu", lot=400)
        assert (reply["verdict"], reply["short"], reply["wanted"]) == ("pass", 1, 30)
    assert net(100, [*passed, -9.1], rule="eu", lot=400)["verdict"] == "fail"


@pytest.mark.parametrize(
    ("lot", "first", "second", "of_mean", "factor"),
    [
        (100, (30, 1, 3), (60, 4, 5), 30, 0.503), (500, (30, 1, 3), (60, 4, 5), 30, 0.503),
        (501, (50, 2, 5), (100, 6, 7), 50, 0.379), (3200, (50, 2, 5), (100, 6, 7), 50, 0.379),
        (3201, (80, 3, 7), (160, 8, 9), 50, 0.379),
    ],
)  # fmt: skip
def test_larger_eu_lots_are_weighed_by_larger_plans(lot, first, second, of_mean, factor):
    # French order of 20 October 1978, articles 10 and 11, and UK SI 2006/659 schedule 2 (seen).
    def each(*goes):
        return net(100, [error for count, short in goes for error in [-5] * short + [2] * (count - short)],
                   rule="eu", lot=lot)  # fmt: skip

    assert [each((first[0], short))["each"] for short in first[1:]] == ["pass", "fail"]
    left_open = (first[0], first[2] - 1)
    assert (each(left_open)["each"], each(left_open)["wanted"]) == ("open", second[0])
    rest = second[0] - first[0]
    more = [each(left_open, (rest, short - left_open[1]))["each"] for short in second[1:]]
    assert more == ["pass", "fail"]
    assert each((first[0] - 1, 0))["verdict"] == "open"
    reply = each((of_mean, 1), (first[0] - of_mean, 0))
    assert reply["mean_limit_kg"] / reply["sd_kg"] == pytest.approx(factor)


@pytest.mark.parametrize(("lot", "allowed"), [(1, 0), (49, 0), (50, 1), (99, 1)])
def test_an_eu_lot_below_100_is_weighed_whole_and_at_most_2_percent_may_be_short(lot, allowed):
    # UK SI 2006/659 schedule 2 paragraph 4 (seen); 2 %: French decree 78-166 in its first wording (seen); a UK page
    # says 2.5 % (seen).
    assert net(100, [1] * (lot - 1), rule="eu", lot=lot)["verdict"] == "open"
    for short, each in ((allowed, "pass"), (allowed + 1, "fail")):
        assert net(100, ([-5] * short + [1] * lot)[:lot], rule="eu", lot=lot)["each"] == each
    assert net(100, [0] * lot, rule="eu", lot=lot)["verdict"] == "pass"
    assert net(100, [-0.1] + [0] * (lot - 1), rule="eu", lot=lot)["mean"] == "fail"


def test_the_eu_lets_no_package_be_short_by_twice_the_error():
    assert net(100, [-9.1] + [1] * 29, rule="eu", lot=400)["verdict"] == "fail"


def test_the_eus_mean_may_lie_below_by_its_scatter():
    # UK SI 2006/659 schedule 2 paragraph 4 (seen): mean ≥ label − 0.503 s of 30.
    below = net(100, [-0.6, 0.4] * 15, rule="eu", lot=400)
    assert below["mean_limit_kg"] / below["sd_kg"] == pytest.approx(0.503)
    assert below["mean"] == "pass"
    assert net(100, [-1.6, 0.4] * 15, rule="eu", lot=400)["mean"] == "fail"


@pytest.mark.parametrize(("ounces", "grams"), OZ_G)
def test_grams_beside_ounces_never_overstate(ounces, grams):
    reply = call("label.net_weight", label_kg=ounces * 0.028349523125, rule="us")
    assert (reply["grams"], reply["ounces"]) == (grams, ounces)


def test_a_pound_and_a_half_is_said_in_pounds_and_ounces():
    reply = call("label.net_weight", label_kg=1.5 * 0.45359237, rule="us")
    assert (reply["pounds"], reply["rest_ounces"], reply["ounces"], reply["grams"]) == (1, 8, 24, 680)


def test_letters_of_the_net_weight_grow_with_the_face_or_with_the_weight():
    # 21 CFR 801.62, the sister of 101.7 (seen): square inches, inches; usda-eu.org (seen): above 200 g, 4 mm.
    faces = {5: 1 / 16, 5.1: 1 / 8, 25: 1 / 8, 25.1: 3 / 16, 100: 3 / 16, 100.1: 1 / 4, 400: 1 / 4, 400.1: 1 / 2}
    for face_in2, inches in faces.items():
        reply = call("label.net_weight", label_kg=0.2, rule="us", face_m2=face_in2 * 0.00064516)
        assert reply["letter_m"] == pytest.approx(inches * 0.0254)
    assert call("label.net_weight", label_kg=0.2, rule="us")["area_wanted"]
    heights = [
        call("label.net_weight", label_kg=g / 1000, rule="eu")["letter_m"] * 1000
        for g in (5, 50, 51, 200, 201, 1000, 1001)
    ]
    assert heights == pytest.approx([2, 2, 3, 3, 4, 4, 6])


@pytest.mark.parametrize(("day", "ordinal", "short", "shortest"), DATES)
def test_lot_codes_carry_the_day_of_the_year(day, ordinal, short, shortest):
    codes = [
        call("label.lot_code", made_on=day, pattern=pattern)["code"] for pattern in ("YYYY-DDDA", "YYDDDA", "YDDDA")
    ]
    assert codes == [ordinal + "A", short + "A", shortest + "A"]


def test_a_second_lot_of_a_day_takes_the_next_letter():
    assert call("label.lot_code", made_on="2026-12-04", used=["2026-338-A"])["code"] == "2026-338-B"


def test_pattern_that_a_shop_begins_with_gives_codes():
    assert call("label.lot_code", made_on="2026-12-04", pattern=SHOP["code_pattern"]["default"])["code"] == "26338A"


def test_best_by_is_the_earliest_of_shelf_life_and_parts():
    parts = [{"name": "pecans", "best_by": "2026-12-20"}, {"name": "salt"}]
    reply = call("label.best_by", made_on="2026-12-04", shelf_days=42, parts=parts)
    assert (reply["best_by"], reply["because"], reply["days"]) == ("2026-12-20", "pecans", 16)
    alone = call("label.best_by", made_on="2026-12-04", shelf_days=42)
    assert (alone["best_by"], alone["because"]) == ("2027-01-15", None)


FIELDS = {
    "Calories": "energy_kcal",
    "Cholesterol mg": "cholesterol_mg",
    "Total fat g": "fat",
    "Sodium mg": "sodium_mg",
    "Carbohydrate / sugars g": "sugars",
}


@pytest.mark.parametrize(("nutrient", "amount", "declared"), ROUNDED)
def test_nutrients_are_rounded_as_the_guide_says_ties_from_memory(nutrient, amount, declared):
    field = FIELDS[nutrient]
    found = call("label.nutrition", amounts={field: amount})["declared"][field]
    if declared.startswith("less than"):
        assert found == {"value": float(declared.split()[2]), "less_than": True}
    else:
        assert found == {"value": float(declared), "less_than": False}


@pytest.mark.parametrize(("digits", "check_digit"), GS1)
def test_check_digits_are_those_of_gs1(digits, check_digit):
    assert call("label.check_digit", digits=digits) == {"check_digit": check_digit}


TAKEN = [f"2026-034-{letter}" for letter in dates.LETTERS]
REFUSED = [
    ("not_a_day", "label.lot_code", {"made_on": "2026-02-30"}),
    ("not_a_day", "label.best_by", {"made_on": "4 December", "shelf_days": 3}),
    ("pattern_tells_nothing", "label.lot_code", {"made_on": "2026-02-03", "pattern": "YYYY"}),
    ("codes_used_up", "label.lot_code", {"made_on": "2026-02-03", "used": TAKEN}),
    ("best_by_before_made", "label.best_by", {"made_on": "2026-02-03", "shelf_days": 9,
                                           "parts": [{"name": "nuts", "best_by": "2026-02-02"}]}),
    ("too_low", "label.nutrition", {"amounts": {"fat": -1}}),
    ("unknown_field", "label.nutrition", {"amounts": {"caffeine": 1}}),
    ("not_digits", "label.check_digit", {"digits": "12a"}),
]  # fmt: skip


@pytest.mark.parametrize(("code", "name", "request_"), REFUSED)
def test_what_makes_no_sense_on_a_label_is_refused_by_name(code, name, request_):
    with pytest.raises(Problem) as refused:
        catalogue.call(name, request_)
    assert refused.value.code == code
