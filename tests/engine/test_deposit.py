"""Planning clusters: weights, trays, fills and windows."""

import math

import pytest

from amberbench.engine import catalogue
from amberbench.engine.physics import materials
from amberbench.engine.products.cluster import tray_cooling as clusters
from tests.strategies_deposit import ON_A_BED, ON_NUTS

PLAIN = {"conductivity_w_mk": 0.3, "density_kg_m3": 1400, "heat_capacity_j_kgk": 1900}


def planned(**change):
    return catalogue.call("cluster.plan", ON_NUTS | change)


def warned(reply, code):
    """The values of a warning; None where there is none."""
    return next((one["values"] for one in reply["warnings"] if one["code"] == code), None)


def test_rows_add_up_to_caramel_nuts_and_pieces():
    reply = planned(residue=0.04)
    assert reply["clusters"] == 80
    assert reply["deposits_kg"] == pytest.approx(60 * 0.012 + 20 * 0.010 + 80 * 0.006)
    assert reply["caramel_kg"] == pytest.approx(reply["deposits_kg"] / 0.96)
    assert reply["under"] == [
        {"material": "pecan", "kg": pytest.approx(80 * 4 * 0.0016), "count": 320, "allergen": "pecan"}
    ]
    assert reply["piece_kg"] == pytest.approx((reply["deposits_kg"] + reply["under"][0]["kg"]) / 80)


def test_every_tray_says_its_sizes_and_neighbours_alike_are_said_once():
    reply = planned(second_kg=0.0, rows=[{"clusters": 100, "deposit_kg": 0.012}, {"clusters": 50, "deposit_kg": 0.010}])
    assert reply["per_tray"] == 60
    sixty, forty = (reply["sizes"][0] | {"clusters": n} for n in (60, 40))
    small = reply["sizes"][1]
    assert reply["by_tray"] == [
        {"trays": 1, "sizes": [sixty]},
        {"trays": 1, "sizes": [forty, small | {"clusters": 20}]},
        {"trays": 1, "sizes": [small | {"clusters": 30}]},
    ]
    # A width goes with the weight to the power of three eighths (Huppert 1982).
    assert small["spread_m"] == pytest.approx(0.04 * (0.010 / 0.012) ** 0.375)
    assert planned(rows=[{"clusters": 100, "deposit_kg": 0.012}])["by_tray"] == []
    alike = planned(second_kg=0.0, rows=[{"clusters": 120, "deposit_kg": 0.012}, {"clusters": 20, "deposit_kg": 0.010}])
    assert alike["by_tray"] == [
        {"trays": 2, "sizes": [sixty]},
        {"trays": 1, "sizes": [small | {"clusters": 20}]},
    ]


def test_each_field_of_a_row_says_what_it_rests_on():
    rows = {row["field"]: row for row in planned(basis={"rows[1].deposit_kg": "measured"})["inputs"]}
    assert (rows["rows[0].deposit_kg"]["value"], rows["rows[0].deposit_kg"]["basis"]) == (0.012, "typed")
    assert (rows["rows[1].deposit_kg"]["value"], rows["rows[1].deposit_kg"]["basis"]) == (0.010, "measured")
    assert (rows["under[0].kg_each"]["value"], rows["under[0].kg_each"]["unit"]) == (0.0016, "kg")
    assert "rows" not in rows


def test_caramel_in_hand_gives_whole_clusters_and_the_rest_is_left():
    request = {name: ON_A_BED[name] for name in ON_A_BED if name != "block_kg"}
    reply = catalogue.call("cluster.plan", request | {"caramel_kg": 1.0, "residue": 0.02})
    assert reply["clusters"] == int(0.98 / 0.012)
    assert reply["caramel_kg"] + reply["leftover_kg"] == pytest.approx(1.0)
    assert 0.0 <= reply["leftover_kg"] < 0.012 / 0.98


