"""Readings at a pump against cases worked apart, and against the curve they come from."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.calculators import calculator
from calc.figures import agrees
from calc.model import Typed, solve
from calc.physics.pressure_tank import drawdown
from calc.physics.pump_check import fill_flow, measured_head, sheet_flow
from calc.physics.pump_curve import curve_through
from calc.request import case_of
from calc.units import ft, gal, gpm, psi
from tests.model.given import patient, steady

CURVE = curve_through(300 * ft, (8 * gpm, 225 * ft), (14 * gpm, 90 * ft))


def test_fill_time() -> None:
    """Worked apart: 11.4 gal in 96 s."""
    assert agrees(fill_flow(11.4 * gal, 96) / gpm, "7.125")


def test_shut_off() -> None:
    """Worked apart with 2.31 ft for each psi: 82 psi and 60 ft are 249 ft."""
    assert agrees(measured_head(82 * psi, 60 * ft) / ft, "249")
    assert measured_head(82 * psi, 60 * ft) / ft == pytest.approx(82 * 2.31 + 60, rel=2e-3)


def test_leak_back() -> None:
    """Worked apart by Boyle: 44 gal, pre-charge 38 psi, from 60 to 55 psi: 2.23 gal."""
    assert agrees(drawdown(44 * gal, 38 * psi, 55 * psi, 60 * psi) / gal, "2.23")


@pytest.mark.parametrize(
    ("precharge", "printed"),
    [(38, "11.35"), (30, "9.63"), (20, "7.47"), (10, "5.32"), (0, "3.17"), (45, "8.84"),
     (50, "5.89")],
)  # fmt: skip
def test_wrong_precharge(precharge: float, printed: str) -> None:
    """Worked apart by Boyle: what a 44 gal tank on a 40/60 switch gives."""
    case = case_of(["pump_check", "well_tank=44", f"well_precharge={precharge}"])
    assert case.answer
    assert agrees((case.answer.outputs["tank_should_give"] or 0) / gal, printed)


@steady
@given(st.floats(0.01, 14))
def test_sheet_flow_turned_round(flow: float) -> None:
    """The pump's curve itself, turned round."""
    assert sheet_flow(CURVE.head(flow * gpm), CURVE) == pytest.approx(flow * gpm, rel=1e-6)


@patient
@given(st.floats(0.3, 1.2), st.floats(0, 140), st.floats(10, 60))
def test_a_pump_that_is_a_share_of_its_sheet(share: float, below: float, size: float) -> None:
    """A made-up pump, its flow a share of its curve, filling a tank of Boyle: told back."""
    head = measured_head(50 * psi, below * ft)
    flow = share * sheet_flow(head, CURVE)
    caught = drawdown(size * gal, 38 * psi, 40 * psi, 60 * psi)
    asked = {
        "well_tank": f"{size!r} gal",
        "well_caught": f"{caught / gal!r} gal",
        "fill_time": f"{caught / flow!r} s",
        "water_below": f"{below!r} ft",
    }
    case = solve(calculator("pump_check"), {name: Typed(text) for name, text in asked.items()})
    assert case.answer
    assert case.answer.outputs["flow_share"] == pytest.approx(share, rel=1e-6)
    assert case.answer.outputs["tank_share"] == pytest.approx(1, rel=1e-6)
