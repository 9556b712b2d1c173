"""A kind of batch is known by its record; only its own folder knows its name."""

import ast
from pathlib import Path

import pytest

from amberbench.engine.batch import courses, events, folds
from amberbench.engine.products import KINDS

SERVER = Path(__file__).parents[2] / "server/amberbench"
NAMES = {kind.name for kind in KINDS}


def compared_with(tree):
    """The string constants that a file compares something with."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare):
            for side in [node.left, *node.comparators]:
                words = side.elts if isinstance(side, ast.Tuple | ast.List | ast.Set) else [side]
                yield from (one.value for one in words if isinstance(one, ast.Constant))


def test_nothing_outside_the_products_asks_for_a_kind_by_name():
    files = [path for path in sorted(SERVER.rglob("*.py")) if "products" not in path.parts]
    assert len(files) > 100
    asking = [(path.name, word) for path in files for word in compared_with(ast.parse(path.read_text("utf-8")))]
    assert [row for row in asking if row[1] in NAMES] == []


def imported(file):
    """What a file of a kind's folder imports out of the folder beside its own."""
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.level == 2:
            yield from [node.module.split(".")[0]] if node.module else [one.name for one in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module and ".products" in f".{node.module}":
            yield from node.module.split(".")


@pytest.mark.parametrize("name", sorted(NAMES))
def test_a_kind_knows_no_other_kind(name):
    files = sorted((SERVER / "engine/products" / name).glob("*.py"))
    assert len(files) > 3
    seen = {room for file in files for room in imported(file)}
    assert "kind" in seen
    assert seen & NAMES == set()


def test_every_step_of_every_kind_has_a_page_a_fold_and_a_body():
    for kind in KINDS:
        for step, event in kind.course:
            assert step in kind.pages, (kind.name, step)
            assert event in folds.FOLDS, (kind.name, event)
            assert event in events.EVENTS, (kind.name, event)
            assert courses.STEP_OF[event] == step, (kind.name, event)


def test_a_kind_that_may_be_planned_names_its_function_and_its_mass():
    for kind in KINDS:
        assert (kind.function is None) == (kind.request is None)
        if kind.in_shop:
            assert kind.mass_kg is not None
            assert kind.sheet is not None


@pytest.mark.parametrize("part", ["folds", "decides"])
def test_an_event_is_folded_and_decided_alike_in_all_kinds_that_have_it(part):
    # One table serves all kinds: of two that differ, the kind listed last would win for every batch.
    found: dict[str, set[object]] = {}
    for kind in KINDS:
        for event, function in getattr(kind, part).items():
            found.setdefault(event, set()).add(function)
    assert len(found) > 5
    assert [event for event, functions in found.items() if len(functions) > 1] == []
