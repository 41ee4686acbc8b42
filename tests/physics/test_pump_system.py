"""Total head, operating point, affinity, power: printed figures, EPANET 2.2 and a second method."""

from math import log
from pathlib import Path as File
from typing import Any
from warnings import catch_warnings

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.inlet_network import Water, balance
from calc.physics.pipe import ROUGHNESS_DRAWN, head_loss_hazen_williams
from calc.physics.pump_curve import PumpCurve, rated_curve
from calc.physics.pump_system import (
    Line,
    at_speed,
    curve_of_sheet,
    line_loss,
    operating_point,
    pumping_energy,
    speed_through,
    total_head,
    water_power,
    worn,
)
from calc.units import GRAVITY, ft, gal, gpm, hour, hp, inch, kPa, psi
from tests.model.given import steady

NU = 1.1e-5 * ft**2  # EPANET's usual viscosity, m²/s
PLAIN = Water(1000.0, 1000.0 * NU)
INCH = Line(300 * ft, 1.049 * inch, ROUGHNESS_DRAWN)
PUMP = rated_curve(10 * gpm, 280 * ft)


def test_total_head_by_hand() -> None:
    """Check set of the notes: 180 ft and 10 ft of lift, 390 ft of 1.380 in, 8 gpm, C 150.

    Printed there: friction 4.03 ft with fittings counted as 32.2 ft of pipe; in all 332.6 ft at
    60 psi and 286.4 ft at 40 psi. Colebrook takes a fifth more than C 150: 0.7 ft more in all.
    """
    fittings = head_loss_hazen_williams(8 * gpm, 422.2 * ft, 1.380 * inch, 150)
    assert fittings / ft == pytest.approx(4.03, abs=0.01)
    warm = Water(998.2, 1.0016e-3)
    line = Line(422.2 * ft, 1.380 * inch, ROUGHNESS_DRAWN)
    for gauge, printed in ((60, 332.6), (40, 286.4)):
        head = total_head(8 * gpm, 190 * ft, gauge * psi, [line], warm)
        assert head / ft == pytest.approx(printed, abs=1.0)
        lost = line_loss(8 * gpm, line, warm)
        assert head - lost == pytest.approx(190 * ft + gauge * psi / (998.2 * GRAVITY), rel=1e-12)


def test_operating_point_with_hazen_and_williams() -> None:
    """Check set A17: 9.909 gpm at 281.7 ft; at 40 psi 10.93, at 60 psi 8.77 gpm (EPANET 9.908)."""

    def flow(gauge: float) -> float:
        static = 150 * ft + gauge * 2.31 * ft
        pipe = (300 * ft, 1.049 * inch, 150)
        return balance(PUMP.head, lambda q: static + head_loss_hazen_williams(q, *pipe))

    assert flow(50) / gpm == pytest.approx(9.909, rel=2e-3)
    assert PUMP.head(flow(50)) / ft == pytest.approx(281.7, rel=1e-3)
    assert flow(40) / gpm == pytest.approx(10.93, rel=3e-3)
    assert flow(60) / gpm == pytest.approx(8.77, rel=3e-3)


def epanet_network() -> Any:
    wntr = pytest.importorskip("wntr")
    net = wntr.network.WaterNetworkModel()
    with catch_warnings(action="ignore"):  # roughness is given for the new formula
        net.options.hydraulic.headloss = "D-W"
    net.options.hydraulic.inpfile_units = "GPM"
    net.options.hydraulic.accuracy = 1e-8
    return net


def add_pump(net: Any, name: str, ends: tuple[str, str], curve: PumpCurve) -> None:
    points = [(q * gpm, curve.head(q * gpm)) for q in (0.0, 6.0, 12.0)]
    net.add_curve(f"{name}_curve", "HEAD", points)
    net.add_pump(name, *ends, "HEAD", f"{name}_curve")


def solved(net: Any, folder: File) -> dict[str, float]:
    wntr = pytest.importorskip("wntr")
    results = wntr.sim.EpanetSimulator(net).run_sim(file_prefix=str(folder / "net"))
    return dict(results.link["flowrate"].loc[0])


