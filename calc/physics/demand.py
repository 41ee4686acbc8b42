"""What a house takes, week by week, drawn by chance.

The same week of the same house is the same list of draws in every Python: Mersenne twister,
then only sums, products, quotients and tables whose entries are rounded past the last digits.
"""

from bisect import bisect
from functools import lru_cache
from math import exp, log
from random import Random
from typing import NamedTuple

from calc.units import day, gal, gpm, hour, minute

WEEK = 7 * day
WEEKS_A_YEAR = 365 * day / WEEK
MORNING = 3 * hour  # a week starts at this hour of the night, when both tanks stand full
PEOPLE_THERE = 2.65  # in the houses of [deoreo-2016], whose figures are for a house
SLOTS = 2048  # equally likely small uses
MOMENTS = 8192  # equally likely times of the day
DIGITS = 12  # of a table's entry: the last digits of a logarithm differ from Python to Python


class Pulse(NamedTuple):
    """One use of water: a steady flow for a time.

    flow       -- m³/s with nothing holding it back
    seconds    -- how long it lasts with its flow met
    volume     -- of both, m³
    keeps_time -- whether it lasts as long when the flow is less, as a shower does; else it
                  goes on until it has its volume, as a washer does
    """

    flow: float
    seconds: float
    volume: float
    keeps_time: bool


type Draws = tuple[tuple[float, Pulse], ...]  # with the start of each, s; in their order


class Use(NamedTuple):
    """One way in which water is used, over and over.

    each_day -- times a day for each person
    flow     -- m³/s with nothing holding it back
    volume   -- mean of one use, m³
    erlang   -- stages of the gamma distribution of its length: 1 exponential, 4 half as
                scattered as its mean, 0 always the same
    keeps_time -- as in `Pulse`
    """

    each_day: float
    flow: float
    volume: float
    stages: int
    keeps_time: bool


# Gallons a house and day from [deoreo-2016]: toilets 33.1, showers 28, taps 26, baths 4,
# dishwashers 2; a shower 15.8 gal at 2.1 gpm, 5 flushes a person, 6.1 gal a load of dishes.
# Flows of toilet, tub and dishwasher: [epa-private-water] and [ipc-604-3]. A bath takes 24 gal
# [wsu-shore]. Leaks (17) and others (5) do not move the tank and are left out.
FLUSH = Use(5.0, 3 * gpm, 33.1 / PEOPLE_THERE / 5 * gal, 0, False)
SHOWER = Use(28 / PEOPLE_THERE / 15.8, 2.1 * gpm, 15.8 * gal, 4, True)
BATH = Use(4 / PEOPLE_THERE / 24, 4 * gpm, 24 * gal, 0, False)
DISHES = Use(4 * 2 / PEOPLE_THERE / 6.1, 2 * gpm, 6.1 / 4 * gal, 0, False)  # in four fills
# As many uses of a tap as make up the 8,000 demands a person and year of [buchberger-1996].
_TAPS = 8000 / 365 - FLUSH.each_day - SHOWER.each_day - BATH.each_day - DISHES.each_day
TAP = Use(_TAPS, 1.2 * gpm, 26 / PEOPLE_THERE / _TAPS * gal, 1, True)
USES = (FLUSH, SHOWER, BATH, DISHES, TAP)

# Share of the uses in each hour from 3 at night: common practice, no source. Two peaks.
HOURS = (1, 2, 6, 12, 14, 11, 9, 7, 6, 6, 5, 5, 5, 7, 9, 11, 11, 9, 8, 7, 5, 3, 2, 1)
FILLS = 2  # wash and rinse; common practice, no source, as are the next two
FILL_APART = 20 * minute
LOAD_APART = 50 * minute
WASHING = (8 * hour, 16 * hour)  # the first load starts between; common practice, no source
HOSING = (9 * hour, 20 * hour)  # common practice, no source


class Household(NamedTuple):
    """Who lives there and what they do. Volumes m³, flows m³/s.

    people    -- at home
    loads     -- of laundry a week
    wash_days -- a week; the loads of one day follow each other
    fill, fill_flow -- one fill of the washer; a load takes two
    hose_days -- share of days on which a hose on treated water runs
    uneven    -- variance of a day's uses over their mean: 1 is pure chance (Poisson)
    hose_time, hose_flow -- of one watering
    uses, hours -- small uses, and when in the day they happen
    """

    people: float
    loads: float
    wash_days: float
    fill: float
    fill_flow: float
    hose_days: float
    uneven: float
    hose_time: float = 20 * minute
    hose_flow: float = 5 * gpm
    uses: tuple[Use, ...] = USES
    hours: tuple[float, ...] = HOURS


def day_volume(household: Household) -> float:
    """Mean water a day, m³: people, laundry and hose.

    Source: the means of the parts, as in `Household`.
    """
    each = sum(use.each_day * use.volume for use in household.uses)
    washed = household.loads / 7 * FILLS * household.fill
    hosed = household.hose_days * household.hose_time * household.hose_flow
    return household.people * each + washed + hosed


@lru_cache(maxsize=128)  # some 6 MB; a change of the plant then costs half
def week_of_draws(household: Household, week: int) -> Draws:
    """The draws of one week, by its number; the first starts after 0, at 3 at night.

    Each day's number of small uses is negative binomial: a busy day is busy in all of them.
    Laundry, hose and small uses have streams of chance of their own, so that a house
    without the hose has the same week otherwise.

    Source: rectangular pulses of [buchberger-1995]; days more uneven than Poisson's,
    [buchberger-1996]; negative binomial as in [blokker-2010] for the kitchen tap.
    """
    draws = _small_uses(household, Random(3 * week))
    draws += _laundry(household, Random(3 * week + 1))
    draws += _hose(household, Random(3 * week + 2))
    draws.sort()
    return tuple(draws)


