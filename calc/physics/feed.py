"""A feed pump that brings a solution into the line while water runs."""


def feed_flow(flow: float, dose: float, solution: float) -> float:
    """Flow of the feed pump, m³/s.

        q = Q c / C

    flow     -- Q, of the water it is fed into while both run, m³/s
    dose     -- c, wanted in the water, kg/m³. Of chlorine, what the water uses up and what is to
                stay
    solution -- C, strength of the solution, kg/m³: 52.5 g/L in bleach of 5.25 %, half of it after
                months on a shelf

    >>> from calc.units import gpm, minute
    >>> round(feed_flow(8 * gpm, 0.061, 60.0) * minute * 1e6, 1)  # mL/min
    30.8

    Source: conservation of mass.
    """
    return flow * dose / solution
