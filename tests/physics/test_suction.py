"""Suction: the standard atmosphere and water by other hands, and printed limits."""

import pytest
from fluids.atmosphere import ATMOSPHERE_1976
from iapws import IAPWS97

from calc.figures import agrees
from calc.physics.suction import air_pressure, npsh_available, suction_limit
from calc.units import GRAVITY, ft, kPa, psi, temperature

C = temperature.unit("°C").zero


@pytest.mark.parametrize("height", [-400, 0, 365.76, 1500, 2500, 4500])
def test_air_of_another_hand(height: float) -> None:
    """The fluids library: standard atmosphere of 1976. It takes the height over a round earth."""
    assert air_pressure(height) == pytest.approx(ATMOSPHERE_1976(height).P, rel=5e-4)


@pytest.mark.parametrize(
    ("height", "printed"),
    [(0, 14.696), (500, 14.430), (2000, 13.664), (5000, 12.230), (10000, 10.108)],
)
def test_air_as_printed(height: float, printed: float) -> None:
    """[us-atmosphere-1976], psi by feet, as a table that reproduces it prints them: to 3 in the
    last of its five digits."""
    assert air_pressure(height * ft) / psi == pytest.approx(printed, abs=0.003)


@pytest.mark.parametrize(
    ("height", "printed", "column"),
    [
        (500, 95.46, "9.74"), (1000, 89.88, "9.17"), (1500, 84.56, ""), (2000, 79.50, "8.11"),
        (2500, 74.69, "7.62"), (3000, 70.12, "7.15"),
    ],
)  # fmt: skip
def test_air_of_the_textbook(height: float, printed: float, column: str) -> None:
    """[davis-3-7], check set A19: to a unit of the last digit. Its 8.66 m at 1500 m is not
    what its own 84.56 kPa carries."""
    assert air_pressure(height) / kPa == pytest.approx(printed, abs=0.0151)
    if column:
        assert printed * kPa / (1000.0 * GRAVITY) == pytest.approx(float(column), abs=0.0101)
    else:
        assert agrees(printed * kPa / (1000.0 * GRAVITY), "8.62")


@pytest.mark.parametrize(
    ("height", "celsius", "printed"),
    [
        (0, 10, "33.5"), (0, 25, "32.9"), (0, 40, "31.7"),
        (5000, 10, "27.8"), (5000, 25, "27.2"), (5000, 40, "25.9"),
    ],
)  # fmt: skip
def test_no_pump_lifts_more(height: float, celsius: float, printed: str) -> None:
    """Check set A20 and its neighbours, ft, found with IAPWS-IF97; that once more beside it."""
    found = suction_limit(air_pressure(height * ft), celsius + C)
    other = IAPWS97(T=celsius + C, x=0)
    column = (air_pressure(height * ft) - other.P * 1e6) / (other.rho * GRAVITY)
    assert found == pytest.approx(column, rel=2e-4)
    assert found / ft == pytest.approx(float(printed), abs=0.101)


def test_the_page_of_practical_lifts() -> None:
    """[suction-table]: 22, 20, 17, 15, 14 ft. What it keeps back shrinks on the way up.

    At 10 °C that is 11.5 ft at sea level and 8.4 ft at 10,560 ft: no one pump's need. Its column
    of water at 7920 ft, 24.13 ft, is a foot short of its own 10.88 psi.
    """
    for height, printed, kept in (
        (0, 22, "11.5"), (2640, 20, "10.4"), (5280, 17, "10.5"), (7920, 15, "9.9"),
        (10560, 14, "8.4"),
    ):  # fmt: skip
        limit = suction_limit(air_pressure(height * ft), 10 + C) / ft
        assert agrees(limit - printed, kept)
    water = 62.43 * 0.45359237 / ft**3 * GRAVITY  # N/m³
    assert 10.88 * psi / water / ft == pytest.approx(25.1, abs=0.05)
    assert 9.88 * psi / water / ft == pytest.approx(22.8, abs=0.05)


def test_what_is_left_at_the_pump() -> None:
    """By hand: the limit less lift less friction; a pump under water gains."""
    assert npsh_available(10.0, 4.0, 1.5) == 4.5
    assert npsh_available(10.0, -2.0, 1.5) == 10.5
