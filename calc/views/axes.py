"""The axes of a chart: their unit, their ends, and the round figures written along them."""

from collections.abc import Iterable, Iterator
from itertools import count
from math import ceil, floor, inf, log, log10
from typing import NamedTuple

from calc.charts import Axis, kind_of
from calc.figures import MINUS, THIN_SPACE, written
from calc.units import Unit, day, duration, minute
from calc.views.lettering import WIDTH, width_of
from calc.views.words import spoken, with_unit

FLAT = 1e-5  # a span under this share of the values is drawn as none
APART = 8.0  # between two figures side by side
_TIME_UNITS = (("s", 2 * minute), ("min", 150 * minute), ("h", 3 * day), ("days", inf))
_SIXTIES = (1, 2, 5, 10, 15, 30, 60)
_TIME_STEPS = {"s": _SIXTIES, "min": _SIXTIES, "h": (1, 2, 3, 6, 12, 24)}
_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")

Span = tuple[float, float]


class Scale(NamedTuple):
    """One axis: ends and ticks in its unit, a figure for each tick, and its name."""

    name: str
    unit: Unit
    low: float
    high: float
    ticks: tuple[float, ...]
    figures: tuple[str, ...]
    tenfold: bool = False

    def share(self, value: float) -> float:
        """How far along the axis an SI value lies, 0 to 1."""
        shown = self.unit.out_of_si(value)
        if self.tenfold:
            return log(shown / self.low) / log(self.high / self.low)
        return (shown - self.low) / (self.high - self.low)


def shown_unit(axis: Axis, unit_set: str, values: Iterable[float]) -> Unit:
    """The unit of an axis: the reader's usual one, but for a time the one that suits it."""
    if kind_of(axis.like) is not duration:
        return axis.like.usual(unit_set)
    if axis.tenfold:
        return duration.unit("min")
    longest = max(map(abs, values))
    return duration.unit(next(symbol for symbol, most in _TIME_UNITS if longest <= most))


def y_scale(axis: Axis, unit_set: str, values: list[float]) -> Scale:
    """The y axis of SI values. It starts from nothing where that costs little."""
    unit = shown_unit(axis, unit_set, values)
    low, high = _span(values, unit)
    if not unit.zero and 0 < low <= high - low:
        low = 0.0
    elif not unit.zero and 0 < -high <= high - low:
        high = 0.0
    ticks = round_ticks(low, high, _step(unit, (high - low) / 5))
    return _scale(axis, unit, (ticks[0], ticks[-1]), ticks)


def x_scale(axis: Axis, unit_set: str, values: list[float], left: float) -> Scale:
    """The x axis of SI values, from the first to the last; `left` is what the y axis takes.

    It has as many ticks as its figures leave room for.
    """
    if axis.tenfold:
        return _tenfold(axis, unit_set, values, left)
    unit = shown_unit(axis, unit_set, values)
    low, high = _span(values, unit)
    for about in (6, 5, 4, 3):
        step = _step(unit, (high - low) / about)
        hair = 1e-9 * step  # of rounding
        ticks = [t for t in round_ticks(low, high, step) if low - hair <= t <= high + hair]
        if len(ticks) > 1 and _fits(tried := _scale(axis, unit, (low, high), ticks), left):
            return tried
    ticks = round_ticks(low, high, _step(unit, high - low))  # two or three
    return _scale(axis, unit, (ticks[0], ticks[-1]), ticks)


def _tenfold(axis: Axis, unit_set: str, values: list[float], left: float) -> Scale:
    """From a power of ten at or below all values to one at or above them."""
    unit = shown_unit(axis, unit_set, values)
    shown = [unit.out_of_si(value) for value in values]
    low = floor(log10(min(shown)) + 1e-9)
    high = max(low + 1, ceil(log10(max(shown)) - 1e-9))
    name = f"{axis.label}, {unit.symbol}" if unit.symbol else axis.label
    scales = (_powers(name, unit, range(low, high + step, step)) for step in count(1))
    return next(each for each in scales if len(each.ticks) == 2 or _fits(each, left))


