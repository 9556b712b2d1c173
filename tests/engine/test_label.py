"""What labels and records say: allergens of all labels, what was not washed off, lots, why a batch was thrown away."""

import copy
from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.batch import label
from amberbench.engine.core import allergens
from tests.bench import Bench, dipped_slab, planned_bowl, planned_clusters, planned_slab

PECANS_LEFT = {"wanted": True, "after": ["Pecans"], "allergens": ["pecan"]}
# 21 USC 321(qq) and, for kinds of nuts, annex II of Regulation (EU) No 1169/2011; written here once more.
UNITED_STATES = {"milk", "egg", "fish", "crustaceans", "peanuts", "wheat", "soya", "sesame"}
EUROPE = UNITED_STATES - {"wheat"} | {"gluten", "nuts", "celery", "mustard", "sulphites", "lupin", "molluscs"}
NUTS_OF_EUROPE = {"almond", "hazelnut", "walnut", "cashew", "pecan", "brazil_nut", "pistachio", "macadamia"}


def labelled(plan: dict[str, Any], *contains: str, known: bool = True) -> Bench:
    return Bench(plan | {"contains": list(contains), "labels_known": known})


def on_nuts(*materials: str) -> dict[str, Any]:
    """Clusters with one of each under them, as a plan document."""
    plan = copy.deepcopy(planned_clusters())
    under = [{"material": material, "kg_each": 0.0016, "count": 1} for material in materials]
    plan["reply"] = catalogue.call("cluster.plan", plan["request"] | {"under": under})
    return plan | {"contains": ["milk"], "labels_known": True}


def test_lists_of_both_sides_of_the_atlantic_can_be_ticked_whole():
    assert len(EUROPE) == 14
    assert set(allergens.ALLERGENS) >= (UNITED_STATES | EUROPE | NUTS_OF_EUROPE)
    assert set(allergens.TREE_NUTS) >= NUTS_OF_EUROPE
    row = {"name": "Firm", "contains": list(allergens.ALLERGENS)}
    assert (
        catalogue.call("shop.check", {"doc": "caramels/firm", "values": row})["values"]["contains"] == row["contains"]
    )


def test_hazelnuts_after_pecans_want_a_wash_and_it_names_the_nut():
    both = [
        {"id": nut, "kind": "cluster", "name": nut, "contains": ["milk"], "under": [nut], "state": "open"}
        for nut in ("pecan", "hazelnut")
    ]
    both[0]["touched_ms"] = 1e12
    reply = catalogue.call("batch.order", {"at_ms": 1e12 + 60_000, "batches": both})
    assert [one["wash"] for one in reply["now"]] == [[], ["pecan"]]


@pytest.mark.parametrize(("left", "declared"), [("nuts", "pecan"), ("pecan", "nuts"), ("gluten", "wheat")])
def test_what_names_no_kind_covers_no_kind_and_none_covers_it(left, declared):
    both = [
        {"id": one, "kind": "slab", "name": one, "contains": [one], "state": "open", "touched_ms": at_ms}
        for one, at_ms in ((left, 1e12), (declared, None))
    ]
    assert catalogue.call("batch.order", {"at_ms": 1e12, "batches": both})["now"][1]["wash"] == [left]


def test_weighing_in_names_every_allergen_of_every_label():
    bench = labelled(planned_slab(), "milk", "soya")
    bench.does("ready_checked")
    assert bench.advice["caution"] == {
        "word": "WARNING",
        "code": "caution.contains",
        "values": {"allergens": ["milk", "soya"]},
    }
    bowl = labelled(planned_bowl(), "soya", "hazelnut", known=False)
    bowl.does("ready_checked")
    assert bowl.advice["caution"]["code"] == "caution.contains_some"
    assert bowl.advice["caution"]["values"] == {"allergens": ["hazelnut", "soya"]}


def test_weighing_in_names_what_lies_under_too_and_says_where_no_label_was_copied():
    bench = Bench(on_nuts("pecan", "pretzel"))
    for kind in ("ready_checked", "allergens_checked", "under_laid"):
        bench.does(kind)
    assert bench.advice["caution"]["values"] == {"allergens": ["milk", "pecan", "wheat"]}
    bare = Bench(planned_slab())
    bare.does("ready_checked")
    assert bare.advice["caution"]["code"] == "caution.milk"
    assert bare.run["labels_known"] is False


def skips_the_wash(bench: Bench, **why: str) -> Bench:
    bench.does("wash_told", **PECANS_LEFT)
    choice = bench.advice["choices"][0]
    assert choice["kind"] == "step_skipped"
    bench.does(choice["kind"], 5, **choice["body"], **why)
    return bench


def test_passing_a_wash_over_asks_why_and_every_piece_may_contain_what_was_left():
    bench = labelled(planned_slab(), "milk")
    bench.does("wash_told", **PECANS_LEFT)
    assert bench.advice["choices"][0]["reasons"] == ["other_tools", "covered", "no_time", "other"]
    skips_the_wash(bench, reason="other", text="Water is off ")
    run = bench.run
    assert (run["contains"], run["may_contain"]) == (["milk"], ["pecan"])
    assert run["unwashed"] == [{"allergens": ["pecan"], "reason": "other", "text": "Water is off"}]
    assert label.of_run(run)["may_contain"] == ["pecan"]
    bench.does("undone", 1, event_id=bench.advice["undo"]["event_id"])
    assert bench.run["may_contain"] == []
    assert bench.advice["step"] == "wash"


def test_a_wash_passed_over_by_an_app_that_asked_for_no_reason_marks_the_pieces_all_the_same():
    run = skips_the_wash(Bench()).run
    assert (run["may_contain"], run["unwashed"][0]["reason"]) == (["pecan"], None)
    assert Bench().run["may_contain"] == []


