"""Which text keys the sources name: as they stand, or put together from a pattern and words that stand in them."""

import ast
import re
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[1]
SERVER = ROOT / "server/amberbench"
PHONE = ROOT / "pwa/src"
# Generated from the field descriptions.
TYPES = SERVER / "engine/types.py"
PHONE_TYPES = PHONE / "engine/types.ts"
HOLE = "\0"
STRING = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
TEMPLATE = re.compile(r"`([^`]*)`")
# A form names the room its options have their words in: words: "allergen", choice("bottom", […], "shop.below").
OPTIONS_ROOM = re.compile(r'(?:\bwords: |\bchoice\([^()]*, )"([a-z.]+)"')
BARE_NAME = re.compile(r"\b([a-z][a-z0-9_]*):")
PART = re.compile(r"[a-z0-9_.]*")


@cache
def trees() -> list[tuple[Path, ast.Module]]:
    """Every file of the server that may name a text, parsed; what is generated names every word."""
    files = [path for path in sorted(SERVER.rglob("*.py")) if path.parent.name != "text" and path != TYPES]
    return [(path, ast.parse(path.read_text(encoding="utf-8"))) for path in files]


@cache
def phone_paths() -> list[Path]:
    """The phone's source files without its tests and what is generated."""
    return [path for path in sorted(PHONE.rglob("*.ts*")) if ".test." not in path.name and path != PHONE_TYPES]


def phone_files() -> list[str]:
    """The phone's sources without its tests."""
    return [path.read_text(encoding="utf-8") for path in phone_paths()]


def constants(node: ast.AST | None) -> list[str]:
    """The strings an expression may be: a constant, or either branch of a choice."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return [node.value]
    if isinstance(node, ast.IfExp):
        return constants(node.body) + constants(node.orelse)
    return []


def called_with(name: str, position: int = 0, files: str = "") -> set[str]:
    """The constant arguments at a position in calls of a function, in the server's files of a name's beginning."""
    found: set[str] = set()
    for path, tree in trees():
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and path.name.startswith(files) and len(node.args) > position:
                called = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
                if called == name:
                    found |= set(constants(node.args[position]))
    assert found, f"{name} is called nowhere in files {files}*: name where it is called now"
    return found


def faults_of_the_phone() -> set[str]:
    """The codes of what the phone itself cannot take as typed."""
    found = {code for source in phone_files() for code in re.findall(r'\bfault\(\w+, "([a-z_]+)"', source)}
    assert found, "the phone refuses nothing"
    return found


def _pattern(node: ast.expr) -> str | None:
    """A string put together, its unknown parts as holes; None when it is none."""
    if isinstance(node, ast.Constant):
        return node.value if isinstance(node.value, str) else None
    if isinstance(node, ast.JoinedStr):
        return "".join(_pattern(one) or HOLE for one in node.values)
    if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add):
        left, right = _pattern(node.left), _pattern(node.right)
        return None if left is None and right is None else (left or HOLE) + (right or HOLE)
    return None


@cache
def words_and_patterns(source: Path) -> tuple[frozenset[str], frozenset[str]]:
    """Every string constant of a file of server or phone, and every pattern with holes."""
    words, patterns = set(), set()
    if source.suffix == ".py":
        for node in ast.walk(ast.parse(source.read_text(encoding="utf-8"))):
            found = _pattern(node) if isinstance(node, ast.Constant | ast.JoinedStr | ast.BinOp) else None
            if found is not None:
                (patterns if HOLE in found else words).add(found)
            if isinstance(node, ast.keyword) and node.arg:
                words.add(node.arg)
    else:
        text = source.read_text(encoding="utf-8")
        words = set(STRING.findall(text)) | set(BARE_NAME.findall(text))
        patterns = {re.sub(r"\$\{[^}]*\}", HOLE, one) for one in TEMPLATE.findall(text) if "${" in one}
        patterns |= {f"{room}.{HOLE}" for room in OPTIONS_ROOM.findall(text)}
    # A pattern tells something only by the letters that stand in it.
    telling = {one for one in patterns if PART.fullmatch(one.replace(HOLE, "")) and re.search("[a-z]", one)}
    return frozenset(words), frozenset(telling)


@cache
def options_rooms() -> frozenset[str]:
    """Where the options of the phone's forms have their words."""
    return frozenset(room for source in phone_files() for room in OPTIONS_ROOM.findall(source))


def named_literally() -> set[str]:
    """Everything in the phone's sources and in the engine that has the form of a key."""
    found: set[str] = set()
    for source in phone_files():
        found |= set(STRING.findall(source))
    for path, tree in trees():
        if "engine" in path.parts:
            found |= {text for node in ast.walk(tree) for text in constants(node)}
    return {one for one in found if re.fullmatch(r"[a-z]+\.[a-z0-9_.]+", one) and not one.endswith((".", "_"))}