def _small_uses(household: Household, chance: Random) -> list[tuple[float, Pulse]]:
    mean = household.people * sum(use.each_day for use in household.uses)
    counts = day_counts(mean, household.uneven)
    pulses, moments, random = _pulses(household.uses), _moments(household.hours), chance.random
    return [
        (start + moments[int(MOMENTS * random())], pulses[int(SLOTS * random())])
        for start in range(0, int(WEEK), int(day))
        for _ in range(bisect(counts, random()))
    ]


def _laundry(household: Household, chance: Random) -> list[tuple[float, Pulse]]:
    """Loads one after the other on wash days that lie anywhere in the week."""
    seconds, draws = household.fill / household.fill_flow, []
    fill = Pulse(household.fill_flow, seconds, household.fill, False)
    for each in sorted(chance.sample(range(7), _whole(household.wash_days, chance))):
        first = each * day + _between(WASHING, chance)
        for load in range(_whole(household.loads / household.wash_days, chance)):
            draws += [(first + load * LOAD_APART + n * FILL_APART, fill) for n in range(FILLS)]
    return draws


def _hose(household: Household, chance: Random) -> list[tuple[float, Pulse]]:
    flow, seconds = household.hose_flow, household.hose_time
    watering, draws = Pulse(flow, seconds, flow * seconds, True), []
    for each in range(7):
        hosed, start = chance.random() < household.hose_days, _between(HOSING, chance)
        if hosed:
            draws.append((each * day + start, watering))
    return draws


def staggered(draws: Draws, least: float, apart: float) -> Draws:
    """The same draws, the big ones one after another.

    least -- volume from which a draw is big, m³
    apart -- seconds from the end of one big draw to the start of the next, at least

    Source: a habit, put into rules here.
    """
    moved, free = [], 0.0
    for wanted, pulse in draws:
        is_big = pulse.volume >= least
        start = max(wanted, free) if is_big else wanted
        if is_big:
            free = start + pulse.seconds + apart
        moved.append((start, pulse))
    moved.sort()
    return tuple(moved)


def _whole(mean: float, chance: Random) -> int:
    """One of the two whole numbers around a mean, so that it is their mean."""
    return int(mean) + (chance.random() < mean - int(mean))


def _between(hours: tuple[float, float], chance: Random) -> float:
    """A moment between two hours of the clock, as seconds after a day's start."""
    return hours[0] + chance.random() * (hours[1] - hours[0]) - MORNING


@lru_cache(maxsize=8)
def day_counts(mean: float, uneven: float) -> tuple[float, ...]:
    """Chance that a day has at most 0, 1, 2 ... uses: negative binomial; Poisson for uneven = 1.

        p(n + 1) = p(n) (a + b / (n + 1)),   a = 1 - 1 / u,   b = m / u - a

    mean   -- m, uses a day
    uneven -- u, their variance over their mean, at least 1

    >>> [round(at_most, 4) for at_most in day_counts(2.0, 1.0)[:3]]
    [0.1353, 0.406, 0.6767]

    Source: recursion of the (a, b, 0) class [panjer-1981].
    """
    a = 1 - 1 / uneven
    b = mean / uneven - a
    p = _rounded(exp(-mean * (log(uneven) / (uneven - 1) if uneven > 1 else 1.0)))
    summed, at_most, n = p, [p], 0
    while summed < 1 - 1e-9 and n < 100 * (mean + 1):
        n += 1
        p *= a + b / n
        summed += p
        at_most.append(summed)
    return tuple(at_most)


@lru_cache(maxsize=8)
def _pulses(uses: tuple[Use, ...]) -> tuple[Pulse, ...]:
    """SLOTS equally likely small uses: each kind by its share, its lengths in equal slices."""
    whole, past = sum(use.each_day for use in uses), 0.0
    made: list[Pulse] = []
    for use in uses:
        past += use.each_day
        slices = round(past / whole * SLOTS) - len(made)
        for length in _slices(use.stages, slices):
            seconds = _rounded(use.volume / use.flow * length)
            made.append(Pulse(use.flow, seconds, use.flow * seconds, use.keeps_time))
    return tuple(made)


def _slices(stages: int, slices: int) -> list[float]:
    """Middles of equally likely slices of a gamma distribution, scaled to a mean of 1."""
    if not stages:
        return [1.0] * slices
    shares = [(n + 0.5) / slices for n in range(slices)]
    middles = [_gamma_middle(stages, share) for share in shares]
    return [middle * slices / sum(middles) for middle in middles]


def _gamma_middle(stages: int, share: float) -> float:
    """The length that a share of all stays under, in mean lengths of one stage."""
    if stages == 1:
        return -log(1 - share)
    low, high = 0.0, 30.0 * stages
    for _ in range(50):
        x = (low + high) / 2
        term = tail = 1.0
        for stage in range(1, stages):
            term *= x / stage
            tail += term
        low, high = (x, high) if 1 - exp(-x) * tail < share else (low, x)
    return low


@lru_cache(maxsize=8)
def _moments(hours: tuple[float, ...]) -> tuple[float, ...]:
    """MOMENTS equally likely times of a day, s after its start."""
    made, past = list[float](), 0.0
    for number, weight in enumerate(hours):
        share = weight / sum(hours) * MOMENTS
        first, last = round(past), round(past + share)
        made += [(number + (n + 0.5) / (last - first)) * hour for n in range(last - first)]
        past += share
    return tuple(made)


def _rounded(value: float) -> float:
    return float(f"{value:.{DIGITS}g}")
