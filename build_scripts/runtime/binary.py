"""A WebAssembly binary: what it imports, and the same with fewer exports.

As WebAssembly Core Specification 2.0, chapter 5 (binary format), writes it.
"""

from collections.abc import Iterator

HEAD = 8  # bytes: magic number and version
IMPORTS, EXPORTS = 2, 7  # numbers of sections
FUNCTION, TABLE, MEMORY, GLOBAL, TAG = range(5)


def imported(content: bytes) -> set[str]:
    """Names of all that the binary imports, from whatever module."""
    section = next(inside for number, _, inside in sections(content) if number == IMPORTS)
    count, at = number_at(section, 0)
    names = set()
    for _ in range(count):
        _, at = name_at(section, at)
        name, at = name_at(section, at)
        names.add(name)
        at = _after_type(section, at)
    return names


def exporting(content: bytes, kept: set[str]) -> bytes:
    """The binary with those of its exports whose names are in `kept`."""
    parts = [content[:HEAD]]
    for number, whole, inside in sections(content):
        parts.append(_fewer(inside, kept) if number == EXPORTS else whole)
    return b"".join(parts)


def _fewer(section: bytes, kept: set[str]) -> bytes:
    entries = [entry for name, entry in exports(section) if name in kept]
    inside = written(len(entries)) + b"".join(entries)
    return bytes([EXPORTS]) + written(len(inside)) + inside


def exports(section: bytes) -> Iterator[tuple[str, bytes]]:
    count, at = number_at(section, 0)
    for _ in range(count):
        start = at
        name, at = name_at(section, at)
        _, at = number_at(section, at + 1)
        yield name, section[start:at]


def sections(content: bytes) -> Iterator[tuple[int, bytes, bytes]]:
    """Number of each section, the whole of it, and what is inside."""
    at = HEAD
    while at < len(content):
        size, inside = number_at(content, at + 1)
        end = inside + size
        yield content[at], content[at:end], content[inside:end]
        at = end


def name_at(content: bytes, at: int) -> tuple[str, int]:
    size, at = number_at(content, at)
    return content[at : at + size].decode(), at + size


def number_at(content: bytes, at: int) -> tuple[int, int]:
    """An unsigned number in LEB128, and where it ends."""
    value = shift = 0
    while True:
        byte = content[at]
        at += 1
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            return value, at


def written(value: int) -> bytes:
    """An unsigned number in LEB128."""
    parts = bytearray()
    while value >= 0x80:
        parts.append(value & 0x7F | 0x80)
        value >>= 7
    parts.append(value)
    return bytes(parts)


def _after_type(content: bytes, at: int) -> int:
    """Where the kind and type of an import end."""
    kind, at = content[at], at + 1
    if kind == GLOBAL:
        return at + 2  # type of value, and whether it may change
    if kind in (FUNCTION, TABLE, TAG):
        at += kind != FUNCTION  # type of element, or a tag's attribute
    if kind in (TABLE, MEMORY):
        limits, at = content[at], at + 1
        at = number_at(content, at)[1]
        return number_at(content, at)[1] if limits & 1 else at
    return number_at(content, at)[1]
