"""One answer against one input: the same figures as asking for each, and the case in its place."""

from collections.abc import Callable
from dataclasses import replace
from functools import wraps
from itertools import pairwise

import pytest

from calc.calculators import calculator, names
from calc.errors import Refused
from calc.model import UNIT_SETS, Answer, Calculator, Case, Typed, solve
from calc.request import case_of
from calc.sweep import sweep
from calc.units import gal, gpm
from calc.views.chart import csv, figure

WORKED = case_of(["tank_draw"])


def counted(declared: Calculator, times: list[None]) -> Calculator:
    """The calculator, noting each time that its work is done."""

    @wraps(declared.work)
    def work(**values: object) -> Answer:
        times.append(None)
        answer: Callable[..., Answer] = declared.work
        return answer(**values)

    return replace(declared, work=work)


def asked_for(case: Case, name: str, value: float, output: str) -> float | None:
    """The answer when the value is typed into its field."""
    unit = case.units[name]
    typed = {name: Typed(f"{unit.out_of_si(value):.17g}", unit.symbol)}
    again = solve(case.calculator, {**case.typed, **typed}, case.unit_set)
    return again.answer.outputs[output] if again.answer else None


@pytest.mark.parametrize("unit_set", UNIT_SETS)
@pytest.mark.parametrize(
    ("name", "output"),
    [("draw_flow", "lowest"), ("worst_inlet", "dry_after"), ("house_tank", "sure_draw")],
)
def test_each_point_is_the_answer_there(name: str, output: str, unit_set: str) -> None:
    """By another way: the same input typed into its field gives the same answer."""
    case = solve(WORKED.calculator, {}, unit_set)
    chart = sweep(case, name, output)
    assert chart
    points = chart.lines[0].points
    assert len(points) in (41, 42)
    for x, y in points[::5]:
        expected = asked_for(case, name, x, output)
        assert y == (None if expected is None else pytest.approx(expected, rel=1e-9))


def test_the_case_is_marked() -> None:
    """By hand: 6 gpm, from half to one and a half of it, with its own answer in the line."""
    chart = sweep(WORKED, "draw_flow", "lowest")
    assert chart
    assert WORKED.answer
    (mark,) = chart.marks
    assert mark.here
    assert mark.x == pytest.approx(6 * gpm)
    assert mark.y == WORKED.answer.outputs["lowest"]
    points = chart.lines[0].points
    assert (mark.x, mark.y) in points
    assert points[0][0] == pytest.approx(3 * gpm)
    assert points[-1][0] == pytest.approx(9 * gpm)
    gaps = [after - before for (before, _), (after, _) in pairwise(points)]
    assert min(gaps) > 0.3 * 6 * gpm / 40


def test_the_range_is_kept() -> None:
    """By hand: a precharge of 0 psi is the lowest allowed; nothing is asked for below it."""
    case = case_of(["tank_draw", "precharge=0 psi"])
    chart = sweep(case, "precharge", "drawdown")
    assert chart
    assert min(x for x, _ in chart.lines[0].points) == 0
    assert max(x for x, _ in chart.lines[0].points) > 0


def test_limits_of_the_answer_are_drawn() -> None:
    """By hand: the margin has a limit at nothing and none above."""
    chart = sweep(case_of(["outlet_setting"]), "inlet", "margin")
    assert chart
    assert [limit.y for limit in chart.limits] == [0.0]


def test_the_line_breaks_where_there_is_no_answer() -> None:
    """By hand: where no less enters than leaves there is no such time, and the chart says so."""
    chart = sweep(WORKED, "worst_inlet", "sure_time")
    assert chart
    heights = [y for _, y in chart.lines[0].points]
    assert None in heights
    assert any(y is not None for y in heights)
    assert WORKED.calculator.output("sure_time").none in chart.says


def test_contradicting_inputs_break_the_line() -> None:
    """By hand: the float cannot close at 9 gal when it opens at 9.5 gal."""
    chart = sweep(WORKED, "float_closed", "lowest")
    assert chart
    broken = {x for x, y in chart.lines[0].points if y is None}
    assert {x for x, _ in chart.lines[0].points if x <= 9.5 * gal} <= broken
    for x, _ in chart.lines[0].points:
        assert (asked_for(WORKED, "float_closed", x, "lowest") is None) == (x in broken)
    assert "contradict" in chart.says


def test_an_answer_that_runs_away_does_not_flatten_the_rest() -> None:
    """By reason: near the point where in and out are equal the time goes to infinity."""
    chart = sweep(WORKED, "worst_inlet", "sure_time", points=2001)
    assert chart
    heights = [y for _, y in chart.lines[0].points if y is not None]
    (mark,) = chart.marks
    assert max(heights) <= 30 * max(mark.y, sorted(heights)[len(heights) // 2])
    assert "runs off the picture" in chart.says


def test_no_answer_anywhere_is_no_chart() -> None:
    """By hand: a draw far below the flow in never uncovers the intake, at any float level."""
    case = case_of(["tank_draw", "draw_flow=1 gpm", "worst_inlet=20 gpm"])
    assert sweep(case, "float_open", "dry_after") is None


def test_what_has_no_line_is_refused() -> None:
    """The rule: a choice, a list of readings, or a case without an answer is no number line."""
    with pytest.raises(ValueError, match="limit of tank_draw"):
        sweep(WORKED, "limit", "lowest")
    with pytest.raises(ValueError, match="runs of pail_flow"):
        sweep(case_of(["pail_flow"]), "runs", "flow")
    unanswered = case_of(["tank_draw", "draw_flow=?"])
    with pytest.raises(KeyError):
        sweep(unanswered, "draw_flow", "lowest")
    with pytest.raises(ValueError, match="pump"):
        sweep(unanswered, "pump", "lowest")


def test_it_costs_as_many_works_as_points() -> None:
    """The rule: the present answer is there already and is not worked again."""
    times: list[None] = []
    case = solve(counted(WORKED.calculator, times))
    times.clear()
    assert sweep(case, "draw_flow", "lowest", points=11)
    assert len(times) in (10, 11)


@pytest.mark.parametrize("name", [n for n in names() if not calculator(n).simulation])
def test_every_number_of_every_calculator(name: str) -> None:
    """The rule: any answer against any input can be drawn, or is nowhere to be had."""
    case = solve(calculator(name))
    drawn = 0
    for each, value in case.values.items():
        for output in case.calculator.outputs if isinstance(value, float) else ():
            try:
                chart = sweep(case, each, output.name, points=9)
            except Refused:
                pytest.fail(f"{each}: a refusal must break the line")
            if chart:
                drawn += 1
                assert figure(case, chart, "k")
                assert csv(case, chart)
    assert drawn