def on_a_bed(number, **change):
    """So many clusters on a bed of 5 kg/m²."""
    wanted = {"caramel_kg": None, "deposit_kg": None, "rows": [{"clusters": number, "deposit_kg": 0.012}]}
    return catalogue.call("cluster.plan", ON_A_BED | wanted | change)


@pytest.mark.parametrize("sides", [{"length_m": 0.45, "width_m": 0.32}, {"length_m": 0.32, "width_m": 0.45}])
def test_a_bed_covers_each_tray_inside_its_rim_as_far_as_its_rows_are_laid(sides):
    tray = sides | {"rim_m": 0.01}
    full = on_a_bed(100, tray=tray)
    places = full["positions_m"]
    assert (full["trays"], len(places)) == (2, 60)
    whole_kg = 0.43 * 0.30 * 5.0
    assert full["bed"]["tray_kg"] == pytest.approx(whole_kg)
    # The rows follow each other along the side on which no place of the first row differs.
    onward = 0 if places[0][0] == places[1][0] else 1
    levels = sorted({round(place[onward], 9) for place in places})
    length_m, width_m = (tray[name] - 0.02 for name in ("length_m", "width_m"))
    other_m = (width_m, length_m)[onward]
    filled = [sum(1 for place in places if place[onward] <= level + 1e-6) for level in levels]
    for row, upto in enumerate(filled[:-1]):
        # Half-way to the next row, whether the last row is full or has one place; the next row begins another strip.
        expected_kg = ((levels[row] + levels[row + 1]) / 2 - 0.01) * other_m * 5.0
        for number in (upto, upto - 1):
            assert on_a_bed(number, tray=tray)["bed"] == {
                "tray_kg": pytest.approx(expected_kg),
                "last_kg": pytest.approx(expected_kg),
            }
        two = on_a_bed(60 + upto, tray=tray)
        assert two["under"][0]["kg"] == pytest.approx(whole_kg + expected_kg)
    assert on_a_bed(filled[-2] + 1, tray=tray)["under"][0]["kg"] == pytest.approx(whole_kg)
    assert on_a_bed(60, tray=tray)["under"][0]["kg"] == pytest.approx(whole_kg)


def test_a_bed_under_fewer_places_than_a_tray_has_is_smaller():
    """Of more places the first would be cold before they are laid again."""
    again = {"second_kg": 0.006, "deposits_per_min": 8.0}
    held = on_a_bed(80, **again)
    assert "fewer_on_tray" in [one["code"] for one in held["warnings"]]
    assert held["bed"]["last_kg"] <= held["bed"]["tray_kg"] < 0.43 * 0.30 * 5.0
    assert held["under"][0]["kg"] == pytest.approx(
        (held["trays"] - 1) * held["bed"]["tray_kg"] + held["bed"]["last_kg"]
    )
    assert planned()["bed"] is None


def test_a_cluster_takes_of_a_bed_what_it_covers():
    reply = catalogue.call("cluster.plan", ON_A_BED)
    assert reply["under"][0]["count"] is None
    assert reply["piece_kg"] == pytest.approx(0.012 + 5.0 * 3.14159265 * 0.02**2)
    assert reply["blocks"] == 1


def test_trays_hold_all_clusters_and_the_last_is_not_empty():
    reply = planned()
    assert reply["per_tray"] == len(reply["positions_m"])
    assert (reply["trays"] - 1) * reply["per_tray"] < reply["clusters"] <= reply["trays"] * reply["per_tray"]
    assert reply["tray_s"] == pytest.approx(reply["per_tray"] * 60.0 / 20.0)


def test_a_fill_is_three_quarters_of_the_funnel_and_gives_whole_deposits():
    reply = planned()
    density = materials.density(materials.resolved("caramel"), 74.0)
    assert reply["fill_kg"] == pytest.approx(0.75 * 0.001 * density)
    # Eighty first deposits and as many second ones, the mean.
    assert reply["deposits_per_fill"] == int(reply["fill_kg"] / (reply["deposits_kg"] / 160))


