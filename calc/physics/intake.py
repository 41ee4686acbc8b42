"""The intake of the open tank: water that must stand over it, and what is left to use."""

from math import sqrt

from calc.physics import pipe
from calc.units import GRAVITY


def froude_number(velocity: float, bore: float) -> float:
    """How strongly an intake pulls against the weight of the water over it.

        Fd = v / √(g D)

    velocity -- in the opening, m/s
    bore     -- of the opening, m

    >>> from calc.physics.pipe import velocity
    >>> from calc.units import gpm, inch
    >>> round(froude_number(velocity(6 * gpm, 1.049 * inch), 1.049 * inch), 3)
    1.328

    Source: [ansi-hi-9-8].
    """
    return velocity / sqrt(GRAVITY * bore)


def least_submergence(flow: float, bore: float) -> float:
    """Water that must stand over an intake so that no whirl carries air into it, m.

        S = D (1 + 2.3 Fd)

    flow -- the most that pump 2 can draw, m³/s
    bore -- inside diameter of the opening, m

    Made for intakes of 4 inches and far more, from models and practice. In small ones the
    water's skin and its viscosity hold the whirl back, so that this asks for rather more
    than is needed. It does not cover bubbles that an aerator has put into the water.

    >>> from calc.units import gpm, inch
    >>> round(least_submergence(6 * gpm, 1.049 * inch) / inch, 2)
    4.25

    Source: [ansi-hi-9-8]; the size of the effect of scale from memory.
    """
    return bore * (1 + 2.3 * froude_number(pipe.velocity(flow, bore), bore))


def usable_volume(volume: float, area: float, submergence: float) -> float:
    """Water that can leave before the intake may draw air, m³; below 0 there is none.

        V_u = V - A S

    volume      -- counted from the level of the opening, m³
    area        -- of the water's surface, m², the same at every level
    submergence -- water that must stay over the opening, m

    Source: geometry.
    """
    return volume - area * submergence


def float_opening(submergence: float, drawdown: float, keep: float, area: float) -> float:
    """Height over the intake at which the float must open the inlet, m.

        h_on = S + (dV + V_k) / A

    submergence -- m
    drawdown    -- what the house pressure tank may take at once, m³: 0 with the limit
                   between pump 2 and that tank
    keep        -- to be kept over that, m³: ripples, a float that sticks, a switch's play
    area        -- of the water's surface, m²

    Holds while no more leaves than enters; then the level never falls below S: see
    `calc.physics.open_tank.sure_reserve`. Source: derived there.
    """
    return submergence + (drawdown + keep) / area


def lockout_play(stopped: float, released: float) -> float:
    """Water that a low-level lock-out waits for before it lets pump 2 go, m³.

        V_w = V_r - V_l

    stopped  -- water over the intake when the switch stopped the pump, m³
    released -- when it let the pump go again, m³; both seen in a test, not read off a label

    Too little of it, and the pump stops and starts all through a draw: each time it runs
    for this water over the difference of its flow and the flow in.

    Source: definition.
    """
    return released - stopped
