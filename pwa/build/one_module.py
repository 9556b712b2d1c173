"""Joins the modules of a package into one, as bundlers do for the web.

What stands at the top of a module comes to stand at the top of the whole; an imported name is written as what it means.

A name that two modules have, or that is local to some function, gets its module's name behind it. What this does not
understand raises NotJoined: nothing is joined by a guess.
"""

import ast
import builtins
from collections import Counter
from collections.abc import Iterable, Iterator

Parts = tuple[str, ...]
"""A module's place in the package: ("steps", "melt", "plan"); a package's own module has its folder's."""

FUNCTIONS = (ast.FunctionDef, ast.Lambda)
COMPREHENSIONS = (ast.ListComp, ast.SetComp, ast.DictComp, ast.GeneratorExp)


class NotJoined(Exception):
    """A module does what cannot be joined."""


class Module:
    """One module: its statements, the names it defines, and those it imports from the package and from outside."""

    def __init__(self, path: str, tree: ast.Module) -> None:
        names = path.removesuffix(".py").split("/")
        self.package = tuple(names[:-1])
        self.parts = self.package if names[-1] == "__init__" else tuple(names)
        self.tree = tree
        self.imported: dict[str, tuple[Parts, str]] = {}
        self.outside: dict[str, str] = {}
        for statement in tree.body:
            if isinstance(statement, ast.ImportFrom) and statement.level:
                up = self.package[: len(self.package) - statement.level + 1]
                parent = up + tuple(statement.module.split(".") if statement.module else ())
                self.imported.update({one.asname or one.name: (parent, one.name) for one in statement.names})
            elif isinstance(statement, ast.Import | ast.ImportFrom):
                self.outside.update({one.asname or one.name: ast.unparse(statement) for one in statement.names})
        self.own = set(bound(tree.body)) - set(self.imported) - set(self.outside)


def bound(nodes: Iterable[ast.AST]) -> Iterator[str]:
    """The names that some statements bind where they stand: not what is bound in functions and classes among them."""
    for node in nodes:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.name
        elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            yield node.id
        elif isinstance(node, ast.Import | ast.ImportFrom):
            yield from (one.asname or one.name for one in node.names)
        elif not isinstance(node, (ast.Lambda, *COMPREHENSIONS)):
            if isinstance(node, ast.ExceptHandler) and node.name:
                yield node.name
            yield from bound(ast.iter_child_nodes(node))


def local_names(function: ast.FunctionDef | ast.Lambda) -> set[str]:
    """The names that are a function's own."""
    body = [function.body] if isinstance(function, ast.Lambda) else function.body
    told = {name for node in body for one in ast.walk(node) if isinstance(one, ast.Global) for name in one.names}
    arguments = {one.arg for one in ast.walk(function.args) if isinstance(one, ast.arg)}
    return (arguments | set(bound(body))) - told


class Package:
    """All modules, and how each name at their tops is written in the whole."""

    def __init__(self, modules: Iterable[Module]) -> None:
        self.modules = {module.parts: module for module in modules}
        count = Counter(name for module in self.modules.values() for name in module.own)
        taken = set(dir(builtins))
        for module in self.modules.values():
            taken |= set(module.outside)
            for node in ast.walk(module.tree):
                if isinstance(node, FUNCTIONS):
                    taken |= local_names(node)
                elif isinstance(node, ast.comprehension):
                    taken |= {one.id for one in ast.walk(node.target) if isinstance(one, ast.Name)}
        self.written = {
            (parts, name): name if count[name] == 1 and name not in taken else "_".join((name, *parts))
            for parts, module in self.modules.items()
            for name in module.own
        }
        if len(set(self.written.values())) < len(self.written) or taken & set(self.written.values()):
            raise NotJoined("two names would be one")

    def meant(self, module: Module, name: str) -> str | Module:
        """What a name at the top of a module means: a name of the whole, or a module."""
        if name in module.imported:
            parent, what = module.imported[name]
            if (*parent, what) in self.modules and what not in self.modules[parent].own:
                return self.modules[(*parent, what)]
            return self.meant(self.modules[parent], what)
        if name not in module.own and name not in module.outside:
            raise NotJoined(f"{module.parts} has no {name}")
        return self.written.get((module.parts, name), name)

    def needed(self, module: Module, seen: set[Parts]) -> Iterator[Module]:
        """What a module needs, each module after those it imports itself, and the module."""
        seen.add(module.parts)
        for name, (parent, _) in module.imported.items():
            one = self.meant(module, name)
            one = one if isinstance(one, Module) else self.modules[parent]
            if one.parts not in seen:
                yield from self.needed(one, seen)
        yield module


