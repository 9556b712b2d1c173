"""Which text keys the sources name: as they stand, or put together from a pattern and words that stand in them."""

import ast
import re
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[1]
SERVER = ROOT / "server/amberbench"
PHONE = ROOT / "pwa/src"
HOLE = "\0"
STRING = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
TEMPLATE = re.compile(r"`([^`]*)`")
# A form names the room its options have their words in: words: "allergen", choice("bottom", […], "shop.below").
OPTIONS_ROOM = re.compile(r'(?:\bwords: |\bchoice\([^()]*, )"([a-z.]+)"')
BARE_NAME = re.compile(r"\b([a-z][a-z0-9_]*):")
PART = re.compile(r"[a-z0-9_.]*")


def trees() -> list[tuple[Path, ast.Module]]:
    """Every file of the server that may name a text, parsed."""
    files = [path for path in sorted(SERVER.rglob("*.py")) if path.parent.name != "text"]
    return [(path, ast.parse(path.read_text(encoding="utf-8"))) for path in files]


def phone_files() -> list[str]:
    """The phone's sources without its tests."""
    generated = PHONE / "engine" / "types.ts"
    files = [path for path in sorted(PHONE.rglob("*.ts*")) if ".test." not in path.name and path != generated]
    return [path.read_text(encoding="utf-8") for path in files]


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
def words_and_patterns() -> tuple[frozenset[str], frozenset[str]]:
    """Every string constant of server and phone, and every pattern with holes."""
    words, patterns = set(), set()
    for _, tree in trees():
        for node in ast.walk(tree):
            found = _pattern(node) if isinstance(node, ast.Constant | ast.JoinedStr | ast.BinOp) else None
            if found is not None:
                (patterns if HOLE in found else words).add(found)
            if isinstance(node, ast.keyword) and node.arg:
                words.add(node.arg)
    for source in phone_files():
        words |= set(STRING.findall(source)) | set(BARE_NAME.findall(source))
        patterns |= {re.sub(r"\$\{[^}]*\}", HOLE, one) for one in TEMPLATE.findall(source) if "${" in one}
    patterns |= {f"{room}.{HOLE}" for room in options_rooms()}
    # A form writes the points of a path as underlines.
    words |= {word.replace(".", "_") for word in words}
    patterns |= {one.replace(".", "_") for one in patterns}
    # WARNING is `signal.warning`; the last part of "melt.dead_s" names the field wherever it stands.
    words |= {word.lower() for word in words if word.isupper()}
    words |= {word.rsplit(".", 1)[1] for word in words if re.fullmatch(r"[a-z]+\.[a-z0-9_]+", word)}
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


@cache
def is_said(key: str, deep: int = 2) -> bool:
    """Whether the sources name this text, as it stands or by a pattern whose holes hold words they have."""
    words, patterns = words_and_patterns()
    if key in words or re.fullmatch(r"[1-5]\d\d", key):  # or a status of HTTP
        return True
    return deep > 0 and any(_fits(pattern, key, deep) for pattern in patterns)


def _fits(pattern: str, key: str, deep: int) -> bool:
    before, hole, after = pattern.partition(HOLE)
    if not hole:
        return key == before
    if not key.startswith(before):
        return False
    rest = key[len(before) :]
    return any(_fits(after, rest[end:], deep) and _fills(rest[:end], deep - 1) for end in range(len(rest) + 1))


def _fills(part: str, deep: int) -> bool:
    """Whether the sources have what stands in a hole: one word, or the steps of a path."""
    return is_said(part, deep) or ("." in part and all(is_said(step, deep) for step in part.split(".")))
