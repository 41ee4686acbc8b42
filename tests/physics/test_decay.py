"""Decay and in-growth beside the open library radioactivedecay, and by hand."""

import numpy as np
import pytest
import radioactivedecay as rd
from hypothesis import given
from hypothesis import strategies as st
from scipy.linalg import expm

from calc.figures import agrees
from calc.physics.decay import (
    BISMUTH_214,
    LEAD_214,
    POLONIUM_218,
    RADON,
    RADON_CHAIN,
    decay_constant,
    grown_in,
    remaining,
    remaining_mixed,
    time_until,
)
from calc.units import day, hour
from tests.model.given import steady

NAMES = ("Rn-222", "Po-218", "Pb-214", "Bi-214")


@pytest.mark.parametrize(
    ("nuclide", "half_life"),
    list(zip(NAMES, (RADON, POLONIUM_218, LEAD_214, BISMUTH_214), strict=True)),
)
def test_half_lives(nuclide: str, half_life: float) -> None:
    """radioactivedecay, whose data are those of [icrp-107]."""
    assert half_life == pytest.approx(rd.Nuclide(nuclide).half_life("s"), rel=1e-6)


def test_decay_constant() -> None:
    """Check value A1: half-life 91.764 h, 0.0075536 an hour."""
    assert agrees(RADON / hour, "91.764")
    assert agrees(decay_constant(RADON) * hour, "0.0075536")


@pytest.mark.parametrize(
    ("hours", "left", "factor"),
    [
        (1, ".99247", "1.00758"),
        (6, ".95569", "1.04636"),
        (12, ".91334", "1.09488"),
        (24, ".83420", "1.19876"),
        (48, ".69588", "1.43702"),
        (72, ".58050", "1.72264"),
        (96, ".48425", "2.06503"),
        (168, ".28111", "3.55730"),
        (192, ".23450", "4.26434"),
    ],
)
def test_share_left(hours: float, left: str, factor: str) -> None:
    """Worked with radioactivedecay 0.6.1; A2 is the line of 48 hours."""
    assert agrees(remaining(hours * hour), left)
    assert agrees(1 / remaining(hours * hour), factor)


def chain_of_library(time: float) -> tuple[float, ...]:
    """Activities of the chain a time after there was 1 Bq of radon alone."""
    activities = rd.InventoryHP({"Rn-222": 1.0}, "Bq").decay(time, "s").activities("Bq")
    return tuple(activities[name] for name in NAMES)


@pytest.mark.parametrize("hours", [0.01, 0.2, 0.5, 1, 2, 3, 4, 12, 48, 96, 240])
def test_chain_beside_the_library(hours: float) -> None:
    """radioactivedecay at high precision. It lets 0.02 % of polonium-218 take a short cut."""
    expected = chain_of_library(hours * hour)
    assert grown_in(hours * hour) == pytest.approx(expected, rel=1e-6, abs=2.5e-4)


@pytest.mark.parametrize("hours", [0.001, 0.01, 0.2, 1, 12, 240])
def test_chain_beside_the_matrix(hours: float) -> None:
    """scipy's expm of the rates: another way to solve the same chain."""
    rates = [decay_constant(each) for each in RADON_CHAIN]
    matrix = np.diag([-each for each in rates]) + np.diag(rates[:-1], -1)
    atoms = expm(matrix * hours * hour) @ np.array([1 / rates[0], 0, 0, 0])
    assert grown_in(hours * hour) == pytest.approx(tuple(rates * atoms), rel=1e-6, abs=1e-13)


@pytest.mark.parametrize(
    ("hours", "printed"), [(1, ".4906"), (2, ".8484"), (3, ".9510"), (4, ".9710")]
)
def test_bismuth_grown_in(hours: float, printed: str) -> None:
    """Worked with radioactivedecay 0.6.1, to 2 in the last digit for its other way."""
    assert grown_in(hours * hour)[-1] == pytest.approx(float(printed), abs=2.5e-4)


@steady
@given(st.floats(0, 1e9))
def test_a_chain_is_between_nothing_and_all(time: float) -> None:
    """By reason: no member can be negative, none over the first at the start but by a hair."""
    chain = grown_in(time)
    assert len(chain) == len(RADON_CHAIN)
    assert all(-1e-9 <= each <= 1.01 for each in chain)


def test_two_members_by_hand() -> None:
    """Half-lives 2 and 1: child's activity 2 (x - x²) with x = 2^(-t/2); at t = 2, 0.5."""
    assert grown_in(2.0, (2.0, 1.0)) == pytest.approx((0.5, 0.5))


def test_storage() -> None:
    """Worked by hand: a day and three days, in a row and mixed; one half-life mixed .5906."""
    assert agrees(remaining(day), ".8342")
    assert agrees(remaining_mixed(day), ".8465")
    assert agrees(remaining(3 * day), ".5805")
    assert agrees(remaining_mixed(3 * day), ".6477")
    assert agrees(remaining_mixed(RADON), ".5906")


def test_time_until() -> None:
    """Worked by hand: 20 000 to 300 pCi/L in 23.17 days, to a tenth in 12.70."""
    assert agrees(time_until(300 / 20000) / day, "23.17")
    assert agrees(time_until(0.1) / day, "12.70")


@steady
@given(st.floats(0, 100 * day))
def test_mixing_never_helps(residence: float) -> None:
    """By reason: in a mixed tank some water gets through early."""
    assert remaining_mixed(residence) >= remaining(residence) * (1 - 1e-12)


@steady
@given(st.floats(1e-6, 1.0))
def test_time_until_undoes_decay(share: float) -> None:
    """The other way round."""
    assert remaining(time_until(share)) == pytest.approx(share)
