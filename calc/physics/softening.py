"""A softener: resin that gives sodium for hardness, and salt that gives the sodium back.

Hardness is in kg/m³ as CaCO3, what a bed holds in kg as CaCO3.
"""

from itertools import pairwise
from math import pi

from calc.physics.water_report import as_calcium_carbonate
from calc.units import ft, grain, lb

# Molar masses from atomic weights, kg/mol of one charge.
CACO3 = 100.087e-3 / 2
SODIUM, POTASSIUM, CHLORIDE = 22.990e-3, 39.098e-3, 35.453e-3
SODIUM_SALT, POTASSIUM_SALT = SODIUM + CHLORIDE, POTASSIUM + CHLORIDE

# Salt for each volume of resin, and what the resin then holds, kg/m³: common practice for resin of
# the usual kind washed down-flow with 10 % brine. The first row is a rule for public supplies too
# [il-604-805]; for the others trade pages agree within 10 %, and there is no source.
_POUND, _GRAIN = lb / ft**3, grain / ft**3
CAPACITY = (
    (6 * _POUND, 20_000 * _GRAIN),
    (8 * _POUND, 24_000 * _GRAIN),
    (10 * _POUND, 27_000 * _GRAIN),
    (15 * _POUND, 30_000 * _GRAIN),
)
LEAST_SALT, MOST_SALT = CAPACITY[0][0], CAPACITY[-1][0]


def compensated_hardness(hardness: float, iron: float, manganese: float, weight: float) -> float:
    """Hardness to size a softener by, kg/m³ as CaCO3.

        H_c = H + w (Fe + Mn)

    hardness        -- of the water that enters the softener; a neutralizer before it has added some
    iron, manganese -- dissolved, kg/m³. Rust does not exchange: it clogs the resin
    weight          -- w, kg of CaCO3 for each kg. The trade counts 3 gpg for each mg/L, some 2,
                       some 5: common practice, no source. What really exchanges is 0.105 gpg; the
                       rest is a price for iron that salt does not take off the resin again

    >>> from calc.units import L, gal, grain, mg
    >>> gpg, each = grain / gal, 3 * (grain / gal) / (mg / L)
    >>> round(compensated_hardness(18 * gpg, 2 * mg / L, 0.0, each) / gpg, 6)
    24.0

    Source: common practice, no source.
    """
    return hardness + weight * (iron + manganese)


def capacity(salt: float) -> float:
    """What a cubic metre of resin holds after it was given salt, kg/m³ as CaCO3.

        straight lines between 6, 8, 10, 15 lb/ft³ and 20 000, 24 000, 27 000, 30 000 gr/ft³

    salt -- for each volume of resin, kg/m³, `LEAST_SALT` to `MOST_SALT`. More buys less and less

    New resin has room for 41 000 to 44 000 gr/ft³ [franks-2014]; nobody pays the salt to fill it.
    It loses 1 to 5 % a year [ufc-3-240-13].

    >>> round(capacity(9 * lb / ft**3) / (grain / ft**3))
    25500

    Source: common practice, no source; the first point is in [il-604-805].
    """
    (low, held), (high, more) = next(
        (low, high) for low, high in pairwise(CAPACITY) if salt <= high[0] or high == CAPACITY[-1]
    )
    return held + (more - held) * (salt - low) / (high - low)


def held_at_best(salt: float, equivalent: float = SODIUM_SALT) -> float:
    """Hardness that a mass of salt could at most take from a resin, kg as CaCO3.

        m_h = 50.04 / 58.44 m

    salt       -- kg
    equivalent -- kg/mol of the salt; potassium chloride has 74.55 where sodium chloride has 58.44

    >>> round(held_at_best(1 * lb) / grain)  # [franks-2014] prints 5989
    5994

    Source: one charge for one charge.
    """
    return salt * CACO3 / equivalent


def exchanged(hardness: float, iron: float, manganese: float) -> float:
    """Charges that a softener exchanges, told as hardness, kg/m³ as CaCO3.

        X = H + 1.792 Fe + 1.822 Mn

    hardness, iron, manganese -- kg/m³, all of it taken out

    >>> round(exchanged(0.1, 1e-3, 0.0) * 1e3, 2)  # mg/L
    101.79

    Source: conservation of charge.
    """
    return (
        hardness + as_calcium_carbonate("iron", iron) + as_calcium_carbonate("manganese", manganese)
    )


def salt_in_water(exchanged: float, equivalent: float = SODIUM) -> float:
    """Sodium or potassium that the exchange puts into the water, kg/m³.

        Na = 0.4594 X,   K = 0.7813 X

    exchanged  -- X, kg/m³ as CaCO3. Water that goes round the softener brings none
    equivalent -- `SODIUM` or `POTASSIUM`, kg/mol

    >>> from calc.units import L, gal, grain, mg
    >>> round(salt_in_water(18 * grain / gal) / (mg / L), 1)
    141.6

    Source: conservation of charge.
    """
    return exchanged * equivalent / CACO3


def days_of_capacity(held: float, reserve_days: float, daily: float) -> float:
    """Days from one regeneration to the next.

        t = C / d - r,   not under 0

    held         -- C, kg as CaCO3: resin times capacity
    reserve_days -- r, of use kept back: a meter that waits for the night needs one
    daily        -- d, compensated hardness times daily use, kg/day

    >>> round(days_of_capacity(36.0, 1.0, 7.2), 6)
    4.0

    Source: common practice, no source, for the reserve; the rest is a balance.
    """
    return max(held / daily - reserve_days, 0.0)


def resin_depth(volume: float, diameter: float) -> float:
    """Depth of a resin bed, m.

        L = V / (π d² / 4)

    >>> from calc.units import inch
    >>> round(resin_depth(1.5 * ft**3, 10 * inch) / inch, 1)
    33.0

    Source: geometry.
    """
    return volume / (pi * diameter**2 / 4)
