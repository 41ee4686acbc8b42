"""Water broken into drops: how long they fly, what a still drop loses, what the chamber allows."""

from math import exp, pi, sqrt

from calc.units import GRAVITY

_TERMS = 80  # of a series whose terms fall off with the square of their number
_SHORT = 1e-3  # Fourier number under which the short-time form is exact to rounding


def exit_speed(pressure: float, density: float, coefficient: float = 0.95) -> float:
    """Speed of the water as it leaves a nozzle, m/s.

        v = Cv √(2 p / rho)

    pressure    -- at the nozzle while it runs, Pa; the pump's gauge overstates it
    density     -- kg/m³
    coefficient -- of velocity, 0.95 for a smooth orifice, from memory

    >>> round(exit_speed(137895, 999.7), 1)  # 20 psi
    15.8

    Source: Torricelli's law.
    """
    return coefficient * sqrt(2 * pressure / density)


def fall_time(speed: float, height: float) -> float:
    """Time a drop thrown straight down takes, s. Air drag is left out: it makes it longer.

        h = v t + g t² / 2

    speed  -- v, m/s
    height -- h, m, down to the water

    >>> round(fall_time(15.8, 0.5), 3)
    0.031

    Source: free fall.
    """
    return 2 * height / (speed + sqrt(speed**2 + 2 * GRAVITY * height))


def still_drop(diffusivity: float, time: float, diameter: float) -> float:
    """Share that a round drop loses in clean air if the water inside it stands still.

        1 - 6/π² Σ exp(-4 n² π² D t / d²) / n²

    diffusivity -- D of radon in water, m²/s
    time        -- t in the air, s
    diameter    -- d, m

    A lower bound: real drops form from a torn sheet and stir inside.

    >>> round(still_drop(0.813e-9, 1.0, 1e-3), 4)
    0.1833

    Source: [crank-1975], chapter 6, from memory.
    """
    fourier = 4 * diffusivity * time / diameter**2
    if fourier < _SHORT:
        # the series crawls when little has left; its short-time form does not
        return 6 * sqrt(fourier / pi) - 3 * fourier
    terms = (exp(-((n * pi) ** 2) * fourier) / n**2 for n in range(1, _TERMS))
    return 1 - 6 / pi**2 * sum(terms)


def chamber_removal(free_removal: float, factor: float) -> float:
    """Share removed by one pass when the drops fly through the chamber's own air.

        e = e0 / (1 + e0 / S)

    free_removal -- e0, what the same spray removes in clean air
    factor       -- S = H′ G / L, with the water that goes through the nozzle

    A chamber without air of its own soon carries what the water carries:

    >>> round(chamber_removal(0.6, 2.856), 3)  # as much air as water
    0.496

    Source: radon balance of mixed air over the spray.
    """
    return free_removal / (1 + free_removal / factor)


def left_passes(removal: float, passes: float) -> float:
    """Share left after that many passes, each through air of its own.

        left = (1 - e)^k

    Source: the passes multiply.
    """
    return float((1 - removal) ** passes)


def left_recirculated(removal: float, around: float, through: float) -> float:
    """Share left in a mixed tank whose water goes round through the spray.

        left = 1 / (1 + e Lr / L)

    removal -- e of one pass
    around  -- Lr, flow through the nozzle
    through -- L, flow in and out of the tank, in the same unit

    >>> round(left_recirculated(0.6, 6, 3), 4)
    0.4545

    Source: radon balance of a mixed tank.
    """
    return 1 / (1 + removal * around / through)
