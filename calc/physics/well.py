"""What a drilled or dug well holds and what flows into it while its level moves.

Drawdown is how far the level stands below the static level. Inflow is taken as in proportion to
it, down to the depth of the fracture that feeds the well; below that it grows no further.
"""

from itertools import pairwise
from math import exp, expm1, inf, log, pi
from typing import NamedTuple


class Well(NamedTuple):
    """A well that is drawn down, SI.

    area     -- surface of the water in the casing, m²
    inflow   -- for each metre of drawdown, m²/s
    fracture -- drawdown at which the fracture that feeds it lies bare, m; infinite when the
                level never gets there
    """

    area: float
    inflow: float
    fracture: float = inf


class Supply(NamedTuple):
    """What pumping for a time gives.

    volume -- m³
    down   -- time until the lowest level is reached, s; None if it is not
    end    -- drawdown at the end, m
    """

    volume: float
    down: float | None
    end: float


def stored_volume(diameter: float, column: float) -> float:
    """Volume of water standing in a round casing or borehole, m³.

        V = π d² h / 4

    diameter -- inside diameter of the bore, m
    column   -- height of water, m. For use what the pump can reach: pump's depth less the water
                kept over it, less static level; the full depth of the well always overstates it.
                For chlorine all of it, from the level at rest to the bottom.

    Holds for a straight bore. Rock holes run out of gauge, and fractures hold water this formula
    does not see.

    A 6 in casing holds about 1½ gallons a foot:

    >>> from calc.units import ft, gal, inch
    >>> round(stored_volume(6 * inch, 1 * ft) / gal, 2)
    1.47

    Source: geometry, applied as in [gwp-box-1]; tables of [mesa-shock] and
    [hickory-disinfect].
    """
    return pi * diameter**2 * column / 4


def open_area(diameter: float, pipe: float = 0.0) -> float:
    """Surface of the water in a casing with a drop pipe in it, m².

        A = π (d² - d_p²) / 4

    diameter -- inside diameter of the casing or rock hole, m
    pipe     -- outside diameter of the drop pipe, m; what its check valve holds back does not
                move with the level

    A 1.66 in pipe takes 0.112 gallons a foot from a 6 in casing:

    >>> from calc.units import ft, gal, inch
    >>> round((open_area(6 * inch) - open_area(6 * inch, 1.66 * inch)) * ft / gal, 3)
    0.112

    Source: geometry.
    """
    return pi * (diameter**2 - pipe**2) / 4


def specific_capacity(flow: float, drawdown: float) -> float:
    """Flow for each metre of drawdown, m²/s. Say the time since the pump started with it: the
    drawdown goes on growing.

        C = Q / s

    flow     -- m³/s
    drawdown -- level while pumping less static level, m, not 0

    Source: definition; [mace-2000].
    """
    return flow / drawdown


def inflow_at(well: Well, drawdown: float) -> float:
    """What flows into the well at a drawdown, m³/s.

        Q = C min(s, s_f)

    drawdown -- m, 0 or more

    Holds for a well whose inflow is laminar, a good rule over hours. Over weeks C falls. Source:
    the law behind the recuperation test, as in `inflow_for_each`; its bend by reason.
    """
    return well.inflow * min(drawdown, well.fracture)


def time_to_drawdown(well: Well, pumped: float, start: float, end: float) -> float | None:
    """Time in which the level goes from one drawdown to another, s. None if it never gets there.

        t = A/C ln((Q - C s₁) / (Q - C s₂)),   below the fracture t = A (s₂ - s₁) / (Q - C s_f)

    pumped -- m³/s; 0 while it recovers
    start, end -- drawdowns, m

    8 gpm out of a 6 in well of 0.02 gpm a foot, 150 ft down:

    >>> from calc.units import ft, gpm, inch, minute
    >>> well = Well(open_area(6 * inch), 0.02 * gpm / ft)
    >>> round(time_to_drawdown(well, 8 * gpm, 0, 150 * ft) / minute, 1)
    34.5

    Source: balance of the water in the casing, A ds/dt = Q - C s, integrated.
    """
    low, high = sorted((start, end))
    bends = [well.fracture] if low < well.fracture < high else []
    places = [start, *bends, end]
    total = 0.0
    for here, there in pairwise(places):
        span = _span(well, pumped, here, there)
        if span is None:
            return None
        total += span
    return total


def _span(well: Well, pumped: float, here: float, there: float) -> float | None:
    """Time between two drawdowns on one side of the fracture."""
    if here == there:
        return 0.0
    first = pumped - inflow_at(well, here)
    last = pumped - inflow_at(well, there)
    if min(first * (there - here), last * (there - here)) <= 0:
        return None
    if min(here, there) >= well.fracture:
        return well.area * (there - here) / first
    return well.area / well.inflow * log(first / last)


