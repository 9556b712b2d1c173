"""Whether a cut centre stays square until it is dipped, by the room it waits in and how stiff its caramel is."""

import itertools

import pytest

from amberbench.engine import catalogue
from amberbench.engine.physics import materials, slump
from amberbench.engine.products.standup import plan as standup
from amberbench.engine.steps.cut import stays_square
from tests.bench import SLAB_REQUEST, Bench, planned_slab

HOUR_S, DAY_S = 3600.0, 86400.0
CARAMEL = materials.resolved("caramel")


def stood(*looks, room_c=21.0, **more):
    """The reply for [(h, mm)]."""
    heights = [{"at_s": hours * HOUR_S, "height_m": mm / 1000.0} for hours, mm in looks]
    return catalogue.call("flow.stand_up_test", {"heights": heights, "room_c": room_c} | more)


def planned(**more):
    return catalogue.call("slab.plan", SLAB_REQUEST | more)


def warned(reply):
    return {one["code"]: one["values"] for one in reply["warnings"]}


def sunk(height_m, seconds_s, viscosity_pa_s, density, slices=400, steps=4000):
    """The share of its height that a column loses, slice by slice and step by step: a calculation of our own."""
    heights, weight = [height_m / slices] * slices, density * 9.80665 * height_m / slices
    area = [1.0] * slices
    for _ in range(steps):
        above = 0.0
        for i in range(slices):
            rate = (above + 0.5 * weight) / area[i] / (3.0 * viscosity_pa_s)
            shorter = 1.0 - rate * seconds_s / steps
            heights[i] *= shorter
            area[i] /= shorter
            above += weight
    return 1.0 - sum(heights) / height_m


def test_column_sinks_as_its_slices_do_one_by_one():
    """The closed form takes the widening of the whole column for that of each slice: close while little is lost."""
    for viscosity_pa_s, within in ((3e7, 0.01), (3e6, 0.01), (1e6, 0.02)):
        known = sunk(0.0127, HOUR_S, viscosity_pa_s, 1400.0, slices=60, steps=300)
        found = slump.lost_share(0.0127, HOUR_S, viscosity_pa_s, 1400.0)
        assert found == pytest.approx(known, rel=within * 4)


def test_viscosity_by_loss_is_the_one_that_loses_it():
    for lost in (0.005, 0.05, 0.3):
        viscosity_pa_s = slump.viscosity_by_loss(0.02, DAY_S, lost, 1400.0)
        assert slump.lost_share(0.02, DAY_S, viscosity_pa_s, 1400.0) == pytest.approx(lost)


def test_warmest_room_is_the_one_in_which_just_so_much_is_lost():
    glass = slump.glass_of(CARAMEL)
    warmest_c = slump.warmest_c(CARAMEL, glass, 5.0, 0.0127, HOUR_S, 0.05)
    assert slump.lost_in_room(CARAMEL, glass, 5.0, 0.0127, HOUR_S, warmest_c) == pytest.approx(0.05, rel=0.01)


def test_stand_up_test_uses_the_room_it_stood_in():
    """It took room_c and did nothing with it. The same heights in a warmer room tell of a stiffer caramel."""
    replies = [stood((0, 20), (1, 19.8), (24, 19.4), room_c=room_c) for room_c in (18.0, 21.0, 26.0)]
    for cooler, warmer in itertools.pairwise(replies):
        assert warmer["stiffer_k"] > cooler["stiffer_k"]
        assert warmer["square_to_c"] > cooler["square_to_c"]
        assert warmer["verdict"] == cooler["verdict"] == "firm"


def test_stiffer_caramel_stays_square_in_a_warmer_room():
    firm, soft = stood((0, 20), (1, 19.9)), stood((0, 20), (1, 19.0))
    assert firm["viscosity_pa_s"] > 8.0 * soft["viscosity_pa_s"]
    assert firm["square_to_c"] > soft["square_to_c"] + 4.0
    assert soft["square_to_c"] == pytest.approx(21.0, abs=0.1)


