"""What closed batches teach: folded in any order, robustly, with ranges that hold the next batch."""

import json
import math
import random

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.core.statistics import SD_TO_10_PERCENT
from amberbench.engine.learning import pooling
from tests import strategies_batch
from tests.bench import SLAB_REQUEST, Bench, dipped_slab, planned_slab

IDS = {"oven_id": "oven", "base_id": "base", "product_id": "squares"}


def fold(batches):
    return catalogue.call("learn.fold", {"batches": batches})


def batch(number, power_w=600.0, loss_factor=1.0, counted=95, **more):
    """What a batch of a kilogram may tell of a 1000 W oven."""
    oven = {"mass_kg": 1.0, "rated_w": 1000.0, "power_w": power_w, "power_sd": 0.04}
    base = {"loss_factor": loss_factor, "loss_factor_sd": 0.12, "spread_sd": 0.13}
    pieces = {"planned": 100, "counted": counted}
    told = {"batch_id": f"batch-{number}", "oven": oven, "base": base, "pieces": pieces, "trim": 0.1, "residue": 0.02}
    return told | IDS | more


def closed(power_share=1.0, plan=None, counted=200, out=(("rest", 0.25), ("bowl", 0.03))):
    """A whole batch by the prompts, read and pressed while it cools; its bench."""
    bench = Bench((plan or planned_slab()) | IDS)
    bench.sets_up()
    bench.melts(power_share)
    bench.taps(30)
    bench.does("slab_read", 1800, surface_c=41.0)
    bench.does("touched", 3600, firm=False)
    bench.does("touched", 1200, firm=True)
    bench.does("counted", 1800, pieces=counted)
    for what, kg in out:
        bench.does("weighed_out", 30, kg=kg, what=what)
    bench.does("closed", 10)
    return bench


def told_by(bench, name="batch-1"):
    request = {"batch_id": name, "plan": bench.plan, "run": bench.run}
    return catalogue.call("learn.contribution", request)["contribution"]


# The fold --------------------------------------------------------------------------------------------------------


def test_no_batch_gives_nothing():
    lists = ("ovens", "bases", "caramels", "products", "ignored")
    assert fold([]) == {name: [] for name in lists} | {"residue": None, "n": 0}


@pytest.mark.parametrize("seed", range(20))
def test_any_order_gives_the_same(seed):
    rng = random.Random(seed)
    batches = [strategies_batch.contribution(rng, f"batch-{rng.randrange(30)}") for _ in range(40)] + [
        None,
        3,
        {"batch_id": "odd"},
    ]
    first = fold(batches)
    rng.shuffle(batches)
    assert fold(batches) == first


def test_a_batch_left_out_counts_as_not_there():
    batches = [batch(number, power_w=580.0 + 10.0 * number) for number in range(5)]
    assert fold([*batches, batch(9, power_w=300.0, left_out=True)]) == fold(batches)


def test_garbage_is_ignored_with_its_reason():
    good = [batch(number) for number in range(3)]
    odd = [None, 7, "batch", [], {}, batch(7, power_w="high"), batch(8, loss_factor=float("nan")), batch(0)]
    reply = fold(good + odd)
    assert reply["ovens"] == fold(good)["ovens"]
    assert reply["n"] == 3
    whys = ["missing", "not_a_number", *["not_a_record"] * 4, "not_finite", "twice"]
    assert sorted(row["why"] for row in reply["ignored"]) == whys


def test_what_a_newer_version_tells_beside_is_passed_over():
    assert fold([batch(1) | {"colour": "amber"}]) == fold([batch(1)])


def test_one_batch_moves_a_plate_most_of_the_way_and_many_all_the_way():
    one, many = (fold([batch(number, power_w=700.0) for number in range(n)])["ovens"][0] for n in (1, 20))
    assert 670.0 < one["power_w"] < 700.0
    assert many["power_w"] == pytest.approx(700.0, rel=0.01)
    assert one["power_sd_w"] > many["power_sd_w"]
    assert (one["n"], many["n"]) == (1, 20)


def test_a_range_holds_the_spread_between_batches_however_many_there_were():
    rng = random.Random(1)
    oven = fold([batch(number, power_w=600.0 * math.exp(rng.gauss(0.0, 0.10))) for number in range(200)])["ovens"][0]
    assert 0.08 < oven["power_sd_w"] / oven["power_w"] < 0.13


