"""The arithmetic against printed figures, to the digit printed."""

import pytest
from scipy import stats

from calc.calculators.outlet_setting import CHANCE
from calc.figures import agrees
from calc.physics.open_tank import guarded_outlet, time_to_empty
from calc.physics.pressure_tank import drawdown, residual
from calc.physics.restriction import flow_coefficient, flow_through, flow_through_bed
from calc.physics.tank_run import Draw, Plant, run
from calc.units import Cv, Kv, gal, gpm, hour, kPa, minute, psi

BALANCE_AIR = 14.696 * psi  # the air pressure that the worked figures of the flow balance take


def test_drawdown_of_a_published_example() -> None:
    """[pelikan-2006]: 85 gal tank, 28 psi pre-charge, 30/50 psi, air 14.7 psi: 0.295, 25.1 gal."""
    share = drawdown(1.0, 28 * psi, 30 * psi, 50 * psi, 14.7 * psi)
    assert agrees(share, "0.295")
    assert agrees(85 * share, "25.1")


def test_drawdown_of_the_worked_house() -> None:
    """Boyle's law worked by hand: 20 gal, 28 psi, 30/50 psi, air 14.696 psi: 5.90610 gal."""
    taken = drawdown(20 * gal, 28 * psi, 30 * psi, 50 * psi, BALANCE_AIR)
    assert agrees(taken / gal, "5.90610")


@pytest.mark.parametrize(("precharge", "printed"), [(50, "0"), (55, "0"), (40, "3.091")])
def test_drawdown_with_a_precharge_above_cut_in(precharge: float, printed: str) -> None:
    """Boyle's law worked by hand: the tank is empty below its pre-charge.

    20 (1 - (40 + 14.696) / (50 + 14.696)) = 3.091 gal.
    """
    taken = drawdown(20 * gal, precharge * psi, 30 * psi, 50 * psi, BALANCE_AIR)
    assert agrees(taken / gal, printed)


def test_all_water_of_a_pressure_tank() -> None:
    """Boyle's law: down to cut-in and then to empty is as much as down to empty at once."""
    whole = drawdown(20 * gal, 28 * psi, 28 * psi, 50 * psi)
    parts = drawdown(20 * gal, 28 * psi, 30 * psi, 50 * psi) + residual(
        20 * gal, 28 * psi, 30 * psi
    )
    assert whole == pytest.approx(parts, rel=1e-12)
    assert residual(20 * gal, 31 * psi, 30 * psi) == 0


def test_time_to_empty() -> None:
    """Conservation of water by hand: 11 gal, 6 gpm out, 2.5 gpm in: 22/7 = 3.14286 min."""
    time = time_to_empty(11 * gal, 2.5 * gpm, 6 * gpm)
    assert time is not None
    assert agrees(time / minute, "3.14286")
    assert time_to_empty(11 * gal, 6 * gpm, 6 * gpm) is None


WORKED_HOUSE = Plant(
    inlet=5 * gpm,
    pump=6 * gpm,
    house=float("inf"),
    float_open=9.5 * gal,
    float_closed=11 * gal,
    drawdown=drawdown(20 * gal, 28 * psi, 30 * psi, 50 * psi, BALANCE_AIR),
    residual=residual(20 * gal, 28 * psi, 30 * psi, BALANCE_AIR),
)


def test_one_washer_fill_from_full_tanks() -> None:
    """An independent trial (scipy DOP853, rtol 1e-10, restarted at each event), flow balance S1.

    Inlet 5 gpm, pump 6 gpm, 25 gal at 6 gpm from minute 1.
    """
    start = WORKED_HOUSE.float_closed, WORKED_HOUSE.drawdown
    result = run(WORKED_HOUSE, [Draw(minute, 6 * gpm, 25 * gal)], *start, 3600.0)
    times = {name: time / minute for time, name in result.events}
    assert agrees(times["pump starts"], "1.98435")
    assert agrees(times["float opens"], "2.23435")
    assert agrees(times["float closes"], "7.2344")
    assert agrees(result.lowest.level / gal, "5.58333")
    assert agrees(result.lowest.time / minute, "6.1510")
    assert "dry" not in times


def test_a_long_draw_on_a_weak_inlet_runs_dry() -> None:
    """An independent trial (scipy DOP853, rtol 1e-10, restarted at each event), flow balance S2.

    As S1 with 2.5 gpm in and 30 minutes of draw: the intake uncovers at 4.94864 min.
    """
    weak = WORKED_HOUSE._replace(inlet=2.5 * gpm)
    start = weak.float_closed, weak.drawdown
    dry = run(weak, [Draw(minute, 6 * gpm, 180 * gal)], *start, 3600.0).first("dry")
    assert dry is not None
    assert agrees(dry / minute, "4.94864")


@pytest.mark.parametrize(
    ("linear", "gauge", "printed"),
    [
        (0.3, 40, "6.47244"), (0.3, 50, "7.30824"), (0.3, 60, "8.05966"),
        (6.0, 40, "3.98890"), (6.0, 50, "4.73600"), (6.0, 60, "5.42105"),
    ],
)  # fmt: skip
def test_flow_through_a_bed_and_a_valve(linear: float, gauge: float, printed: str) -> None:
    """The quadratic solved by hand: r1 in psi/gpm, r2 0.02 psi/gpm², a valve of Cv 1.1.

    6 ft of lift at 2.309 ft to the psi.
    """
    quadratic = 0.02 + 1 / 1.1**2
    drop = (gauge - 6 / 2.309) * psi
    flow = flow_through_bed(drop, linear * psi / gpm, quadratic * psi / gpm**2)
    assert agrees(flow / gpm, printed)


def test_flow_coefficient_of_a_throttle() -> None:
    """The definitions of Cv (gpm at 1 psi) and Kv (m³/h at 1 bar): 5 gpm at 45 psi."""
    coefficient = flow_coefficient(5 * gpm, 45 * psi)
    assert agrees(coefficient / Cv, ".74536")
    assert agrees(coefficient / Kv, ".6447")
    assert agrees(flow_through(coefficient, 45 * psi) / gpm, "5.0000")


def test_flow_coefficient_of_a_control_valve() -> None:
    """[iec-60534-2-1] example 1, as others print it: 360 m³/h of hot water, Kv 165.

    680 kPa before, 220 kPa after, 965.4 kg/m³. The coefficient is of water, so the drop
    counts over the relative density (that of cold water from memory, 999.1 kg/m³).
    """
    drop = (680 - 220) * kPa / (965.4 / 999.1)
    assert agrees(flow_coefficient(360 / hour, drop) / Kv, "165")


@pytest.mark.parametrize("percent", sorted(CHANCE))
def test_one_sided_normal_factors(percent: str) -> None:
    """[jcgm-106]: 1.645 and 2.326, recomputed with scipy."""
    assert agrees(float(stats.norm.ppf(1 - float(percent) / 100)), str(CHANCE[percent]))


@pytest.mark.parametrize(
    ("inlet", "doubt", "z", "printed"),
    [
        (5.6, 0.02, 1.645, "5.3453"), (5.0, 0.015, 1.645, "4.828"), (5.0, 0.03, 1.645, "4.663"),
        (7.0, 0.02, 2.326, "6.554"),
    ],
)  # fmt: skip
def test_guarded_outlet(inlet: float, doubt: float, z: float, printed: str) -> None:
    """[jcgm-106] 8.3.2, the equation solved by an independent trial: the same doubt on both."""
    assert agrees(guarded_outlet(inlet * gpm, doubt, doubt, z) / gpm, printed)
