"""The numbers that look like chance: published figures, and JavaScript's arithmetic."""

import json
import subprocess
from itertools import pairwise

import pytest

from calc.coursework.deck import VARIANTS, Hand, card, hashed, mixed, place, seat

# Written from the description of both, for JavaScript's 32-bit integers.
SCRIPT = """
const hashed = text => new TextEncoder().encode(text)
  .reduce((hash, byte) => Math.imul(hash ^ byte, 0x01000193) >>> 0, 0x811c9dc5);
const mixed = seed => {
  let t = (seed + 0x6d2b79f5) | 0;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return (t ^ (t >>> 14)) >>> 0;
};
const seat = (section, learner) => mixed(hashed(`${section}|${learner}`)) % 400 + 1;
"""


def in_node(expression: str) -> object:
    script = f"{SCRIPT} console.log(JSON.stringify({expression}))"
    done = subprocess.run(["node", "-"], input=script, check=True, capture_output=True, text=True)
    return json.loads(done.stdout)


@pytest.mark.parametrize(
    ("text", "value"),
    [("", 0x811C9DC5), ("a", 0xE40C292C), ("foobar", 0xBF9CF968)],
)
def test_hash_of_published_texts(text: str, value: int) -> None:
    """RFC 9923: the test vectors for FNV-1a of 32 bits, as programs print them."""
    assert hashed(text) == value


def test_the_same_in_javascript() -> None:
    """Node's Math.imul: ten thousand hashes and draws, letters outside ASCII among them."""
    texts = [f"Montag|Müller-{number}|水" for number in range(10_000)]
    assert in_node(f"{json.dumps(texts)}.map(text => mixed(hashed(text)))") == [
        mixed(hashed(text)) for text in texts
    ]
    learners = ["1017", "Ø-7", "", "\N{DROPLET}"]
    assert in_node(f"{json.dumps(learners)}.map(each => seat('A', each))") == [
        seat("A", each) for each in learners
    ]


@pytest.mark.parametrize("size", [1, 2, 7, 400, 1009, 4096])
def test_a_deck_holds_every_card_once(size: int) -> None:
    """By reason: a shuffle loses no card and makes none."""
    deck = [card("seed", size, position) for position in range(size)]
    assert sorted(deck) == list(range(size))


def test_a_deck_is_shuffled() -> None:
    """Chance: of a thousand neighbours some three lie within one of each other; other seed, other
    deck."""
    deck = [card("seed", 1000, position) for position in range(1000)]
    assert sum(abs(one - other) <= 1 for one, other in pairwise(deck)) < 15
    other = [card("seed2", 1000, position) for position in range(1000)]
    assert sum(one == two for one, two in zip(deck, other, strict=True)) < 15


def test_seats_are_spread_and_rows_differ() -> None:
    """Chance: 4000 seats over 400 variants leave about nobody's empty (e^-10 each). Rows: none
    twice."""
    seats = {seat("Monday", str(1000 + number)) for number in range(4000)}
    assert len(seats) > VARIANTS - 5
    assert seats <= set(range(1, VARIANTS + 1))
    assert len({place("Monday", row) for row in range(VARIANTS)}) == VARIANTS


def test_a_hand_deals_orders() -> None:
    """Arithmetic: 4 · 3 cards give the twelve orders of two out of four."""
    orders = {tuple(Hand(number).order(4, 2)) for number in range(12)}
    assert len(orders) == 12
    assert all(one != other for one, other in orders)
