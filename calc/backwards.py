"""Working backwards: the value of one input that gives a wanted answer.

A range is scanned on a grid. Two solutions within one cell of it are seen only if the
answer visibly dips towards its target there.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby, pairwise
from math import copysign, exp, isfinite, log
from sys import float_info
from typing import Literal, NamedTuple

from calc.errors import Refused
from calc.roots import bracket, last, lowest

type Function = Callable[[float], float | None]

CELLS = 128  # of each grid
FAR = 8  # times fewer of them past the range, where a solution is only told of
DECADE = 10.0  # a range wider than this is also cut into equal ratios
HOLES = 4  # scans of a range, each but the first for places without a value inside a cell
SAME = 4 * float_info.epsilon  # answers this near the target, as a share of it, are the target
TOUCHING = 1e-9  # turning points this near touch it: nine digits, more than are ever shown
BESIDE = 1e-6  # of a cell: how near to look to tell a jump from a steep slope
LEVEL = 0.01  # of a cell: a shorter stretch of solutions is one point


class Reached(NamedTuple):
    """A value that the answer has, and where."""

    at: float
    value: float


class Found(NamedTuple):
    """Where an answer has its target value.

    roots       -- single points, rising
    touched     -- those of them at which the answer turns back without crossing; of a round
                   top or bottom only half of the digits of the place can be known
    stretches   -- (from, to) all of which solves
    nearest     -- without a solution: the value nearest to the target, and one place that
                   has it; None if there is no value anywhere
    beyond_low  -- without a solution: the nearest one below the range, None if none is known
    beyond_high -- the same above it
    """

    roots: tuple[float, ...]
    touched: tuple[float, ...]
    stretches: tuple[tuple[float, float], ...]
    nearest: Reached | None = None
    beyond_low: float | None = None
    beyond_high: float | None = None

    @property
    def how_many(self) -> Literal["none", "one", "several"]:
        """How many solutions the range has; a stretch is several."""
        if self.stretches or len(self.roots) > 1:
            return "several"
        return "one" if self.roots else "none"


class _Hole(Exception):
    """There is no value at `place`."""

    def __init__(self, place: float) -> None:
        self.place = place


class _Error:
    """The answer less its target, asked for once at each point."""

    def __init__(self, function: Function, target: float) -> None:
        self.function = function
        self.target = target
        self.values: dict[float, float | None] = {}
        self.solved: set[float] = set()
        self.holes: set[float] = set()

    def value(self, x: float) -> float | None:
        if x not in self.values:
            try:
                value = self.function(x)
            except Refused:
                value = None
            self.values[x] = value if value is not None and isfinite(value) else None
        return self.values[x]

    def has(self, x: float) -> bool:
        return self.value(x) is not None

    def __call__(self, x: float) -> float:
        value = self.value(x)
        if value is None:
            raise _Hole(x)
        return value - self.target

    def solves(self, x: float) -> bool:
        """Whether the answer is on target, or was found to be as near as it gets."""
        return x in self.solved or (self.has(x) and abs(self(x)) <= SAME * abs(self.target))

    def is_near(self, x: float, a: float, b: float) -> bool:
        """Whether the answer at x is as good as on target, seen from a and b around it."""
        return abs(self(x)) <= TOUCHING * max(abs(self.target), min(abs(self(a)), abs(self(b))))

    def nearest(self) -> Reached | None:
        """The value nearest to the target of all that were asked for."""
        reached = [Reached(x, value) for x, value in self.values.items() if value is not None]
        return min(reached, key=lambda one: (abs(one.value - self.target), one.at), default=None)


def solutions(
    function: Function,
    target: float,
    low: float,
    high: float,
    beyond_low: float | None = None,
    beyond_high: float | None = None,
    cells: int = CELLS,
) -> Found:
    """Where `function` has the value `target` between `low` and `high`, ends included.

    function    -- may give None or raise Refused where it has no value
    beyond_low  -- how far below `low` to look if the range has no solution
    beyond_high -- how far above `high`
    cells       -- of the grid, fewer for a function that takes long

    A sign change is a solution if the answer closes in on the target there; a jump past
    the target is none.

    >>> solutions(lambda x: x * x, 2.0, 0.0, 10.0).roots
    (1.4142135623730951,)
    >>> solutions(lambda x: x * x, 200.0, 0.0, 10.0, beyond_high=1000.0)[3:]
    (Reached(at=10.0, value=100.0), None, 14.142135623730951)
    """
    found = _scanned(function, target, low, high, cells)
    if found.how_many != "none":
        return found
    far = max(1, cells // FAR)
    below = [] if beyond_low is None else _places(_scanned(function, target, beyond_low, low, far))
    above = (
        [] if beyond_high is None else _places(_scanned(function, target, high, beyond_high, far))
    )
    return found._replace(beyond_low=max(below, default=None), beyond_high=min(above, default=None))


def _places(found: Found) -> list[float]:
    return [*found.roots, *(end for stretch in found.stretches for end in stretch)]


def _scanned(function: Function, target: float, low: float, high: float, cells: int) -> Found:
    error = _Error(function, target)
    grid = _grid(low, high, cells)
    for _ in range(HOLES):
        pieces = list(_pieces(error, grid))
        for piece in pieces:
            _search(error, piece)
        if error.holes <= set(grid):
            break
        grid = sorted({*grid, *error.holes})
    levels = [level for piece in pieces for level in _levels(error, piece)]
    return Found(
        roots=tuple(a for a, b, _ in levels if a == b),
        touched=tuple(a for a, b, touched in levels if a == b and touched),
        stretches=tuple((a, b) for a, b, _ in levels if a < b),
        nearest=None if levels else error.nearest(),
    )


def _grid(low: float, high: float, cells: int) -> list[float]:
    shares = [cell / cells for cell in range(1, cells)]
    points = {low, high} | {low + (high - low) * share for share in shares}
    if 0 < DECADE * low < high:
        points |= {exp(log(low) * (1 - share) + log(high) * share) for share in shares}
    return sorted(points)


def _pieces(error: _Error, grid: Sequence[float]) -> Iterator[list[float]]:
    """Points of the grid between places without a value, and the ends of what has values."""
    ends = set()
    for a, b in pairwise(grid):
        if error.has(a) != error.has(b):
            ends.add(last(error.has, a, b) if error.has(a) else last(error.has, b, a))
    for has, points in groupby(sorted({*grid, *ends}), key=error.has):
        if has:
            yield list(points)


def _search(error: _Error, piece: Sequence[float]) -> None:
    """Adds what solves inside the cells, and the holes met there, to what is known."""
    for cells in (*pairwise(piece), *zip(piece, piece[1:], piece[2:], strict=False)):
        try:
            if len(cells) == 2:
                _cross(error, *cells)
            else:
                _turn(error, *cells)
        except _Hole as hole:
            error.holes.add(hole.place)


def _cross(error: _Error, a: float, b: float) -> None:
    """Adds the place between a and b where the answer crosses its target, if it does."""
    aside = LEVEL * (b - a)  # an end that solves may have a neighbour that does too
    a, b = a + aside if error.solves(a) else a, b - aside if error.solves(b) else b
    if error.solves(a) or error.solves(b) or (error(a) > 0) == (error(b) > 0):
        return
    best, other = bracket(error, a, b)
    if not error.is_near(best, a, b):
        beside = BESIDE * (b - a)
        before, after = max(a, min(best, other) - beside), min(b, max(best, other) + beside)
        # over a jump the answer changes as much as over all that is near
        if abs(error(best) - error(other)) > abs(error(after) - error(before)) / 2:
            return
    error.solved.add(best)


def _turn(error: _Error, a: float, b: float, c: float) -> None:
    """Adds the places near b where the answer turns at its target or just beyond it."""
    sign = copysign(1.0, error(b))
    away, close, off = (sign * error(x) for x in (a, b, c))
    seen = 0 < close < (1 - SAME) * away and close <= off  # a dip, not the rounding of a level
    if not seen or any(map(error.solves, (a, b, c))):
        return
    turn = lowest(lambda x: sign * error(x), a, c)
    if error.is_near(turn, a, c):
        error.solved.add(turn)
    elif sign * error(turn) < 0:
        _cross(error, a, turn)
        _cross(error, turn, c)


def _levels(error: _Error, piece: Sequence[float]) -> Iterator[tuple[float, float, bool]]:
    """From where to where each solution reaches, and whether the answer only touches there."""
    points = sorted({*piece, *(x for x in error.solved if piece[0] <= x <= piece[-1])})
    between = {(a + b) / 2 for a, b in pairwise(points) if error.solves(a) and error.solves(b)}
    points = sorted({*points, *filter(error.has, between)})
    runs = [(solves, list(run)) for solves, run in groupby(points, key=error.solves)]
    for place, (solves, run) in enumerate(runs):
        if solves:
            left = runs[place - 1][1][-1] if place else run[0]
            right = runs[place + 1][1][0] if place + 1 < len(runs) else run[-1]
            a, b = _end(error, run[0], left), _end(error, run[-1], right)
            if b - a > BESIDE * max(abs(a), abs(b)):
                yield a, b, False
            else:
                inside = left < run[0] and run[-1] < right
                yield run[0], run[0], inside and (error(left) > 0) == (error(right) > 0)


def _end(error: _Error, solved: float, outside: float) -> float:
    """How far the stretch of solutions reaches from one of them to what is outside it."""
    beside = solved + LEVEL * (outside - solved)
    return last(error.solves, beside, outside) if error.solves(beside) else solved