def test_label_at_closing_says_what_may_be_in_it():
    bench = skips_the_wash(Bench(), reason="no_time")
    bench.sets_up()
    bench.melts()
    bench.does("poured", 30, bulk_c=74.0)
    for kind in ("touched", "cut", "counted"):
        bench.does(kind, 3600, firm=True, pieces=150)
    bench.does("step_skipped", step="weigh_out")
    assert bench.advice["step"] == "close"
    wanted = {"word": "WARNING", "code": "caution.label_may_contain", "values": {"allergens": ["pecan"]}}
    assert bench.advice["caution"] == wanted


def test_lot_of_each_thing_under_a_cluster_is_asked_for_and_kept():
    bench = Bench(on_nuts("pecan", "pretzel"))
    bench.does("ready_checked")
    bench.does("allergens_checked")
    assert bench.advice["say"] == {"code": "say.under_lot_of", "values": {"materials": ["pecan"]}}
    asked = bench.advice["entry"]
    bench.does(asked["kind"], lot="P-7B", **asked["body"])
    twin = bench.does(asked["kind"], lot="P-7B", **asked["body"])
    assert bench.run["ignored"] == [{"id": twin, "why": "already_counted"}]
    assert bench.advice["say"]["values"] == {"materials": ["pretzel"]}
    none = bench.advice["choices"][0]
    bench.does(none["kind"], **none["body"])
    assert bench.advice["step"] == "under"
    assert label.of_run(bench.run)["under_lots"] == [{"material": "pecan", "lot": "P-7B"}]


def test_a_batch_begun_before_lots_were_asked_for_goes_on_where_it_was():
    bench = Bench(on_nuts("pecan"))
    bench.sets_up_clusters()
    assert bench.advice["step"] == "burst"
    assert label.of_run(bench.run)["under_lots"] == []


def test_table_of_batches_says_lots_allergens_and_what_was_thrown_away():
    bench = skips_the_wash(Bench(on_nuts("pecan", "almond")), reason="covered")
    bench.does("ready_checked")
    bench.does("allergens_checked")
    for material, lot in (("pecan", "P-7B"), ("almond", None)):
        bench.does("under_lot_named", material=material, lot=lot)
    bench.does("under_laid")
    bench.does("weighed", kg=1.0, lot="A-117")
    bench.does("thrown_away", reason="burnt")
    line = {"batch_id": "b", "name": "Clusters", "opened_at_ms": 0, "label": label.of_run(bench.run)}
    table = catalogue.call("table.batches", {"batches": [line, {"batch_id": "old", "opened_at_ms": 0}]})
    names = ("lot", "under_lots", "contains", "labels_known", "may_contain", "thrown_away")
    rows = [[row[table["columns"].index(name)] for name in names] for row in table["rows"]]
    assert rows == [
        ["A-117", "pecan P-7B", "milk, almond, pecan", "true", "pecan", "burnt"],
        ["", "", "", "", "", ""],
    ]


@pytest.mark.parametrize("plan", [planned_slab, dipped_slab, planned_clusters, planned_bowl])
def test_any_batch_can_be_thrown_away_with_a_reason_and_be_taken_back(plan):
    bench = Bench(plan())
    bench.does("ready_checked")
    offered = bench.advice["throw_away"]
    assert (offered["kind"], offered["reasons"]) == ("thrown_away", ["burnt", "dropped", "trial", "other"])
    bench.does("thrown_away", reason="other", text="Grainy")
    run, advice = bench.run, bench.advice
    assert (run["closed_at_ms"], run["thrown_away"]) == (bench.now_ms, {"reason": "other", "text": "Grainy"})
    assert (advice["step"], advice["say"]["code"], advice["clocks"]) == ("closed", "say.thrown_away", [])
    assert (advice["throw_away"], advice["undo"]["code"]) == (None, "undo.thrown_away")
    bench.does("undone", 1, event_id=advice["undo"]["event_id"])
    assert (bench.run["closed_at_ms"], bench.run["thrown_away"]) == (None, None)
    assert bench.advice["step"] != "closed"


def test_a_sheet_that_was_never_begun_is_called_back():
    bench = Bench()
    assert bench.advice["throw_away"]["reasons"] == ["unused"]
    bench.does("thrown_away", reason="unused")
    assert label.of_run(bench.run)["thrown_away"] == "unused"
    assert bench.run["touched_ms"] is None


def test_what_was_to_follow_a_closed_batch_may_be_taken_off_and_put_back_and_is_no_step_at_the_bench():
    bench = Bench()
    bench.sets_up()
    bench.does("thrown_away", reason="dropped")
    before = bench.advice
    for ended in (True, False):
        bench.does("series_ended", 3600, ended=ended)
        assert bench.run["series_ended"] is ended
        assert (bench.run["ignored"], bench.advice) == ([], before)


def test_a_batch_thrown_away_teaches_the_oven_and_nothing_else():
    bench = Bench()
    bench.sets_up()
    bench.melts()
    bench.does("poured", 30, bulk_c=74.0)
    bench.does("touched", 3600, firm=True)
    bench.does("counted", pieces=20)
    bench.does("weighed_out", kg=1.0, what="bowl")
    bench.does("thrown_away", reason="dropped")
    told = {"batch_id": "b", "plan": bench.plan, "run": bench.run}
    contribution = catalogue.call("learn.contribution", told)["contribution"]
    assert contribution["oven"] is not None
    assert [contribution[part] for part in ("base", "pieces", "trim", "residue")] == [None] * 4
    assert {one["why"] for one in contribution["unused"]} == {"thrown_away"}
