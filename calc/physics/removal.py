"""What a treatment takes out, from one sample before it and one after."""

from math import hypot


def removal(before: float, after: float) -> float:
    """Share taken out.

        R = 1 - C₂ / C₁

    before, after -- C₁, C₂ in one unit, brought back to the draw

    >>> round(removal(20000, 180), 4)
    0.991

    Source: definition.
    """
    return 1 - after / before


def removal_doubt(before: float, after: float, before_doubt: float, after_doubt: float) -> float:
    """Plus-or-minus of the removal, as sure as those of the two samples.

        U = C₂ / C₁ √((U₁ / C₁)² + (U₂ / C₂)²)

    before, after -- C₁, C₂
    before_doubt, after_doubt -- U₁, U₂, their plus-or-minus, in the same unit

    The better the removal, the less the doubt of the raw water matters:

    >>> round(100 * removal_doubt(20000, 180, 1000, 40), 3)
    0.205

    Source: [jcgm-100] equation (10).
    """
    return after / before * hypot(before_doubt / before, after_doubt / after)


def removal_needed(before: float, target: float) -> float:
    """Removal that leaves no more than the target.

        R = 1 - C_t / C₁

    before -- C₁: the highest the raw water has been, not today's
    target -- C_t

    >>> round(removal_needed(20000, 300), 3)
    0.985

    Source: definition.
    """
    return 1 - target / before
