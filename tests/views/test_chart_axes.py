"""Axes: round figures around the data, in the unit that suits, apart from each other."""

from itertools import pairwise
from math import log10

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from calc.charts import Axis
from calc.figures import THIN_SPACE, read_number
from calc.model import Output
from calc.quantity import KINDS, Kind
from calc.units import area, day, duration, flow, hour, minute, number, volume
from calc.views.axes import Scale, margins, x_scale, y_scale
from calc.views.lettering import WIDTH, width_of
from tests.model.given import steady
from tests.views.drawings import EM, spans

CLOCK = {
    "s": (1, 2, 5, 10, 15, 30, 60),
    "min": (1, 2, 5, 10, 15, 30, 60),
    "h": (1, 2, 3, 6, 12, 24),
}
many = spans.flatmap(lambda one: st.lists(one, min_size=1, max_size=6))
kinds = st.sampled_from(KINDS)
plain_kinds = st.sampled_from([kind for kind in KINDS if kind is not duration])


def step_of(scale: Scale) -> float:
    """The step, and that every other is the same."""
    steps = [after - before for before, after in pairwise(scale.ticks)]
    largest = max(map(abs, scale.ticks))
    assert steps == pytest.approx([steps[0]] * len(steps), rel=1e-6, abs=1e-9 * largest)
    return (scale.ticks[-1] - scale.ticks[0]) / len(steps)


def is_round(step: float) -> bool:
    leading = 10 ** (log10(step) % 1)
    return min(abs(leading - figure) for figure in (1, 2, 2.5, 5, 10)) < 1e-4


@settings(steady, max_examples=200)
@given(many, kinds, st.sampled_from(("us", "si")))
def test_the_upright_axis_holds_all(values: list[float], kind: Kind, unit_set: str) -> None:
    """By reason: it ends in ticks on either side of the data, five steps and a little."""
    scale = y_scale(Axis("any", kind), unit_set, values)
    shown = [scale.unit.out_of_si(value) for value in values]
    hair = 1e-6 * step_of(scale)
    assert (scale.low, scale.high) == (scale.ticks[0], scale.ticks[-1])
    assert scale.low <= min(shown) + hair
    assert scale.high >= max(shown) - hair
    assert 2 <= len(scale.ticks) <= 8
    if not scale.unit.zero and min(shown) >= 0:
        assert scale.low >= 0


@settings(steady, max_examples=200)
@given(many, kinds, st.floats(16, 94))
@example([-898233042240046.5, -898311644508941.0], area, 70.0)  # one round figure between
def test_figures_along_the_level_axis_stand_apart(
    values: list[float], kind: Kind, left: float
) -> None:
    """By reason: at least two figures, none over the next, none out of the picture."""
    scale = x_scale(Axis("any", kind), "us", values, left)
    start, end = margins(scale, left)
    room = 360 - start - end
    middles = [start + (t - scale.low) / (scale.high - scale.low) * room for t in scale.ticks]
    widths = [EM * len(figure) for figure in scale.figures]
    assert len(middles) >= 2
    for (one, wide), (other, wider) in pairwise(zip(middles, widths, strict=True)):
        assert one + wide / 2 < other - wider / 2
    assert middles[0] - widths[0] / 2 >= 0
    assert middles[-1] + widths[-1] / 2 <= 360
    assert scale.ticks[0] >= scale.low - 1e-6 * step_of(scale)
    assert scale.ticks[-1] <= scale.high + 1e-6 * step_of(scale)


@settings(steady, max_examples=200)
@given(many, plain_kinds)
def test_steps_are_round(values: list[float], kind: Kind) -> None:
    """Common practice: 1, 2, 2½ or 5 times a power of ten, in the reader's unit."""
    axis = Axis("any", kind)
    assert is_round(step_of(y_scale(axis, "us", values)))
    assert is_round(step_of(x_scale(axis, "us", values, 40)))


@settings(steady, max_examples=200)
@given(st.floats(0.01, 4000 * day), st.floats(0, 1))
def test_times_go_by_the_clock(end: float, part: float) -> None:
    """The rule: 1, 2, 5, 10, 15, 30, 60 of seconds and minutes; 1, 2, 3, 6, 12, 24 hours."""
    scale = x_scale(Axis("Time", duration), "us", [part * end, end], 40)
    step = step_of(scale)
    if step >= 1 and scale.unit.symbol in CLOCK:
        assert min(abs(step - each) for each in CLOCK[scale.unit.symbol]) < 1e-6 * step
    else:
        assert is_round(step)


