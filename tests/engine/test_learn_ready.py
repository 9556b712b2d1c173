"""What a shop calls ready to cut is learnt from when its slabs were found firm enough."""

import math
import statistics

import pytest

from amberbench.engine import catalogue
from amberbench.engine.steps.cool.cooling_curve import READY_C
from tests.bench import SLAB_REQUEST, Bench, planned_slab
from tests.engine.test_learn import IDS, fold
from tests.shops import Shop

CARAMEL = IDS | {"caramel_id": "firm"}


def cut_at(ready_c, read=True, soft=True, thrown_away=False, **ids):
    """What a closed slab tells that was found firm when its core, by the model, was at ready_c; its bench."""
    cool = dict(planned_slab()["reply"]["cool_request"], target_c=ready_c, start_c=74.0)
    firm_s = catalogue.call("cool.plan", cool)["ready_s"]
    bench = Bench(planned_slab() | CARAMEL | ids)
    bench.does("poured", 600, bulk_c=74.0)
    if read:
        bench.does("slab_read", firm_s / 3.0, surface_c=45.0)
    if soft:
        bench.does("touched", firm_s * (0.95 - (1.0 / 3.0 if read else 0.0)), firm=False)
    poured_ms = bench.run["done"]["melt"]
    bench.does("touched", firm_s - (bench.now_ms - poured_ms) / 1000.0, firm=True)
    bench.does("thrown_away", 60, reason="dropped") if thrown_away else bench.does("closed", 60)
    return catalogue.call("learn.contribution", {"batch_id": "b", "plan": bench.plan, "run": bench.run})["contribution"]


def told(**more):
    return [dict(cut_at(30.5, **more), batch_id=f"batch-{number}") for number in range(4)]


def next_request(batches, **typed):
    asked = {"measured": fold(batches), "request": SLAB_REQUEST | typed} | CARAMEL
    return catalogue.call("learn.apply", asked)


def test_a_shop_that_cuts_warmer_has_it_in_its_next_plan_which_says_so():
    batches = [dict(one, base=None) for one in told()]
    [caramel] = fold(batches)["caramels"]
    assert (caramel["id"], caramel["n"]) == ("firm", 4)
    assert 29.8 < caramel["ready_c"] < 31.2
    assert caramel["low_c"] < caramel["ready_c"] - 1.0
    plan = catalogue.call("slab.plan", next_request(batches)["request"])
    [row] = [row for row in plan["inputs"] if row["field"] == "target_c"]
    assert (row["basis"], row["n"], row["value"]) == ("measured", 4, caramel["ready_c"])
    assert plan["cool"]["target_c"] == caramel["ready_c"]
    assert plan["cool"]["ready_s"] < 0.9 * planned_slab()["reply"]["cool"]["ready_s"]


def test_ready_is_reckoned_at_the_heat_loss_that_the_base_turned_out_to_have():
    slower = [dict(one, base={"loss_factor": 0.8, "loss_factor_sd": 0.05, "spread_sd": 0.1}) for one in told()]
    usual = [dict(one, base=None) for one in told()]
    assert fold(slower)["caramels"][0]["ready_c"] > fold(usual)["caramels"][0]["ready_c"] + 0.5


def test_what_a_person_typed_of_this_caramel_stays():
    assert "target_c" not in {one["field"] for one in next_request(told(), target_c=25.0)["used"]}


@pytest.mark.parametrize(
    "how", [{"read": False}, {"soft": False}, {"thrown_away": True}], ids=["never_read", "first_touch", "thrown_away"]
)
def test_a_slab_tells_nothing_of_ready_that(how):
    """Without a reading heat loss and ready cannot be told apart; firm when asked may have been firm for long."""
    if "soft" in how:
        assert cut_at(READY_C, **how)["ready"] is None
    else:
        assert cut_at(30.5, **how)["ready"] is None


def test_another_caramel_and_old_batches_without_one_teach_it_nothing():
    assert fold(told(caramel_id="soft"))["caramels"][0]["id"] == "soft"
    assert "target_c" not in {one["field"] for one in next_request(told(caramel_id="soft"))["used"]}
    assert fold(told(caramel_id=None))["caramels"] == []


def late_by(ready_c, shops, batches):
    """Medians of ln(planned over true ready time) of shops that cut at ready_c, batch by batch."""
    rows = [[] for _ in range(batches)]
    for number in range(shops):
        shop = Shop(f"ready {ready_c} {number}", ready_c=ready_c)
        for row in rows:
            one = shop.batch()
            row.append(math.log(one.ready[1] / one.ready_s))
    return [statistics.median(row) for row in rows]


@pytest.mark.prove
@pytest.mark.parametrize("ready_c", [24.5, 30.0])
def test_prove_a_shops_own_ready_is_planned_after_six_batches(ready_c):
    off = late_by(ready_c, 40, 8)
    print(f"\ncut at {ready_c} °C: planned over true ready time {' '.join(f'{one:+.3f}' for one in off)}")
    assert abs(statistics.median(off[6:])) < 0.5 * abs(off[0])