def test_a_quick_hand_empties_each_fill_and_reheats_less():
    slow, quick = planned(deposits_per_min=10), planned(deposits_per_min=60)
    assert slow["fill_s"] < slow["deposits_per_fill"] * 6.0
    assert quick["fill_s"] == pytest.approx(quick["fill_kg"] / quick["fill_request"]["pace_kg_s"])
    assert quick["fills"] <= slow["fills"]
    assert quick["reheats"] < slow["reheats"]


def test_the_plan_and_the_bench_ask_the_same_clock():
    reply = planned()
    asked = reply["fill_request"] | {"now_c": 74.0, "fill_kg": reply["fill_kg"]}
    assert catalogue.call("deposit.fill", asked)["seconds_s"] == pytest.approx(reply["fill_s"])


def test_a_fill_lasts_longer_the_warmer_and_the_fuller_it_is():
    asked = planned()["fill_request"] | {"pace_kg_s": 0.001}

    def lasts(now_c, fill_kg):
        return catalogue.call("deposit.fill", asked | {"now_c": now_c, "fill_kg": fill_kg})["seconds_s"]

    assert lasts(70.9, 1.0) == 0.0
    assert 0.0 < lasts(72.0, 1.0) < lasts(74.0, 1.0) < lasts(76.0, 1.0)
    assert lasts(73.0, 0.5) < lasts(73.0, 1.0)


def test_a_usual_tray_can_be_freed_in_one_to_two_hours_and_later_in_a_warmer_room():
    """At 68 to 72 °F: common practice, no published source."""
    usual = {"rows": [{"clusters": 48, "deposit_kg": 0.016}], "second_kg": 0.008, "spread_m": 0.045}
    frees = [planned(**usual, room_c=room_c)["free"] for room_c in (20.0, 21.0, 22.2, 26.0)]
    for free in frees[:3]:
        assert 3600.0 <= free["from_s"] <= free["to_s"] <= 7200.0
    times = [free["from_s"] for free in frees]
    assert times == sorted(times)


def test_second_deposits_fall_between_tacky_and_cold_and_only_if_asked_for():
    reply = planned()
    assert 0.0 < reply["second"]["from_s"] < reply["second"]["to_s"] < reply["free"]["from_s"]
    assert planned(second_kg=0)["second"] is None


@pytest.mark.parametrize("loss", [0.7, 1.0, 1.4])
def test_the_window_of_the_second_deposit_holds_for_slow_and_quick_losses(loss):
    reply = planned()
    second, fewer = reply["second"], warned(reply, "fewer_on_tray")
    tray = clusters.Tray("aluminium_tray", 0.45, 0.32, fewer["full_n"], 21.0)
    caramel, nuts = materials.resolved("caramel"), materials.resolved("pecan")
    for kg, across_m in ((0.012, 0.04), (0.010, clusters.spread_m(0.04, 0.010 / 0.012))):
        first = clusters.Mixture([(caramel, kg, 74.0), (nuts, 0.0064, 21.0)], 21.0)
        times = tray.milestone_times(first, across_m, loss, 21.0, "cold")
        assert times.tacky_s <= second["from_s"] < second["to_s"] <= times.cold_s


def test_what_is_laid_from_a_fresh_fill_is_tacky_when_the_window_opens():
    """At 2 % of slow losses (20 %, assumed); 75 °C: a kelvin over the low end to which the bowl is melted."""
    reply = planned()
    fewer = warned(reply, "fewer_on_tray")
    tray = clusters.Tray("aluminium_tray", 0.45, 0.32, fewer["full_n"], 21.0)
    parts = [(materials.resolved("caramel"), 0.012, 75.0), (materials.resolved("pecan"), 0.0064, 21.0)]
    slow = tray.milestone_times(clusters.Mixture(parts, 21.0), 0.04, math.exp(-2.05 * 0.2), 21.0, "tacky")
    assert reply["second"]["from_s"] == pytest.approx(slow.tacky_s)


