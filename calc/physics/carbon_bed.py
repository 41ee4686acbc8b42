"""Carbon that holds radon back: how much passes, what collects in it, and the rays it gives off."""

from math import exp, log, sqrt

from calc.physics.decay import RADON, decay_constant
from calc.units import hour, year

RADON_DECAY = decay_constant(RADON)
LEAD_DECAY = decay_constant(22.20 * year)  # lead-210 [icrp-107]

# 8.25 R a hour from 1 mCi of radium with its decay products at 1 cm, behind 0.5 mm of platinum
# [jaeger-1968]; 1 R is 8.76 mGy in air, from memory. Bismuth-214 and lead-214 give nearly all of
# it, so it holds for radon in a bed as well. One gray of these rays is taken as one sievert.
GAMMA = 8.25 * 8.76e-3 * 1e-4 / (hour * 37e6)  # Sv m²/(s Bq)


def contact_time(bed: float, use: float) -> float:
    """Time the water would stay in the bed if there were no carbon in it, s (EBCT).

        t = V / Q

    bed -- volume of the carbon, m³: not the size of the tank, a third of which is empty
    use -- water used, averaged over whole days, m³/s. Not the flow of a tap: the bed
           works day and night, and what one draw brings it has hours to decay

    >>> from calc.units import day, ft, gal, minute
    >>> round(contact_time(2 * ft**3, 300 * gal / day) / minute, 1)
    71.8

    Source: definition.
    """
    return bed / use


def share_left(kss: float, contact: float) -> float:
    """Share of the radon that still passes a bed after its first weeks, 0 to 1.

        C / C0 = exp(-Kss t)

    kss     -- adsorption-decay constant, 1/s: of one carbon in one water. Iron and organic
               matter lower it, and it falls as the bed fouls
    contact -- empty-bed contact time at the average flow, s

    Holds from about three weeks on (from memory), when as much radon decays in the bed as
    comes in. Before that less passes.

    >>> from calc.units import hour, minute
    >>> round(1 - share_left(3.02 / hour, 91.5 * minute), 3)
    0.99

    Source: [nrc-1999-carbon] p. 259, read.
    """
    return exp(-kss * contact)


def contact_needed(kss: float, left: float) -> float:
    """Contact time at which no more than a given share passes, s.

        t = ln(1 / left) / Kss

    kss  -- adsorption-decay constant, 1/s
    left -- share of the radon that may pass, over 0 and under 1

    >>> from calc.units import hour, minute
    >>> round(contact_needed(3.02 / hour, 0.01) / minute, 1)
    91.5

    Source: as `share_left`, turned round.
    """
    return -log(left) / kss


def retained_activity(use: float, came: float, passed: float) -> float:
    """Radon that sits in the bed when it is steady, Bq: what comes in is what decays there.

        A = Q (C0 - C) / lambda

    use    -- average flow, m³/s
    came   -- radon in the water before the bed, Bq/m³
    passed -- and after it, Bq/m³

    Each of the short-lived decay products is there with as many becquerel. It is the most:
    after t days 1 - exp(-0.181 t) of it, 98 % after three weeks.

    >>> from calc.units import day
    >>> round(retained_activity(1 / day, 185e3, 25e3) / 1e3, 1)
    882.6

    Source: balance; the case is that of [nrc-1999-carbon] p. 257, read.
    """
    return use * (came - passed) / RADON_DECAY


def gamma_dose_rate(activity: float, distance: float) -> float:
    """Dose rate of gamma rays near a bed, Sv/s; an upper bound.

        H = Gamma A / r²

    activity -- radon in the bed, Bq
    distance -- shortest way to the line down the middle of the bed, m. Up to the floor above,
                it ends where a person stands, sits or lies, not at the joists

    As if all of it sat at the nearest point, with nothing in between: a bed spread out, its
    own carbon and water, its wall and a floor make it less. What walls throw back is not in it.
    A survey meter calibrated in ambient dose reads a sixth more for the same field (from memory).

    >>> from calc.units import hour
    >>> round(gamma_dose_rate(882.6e3, 1.0) * hour * 1e6, 3)
    0.172

    Source: [jaeger-1968] for the constant, second-hand. [nrc-1999-carbon] p. 259, read, has
    0.148 and 0.173 µSv/h for that case from two models; the distance is not on the page, and
    fits 1 m.
    """
    return GAMMA * activity / distance**2


def distance_for(activity: float, rate: float) -> float:
    """Distance from which on the dose rate is no more than is accepted, m.

        r = √(Gamma A / H)

    activity -- radon in the bed, Bq
    rate     -- accepted dose rate, Sv/s

    Source: `gamma_dose_rate` turned round.
    """
    return sqrt(GAMMA * activity / rate)


def lead_210(activity: float, age: float) -> float:
    """Lead-210 that the radon has left in the carbon, Bq.

        A_Pb = A (1 - exp(-lambda_Pb t))

    activity -- radon that the bed has held all that time, Bq
    age      -- time in service, s

    Each radon atom that decays in the bed becomes an atom of lead-210, and carbon holds lead
    well. The rays do not show it: lead-210 has next to no gamma. Polonium-210 follows it within
    a year or two and is then there with as many becquerel.

    >>> round(lead_210(100.0, 10 * year), 2)
    26.82

    Source: decay law with the half-life in [icrp-107]; [nrc-1999-carbon] p. 168 for what
    collects.
    """
    return activity * (1 - exp(-LEAD_DECAY * age))


def wait_before_opening(rate: float, accepted: float) -> float:
    """Time a bed must stand shut off until its dose rate has died down, s; 0 if it need not.

        t = ln(H / H_ok) / lambda

    rate     -- dose rate now at the place where you will work, Sv/s
    accepted -- what you accept there, Sv/s

    Without new water radon halves every 3.8 days, and its gamma rays with it. Lead-210, uranium
    and radium stay.

    >>> from calc.units import day
    >>> round(wait_before_opening(50.0, 1.0) / day, 1)
    21.6

    Source: decay law with the half-life in [icrp-107].
    """
    return log(max(rate / accepted, 1.0)) / RADON_DECAY
