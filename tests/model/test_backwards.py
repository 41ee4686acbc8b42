"""`backwards`: solutions against closed forms and a reference library, and what is none."""

from collections.abc import Callable
from itertools import pairwise
from math import (
    cbrt,
    ceil,
    copysign,
    exp,
    inf,
    isfinite,
    log,
    nan,
    nextafter,
    pi,
    prod,
    sin,
    sqrt,
    tan,
    tanh,
    ulp,
)

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from calc.backwards import CELLS, Found, solutions
from calc.errors import Refused
from tests.model.given import steady

type Function = Callable[[float], float | None]


def root(found: Found) -> float:
    """The only solution there is."""
    assert (found.how_many, len(found.roots), found.stretches) == ("one", 1, ())
    return found.roots[0]


def assert_none(found: Found) -> None:
    assert (found.how_many, found.roots, found.stretches) == ("none", (), ())


# no two in one cell of 1/128, and none far enough from the rest to make the slopes vanish
apart = st.lists(st.integers(1, 24), min_size=1, max_size=5, unique=True).map(
    lambda places: [(place + 0.3) / 25 for place in sorted(places)]
)


@settings(steady)
@given(apart, st.sampled_from([0.0, 1.0, -1.0]))
def test_polynomials(roots: list[float], target: float) -> None:
    """Against the roots they were made of, and scipy's brentq between every two of them."""

    def polynomial(x: float) -> float:
        return prod(25 * (x - root) for root in roots) + target

    found = solutions(polynomial, target, 0.0, 1.0)
    assert found.roots == pytest.approx(roots, rel=1e-12)
    assert not found.touched
    for one in found.roots:
        other = brentq(lambda x: polynomial(x) - target, one - 0.02, one + 0.02, xtol=1e-15)
        assert one == pytest.approx(other, rel=1e-12)


@settings(steady)
@given(st.floats(0.1, 9.9), st.floats(-2, 2).filter(lambda rate: abs(rate) > 0.01))
def test_exponentials(place: float, rate: float) -> None:
    """Against the logarithm and scipy's brentq."""
    target = 3 * exp(rate * place)
    one = root(solutions(lambda x: 3 * exp(rate * x), target, 0.0, 10.0))
    other = brentq(lambda x: 3 * exp(rate * x) - target, 0.0, 10.0, xtol=1e-15)
    assert one == pytest.approx(log(target / 3) / rate, rel=1e-11)
    assert one == pytest.approx(other, rel=1e-11)


@settings(steady)
@given(st.floats(1e-6, 1e6))
def test_square_roots_over_decades(place: float) -> None:
    """Against the square, to the last digits."""
    target = sqrt(place)
    one = root(solutions(sqrt, target, 1e-7, 1e7))
    assert abs(one - target**2) <= 4 * ulp(place)


RISING: list[Function] = [
    lambda x: x**3 + x,
    lambda x: x / (1 + x),
    lambda x: log(x) if x > 0 else None,
    lambda x: 5 - 2 / x if x else None,
    lambda x: min(x, 3.0) + x / 50,
    lambda x: x**1.852,
]


@settings(steady)
@given(st.sampled_from(RISING), st.floats(0.01, 20.0))
def test_round_trip(function: Function, place: float) -> None:
    """By reason: what is solved for gives the answer that was asked for."""
    target = function(place)
    assert target is not None
    one = root(solutions(function, target, 0.0, 20.0))
    assert function(one) == pytest.approx(target, rel=1e-14, abs=1e-14)
    assert one == pytest.approx(place, rel=1e-12)


def test_full_precision() -> None:
    """Against roots known to the last digit."""
    assert abs(root(solutions(lambda x: x * x, 2.0, 0.0, 10.0)) - sqrt(2)) <= 2 * ulp(1.0)
    assert abs(root(solutions(cbrt, 0.1, -1.0, 3.0)) - 0.001) <= 8 * ulp(0.001)
    one = root(solutions(lambda x: exp(9 * x), 1e20, 0.0, 10.0))
    beside = (nextafter(one, 0), nextafter(one, 9))
    assert all(abs(exp(9 * one) - 1e20) <= abs(exp(9 * x) - 1e20) for x in beside)
    assert abs(root(solutions(lambda x: x**3, 0.0, -1.0, pi))) < 1e-30