def test_a_tray_takes_no_more_than_can_be_laid_again_in_time():
    narrow, wide = planned(), planned(window_low_c=65.0, deposits_per_min=30)
    assert warned(narrow, "fewer_on_tray") == {"n": narrow["per_tray"], "full_n": 60}
    assert 1 <= narrow["per_tray"] == len(narrow["positions_m"]) < 60
    # Eighty on two trays: alike, with nothing to warn of.
    assert (wide["trays"], wide["per_tray"]) == (2, 40)
    assert warned(wide, "fewer_on_tray") is None
    assert planned(second_kg=0)["per_tray"] == 60


def test_the_bowl_is_melted_to_the_warm_end_of_the_window_and_what_it_loses_when_poured_above_it():
    usual = planned(window_low_c=65.0)
    assert usual["melt_request"]["window_low_c"] == 73.0
    assert usual["melt_request"]["window_high_c"] == pytest.approx(77.7)
    assert usual["fill_request"]["window_low_c"] == 65.0
    # An oven needs some room to end in.
    assert planned()["melt_request"]["window_low_c"] == 74.0
    # Never above the line from which it darkens.
    assert planned(window_low_c=70.0, window_high_c=82.0)["melt_request"]["window_high_c"] == 82.0


@pytest.mark.parametrize(("high_c", "n"), [(77.0, None), (76.0, 2), (74.0, 0)])
def test_a_window_in_which_no_fill_is_sure_for_a_few_deposits_is_warned_of(high_c, n):
    """A reading of the bowl scatters by 2 K: nobody can be sure of a window that is hardly wider."""
    told = [one for one in planned(second_kg=0, window_high_c=high_c)["warnings"] if one["code"] == "short_fills"]
    assert told == ([] if n is None else [{"code": "short_fills", "values": {"n": n}}])


@pytest.mark.parametrize(
    ("change", "touch"),
    [
        ({}, False),
        ({"gap_m": 0.001}, True),
        ({"gap_m": 0.003}, False),
        ({"gap_m": 0.003, "window_low_c": 65.0}, True),
        ({"gap_m": 0.001, "material": PLAIN}, False),
    ],
)
def test_a_gap_that_the_warmest_clusters_close_is_warned_of(change, touch):
    """Of a material with nothing but constants nobody knows how it thins."""
    assert ("run_together" in [one["code"] for one in planned(**change)["warnings"]]) == touch


def test_what_lies_under_takes_heat_so_that_deposits_are_tacky_sooner():
    assert planned()["second"]["from_s"] < planned(under=[])["second"]["from_s"]


def test_what_the_plan_hands_to_the_melt_is_what_the_melt_answers():
    reply = planned()
    again = catalogue.call("melt.plan", reply["melt_request"])
    assert again["bursts"] == reply["melt"]["bursts"]
    assert reply["melt_request"]["mass_kg"] == reply["caramel_kg"]


def test_clusters_come_off_three_kelvin_below_what_the_shop_calls_ready_of_their_caramel():
    """One rule with the slab's ready; 3 K below it a usual tray is free in one to two hours (common practice)."""
    usual = {"rows": [{"clusters": 48, "deposit_kg": 0.016}], "second_kg": 0.008, "spread_m": 0.045, "room_c": 20.0}
    own = [planned(**usual, target_c=ready_c, basis={"target_c": "measured"}) for ready_c in (25.0, 27.0, 30.0)]
    times = [one["free"]["from_s"] for one in own]
    assert times == sorted(times, reverse=True)
    assert planned(**usual)["free"] == own[1]["free"]
    rows = {row["field"]: row for row in own[0]["inputs"]}
    assert (rows["target_c"]["basis"], rows["deposit.free_below_ready_k"]["source"]) == ("measured", "practice")
    # A soft caramel nobody has said more of must be colder, as a slab of it.
    assert planned(**usual, firmness="slumps")["free"]["from_s"] > times[1]
    said = planned(**usual, firmness="slumps", target_c=27.0, basis={"target_c": "typed"})
    assert said["free"]["from_s"] == pytest.approx(times[1], rel=0.02)
