"""What DEVELOPERS.md says of the tree is so."""

import re
from pathlib import Path

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
LONGEST = 200
# Where a path in the text may begin.
BASES = ("", "server/amberbench", "server/amberbench/engine", "pwa/src", "pwa", "tests", "e2e")
PATH = re.compile(r"`([a-z][\w./-]*(?:/[\w.-]+|\.(?:py|ts|tsx|json|conf|md)))`")


def stands(path):
    """Whether a path is there: from one of the bases, or as a file's name that several rooms have."""
    if "/" not in path:
        return any(any((ROOT / folder).rglob(path)) for folder in ("server/amberbench", "pwa/src", "pwa/build", "e2e"))
    return any((ROOT / base / path).exists() for base in BASES)


def test_no_row_is_longer_than_a_screen():
    assert [row[:60] for row in TEXT.splitlines() if len(row) > LONGEST] == []


def test_every_path_it_names_is_there():
    named = sorted({path for path in PATH.findall(TEXT) if not path.startswith(("api/", ".venv/"))})
    assert len(named) > 20
    assert [path for path in named if not stands(path)] == []


def test_every_verb_it_names_is_one_of_the_makefile():
    verbs = set(re.findall(r"^([a-z]+):", (ROOT / "Makefile").read_text(encoding="utf-8"), re.MULTILINE))
    named = set(re.findall(r"`make ([a-z]+)", TEXT))
    assert len(named) > 5
    assert named <= verbs


def test_the_glossary_says_each_word_once():
    glossary = TEXT.split("## Glossary")[1].split("\n## ")[0]
    words = [
        word.strip() for row in re.findall(r"^\| ([^|]+) \|", glossary, re.MULTILINE)[2:] for word in row.split(",")
    ]
    assert len(words) > 40
    assert sorted(words) == sorted(set(words))