def test_caramel_of_which_no_water_is_known_has_no_stiffness():
    plain = {"conductivity_w_mk": 0.3, "density_kg_m3": 1400, "heat_capacity_j_kgk": 1900}
    reply = stood((0, 20), (1, 19.9), material=plain)
    assert (reply["stiffer_k"], reply["square_to_c"]) == (None, None)
    assert planned(material=plain)["square"] is None


@pytest.mark.parametrize(
    ("hours", "last_mm", "verdict"),
    [
        (1, 17.08, "slumps"),
        (1, 19.6, "borderline"),
        (12, 17.9, "borderline"),
        (12, 17.2, "slumps"),
        (24, 17.1, "borderline"),
    ],
)
def test_cube_that_sinks_fast_slumps_before_a_day_is_over(hours, last_mm, verdict):
    """14.6 % of its height in one hour was called borderline."""
    assert stood((0, 20), (hours, last_mm))["verdict"] == verdict


def test_verdict_never_gets_better_the_more_is_lost():
    order = ["firm", "borderline", "slumps"]
    for hours in (0.5, 1, 6, 24, 72):
        found = [order.index(stood((0, 20), (hours, 20.0 - 0.1 * tenth))["verdict"]) for tenth in range(60)]
        assert found == sorted(found)


def test_plan_says_when_cut_centres_do_not_stay_square_until_they_are_dipped():
    """Promised, and never said."""
    assert warned(planned(room_c=20.0, dip={})) == {}
    reply = planned(room_c=25.5, dip={})
    told = warned(reply)["centres_sink_before_dip"]
    assert told["lost_percent"] == round(100.0 * reply["square"]["lost_fraction"])
    assert told["wait_s"] == stays_square.BEFORE_DIPPING_S + reply["dip"]["dip_all_s"]
    assert 20.0 < told["warmest_c"] < 25.5
    assert "centres_sink" in warned(planned(room_c=25.5))


def test_centre_loses_more_in_a_warmer_room_and_higher_and_longer():
    lost = [planned(room_c=room_c)["square"]["lost_fraction"] for room_c in (15.0, 18.0, 21.0, 24.0, 27.0, 30.0, 35.0)]
    assert lost == sorted(lost)
    low, high = (planned(slab_height_m=height_m)["square"] for height_m in (0.0127, 0.018))
    assert high["lost_fraction"] > low["lost_fraction"]
    quick, slow = (planned(dip={"dip_s": dip_s})["square"] for dip_s in (10.0, 40.0))
    assert slow["lost_fraction"] > quick["lost_fraction"]


def test_test_of_the_caramel_decides_over_its_verdict_and_the_verdict_over_its_water():
    room = {"room_c": 25.5}
    assert "centres_sink" in warned(planned(**room))
    assert "centres_sink" not in warned(planned(**room, firmness="firm"))
    assert "centres_sink" in warned(planned(**room, firmness="firm", stiffer_k=0.0))
    assert "centres_sink" not in warned(planned(**room, stiffer_k=6.0))


@pytest.mark.parametrize(("verdict", "lost"), [("firm", standup.FIRM_LOST), ("borderline", standup.SLUMPS_LOST)])
def test_verdict_alone_stands_for_its_line_after_a_day(verdict, lost):
    viscosity_pa_s = slump.viscosity_by_loss(0.02, DAY_S, lost, materials.density(CARAMEL, 21.0))
    known_k = slump.stiffer_k(slump.glass_of(CARAMEL), 21.0, viscosity_pa_s)
    assert stays_square.STIFFER_K[verdict] == pytest.approx(known_k, abs=0.06)


def test_bench_says_it_where_it_is_cut():
    request = SLAB_REQUEST | {"room_c": 25.5}
    bench = Bench(planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    bench.does("touched", 4 * 3600, firm=True)
    while bench.advice["step"] != "cut":
        bench.taps(60)
    assert bench.advice["more"]["code"] == "more.cut_sinks_here"
