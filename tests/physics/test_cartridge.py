"""Cartridges: printed cases, readings made by a law, and flows solved the other way."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from calc.figures import agrees
from calc.physics.cartridge import (
    Cartridge,
    cartridge,
    most_resistance,
    pressure_drop,
    water_until,
)
from calc.physics.fouling import LAWS
from calc.physics.restriction import flow_through_bed
from calc.units import gpm, psi
from tests.model.given import steady

resistances = st.floats(0.05, 5)
housings = st.integers(1, 4)


@pytest.mark.parametrize(
    ("later", "days", "most", "printed"),
    [
        (2.0, 20.0, 7.5, ("130.0", "58.14", "43.35", "34.67")),
        (1.5, 30.0, 4.0, ("180.0", "102.6", "81.7", "67.5")),
    ],
)
def test_days_until_a_limit(
    later: float, days: float, most: float, printed: tuple[str, ...]
) -> None:
    """Check A26 and a second case, worked in closed form from g(m)/g(r)."""
    found = water_until(1.0, later, days, most).values()
    assert all(agrees(each, text) for each, text in zip(found, printed, strict=True))


def test_a_drop_at_another_flow() -> None:
    """By hand: 2 of 3 psi double with the flow, 1 of 3 fourfold: 8 psi at twice 5 gpm."""
    one = cartridge(3 * psi, 1 * psi, 5 * gpm)
    assert pressure_drop(one, 10 * gpm) == pytest.approx(8 * psi)
    assert pressure_drop(one, 10 * gpm, 2) == pytest.approx(3 * psi)


@steady
@given(resistances, st.floats(0, 0.5), st.floats(0.5, 15), housings)
def test_most_resistance_brings_just_that_flow(
    element: float, housing: float, flow: float, many: int
) -> None:
    """The flow through bed and orifice, solved by `restriction` and by scipy's root finder."""
    spare = pressure_drop(Cartridge(element, housing), flow, many)
    assert most_resistance(housing, spare, flow, many) == pytest.approx(element, rel=1e-9)
    assert many * flow_through_bed(spare, element, housing) == pytest.approx(flow, rel=1e-6)

    def gap(q: float) -> float:
        return pressure_drop(Cartridge(element, housing), q, many) - spare

    assert brentq(gap, 0, 100, xtol=1e-12) == pytest.approx(flow, rel=1e-9)


@steady
@given(resistances, st.floats(1.05, 3), st.floats(1.1, 8), housings)
def test_the_order_of_the_laws(clean: float, later: float, beyond: float, many: int) -> None:
    """By reason: beyond the reading cake lasts longest and complete blocking shortest."""
    found = water_until(clean, clean * later, 10.0, clean * later * beyond, many)
    days = list(found.values())
    assert days == sorted(days, reverse=True)
    assert min(days) >= 10.0 * many * (1 - 1e-9)


@steady
@given(st.sampled_from(sorted(LAWS)), st.floats(1.1, 2), st.floats(2.5, 8))
def test_a_law_found_again_by_integration(law: str, later: float, most: float) -> None:
    """scipy integrates dV = dr / (k r^n) from a new element to a reading, and to the most."""

    def water(end: float) -> float:
        return float(quad(lambda r: r ** -LAWS[law], 1.0, end, epsabs=1e-12)[0])

    found = water_until(1.0, later, water(later), most)[law]
    assert found == pytest.approx(water(most), rel=1e-9)


@steady
@given(resistances, st.floats(1.2, 3), st.floats(2, 6), st.integers(2, 4))
def test_housings_side_by_side(clean: float, later: float, most: float, many: int) -> None:
    """By hand, no pressure lost in the ports: N housings let each element foul N times as far,
    and cake then lasts N (N m - 1)/(m - 1) times as long, near N²."""
    spare, flow = clean * later * most, 1.0
    limit = most_resistance(0.0, spare, flow, many)
    assert limit == pytest.approx(many * most_resistance(0.0, spare, flow))
    one = water_until(clean, clean * later, 1.0, spare / flow)["cake"]
    several = water_until(clean, clean * later, 1.0, limit, many)["cake"]
    assert several / one == pytest.approx(many * (many * spare - clean) / (spare - clean))
    assert several > many**2 * one
