"""Many modules as one: what the phone's engine is compiled from says what its sources say."""

import ast
import builtins
import json
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "pwa/build"))

from compile_engine import KEPT, Needed, as_two
from one_module import NotJoined, imports, joined
from short_names import NotShortened, with_short_constants

from amberbench.engine.version import VERSION, sources
from tests.parity.test_parity import MICROPYTHON, node, shipped


def run(folder=None, **sources):
    """The names of the whole, run, and its text. Sources by their names; those in the folder `a` as a dict."""
    paths = {"__init__.py": "", **{f"{name}.py": source for name, source in sources.items()}}
    paths |= {f"a/{name}.py": source for name, source in (folder or {}).items()}
    trees = {path: ast.parse(source) for path, source in paths.items()}
    (one,) = joined(trees, ("main",))
    whole = ast.unparse(one)
    names = {}
    exec(compile(whole, "whole", "exec"), names)
    return names, whole


def test_two_modules_may_use_one_name_for_different_things():
    names, _ = run(
        a="def plan():\n    return 'a'",
        b="def plan():\n    return 'b'",
        main="from . import a, b\nfrom .b import plan\nboth = (a.plan(), b.plan(), plan())",
    )
    assert names["both"] == ("a", "b", "b")


def test_a_local_name_hides_an_imported_one_only_in_its_function():
    names, _ = run(
        a="high = 3",
        main="from .a import high\ndef f(high):\n    return high\ndef g():\n    return high\n"
        "def h():\n    high = 5\n    return (lambda: high)()\nall_of = (f(1), g(), h())",
    )
    assert names["all_of"] == (1, 3, 5)


def test_a_name_of_another_module_is_not_caught_by_a_local_of_that_name():
    names, _ = run(
        a="def seconds():\n    return 7",
        main="from .a import seconds as s\ndef f(seconds):\n    return seconds + s()\nx = f(1)",
    )
    assert names["x"] == 8


def test_methods_do_not_see_the_names_of_their_class():
    names, _ = run(
        a="def lay(n):\n    return n * 2",
        main="from .a import lay\nclass Tray:\n    def lay(self):\n        return lay(2)\nx = Tray().lay()",
    )
    assert names["x"] == 4


def test_names_handed_on_and_whole_modules_are_found_again():
    names, _ = run(
        folder={
            "fields": "LOW = 1\ndef low():\n    return LOW",
            "__init__": "from . import fields as f\nfrom .fields import LOW\nKIND = {'fields': f, 'low': LOW}",
        },
        main="from .a import KIND, fields\nx = (KIND['fields'].low(), KIND['low'], fields.LOW)",
    )
    assert names["x"] == (1, 1, 1)


def test_what_nobody_imports_stays_out_and_what_comes_from_outside_is_imported_once():
    _, whole = run(
        a="import math\nA = math.pi",
        unread="TITLES = 'of sources'",
        main="import math\nfrom .a import A\nx = math.floor(A)",
    )
    assert "TITLES" not in whole
    assert whole.count("import math") == 1


@pytest.mark.parametrize(
    "source",
    [
        "from .a import nothing\nx = nothing",
        "from .a import high\nx = [high for high in (1, 2)]",
        "from .a import high\nclass T:\n    high = high",
    ],
)
def test_what_cannot_be_joined_is_refused(source):
    with pytest.raises(NotJoined):
        run(a="high = 3", main=source)


def test_meanings_and_what_only_a_type_checker_reads_stay_behind():
    source = (
        "TYPE_CHECKING = False\nif TYPE_CHECKING:\n    from typing import Any\n"
        "A: 'Any' = number('W/(m² K)', 1, 60, 'heat the fill loses', default=10.0)\n"
        "B = dict(A, meaning='of the bowl')\ndef f(a: 'Any') -> 'Any':\n    return a\n"
    )
    kept = ast.unparse(Needed().visit(ast.parse(source)))
    assert kept == (
        "A = number('W/(m² K)', 1, 60, '', default=10.0)\nB = dict(A, meaning='')\n\ndef f(a):\n    return a"
    )


def two_of(first, second):
    """Two modules of one package: the second with all that the first does not hold."""
    sources = {"__init__.py": "", "first.py": first, "second.py": second}
    return joined({path: ast.parse(source) for path, source in sources.items()}, ("first",), ("second",))


