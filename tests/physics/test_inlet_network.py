"""The whole inlet against EPANET, against closed forms and against its own reasons."""

from math import inf, log
from pathlib import Path as File
from warnings import catch_warnings

import pytest
import wntr
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.inlet_network import (
    Path,
    Water,
    balance,
    inlet_flow_from_pump,
    inlet_flow_from_tank,
    losses,
)
from calc.physics.pipe import TURBULENT, head_loss_hazen_williams, minor_loss, velocity
from calc.physics.pump_curve import PumpCurve, curve_through, rated_curve
from calc.physics.restriction import flow_through_bed
from calc.physics.water import density, viscosity
from calc.units import Cv, ft, gpm, inch, psi
from tests.model.given import steady

PUMP = PumpCurve(300 * ft, 1.2 * ft / gpm**2, 2.0)
LIFT, RISE = 120 * ft, 6 * ft
WELL_PIPE, HOUSE_PIPE = (150 * ft, 1.049 * inch), (30 * ft, 0.824 * inch)
LIMIT_BORE, LIMIT_LOSS = 0.75 * inch, 900.0
COLD = Water(density(283.15), viscosity(283.15))


def epanet(folder: File, bed: float, friction: str, roughness: float, nu: float) -> float:
    """Flow in by EPANET's own solver, m³/s.

    Well, pump, two pipes, a bed that loses `bed` m per m³/s, a throttle and the open tank.
    """
    net = wntr.network.WaterNetworkModel()
    with catch_warnings(action="ignore"):  # the roughness below is given for the new formula
        net.options.hydraulic.headloss = friction
    net.options.hydraulic.inpfile_units = "GPM"
    net.options.hydraulic.accuracy = 1e-8
    net.options.hydraulic.viscosity = nu / 1.1e-5 / ft**2  # against EPANET's usual 1.1e-5 ft²/s
    net.add_reservoir("well", -LIFT)
    net.add_reservoir("tank", RISE)
    for name in ("pump_out", "house", "before_bed", "after_bed"):
        net.add_junction(name)
    net.add_curve("curve", "HEAD", [(q * gpm, PUMP.head(q * gpm)) for q in (0.0, 5.0, 10.0)])
    net.add_pump("pump", "well", "pump_out", "HEAD", "curve")
    net.add_pipe("well_pipe", "pump_out", "house", *WELL_PIPE, roughness)
    net.add_pipe("house_pipe", "house", "before_bed", *HOUSE_PIPE, roughness)
    net.add_curve("bed_curve", "HEADLOSS", [(0.0, 0.0), (20 * gpm, bed * 20 * gpm)])
    net.add_valve("bed", "before_bed", "after_bed", 1 * inch, "GPV", initial_setting="bed_curve")
    net.add_valve("limit", "after_bed", "tank", LIMIT_BORE, "TCV", initial_setting=LIMIT_LOSS)
    results = wntr.sim.EpanetSimulator(net).run_sim(file_prefix=str(folder / "net"))
    return float(results.link["flowrate"].loc[0, "limit"])


@pytest.mark.parametrize(
    ("bed", "printed"), [(0.7, "4.41463"), (4, "4.23185"), (14, "3.72622"), (60, ""), (0.0, "")]
)
def test_agrees_with_epanet(bed: float, printed: str, tmp_path: File) -> None:
    """EPANET 2.2 by wntr: Hazen and Williams in both, over several states of the bed.

    EPANET's minor losses take g = 32.2 ft/s²: 4e-4 apart where the throttle rules.
    """
    resistance = bed * ft / gpm

    def spent(flow: float) -> float:
        friction = sum(
            head_loss_hazen_williams(flow, *each, 130) for each in (WELL_PIPE, HOUSE_PIPE)
        )
        return RISE + friction + resistance * flow + minor_loss(flow, LIMIT_BORE, LIMIT_LOSS)

    ours = balance(lambda flow: PUMP.head(flow) - LIFT, spent)
    theirs = epanet(tmp_path, resistance, "H-W", 130, 1.1e-5 * ft**2)
    assert ours == pytest.approx(theirs, rel=5e-4)
    if printed:
        assert theirs / gpm == pytest.approx(float(printed), abs=1e-3)


@pytest.mark.parametrize("bed", [0.7, 4.0, 14.0, 60.0])
def test_darcy_agrees_with_epanet(bed: float, tmp_path: File) -> None:
    """EPANET 2.2 by wntr, Darcy and Weisbach in both: the path that the calculators take.

    EPANET takes Swamee and Jain's fit for Colebrook's equation.
    """
    resistance = bed * ft / gpm
    k = LIMIT_LOSS * (HOUSE_PIPE[1] / LIMIT_BORE) ** 4
    nu = COLD.viscosity / COLD.density

    def supply(flow: float) -> float:
        well = Path(0.0, *WELL_PIPE, 0.0, 0.0)
        return COLD.weight * (PUMP.head(flow) - LIFT) - losses(well, flow, COLD).pipe

    path = Path(RISE, *HOUSE_PIPE, k, resistance * COLD.weight)
    ours = balance(supply, lambda flow: sum(losses(path, flow, COLD)))
    theirs = epanet(tmp_path, resistance, "D-W", 1.5e-6, nu)
    assert ours == pytest.approx(theirs, rel=5e-4)


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


def test_three_points_as_epanet_takes_them() -> None:
    """EPANET's fit, by wntr: the same curve through three points of a sheet."""
    net = wntr.network.WaterNetworkModel()
    net.add_reservoir("well", 0.0)
    net.add_junction("out")
    points = [(0.0, 90.0), (4e-4, 75.0), (8e-4, 20.0)]
    net.add_curve("curve", "HEAD", points)
    net.add_pump("pump", "well", "out", "HEAD", "curve")
    with catch_warnings(action="ignore"):  # scipy's, that three points leave no doubt to estimate
        theirs = net.get_link("pump").get_head_curve_coefficients()
    ours = curve_through(90.0, points[1], points[2])
    assert (ours.shut_off, ours.factor, ours.power) == pytest.approx(theirs, rel=1e-9)
    assert ours.power == pytest.approx(log(70 / 15) / log(2), rel=1e-12)


def test_one_point_as_epanet_takes_it() -> None:
    """EPANET's fit of a single point, by wntr."""
    net = wntr.network.WaterNetworkModel()
    net.add_reservoir("well", 0.0)
    net.add_junction("out")
    net.add_curve("curve", "HEAD", [(5e-4, 60.0)])
    net.add_pump("pump", "well", "out", "HEAD", "curve")
    theirs = net.get_link("pump").get_head_curve_coefficients()
    ours = rated_curve(5e-4, 60.0)
    assert (ours.shut_off, ours.factor, ours.power) == pytest.approx(theirs, rel=1e-9)
