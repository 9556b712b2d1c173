"""Everything the engine says by code has a sentence, and no sentence is left over."""

import ast
import json
import re
from pathlib import Path

import pytest

from tests import text_keys
from tests.test_text_keys import problem_codes as codes_of_problems

ROOT = Path(__file__).parents[2]
SERVER = ROOT / "server/amberbench"
ENGLISH = {}
for _file in sorted((SERVER / "text/en").glob("*.json")):
    ENGLISH.update(json.loads(_file.read_text(encoding="utf-8")))
TREES = {path: ast.parse(path.read_text(encoding="utf-8")) for path in sorted(SERVER.rglob("*.py"))}
PLACEHOLDERS = {"field", "given", "low", "high", "unit", "accepted"}


def _words(node):
    """The strings a code argument may be: a constant, or either branch of a choice."""
    if isinstance(node, ast.Constant):
        return [node.value]
    if isinstance(node, ast.IfExp):
        return _words(node.body) + _words(node.orelse)
    return []


def problem_codes():
    for path, tree in TREES.items():
        for node in ast.walk(tree):
            name = getattr(getattr(node, "func", None), "id", getattr(getattr(node, "func", None), "attr", ""))
            if isinstance(node, ast.Call) and name == "Problem" and len(node.args) > 1:
                for word in _words(node.args[1]):
                    yield str(path.relative_to(SERVER)), word


WARNERS = ("plan.py", "batch_order.py", "firmness.py")


def warning_codes():
    """Codes of `{"code": …, "values": …}` that the plans put into `warnings`."""
    engine = {path: tree for path, tree in TREES.items() if "engine" in path.parts}
    assert {path.name for path in engine} >= set(WARNERS), "name where warnings are made now"
    for path, tree in engine.items():
        if path.name in WARNERS:
            for node in ast.walk(tree):
                if isinstance(node, ast.Dict):
                    for key, value in zip(node.keys, node.values, strict=True):
                        if isinstance(key, ast.Constant) and key.value == "code":
                            yield from ((str(path.relative_to(SERVER)), word) for word in _words(value))


@pytest.mark.parametrize(("file", "code"), sorted(set(problem_codes())))
def test_every_problem_has_a_sentence(file, code):
    sentence = ENGLISH[f"problem.{code}"]
    assert set(re.findall(r"\{(\w+)\}", sentence)) <= PLACEHOLDERS


@pytest.mark.parametrize(("file", "code"), sorted(set(warning_codes())))
def test_every_warning_has_a_sentence(file, code):
    assert f"warning.{code}" in ENGLISH


def test_no_sentence_of_a_problem_or_warning_is_left_over():
    spoken = [key for key in ENGLISH if key.startswith(("problem.", "warning."))]
    said = {f"problem.{code}" for code in codes_of_problems()} | {f"warning.{code}" for _, code in warning_codes()}
    assert len(spoken) > 60
    assert [key for key in spoken if key not in said and not text_keys.is_said(key)] == []
