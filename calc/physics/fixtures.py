"""What the fixtures of a house take at once: by fixture units, and by counting every mix."""

from bisect import bisect_left
from collections.abc import Mapping
from itertools import accumulate
from math import comb
from typing import NamedTuple

from calc.units import gpm

STEP = 0.1 * gpm  # mixes are counted in steps of it; the flows below are whole numbers of them


class Fixture(NamedTuple):
    """One kind of fixture in a house.

    units -- its load, water supply fixture units
    busy  -- chance that it runs at a moment of the busiest hour
    flow  -- what it takes while it runs, m³/s
    """

    units: float
    busy: float
    flow: float


# Units: [ipc-e103], "total"; those of shower, toilet and washer from memory.
# Chances and flows: [buchberger-2017], from memory.
FIXTURES = {
    "lavatories": Fixture(0.7, 0.02, 1.5 * gpm),
    "kitchen_sinks": Fixture(1.4, 0.02, 2.2 * gpm),
    "tub_showers": Fixture(1.4, 0.055, 5.5 * gpm),
    "tubs": Fixture(1.4, 0.01, 5.5 * gpm),
    "showers": Fixture(1.4, 0.045, 2.0 * gpm),
    "toilets": Fixture(2.2, 0.01, 3.0 * gpm),
    "washers": Fixture(1.4, 0.05, 3.5 * gpm),
    "dishwashers": Fixture(1.4, 0.005, 1.3 * gpm),
    "laundry_sinks": Fixture(1.4, 0.02, 2.0 * gpm),
}
BATHROOM = 3.6  # units of lavatory, toilet and tub or shower together [ipc-e103]
BATHING = ("tub_showers", "tubs", "showers")

type Counts = Mapping[str, float]  # how many of each kind; a half is one used half as much
type Curve = tuple[tuple[float, float], ...]  # fixture units and gpm

# [nspc-b54], the columns for flush tanks and for flush valves.
NSPC_TANKS: Curve = (
    (3, 3), (4, 4), (5, 4.5), (6, 5), (7, 6), (8, 7), (9, 7.5), (10, 8), (11, 8.5), (12, 9),
    (13, 10), (14, 10.5), (120, 49), (140, 53), (160, 57), (180, 61), (200, 65), (225, 70),
    (250, 75), (300, 85), (400, 105), (500, 125), (750, 170), (1000, 210),
)  # fmt: skip
NSPC_VALVES: Curve = (
    (5, 22), (6, 23), (7, 24), (8, 25), (9, 26), (10, 27), (11, 28), (12, 29), (13, 29.5), (14, 30),
    (120, 74), (140, 78), (160, 83), (180, 87), (200, 91), (225, 95), (250, 100), (300, 110),
    (400, 125), (500, 140), (750, 175), (1000, 210),
)  # fmt: skip
# [il-890-n], flush tanks.
ILLINOIS: Curve = (
    (2, 2), (4, 3), (6, 5), (8, 6.5), (10, 8), (12, 9.2), (14, 10.4), (16, 11.6), (20, 14),
    (25, 17), (30, 20), (35, 22.5), (40, 25), (45, 27), (50, 29), (60, 32), (70, 35), (80, 38),
    (90, 41), (100, 43.5), (120, 48), (140, 52.5), (160, 57), (180, 61), (200, 65), (225, 70),
    (250, 75), (275, 80), (300, 85), (350, 95), (400, 105), (450, 115), (500, 125), (600, 145),
    (750, 170), (1000, 208), (1250, 240), (1500, 267), (1750, 294), (2000, 320),
)  # fmt: skip
# [ipc-e103-3], flush tanks; from memory.
INTERNATIONAL: Curve = (
    (1, 3), (5, 9.4), (10, 14.6), (20, 19.6), (30, 23.3), (40, 26.3), (50, 29.1), (100, 43.5),
    (200, 65), (500, 124), (1000, 208),
)  # fmt: skip

# [hunter-1940], from memory: a toilet's flush tank runs 60 s in every 300 s, at 4 gpm.
HUNTER_BUSY, HUNTER_FLOW = 60 / 300, 4 * gpm


def load_units(counts: Counts) -> float:
    """Water supply fixture units of a house; a lavatory, toilet and tub together count less.

    counts -- how many of each kind; a tub with a shower over it is one fixture. A second
              lavatory in one bathroom counts alone

    >>> two_baths = {"lavatories": 2, "toilets": 2, "tub_showers": 1, "showers": 1}
    >>> round(load_units(two_baths), 1)
    7.2

    Source: load values of [ipc-e103].
    """
    alone = sum(FIXTURES[name].units * count for name, count in counts.items())
    parts = FIXTURES["lavatories"].units + FIXTURES["toilets"].units + FIXTURES["showers"].units
    return alone - bathrooms(counts) * (parts - BATHROOM)


