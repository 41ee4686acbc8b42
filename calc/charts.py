"""What a chart shows, in SI. `calc.views.chart` draws it, words it and writes its figures."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isfinite
from typing import NamedTuple, Protocol

from calc.quantity import Kind, Unit

MOST_LINES = 4  # as many as dashes can tell apart on a phone


class Like(Protocol):
    """An input or an output."""

    @property
    def kind(self) -> Kind: ...

    def usual(self, unit_set: str) -> Unit: ...


class Axis(NamedTuple):
    """An axis of a chart; figures are drawn in the unit of the kind, input or output `like`.

    tenfold -- along the level axis each equal step is ten times as much; all are over nothing
    """

    label: str
    like: Kind | Like
    tenfold: bool = False


class Line(NamedTuple):
    """Points joined in their order, SI; no line leads to or from one that has no y.

    steps -- for a quantity that jumps: each y holds until the next x
    """

    label: str
    points: tuple[tuple[float, float | None], ...]
    steps: bool = False


class Band(NamedTuple):
    """How sure a line is: x, lowest y, highest y, in SI."""

    label: str
    points: tuple[tuple[float, float, float], ...]


class Mark(NamedTuple):
    """A point worth naming, SI. `here`: it is the reader's own case."""

    label: str
    x: float
    y: float
    here: bool = False


class Limit(NamedTuple):
    """A level drawn across the whole chart, SI."""

    label: str
    y: float


@dataclass(frozen=True)
class Chart:
    """Lines over two axes. `says` tells a reader who cannot see it what it shows.

    Raises ValueError for a number that is not finite, for more lines than can be told
    apart, and where nothing is left to draw.
    """

    title: str
    says: str
    x: Axis
    y: Axis
    lines: tuple[Line, ...]
    limits: tuple[Limit, ...] = ()
    marks: tuple[Mark, ...] = ()
    bands: tuple[Band, ...] = ()

    def __post_init__(self) -> None:
        numbers = [number for place in self.places() for number in place]
        if not numbers or not all(map(isfinite, numbers)):
            raise ValueError(f"{self.title}: nothing to draw, or a number that is not finite")
        if not all(isfinite(limit.y) for limit in self.limits):
            raise ValueError(f"{self.title}: a limit that is not finite")
        if len(self.lines) > MOST_LINES:
            raise ValueError(f"{self.title}: more than {MOST_LINES} lines")

    def places(self) -> Iterator[tuple[float, float]]:
        """Every x and y that is drawn, limits apart."""
        for line in self.lines:
            yield from ((x, y) for x, y in line.points if y is not None)
        for band in self.bands:
            for x, low, high in band.points:
                yield from ((x, low), (x, high))
        yield from ((mark.x, mark.y) for mark in self.marks)


class Bar(NamedTuple):
    """One bar: its length in SI, not under 0, and what it means in words."""

    label: str
    value: float
    words: str = ""


@dataclass(frozen=True)
class Bars:
    """Bars under each other, in the order given. A share is drawn against the whole.

    like -- the kind, input or output in whose unit the lengths are told
    """

    title: str
    says: str
    like: Kind | Like
    bars: tuple[Bar, ...]

    def __post_init__(self) -> None:
        if not self.bars or not all(isfinite(bar.value) and bar.value >= 0 for bar in self.bars):
            raise ValueError(f"{self.title}: no bars, or a length that is none")


class Track(NamedTuple):
    """One quantity told behind every place of a train. Its name is parted at soft hyphens where
    it stands over its track; figures are told in the unit of the kind `like`."""

    label: str
    like: Kind
    digits: int = 3

    @property
    def name(self) -> str:
        """Its name in one piece."""
        return self.label.replace("\u00ad", "")


class Place(NamedTuple):
    """One thing on the water's way.

    symbol  -- which picture it has, a key of `calc.views.train_symbols`
    why     -- why it stands there
    wrong   -- whether it should stand elsewhere
    figures -- behind it, SI, one for each track
    """

    symbol: str
    label: str
    why: str
    wrong: bool
    figures: tuple[float, ...]


@dataclass(frozen=True)
class Train:
    """A train of treatment drawn down the page, and what it does to the water, step by step."""

    title: str
    says: str
    tracks: tuple[Track, ...]
    places: tuple[Place, ...]

    def __post_init__(self) -> None:
        told = [figure for place in self.places for figure in place.figures]
        if not told or not all(map(isfinite, told)):
            raise ValueError(f"{self.title}: nothing to draw, or a number that is not finite")
        if any(len(place.figures) != len(self.tracks) for place in self.places):
            raise ValueError(f"{self.title}: not one figure for each track")


type Picture = Chart | Bars | Train


class Moment(NamedTuple):
    """One moment of a run, SI. `house` and `well`: how full the pressure tanks are, 0 to 1.

    on -- of "float", "pump 1", "pump 2", "locked", "blower", "air" what is so
    """

    time: float
    says: str
    level: float
    house: float
    well: float
    inflow: float
    pumped: float
    delivered: float
    on: frozenset[str]


@dataclass(frozen=True)
class Scene:
    """The whole system drawn at the moments of a run, one at a time; first the one `shown`.

    full, opens -- levels at which the float closes and opens the inlet, m³
    limit       -- "before" or "after" the house pressure tank
    """

    title: str
    says: str
    moments: tuple[Moment, ...]
    shown: int
    full: float
    opens: float
    limit: str

    def __post_init__(self) -> None:
        if not 0 <= self.shown < len(self.moments):
            raise ValueError(f"{self.title}: no moment to show")


def kind_of(like: Kind | Like) -> Kind:
    """The kind of quantity that figures like these are."""
    return like if isinstance(like, Kind) else like.kind
