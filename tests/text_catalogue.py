"""The texts of a language, as they lie on the disk."""

import json
import re
from functools import cache
from pathlib import Path
from typing import Any

from amberbench import text

FOLDER = Path(text.__file__).parent
Sentence = str | dict[str, str]


def files(language: str) -> dict[str, dict[str, Sentence]]:
    """File name → its texts."""
    return {path.name: json.loads(path.read_text(encoding="utf-8")) for path in (FOLDER / language).glob("*.json")}


@cache
def own_texts(language: str) -> dict[str, Any]:
    """The texts of a language's own catalogue by their keys; of a variant what its words leave wrong."""
    return {key: sentence for file in files(language).values() for key, sentence in file.items()}


@cache
def texts(language: str) -> dict[str, Any]:
    """Every text of a language by its key, as its reader gets them."""
    return text.catalogue(language)


def forms(sentence: Sentence) -> list[str]:
    """A sentence, or each of its plural forms."""
    return [sentence] if isinstance(sentence, str) else list(sentence.values())


def placeholders(form: str) -> set[str]:
    """The names in braces."""
    return set(re.findall(r"\{(\w+)\}", form))


def bare(form: str) -> str:
    """A form without its placeholders."""
    return re.sub(r"\{\w+\}", "", form)


def twice(source: str) -> list[str]:
    """The keys that stand twice in one record of a JSON text; a reader keeps only the last of them."""
    found: list[str] = []

    def seen(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        keys = [key for key, _ in pairs]
        found.extend(sorted({key for key in keys if keys.count(key) > 1}))
        return dict(pairs)

    json.loads(source, object_pairs_hook=seen)
    return sorted(found)
