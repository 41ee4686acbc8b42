"""Carbon against printed cases, radioactivedecay and scipy, and against a bed spread out."""

from math import exp, log

import pytest
import radioactivedecay as rd
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from calc.calculators.carbon_bed import MOST_RADON
from calc.figures import agrees
from calc.physics.carbon_bed import (
    GAMMA,
    LEAD_DECAY,
    RADON_DECAY,
    contact_needed,
    contact_time,
    distance_for,
    gamma_dose_rate,
    lead_210,
    retained_activity,
    share_left,
    wait_before_opening,
)
from calc.request import case_of
from calc.units import L, day, ft, gal, hour, minute, mSv, pCi, year
from tests.model.given import steady

USE = 300 * gal / day


@pytest.mark.parametrize(
    ("kss", "printed"),
    [
        (2.09, ("66.1", "86.0", "132.2")),
        (2.54, ("54.4", "70.8", "108.8")),
        (3.02, ("45.7", "59.5", "91.5")),
        (4.52, ("30.6", "39.8", "61.1")),
    ],
)
def test_contact_times_of_four_published_constants(kss: float, printed: tuple[str, ...]) -> None:
    """Kss from [nrc-1999-carbon] pp. 174 and 175; minutes for 90, 95 and 99 % worked apart."""
    for share, minutes in zip((0.1, 0.05, 0.01), printed, strict=True):
        assert agrees(contact_needed(kss / hour, share) / minute, minutes)


def test_size_for_99_percent() -> None:
    """Check A32, worked apart: 300 gal a day, 3.02 per hour: 72.15 L, 2.548 ft³."""
    size = USE * contact_needed(3.02 / hour, 0.01)
    assert agrees(size / L, "72.15")
    assert agrees(size / ft**3, "2.548")


def test_two_beds_of_common_size() -> None:
    """Worked apart: 2 ft³ at 2.09 per hour, and 1.5 ft³ at 3.02 with 1 m³ a day."""
    first, second = contact_time(2 * ft**3, USE), contact_time(1.5 * ft**3, 1 / day)
    assert agrees(first / minute, "71.8")
    assert agrees(100 * (1 - share_left(2.09 / hour, first)), "91.80")
    assert agrees(100 * (1 - share_left(3.02 / hour, second)), "95.40")


@steady
@given(st.floats(0.1, 10), st.floats(0.1, 20))
def test_removal_along_the_bed(kss: float, contact: float) -> None:
    """scipy's solver: each slice takes out in proportion to what reaches it."""
    run = solve_ivp(lambda _, c: -kss * c, (0, contact), [1.0], rtol=1e-9, atol=1e-14)
    left = share_left(kss / hour, contact * hour)
    assert left == pytest.approx(run.y[0][-1], rel=1e-5, abs=1e-12)
    assert contact_needed(kss / hour, left) == pytest.approx(contact * hour, rel=1e-9)


def test_decay_constants_against_a_library() -> None:
    """radioactivedecay, which has the data of [icrp-107]."""
    for name, ours in (("Rn-222", RADON_DECAY), ("Pb-210", LEAD_DECAY)):
        theirs = log(2) / rd.Nuclide(name).half_life("s")
        assert ours == pytest.approx(theirs, rel=3e-5)  # its year has 365.2422 days


def test_a_steady_bed_against_a_library() -> None:
    """radioactivedecay, fed with a day's radon each day: what is there after half a year.

    Fed in the middle of each day, so that a day of decay is shared evenly before and after.
    """
    fed = 1000.0
    gone = [rd.Inventory({"Rn-222": fed}).decay(days + 0.5, "d") for days in range(182)]
    held = sum(one.activities("Bq")["Rn-222"] for one in gone)
    lead = sum(one.activities("Bq")["Pb-210"] for one in gone)
    steady_held = fed * RADON_DECAY**-1 / day
    assert steady_held == pytest.approx(held, rel=2e-3)
    # the bed fills during its first weeks, as if it had started one mean life of radon later
    late = 182 * day - 1 / RADON_DECAY
    assert lead_210(steady_held, late) == pytest.approx(lead, rel=2e-3)


def test_the_case_of_the_research_council() -> None:
    """Check A33, [nrc-1999-carbon] pp. 257 and 259: 1 m³ a day, 185 to 25 kBq/m³.

    882.6 kBq; two models there give 0.148 and 0.173 µSv/h. Ours has no shield and is the most.
    """
    held = retained_activity(1 / day, 185e3, 25e3)
    assert agrees(held / 1e3, "882.6")
    told = gamma_dose_rate(held, 1.0) * hour / (mSv / 1e3)
    assert told == pytest.approx(0.166, rel=0.15)
    assert told == pytest.approx(0.173, rel=0.15)
    assert told > 0.148


def test_gamma_constant_against_its_lines() -> None:
    """A sum over 25 lines of lead-214 and bismuth-214, from memory: 0.1878 µGy m²/(h MBq)."""
    told = GAMMA * 1e6 * hour / (mSv / 1e3)
    assert agrees(told, "0.195")
    assert told == pytest.approx(0.1878, rel=0.05)


