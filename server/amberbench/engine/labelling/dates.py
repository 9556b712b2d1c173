"""Lot codes and best-by dates."""

from ..core import dates
from ..core.dates import days_in, is_day
from ..core.problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document, Readable

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def parsed(text: str, field: str) -> tuple[int, int, int]:
    """Year, month and day of "YYYY-MM-DD". Raises Problem not_a_day."""
    if not is_day(text):
        raise Problem(field, "not_a_day", text)
    return int(text[:4]), int(text[5:7]), int(text[8:])


def day_of_year(year: int, month: int, day: int) -> int:
    """1 for 1 January."""
    return sum(days_in(year, one) for one in range(1, month)) + day


def days(text: str, field: str = "date") -> int:
    """Days since 1900-01-01. Raises Problem not_a_day."""
    parsed(text, field)
    return dates.days(text)


def later(text: str, count: int, field: str = "date") -> str:
    """The date so many days later. Raises Problem not_a_day."""
    year, month, day = parsed(text, field)
    day += count
    while day > days_in(year, month):
        day -= days_in(year, month)
        month += 1
        if month > 12:
            year, month = year + 1, 1
    return _padded(year, 4) + "-" + _padded(month, 2) + "-" + _padded(day, 2)


def _padded(value: int, width: int) -> str:
    text = str(value)
    return "0" * (width - len(text)) + text


def lot_code(request: "Readable") -> "Document":
    """The lot code of what is packed on a day, the first by the shop's pattern that is not in use yet.

    Request: made_on (YYYY-MM-DD), pattern (YYYY, YY or Y for the year, DDD for the day of the year, MM, DD, and A for
    the letter that tells lots of one day apart, or L where there is no A; anything else stands as it is), used (codes
    that are taken).
    Reply: code.
    Raises: Problem not_a_day (made_on), pattern_tells_nothing (pattern: without a day or a letter), codes_used_up
    (used: all letters of that day are taken).
    Relation: ordinal date of ISO 8601. A one-digit year comes again after ten years.
    Example: 2026-02-09 by YYYY-DDD-A is 2026-040-A.
    Source: iso_8601 for the ordinal date; practice for the letter.
    """
    year, month, day = parsed(request["made_on"], "made_on")
    pattern = request["pattern"]
    letter_name = "A" if "A" in pattern else "L"
    if letter_name not in pattern or not ("DDD" in pattern or ("MM" in pattern and "DD" in pattern)):
        raise Problem("pattern", "pattern_tells_nothing", pattern)
    known = (
        ("YYYY", str(year)), ("YY", str(year)[2:]), ("Y", str(year)[3:]),
        ("DDD", _padded(day_of_year(year, month, day), 3)), ("MM", _padded(month, 2)), ("DD", _padded(day, 2)),
    )  # fmt: skip
    for letter in LETTERS:
        code = _filled(pattern, known + ((letter_name, letter),))
        if code not in request["used"]:
            return {"code": code}
    raise Problem("used", "codes_used_up", request["made_on"])


def _filled(pattern: str, known: "tuple[tuple[str, str], ...]") -> str:
    text, at = "", 0
    while at < len(pattern):
        for name, value in known:
            if pattern[at : at + len(name)] == name:
                text, at = text + value, at + len(name)
                break
        else:
            text, at = text + pattern[at], at + 1
    return text


def best_by(request: "Readable") -> "Document":
    """Best by: the shelf life of the box from the day it was made, but no later than anything that went in.

    Request: made_on (YYYY-MM-DD), shelf_days (days), parts (name, best_by: YYYY-MM-DD or null).
    Reply: best_by (YYYY-MM-DD), because (the part that ends first; null: the shelf life), days (from made_on).
    Raises: Problem not_a_day (made_on, or best_by of a part), best_by_before_made (a part whose day
    is over by then).
    Relation: the earliest of all.
    Source: practice; the shelf life itself is the shop's, from its own tests or its supplier's word.
    """
    made = days(request["made_on"], "made_on")
    ends, because = made + request["shelf_days"], None
    for index, part in enumerate(request["parts"]):
        if part["best_by"] is not None:
            field = "parts[" + str(index) + "].best_by"
            last = days(part["best_by"], field)
            if last < made:
                raise Problem(field, "best_by_before_made", part["best_by"], accepted=[request["made_on"]])
            if last < ends:
                ends, because = last, part["name"]
    return {"best_by": later(request["made_on"], ends - made), "because": because, "days": ends - made}