def _powers(name: str, unit: Unit, powers: range) -> Scale:
    ticks = tuple(10.0**power for power in powers)
    return Scale(name, unit, ticks[0], ticks[-1], ticks, tuple(map(_power, powers)), tenfold=True)


def _power(power: int) -> str:
    """1,000 as it is, a million as 10⁶."""
    if -4 < power < 5:
        return f"{10.0**power:,.{max(0, -power)}f}".replace(",", THIN_SPACE)
    return f"10{str(power).translate(_RAISED)}"


def margins(across: Scale, left: float) -> Span:
    """Room at either side of the axis, so that no figure leaves the picture."""
    halves = [width_of(figure) / 2 + 2 for figure in across.figures]
    return max(left, halves[0]), max(10.0, halves[-1])


def _fits(tried: Scale, left: float) -> bool:
    room = WIDTH - sum(margins(tried, left))
    second, first = (tried.share(tried.unit.into_si(tick)) for tick in tried.ticks[1::-1])
    spacing = (second - first) * room
    return max(map(width_of, tried.figures)) + APART <= spacing


def _span(values: Iterable[float], unit: Unit) -> Span:
    """Lowest and highest in the unit; around a single value as much again as it is."""
    shown = [unit.out_of_si(value) for value in values]
    low, high = min(shown), max(shown)
    if high - low > FLAT * max(abs(low), abs(high)):
        return low, high
    middle = (low + high) / 2
    return (middle - abs(middle) / 2, middle + abs(middle) / 2) if middle else (0.0, 1.0)


def round_ticks(low: float, high: float, step: float) -> list[float]:
    """Whole steps from at or below `low` to at or above `high`.

    >>> round_ticks(0.0, 11.0, 2.5)
    [0.0, 2.5, 5.0, 7.5, 10.0, 12.5]
    """
    first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
    return [place * step for place in range(first, last + 1)]


def _step(unit: Unit, least: float) -> float:
    """The next round step: 1, 2, 2.5, 5, 10... of the unit, or one that a clock has."""
    steps = _TIME_STEPS.get(unit.symbol, ()) if least > 0.5 else ()
    for step in steps:
        if step >= least * 0.999:
            return float(step)
    return round_step(least)


def round_step(least: float) -> float:
    """The next of 1, 2, 2.5, 5 times a power of ten.

    >>> round_step(2.2), round_step(0.3)
    (2.5, 0.5)
    """
    size = 10.0 ** floor(log10(least))
    return next(size * factor for factor in (1, 2, 2.5, 5, 10) if size * factor >= least * 0.999)


def _scale(axis: Axis, unit: Unit, ends: Span, ticks: list[float]) -> Scale:
    """A thousand thousands are written apart from the axis, as a power of ten in its name."""
    largest = max(map(abs, ticks))
    power = 0 if 1e-3 <= largest < 1e6 else 3 * floor(log10(largest) / 3)
    symbol = f"10{str(power).translate(_RAISED)} {unit.symbol}".strip() if power else unit.symbol
    return Scale(
        f"{axis.label}, {symbol}" if symbol else axis.label,
        unit,
        *ends,
        tuple(ticks),
        tuple(_figures([tick / 10.0**power for tick in ticks])),
    )


def _figures(ticks: list[float]) -> Iterator[str]:
    """The ticks with as many decimals as their step needs."""
    step = ticks[1] - ticks[0]
    places = next(n for n in range(20) if _is_whole(step * 10**n))
    for tick in ticks:
        text = f"{round(tick, places) + 0.0:,.{places}f}"
        yield text.replace(",", THIN_SPACE).replace("-", MINUS)


def _is_whole(number: float) -> bool:
    return round(number) >= 1 and abs(number - round(number)) < 1e-6 * number


def said(axis: Axis, unit_set: str, value: float) -> str:
    """A value of the axis in words, a long time as a clock says it."""
    unit = axis.like.usual(unit_set)
    if kind_of(axis.like) is duration and unit.symbol != "s":
        return spoken(value, duration, unit_set)
    return with_unit(written(unit.out_of_si(value)), unit)