def bathrooms(counts: Counts) -> float:
    """How many bathrooms the fixtures make: lavatory, toilet, tub or shower.

    counts -- as in `load_units`

    >>> bathrooms({"lavatories": 3, "toilets": 2, "tub_showers": 1, "showers": 1})
    2

    Source: the bathroom group of [ipc-e103].
    """
    bathing = sum(counts.get(name, 0) for name in BATHING)
    return min(counts.get("lavatories", 0), counts.get("toilets", 0), bathing)


def neighbours(curve: Curve, units: float) -> tuple[tuple[float, float], tuple[float, float]]:
    """The two rows of a curve that a load lies between. Under the first row, that row twice.

    curve, units -- as in `curve_flow`

    Raises ValueError past the last row.

    >>> neighbours(NSPC_TANKS, 13.5)
    ((13, 10), (14, 10.5))

    Source: search.
    """
    place = bisect_left(curve, (units, 0.0))
    if place == len(curve):
        raise ValueError(f"no row for {units} fixture units")
    return curve[max(place - 1, 0)], curve[place]


def curve_flow(curve: Curve, units: float) -> float:
    """Peak flow for a load by a published curve, m³/s: a straight line between its rows.

    curve -- rows of fixture units and gpm. They differ by a factor of two in a small house:
             name the one that is used
    units -- load in the units that belong to the curve's code

    Under the first row its flow is taken. Made for many fixtures with the flows of 1940.

    >>> curve_flow(NSPC_TANKS, 13.5) / gpm
    10.25

    Source: the curves' own tables.
    """
    (left, low), (right, high) = neighbours(curve, units)
    return (low if left == right else low + (high - low) * (units - left) / (right - left)) * gpm


def flow_chances(counts: Counts) -> dict[int, float]:
    """Chance of each flow, in STEPs of it, at a moment of the busiest hour.

    Every mix of open and shut fixtures is counted with its chance, the mixes of the same
    flow together: exhaustive enumeration.

    counts -- how many of each kind. The part of one that stands behind the point is a fixture
              used so much less. Each runs or not whatever the others do, which a family that
              showers before school makes untrue

    >>> chances = flow_chances({"toilets": 2})
    >>> {flow: round(chance, 4) for flow, chance in chances.items()}
    {0: 0.9801, 30: 0.0198, 60: 0.0001}

    Source: [buchberger-2017]; the same as the convolution of binomial distributions.
    """
    chances = {0: 1.0}
    for name, count in counts.items():
        busy, step = FIXTURES[name].busy, round(FIXTURES[name].flow / STEP)
        whole = int(count)
        alike = {step * n: binomial(whole, n, busy) for n in range(whole + 1)}
        part = (count - whole) * busy
        chances = _mixed(_mixed(chances, alike), {0: 1 - part, step: part} if part else {0: 1.0})
    return dict(sorted(chances.items()))


def _mixed(one: Mapping[int, float], other: Mapping[int, float]) -> dict[int, float]:
    """Chances of the sum of two flows that do not know of each other: a convolution."""
    mixed = dict[int, float]()
    for here, chance in one.items():
        for there, too in other.items():
            mixed[here + there] = mixed.get(here + there, 0.0) + chance * too
    return mixed


def peak_flow(chances: Mapping[int, float], served: float, quiet: bool = False) -> float:
    """Least flow that so many moments do not pass, m³/s; 0 where nothing can run.

    chances -- of each flow, from `flow_chances`
    served  -- share of the moments, 0.99 by custom
    quiet   -- whether moments in which nothing runs count. In a small house most do: then
               the answer says little about those who stand under a shower

    >>> peak_flow(flow_chances({"toilets": 2}), 0.99) / gpm
    3.0

    Source: [buchberger-2017], zero-truncated for small houses.
    """
    still = 0.0 if quiet else chances[0]
    wanted = served * (1 - still) + still - 1e-12  # one rounding more or less is no moment
    at_most = zip(chances, accumulate(chances.values()), strict=True)
    return STEP * next(flow for flow, chance in at_most if chance >= wanted)


def most_at_once(count: int, busy: float, missed: float = 0.01) -> int:
    """Fewest of alike fixtures that must be served, so that more want water in `missed` moments.

    count  -- how many there are
    busy   -- chance that one runs at a moment: seconds it runs over seconds between its starts
    missed -- share of the moments in which more may run

    >>> most_at_once(10, 9 / 300), most_at_once(10, 60 / 300)
    (2, 5)

    Source: [hunter-1940], from memory; binomial distribution.
    """
    at_most = 0.0
    for running in range(count):
        at_most += binomial(count, running, busy)
        if 1 - at_most <= missed:
            return running
    return count


def binomial(count: int, running: int, busy: float) -> float:
    """Chance that exactly so many of alike fixtures run at once.

    count, busy -- as in `most_at_once`
    running     -- how many run, 0 to count

    >>> round(binomial(2, 1, 0.2), 2)
    0.32

    Source: the binomial distribution.
    """
    idle = (1 - busy) ** (count - running)
    return float(comb(count, running) * busy**running * idle)