@pytest.mark.parametrize("number", [1, 2, 5, 20])
def test_a_new_batch_lies_in_the_range_four_times_out_of_five(number):
    rng, inside, trials = random.Random(number), 0, 600
    for _ in range(trials):
        shop, spread = rng.gauss(0.0, 0.2), 0.05 * math.exp(rng.gauss(0.0, 0.4))
        seen = [(rng.gauss(rng.gauss(shop, spread), 0.04), 0.04, 0.05) for _ in range(number)]
        mean, sd, share = pooling.robust_mean(seen, 0.0, 0.2)
        inside += abs(rng.gauss(shop, spread) - mean) <= SD_TO_10_PERCENT * math.hypot(sd, share * 0.05)
    assert 0.75 <= inside / trials <= 0.90


def test_five_bad_batches_of_fifty_hardly_move_the_mean():
    rng = random.Random(2)
    good = [(rng.gauss(0.1, 0.06), 0.04, 0.05) for _ in range(45)]
    clean = pooling.robust_mean(good, 0.0, 0.2)
    for bad in (0.4, -0.4, 2.0, -5.0):
        mean, sd, share = pooling.robust_mean(good + [(bad, 0.04, 0.05)] * 5, 0.0, 0.2)
        plain = (sum(value for value, _, _ in good) + 5 * bad) / 50
        assert abs(mean - clean[0]) < 0.012, bad
        assert abs(mean - clean[0]) < 0.5 * abs(plain - clean[0])
        assert share < 1.6 * clean[2]
        assert sd < 2.0 * clean[1]


def test_another_mass_of_the_same_oven_is_believed_with_more_spread():
    small = batch(9, oven={"mass_kg": 0.5, "rated_w": 1000.0, "power_w": 620.0, "power_sd": 0.2})
    alone, both = fold([small])["ovens"], fold([small, *(batch(number, power_w=720.0) for number in range(8))])["ovens"]
    assert [row["mass_band"] for row in both] == [{"low_kg": 0.35, "high_kg": 0.7}, {"low_kg": 0.7, "high_kg": 1.4}]
    assert both[0]["power_w"] > alone[0]["power_w"]
    assert both[0]["power_sd_w"] / both[0]["power_w"] > both[1]["power_sd_w"] / both[1]["power_w"]


def test_an_oven_without_a_plate_learns_too():
    oven = {"mass_kg": 1.0, "rated_w": None, "power_w": 450.0, "power_sd": 0.04}
    assert fold([batch(number, oven=oven) for number in range(3)])["ovens"][0]["power_w"] == pytest.approx(
        450, rel=0.03
    )


def test_yield_trim_and_residue_are_those_of_the_batches():
    reply = fold([batch(number, counted=93 + number % 5, trim=0.12, residue=0.03) for number in range(20)])
    product = reply["products"][0]
    assert product["yield"] == pytest.approx(0.95, abs=0.01)
    assert product["yield_low"] < 0.94 < 0.96 < product["yield_high"] < 1.0
    assert product["trim"]["share"] == pytest.approx(0.12, rel=0.03)
    assert reply["residue"]["share"] == pytest.approx(0.03, rel=0.05)
    assert reply["residue"]["n"] == 20


def test_batches_with_nothing_good_are_facts_and_yield_falls():
    yields = []
    for lost in range(4):
        batches = [batch(number, counted=97) for number in range(3)] + [
            batch(9 + one, counted=0) for one in range(lost)
        ]
        product = fold(batches)["products"][0]
        assert product["n"] == 3 + lost
        assert product["yield_low"] <= product["yield"] <= product["yield_high"]
        yields.append(product["yield"])
    assert yields == sorted(yields, reverse=True)
    assert yields[0] == pytest.approx(0.97, abs=0.01)
    assert yields[3] < 0.6
    assert fold([batch(number, counted=0) for number in range(3)])["products"][0]["yield"] < 0.2


def test_measured_yield_and_trim_are_in_the_next_plan_and_say_what_they_rest_on():
    measured = fold([batch(number, counted=97, trim=0.12) for number in range(4)])
    request = {name: value for name, value in SLAB_REQUEST.items() if name != "have"}
    request["want"] = {"boxes": 20, "per_box": 9}
    wanted = {"measured": measured, "request": request, "product_id": measured["products"][0]["id"]}
    applied = catalogue.call("learn.apply", wanted)
    assert {"yield_share", "trim_share"} <= {one["field"] for one in applied["used"]}
    reply = catalogue.call("slab.plan", applied["request"])
    assert reply["cut"]["pieces"] >= 185
    rows = {row["field"]: row for row in reply["inputs"]}
    assert (rows["yield_share"]["basis"], rows["yield_share"]["n"]) == ("measured", 4)
    assert reply["trim_kg"] == pytest.approx(0.12 * reply["caramel_kg"], rel=0.05)
    typed = catalogue.call("learn.apply", wanted | {"request": request | {"yield_share": 0.5}})
    assert typed["request"]["yield_share"] == 0.5
    other = catalogue.call("learn.apply", wanted | {"product_id": "another"})
    assert "yield_share" not in other["request"]


