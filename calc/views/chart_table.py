"""The figures of a chart: as a table beside it, and as a file for a spreadsheet."""

from binascii import b2a_base64
from collections.abc import Iterable, Iterator
from math import ceil
from typing import NamedTuple

from calc.charts import Bars, Chart, Train, kind_of
from calc.figures import plainly_written, written
from calc.units import Unit
from calc.views.axes import shown_unit
from calc.views.bars import figure_of
from calc.views.html import Safe, tag

MOST_ROWS = 60
_STARTS_FORMULA = tuple("=+-@＝＋－＠")  # in a cell that a spreadsheet opens

type Row = tuple[str | float, ...]
type Group = tuple[str, list[tuple[str, str]]]


class Columns(NamedTuple):
    """Units of a chart's axes, and what stands over their figures."""

    x: Unit
    y: Unit
    heads: tuple[str, str]


def _columns(chart: Chart, unit_set: str) -> Columns:
    places = list(chart.places())
    heights = [y for _, y in places] + [limit.y for limit in chart.limits]
    x = shown_unit(chart.x, unit_set, [x for x, _ in places])
    y = shown_unit(chart.y, unit_set, heights)
    return Columns(x, y, (_head(chart.x.label, x), _head(chart.y.label, y)))


def _head(label: str, unit: Unit) -> str:
    return f"{label}, {unit.symbol}" if unit.symbol else label


def chart_table(chart: Chart, unit_set: str) -> Safe:
    """The figures of lines and bands, thinned evenly when there are very many."""
    columns = _columns(chart, unit_set)
    groups = list(_groups(chart, columns))
    thin = ceil(sum(len(rows) for _, rows in groups) / MOST_ROWS)
    note = f" One point in {thin} is shown; the file has them all." if thin > 1 else ""
    bodies = [_body(label if len(groups) > 1 else "", rows, thin) for label, rows in groups]
    return _table(f"{chart.title}.{note}", columns.heads, bodies)


def _groups(chart: Chart, columns: Columns) -> Iterator[Group]:
    def shown(x: float, *ys: float | None) -> tuple[str, str]:
        figures = [written(columns.y.out_of_si(y), 4) for y in ys if y is not None]
        return written(columns.x.out_of_si(x), 4), " to ".join(figures) or "none"

    for line in chart.lines:
        yield line.label, [shown(*point) for point in line.points]
    for band in chart.bands:
        yield band.label, [shown(*point) for point in band.points]


def _body(label: str, rows: list[tuple[str, str]], thin: int) -> Safe:
    kept = [*rows[::thin], *([rows[-1]] if (len(rows) - 1) % thin else [])]
    head = [tag("tr", tag("th", label, scope="rowgroup", colspan=2))] if label else []
    return tag("tbody", *head, *map(_row, kept))


def _row(cells: Iterable[str]) -> Safe:
    first, *rest = cells
    return tag("tr", tag("th", first, scope="row"), *(tag("td", cell) for cell in rest))


def _table(caption: str, heads: Iterable[str], bodies: list[Safe]) -> Safe:
    top = tag("thead", tag("tr", *(tag("th", head, scope="col") for head in heads)))
    # keys reach it, for on a narrow screen it scrolls
    return tag("table", tag("caption", caption), top, *bodies, tabindex="0")


def bars_table(bars: Bars, unit_set: str) -> Safe:
    """Label, figure and words of every bar."""
    rows = [(bar.label, figure_of(bars, bar, unit_set), bar.words) for bar in bars.bars]
    wide = 3 if any(bar.words for bar in bars.bars) else 2
    heads = ("Of what", kind_of(bars.like).name.capitalize(), "In words")[:wide]
    return _table(f"{bars.title}.", heads, [tag("tbody", *(_row(row[:wide]) for row in rows))])


def chart_csv(chart: Chart, unit_set: str) -> str:
    """All that is drawn as comma-separated values, RFC 4180, six significant figures."""
    columns = _columns(chart, unit_set)
    return csv_text(("Line", *columns.heads), _csv_rows(chart, columns))


def _csv_rows(chart: Chart, columns: Columns) -> Iterator[Row]:
    def row(label: str, x: float | None, y: float | None) -> Row:
        across = "" if x is None else columns.x.out_of_si(x)
        return label, across, "" if y is None else columns.y.out_of_si(y)

    for line in chart.lines:
        yield from (row(line.label, x, y) for x, y in line.points)
    for band in chart.bands:
        yield from (row(f"{band.label}, lowest", x, low) for x, low, _ in band.points)
        yield from (row(f"{band.label}, highest", x, high) for x, _, high in band.points)
    yield from (row(limit.label, None, limit.y) for limit in chart.limits)
    yield from (row(mark.label, mark.x, mark.y) for mark in chart.marks)


def bars_csv(bars: Bars, unit_set: str) -> str:
    """As `chart_csv`, of bars."""
    unit = bars.like.usual(unit_set)
    rows = ((bar.label, unit.out_of_si(bar.value), bar.words) for bar in bars.bars)
    return csv_text(
        ("Of what", _head(kind_of(bars.like).name.capitalize(), unit), "In words"), rows
    )


def train_table(train: Train, unit_set: str) -> Safe:
    """What stands where, and the figures behind it."""
    rows = []
    for place in train.places:
        told = [
            written(track.like.usual(unit_set).out_of_si(figure), track.digits)
            for track, figure in zip(train.tracks, place.figures, strict=True)
        ]
        rows.append(_row((place.label, *told)))
    heads = ("What", *_track_heads(train, unit_set))
    return _table(f"{train.title}.", heads, [tag("tbody", *rows)])


def _track_heads(train: Train, unit_set: str) -> list[str]:
    return [_head(track.name, track.like.usual(unit_set)) for track in train.tracks]


def train_csv(train: Train, unit_set: str) -> str:
    """As `chart_csv`, of a train."""
    units = [track.like.usual(unit_set) for track in train.tracks]
    rows = list[Row]()
    for place in train.places:
        told = [unit.out_of_si(one) for unit, one in zip(units, place.figures, strict=True)]
        rows.append((place.label, *told, place.why))
    return csv_text(("What", *_track_heads(train, unit_set), "Why it stands there"), rows)


def csv_text(head: Row, rows: Iterable[Row]) -> str:
    """Comma-separated values, RFC 4180."""
    return "".join(",".join(map(_cell, row)) + "\r\n" for row in [head, *rows])


def _cell(content: str | float) -> str:
    """A cell; text that a spreadsheet would take for a formula gets an apostrophe before it."""
    if not isinstance(content, str):
        return plainly_written(content, 6)
    guard = "'" if content.lstrip().startswith(_STARTS_FORMULA) else ""
    doubled = content.replace('"', '""')
    return f'"{guard}{doubled}"' if content else ""


def csv_link(csv: str, name: str) -> Safe:
    """A link that saves the figures. The mark at their start tells a spreadsheet it is UTF-8."""
    data = b2a_base64(f"\ufeff{csv}".encode(), newline=False).decode()
    link = tag(
        "a",
        "Download the figures (CSV)",
        href=f"data:text/csv;charset=utf-8;base64,{data}",
        download=f"{name}.csv",
    )
    return tag("p", link, class_="chart-file")
