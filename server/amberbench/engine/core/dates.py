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


def days(text: str) -> int:
    """Days since 1900-01-01 of a day of the calendar."""
    year, month = int(text[:4]), int(text[5:7])
    leap = (year - 1) // 4 - (year - 1) // 100 + (year - 1) // 400 - 460
    return 365 * (year - 1900) + leap + sum(days_in(year, one) for one in range(1, month)) + int(text[8:]) - 1