class Written(ast.NodeTransformer):
    """Writes the names of a module as they stand in the whole."""

    def __init__(self, package: Package, module: Module) -> None:
        self.package, self.module = package, module
        self.known = set(module.own) | set(module.imported)
        self.handed_on: list[Module] = []
        self.local: list[set[str]] = []

    def _is_top(self, name: str) -> bool:
        return name in self.known and not any(name in names for names in self.local)

    def _module(self, node: ast.expr) -> Module | None:
        if not isinstance(node, ast.Name) or not self._is_top(node.id):
            return None
        one = self.package.meant(self.module, node.id)
        return one if isinstance(one, Module) else None

    def _name(self, module: Module, name: str) -> str:
        one = self.package.meant(module, name)
        if not isinstance(one, Module):
            return one
        self.handed_on.append(one)
        return _as_object(one)

    def visit_Name(self, node: ast.Name) -> ast.Name:
        return ast.Name(self._name(self.module, node.id), node.ctx) if self._is_top(node.id) else node

    def visit_Attribute(self, node: ast.Attribute) -> ast.AST:
        module = self._module(node.value)
        return ast.Name(self._name(module, node.attr), node.ctx) if module else self.generic_visit(node)

    def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.FunctionDef:
        if not self.local:
            node.name = self._name(self.module, node.name)
        node.decorator_list = [self.visit(one) for one in node.decorator_list]
        self.visit(node.args)
        self.local.append(local_names(node))
        node.body = [self.visit(one) for one in node.body]
        self.local.pop()
        return node

    def visit_Lambda(self, node: ast.Lambda) -> ast.Lambda:
        self.visit(node.args)
        self.local.append(local_names(node))
        node.body = self.visit(node.body)
        self.local.pop()
        return node

    def visit_ClassDef(self, node: ast.ClassDef) -> ast.AST:
        at_its_top = [one.args if isinstance(one, ast.FunctionDef) else one for one in node.body]
        used = {name.id for one in at_its_top for name in ast.walk(one) if isinstance(name, ast.Name)}
        if self.known & used & set(bound(node.body)) or self.local:
            raise NotJoined(f"the class {node.name} of {self.module.parts} hides a name, or is a function's own")
        node.name = self._name(self.module, node.name)
        self.local.append(set())  # its methods do not see its names
        self.generic_visit(node)
        self.local.pop()
        return node

    def visit_comprehension(self, node: ast.comprehension) -> ast.AST:
        hidden = {one.id for one in ast.walk(node.target) if isinstance(one, ast.Name)}
        if any(self._is_top(name) for name in hidden):
            raise NotJoined(f"a comprehension of {self.module.parts} hides one of {hidden}")
        return self.generic_visit(node)

    def visit_Global(self, node: ast.Global) -> ast.Global:
        return ast.Global([self._name(self.module, name) for name in node.names])


def _as_object(module: Module) -> str:
    return "_".join(("module", *module.parts))


def _object(package: Package, module: Module) -> ast.ClassDef:
    """What a module is where it is handed on as a value: an object with its names."""
    lines = [f"    {name} = {package.written[module.parts, name]}" for name in sorted(module.own)]
    (made,) = ast.parse("\n".join((f"class {_as_object(module)}:", *lines))).body
    assert isinstance(made, ast.ClassDef)
    return made


def joined(trees: dict[str, ast.Module], *entries: Parts) -> list[ast.Module]:
    """For each entry one module with what it needs of a package and those before it do not; the rest stays out."""
    package = Package(Module(path, tree) for path, tree in trees.items())
    seen: set[Parts] = set()
    return [_joined(package, list(package.needed(package.modules[entry], seen))) for entry in entries]


def _joined(package: Package, needed: list[Module]) -> ast.Module:
    outside = sorted({line for module in needed for line in module.outside.values()})
    body = ast.parse("\n".join(outside)).body
    objects: set[Parts] = set()
    for module in needed:
        rest = [one for one in module.tree.body if not isinstance(one, ast.Import | ast.ImportFrom)]
        written = Written(package, module)
        statements = written.visit(ast.Module(rest, [])).body
        body += [_object(package, one) for one in written.handed_on if one.parts not in objects]
        objects |= {one.parts for one in written.handed_on}
        body += statements
    return ast.fix_missing_locations(ast.Module(body, []))


def imports(second: ast.Module, first: ast.Module, name: str) -> ast.ImportFrom:
    """The import of all that a module uses of the one before it, which is called `name`."""
    used = {node.id for node in ast.walk(second) if isinstance(node, ast.Name)}
    names = sorted(used & set(bound(first.body)))
    changed = {one for node in ast.walk(first) if isinstance(node, ast.Global) for one in node.names}
    if changed & set(names):
        raise NotJoined(f"{name} changes what it lends: {sorted(changed & set(names))}")
    return ast.ImportFrom(name, [ast.alias(one) for one in names], 0)
