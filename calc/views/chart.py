"""Charts: the picture, the same in words, the figures as a table and as a file."""

import re

from calc.charts import Axis, Bars, Chart, Line, Picture, Train
from calc.model import Case
from calc.views.axes import said
from calc.views.bars import figure_of, plot_bars
from calc.views.chart_table import (
    bars_csv,
    bars_table,
    chart_csv,
    chart_table,
    csv_link,
    train_csv,
    train_table,
)
from calc.views.html import Safe, tag
from calc.views.lettering import SIZE, WIDTH, short
from calc.views.plot import plot
from calc.views.train import plot_train, train_reasons, train_words


def figure(case: Case, chart: Picture, key: str) -> Safe:
    """The chart with all that goes with it. `key` makes its ids the page's own."""
    name = re.sub(r"[^a-z0-9]+", "-", f"{case.calculator.name} {chart.title}".lower()).strip("-")
    return tag(
        "figure",
        svg(case, chart, key),
        tag("figcaption", f"{chart.title}. {chart.says}"),
        *([train_reasons(chart)] if isinstance(chart, Train) else []),
        tag(
            "details",
            tag("summary", "Figures of the chart"),
            table(case, chart),
            csv_link(csv(case, chart), name),
        ),
        class_="calc-chart",
    )


def svg(case: Case, chart: Picture, key: str) -> Safe:
    """The picture of a chart, whole without a style sheet. `key` makes its ids the page's own."""
    if isinstance(chart, Train):
        drawn, tall = plot_train(chart, case.unit_set)
    elif isinstance(chart, Bars):
        drawn, tall = plot_bars(chart, case.unit_set)
    else:
        drawn, tall = plot(chart, case.unit_set)
    return tag(
        "svg",
        tag("title", chart.title, id=f"{key}-title"),
        tag("desc", describe(case, chart), id=f"{key}-desc"),
        *drawn,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {WIDTH} {short(tall)}",
        role="img",
        aria_labelledby=f"{key}-title",
        aria_describedby=f"{key}-desc",
        font_family="sans-serif",
        font_size=SIZE,
        fill="currentColor",
    )


def describe(case: Case, chart: Picture) -> str:
    """The chart in words, for a reader who cannot see it."""
    if isinstance(chart, Train):
        return train_words(chart, case.unit_set)
    if isinstance(chart, Bars):
        figures = [
            f"{bar.label}: {figure_of(chart, bar, case.unit_set)}"
            + (f", {bar.words}." if bar.words else ".")
            for bar in chart.bars
        ]
        return " ".join([chart.says, *figures])
    lines = [_line_words(case, chart, line) for line in chart.lines]
    limits = [f"{limit.label}: {_said(case, chart.y, limit.y)}." for limit in chart.limits]
    marks = [
        f"{mark.label}: {_said(case, chart.y, mark.y)} at {_said(case, chart.x, mark.x)}."
        for mark in chart.marks
    ]
    return " ".join([chart.says, *(text[:1].upper() + text[1:] for text in lines + marks + limits)])


def _line_words(case: Case, chart: Chart, line: Line) -> str:
    """Where a line starts and ends, and how low and high it goes."""
    drawn = [(x, y) for x, y in line.points if y is not None]
    if not drawn:
        return f"{line.label}: nothing to draw."
    heights = [y for _, y in drawn]
    start, end = (
        f"{_said(case, chart.y, y)} at {_said(case, chart.x, x)}" for x, y in (drawn[0], drawn[-1])
    )
    low, high = (_said(case, chart.y, y) for y in (min(heights), max(heights)))
    return f"{line.label}: from {start} to {end}, lowest {low}, highest {high}."


def _said(case: Case, axis: Axis, value: float) -> str:
    return said(axis, case.unit_set, value)


def table(case: Case, chart: Picture) -> Safe:
    """The figures of a chart as a table, thinned evenly when there are very many."""
    if isinstance(chart, Train):
        return train_table(chart, case.unit_set)
    if isinstance(chart, Bars):
        return bars_table(chart, case.unit_set)
    return chart_table(chart, case.unit_set)


def csv(case: Case, chart: Picture) -> str:
    """The figures of a chart as comma-separated values, all of them."""
    if isinstance(chart, Train):
        return train_csv(chart, case.unit_set)
    if isinstance(chart, Bars):
        return bars_csv(chart, case.unit_set)
    return chart_csv(chart, case.unit_set)
