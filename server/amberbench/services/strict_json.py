"""Reads JSON as RFC 8259 means it, and refuses what would lose its meaning on the way (I-JSON, RFC 7493)."""

import json
import math
from typing import Any

from amberbench.engine.problems import Problem

MOST_DEPTH = 40
LARGEST_WHOLE = 2**53
"""Beyond it a double, which is all a phone has, no longer tells neighbours apart."""
MOST_NAME = 60
"""Longer names are cut short in the path of a fault."""

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
    _check(document)
    return document


def write(document: Any) -> str:
    """Compact JSON; ValueError for what JSON cannot say."""
    return json.dumps(document, ensure_ascii=False, allow_nan=False, separators=(",", ":"))


def _record(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    record = dict(pairs)
    if len(record) < len(pairs):
        seen: set[str] = set()
        for name, _ in pairs:
            if name in seen:
                raise Problem(name[:MOST_NAME] if _is_sound(name) else "request", "duplicate_name")
            seen.add(name)
    return record


def _check(document: Any) -> None:
    # A place is (place of the holder, step into it): a path in words is built for a fault only.
    waiting: list[tuple[Any, Place, int]] = [(document, None, 1)]
    while waiting:
        value, place, depth = waiting.pop()
        if depth > MOST_DEPTH:
            raise Problem(_path(place), "too_deep", high=MOST_DEPTH)
        if isinstance(value, dict):
            for name in value:
                if not _is_sound(name):
                    raise Problem(_path(place), "broken_text")
            waiting += [(inner, (place, name), depth + 1) for name, inner in value.items()]
        elif isinstance(value, list):
            waiting += [(inner, (place, index), depth + 1) for index, inner in enumerate(value)]
        else:
            _check_plain(value, place)


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