def drawdown_after(well: Well, pumped: float, start: float, time: float) -> float:
    """Drawdown after a time of steady pumping, or of rest, m.

        s = Q/C (1 - e^(-C t / A)) + s₁ e^(-C t / A)

    pumped -- m³/s; 0 while it recovers
    start  -- drawdown at the beginning, m
    time   -- s

    The well above, an hour after its pump stopped:

    >>> from calc.units import ft, gpm, hour, inch
    >>> well = Well(open_area(6 * inch), 0.02 * gpm / ft)
    >>> round(drawdown_after(well, 0, 150 * ft, 1 * hour) / ft)
    66

    Source: as `time_to_drawdown`.
    """
    fracture = well.fracture
    bend = time_to_drawdown(well, pumped, start, fracture) if fracture < inf else None
    if bend and bend < time:
        start, time = fracture, time - bend
    falls = pumped > well.inflow * fracture
    if start > fracture or (start == fracture and falls):
        return start + (pumped - well.inflow * fracture) * time / well.area
    share = -well.inflow * time / well.area
    return start * exp(share) - pumped / well.inflow * expm1(share)


def supply(well: Well, pumped: float, start: float, lowest: float, time: float) -> Supply:
    """What the well gives to a pump in a time, with its level held at the lowest one once it is
    there.

    pumped -- what the pump can take, m³/s
    start  -- drawdown at the beginning, m, no more than the lowest
    lowest -- drawdown that a cut-out or throttle allows, m
    time   -- s

    The pump is taken to give no more than what flows in from then on. One that stops and waits for
    the level to come back gives a little less. Source: as `time_to_drawdown`.

    >>> from calc.units import ft, gal, gpm, inch, minute
    >>> well = Well(open_area(6 * inch), 0.02 * gpm / ft)
    >>> round(supply(well, 8 * gpm, 0, 150 * ft, 34.5 * minute).volume / gal)
    276
    """
    down = time_to_drawdown(well, pumped, start, lowest)
    if down is None or down >= time:
        return Supply(pumped * time, None, drawdown_after(well, pumped, start, time))
    held = min(pumped, inflow_at(well, lowest))
    return Supply(pumped * down + held * (time - down), down, lowest)


def naive_supply(well: Well, pumped: float, lowest: float, time: float) -> float:
    """What stored water plus full yield times time promises, m³: always too much, for full yield
    flows in only at the lowest level.

        V = A s + Q(s) t,   and no more than the pump takes

    pumped, lowest, time -- as in `supply`; the well starts full

    Source: the sum used in [gwp-box-1], shown here for what it leaves out.
    """
    return min(pumped * time, well.area * lowest + inflow_at(well, lowest) * time)


def inflow_for_each(area: float, time: float, first: float, last: float) -> float:
    """Inflow for each metre of drawdown from two readings while the well recovers, m²/s.

        C = A/t ln(s₁ / s₂)

    area        -- surface of the water in the casing, m², drop pipe taken off
    time        -- between the readings, s
    first, last -- drawdowns, m, above 0. Counted from a static level that was not yet back, the
                   last one is too small and C too large

    6 in, from 100 to 60 ft of drawdown in 45 minutes:

    >>> from calc.units import ft, gpm, inch, minute
    >>> each = inflow_for_each(open_area(6 * inch), 45 * minute, 100 * ft, 60 * ft)
    >>> round(each / (gpm / ft), 5)
    0.01667

    Source: recuperation test, [slichter-recuperation].
    """
    return area / time * log(first / last)


def inflow_while(area: float, pumped: float, fall: float, time: float) -> float:
    """What flows in between two readings, m³/s.

        Q = Q_p - A ds / dt

    area   -- surface of the water in the casing, m²
    pumped -- m³/s; 0 while it recovers
    fall   -- how far the level fell between the readings, m; under 0 when it rose
    time   -- between them, s

    6 in, risen by 20 ft in 30 minutes:

    >>> from calc.units import ft, gpm, inch, minute
    >>> round(inflow_while(open_area(6 * inch), 0, -20 * ft, 30 * minute) / gpm, 3)
    0.979

    Source: balance of the water in the casing.
    """
    return pumped - area * fall / time


def recovery_time(well: Well, start: float, share: float) -> float:
    """Time in which the level comes back by a share of its drawdown, s.

    start -- drawdown when the pump stops, m, above 0
    share -- from 0 to under 1; the whole of it takes for ever

    >>> from calc.units import ft, gpm, inch, minute
    >>> well = Well(open_area(6 * inch), 0.02 * gpm / ft)
    >>> round(recovery_time(well, 150 * ft, 0.9) / minute)
    169

    Source: as `time_to_drawdown`.
    """
    back = time_to_drawdown(well, 0.0, start, (1 - share) * start)
    assert back is not None
    return back