@pytest.mark.parametrize("gauge", [0, 40, 50, 60, 80])
@pytest.mark.parametrize(("speed", "left"), [(1.0, 1.0), (0.95, 1.0), (1.0, 0.9)])
def test_operating_point_of_epanet(gauge: float, speed: float, left: float, tmp_path: File) -> None:
    """EPANET 2.2 by wntr, Darcy and Weisbach, two pipes with fittings, a slow and a worn pump.

    EPANET takes Swamee and Jain's fit for Colebrook's equation, up to 1 % more friction here,
    and so up to 0.07 % less flow. It slows the pump itself, by its own affinity laws.
    """
    lines = (Line(200 * ft, 1.049 * inch, 1.5e-6, 2.3), Line(100 * ft, 0.824 * inch, 1.5e-6, 8.0))
    lift, head = 120 * ft, gauge * psi / (1000.0 * GRAVITY)
    net = epanet_network()
    net.add_reservoir("well", 0.0)
    net.add_reservoir("house", lift + head)
    for name in ("out", "top"):
        net.add_junction(name)
    add_pump(net, "pump", ("well", "out"), worn(PUMP, left))
    net.get_link("pump").base_speed = speed
    for name, ends, run in (("a", ("out", "top"), lines[0]), ("b", ("top", "house"), lines[1])):
        net.add_pipe(name, *ends, run.length, run.bore, run.roughness, run.fittings)
    flow, at = operating_point(at_speed(worn(PUMP, left), speed), lift, gauge * psi, lines, PLAIN)
    assert flow == pytest.approx(solved(net, tmp_path)["pump"], rel=8e-4)
    assert at == pytest.approx(total_head(flow, lift, gauge * psi, lines, PLAIN), rel=1e-9)


def test_two_pumps_through_an_open_tank(tmp_path: File) -> None:
    """EPANET 2.2 by wntr: with an open tank between them each pump runs at its own point.

    Pump 2 has mostly friction before it, so that the two friction factors show: 0.1 % of flow.

    Put together without the tank both pass one flow, and their heads add.
    """
    second = rated_curve(12 * gpm, 100 * ft)
    house = 40 * psi / (1000.0 * GRAVITY)
    net = epanet_network()
    net.add_reservoir("well", 0.0)
    net.add_reservoir("house", 130 * ft + house)
    net.add_tank("open", 130 * ft, init_level=0.5, min_level=0.0, max_level=2.0, diameter=0.6)
    for name in ("out", "after"):
        net.add_junction(name, elevation=130 * ft)
    add_pump(net, "first", ("well", "out"), PUMP)
    add_pump(net, "second", ("open", "after"), second)
    net.add_pipe("a", "out", "open", INCH.length, INCH.bore, INCH.roughness)
    net.add_pipe("b", "after", "house", INCH.length, INCH.bore, INCH.roughness)
    found = solved(net, tmp_path)
    first = operating_point(PUMP, 130 * ft + 0.5, 0.0, [INCH], PLAIN)
    own = operating_point(second, -0.5, 40 * psi, [INCH], PLAIN)
    assert first[0] == pytest.approx(found["first"], rel=8e-4)
    assert own[0] == pytest.approx(found["second"], rel=1.2e-3)
    assert abs(first[0] - own[0]) > 1 * gpm
    joined = PumpCurve(PUMP.shut_off + second.shut_off, PUMP.factor + second.factor, 2.0)
    flow, _ = operating_point(joined, 130 * ft, 40 * psi, [INCH, INCH], PLAIN)
    assert PUMP.head(flow) + second.head(flow) == pytest.approx(joined.head(flow), rel=1e-12)


def test_a_pump_that_is_too_weak_stands_still() -> None:
    """By reason: no flow, at shut-off head."""
    assert operating_point(PUMP, 400 * ft, 0.0, [INCH], PLAIN) == (0.0, PUMP.shut_off)


def test_affinity_by_hand() -> None:
    """Check set A18: 3450 to 2900 rpm makes 10 gpm and 200 ft into 8.406 gpm and 141.3 ft."""
    ratio = 2900 / 3450
    curve = rated_curve(10 * gpm, 200 * ft)
    assert agrees(10 * ratio, "8.406")
    assert agrees(at_speed(curve, ratio).head(10 * ratio * gpm) / ft, "141.3")
    assert agrees(ratio**3, "0.5939")


