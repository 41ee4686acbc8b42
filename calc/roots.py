"""Narrowing down a point on a line: by halves, by the golden ratio, by Brent's method."""

from collections.abc import Callable
from math import copysign, sqrt
from sys import float_info
from typing import NamedTuple

HALVINGS = 60  # narrow a cell to rounding
GOLDEN, NARROWINGS = (sqrt(5) - 1) / 2, 75  # as far, by the golden ratio


def last(holds: Callable[[float], bool], inside: float, outside: float) -> float:
    """The last point on the way from inside to outside at which something still holds."""
    for _ in range(HALVINGS):
        middle = (inside + outside) / 2
        if holds(middle):
            inside = middle
        else:
            outside = middle
    return inside


def lowest(function: Callable[[float], float], a: float, b: float) -> float:
    """Where a function with one dip between a and b is lowest: golden section search."""
    left, right = b - GOLDEN * (b - a), a + GOLDEN * (b - a)
    for _ in range(NARROWINGS):
        if function(left) <= function(right):
            b, right = right, left
            left = b - GOLDEN * (b - a)
        else:
            a, left = left, right
            right = a + GOLDEN * (b - a)
    return min(left, right, key=function)


class _Point(NamedTuple):
    x: float
    y: float


def bracket(function: Callable[[float], float], low: float, high: float) -> tuple[float, float]:
    """Two points next to each other between which the sign changes, the better one first.

    low, high -- with opposite signs there

    Source: [brent-1973] chapter 4.
    """
    a, b = _Point(low, function(low)), _Point(high, function(high))
    c, step, before = a, high - low, high - low
    while True:
        if (b.y > 0) == (c.y > 0):
            c = a
            step = before = b.x - a.x
        if abs(c.y) < abs(b.y):
            a, b, c = b, c, b
        least = float_info.epsilon * abs(b.x) + float_info.epsilon**2 * (high - low)
        half = (c.x - b.x) / 2
        if b.y == 0 or abs(half) <= least:
            return b.x, c.x
        step, before = _step(a, b, c, least, step, before)
        x = b.x + (step if abs(step) > least else copysign(least, half))
        a, b = b, _Point(x, function(x))


def _step(
    a: _Point, b: _Point, c: _Point, least: float, step: float, before: float
) -> tuple[float, float]:
    """The next step from b and the one before it: interpolated if it can be trusted, else
    half of the bracket from b to c."""
    half = (c.x - b.x) / 2
    if abs(before) < least or abs(a.y) <= abs(b.y):
        return half, half
    s = b.y / a.y
    if a.x == c.x:
        p, q = 2 * half * s, 1 - s
    else:
        q, r = a.y / c.y, b.y / c.y
        p = s * (2 * half * q * (q - r) - (b.x - a.x) * (r - 1))
        q = (q - 1) * (r - 1) * (s - 1)
    p, q = abs(p), -q if p > 0 else q
    if 2 * p < min(3 * half * q - abs(least * q), abs(before * q)):
        return p / q, step
    return half, half
