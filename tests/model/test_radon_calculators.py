"""The radon calculators for sample, air, removal and service, by another way than their own."""

from math import exp, hypot, log, pi

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.stats import lognorm

from calc.calculators import calculator
from calc.figures import agrees
from calc.levels import AIR, FIX_AIR, KINDS, WATER, Level
from calc.model import Typed, solve
from calc.request import case_of
from calc.sources import entry
from calc.units import L, day, pCi
from tests.model.given import patient, typed

PCI = pCi / L
LAMBDA = log(2) / (3.8235 * day)
many = settings(patient, max_examples=100)
SEEN = ("read", "second-hand", "from memory")


def outputs(*words: str) -> dict[str, float | None]:
    case = case_of(words)
    assert case.answer, case.errors
    return dict(case.answer.outputs)


def test_radon_in_air_by_hand() -> None:
    """A11 through the calculator; its two ends are those of the lognormal law of the table.

    Spread of a guessed air change and of the release, 2.3 and 1.3 [nrc-1999] table 3.1.
    """
    found = outputs(
        "radon_in_air", "raw_radon=10000", "daily_use=300", "release=55", "house_volume=16000",
        "air_change=0.35",
    )  # fmt: skip
    assert found["air_added"]
    assert agrees(found["air_added"] / PCI, "1.61")
    houses = lognorm(s=hypot(log(2.3), log(1.3)), scale=found["air_added"])
    assert found["air_low"] == pytest.approx(houses.ppf(0.025), rel=1e-4)
    assert found["air_high"] == pytest.approx(houses.ppf(0.975), rel=1e-4)
    assert found["over_chance"] == pytest.approx(houses.sf(FIX_AIR), rel=1e-9)


def test_average_house_adds_what_the_rule_says() -> None:
    """[nrc-1999] p. 57: the mean of many houses, by trials of its four figures, is 1.2e-4."""

    chance = np.random.default_rng(1)
    middles, spreads = (9.4e-3, 0.52, 115, 0.77), (1.8, 1.3, 2.0, 2.3)
    use, release, volume, change = (
        middle * np.exp(log(spread) * chance.standard_normal(400_000))
        for middle, spread in zip(middles, spreads, strict=True)
    )
    mean = np.mean(use * release / (volume * (change + LAMBDA * 3600)))
    assert mean == pytest.approx(1.2e-4, rel=0.05)


@many
@given(data=st.data())
def test_risks_are_apart(data: st.DataObject) -> None:
    """By reason: the one by water knows nothing of the house, the one by air all of it."""
    declared = calculator("radon_in_air")
    given_ = data.draw(typed(declared))
    small = solve(declared, {**given_, "house_volume": Typed("5000 ft³")})
    large = solve(declared, {**given_, "house_volume": Typed("20000 ft³")})
    assume(small.answer and large.answer)
    assert small.answer
    assert large.answer
    for name in ("risk_lung", "risk_stomach"):
        assert small.answer.outputs[name] == large.answer.outputs[name]
    low, high = large.answer.outputs["risk_air"], small.answer.outputs["risk_air"]
    assert high is None or (low is not None and low < high)


@many
@given(data=st.data())
def test_water_allowed_adds_just_what_is_allowed(data: st.DataObject) -> None:
    """The other way round: put in what is allowed, and the budget comes out."""
    declared = calculator("radon_in_air")
    given_ = data.draw(typed(declared))
    case = solve(declared, given_)
    assume(case.answer)
    assert case.answer
    budget = case.answer.outputs["water_budget"]
    assert budget is not None
    back = case.work({**case.values, "raw_radon": budget})
    assert back.outputs["air_added"] == pytest.approx(case.values["air_budget"])


def test_radon_sample_by_hand() -> None:
    """Mean 13 950, 48 hours, a 10 mm ball in 40 mL at 10 °C, H' 2.856."""
    found = outputs("radon_sample", "sample_bubble=10", "vial_temperature=10 °C")
    part = pi / 6 * 1e-6 / 40e-6
    lost = part * 2.856 / (1 - part + part * 2.856)
    assert found["bubble_lost"] == pytest.approx(lost, rel=1e-3)
    expected = 13950 * exp(LAMBDA * 2 * day) / (1 - lost)
    assert found["at_draw"] == pytest.approx(expected * PCI, rel=1e-4)
    assert found["difference"] == pytest.approx(700 / 13950)


