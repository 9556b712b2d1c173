"""Days as "YYYY-MM-DD" (ISO 8601, the calendar of every label)."""

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
DIGITS = "0123456789"
MONTH_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


def is_day(text: str) -> bool:
    """Whether a text is a day of the calendar, from the year 1900 to 2199."""
    parts = text.split("-")
    if [len(part) for part in parts] != [4, 2, 2] or [one for part in parts for one in part if one not in DIGITS]:
        return False
    year, month, day = [int(part) for part in parts]
    return 1900 <= year <= 2199 and 1 <= month <= 12 and 1 <= day <= days_in(year, month)


def days_in(year: int, month: int) -> int:
    """How many days a month has."""
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    return 29 if month == 2 and leap else MONTH_DAYS[month - 1]