curves = st.builds(
    lambda shut, bend, power: PumpCurve(shut, bend * shut / 5e-4**power, power),
    st.floats(10, 200), st.floats(0.05, 0.9), st.floats(0.5, 4),
)  # fmt: skip


@steady
@given(curves, st.floats(0.3, 1.3), st.floats(0, 6e-4))
def test_affinity_of_every_point(curve: PumpCurve, ratio: float, flow: float) -> None:
    """The laws themselves: each point moves to N times its flow and N² times its head."""
    moved = at_speed(curve, ratio)
    assert moved.head(ratio * flow) == pytest.approx(ratio**2 * curve.head(flow), rel=1e-9)


@steady
@given(curves, st.floats(0.4, 1.2), st.floats(1e-5, 4e-4))
def test_speed_is_found_again(curve: PumpCurve, ratio: float, flow: float) -> None:
    """Backwards: the speed that a point was made with."""
    head = at_speed(curve, ratio).head(flow)
    if head > 0.01 * curve.shut_off:
        assert speed_through(curve, flow, head) == pytest.approx(ratio, rel=1e-9)


def test_water_power_of_printed_tables() -> None:
    """Check set A16: 25 gpm and 160 ft at 55 %: 1.010 and 1.837 hp; 0.101, 1.26 and 0.631 hp.

    The printed ones take gpm × ft / 3960: water of 998 kg/m³.
    """
    cold = 998.0
    assert water_power(25 * gpm, 160 * ft, cold) / hp == pytest.approx(1.0101, rel=2e-3)
    assert water_power(25 * gpm, 160 * ft, cold) / hp / 0.55 == pytest.approx(1.837, rel=3e-3)
    for flow, head, printed in ((20, 20, "0.101"), (100, 50, "1.26"), (50, 50, "0.631")):
        assert agrees(water_power(flow * gpm, head * ft, cold) / hp, printed)


@pytest.mark.parametrize(
    ("head", "efficiency", "printed"),
    [(200, 0.5 * 0.65, "1.93"), (231, 0.5 * 0.65, "2.23"), (300, 0.55 * 0.70, "2.44")],
)
def test_energy_by_hand(head: float, efficiency: float, printed: str) -> None:
    """Worked by hand, 0.003137 kWh for each foot and thousand gallons at 20 °C.

    0.003137 × 300 / 0.385 = 2.444; a figure of 2.45 seen for it is its rounding up.
    """
    found = pumping_energy(1000 * gal, head * ft, 998.2, efficiency) / (1e3 * hour)
    assert agrees(found, printed)
    assert found == pytest.approx(0.003137 * head / efficiency, rel=1e-3)


def test_energy_is_power_over_time() -> None:
    """A second method: power while the volume flows."""
    power = water_power(9 * gpm, 200 * ft, 999.0) / 0.3
    assert pumping_energy(100 * gal, 200 * ft, 999.0, 0.3) == pytest.approx(
        power * 100 * gal / (9 * gpm), rel=1e-12
    )


def test_curve_of_a_sheet() -> None:
    """By hand: the power through three points; what makes no curve makes none."""
    curve = curve_of_sheet((0.0, 8 * gpm, 14 * gpm), (300 * ft, 225 * ft, 90 * ft))
    assert curve
    assert curve.power == pytest.approx(log(210 / 75) / log(14 / 8), rel=1e-12)
    assert curve.head(14 * gpm) == pytest.approx(90 * ft, rel=1e-12)
    for flows, heads in (
        ((0.0, 8.0), (300.0, 225.0)),
        ((1.0, 8.0, 14.0), (300.0, 225.0, 90.0)),
        ((0.0, 8.0, 8.0), (300.0, 225.0, 90.0)),
        ((0.0, 8.0, 14.0), (300.0, 310.0, 90.0)),
        ((0.0, 8.0, 8.001), (300.0, 299.0, 90.0)),
        ((0.0, 8.0, 14.0), (300.0, 100.0, 99.0)),
    ):
        assert curve_of_sheet(flows, heads) is None


def test_pressure_is_head() -> None:
    """By hand: 100 kPa of water of 1000 kg/m³ is 10.197 m."""
    found = total_head(0.0, 0.0, 100 * kPa, [INCH], PLAIN)
    assert agrees(found, "10.197")
