"""Bars as SVG: over each its label, beside it its figure, under it what it means."""

from calc.charts import Bar, Bars, kind_of
from calc.figures import plainly_written, written
from calc.units import share
from calc.views.html import Safe, tag
from calc.views.lettering import LEADING, WIDTH, Words, short, width_of, wrapped
from calc.views.words import with_unit

THICK = 16
APART = 14  # from one bar with its words to the next


def figure_of(bars: Bars, bar: Bar, unit_set: str) -> str:
    """The length of a bar in the reader's unit; a share to two figures."""
    unit = bars.like.usual(unit_set)
    number = unit.out_of_si(bar.value)
    is_share = kind_of(bars.like) is share
    return with_unit(plainly_written(number, 2) if is_share else written(number), unit)


def plot_bars(bars: Bars, unit_set: str) -> tuple[list[Safe], float]:
    """What is drawn of the bars, and how tall it is."""
    figures = [figure_of(bars, bar, unit_set) for bar in bars.bars]
    longest = max(bar.value for bar in bars.bars) or 1.0
    whole = max(1.0, longest) if kind_of(bars.like) is share else longest
    room = WIDTH - 4 - 8 - max(map(width_of, figures))
    drawn, y = list[Safe](), 0.0
    for bar, figure in zip(bars.bars, figures, strict=True):
        for text in wrapped(bar.label, WIDTH - 4):
            y += LEADING
            drawn.append(Words(text, 2, y - 4).drawn())
        end = 2 + bar.value / whole * room
        drawn += [_bar(end, y + 2), Words(figure, end + 8, y + 15).drawn()]
        y += THICK + 4
        for text in wrapped(bar.words, WIDTH - 4) if bar.words else ():
            y += LEADING
            drawn.append(Words(text, 2, y - 2).drawn())
        y += APART
    return drawn, y


def _bar(end: float, y: float) -> Safe:
    return tag(
        "rect", x=2, y=short(y), width=short(end - 2), height=THICK, class_="chart-bar",
        fill="currentColor", fill_opacity="0.6", stroke="currentColor", stroke_width="1",
    )  # fmt: skip
