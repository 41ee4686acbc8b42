"""Samples, counting and pairs: worked figures, and trials with counts left to chance."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.aerator_service import FLOC, floc_rate, time_to_limit
from calc.physics.radon_sample import (
    allowed_difference,
    at_draw,
    bubble_loss,
    count_doubt,
    counted,
    least_detectable,
)
from calc.physics.removal import removal, removal_doubt, removal_needed
from calc.units import L, day, gal, gram, hour, mg, minute, mL, pCi
from tests.model.given import steady

PCI = pCi / L
SIX = 6 / minute / pCi
VIAL = 10 * mL


def test_back_to_the_draw() -> None:
    """A3: 20 000 pCi/L sixty hours later was 31 467."""
    assert agrees(at_draw(20000, 60 * hour), "31467")


@pytest.mark.parametrize(
    ("share", "celsius", "printed"),
    [(0.05, 10, "13.07"), (0.10, 20, "30.5"), (0.5 / 24, 20, "7.75")],
)
def test_bubble(share: float, celsius: float, printed: str) -> None:
    """A36 and two more, worked from the shares of one gas between two volumes."""
    assert agrees(100 * bubble_loss(share, celsius + 273.15), printed)


@pytest.mark.parametrize(
    ("gross", "hours", "result", "two_sigma"),
    [(250, 48, "5508.6", "111.3"), (36, 72, "459.4", "60.8")],
)
def test_counting(gross: float, hours: float, result: str, two_sigma: str) -> None:
    """A34 and one more: 20 cpm background, 50 minutes each, 6 cpm/pCi, 10 mL; two sigma."""
    rates = (gross / minute, 20 / minute)
    found = counted(*rates, SIX, VIAL, hours * hour)
    doubt = count_doubt(*rates, 50 * minute, 50 * minute, SIX, VIAL, hours * hour)
    assert agrees(found / PCI, result)
    assert agrees(2 * doubt / PCI, two_sigma)


@pytest.mark.parametrize(("background", "hours", "printed"), [(6, 0, "27.75"), (20, 96, "103.1")])
def test_least_detectable(background: float, hours: float, printed: str) -> None:
    """Worked by hand from [currie-1968]: 50 minutes, 6 cpm/pCi, 10 mL."""
    found = least_detectable(background / minute, 50 * minute, SIX, VIAL, hours * hour)
    assert agrees(found / PCI, printed)


def test_least_detectable_by_chance() -> None:
    """Poisson counts: what holds just that much is found 19 times in 20, a blank 1 in 20.

    Found: the net count is over 1.645 of the blank's own scatter, [currie-1968].
    """
    chance = np.random.default_rng(1)
    blank, trials = 300.0, 200_000
    least = least_detectable(blank / (50 * minute), 50 * minute, SIX, VIAL, 0.0)
    counts = least * SIX * VIAL * 50 * minute
    limit = 1.645 * np.sqrt(2 * blank)
    net = chance.poisson(blank + counts, trials) - chance.poisson(blank, trials)
    assert np.mean(net > limit) == pytest.approx(0.95, abs=0.004)
    nothing = chance.poisson(blank, trials) - chance.poisson(blank, trials)
    assert np.mean(nothing > limit) == pytest.approx(0.05, abs=0.004)


def test_counting_doubt_by_chance() -> None:
    """Poisson counts: their scatter is the doubt."""
    chance = np.random.default_rng(2)
    times, span = 100_000, 50 * minute
    gross, blank = chance.poisson(12500, times), chance.poisson(1000, times)
    found = (gross - blank) / span / (SIX * VIAL)
    doubt = count_doubt(12500 / span, 1000 / span, span, span, SIX, VIAL, 0.0)
    assert np.std(found) == pytest.approx(doubt, rel=0.01)


def test_duplicates_by_chance() -> None:
    """Normal errors of 5 %: two results differ by more than allowed once in twenty."""
    chance = np.random.default_rng(3)
    pairs = 1 + 0.05 * chance.standard_normal((200_000, 2))
    apart = np.abs(pairs[:, 0] - pairs[:, 1]) / pairs.mean(axis=1)
    assert np.mean(apart > allowed_difference(1.96 * 0.05)) == pytest.approx(0.05, abs=0.004)


@steady
@given(st.floats(0, 0.5), st.floats(274, 308))
def test_bubble_leaves_the_whole(share: float, temperature: float) -> None:
    """By reason: nothing is lost without a bubble, and never all of it."""
    assert bubble_loss(0.0, temperature) == 0
    assert share <= bubble_loss(share, temperature) < 1


@pytest.mark.parametrize(
    ("before", "after", "taken", "doubt"),
    [
        ((20000, 1000), (180, 40), "99.10", ".205"),
        ((8500, 600), (350, 60), "95.88", ".76"),
    ],
)
def test_removal(
    before: tuple[float, float], after: tuple[float, float], taken: str, doubt: str
) -> None:
    """A35 and one more, worked by hand."""
    assert agrees(100 * removal(before[0], after[0]), taken)
    assert agrees(100 * removal_doubt(before[0], after[0], before[1], after[1]), doubt)


def test_removal_doubt_by_chance() -> None:
    """Normal errors: the scatter of the removal is the doubt."""
    chance = np.random.default_rng(4)
    before = 20000 + 500 * chance.standard_normal(100_000)
    after = 180 + 20 * chance.standard_normal(100_000)
    assert np.std(1 - after / before) == pytest.approx(removal_doubt(20000, 180, 500, 20), rel=0.01)


def test_removal_needed() -> None:
    """By hand: 20 000 to 300 is 98.5 %."""
    assert agrees(100 * removal_needed(20000, 300), "98.5")


def test_iron_that_settles() -> None:
    """By hand: 300 gal/day at 2 mg/L of iron is 4.35 g a day, 1.59 kg a year."""
    settled = floc_rate(2 * mg / L, 1.0, 300 * gal / day)
    assert agrees(settled * day / gram, "4.35")
    assert agrees(settled * 365 * day, "1.59")
    assert agrees((55.845 + 3 * (15.999 + 1.008)) / 55.845, str(FLOC))


def test_time_to_a_limit() -> None:
    """By hand: 2 in 90 days, 6 to go: 270. None without a rise, nothing left past the limit."""
    assert time_to_limit(18, 20, 26, 90) == 270
    assert time_to_limit(20, 20, 26, 90) is None
    assert time_to_limit(18, 27, 26, 90) == 0
