"""Water of gardens and rules by the bedroom, against printed figures."""

import pytest

from calc.figures import agrees
from calc.physics.daily_use import bedroom_peak, watering
from calc.units import L, ft, gal, inch, minute


def test_an_inch_on_a_lawn() -> None:
    """As garden pages print it: 0.623 gal on a square foot; 620 on a thousand, to two figures."""
    assert agrees(watering(1 * ft**2, 1 * inch, 1) / gal, "0.623")
    assert watering(1000 * ft**2, 1 * inch, 1) / gal == pytest.approx(620, abs=5)
    assert agrees(7 * watering(1 * ft**2, 1 * inch, 7) / gal, "0.623")


@pytest.mark.parametrize(
    ("bedrooms", "printed"), [(1, "13.7"), (2, "13.7"), (3, "15.00"), (4, "18.75"), (5, "22.50")]
)
def test_peak_by_bedrooms(bedrooms: float, printed: str) -> None:
    """[on-d-5-5], from memory: 3.75 L/min for each of bedrooms and one, 13.7 at least."""
    assert agrees(bedroom_peak(bedrooms) / (L / minute), printed)