# Where the words come from that fill the hole of such a key, besides the file that puts the key together.
SUPPLIERS = {
    "button.": ("engine/steps", "engine/products"),
    "clock.": ("engine/steps",),
    "desk.computed_by_": ("pwa/src/state",),
    "desk.offline_": ("pwa/src/platform", "pwa/src/state"),
    "field.": ("engine",),
    "labels.warn_": ("engine/labelling",),
    "labels.words.": ("engine/core",),
    "labels.wrong_": ("pwa/src/labels",),
    "learned.": ("engine/learning",),
    "made.": ("pwa/src/products",),
    "measure.": ("engine",),
    "milestone.": ("engine/steps/cool",),
    "more.": ("engine/steps", "engine/products"),
    "needs.unlisted_": ("engine/needs",),
    "orders.differs_": ("engine/orders",),
    "paper.type_": ("pwa/src/products",),
    "photo.": ("pwa/src/state", "pwa/src/screens/record"),
    "reason.": ("engine/steps/melt",),
    "say.": ("engine/steps", "engine/products"),
    "scan.": ("pwa/src/platform",),
    "schedule.": ("engine/products", "engine/scheduling"),
    "screen.entry_": ("engine/steps", "engine/products"),
    "server.": ("cli.py", "data_commands.py", "phone_commands.py"),
    "server.data_": ("store", "services/backup.py", "services/log_file.py"),
    "settings.awake_": ("pwa/src/platform",),
    "shop.": ("pwa/src/screens/shop", "pwa/src/products"),
    "source.": ("engine",),
    "step.": ("engine/steps", "engine/products", "engine/batch"),
    "stock.differs_": ("engine/stock",),
    "stream.": ("engine/stock", "engine/orders", "engine/pack"),
    "undo.": ("engine/steps", "engine/products"),
    "warning.": ("engine/steps", "engine/products", "engine/batch", "engine/stock", "engine/orders", "engine/pack"),
    "word.": ("engine", "pwa/src/screens", "pwa/src/products"),
}
# These are said only with the codes and kinds that `named` of test_text_keys finds for them.
DERIVED = ("event.", "problem.")


@cache
def paths_of(supplier: str) -> list[Path]:
    """The source files of a folder, or the file; never none."""
    root = ROOT / supplier if supplier.startswith("pwa/") else SERVER / supplier
    found = [path for path in sources() if path == root or root in path.parents]
    assert found, f"no sources at {supplier}: name where its words come from now"
    return found


@cache
def literals() -> frozenset[str]:
    """Every string constant of server and phone."""
    return frozenset(word for path in sources() for word in words_and_patterns(path)[0])


@cache
def _scope(paths: tuple[Path, ...]) -> tuple[frozenset[str], frozenset[str]]:
    """The words and patterns of some files, also as forms write them: the points of a path as underlines."""
    words = {word for path in paths for word in words_and_patterns(path)[0]}
    patterns = {one for path in paths for one in words_and_patterns(path)[1]}
    return (
        frozenset(words | {word.replace(".", "_") for word in words}),
        frozenset(patterns | {one.replace(".", "_") for one in patterns}),
    )


@cache
def sources() -> list[Path]:
    """Every source file of server and phone."""
    return [path for path, _ in trees()] + phone_paths()


@cache
def is_said(key: str) -> bool:
    """Whether the sources name this text: as it stands, or by a pattern whose holes hold words of the right place."""
    if key in literals():
        return True
    return not key.startswith(DERIVED) and any(_puts_together(path, key) for path in sources())


def _puts_together(path: Path, key: str) -> bool:
    """Whether a file has a pattern that gives the key, filled with words of its own or of the key's suppliers."""
    patterns = [one for one in words_and_patterns(path)[1] if one[0] != HOLE and key.startswith(one.partition(HOLE)[0])]
    if not patterns:
        return False
    suppliers = [one for start, several in SUPPLIERS.items() if key.startswith(start) for one in several]
    supply = _scope((path, *(file for one in suppliers for file in paths_of(one))))
    return any(_fits(pattern, key, supply, 2) for pattern in patterns)


def _fits(pattern: str, key: str, scope: tuple[frozenset[str], frozenset[str]], deep: int) -> bool:
    before, hole, after = pattern.partition(HOLE)
    if not hole:
        return key == before
    if not key.startswith(before):
        return False
    rest = key[len(before) :]
    ends = range(len(rest) + 1)
    return any(_fits(after, rest[end:], scope, deep) and _fills(rest[:end], scope, deep - 1) for end in ends)


def _fills(part: str, scope: tuple[frozenset[str], frozenset[str]], deep: int) -> bool:
    """Whether the sources have what stands in a hole: one word, a word put together, or the steps of a path."""
    words, patterns = scope
    if part in words or (deep > 0 and any(_fits(one, part, scope, deep) for one in patterns)):
        return True
    return "." in part and all(_fills(step, scope, deep) for step in part.split("."))
