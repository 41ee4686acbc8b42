"""The intake against the printed form of its rule."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.intake import (
    float_opening,
    froude_number,
    least_submergence,
    usable_volume,
)
from calc.physics.pipe import velocity
from calc.physics.tank_run import Draw, Plant, run
from calc.units import ft, gal, gpm, inch, m, minute
from tests.model.given import steady


def test_one_inch_at_six_gallons_a_minute() -> None:
    """[ansi-hi-9-8] worked apart: v 0.67890 m/s, Fd 1.32813, S 4.2534 in."""
    bore = 1.049 * inch
    speed = velocity(6 * gpm, bore)
    assert agrees(speed / m, "0.67890")
    assert froude_number(speed, bore) == pytest.approx(1.32813, abs=1e-5)
    assert agrees(least_submergence(6 * gpm, bore) / inch, "4.2534")


@pytest.mark.parametrize(
    ("bore", "flow", "printed"), [(1.049, 12, "7.46"), (0.824, 6, "5.43"), (1.38, 6, "3.50")]
)
def test_other_intakes(bore: float, flow: float, printed: str) -> None:
    """[ansi-hi-9-8] worked apart."""
    assert agrees(least_submergence(flow * gpm, bore * inch) / inch, printed)


@steady
@given(st.floats(0.5, 12), st.floats(0.5, 500))
def test_form_in_gallons_and_inches(bore: float, flow: float) -> None:
    """[ansi-hi-9-8], the form for US units: S = D + 0.574 Q / D^1.5, to its three digits."""
    expected = bore + 0.574 * flow / bore**1.5
    assert least_submergence(flow * gpm, bore * inch) / inch == pytest.approx(expected, rel=1e-3)


def test_usable_water_by_hand() -> None:
    """By hand: in 3 square feet 4.25 inches hold 7.95 gal."""
    assert agrees(usable_volume(9.5 * gal, 3 * ft**2, 4.25 * inch) / gal, "1.55")


@steady
@given(st.floats(1, 6), st.floats(0.5, 3), st.floats(0, 5), st.booleans())
def test_the_float_keeps_the_intake_covered(
    flow: float, area: float, keep: float, before: bool
) -> None:
    """The run of the tank: from the float's height, with no more out than in, the water over
    the intake never falls below its submergence."""
    surface = area * ft**2
    pump = flow if before else 12.0
    taken = 5.9 * gal
    submergence = least_submergence(pump * gpm, 1.38 * inch)
    opens = float_opening(submergence, 0.0 if before else taken, keep * gal, surface) * surface
    plant = Plant(
        inlet=flow * gpm,
        pump=pump * gpm,
        house=float("inf") if before else flow * gpm,
        float_open=opens,
        float_closed=opens + 1.5 * gal,
        drawdown=taken,
        residual=0.0,
    )
    result = run(plant, [Draw(0.0, flow * gpm, 80 * gal)], opens, 0.0, 600 * minute)
    assert result.lowest.level >= surface * submergence * (1 - 1e-9)
