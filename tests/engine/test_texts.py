"""Everything the engine says by code has a sentence, and no sentence is left over."""

import ast
import json
import re
from pathlib import Path

import pytest

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


def warning_codes():
    """Codes of `{"code": …, "values": …}` that the plans put into `warnings`."""
    for path, tree in TREES.items():
        if "engine" in path.parts and path.name in ("plan.py", "day.py", "firmness.py"):
            for node in ast.walk(tree):
                if isinstance(node, ast.Dict):
                    for key, value in zip(node.keys, node.values, strict=True):
                        if isinstance(key, ast.Constant) and key.value == "code":
                            yield from ((str(path.relative_to(SERVER)), word) for word in _words(value))


def said_anywhere():
    """Every string constant of server and phone: a code the server's or phone's own checks may use."""
    found = set()
    for path, tree in TREES.items():
        if path.parent.name != "text":
            found |= {node.value for node in ast.walk(tree) if isinstance(node, ast.Constant)}
    for path in sorted((ROOT / "pwa/src").rglob("*.ts*")):
        found |= set(re.findall(r'"([a-z_]+)"', path.read_text(encoding="utf-8")))
    return found


@pytest.mark.parametrize(("file", "code"), sorted(set(problem_codes())))
def test_every_problem_has_a_sentence(file, code):
    sentence = ENGLISH[f"problem.{code}"]
    assert set(re.findall(r"\{(\w+)\}", sentence)) <= PLACEHOLDERS


@pytest.mark.parametrize(("file", "code"), sorted(set(warning_codes())))
def test_every_warning_has_a_sentence(file, code):
    assert f"warning.{code}" in ENGLISH


def test_no_sentence_of_a_problem_or_warning_is_left_over():
    said = said_anywhere()
    spoken = [key.split(".", 1) for key in ENGLISH if key.startswith(("problem.", "warning."))]
    assert [code for _, code in spoken if code not in said] == []