def test_many_crossings() -> None:
    """Against the arcsine: sin x = 1/2 at pi/6 and 5 pi/6 in each of eight turns."""
    expected = sorted(first + 2 * pi * turn for turn in range(8) for first in (pi / 6, 5 * pi / 6))
    found = solutions(sin, 0.5, 0.0, 16 * pi)
    assert found.roots == pytest.approx(expected, rel=1e-14)
    assert found.how_many == "several"


def test_two_in_one_cell() -> None:
    """By algebra: 1 ± 1/1000, while a cell is 1/40 wide."""
    found = solutions(lambda x: (x - 1) ** 2 + 3, 3 + 1e-6, 0.0, pi)
    assert found.roots == pytest.approx((0.999, 1.001), abs=1e-9)
    assert not found.touched


def test_one_on_the_grid_and_one_beside_it() -> None:
    """By algebra: 1 is on the grid of cells 1/64 wide, 1.005 in the cell after it."""
    found = solutions(lambda x: (x - 1) * (x - 1.005), 0.0, 0.0, CELLS / 64)
    assert found.roots == pytest.approx((1.0, 1.005), rel=1e-12)
    assert not found.touched


def test_two_close_ones_in_a_low_decade() -> None:
    """By algebra: at 2e-4 and 3e-4 of a range up to 1e6, which equal steps would pass over."""
    found = solutions(lambda x: (log(x) - log(2e-4)) * (log(x) - log(3e-4)), 0.0, 1e-6, 1e6)
    assert found.roots == pytest.approx((2e-4, 3e-4), rel=1e-12)


@pytest.mark.parametrize("end", [0.0, 10.0])
@pytest.mark.parametrize("slope", [3, -3])
def test_a_solution_at_an_end(end: float, slope: float) -> None:
    """By reason: the ends belong to the range. Whether the answer turns there is not known."""
    found = solutions(lambda x: slope * x, slope * end, 0.0, 10.0)
    assert root(found) == end
    assert not found.touched


def test_a_solution_on_both_grids() -> None:
    """By reason: 7 is 16/128 of the way from 1 to 49 and its square root, but for rounding."""
    assert root(solutions(lambda x: x, 7.0, 1.0, 49.0)) == pytest.approx(7.0, rel=1e-15)


TOUCHES: dict[str, tuple[Function, float, float]] = {
    "parabola": (lambda x: (x - 1) ** 2 + 3, 3.0, 1.0),
    "rounded": (lambda x: x * x - 2 * x + 4, 3.0, 1.0),  # so that it crosses, or never comes near
    "quartic": (lambda x: -((x - 2) ** 4), 0.0, 2.0),
    "corner": (lambda x: abs(x - 1), 0.0, 1.0),
    "wave": (sin, 1.0, pi / 2),
    "midway between two points of the grid": (lambda x: 5 - (x - 65 / 64) ** 2, 5.0, 65 / 64),
}


@pytest.mark.parametrize(("function", "target", "place"), TOUCHES.values(), ids=TOUCHES)
def test_touching(function: Function, target: float, place: float) -> None:
    """By algebra: where the turning point is. A fourth power hides three quarters of it."""
    for high in (pi, 4.0):  # off the grid, and on it
        found = solutions(function, target, 0.0, high)
        assert root(found) == pytest.approx(place, abs=1e-3 if place == 2 else 1e-7)
        assert found.touched == found.roots


JUMPS: dict[str, Function] = {
    "step": lambda x: -1.0 if x < 1.3 else 1.0,
    "sloping step": lambda x: x - 5 if x < 1.3 else x + 5,
    "pole": lambda x: 1 / (x - 1.3) if x != 1.3 else None,
    "steep step": lambda x: 1000 * (x - 1.3) + copysign(0.2, x - 1.3),
    "gap": lambda x: x if x < 1.3 else None if x < 1.31 else -x,
    "stairs": lambda x: ceil(x) - 1.5,
}


