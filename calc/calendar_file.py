"""Days to come back on, as a file that a calendar takes in: iCalendar, RFC 5545."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from calc.days import day_number

MOST_OCTETS = 75  # of a line, RFC 5545 section 3.1
# FNV-1a of 128 bits: offset basis and prime of the IETF draft by Fowler, Noll, Vo and Eastlake
_BASIS, _PRIME = 0x6C62272E07BB014262B821756295C58D, 0x0000000001000000000000000000013B


class Event(NamedTuple):
    """One whole day.

    key   -- what it is about: the same key replaces an earlier event in the calendar
    since -- day of the visit that found it, as 2026-11-25: the later visit prevails
    """

    key: str
    day: str
    title: str
    says: str
    since: str


def calendar_file(events: Iterable[Event], stamp: str) -> str:
    """The text of an iCalendar file. `stamp` is now in UTC, as 2026-11-25T10:04:00Z."""
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Pail and Timer//Service dates//EN"]
    lines += ["CALSCALE:GREGORIAN", "METHOD:PUBLISH"]
    lines += [line for event in events for line in _event(event, _basic(stamp))]
    return "".join(f"{folded(line)}\r\n" for line in [*lines, "END:VCALENDAR"])


def _event(event: Event, stamp: str) -> Iterator[str]:
    yield "BEGIN:VEVENT"
    yield f"UID:{uid(event.key)}"
    yield f"DTSTAMP:{stamp}"
    yield f"SEQUENCE:{max(0, day_number(event.since) - day_number('2000-01-01'))}"
    yield f"DTSTART;VALUE=DATE:{_basic(event.day)}"
    yield f"SUMMARY:{escaped(event.title)}"
    yield f"DESCRIPTION:{escaped(event.says)}"
    yield "TRANSP:TRANSPARENT"  # it fills a day, but nobody is busy all of it
    yield "END:VEVENT"


def _basic(text: str) -> str:
    return text.replace("-", "").replace(":", "")


def escaped(text: str) -> str:
    """`text` as a TEXT value, section 3.3.11. Control characters have no way of being written."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    for sign in ("\\", ";", ","):
        text = text.replace(sign, f"\\{sign}")
    text = text.replace("\n", "\\n")
    return "".join(each for each in text if each == "\t" or each.isprintable())


def folded(line: str) -> str:
    """The line, broken after at most 75 octets, never within a character; section 3.1."""
    pieces, room = [""], MOST_OCTETS
    for each in line:
        size = len(each.encode())
        if size > room:
            pieces.append("")
            room = MOST_OCTETS - 1  # the space before it counts
        pieces[-1] += each
        room -= size
    return "\r\n ".join(pieces)


def uid(key: str) -> str:
    """A name that no other event in the world has, the same for the same key: a UUID, RFC 9562.

    Version 8, whose bits are the maker's own; here a hash of the key.
    """
    value = _BASIS
    for octet in key.encode():
        value = ((value ^ octet) * _PRIME) % 2**128
    value = value & ~(0xF << 76) | 8 << 76
    value = value & ~(0x3 << 62) | 2 << 62
    text = f"{value:032x}"
    return "-".join((text[:8], text[8:12], text[12:16], text[16:20], text[20:]))
