"""The inlet and the pump's curve against EPANET 2.2, driven by wntr. Skipped where that is not."""

from math import log
from pathlib import Path as File
from warnings import catch_warnings

import pytest

from calc.physics.inlet_network import Path, balance, losses
from calc.physics.pipe import head_loss_hazen_williams, minor_loss
from calc.physics.pump_curve import curve_through, rated_curve
from calc.units import ft, gpm, inch
from tests.physics.test_inlet_network import COLD, HOUSE_PIPE, LIFT, PUMP, RISE

wntr = pytest.importorskip("wntr")

WELL_PIPE = (150 * ft, 1.049 * inch)
LIMIT_BORE, LIMIT_LOSS = 0.75 * inch, 900.0


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
