"""What iron leaves in an aerator, and when a pressure that rises reaches its limit."""

# Fe(OH)3 over Fe, from standard atomic weights: 106.87 / 55.845.
FLOC = 1.914


def floc_rate(iron: float, falls: float, flow: float) -> float:
    """Dry iron hydroxide that settles, kg/s.

        m = 1.914 c a Q

    iron -- c, dissolved iron in the water that enters, kg/m³
    falls -- a, share of it that falls out here, 0 to 1
    flow -- Q, mean of the day, m³/s: not the pump's

    Each gram of iron makes 1.9 g dry, and many times that of wet sludge:

    >>> from calc.units import L, day, gal, mg
    >>> round(floc_rate(2 * mg / L, 1.0, 300 * gal / day) * day * 1e3, 2)
    4.35

    Source: formula weights.
    """
    return FLOC * iron * falls * flow


def time_to_limit(then: float, now: float, limit: float, elapsed: float) -> float | None:
    """Time until a figure that has risen evenly reaches its limit, s. None if it has not risen.

        t = (limit - now) elapsed / (now - then)

    then, now, limit -- in one unit
    elapsed -- s between then and now

    Dirt that catches dirt rises faster toward the end: look again at half the time.

    >>> time_to_limit(18.0, 20.0, 26.0, 90.0)
    270.0

    Source: a straight line.
    """
    if now <= then:
        return None
    return max(limit - now, 0.0) * elapsed / (now - then)
