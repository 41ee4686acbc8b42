"""A train of treatment as SVG: its boxes down the page, and beside each the figures behind it."""

from calc.charts import Track, Train
from calc.figures import written
from calc.views.html import Safe, tag
from calc.views.lettering import WIDTH, short
from calc.views.train_symbols import INK, PIPE, WATER, symbol
from calc.views.words import shown

HEAD = 62.0  # over the first place
ROW = 92.0  # from one place to the next
TRACKS = 92.0  # where the tracks begin
MARGIN = 9.0  # of a dot from the edge of its track


def plot_train(train: Train, unit_set: str) -> tuple[list[Safe], float]:
    """What is drawn of the train, and how tall it is."""
    last = HEAD + ROW * (len(train.places) - 1)
    drawn = [_line(f"M{PIPE} {HEAD + 40}V{short(last + 40)}", WATER, "4")]
    for row, place in enumerate(train.places):
        top = HEAD + ROW * row
        drawn.append(symbol(place.symbol, top + 20))
        wrong = " (out of place)" if place.wrong else ""
        drawn.append(_word(place.label + wrong, 4, top + 12, "start", "700"))
    wide = (WIDTH - TRACKS) / len(train.tracks)
    for column, track in enumerate(train.tracks):
        unit = track.like.usual(unit_set)
        told = [unit.out_of_si(place.figures[column]) for place in train.places]
        drawn += _track(track, unit.symbol, told, wide, TRACKS + wide * column)
    return drawn, last + ROW - 10


def _track(track: Track, unit: str, told: list[float], wide: float, left: float) -> list[Safe]:
    """One quantity down the page: the further right, the more of it."""
    low, room = min(told), max(told) - min(told)
    middle = left + wide / 2
    dots = []
    for row, value in enumerate(told):
        share = (value - low) / room if room else 0.5
        x = left + MARGIN + share * (wide - 2 * MARGIN)
        dots.append((x, HEAD + ROW * row + 58))
    path = "M" + "L".join(f"{short(x)} {short(y)}" for x, y in dots)
    heads = [*track.label.replace("\u00ad", "- ").split(" "), unit.split(" ", maxsplit=1)[0]]
    drawn = [_word(head, middle, 16 + 17 * n, "middle") for n, head in enumerate(heads) if head]
    drawn.append(_line(path, INK, "1.6"))
    for (x, y), value in zip(dots, told, strict=True):
        circle = {"stroke": INK, "stroke_width": "1.6", "fill": "var(--ground, #fff)"}
        drawn.append(tag("circle", cx=short(x), cy=short(y), r="4", **circle))
        drawn.append(_word(written(value, track.digits), middle, y - 14, "middle"))
    return drawn


def _line(path: str, stroke: str, width: str) -> Safe:
    return tag("path", d=path, fill="none", stroke=stroke, stroke_width=width)


def _word(text: str, x: float, y: float, anchor: str, weight: str | None = None) -> Safe:
    """A word on a rim of the ground's color, so that a line behind it does not strike it out."""
    rim = {"stroke": "var(--ground, #fff)", "stroke_width": "5", "stroke_linejoin": "round"}
    place = {"x": short(x), "y": short(y), "text_anchor": None if anchor == "start" else anchor}
    look = rim | {"paint_order": "stroke", "font_weight": weight}
    return tag("text", text, class_="chart-text", **(place | look))


def train_reasons(train: Train) -> Safe:
    """Why each box stands where it does, down the train."""
    told = [place for place in train.places if place.why]
    items = [tag("li", tag("strong", f"{place.label}. "), place.why) for place in told]
    return tag("ol", *items, class_="train-reasons")


def train_words(train: Train, unit_set: str) -> str:
    """The train told from the first place to the last."""
    said = [train.says]
    for place in train.places:
        figures = zip(train.tracks, place.figures, strict=True)
        told = ", ".join(
            f"{track.name} {shown(figure, track.like, unit_set, track.digits)}"
            for track, figure in figures
        )
        wrong = ", out of place" if place.wrong else ""
        said.append(f"{place.label}{wrong}: {told}.")
    return " ".join(said)
