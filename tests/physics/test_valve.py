"""Valves against the fluids library, printed tables and their own definitions."""

from math import log, pi, sqrt

import fluids
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.restriction import (
    flow_at_other_drop,
    flow_coefficient,
    flow_of_compensating,
    flow_through,
    orifice_bore,
    orifice_coefficient,
)
from calc.physics.valve import (
    COCK,
    GLOBE,
    cavitation_index,
    choking_drop,
    coefficient_of_loss,
    critical_ratio,
    flow_after_knock,
    loss_of_coefficient,
    opening,
)
from calc.physics.water import CRITICAL_PRESSURE, vapour_pressure
from calc.units import Cv, Kv, atm, gpm, inch, psi
from tests.model.given import steady

BORE, RHO, DEGREE = 0.824 * inch, 999.1, pi / 180
PV = vapour_pressure(283.15)


def test_orifice() -> None:
    """Q = 29.84 Cd d² √Δp in gpm, inches and psi, by hand: 0.61, 1/4 in, 40 psi: 7.1946 gpm."""
    hole = orifice_coefficient(0.25 * inch, 0.61, RHO)
    assert flow_through(hole, 40 * psi) / gpm == pytest.approx(7.1946, abs=0.003)
    assert orifice_bore(hole, 0.61, RHO) == pytest.approx(0.25 * inch, rel=1e-12)


def test_orifice_of_another_hand() -> None:
    """The fluids library: mass flow through an orifice plate of small ratio and C 0.61."""
    mass = fluids.flow_meter_discharge(  # type: ignore[no-untyped-call]
        D=1.0, Do=0.25 * inch, P1=atm + 40 * psi, P2=atm, rho=RHO, C=0.61
    )
    ours = flow_through(orifice_coefficient(0.25 * inch, 0.61, RHO), 40 * psi)
    assert ours * RHO == pytest.approx(mass, rel=1e-8)


def test_cv_and_kv_wanted() -> None:
    """[iec-60534-2-1] by hand: 5 gpm at 45 psi is Cv 0.74536, Kv 0.6447."""
    wanted = flow_coefficient(5 * gpm, 45 * psi)
    assert agrees(wanted / Cv, "0.74536")
    assert wanted / Kv == pytest.approx(0.6447, abs=5e-4)


@pytest.mark.parametrize(
    ("loss", "printed"),
    [(0.05, "90.6"), (0.29, "37.6"), (1.56, "16.2"), (17.3, "4.87"), (206, "1.41"),
     (9, "6.75"), (13, "5.62"), (36, "3.38"), (112, "1.91")],
)  # fmt: skip
def test_from_loss_to_coefficient(loss: float, printed: str) -> None:
    """Cv = 29.84 d² / √K by hand, on 0.824 in; and the fluids library's own conversion."""
    found = coefficient_of_loss(loss, BORE, 999.0)
    assert agrees(found / Cv, printed)
    assert found / Cv == pytest.approx(fluids.K_to_Cv(K=loss, D=BORE), rel=2e-3)
    assert loss_of_coefficient(found, BORE, 999.0) == pytest.approx(loss, rel=1e-12)


def test_a_cock_half_shut() -> None:
    """[perry-cock] by hand: ln(206/17.3) / 2 over 20 degrees is 6.19 % a degree."""
    half = opening(COCK, sqrt(17.3 * 206))
    assert half
    assert half.at / DEGREE == pytest.approx(50, rel=1e-12)
    assert half.slope * DEGREE * 100 == pytest.approx(-6.19, abs=0.05)
    assert half.slope * DEGREE == pytest.approx(-log(206 / 17.3) / 40, rel=1e-12)
    assert agrees(5 * flow_after_knock(half.slope, -2 * DEGREE), "5.66")


@pytest.mark.parametrize("table", [COCK, GLOBE], ids=["cock", "globe"])
def test_the_lines_of_a_table_are_met(table: tuple[tuple[float, float], ...]) -> None:
    """[perry-cock]: each printed line comes back, and past either end there is none."""
    for at, loss in table:
        found = opening(table, loss)
        assert found
        assert found.at == pytest.approx(at, rel=1e-12)
    assert opening(table, table[0][1] * 1.01) is None
    assert opening(table, table[-1][1] * 0.99) is None


@steady
@given(st.floats(9.0, 112.0), st.floats(1.0, 1.5))
def test_slope_is_the_slope(loss: float, more: float) -> None:
    """By difference: between two openings of one stretch, flow changes by the exponential."""
    one, other = opening(GLOBE, loss), opening(GLOBE, loss * more)
    if one and other and one.slope == other.slope:
        changed = flow_after_knock(one.slope, other.at - one.at)
        assert changed == pytest.approx(1 / sqrt(more), rel=1e-9)


@steady
@given(st.floats(20, 150), st.floats(0.3, 0.99), st.floats(274, 330))
def test_choking_of_another_hand(gauge: float, recovery: float, temperature: float) -> None:
    """The fluids library: FF, and the pressure behind the valve at which it chokes."""
    pv, upstream = vapour_pressure(temperature), gauge * psi + atm
    ratio = fluids.control_valve.FF_critical_pressure_ratio_l(pv, CRITICAL_PRESSURE)
    assert critical_ratio(pv) == pytest.approx(ratio, rel=1e-12)
    behind = fluids.control_valve_choke_P_l(pv, CRITICAL_PRESSURE, recovery, P1=upstream)
    assert upstream - choking_drop(upstream, pv, recovery) == pytest.approx(behind, rel=1e-9)
    index = fluids.cavitation_index(P1=upstream, P2=atm, Psat=pv)
    assert cavitation_index(upstream, atm, pv) == pytest.approx(index, rel=1e-12)


def test_choking_by_hand() -> None:
    """[iec-60534-2-1] by hand, 10 degC: FL 0.9, 60 psi: 60.4 psi; FL 0.6, 50 psi: 23.2 psi."""
    assert agrees(critical_ratio(PV), "0.9579")
    assert agrees(choking_drop(60 * psi + atm, PV, 0.9) / psi, "60.4")
    assert agrees(choking_drop(50 * psi + atm, PV, 0.6) / psi, "23.2")


drops = st.floats(1, 150).map(lambda number: number * psi)


@steady
@given(drops, st.floats(1, 5), drops, st.floats(0.0, 0.5))
def test_compensating_passes_no_more_than_a_plain_hole(
    drop: float, more: float, threshold: float, exponent: float
) -> None:
    """By reason: between no rise at all and the rise of a plain hole."""
    found = flow_of_compensating(gpm, drop, drop * more, threshold, exponent)
    assert gpm <= found * (1 + 1e-12)
    assert found <= flow_at_other_drop(gpm, drop, drop * more) * (1 + 1e-12)


def test_compensating_by_hand() -> None:
    """By hand: from 5 psi as a hole to 20 psi, twice the flow; from there with x 0.1 to 80 psi."""
    found = flow_of_compensating(gpm, 5 * psi, 80 * psi, 20 * psi, 0.1)
    assert found == pytest.approx(2 * 4**0.1 * gpm, rel=1e-12)
    assert flow_of_compensating(gpm, 30 * psi, 60 * psi, 20 * psi, 0.0) == pytest.approx(gpm)
    assert flow_of_compensating(gpm, 5 * psi, 20 * psi, 40 * psi, 0.1) == pytest.approx(2 * gpm)