@pytest.mark.parametrize("function", JUMPS.values(), ids=JUMPS)
def test_a_jump_is_no_solution(function: Function) -> None:
    """By reason: none of these is ever within 0.1 of 0 between 0.5 and 3."""
    assert_none(solutions(function, 0.0, 0.5, 3.0))
    assert_none(solutions(function, 0.0, 0.3, 2.3))  # 1.3 is on this grid


def test_poles_among_solutions() -> None:
    """Against the arctangent: tan x = 1 seven times before 20, six poles between."""
    found = solutions(tan, 1.0, 0.0, 20.0)
    assert found.roots == pytest.approx([pi / 4 + turn * pi for turn in range(7)], rel=1e-14)


STEEP: dict[str, Function] = {
    "cube root": lambda x: cbrt(x - 1),
    "sudden rise": lambda x: tanh((x - 1) * 1e12),
    "jump after it has come to 0": lambda x: x - 1 if x < 1 else 5.0,
}


@pytest.mark.parametrize("function", STEEP.values(), ids=STEEP)
def test_a_steep_slope_is_a_solution(function: Function) -> None:
    """By reason: each closes in on 0 at 1."""
    assert root(solutions(function, 0.0, 0.0, pi)) == pytest.approx(1.0, abs=1e-12)


STRETCHES: dict[str, tuple[Function, float, tuple[float, float]]] = {
    "top": (lambda x: min(x, 2.0), 2.0, (2.0, 10.0)),
    "bottom": (lambda x: max(x, 2.0), 2.0, (0.0, 2.0)),
    "shelf": (lambda x: min(x, 2.0) + max(x - 3, 0.0), 2.0, (2.0, 3.0)),
    "within a cell": (lambda x: min(x, 2.0) + max(x - 2.01, 0.0), 2.0, (2.0, 2.01)),
    "trough": (lambda x: max(0.0, abs(x - 2.01) - 0.02), 0.0, (1.99, 2.03)),
    "level but for rounding": (lambda x: 0.7 * (x + 1) / (x + 1), 0.7, (0.0, 10.0)),
    "everywhere": (lambda _: 7.0, 7.0, (0.0, 10.0)),
    "where it has a value": (lambda x: 7.0 if x < 5 else None, 7.0, (0.0, 5.0)),
}


@pytest.mark.parametrize(("function", "target", "ends"), STRETCHES.values(), ids=STRETCHES)
def test_a_stretch_that_solves(
    function: Function, target: float, ends: tuple[float, float]
) -> None:
    """By reason: from where to where the answer is level."""
    found = solutions(function, target, 0.0, 10.0)
    assert found.how_many == "several"
    assert not found.roots
    assert len(found.stretches) == 1
    assert found.stretches[0] == pytest.approx(ends, abs=1e-12)


def test_a_solution_beside_a_place_without_a_value() -> None:
    """By algebra: the root of x - 1 is 0.05 at 1.0025, short of the first point that has one."""

    def refused(x: float) -> float:
        if x < 1:
            raise Refused("below", "x")
        return sqrt(x - 1)

    for function in (refused, lambda x: None if x < 1 else sqrt(x - 1)):
        assert root(solutions(function, 0.05, 0.0, 10.0)) == pytest.approx(1.0025, rel=1e-14)
        assert root(solutions(function, 0.0, 0.0, 10.0)) == 1.0


def test_a_gap_inside_a_cell() -> None:
    """By reason: x has no value between 5 and 5.001, and both sides of that are searched."""

    def broken(x: float) -> float | None:
        return None if 5 < x < 5.001 else x

    assert root(solutions(broken, 5.002, 0.0, 10.01)) == pytest.approx(5.002, rel=1e-14)
    found = solutions(broken, 5.0004, 0.0, 10.01)
    assert_none(found)
    assert found.nearest == pytest.approx((5.0, 5.0), abs=1e-12)


def test_nothing_has_a_value() -> None:
    """By reason: no solution, and nothing that is nearest to one."""
    for nothing in (lambda _: None, lambda _: nan, lambda _: inf):
        found = solutions(nothing, 1.0, 0.0, 10.0, -10.0, 20.0)
        assert found == Found((), (), ())


