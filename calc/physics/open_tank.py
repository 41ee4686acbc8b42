"""The open tank between two pumps: what leaves, what enters, and how long it lasts.

Volumes count from the level at which the intake draws air.
"""

from math import sqrt


def time_to_empty(volume: float, inlet: float, outlet: float) -> float | None:
    """Time until the tank is empty with both flows steady from the start, s; None if never.

        t = V / (Qo - Qi)

    volume -- water above the intake, m³
    inlet  -- m³/s, flowing from the first moment: a float that must first fall to open
              makes the time shorter than this
    outlet -- m³/s

    >>> from calc.units import gal, gpm, minute
    >>> round(time_to_empty(11 * gal, 2.5 * gpm, 6 * gpm) / minute, 3)
    3.143

    Source: conservation of water.
    """
    return volume / (outlet - inlet) if outlet > inlet else None


def sure_reserve(float_open: float, drawdown: float, limit_before_tank: bool) -> float:
    """Water the open tank is sure to hold when a big draw meets it at its worst, m³.

    Before: R = V_on.   After: R = V_on - dV.

    float_open        -- water above the intake when the float opens the inlet, m³
    drawdown          -- what the house pressure tank takes between cut-in and cut-out, m³
    limit_before_tank -- whether the outlet limit sits between pump 2 and that tank

    Why. Let the float open at time 0, when the open tank holds V_on, and look at any
    later time t with the float still open (once it closes, the level is above V_on and
    the story starts again). What left the open tank went into the pressure tank or on
    to the house:

        left = house draw + what the pressure tank gained.

    Limit before the pressure tank, at most q: pump 2 itself passes no more than q, so
    V(t) >= V_on + (Qi - q) t. With q <= Qi the level never falls below V_on.
    Limit after it, at most q: the house draws no more than q t, but the pressure tank
    may gain one drawdown at whatever rate pump 2 can give. So
    V(t) >= V_on - dV + (Qi - q) t. With q <= Qi the level can still fall by dV.
    In both, water above V_on when the draw starts only helps. The second line needs
    pump 2 to pass at least q, so that the pressure tank never falls below its cut-in;
    after a power cut or a dry run it may, and then it takes more on the first refill.

    A 5.9 gal drawdown takes more than half of a 9.5 gal reserve:

    >>> from calc.units import gal
    >>> round(sure_reserve(9.5 * gal, 5.9 * gal, limit_before_tank=False) / gal, 1)
    3.6

    Source: derived here from conservation of water.
    """
    return float_open if limit_before_tank else float_open - drawdown


def sure_time(reserve: float, inlet: float, outlet: float) -> float | None:
    """How long a draw met at the worst moment is sure to go on, s; None if for ever.

        t = R / (q - Qi)

    reserve -- from `sure_reserve`, m³; at or below 0 nothing is sure, even with q <= Qi
    inlet   -- worst inlet flow, m³/s
    outlet  -- q, the most that leaves, m³/s

    Source: the bounds in `sure_reserve`.
    """
    return 0.0 if reserve <= 0 else time_to_empty(reserve, inlet, outlet)


def largest_draw(reserve: float, inlet: float, outlet: float, refill: float = 0.0) -> float | None:
    """Water one unbroken draw may take before the intake can uncover, m³; None: no end to it.

        V = q t - dV

    reserve, inlet, outlet -- as in `sure_time`; with the limit before the pressure tank q is
              what pump 2 passes, however little the house draws
    refill -- dV, what the house pressure tank takes after the draw while pump 2 still runs,
              m³; 0 with the limit after it, where the reserve is already less by that much

    Source: conservation of water. All that pump 2 moves from the first moment to the refilled
    tank is the draw and one drawdown.
    """
    time = sure_time(reserve, inlet, outlet)
    return None if time is None else max(0.0, outlet * time - refill)


def guarded_outlet(inlet: float, inlet_sure: float, outlet_sure: float, sureness: float) -> float:
    """Largest outlet flow that may be set under the worst inlet flow, m³/s.

        q = Qi - z √((ui Qi)² + (uo q)²), solved for q

    inlet       -- worst inlet flow, m³/s: lowest pressure, dirtiest filter, lowest well
    inlet_sure  -- relative standard uncertainty of it
    outlet_sure -- relative standard uncertainty with which the outlet is measured
    sureness    -- z: 1.645 leaves a 5 % chance that the true outlet passes the true inlet

    Holds while z times either uncertainty is below 1.

    >>> round(guarded_outlet(5.6, 0.02, 0.02, 1.645), 3)
    5.345

    Source: guard band of [jcgm-106] 8.3.2, one-sided, on a difference of two flows.
    """
    a = 1 - (sureness * outlet_sure) ** 2
    b = 1 - (sureness * inlet_sure) ** 2
    # the smaller root, written so that nothing cancels
    return inlet * b / (1 + sqrt(1 - a * b))