@pytest.mark.parametrize(
    ("end", "unit", "figures"),
    [
        (8.0, "s", "0 2 4 6 8"),
        (75.0, "s", "0 15 30 45 60 75"),
        (405.0, "min", "0 2 4 6"),
        (90 * minute, "min", "0 15 30 45 60 75 90"),
        (140 * minute, "min", "0 30 60 90 120"),
        (24 * hour, "h", "0 6 12 18 24"),
        (14 * day, "days", "0.0 2.5 5.0 7.5 10.0 12.5"),
    ],
)
def test_spans_of_time(end: float, unit: str, figures: str) -> None:
    """By reason: as one would divide them on paper."""
    scale = x_scale(Axis("Time", duration), "us", [0.0, end], 40)
    assert scale.name == f"Time, {unit}"
    assert " ".join(scale.figures) == figures


@settings(steady, max_examples=200)
@given(many, kinds)
def test_figures_are_their_ticks(values: list[float], kind: Kind) -> None:
    """By reason: what stands at a tick is its value, and no two ticks say the same."""
    scale = y_scale(Axis("any", kind), "us", values)
    assert len(set(scale.figures)) == len(scale.ticks)
    power = 0
    if ", 10" in scale.name:
        raised = scale.name.partition(", 10")[2].split(" ")[0]
        power = int(raised.translate(str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")))
        assert power % 3 == 0
    for tick, figure in zip(scale.ticks, scale.figures, strict=True):
        assert read_number(figure) * 10.0**power == pytest.approx(
            tick, rel=1e-9, abs=1e-6 * step_of(scale)
        )
        assert len(figure) <= 10


def test_names_of_axes() -> None:
    """By hand: the unit, and the power of ten that the figures are short of."""
    value = Output(name="any", label="any", kind=volume)
    assert y_scale(Axis("Level", value), "us", [0.01]).name == "Level, gal"
    assert y_scale(Axis("Level", value), "si", [0.01]).name == "Level, L"
    assert y_scale(Axis("Level", value), "si", [4e6]).name == "Level, 10⁹ L"
    assert y_scale(Axis("Level", value), "si", [4e6]).figures == tuple("0246")


@pytest.mark.parametrize(
    ("values", "figures"),
    [
        ([5.0], "0 2 4 6 8"),
        ([0.0], "0.0 0.2 0.4 0.6 0.8 1.0"),
        ([-5.0], "−8 −6 −4 −2 0"),
        ([-3.0, 2.0], "−3 −2 −1 0 1 2"),
        ([100.0, 100.4], "100.0 100.1 100.2 100.3 100.4"),
        ([20.0, 60.0], "0 20 40 60"),
        ([30.0, 50.0], "30 35 40 45 50"),
    ],
)
def test_where_the_upright_axis_starts(values: list[float], figures: str) -> None:
    """By reason: from nothing where that takes no more than half of it."""
    unit = flow.usual("us")
    scale = y_scale(Axis("Flow", flow), "us", [unit.into_si(value) for value in values])
    assert " ".join(scale.figures) == figures


@settings(steady, max_examples=100)
@given(st.lists(st.floats(1e-9, 1e12), min_size=1, max_size=6), st.floats(16, 94))
def test_equal_steps_of_a_tenfold_axis_multiply(values: list[float], left: float) -> None:
    """By reason: powers of ten around the data, evenly spaced, with room for their figures."""
    scale = x_scale(Axis("any", number, tenfold=True), "us", values, left)
    hair = 1e-6
    assert scale.ticks[0] <= min(values) * (1 + hair)
    assert scale.ticks[-1] >= max(values) * (1 - hair)
    steps = [after / before for before, after in pairwise(scale.ticks)]
    assert steps == pytest.approx([steps[0]] * len(steps))
    assert log10(steps[0]) == pytest.approx(round(log10(steps[0])))
    shares = [scale.share(tick) for tick in scale.ticks]
    assert shares == pytest.approx([n / len(steps) for n in range(len(scale.ticks))])
    room = (WIDTH - sum(margins(scale, left))) / len(steps)
    assert len(steps) == 1 or all(width_of(figure) < room for figure in scale.figures)


def test_a_tenfold_axis_of_time_is_in_minutes() -> None:
    """By reason: a pumping test of two days is plotted from 10 to 10,000 minutes."""
    scale = x_scale(Axis("Time", duration, tenfold=True), "us", [10 * minute, 2 * day], 40)
    assert scale.name == "Time, min"
    assert scale.figures == ("10", "100", f"1{THIN_SPACE}000", f"10{THIN_SPACE}000")
    assert scale.share(100 * minute) == pytest.approx(1 / 3)