def test_nearest() -> None:
    """By calculus: the vertex, an end, the top of a limit."""
    vertex = solutions(lambda x: (x - 1) ** 2 + 3, 2.0, 0.0, pi).nearest
    assert vertex == pytest.approx((1.0, 3.0), abs=1e-7)
    assert solutions(lambda x: 2 * x, 30.0, 0.0, 10.0).nearest == (10.0, 20.0)
    limit = solutions(lambda x: min(x, 5.0), 6.0, 0.0, 10.0).nearest
    assert limit is not None
    assert limit.value == 5.0
    assert limit.at >= 5.0


def test_beyond() -> None:
    """By algebra: (x - 5)² is 49 at -2 and 12. Nobody looks there while the range has one."""

    def square(x: float) -> float:
        return (x - 5) ** 2

    found = solutions(square, 49.0, 1.0, 10.0, -20.0, 100.0)
    assert_none(found)
    assert (found.beyond_low, found.beyond_high) == pytest.approx((-2.0, 12.0))
    assert solutions(square, 49.0, 1.0, 10.0, 0.0, 11.0) == solutions(square, 49.0, 1.0, 10.0)
    assert solutions(square, 49.0, 1.0, 10.0, -20.0).beyond_high is None
    assert solutions(square, 49.0, 1.0, 20.0, -20.0, 100.0)[3:] == (None, None, None)
    assert solutions(sin, 0.0, 0.1, 3.0, -50.0, 50.0)[4:] == pytest.approx((0.0, pi), abs=1e-14)
    assert solutions(lambda x: max(x, 3.0), 3.0, 4.0, 9.0, 0.0).beyond_low == pytest.approx(3.0)


pieces = st.lists(
    st.one_of(
        st.none(), st.sampled_from([nan, inf, 0.0, 1.0, -1.0, 1e-300, 1e300]), st.floats(-5, 5)
    ),
    min_size=1,
    max_size=8,
)


@settings(steady, max_examples=300)
@given(
    pieces, st.floats(-3, 3), st.sampled_from([0.0, 1.0, -1.0]), st.floats(0, 2), st.floats(0, 9)
)
def test_any_function(
    levels: list[float | None], slope: float, target: float, low: float, width: float
) -> None:
    """By reason: with steps, slopes and holes anywhere, what is told holds."""

    def function(x: float) -> float | None:
        level = levels[int(x * 7) % len(levels)]
        return None if level is None else level + slope * (x - 1)

    found = solutions(function, target, low, low + width)
    for one in (*found.roots, *(end for stretch in found.stretches for end in stretch)):
        value = function(one)
        assert value is not None
        assert low <= one <= low + width
        assert value == pytest.approx(target, abs=1e-7)
    values = [function(low + width * step / 40) for step in range(41)]
    errors = [abs(one - target) for one in values if one is not None and isfinite(one)]
    if found.how_many == "none" and errors:
        assert found.nearest is not None
        assert abs(found.nearest.value - target) <= min(errors) + abs(slope) * width / CELLS


COUNTED: dict[str, Callable[[float], float]] = {
    "power": lambda x: x * sqrt(x) - 27,
    "saturation": lambda x: x / (1 + x) - 0.77,
    "steep": lambda x: exp(9 * x) - 1e20,  # level but for rounding over the first cells
    "kink": lambda x: min(50 * (x - 1), x - 1) + max(0.0, x - 3) ** 3 - 7,
    "triple": lambda x: (x - 1.11) ** 3,
    "step": lambda x: -1.0 if x < 1.3 else 5.0,
}


@pytest.mark.parametrize("function", COUNTED.values(), ids=COUNTED)
def test_how_often_it_asks(function: Callable[[float], float]) -> None:
    """Against scipy's own Brent in the same cell. Each answer may take a millisecond on a phone."""
    asked: list[float] = []

    def counted(x: float) -> float:
        asked.append(x)
        return function(x)

    solutions(counted, 0.0, 0.0, 10.0)
    grid = [10 * place / CELLS for place in range(CELLS + 1)]
    a, b = next((a, b) for a, b in pairwise(grid) if function(a) < 0 < function(b))
    _, report = brentq(function, a, b, xtol=1e-30, maxiter=1000, full_output=True)
    # up to 4 more beside the place, to tell jumps and stretches; scipy counts both ends again
    assert len(asked) - len(grid) <= report.function_calls + 4
    assert len(asked) == len(set(asked))
