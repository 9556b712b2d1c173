"""Reads JSON as RFC 8259 means it, and refuses what would lose its meaning on the way (I-JSON, RFC 7493)."""

import json
import math
import re
from typing import Any

from amberbench.engine.core.problems import Problem

MOST_DEPTH = 40
LARGEST_WHOLE = 2**53
"""Beyond it a double, which is all a phone has, no longer tells neighbours apart."""
MOST_NAME = 60
"""Longer names are cut short in the path of a fault."""
ESCAPED = re.compile(r"\\u(?:0000|[dD][89a-fA-F])")
"""The only way to write a NUL or half of a surrogate pair in sound text: without it every string is sound."""
WRITER = json.JSONEncoder(ensure_ascii=False, allow_nan=False, separators=(",", ":"))

Place = tuple["Place", str | int] | None


def read(data: bytes | str) -> Any:
    """The document in some JSON text.

    Raises Problem: `not_json`, `duplicate_name`, `too_deep`, `not_finite`, `whole_too_large`, `broken_text`; the field
    is the path in the document, "request" for the whole of it.
    """
    try:
        text = data.decode("utf-8") if isinstance(data, bytes) else data
        document = json.loads(text, object_pairs_hook=_record)
    except RecursionError:
        raise Problem("request", "too_deep", high=MOST_DEPTH) from None
    except Problem:
        raise
    except ValueError:  # also: not UTF-8, a number of more than 4,300 digits
        raise Problem("request", "not_json") from None
    _check(document, strings=bool(ESCAPED.search(text)) or not _is_sound(text))
    return document


def write(document: Any) -> str:
    """Compact JSON; ValueError for what JSON cannot say."""
    return WRITER.encode(document)


def _record(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    record = dict(pairs)
    if len(record) < len(pairs):
        seen: set[str] = set()
        for name, _ in pairs:
            if name in seen:
                raise Problem(name[:MOST_NAME] if _is_sound(name) else "request", "duplicate_name")
            seen.add(name)
    return record


def _check(document: Any, strings: bool) -> None:
    # A place is (place of the holder, step into it): a path in words is built for a fault only.
    waiting: list[tuple[Any, Place, int]] = [([document], None, 0)]
    while waiting:
        holder, place, depth = waiting.pop()
        if depth > MOST_DEPTH:
            raise Problem(_path(place), "too_deep", high=MOST_DEPTH)
        if strings and isinstance(holder, dict) and not all(map(_is_sound, holder)):
            raise Problem(_path(place), "broken_text")
        for step, value in holder.items() if isinstance(holder, dict) else enumerate(holder):
            kind = type(value)
            if kind is dict or kind is list:
                waiting.append((value, (place, step) if depth else None, depth + 1))
            elif kind is not str or strings:
                _check_plain(value, (place, step) if depth else None)


def _path(place: Place) -> str:
    steps: list[str] = []
    while place is not None:
        place, step = place
        steps.append(f"[{step}]" if isinstance(step, int) else f".{step[:MOST_NAME]}")
    return "".join(reversed(steps)).removeprefix(".") or "request"


def _check_plain(value: Any, place: Place) -> None:
    if isinstance(value, str) and not _is_sound(value):
        raise Problem(_path(place), "broken_text")
    if isinstance(value, float) and not math.isfinite(value):
        raise Problem(_path(place), "not_finite", str(value))
    if type(value) is int and abs(value) > LARGEST_WHOLE:
        raise Problem(_path(place), "whole_too_large", high=LARGEST_WHOLE)


def _is_sound(text: str) -> bool:
    """Whether it holds no half of a surrogate pair, which no UTF-8 can carry, and no NUL, which PostgreSQL cannot."""
    if "\0" in text:
        return False
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True