def test_radon_held_by_a_house() -> None:
    """Worked apart: 300 gal a day, 740 to 74 kBq/m³: 4.17 MBq; 95 % of 20 000 pCi/L: 4.404."""
    assert agrees(retained_activity(USE, 740e3, 74e3) / 1e6, "4.17")
    raw = 20_000 * pCi / L
    assert agrees(retained_activity(USE, raw, 0.05 * raw) / 1e6, "4.404")


@pytest.mark.parametrize(("years", "printed"), [(1, "3.07"), (3, "8.94"), (10, "26.82")])
def test_lead_in_the_carbon(years: float, printed: str) -> None:
    """Worked apart, percent of the radon held. With a year of 365.25 days 3.074 is 3.0739."""
    assert agrees(lead_210(100.0, years * year), printed)


def test_lead_in_two_beds() -> None:
    """Worked apart: 27.13 kBq after a year, 27.0 pCi/g in 27.2 kg; 394 kBq and 391 pCi/g."""
    first = lead_210(retained_activity(1 / day, 185e3, 25e3), year)
    assert agrees(first / 1e3, "27.13")
    assert agrees(first / 27.2 / (1e3 * pCi), "27.0")
    raw = 20_000 * pCi / L
    second = lead_210(retained_activity(USE, raw, 0.05 * raw), 3 * year)
    assert agrees(second / 1e3, "394")
    assert second / 27.2 / (1e3 * pCi) == pytest.approx(391, rel=2e-3)


def test_waiting() -> None:
    """Worked apart: 2.2 % left after three weeks, 0.43 % after thirty days."""
    for days, printed in ((21, "2.2"), (30, "0.43")):
        assert agrees(100 * exp(-RADON_DECAY * days * day), printed)
        share = exp(-RADON_DECAY * days * day)
        assert wait_before_opening(1.0, share) == pytest.approx(days * day, rel=1e-12)
    assert wait_before_opening(1.0, 2.0) == 0.0


@steady
@given(st.floats(0.1, 2), st.floats(0, 8), st.floats(0.15, 6), st.floats(0, 1))
def test_a_point_is_the_most(height: float, fall: float, far: float, up: float) -> None:
    """scipy's integral over a bed whose radon falls off along it: never more than the point's.

    A person stands `far` from its middle line, beside any part of it.
    """
    whole = quad(lambda z: exp(-fall * z / height), 0, height)[0]

    def part(z: float) -> float:
        return (
            exp(-fall * z / height)
            / whole
            * gamma_dose_rate(1e6, 1.0)
            / (far**2 + (z - up * height) ** 2)
        )

    spread = quad(part, 0, height, epsrel=1e-9)[0]
    assert spread <= gamma_dose_rate(1e6, far) * (1 + 1e-6)


def test_a_spread_bed_seen_from_afar() -> None:
    """scipy's integral: from 3 m off a bed of 1 m gives within 3 % what a point gives."""
    spread = quad(lambda z: gamma_dose_rate(1e6, 1.0) / (9 + (z - 0.5) ** 2), 0, 1)[0]
    assert spread == pytest.approx(gamma_dose_rate(1e6, 3.0), rel=0.03)


@steady
@given(st.floats(1e3, 1e9), st.floats(0.3, 20))
def test_distance_turned_round(held: float, far: float) -> None:
    """The dose rate itself, turned round."""
    assert distance_for(held, gamma_dose_rate(held, far)) == pytest.approx(far, rel=1e-9)


def test_kss_left_after_a_year() -> None:
    """[kinner-1993], abstract: 99.7 to 79 % is 27 % of Kss, to 85 % behind a softener 33 %."""
    assert agrees(100 * log(1 - 0.79) / log(1 - 0.997), "27")
    assert agrees(100 * log(1 - 0.85) / log(1 - 0.997), "33")


def test_two_calculators_agree() -> None:
    """The same bed in both: as much radon held, and the dose rate at 1 m."""
    bed = case_of(["carbon_bed", "raw_radon=3000"])
    assert bed.answer
    left = (bed.answer.outputs["left"] or 0.0) / (pCi / L)
    asked = f"carbon_dose raw_radon=3000 treated_radon={left!r} bed_distance=1m"
    dose = case_of(asked.split())
    assert dose.answer
    assert dose.answer.outputs["held"] == pytest.approx(bed.answer.outputs["held"], rel=1e-9)
    assert dose.answer.outputs["dose_rate"] == pytest.approx(bed.answer.outputs["shines"], rel=1e-9)


def test_the_most_radon_for_carbon() -> None:
    """[aarst-mw-rn] 7.3, as printed: 4,000 pCi/L (150 Bq/L)."""
    assert agrees(MOST_RADON / (10 / L), "15")
    assert case_of(["carbon_bed", "raw_radon=4000"]).answer
    first = case_of(["carbon_bed", "raw_radon=4001"]).answer
    assert first
    assert first.findings[0].level == "danger"
