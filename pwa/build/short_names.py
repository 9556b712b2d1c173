"""Gives the constants of one joined module names of a letter or two: bytecode holds every name as it is written.

Functions and classes keep theirs, so that a trace still says where. What is not understood raises NotShortened.
"""

import ast
import builtins
import keyword
from collections import Counter
from collections.abc import Iterator
from itertools import count, product
from string import ascii_letters

from one_module import bound


class NotShortened(Exception):
    """A class body reads a name that it binds itself: which of the two is meant would be a guess."""


def with_short_constants(whole: ast.Module, kept: frozenset[str]) -> ast.Module:
    """The module with what it assigns at its top under short names, the most used first; `kept` keep theirs.

    It takes a name at the top to be nowhere a local one, as one_module leaves it.
    """
    uses = Counter(node.id for node in ast.walk(whole) if isinstance(node, ast.Name))
    named = ast.FunctionDef | ast.ClassDef | ast.Import | ast.ImportFrom
    constants = {*bound(one for one in whole.body if not isinstance(one, named))} - kept
    by_use = sorted(constants, key=lambda name: (-uses[name], name))
    free = _free(set(uses) | set(_other_names(whole)))
    shortened: ast.Module = _Renamed(dict(zip(by_use, free, strict=False))).visit(whole)
    return shortened


def _other_names(whole: ast.Module) -> Iterator[str]:
    for node in ast.walk(whole):
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.name
        elif isinstance(node, ast.arg):
            yield node.arg
        elif isinstance(node, ast.alias):
            yield node.asname or node.name


def _free(taken: set[str]) -> Iterator[str]:
    """Short names that nothing has.

    MicroPython looks for a name at a place that its letters give (py/qstr.c) and from there one by one to the first
    empty place (py/map.c). All names of two letters would lie in one row; a fourth of them leaves room between them.
    """
    for length in count(1):
        for letters in product(ascii_letters, *[ascii_letters[::4]] * (length - 1)):
            name = "".join(letters)
            if name not in taken and not keyword.iskeyword(name) and not hasattr(builtins, name):
                yield name


class _Renamed(ast.NodeTransformer):
    def __init__(self, names: dict[str, str]) -> None:
        self.names = names

    def visit_Name(self, node: ast.Name) -> ast.Name:
        return ast.Name(self.names.get(node.id, node.id), node.ctx)

    def visit_Global(self, node: ast.Global) -> ast.Global:
        return ast.Global([self.names.get(name, name) for name in node.names])

    def visit_ClassDef(self, node: ast.ClassDef) -> ast.ClassDef:
        """What a class body binds are attributes, which are asked for by their names."""
        bound: set[str] = set()
        for one in node.body:
            if not isinstance(one, ast.Assign):
                self.visit(one)
                continue
            read = {part.id for part in ast.walk(one.value) if isinstance(part, ast.Name)}
            if read & bound & self.names.keys():
                raise NotShortened(f"the class {node.name} reads {sorted(read & bound)}")
            one.value = self.visit(one.value)
            bound |= {target.id for target in one.targets if isinstance(target, ast.Name)}
        return node
