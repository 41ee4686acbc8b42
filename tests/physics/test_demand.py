"""The weeks of draws against the published figures they are made from, and scipy.stats."""

import json
import subprocess
import sys
from hashlib import sha256
from itertools import pairwise
from math import sqrt
from statistics import fmean, variance

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import gamma, nbinom, poisson

from calc.physics.demand import (
    BATH,
    DISHES,
    FILLS,
    FLUSH,
    HOURS,
    SHOWER,
    TAP,
    USES,
    Draws,
    Household,
    day_counts,
    day_volume,
    staggered,
    week_of_draws,
)
from calc.units import day, gal, gpm, hour, minute
from tests.model.given import steady

WEEKS = 200
QUIET = Household(3, 0, 2, 25 * gal, 6 * gpm, 0.0, 5.0)
QUARRY_ROAD = QUIET._replace(loads=6, hose_days=0.15)


def weeks(household: Household, many: int = WEEKS) -> list[Draws]:
    return [week_of_draws(household, number) for number in range(many)]


def day_volumes(household: Household) -> list[float]:
    """Gallons of each day of all weeks, by the day on which a draw starts."""
    volumes = [0.0] * (7 * WEEKS)
    for number, draws in enumerate(weeks(household)):
        for start, pulse in draws:
            volumes[7 * number + min(6, int(start // day))] += pulse.volume / gal
    return volumes


def within_noise(mean: float, volumes: list[float]) -> bool:
    """Whether a mean of these lies within four standard errors of what it should be."""
    return abs(fmean(volumes) - mean) < 4 * sqrt(variance(volumes) / len(volumes))


def test_a_house_of_the_published_size_takes_the_published_water() -> None:
    """[deoreo-2016]: 33.1 + 28 + 26 + 4 + 2 gal a house and day without laundry and leaks."""
    house = QUIET._replace(people=2.65)
    assert day_volume(house) / gal == pytest.approx(33.1 + 28 + 26 + 4 + 2, rel=1e-9)
    volumes = day_volumes(house)
    assert within_noise(93.1, volumes)
    assert fmean(volumes) == pytest.approx(93.1, rel=0.03)


def test_laundry_of_the_published_size() -> None:
    """[deoreo-2016]: 22.7 gal a house and day, at 0.30 loads a person and 28.6 gal a load."""
    each = 22.7 / (0.30 * 2.65)
    house = QUIET._replace(people=0, loads=7 * 0.30 * 2.65, fill=each / FILLS * gal)
    volumes = day_volumes(house)
    assert fmean(volumes) == pytest.approx(22.7, rel=0.05)
    assert day_volume(house) / gal == pytest.approx(22.7, rel=1e-9)


def test_each_use_is_of_the_published_size() -> None:
    """[deoreo-2016] 15.8 gal a shower of 7.5 min; [buchberger-1996] 8,000 demands a year."""
    assert SHOWER.volume / SHOWER.flow / minute == pytest.approx(7.5, abs=0.05)
    assert FLUSH.volume / gal == pytest.approx(2.5, abs=0.05)
    assert 365 * sum(use.each_day for use in USES) == pytest.approx(8000, rel=1e-9)
    # [blokker-2010]: means of the kinds of use of a tap are 15 to 48 s
    assert 15 < TAP.volume / TAP.flow < 48
    pulses = [pulse for draws in weeks(QUIET) for _, pulse in draws]
    many = len(pulses)
    for use in (FLUSH, SHOWER, BATH, DISHES, TAP):
        mine = [pulse.seconds for pulse in pulses if pulse.flow == use.flow]
        share = use.each_day / sum(each.each_day for each in USES)
        assert len(mine) / many == pytest.approx(share, rel=0.12)
        assert fmean(mine) == pytest.approx(use.volume / use.flow, rel=0.03)


@pytest.mark.parametrize("use", [SHOWER, TAP])
def test_lengths_are_gamma_distributed(use: object) -> None:
    """scipy.stats.gamma: quartiles of what was drawn."""
    assert isinstance(use, type(SHOWER))
    mine = sorted(p.seconds for draws in weeks(QUIET) for _, p in draws if p.flow == use.flow)
    for share in (0.1, 0.25, 0.5, 0.75, 0.9):
        mean = use.volume / use.flow
        assert mine[int(share * len(mine))] == pytest.approx(
            gamma.ppf(share, use.stages, scale=mean / use.stages), rel=0.06
        )


@steady
@given(st.floats(0.5, 200), st.floats(1.0, 20.0))
def test_day_counts_are_negative_binomial(mean: float, uneven: float) -> None:
    """scipy.stats.nbinom, and poisson where the days are as even as chance leaves them."""
    counts = day_counts(mean, uneven)
    if uneven > 1 + 1e-6:
        size = mean / (uneven - 1)
        expected = nbinom.cdf(range(len(counts)), size, 1 / uneven)
    else:
        expected = poisson.cdf(range(len(counts)), mean)
    assert counts == pytest.approx(expected, abs=1e-7)
    assert counts[-1] == pytest.approx(1, abs=1e-6)


@pytest.mark.parametrize("uneven", [1.0, 2.0, 5.0, 12.0])
def test_moments_of_the_days(uneven: float) -> None:
    """Negative binomial: mean m, variance u m, over 1,400 days; their noise is that of chance."""
    house = QUIET._replace(uneven=uneven)
    numbers = [0.0] * (7 * WEEKS)
    for week, draws in enumerate(weeks(house)):
        for start, _ in draws:
            numbers[7 * week + int(start // day)] += 1
    mean = 3 * 8000 / 365
    assert within_noise(mean, numbers)
    assert variance(numbers) / mean == pytest.approx(uneven, rel=0.2)


def test_hours_of_the_day() -> None:
    """The weights: each hour, from 3 at night, has its share of the uses."""
    found = [0] * 24
    for draws in weeks(QUIET):
        for start, _ in draws:
            found[int(start % day // hour)] += 1
    for weight, number in zip(HOURS, found, strict=True):
        share = weight / sum(HOURS)
        assert number / sum(found) == pytest.approx(share, abs=4 * sqrt(share / sum(found)) + 1e-3)


def test_loads_lie_together_on_wash_days() -> None:
    """By reason: two wash days a week, three loads of two fills on each, one after another."""
    house = QUIET._replace(people=0, loads=6)
    for draws in weeks(house, 30):
        days = {int((start + 3 * hour) // day) for start, _ in draws}
        assert (len(draws), len(days)) == (12, 2)
        assert {pulse.volume for _, pulse in draws} == {25 * gal}


def test_the_hose_changes_nothing_else() -> None:
    """By reason: what a fix does not change stays, draw for draw."""
    for number in range(20):
        with_hose = week_of_draws(QUARRY_ROAD, number)
        without = week_of_draws(QUARRY_ROAD._replace(hose_days=0.0), number)
        assert tuple(one for one in with_hose if one[1].flow != 5 * gpm) == without


def test_staggered_draws_wait_for_each_other() -> None:
    """By reason: none is lost, none comes earlier, and big ones keep their distance."""
    for draws in weeks(QUARRY_ROAD, 30):
        moved = staggered(draws, 10 * gal, 30 * minute)
        assert sorted(pulse for _, pulse in moved) == sorted(pulse for _, pulse in draws)
        assert sum(start for start, _ in moved) >= sum(start for start, _ in draws)
        big = [(start, start + p.seconds) for start, p in moved if p.volume >= 10 * gal]
        assert all(b[0] >= a[1] + 30 * minute - 1e-6 for a, b in pairwise(big))
        assert list(moved) == sorted(moved)


def test_the_same_seed_gives_the_same_draws_in_a_new_python() -> None:
    """By reason: neither the order of hashes nor what was drawn before matters."""
    code = (
        "import json; from calc.physics.demand import *; from calc.units import gal, gpm\n"
        "house = Household(3, 6, 2, 25 * gal, 6 * gpm, 0.15, 5.0)\n"
        "print(json.dumps([week_of_draws(house, week) for week in (7, 0)]))"
    )
    told = subprocess.run(
        [sys.executable, "-c", code],
        env={"PYTHONHASHSEED": "7", "PYTHONPATH": "."},
        capture_output=True,
        text=True,
        check=True,
    )
    mine = json.dumps([week_of_draws(QUARRY_ROAD, week) for week in (7, 0)])
    assert sha256(told.stdout.strip().encode()).digest() == sha256(mine.encode()).digest()


def test_weeks_differ() -> None:
    """By reason: another number is another week."""
    assert len({week_of_draws(QUARRY_ROAD, number) for number in range(50)}) == 50
