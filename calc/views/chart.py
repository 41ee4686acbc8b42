"""Charts as SVG: lines over two axes, limits across, marks. Text stays text.

Presentation attributes do for paper and for programs that read no style sheet; the
handbook's own style sheet overrides them in the dark. Lines differ by dash as well as tone.
"""

from collections.abc import Iterator
from math import ceil, floor, log10

from calc.figures import plainly_written, written
from calc.model import Axis, Case, Chart, Field
from calc.views.html import Safe, joined, tag
from calc.views.words import spoken

WIDTH, HEIGHT = 360, 270
LEFT, RIGHT, TOP, BOTTOM = 46, 12, 34, 44
DASHES = ("none", "7 4", "2 4", "10 3 2 3")
MOST_ROWS = 60

Span = tuple[float, float]


def round_ticks(low: float, high: float, about: int = 5) -> list[float]:
    """Round figures from at or below `low` to at or above `high`, some `about` of them.

    >>> round_ticks(0.0, 11.0)
    [0.0, 2.5, 5.0, 7.5, 10.0, 12.5]
    """
    raw = (high - low) / about or 1.0
    size = 10.0 ** floor(log10(raw))
    step = next(size * factor for factor in (1, 2, 2.5, 5, 10) if size * factor >= raw * 0.999)
    first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
    return [place * step for place in range(first, last + 1)]


class _Frame:
    """Where a value lands in the picture."""

    def __init__(self, x: Span, y: Span) -> None:
        self.x, self.y = x, y

    def place(self, x: float, y: float) -> tuple[float, float]:
        across = (x - self.x[0]) / (self.x[1] - self.x[0] or 1)
        up = (y - self.y[0]) / (self.y[1] - self.y[0] or 1)
        return (
            round(LEFT + across * (WIDTH - LEFT - RIGHT), 1),
            round(HEIGHT - BOTTOM - up * (HEIGHT - TOP - BOTTOM), 1),
        )


def svg(case: Case, chart: Chart, key: str) -> Safe:
    """The picture of a chart. `key` makes its ids the page's own."""
    xs = [_out(case, chart.x, x) for line in chart.lines for x, _ in line.points]
    ys = [_out(case, chart.y, y) for line in chart.lines for _, y in line.points]
    ys += [_out(case, chart.y, limit.y) for limit in chart.limits]
    x_ticks = round_ticks(min(xs), max(xs))
    y_ticks = round_ticks(min(0.0, *ys), max(ys))
    frame = _Frame((x_ticks[0], x_ticks[-1]), (y_ticks[0], y_ticks[-1]))
    return tag(
        "svg",
        tag("title", chart.title, id=f"{key}-title"),
        tag("desc", describe(case, chart), id=f"{key}-desc"),
        *_axes(frame, x_ticks, y_ticks),
        *_names(case, chart),
        *_limits(case, chart, frame),
        *_lines(case, chart, frame),
        *_marks(case, chart, frame),
        viewBox=f"0 0 {WIDTH} {HEIGHT}",
        role="img",
        aria_labelledby=f"{key}-title {key}-desc",
        font_size="13",
        fill="currentColor",
    )


def describe(case: Case, chart: Chart) -> str:
    """The chart in words, for a reader who cannot see it."""
    marks = "".join(
        f" {mark.label.capitalize()}: {_said(case, chart.y.like, mark.y)} at "
        f"{_said(case, chart.x.like, mark.x)}."
        for mark in chart.marks
    )
    return chart.says + marks


def _said(case: Case, like: Field, value: float) -> str:
    return spoken(value, like, case.unit_set)


def _out(case: Case, axis: Axis, value: float) -> float:
    return axis.like.usual(case.unit_set).out_of_si(value)


def _line(x1: float, y1: float, x2: float, y2: float, class_: str, width: str, dash: str) -> Safe:
    return tag(
        "line", x1=x1, y1=y1, x2=x2, y2=y2, class_=class_, stroke="currentColor",
        stroke_width=width, stroke_dasharray=dash,
    )  # fmt: skip


