"""Water of a day that is not drawn at a tap one can time: gardens, and rules by the bedroom."""

from calc.units import L, minute

ONTARIO_EACH, ONTARIO_LEAST = 3.75 * L / minute, 13.7 * L / minute  # [on-d-5-5], from memory


def watering(area: float, depth: float, days: float) -> float:
    """Water that a garden takes on a day of watering, m³.

        V = A h / n

    area  -- that gets water, m²
    depth -- water it gets in a week, m, rain subtracted
    days  -- n, of the week on which it is watered; 7 for the mean of the week

    An inch on a square foot is 0.62 gallons:

    >>> from calc.units import ft, gal, inch
    >>> round(watering(1 * ft**2, 1 * inch, 1) / gal, 3)
    0.623

    Source: geometry.
    """
    return area * depth / days


def bedroom_peak(bedrooms: float) -> float:
    """Flow for two hours that Ontario's guideline of 1996 asks of a house, m³/s.

        q = 3.75 L/min · (bedrooms + 1), at least 13.7 L/min

    bedrooms -- the guideline takes one person more than there are

    Holds where that guideline does; elsewhere it is an example.

    >>> round(bedroom_peak(4) / (L / minute), 2)
    18.75

    Source: [on-d-5-5], figures from memory.
    """
    return max(ONTARIO_EACH * (bedrooms + 1), ONTARIO_LEAST)
