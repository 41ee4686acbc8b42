"""A storage tank between a slow well and a house that draws in peaks."""

from collections.abc import Sequence


def storage_needed(draws: Sequence[float], spans: Sequence[float], supplied: float) -> float | None:
    """Usable volume that carries a pattern of draws which comes back again and again, m³. None
    when the draws take more than is supplied: then no tank is large enough.

        K = max(0, K + (D - S) dt),   the largest K in two rounds

    draws    -- mean flow drawn in each stretch, m³/s
    spans    -- how long each stretch lasts, s; the whole pattern with its quiet hours
    supplied -- steady flow into the tank, m³/s, when there is room in it

    One round is too few: a shortage at the end of the day may not be made good by its beginning.

    5 gpm for an hour, 0.5 for two, 4 for one, 0.3 for four, and 1.5 gpm from the well:

    >>> from calc.units import gal, gpm, hour
    >>> draws = [each * gpm for each in (5, 0.5, 4, 0.3)]
    >>> round(storage_needed([*draws, 0], [hour, 2 * hour, hour, 4 * hour, 16 * hour],
    ...                      1.5 * gpm) / gal)
    240

    Source: sequent peak, [thomas-burden-1963]; the mass curve of [rippl-1883] by arithmetic.
    """
    drawn = sum(draw * span for draw, span in zip(draws, spans, strict=True))
    if drawn > supplied * sum(spans):
        return None
    return max(shortages(draws, spans, supplied))


def shortages(draws: Sequence[float], spans: Sequence[float], supplied: float) -> list[float]:
    """How far under full the tank stands at the end of each stretch of the second round, and at
    its start, m³.

    draws, spans, supplied -- as in `storage_needed`

    Between two ends the level moves in one direction, so the largest shortage is at an end. Source:
    as `storage_needed`.
    """
    short = 0.0
    for _ in range(2):
        found = [short]
        for draw, span in zip(draws, spans, strict=True):
            short = max(0.0, short + (draw - supplied) * span)
            found.append(short)
    return found


def refill_time(volume: float, supplied: float, drawn: float = 0.0) -> float | None:
    """Time in which a tank takes a volume, s. None when no more enters than leaves.

        t = V / (S - D)

    volume   -- m³, 0 or more
    supplied -- m³/s
    drawn    -- m³/s, at the same time

    Four hours for 240 gallons at 1 gpm:

    >>> from calc.units import gal, gpm, hour
    >>> refill_time(240 * gal, 1 * gpm) / hour
    4.0

    Source: balance of the tank.
    """
    if volume == 0:
        return 0.0
    return volume / (supplied - drawn) if supplied > drawn else None


def turnover(volume: float, used: float) -> float:
    """How long water stays in a tank on average, s.

        t = V / Q

    volume -- all the water that stands in it, dead storage as well, m³
    used   -- mean flow through it, m³/s

    Source: balance of the tank.
    """
    return volume / used
