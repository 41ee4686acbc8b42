"""Student's t: how far a mean of few readings may lie off."""

from functools import lru_cache
from math import cos, pi, sin, sqrt, tan

HALVINGS = 60  # of a quarter turn: to rounding


def chance_within(angle: float, freedom: int) -> float:
    """Chance that Student's t lies within ±√ν tan θ.

        odd ν:  2/π [θ + sin θ (cos θ + 2/3 cos³θ + ... )]
        even ν: sin θ [1 + 1/2 cos²θ + 1·3/(2·4) cos⁴θ + ... ], up to cos^(ν-2)

    angle   -- θ = arctan(t / √ν), from 0 to π/2
    freedom -- ν, degrees of freedom: readings less the figures taken from them

    One degree of freedom: half of all lie within ±1.

    >>> from math import atan
    >>> round(chance_within(atan(1.0), 1), 12)
    0.5

    Source: [abramowitz-stegun], 26.7.3 and 26.7.4.
    """
    odd = freedom % 2
    term = cos(angle) if odd else 1.0
    total = term if freedom > 1 else 0.0
    for power in range(2 + odd, freedom - 1, 2):
        term *= (power - 1) / power * cos(angle) ** 2
        total += term
    return 2 / pi * (angle + sin(angle) * total) if odd else sin(angle) * total


@lru_cache
def student_t(chance: float, freedom: int) -> float:
    """The t that Student's distribution stays below with this chance.

    chance  -- over a half, under 1; one-sided. 0.95 one-sided is 90 % two-sided
    freedom -- degrees of freedom, 1 or more

    Three degrees of freedom, 19 times in 20 not above:

    >>> round(student_t(0.95, 3), 3)
    2.353

    Source: [abramowitz-stegun], 26.7.3 and 26.7.4, narrowed down by halves.
    """
    low, high = 0.0, pi / 2
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        if chance_within(middle, freedom) < 2 * chance - 1:
            low = middle
        else:
            high = middle
    return sqrt(freedom) * tan(low)
