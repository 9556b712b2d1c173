"""Tracing both ways, against a naive walk."""

import random

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.trace import graph
from tests.strategies_boxes import lines, shop_graph


def walk(start, links):
    return catalogue.call("trace.walk", {"start": start, "links": lines(links)})


def naive(start, links, one, other):
    """All that is reached, by going over every link until nothing is added."""
    found, before = {start}, set()
    while found != before:
        before = set(found)
        found |= {link[other] for link in links if link[one] in found}
    return found - {start}


@pytest.mark.parametrize("seed", range(50))
def test_both_ways_equal_a_naive_walk_on_ten_questions_each(seed):
    rng = random.Random(seed)
    links = shop_graph(rng, batches=20)
    for link in rng.sample(links, 10):
        start = rng.choice([link["from"], link["to"]])
        reply = walk(start, links)
        forward, back = naive(start, links, "from", "to"), naive(start, links, "to", "from")
        assert set(reply["forward"]) == forward
        assert set(reply["back"]) == back
        assert set(reply["customers"]) == {name for name in forward if name.startswith("customer/")}
        left_over = {link["to"] for link in links if link["from"].startswith("batch/")}
        assert set(reply["deliveries"]) == {
            name for name in back | {start} if name.startswith("lot/") and name not in left_over
        }


def test_a_delivery_into_which_another_was_poured_is_still_one():
    poured = {"from": "lot/b", "to": "lot/a"}
    used = {"from": "lot/a", "to": "batch/x"}
    assert walk("batch/x", [used, poured])["deliveries"] == ["lot/a", "lot/b"]
    left = {"from": "batch/monday", "to": "lot/b"}
    assert walk("batch/x", [used, poured, left])["deliveries"] == ["lot/a"]


def test_the_nearest_come_first_and_a_ring_of_leftovers_ends():
    links = [
        {"from": "lot/a", "to": "batch/1"},
        {"from": "batch/1", "to": "lot/left"},
        {"from": "lot/left", "to": "batch/1"},
        {"from": "batch/1", "to": "pack/p"},
        {"from": "pack/p", "to": "order/o"},
        {"from": "order/o", "to": "customer/corner bakery"},
    ]
    reply = walk("lot/a", links)
    assert reply["forward"] == ["batch/1", "lot/left", "pack/p", "order/o", "customer/corner bakery"]
    assert reply["deliveries"] == ["lot/a"]
    assert walk("batch/1", links)["back"] == ["lot/a", "lot/left"]


def test_documents_become_links():
    lot = {"id": "l", "made_from": "b", "merged_into": "m", "material": "caramels/firm", "supplier_lot": " K-118 "}
    bowl = {"batch_id": "c", "is_bowl": True, "lot": "D7", "dipped_lots": [], "under_lots": [], "leftover_lot": "rest",
            "used_lots": []}  # fmt: skip
    batch = {
        "batch_id": "b", "is_bowl": False, "lot": "k-118", "dipped_lots": ["D7", None], "under_lots": ["9"],
        "leftover_lot": None, "used_lots": ["l", "m"],
    }  # fmt: skip
    pack = {"id": "p", "from": [{"batch_id": "b", "pieces": 9}], "lots": [{"lot_id": "boxes", "amount": 1}]}
    order = {"id": "o", "customer_id": None, "customer": "Ana", "handed": [{"pack_id": "p"}]}
    assert graph.links_of_lot(lot) == [
        ("batch/b", "lot/l"), ("lot/l", "lot/m"), ("lot/l", "name/caramels#k-118")
    ]  # fmt: skip
    assert graph.links_of_batch(batch) == [
        ("name/caramels#k-118", "batch/b"), ("name/chocolates#d7", "batch/b"), ("name/materials#9", "batch/b"),
        ("lot/l", "batch/b"), ("lot/m", "batch/b"),
    ]  # fmt: skip
    assert graph.links_of_batch(bowl) == [("name/chocolates#d7", "batch/c"), ("batch/c", "name/chocolates#rest")]
    assert graph.links_of_pack(pack) == [("batch/b", "pack/p"), ("lot/boxes", "pack/p")]
    assert graph.links_of_order(order) == [("pack/p", "order/o"), ("order/o", "customer/Ana")]
    assert graph.links_of_order(dict(order, handed=[])) == []


def test_lot_typed_at_the_bench_leads_to_every_delivery_of_that_name_and_a_leftover_to_where_it_was_dipped():
    rest = {"from": "batch/monday", "to": "name/chocolates#rest"}
    dipped = {"from": "name/chocolates#rest", "to": "batch/tuesday"}
    named = [{"from": f"lot/{one}", "to": "name/caramels#118"} for one in ("first", "second")]
    used = {"from": "name/caramels#118", "to": "batch/tuesday"}
    reply = walk("batch/tuesday", [*named, used, rest, dipped])
    assert reply["back"] == ["batch/monday", "lot/first", "lot/second"]
    assert reply["deliveries"] == ["lot/first", "lot/second"]
    assert walk("lot/first", [*named, used])["forward"] == ["batch/tuesday"]
    assert [one for one in reply["links"] if "name/" in one["from"] + one["to"]] == []


def test_what_is_no_node_is_refused():
    with pytest.raises(Problem) as refused:
        walk("118", [])
    assert refused.value.code == "not_a_node"


def test_a_line_that_is_no_link_is_refused():
    with pytest.raises(Problem) as refused:
        catalogue.call("trace.walk", {"start": "lot/a", "links": "lot/a\tbatch/x\nlot/b"})
    assert (refused.value.code, refused.value.given) == ("not_a_link", "lot/b")
