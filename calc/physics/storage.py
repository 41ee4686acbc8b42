"""A storage tank between a slow well and a house that draws in peaks."""

from collections.abc import Sequence
from itertools import pairwise


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

    Source: sequent peak, [thomas-burden-1963]: the mass curve by arithmetic.
    """
    drawn = sum(draw * span for draw, span in zip(draws, spans, strict=True))
    if drawn > supplied * sum(spans):
        return None
    return max(short for _, short in shortages(draws, spans, supplied))


def shortages(
    draws: Sequence[float], spans: Sequence[float], supplied: float
) -> list[tuple[float, float]]:
    """Times of the second round, s, and how far under full a large tank then stands, m³: wherever
    that bends.

    draws, spans, supplied -- as in `storage_needed`

    Between two of them the level moves evenly, so the largest shortage is at one. Source: as
    `storage_needed`.
    """
    short = 0.0
    for _ in range(2):
        time = 0.0
        found = [(time, short)]
        for draw, span in zip(draws, spans, strict=True):
            gain = (draw - supplied) * span
            if short and short + gain < 0:
                found.append((time + span * short / -gain, 0.0))
            time += span
            short = max(0.0, short + gain)
            found.append((time, short))
    return found


def empty_after(shorts: Sequence[tuple[float, float]], usable: float) -> float | None:
    """Time at which a tank is first drawn empty, s. None if it is not.

    shorts -- as `shortages` gives them
    usable -- water in the full tank above its low-level cut-out, m³

    Holds for the first time: from then on the house goes without, and the shortage is another.

    200 gallons, drawn by 4 gpm more than comes:

    >>> from calc.units import gal, gpm, hour, minute
    >>> empty_after([(0.0, 0.0), (1 * hour, 240 * gal)], 200 * gal) / minute
    50.0

    Source: balance of the tank.
    """
    for (start, before), (end, after) in pairwise(shorts):
        if after > usable:
            return start + (end - start) * max(usable - before, 0.0) / (after - before)
    return None


def refill_time(volume: float, supplied: float, drawn: float = 0.0) -> float | None:
    """Time in which a tank takes a volume, s. None when no more enters than leaves.

        t = V / (S - D)

    volume   -- m³, 0 or more
    supplied -- m³/s
    drawn    -- m³/s, at the same time

    Four hours for 240 gallons at 1 gpm:

    >>> from calc.units import gal, gpm, hour
    >>> round(refill_time(240 * gal, 1 * gpm) / hour, 9)
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
