"""What counts tell of a chance, against scipy.stats and the definitions."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import beta, binom, binomtest

from calc.physics.chance import at_least_once, chance_bound, chance_interval
from tests.model.given import steady

counts = st.integers(1, 20_000).flatmap(
    lambda tried: st.tuples(
        st.one_of(st.integers(0, tried), st.integers(0, min(6, tried)), st.just(tried)),
        st.just(tried),
    )
)


@steady
@given(counts, st.sampled_from([0.8, 0.95, 0.99]))
def test_interval_against_the_beta_distribution(count: tuple[int, int], sureness: float) -> None:
    """scipy.stats.beta.ppf, in which [clopper-1934]'s limits can be written."""
    seen, tried = count
    tail = (1 - sureness) / 2
    low, high = chance_interval(seen, tried, sureness)
    assert low == pytest.approx(beta.ppf(tail, seen, tried - seen + 1) if seen else 0, rel=1e-8)
    if seen < tried:
        assert high == pytest.approx(beta.ppf(1 - tail, seen + 1, tried - seen), rel=1e-8)
    else:
        assert high == 1


@pytest.mark.parametrize(("seen", "tried"), [(0, 40), (1, 40), (4, 40), (40, 40), (3, 1500)])
def test_interval_against_the_exact_test(seen: int, tried: int) -> None:
    """scipy.stats.binomtest, whose "exact" interval is [clopper-1934]'s."""
    found = binomtest(seen, tried).proportion_ci(0.95, "exact")
    assert chance_interval(seen, tried) == pytest.approx((found.low, found.high), rel=1e-9)


@settings(steady, max_examples=20)
@given(st.integers(5, 80), st.floats(0.01, 0.99))
def test_interval_covers(tried: int, chance: float) -> None:
    """Its definition: series whose interval misses the true chance are 5 % or fewer."""
    missed = 0.0
    for seen in range(tried + 1):
        low, high = chance_interval(seen, tried)
        if not low <= chance <= high:
            missed += binom.pmf(seen, tried, chance)
    assert missed <= 0.05


@steady
@given(st.integers(1, 100_000))
def test_bound_when_nothing_was_seen(tried: int) -> None:
    """scipy.stats.binom: at the bound nothing is seen in 5 % of series; and three over n."""
    bound = chance_bound(tried)
    assert binom.pmf(0, tried, bound) == pytest.approx(0.05, rel=1e-9)
    assert bound < 3 / tried


def test_a_year_of_forty_without_a_dry_one() -> None:
    """Three over forty, as the rule is told."""
    assert chance_bound(40) == pytest.approx(3 / 40, rel=0.04)


@steady
@given(st.floats(0, 0.2), st.integers(1, 400))
def test_at_least_once(chance: float, times: int) -> None:
    """scipy.stats.binom: all but none."""
    assert at_least_once(chance, times) == pytest.approx(
        1 - binom.pmf(0, times, chance), rel=1e-9, abs=1e-12
    )