def test_ten_dipped_pieces_weighed_teach_what_the_next_plan_reckons_as_taken_up():
    told = []
    for number in range(3):
        bench = Bench(dipped_slab() | IDS)
        bench.sets_up()
        piece_kg = bench.plan["reply"]["cut"]["piece_kg"]
        for step in ("cool", "loosen", "score", "cut", "temper_check", "dip", "set"):
            if step == "cool":
                bench.does("poured", bulk_c=75.0)
            bench.does("step_skipped", step=step)
        assert bench.advice["step"] == "count"
        weigh = next(one for one in bench.advice["choices"] if one["code"] == "button.weigh_dipped")
        bench.does("weighed_out", kg=10 * piece_kg * 1.4, **weigh["entry"]["body"])
        # It is no rest: that is still asked for.
        assert bench.advice["step"] == "count"
        assert bench.advice["choices"] == []
        bench.does("counted", pieces=200)
        assert bench.advice["step"] == "weigh_out"
        bench.does("closed", 60)
        request = {"batch_id": f"batch-{number}", "plan": bench.plan, "run": bench.run}
        told.append(catalogue.call("learn.contribution", request)["contribution"])
    assert told[0]["pickup"] == pytest.approx(0.4)
    measured = fold(told)
    assert measured["products"][0]["pickup"]["share"] == pytest.approx(0.4, rel=0.05)
    wanted = {"measured": measured, "request": dipped_slab()["request"], "product_id": IDS["product_id"]}
    applied = catalogue.call("learn.apply", wanted)["request"]
    rows = {row["field"]: row for row in catalogue.call("slab.plan", applied)["inputs"]}
    assert (rows["dip.pickup"]["basis"], rows["dip.pickup"]["n"]) == ("measured", 3)
    assert rows["dip.pickup"]["value"] == pytest.approx(0.4, rel=0.05)
    for typed in ({"pickup": 0.7}, {"thickness_m": {"bottom": 0.001, "side": 0.001, "top": 0.001}}):
        request = dipped_slab()["request"] | {"dip": dipped_slab()["request"]["dip"] | typed}
        kept = catalogue.call("learn.apply", wanted | {"request": request})["request"]["dip"]
        assert kept == request["dip"]


def test_far_more_centres_than_planned_are_a_slip_of_the_finger():
    reply = fold([batch(1), batch(2, counted=960)])
    assert reply["products"][0]["n"] == 1
    assert reply["ignored"] == [{"batch_id": "batch-2", "part": "pieces", "why": "more_than_planned"}]


# What one batch tells --------------------------------------------------------------------------------------------


def test_a_closed_batch_tells_of_oven_base_product_and_bowl():
    told = told_by(closed(1.1))
    assert told["oven"]["power_w"] == pytest.approx(1.15 * 600.0, rel=0.07)  # ten per cent more rise, and losses
    assert told["oven"]["mass_kg"] == 1.8
    assert 0.4 < told["base"]["loss_factor"] < 1.6
    assert told["pieces"] == {"planned": planned_slab()["reply"]["cut"]["pieces"], "counted": 200}
    lost_kg = (told["pieces"]["planned"] - 200) * planned_slab()["reply"]["cut"]["piece_kg"]
    assert told["trim"] == pytest.approx((0.25 - lost_kg) / 1.8)
    assert told["residue"] == pytest.approx(0.03 / 1.8)
    assert told["unused"] == []
    assert {row["name"] for row in told["compared"]} == {"power_w", "ready_s", "pieces", "caramel_kg"}
    assert len(json.dumps(told)) < 2000


def test_what_a_batch_does_not_tell_is_named():
    bench = Bench(planned_slab())
    bench.does("closed", 10)
    told = told_by(bench)
    assert [told[part] for part in ("oven", "base", "pieces", "trim", "residue")] == [None] * 5
    assert {row["part"]: row["why"] for row in told["unused"]} == {
        "oven": "says_nothing", "base": "says_nothing", "pieces": "not_counted", "trim": "not_weighed_in",
        "residue": "not_weighed_in",
    }  # fmt: skip