def test_a_corrected_result_is_left_alone() -> None:
    """By reason: what the laboratory has brought back is the figure of the draw."""
    found = outputs("radon_sample", "sample_corrected=yes")
    assert found["at_draw"] == pytest.approx(13950 * PCI)


def test_disagreeing_duplicates_widen_the_doubt() -> None:
    """By hand: 9 000 and 14 000 are 2 500 either side of 11 500."""
    found = outputs("radon_sample", "sample_radon=9000;14000", "sample_corrected=yes")
    assert found["sample_doubt"] == pytest.approx(2500 * PCI)


def test_radon_removal_by_hand() -> None:
    """A35 through the calculator."""
    found = outputs("radon_removal", "raw_radon=20000±1000", "treated_radon=180±40")
    assert found["removal"] is not None
    assert found["removal_doubt"] is not None
    assert agrees(100 * found["removal"], "99.10")
    assert agrees(100 * found["removal_doubt"], "0.205")
    assert found["treated_most"] == pytest.approx(220 * PCI)


def test_swings_of_a_well_count_where_the_pair_is_none() -> None:
    """By hand: 0.009 (20 % and 1.96 · 6717/35 620 of the raw water; 40 of 180)."""
    found = outputs("radon_removal", "pair=apart")
    raw = hypot(0.20, 1.96 * 6717 / 35620)
    assert found["removal_doubt"] == pytest.approx(0.009 * hypot(raw, 40 / 180), rel=1e-9)


def test_less_than_is_not_widened() -> None:
    """By reason: a limit of detection is an upper end already."""
    found = outputs("radon_removal", "treated_seen=less", "treated_radon=100")
    assert found["treated_most"] == pytest.approx(100 * PCI)


def test_storage_by_hand() -> None:
    """A mixed tank of two days: 1 / (1 + 0.181286 · 2); to 300 of 20 000 it takes 65.67 / λ."""
    found = outputs("radon_decay_in_storage")
    assert found["left_share"] == pytest.approx(1 / (1 + 0.181286 * 2), rel=1e-5)
    assert found["days_needed"] == pytest.approx((20000 / 300 - 1) / LAMBDA)
    plug = outputs("radon_decay_in_storage", "storage_mixing=plug")
    assert plug["left_share"] == pytest.approx(exp(-LAMBDA * 2 * day))
    assert plug["days_needed"] == pytest.approx(23.17 * day, rel=1e-3)


def test_service_by_hand() -> None:
    """0.8 mg/L, half of it, 150 gal/day: 0.4346 g a day, 230 days for 100 g, 60 gone."""
    found = outputs("aerator_service")
    assert found["floc_day"] is not None
    assert agrees(found["floc_day"] * 1e3, "0.435")
    assert found["clean_by_iron"] == pytest.approx((100 / 0.43471 - 60) * day, rel=1e-3)
    assert found["clean_by_pressure"] == pytest.approx(180 * day)
    assert found["retest_due"] == pytest.approx(215 * day)


@pytest.mark.parametrize("level", [*WATER, *AIR], ids=lambda level: f"{level.body}-{level.year}")
def test_every_level_says_what_it_is(level: Level) -> None:
    """By reason: a figure for health has body, date and kind, and is no surer than its source."""
    assert level.kind in KINDS
    assert 1990 < level.year <= 2026
    assert SEEN.index(level.seen) >= SEEN.index(entry(level.source).seen)
    assert ("not confirmed" in level.words) == (level.seen != "read")
    assert KINDS[level.kind] in level.words


def test_levels_of_water_stand_in_order() -> None:
    """By reason: a reader looks for where this water lies among them."""
    values = [level.value for level in WATER]
    assert values == sorted(values)