def test_a_second_module_imports_what_it_uses_of_the_first_and_holds_none_of_it():
    first, second = two_of("import math\nA = 2\nB = 3", "from .first import A\nimport math\nx = math.floor(A)")
    assert ast.unparse(imports(second, first, "whole")) == "from whole import A, math"
    assert "A = 2" not in ast.unparse(second)


def test_what_the_first_changes_later_is_not_lent():
    first, second = two_of("n = 1\ndef more():\n    global n\n    n = 2", "from .first import n\nx = n")
    with pytest.raises(NotJoined):
        imports(second, first, "whole")


def test_the_engine_as_two_modules_answers_under_cpython_too(monkeypatch):
    bench, desk = as_two(sources())
    engine = ModuleType("engine")
    monkeypatch.setitem(sys.modules, "engine", engine)
    names = vars(engine)
    exec(compile(bench, "engine.py", "exec"), names)
    assert not names["is_known"]("table.timeline")
    exec(compile(desk, "desk.py", "exec"), {})
    assert names["is_known"]("table.timeline")
    assert "reply" in json.loads(names["call_text"]("table.timeline", '{"events": []}'))
    # 2.5 lb: exact by definition (NIST SP 811, B.8).
    assert names["call_text"]("units.convert", '{"value": 2.5, "from": "lb", "to": "kg"}') == (
        '{"reply": {"value": 1.1339809250000001}}'
    )
    assert names["VERSION"] == VERSION


def shortened(source, kept=()):
    """The names of a module with short constants, run, and its text."""
    whole = ast.unparse(with_short_constants(ast.parse(source), frozenset(kept)))
    names = {}
    exec(compile(whole, "whole", "exec"), names)
    return names, whole


def test_constants_get_short_names_and_what_is_asked_for_by_name_keeps_its_own():
    names, whole = shortened(
        "from math import pi\nHEIGHT = 3\nVERSION = 'x'\nLIMITS = {'HEIGHT': HEIGHT}\n"
        "class Bars:\n    HEIGHT = HEIGHT + 1\n    def high(self):\n        return HEIGHT\n"
        "def area(a, *, b=HEIGHT):\n    global LIMITS\n    LIMITS = {'HEIGHT': a * b}\n"
        "    return LIMITS['HEIGHT'] + Bars.HEIGHT\nTWICE = [2 * one for one in (1, 2)]\ndef f(one):\n    return one\n"
        "x = area(2) + Bars().high() + round(pi)",
        kept=("VERSION", "x"),
    )
    assert names["x"] == 6 + 4 + 3 + 3
    assert names["VERSION"] == "x"
    assert "LIMITS" not in whole
    assert "def area(a, *, b=" in whole


def test_a_class_that_reads_a_name_it_binds_is_not_shortened_by_a_guess():
    with pytest.raises(NotShortened, match="Bars reads"):
        shortened("HEIGHT = 3\nclass Bars:\n    HEIGHT = 4\n    TWICE = 2 * HEIGHT")


def test_the_engine_keeps_the_names_of_its_functions_for_traces():
    whole = "\n".join(as_two(sources()))
    tree = ast.parse(whole)
    functions = {node.name for node in tree.body if isinstance(node, ast.FunctionDef)}
    assert len(functions) > 500
    assert {"call_text"} <= functions
    assert max(len(name) for name in functions) > 20
    constants = {
        node.targets[0].id
        for node in tree.body
        if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name)
    }
    # More constants than names of two letters: a few have three.
    assert {name for name in constants if len(name) > 3} == KEPT


def names_of_builtins():
    """What the engine asks Python for by name."""
    loaded = {node.id for node in ast.walk(ast.parse(as_two(sources())[0])) if isinstance(node, ast.Name)}
    return sorted(loaded & set(dir(builtins)))


def test_the_phone_finds_every_name_of_python_at_once(tmp_path):
    """Each is looked for among the module's own names first: in a full table that took up to fifty times as long."""
    (tmp_path / "names.json").write_text(json.dumps([*names_of_builtins(), *sorted(KEPT)]))
    command = [node(), str(Path(__file__).parent / "name_lookups.mjs"), shipped(), MICROPYTHON]
    subprocess.run([*command, tmp_path / "names.json", tmp_path / "times.json"], check=True, timeout=300)
    times = json.loads((tmp_path / "times.json").read_text())
    assert len(times) > 20
    assert {name: ratio for name, ratio in times.items() if ratio > 12} == {}
