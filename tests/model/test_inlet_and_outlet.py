"""The calculators of the inlet, the outlet and the valve by other ways."""

from math import pi, sqrt

import fluids
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from iapws import IAPWS97
from scipy.optimize import brentq

from calc.calculators import calculator
from calc.model import Case, Typed, solve
from calc.request import case_of
from calc.units import Cv, gpm, psi
from tests.model.given import patient, typed

many = settings(patient, max_examples=100)


def outputs(asked: str) -> dict[str, float | None]:
    answer = case_of(asked.split()).answer
    assert answer
    return dict(answer.outputs)


@pytest.mark.parametrize(
    ("asked", "most"),
    [
        ("inlet_flow", 7 * 0.85),
        ("inlet_flow inlet_limit=fixed", 99),
        ("inlet_flow rise=20", 7 * 0.85),
    ],
)
def test_worst_inlet_by_other_hands(asked: str, most: float) -> None:
    """scipy's root finder on losses by the fluids library, in water by the iapws library."""
    case = case_of(asked.split())
    assert case.answer
    value = {name: float(each) for name, each in case.values.items() if isinstance(each, float)}
    cold, warm = (IAPWS97(T=value[name], P=0.1) for name in ("water_coldest", "water_now"))
    density, thickness, thicker = cold.rho, cold.mu, cold.mu / warm.mu
    bore, cap = value["pipe_bore"], min(most, 7.0)
    cv = (cap if most < 99 else 7.0) / sqrt(15)

    def left(q: float) -> float:
        speed = q * gpm / (pi * bore**2 / 4)
        reynolds = fluids.Reynolds(V=speed, D=bore, rho=density, mu=thickness)
        f = fluids.friction_factor(Re=reynolds, eD=1.5e-6 / bore)
        loss = f * value["pipe_length"] / bore + value["fittings"]
        spent = fluids.dP_from_K(K=loss, rho=density, V=speed)
        spent += density * 9.80665 * value["rise"]
        spent += value["bed_dirty"] * thicker * q * gpm + (q / cv) ** 2 * psi
        return float(value["well_cut_in"] - spent)

    found = min(brentq(left, 0.1, 50, xtol=1e-12), most)
    assert (case.answer.outputs["worst_inlet"] or 0) / gpm == pytest.approx(found, rel=2e-3)


@many
@given(data=st.data())
def test_worst_is_the_worst(data: st.DataObject) -> None:
    """By reason: no better day brings less; the least is the first output."""
    declared = calculator("inlet_flow")
    case = solve(declared, data.draw(typed(declared)))
    assume(case.answer)
    assert case.answer
    found = case.answer.outputs
    better = {name: flow for name, flow in found.items() if name != "worst_inlet"}
    assert all((found["worst_inlet"] or 0) <= (flow or 0) * 1.001 for flow in better.values()), (
        found
    )


@pytest.mark.parametrize(
    ("asked", "printed"),
    [
        ("outlet_limit house_gauge=30 outlet=4.95 pump_shut_off=64.96", 6.74),
        ("outlet_limit limit=after caught=tap outlet=4.191 house_gauge=45 tap_flow=6.7082", 5.657),
    ],
)
def test_outlets_worked_by_hand(asked: str, printed: float) -> None:
    """By hand: a pump of 150 ft with a throttle, 4.95 gpm at 30 psi, 6.74 at 0; and Cv 0.8 behind
    which a tap of Cv 1 passes 4.191 gpm at 45 psi: 5.657 at 50 psi without it."""
    assert (outputs(asked)["worst_outlet"] or 0) / gpm == pytest.approx(printed, rel=2e-3)


@many
@given(st.floats(40, 150), st.floats(0.1, 3.0), st.floats(0.2, 3.0), st.floats(0.05, 0.9))
def test_before_the_tank_against_the_pump_itself(
    shut_off: float, fall: float, throttle: float, share: float
) -> None:
    """A pump p0 - a Q² and a throttle solved anew, at the test's gauge and at none."""

    def passes(gauge: float) -> float:
        return sqrt((shut_off - gauge) / (fall + 1 / throttle**2))

    gauge = max(share * shut_off, 0.5)
    test = passes(gauge)
    assume(test > 0.1)
    asked = {
        "outlet": Typed(f"{test!r} gpm"),
        "house_gauge": Typed(f"{gauge!r} psi"),
        "pump_shut_off": Typed(f"{shut_off!r} psi"),
    }
    case: Case = solve(calculator("outlet_limit"), asked)
    assert case.answer
    assert (case.answer.outputs["worst_outlet"] or 0) / gpm == pytest.approx(passes(0), rel=1e-9)


@many
@given(st.floats(0.2, 3.0), st.floats(0.2, 10.0), st.floats(20, 60), st.floats(60, 100))
def test_after_the_tank_against_the_tap_itself(
    throttle: float, tap: float, gauge: float, cut_out: float
) -> None:
    """A throttle and a tap in line solved anew; then the throttle alone at cut-out."""
    test = sqrt(gauge / (1 / throttle**2 + 1 / tap**2))
    asked = {
        "limit": Typed("after"),
        "caught": Typed("tap"),
        "outlet": Typed(f"{test!r} gpm"),
        "house_gauge": Typed(f"{gauge!r} psi"),
        "tap_flow": Typed(f"{tap * 3!r} gpm"),
        "tap_pressure": Typed("9 psi"),
        "cut_out": Typed(f"{cut_out!r} psi"),
    }
    case = solve(calculator("outlet_limit"), asked)
    assert case.answer, case.errors
    found = (case.answer.outputs["worst_outlet"] or 0) / gpm
    assert found == pytest.approx(throttle * sqrt(cut_out), rel=1e-9)


def test_valve_by_hand() -> None:
    """Cv = 29.84 d² / √K by hand: 7 gpm at 15 psi is Cv 1.807; on 0.622 in that is K 40.8, and
    between 17.3 at 40 degrees and 206 at 60 it is ln(40.8/17.3) / ln(206/17.3) of 20 degrees on."""
    found = outputs("valve_setting")
    assert (found["cv_wanted"] or 0) / Cv == pytest.approx(1.807, abs=1e-3)
    assert found["loss_wanted"] == pytest.approx(40.8, abs=0.1)
    assert (found["cock_at"] or 0) * 180 / pi == pytest.approx(46.9, abs=0.1)
    assert found["cock_step"] == pytest.approx(0.0639, abs=1e-4)  # e^0.06193 - 1
    hole = fluids.flow_meter_discharge(  # type: ignore[no-untyped-call]
        D=1.0, Do=found["hole"], P1=2e5, P2=2e5 - 15 * psi, rho=999.6, C=0.61
    )
    assert hole / 999.6 / gpm == pytest.approx(7, rel=2e-4)
