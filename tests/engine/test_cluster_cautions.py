"""Hot caramel in the hand never goes without its caution, and no clock of the funnel rings for what was seen to."""

from functools import cache

from amberbench.engine import catalogue
from tests.bench import Bench, jacket_slab, planned_clusters
from tests.engine.test_cluster_bench import filled
from tests.strategies_deposit import ON_NUTS


@cache
def heavy():
    """Two trays of heavy clusters, which turn tacky after a quarter of an hour; treat it as read-only."""
    own = {"rows": [{"clusters": 40, "deposit_kg": 0.03}], "second_kg": 0.01, "spread_m": 0.055, "under": []}
    window = {"window_low_c": 65.0, "window_high_c": 80.0, "room_c": 24.0, "deposits_per_min": 30}
    request = ON_NUTS | own | window
    return planned_clusters() | {"request": request, "reply": catalogue.call("cluster.plan", request)}


def laid() -> Bench:
    """Both trays have their first deposits, and there is caramel in the funnel."""
    bench = Bench(heavy())
    for kind in ("ready_checked", "allergens_checked", "under_laid"):
        bench.does(kind, 20)
    bench.does("weighed", 60, kg=heavy()["reply"]["caramel_kg"], lot="A-117")
    bench.melts(until="fill")
    bench.taps(20)
    for tray in range(2):
        bench.does("tray_laid", 60, seen=tray)
    bench.does("filled", 1, kg=0.4, bulk_c=78.0, seen=1)
    return bench


def tacky_ms(bench: Bench) -> float:
    """When the first tray is tacky."""
    due: float = clock(bench, "tacky")["due_ms"]
    return due


def clock(bench: Bench, name: str):
    return next((one for one in bench.advice["clocks"] if one["name"] == name), None)


def emptied(before_s: float) -> Bench:
    """Two trays laid, and the funnel emptied into the bowl so long before the first is tacky."""
    bench = laid()
    wait_s = (tacky_ms(bench) - bench.now_ms) / 1000
    bench.does("fill_ended", wait_s - before_s, left_kg=0.4, bulk_c=70.0, seen=2)
    return bench


def test_touching_and_laying_the_second_deposit_keep_the_caution_of_hot_caramel():
    bench = laid()
    seen = {bench.advice["step"]: bench.advice["caution"]}
    bench.waits((tacky_ms(bench) - bench.now_ms) / 1000 + 1)
    bench.does("filled", 1, kg=0.4, bulk_c=78.0, seen=2)
    seen[bench.advice["step"]] = bench.advice["caution"]
    bench.does("tack_tested", 1, tacky=True, seen=0)
    seen[bench.advice["step"]] = bench.advice["caution"]
    assert {step: caution["code"] for step, caution in seen.items()} == {
        "wait": "caution.funnel_hot",
        "tacky": "caution.touch_hot",
        "second": "caution.funnel_hot",
    }
    assert {caution["word"] for caution in seen.values()} == {"WARNING"}


def test_a_bowl_that_waits_for_a_tray_is_still_hot():
    bench = emptied(before_s=500)
    assert bench.advice["step"] == "wait"
    assert bench.advice["caution"] == {"word": "WARNING", "code": "caution.hot_bowl"}


def test_the_jackets_caution_stays_while_the_block_softens():
    bench = Bench(jacket_slab())
    bench.sets_up()
    bench.taps()
    bench.waits(60)
    assert bench.advice["step"] == "soften"
    assert bench.advice["caution"] == {"word": "WARNING", "code": "caution.steam"}


def test_a_funnel_just_emptied_rings_for_the_bowl_later_or_not_at_all():
    early, late = emptied(before_s=500), emptied(before_s=60)
    assert clock(early, "fill")["due_ms"] > early.now_ms
    # The bowl is to be seen to five minutes before: that was four minutes ago, and the page says so already.
    assert clock(late, "fill") is None
    assert late.advice["step"] == "burst"


def test_a_bowl_that_was_heated_in_time_does_not_ring_again_for_it():
    bench = emptied(before_s=400)
    due_ms = clock(bench, "fill")["due_ms"]
    bench.waits((due_ms - bench.now_ms) / 1000 + 1)
    assert bench.advice["step"] == "burst"
    bench.taps()
    assert clock(bench, "fill") is None
    for _ in range(2):  # the burst, and the stir after it
        bench.waits((min(one["due_ms"] for one in bench.advice["clocks"]) - bench.now_ms) / 1000 + 1)
        bench.taps()
        assert clock(bench, "fill") is None


def test_a_fill_that_should_have_been_changed_long_ago_is_due_now():
    bench = filled()
    bench.does("tray_laid", 200, seen=0)
    assert bench.advice["say"]["code"] == "say.fill_anew"
    bench.does("fill_read", 240, surface_c=74.0, seen=0)
    assert clock(bench, "fill")["due_ms"] >= bench.now_ms


def test_tacky_is_not_asked_while_the_bowl_is_read():
    bench = emptied(before_s=60)
    bench.taps()
    steps = set()
    while "read" not in steps:
        bench.waits(50)
        assert clock(bench, "tacky") is None
        assert clock(bench, "cold")["due_ms"] > bench.now_ms
        steps.add(bench.advice["step"])
        if bench.advice["action"]:
            bench.taps()


def test_the_ring_that_a_tray_is_tacky_waits_with_a_bowl_that_is_kept_warm():
    bench = emptied(before_s=420)
    bench.waits(121)
    bench.melts(until="wait")
    assert clock(bench, "tacky")["due_ms"] > clock(bench, "fill")["due_ms"] > bench.now_ms


def test_tacky_is_not_asked_again_once_it_was_answered():
    bench = laid()
    assert clock(bench, "tacky") is not None
    bench.does("tack_tested", 1, tacky=True, seen=0)
    assert clock(bench, "tacky") is None
    bench.does("second_laid", 60, seen=0)
    assert clock(bench, "tacky") is not None
