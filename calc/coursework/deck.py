"""Numbers that look drawn by chance and are the same everywhere: 32-bit integers, nothing else.

The variants of a problem are cards of one shuffled deck, so that no two are alike and each can
be dealt without dealing those before it.
"""

from math import isqrt

VARIANTS = 400  # what a problem must have; a sheet's number runs from 1 to this
ROUNDS = 4
_ALL = 0xFFFFFFFF


def hashed(text: str) -> int:
    """FNV-1a over the UTF-8 bytes of `text`, 32 bits.

    >>> f"{hashed('foobar'):08x}"
    'bf9cf968'

    Source: L. Noll, K. Vo, D. Eastlake and T. Hansen, The FNV Non-Cryptographic Hash Algorithm,
    RFC 9923, 2026; its vector as a program prints it that tests itself by the draft.
    """
    value = 0x811C9DC5
    for byte in text.encode():
        value = (value ^ byte) * 0x01000193 & _ALL
    return value


def mixed(seed: int) -> int:
    """The first number that the generator mulberry32 (from memory) draws from a seed, 32 bits.

    FNV-1a alone is too even over names that differ in a last digit: what is dealt by it
    modulo 400 repeats less than chance would. JavaScript's Math.imul does the same.
    """
    value = (seed + 0x6D2B79F5) & _ALL
    value = (value ^ value >> 15) * (value | 1) & _ALL
    value ^= (value + ((value ^ value >> 7) * (value | 61) & _ALL)) & _ALL
    return (value ^ value >> 14) & _ALL


def seat(section: str, learner: str) -> int:
    """The variant that a learner of a section is dealt, 1 to 400. Two may have the same."""
    return mixed(hashed(f"{section}|{learner}")) % VARIANTS + 1


def place(section: str, row: int) -> int:
    """The variant of the row-th on a class list, 1 to 400. No two of 400 have the same."""
    return (mixed(hashed(section)) + row) % VARIANTS + 1


def card(seed: str, size: int, position: int) -> int:
    """The card at a position, 0 to `size` - 1, of a deck of that size shuffled by the seed.

    A Feistel network over the next square, walked until it comes back into the deck: every
    card turns up once.
    """
    side = isqrt(size - 1) + 1
    keys = [mixed(hashed(f"{seed}|{turn}")) for turn in range(ROUNDS)]
    at = position
    while True:
        left, right = divmod(at, side)
        for key in keys:
            left, right = right, (left + mixed(key ^ right)) % side
        at = left * side + right
        if at < size:
            return at


class Hand:
    """A card taken apart: each `pick` takes one of so many from it."""

    def __init__(self, card: int) -> None:
        self._left = card

    def pick(self, many: int) -> int:
        """0 to `many` - 1."""
        self._left, picked = divmod(self._left, many)
        return picked

    def order(self, many: int, length: int) -> list[int]:
        """`length` different numbers below `many`, in an order."""
        rest = list(range(many))
        return [rest.pop(self.pick(len(rest))) for _ in range(length)]
