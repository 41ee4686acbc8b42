"""How radon dies away, and how its short-lived children grow in after a vial is closed."""

from collections.abc import Sequence
from math import exp, log, prod

from calc.units import day, minute

RADON = 3.8235 * day  # half-life of radon-222 [icrp-107]
POLONIUM_218 = 3.10 * minute
LEAD_214 = 26.8 * minute
BISMUTH_214 = 19.9 * minute
RADON_CHAIN = (RADON, POLONIUM_218, LEAD_214, BISMUTH_214)
_NO_TIME = 1e-6  # of the shortest half-life: the sum below would be all rounding


def decay_constant(half_life: float) -> float:
    """Share that decays in each unit of time, 1/s.

        λ = ln 2 / T½

    half_life -- s

    Radon loses 0.755 % an hour:

    >>> from calc.units import hour
    >>> round(decay_constant(RADON) * hour, 7)
    0.0075536

    Source: definition; half-life [icrp-107].
    """
    return log(2) / half_life


def remaining(time: float, half_life: float = RADON) -> float:
    """Share left after a time in a closed vial, a full tank or a pipe.

        C / C₀ = exp(-λ t)

    time -- s. For a sample from the draw to the middle of the count, by the clock: a form filled
            in after the clocks have changed is an hour out
    half_life -- s

    Two days cost three parts in ten:

    >>> from calc.units import hour
    >>> round(remaining(48 * hour), 5)
    0.69588

    Source: law of decay; half-life [icrp-107].
    """
    return exp(-decay_constant(half_life) * time)


def remaining_mixed(residence: float, half_life: float = RADON) -> float:
    """Share left in the water that leaves a tank whose water is all of one strength.

        C / C₀ = 1 / (1 + λ τ)

    residence -- water in the tank over the flow through it, s. Not its size over the pump's flow
    half_life -- s

    Holds for a steady flow. The same tank without mixing, first in first out, does better, since
    no water gets through early:

    >>> round(remaining_mixed(3 * day), 4), round(remaining(3 * day), 4)
    (0.6477, 0.5805)

    Source: balance of a mixed tank.
    """
    return 1 / (1 + decay_constant(half_life) * residence)


def time_until(share: float, half_life: float = RADON) -> float:
    """Time until only a share is left, s.

        t = ln(1 / share) / λ

    share -- above 0; for a share over 1 the answer is under 0
    half_life -- s

    >>> round(time_until(0.1) / day, 2)
    12.7

    Source: law of decay.
    """
    return log(1 / share) / decay_constant(half_life)


def grown_in(time: float, half_lives: Sequence[float] = RADON_CHAIN) -> tuple[float, ...]:
    """Activity of each member of a chain, against the first one's at the start, when only the
    first was there at the start.

        Aₙ = λ₂ ⋯ λₙ Σᵢ exp(-λᵢ t) / Πⱼ (λⱼ - λᵢ),   j from 1 to n but not i

    time -- s since the vial was closed
    half_lives -- s, the first one's first, no two alike

    Each member decays into the next and no other: polonium-218 does to within 2 in 10 000. Three
    hours after closing, the last of radon's short-lived children stands at 95 %, and a count that
    counts them with it can start:

    >>> from calc.units import hour
    >>> round(grown_in(3 * hour)[-1], 4)
    0.951

    Source: [bateman-1910]; half-lives [icrp-107].
    """
    if time < _NO_TIME * min(half_lives):
        return (1.0, *(0.0 for _ in half_lives[1:]))
    rates = [decay_constant(each) for each in half_lives]
    return tuple(_member(time, rates[: last + 1]) for last in range(len(rates)))


def _member(time: float, rates: Sequence[float]) -> float:
    """Activity of the last of these."""
    whole = 0.0
    for i, rate in enumerate(rates):
        others = prod(other - rate for j, other in enumerate(rates) if j != i)
        whole += exp(-rate * time) / others
    return prod(rates[1:]) * whole
