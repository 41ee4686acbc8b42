"""The whole inlet against closed forms and against its own reasons; EPANET has its own file."""

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.inlet_network import (
    Path,
    Water,
    inlet_flow_from_pump,
    inlet_flow_from_tank,
    losses,
)
from calc.physics.pipe import TURBULENT, velocity
from calc.physics.pump_curve import PumpCurve
from calc.physics.restriction import flow_through_bed
from calc.physics.water import density, viscosity
from calc.units import Cv, ft, gpm, inch, psi
from tests.model.given import steady

PUMP = PumpCurve(300 * ft, 1.2 * ft / gpm**2, 2.0)
LIFT, RISE = 120 * ft, 6 * ft
HOUSE_PIPE = (30 * ft, 0.824 * inch)
COLD = Water(density(283.15), viscosity(283.15))


@pytest.mark.parametrize(
    ("linear", "printed"),
    [(0.3, ("6.47244", "7.30824", "8.05966")), (6.0, ("3.98890", "4.73600", "5.42105"))],
)
def test_printed_inlets(linear: float, printed: tuple[str, ...]) -> None:
    """Closed form worked by hand: 6 ft of lift, bed of `linear` and 0.02, restrictor of Cv 1.1."""
    quadratic = (0.02 + 1 / 1.1**2) * psi / gpm**2
    for gauge, figure in zip((40, 50, 60), printed, strict=True):
        drop = (gauge - 6 / 2.309) * psi
        assert agrees(flow_through_bed(drop, linear * psi / gpm, quadratic) / gpm, figure)


beds = st.floats(0.0, 20).map(lambda number: number * psi / gpm)
limits = st.floats(0.2, 20).map(lambda number: number * Cv)
gauges = st.floats(5, 100).map(lambda number: number * psi)


@steady
@given(beds, limits, gauges)
def test_without_pipe_it_is_the_closed_form(bed: float, limit: float, gauge: float) -> None:
    """[ergun] in closed form: no pipe, no fittings; the same flow from the root finder."""
    path = Path(rise=1.0, length=0.0, bore=0.02, fittings=0.0, bed=bed, limit=limit)
    closed = flow_through_bed(gauge - COLD.weight, bed, 1 / limit**2)
    assert inlet_flow_from_tank(gauge, path, COLD) == pytest.approx(closed, rel=1e-10)


paths = st.builds(
    Path,
    rise=st.floats(0, 5),
    length=st.floats(0.1, 100),
    bore=st.floats(0.01, 0.05),
    fittings=st.floats(1, 50),
    bed=beds,
    limit=limits,
    most=st.just(inf),
)


@steady
@given(paths, gauges)
def test_the_pressure_is_spent(path: Path, gauge: float) -> None:
    """By reason: at the flow found, the losses add up to the gauge; or nothing can be lifted."""
    flow = inlet_flow_from_tank(gauge, path, COLD)
    if flow > 0:
        assert sum(losses(path, flow, COLD)) == pytest.approx(gauge, rel=1e-9)
    else:
        assert gauge <= COLD.weight * path.rise


@steady
@given(paths, gauges, st.floats(1, 3))
def test_dirt_cold_and_low_pressure_never_help(path: Path, gauge: float, worse: float) -> None:
    """By reason: more resistance, thicker water or less pressure, less flow.

    Thicker water only where it stays turbulent: a stream that turns laminar slips more easily.
    """
    flow = inlet_flow_from_tank(gauge, path, COLD) * (1 + 1e-9)
    assert inlet_flow_from_tank(gauge, path._replace(bed=path.bed * worse), COLD) <= flow
    assert inlet_flow_from_tank(gauge / worse, path, COLD) <= flow
    thick = COLD._replace(viscosity=COLD.viscosity * worse)
    thicker = inlet_flow_from_tank(gauge, path, thick)
    reynolds = velocity(thicker, path.bore) * path.bore * thick.density / thick.viscosity
    assert thicker <= flow or reynolds < TURBULENT


def test_a_compensating_limit_caps() -> None:
    """By reason: no more than it lets pass, from the tank or from the pump."""
    path = Path(1.0, 10.0, 0.02, 2.0, 0.0, most=5 * gpm)
    assert inlet_flow_from_tank(40 * psi, path, COLD) == 5 * gpm
    assert inlet_flow_from_pump(PUMP, LIFT, path, COLD) == 5 * gpm


def test_a_pump_too_weak_for_the_well() -> None:
    """By reason: nothing flows when the pump cannot lift the water to the spout."""
    path = Path(RISE, *HOUSE_PIPE, 2.0, 0.0)
    assert inlet_flow_from_pump(PUMP, 300 * ft, path, COLD) == 0


def test_pump_meets_the_tank() -> None:
    """By reason: a pump's own balance is the tank's flow at the gauge that the pump then makes."""
    path = Path(RISE, *HOUSE_PIPE, 10.0, 6 * psi / gpm)
    flow = inlet_flow_from_pump(PUMP, LIFT, path, COLD)
    gauge = COLD.weight * (PUMP.head(flow) - LIFT)
    assert inlet_flow_from_tank(gauge, path, COLD) == pytest.approx(flow, rel=1e-9)