def test_a_weight_that_cannot_be_spoils_only_its_own_part():
    told = told_by(closed(out=(("bowl", 1.7),)))
    assert told["residue"] is None
    assert {"part": "residue", "why": "too_high"} in told["unused"]
    assert told["oven"] is not None


def test_a_batch_tells_the_same_whatever_its_plan_had_learnt():
    bench = closed(1.1)
    first, again = told_by(bench)["oven"], dict(bench.run)
    melt = dict(again["melt"]["request"], oven={"rated_w": 1000, "power_w": 850, "power_sd_w": 30})
    again["melt"] = dict(again["melt"], request=melt)
    request = {"batch_id": "batch-1", "plan": bench.plan, "run": again}
    other = catalogue.call("learn.contribution", request)["contribution"]["oven"]
    assert other["power_w"] == pytest.approx(first["power_w"], rel=0.005)
    assert other["power_sd"] == pytest.approx(first["power_sd"], rel=0.05)


@pytest.mark.parametrize("run", [{}, 3, "run", [], {"closed_at_ms": 1.0}, {"closed_at_ms": 1.0, "melt": 3}])
def test_what_is_no_run_is_refused(run):
    with pytest.raises(Problem) as caught:
        catalogue.call("learn.contribution", {"batch_id": "b", "plan": planned_slab(), "run": run})
    assert caught.value.code == "not_a_run"


def test_an_open_batch_is_refused():
    bench = Bench()
    with pytest.raises(Problem) as caught:
        catalogue.call("learn.contribution", {"batch_id": "b", "plan": bench.plan, "run": bench.run})
    assert caught.value.code == "not_closed"


# The next plan ---------------------------------------------------------------------------------------------------


def applied(request, batches, oven_id="oven", base_id="base"):
    asked = {"measured": fold(batches), "request": request, "oven_id": oven_id, "base_id": base_id}
    return catalogue.call("learn.apply", asked)


FOUR = [batch(number, power_w=700.0, loss_factor=1.2, residue=0.03) for number in range(4)]


def test_the_next_plan_says_measured_four_batches():
    reply = applied(planned_slab()["request"], FOUR)
    plan = catalogue.call("slab.plan", reply["request"])
    rows = {row["field"]: row for row in plan["inputs"]}
    for field in ("oven.power_w", "oven.power_sd_w", "loss_factor", "loss_factor_sd", "spread", "residue"):
        assert (rows[field]["basis"], rows[field]["n"]) == ("measured", 4)
    assert {row["field"] for row in reply["used"]} == {field for field in rows if rows[field]["n"]}
    assert rows["oven.rated_w"]["basis"] == "typed"
    before = planned_slab()["reply"]
    assert plan["cool"]["ready_s"] < before["cool"]["ready_s"]
    assert plan["melt"]["total_s"] < before["melt"]["total_s"]
    width = plan["cool"]["ready_high_s"] / plan["cool"]["ready_low_s"]
    assert width < before["cool"]["ready_high_s"] / before["cool"]["ready_low_s"]


def test_what_was_typed_for_this_batch_stays():
    typed = planned_slab()["request"] | {"loss_factor": 0.8, "residue": 0.01, "oven": {"power_w": 500.0}}
    assert applied(typed, FOUR) == {"request": typed, "used": []}


def test_a_value_measured_before_is_measured_anew():
    first = applied(planned_slab()["request"], FOUR[:1])["request"]
    again = applied(first, FOUR)
    assert again["request"]["batches"]["loss_factor"] == 4
    assert again["request"]["loss_factor"] != first["loss_factor"]


def test_strangers_and_no_batches_change_nothing():
    request = planned_slab()["request"]
    assert applied(request, []) == {"request": request, "used": []}
    assert {row["field"] for row in applied(request, FOUR, "another", None)["used"]} == {"residue"}


def test_a_mass_nobody_measured_gets_the_nearest_with_more_spread():
    near, far = (
        applied(planned_slab()["request"] | {"have": {"kg": kg}}, FOUR)["request"]["oven"] for kg in (1.2, 2.9)
    )
    assert near["power_w"] == pytest.approx(far["power_w"], rel=0.01)
    assert far["power_sd_w"] > 1.5 * near["power_sd_w"]


def test_what_is_no_fold_is_refused():
    with pytest.raises(Problem) as caught:
        catalogue.call("learn.apply", {"measured": {"ovens": 3}, "request": planned_slab()["request"]})
    assert caught.value.code == "not_measured"
