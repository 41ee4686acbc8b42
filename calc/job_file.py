"""The text of a job file, which may come from a stranger: read into data, or refused."""

import json
import re
from collections.abc import Mapping
from itertools import accumulate
from typing import Any, NoReturn

from calc.errors import Refused

MOST_BYTES = 200_000
MOST_TEXT = 300
MOST_DEEP = 20  # a job is three deep
_UNSHOWABLE = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff]")
_DATE = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_STRING_OR_BRACKET = re.compile(r'"[^"\\]*+(?:\\.[^"\\]*+)*+"?|[][{}]', re.DOTALL)
_TURNS = {"[": 1, "{": 1, "]": -1, "}": -1}


def check_size(text: str) -> None:
    """Refused if the text is too large to be a job."""
    # surrogates that stand alone have no UTF-8: they are counted here and refused later
    if len(text) > MOST_BYTES or len(text.encode("utf-8", "surrogatepass")) > MOST_BYTES:
        raise Refused("job too large", most=MOST_BYTES)


def parsed(text: str) -> Any:
    """The data of a JSON text, guarded against what a stranger may put there."""
    # Counted beforehand: in a browser deep nesting ends Python itself, it raises nothing.
    turns = (_TURNS.get(each, 0) for each in _STRING_OR_BRACKET.findall(text))
    if max(accumulate(turns), default=0) > MOST_DEEP:
        raise Refused("job too deep")
    try:
        # parse_int: an int of thousands of digits would be an error of its own kind
        return json.loads(
            text, object_pairs_hook=_object, parse_int=float, parse_constant=_no_number
        )
    except json.JSONDecodeError as broken:
        raise Refused("job not json", line=broken.lineno, column=broken.colno) from None


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for key, value in pairs:
        if key in made:
            raise Refused("job member twice", member=clipped(key))
        made[key] = value
    return made


def _no_number(text: str) -> NoReturn:
    raise Refused("job no number", text=text)


def check_members(
    data: Mapping[str, Any], wanted: tuple[str, ...], path: str = "", of: str = ""
) -> None:
    """Refused unless the data has just the members wanted."""
    for member in wanted:
        if member not in data:
            raise Refused("job member missing", of, member=path + member)
    for member in data:
        if member not in wanted:
            raise Refused("job member unknown", of, member=path + clipped(member))


def check_object(data: object, member: str, of: str = "") -> None:
    """Refused unless the data is an object."""
    if not isinstance(data, dict):
        raise Refused("job member type", of, member=member, wanted="an object in braces")


def check_text(text: object, member: str, of: str = "") -> None:
    """Refused unless the text is a short one that can be shown."""
    if not isinstance(text, str):
        raise Refused("job member type", of, member=member, wanted="text in quotes")
    if len(text) > MOST_TEXT:
        raise Refused("job text long", of, member=member, most=MOST_TEXT)
    if _UNSHOWABLE.search(text):
        raise Refused("job text unshowable", of, member=member)


def clipped(text: str) -> str:
    """A name from the file, short and clean enough for a sentence."""
    clean = _UNSHOWABLE.sub("\N{REPLACEMENT CHARACTER}", text)
    return clean if len(clean) <= 40 else f"{clean[:40]}…"


def is_date(text: str) -> bool:
    """Whether it is a day of the calendar, as 2026-11-25. (`datetime` is heavy in a browser.)"""
    found = _DATE.fullmatch(text)
    if not found:
        return False
    year, month, day = map(int, found.groups())
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    days = (31, 29 if leap else 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
    return year > 0 and 1 <= month <= 12 and 1 <= day <= days[month - 1]
