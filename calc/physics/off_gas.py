"""What leaves the water and goes into the vent, and what it does where the vent leaks."""

from math import exp

from calc.physics import air
from calc.physics.decay import RADON, decay_constant

DECAY = decay_constant(RADON)
# Radon in a house's air over radon in its water, from ordinary use: about 1 in 10 000, [nrc-1999].
FROM_USE = 1e-4


def vent_radon(removed: float, water_flow: float, air_flow: float) -> float:
    """Radon in the air of the vent while the unit runs, Bq/m³.

        C = c Q / G

    removed    -- c, radon that the water loses, Bq/m³
    water_flow -- Q, m³/s
    air_flow   -- G, m³/s

    Nothing but dilution: twice the air is half the strength, and as much radon as before.

    >>> from calc.units import L, ft, gpm, minute, pCi
    >>> strength = vent_radon(0.99 * 20000 * pCi / L, 5 * gpm, 60 * ft**3 / minute)
    >>> round(strength * L / pCi, 1)
    220.6

    Source: radon balance.
    """
    return removed * water_flow / air_flow


def room_radon(release: float, volume: float, exchange: float, time: float | None = None) -> float:
    """Radon that a leak adds to the air of a room, Bq/m³.

        C = A / (V (l + lambda)) (1 - exp(-(l + lambda) t))

    release  -- A, radon that leaks into it, Bq/s
    volume   -- V, m³
    exchange -- l, air changes, 1/s. A tight basement in winter has a fifth of what a leaky one has
    time     -- t since the leak began, s; None: it has gone on for long

    The room is taken as mixed. Next to the leak it is far worse.

    >>> from calc.units import L, day, ft, gal, hour, pCi
    >>> all_of_it = 300 * gal / day * 20000 * pCi / L
    >>> round(room_radon(all_of_it, 8000 * ft**3, 0.3 / hour) * L / pCi, 1)
    13.6

    Source: radon balance of a mixed room; decay of [icrp-107].
    """
    rate = exchange + DECAY
    steady = release / (volume * rate)
    return steady if time is None else steady * (1 - exp(-rate * time))


def even_share(removal: float, water: float, volume: float, exchange: float) -> float:
    """Share that may leak into a room until its air is as bad as the house's was from untreated
    water.

        x = f V (l + lambda) / (R Q)

    removal  -- R, share of the radon that the unit takes out
    water    -- Q, water treated, average over the day, m³/s
    volume, exchange -- as in `room_radon`

    f is one part in ten thousand, a house's average; houses differ by a factor of ten.

    Source: [nrc-1999] for f; radon balance.
    """
    return FROM_USE * volume * (exchange + DECAY) / (removal * water)


def condensate(air_flow: float, warm: float, cold: float, pressure: float) -> float:
    """Water that the vent's air leaves on a cold pipe, kg/s.

        m = rho_d G (W1 - W2)

    air_flow -- G, m³/s, as it leaves the water
    warm     -- temperature of the water, K: the air leaves it full of vapour
    cold     -- temperature of the coldest stretch of pipe, K. Under the ice point it stays as ice
    pressure -- of the air, absolute, Pa

    The most there can be: it takes the air to cool down all the way.

    >>> from calc.units import ft, hour, minute
    >>> round(condensate(50 * ft**3 / minute, 283.15, 263.15, 101325) * hour, 2)
    0.63

    Source: `calc.physics.air`.
    """
    carried, kept = air.humidity(warm, pressure), air.humidity(min(cold, warm), pressure)
    dry = air.density(warm, pressure, carried) / (1 + carried)
    return dry * air_flow * (carried - kept)
