"""Days of the calendar, counted. (`datetime` is heavy in a browser.)"""

# Days before 1 March of the year 0 are not asked for; 0 is that day, so that a leap day is the
# last of its year.
_ERA = 146_097  # days in 400 years


def day_number(text: str) -> int:
    """The number of a day written as 2026-11-25, one more with each day.

    >>> day_number("2026-03-01") - day_number("2026-02-28")
    1

    Source: the Gregorian calendar, ISO 8601; the formula by counting from 1 March.
    """
    year, month, day = map(int, text.split("-"))
    year, month = (year, month - 3) if month > 2 else (year - 1, month + 9)
    return 365 * year + year // 4 - year // 100 + year // 400 + (153 * month + 2) // 5 + day - 1


def day_text(number: int) -> str:
    """The day of that number, as 2026-11-25; the other way round of `day_number`.

    >>> day_text(day_number("2028-02-28") + 1)
    '2028-02-29'
    """
    era, left = divmod(number, _ERA)
    year = (left - left // 1460 + left // 36_524 - left // (_ERA - 1)) // 365
    left -= 365 * year + year // 4 - year // 100
    month = (5 * left + 2) // 153
    day = left - (153 * month + 2) // 5 + 1
    year += 400 * era
    year, month = (year, month + 3) if month < 10 else (year + 1, month - 9)
    return f"{year:04d}-{month:02d}-{day:02d}"