def _words(x: float, y: float, text: str, anchor: str = "start", **more: object) -> Safe:
    return tag("text", text, x=x, y=y, text_anchor=anchor, class_="chart-text", **more)


def _axes(frame: _Frame, x_ticks: list[float], y_ticks: list[float]) -> Iterator[Safe]:
    for tick in y_ticks:
        x, y = frame.place(frame.x[0], tick)
        yield _line(x, y, WIDTH - RIGHT, y, "chart-grid", "0.5", "none")
        yield _words(x - 6, y + 4, plainly_written(tick, 4), "end")
    for tick in x_ticks:
        x, y = frame.place(tick, frame.y[0])
        yield _line(x, y, x, y + 5, "chart-axis", "1", "none")
        yield _words(x, y + 18, plainly_written(tick, 4), "middle")
    x, y = frame.place(frame.x[0], frame.y[0])
    yield _line(x, y, WIDTH - RIGHT, y, "chart-axis", "1", "none")
    yield _line(x, y, x, TOP, "chart-axis", "1", "none")


def _names(case: Case, chart: Chart) -> Iterator[Safe]:
    yield _words(WIDTH - RIGHT, HEIGHT - 6, _axis_name(case, chart.x), "end")
    yield _words(2, 14, _axis_name(case, chart.y))


def _axis_name(case: Case, axis: Axis) -> str:
    return f"{axis.label}, {axis.like.usual(case.unit_set).symbol}"


def _limits(case: Case, chart: Chart, frame: _Frame) -> Iterator[Safe]:
    for limit in chart.limits:
        x, y = frame.place(frame.x[0], _out(case, chart.y, limit.y))
        yield _line(x, y, WIDTH - RIGHT, y, "chart-limit", "1.25", "4 3")
        yield _words(WIDTH - RIGHT - 2, y - 4, limit.label, "end")


def _lines(case: Case, chart: Chart, frame: _Frame) -> Iterator[Safe]:
    for number, line in enumerate(chart.lines):
        corners = (
            frame.place(_out(case, chart.x, x), _out(case, chart.y, y)) for x, y in line.points
        )
        yield tag(
            "polyline",
            points=" ".join(f"{x},{y}" for x, y in corners),
            class_=f"chart-line-{number + 1}",
            fill="none",
            stroke="currentColor",
            stroke_width="2.5",
            stroke_linejoin="round",
            stroke_dasharray=DASHES[number],
        )


def _marks(case: Case, chart: Chart, frame: _Frame) -> Iterator[Safe]:
    for mark in chart.marks:
        x, y = frame.place(_out(case, chart.x, mark.x), _out(case, chart.y, mark.y))
        late = x > WIDTH / 2
        yield tag("circle", cx=x, cy=y, r="5", class_="chart-mark", stroke="currentColor")
        yield _words(
            x - 9 if late else x + 9,
            min(y + 16, HEIGHT - BOTTOM - 5),
            f"{mark.label} {_said(case, chart.y.like, mark.y)}",
            "end" if late else "start",
        )


def table(case: Case, chart: Chart) -> Safe:
    """The figures of a chart as a table, thinned evenly when there are very many."""
    rows = [(line.label, x, y) for line in chart.lines for x, y in line.points]
    thin = ceil(len(rows) / MOST_ROWS)
    kept = rows[::thin] + ([rows[-1]] if (len(rows) - 1) % thin else [])
    head = [_axis_name(case, chart.x), _axis_name(case, chart.y)]
    many = len(chart.lines) > 1
    return tag(
        "table",
        tag("thead", tag("tr", *(tag("th", h, scope="col") for h in ["Line"][:many] + head))),
        tag(
            "tbody",
            joined([_row(case, chart, row, many) for row in kept]),
        ),
    )


def _row(case: Case, chart: Chart, row: tuple[str, float, float], many: bool) -> Safe:
    label, x, y = row
    cells = [written(_out(case, chart.x, x), 4), written(_out(case, chart.y, y), 4)]
    return tag("tr", *(tag("td", cell) for cell in [label][:many] + cells))
