"""A bed of calcite that acid water passes, and a feed of soda ash: how far, how much, how long.

Waters and amounts are those of `calc.physics.calcite`: mol/m³.
"""

from itertools import pairwise
from math import exp, sqrt
from typing import NamedTuple

from calc.physics.calcite import Base, Water, dissolved_to, with_base
from calc.physics.carbonate import LITRES, saturation_index
from calc.physics.granular_bed import Medium
from calc.physics.radon_solubility import ICE_POINT
from calc.roots import bracket
from calc.units import day, ft, lb

BULK = 90 * lb / ft**3  # calcite as it is poured, common practice, no source
YEAR = 365.25 * day
ROOM = 25 + ICE_POINT  # K: where the third constant of the rate changes its law
# The way to equilibrium, all but a part in a thousand, in steps that are short at first, where
# the rate changes fast.
CELLS, REACH = 14, 7.0
STEPS = tuple(REACH * (i / CELLS) ** 3 for i in range(CELLS + 1))
# Points of Gauss and Legendre for a cell from 0 to 1, both of weight 1/2.
GAUSS = ((1 - 1 / sqrt(3)) / 2, (1 + 1 / sqrt(3)) / 2)
# Soda ash that a litre of water dissolves, kg/m³: 7 g in 100 g at 0 °C, 21.5 at 20 °C seen
# printed; 12.5 at 10 °C, [crc-soda].
SODA_ASH_DISSOLVES = ((0.0, 70.0), (10.0, 125.0), (20.0, 215.0))


def dissolving_rate(water: Water) -> float:
    """How fast a clean face of calcite dissolves, mol/(m² s).

        r = (k1 {H+} + k2 {CO2} + k3) (1 - 10^(2 SI / 3)),   braces are activities in mol/L
        log k1 = 0.198 - 444/T,  log k2 = 2.84 - 2177/T,
        log k3 = -5.86 - 317/T up to 25 °C, -1.1 - 1737/T above,   k in mmol/(cm² s)

    water -- below 0 where its index is above 0

    A face coated with iron or clay hardly dissolves at all.

    >>> from calc.physics.calcite import water_of_ph
    >>> soft = water_of_ph(6.2, 0.3997, 0.1497, 283.15, 0.98)
    >>> round(dissolving_rate(soft) * 1e6, 1)
    1.4

    Source: [plummer-1978], as PHREEQC's data file has it.
    """
    t = water.temperature
    state = water.state()
    third = -5.86 - 317 / t if t <= ROOM else -1.1 - 1737 / t
    pull = (
        10 ** (0.198 - 444 / t - state.ph)
        + 10 ** (2.84 - 2177 / t) * state.co2 / LITRES
        + 10**third
    )
    index = saturation_index(state, water.calcium, t, water.strength)
    return 10 * float(pull * (1 - 10 ** (2 / 3 * index)))


def grain_surface(grain: float, medium: Medium) -> float:
    """Surface of the grains in a bed, m² for each m³ of it.

        a = 6 (1 - e) / (f d)

    >>> from calc.physics.granular_bed import MEDIA
    >>> round(grain_surface(0.7e-3, MEDIA["calcite"]))
    6286

    Source: geometry.
    """
    return 6 * (1 - medium.porosity) / (medium.sphericity * grain)


class Passage(NamedTuple):
    """Water on its way through a bed that ends at rest with calcite.

    base   -- what dissolves
    raw    -- the water that enters
    most   -- mol/m³ that dissolve until it is at rest
    places -- contact times, s, by which a share 1 - exp(-u) of it has dissolved, u from `STEPS`
    """

    base: Base
    raw: Water
    most: float
    places: tuple[float, ...]

    def dissolved(self, contact: float) -> float:
        """What has dissolved after a contact time, mol/m³. Between the steps u runs straight."""
        if contact >= self.places[-1]:
            return self.most * (1 - exp(-REACH))
        cell = max(i for i, time in enumerate(self.places) if time <= contact)
        start, end = self.places[cell : cell + 2]
        low, high = STEPS[cell : cell + 2]
        along = low + (high - low) * (contact - start) / (end - start)
        return self.most * (1 - exp(-along))

    def water(self, contact: float) -> Water:
        """The water after that contact time."""
        return with_base(self.raw, self.base, self.dissolved(contact))

    def contact(self, ph: float) -> float | None:
        """Contact time that brings the water to a pH, s; None where the bed never does."""
        if self.raw.state().ph >= ph:
            return 0.0
        if self.water(self.places[-1]).state().ph < ph:
            return None
        return bracket(lambda time: self.water(time).state().ph - ph, 0.0, self.places[-1])[0]


def passage(raw: Water, base: Base, surface: float) -> Passage | None:
    """What a bed dissolves into a water by the time they have been together.

        t = ∫ dx / (r(x) a),   along x = x_end (1 - exp(-u))

    raw     -- the water that enters
    base    -- calcite, or a blend in which calcite sets the pace
    surface -- of calcite that works, m² for each m³ of bed: `grain_surface` less what is coated
               or bypassed. Time counts in the empty tank: its volume over the flow

    None for a water that dissolves nothing. Half the surface takes twice the time:

    >>> from calc.physics.calcite import CALCITE, water_of_ph
    >>> soft = water_of_ph(6.2, 0.3997, 0.1497, 283.15, 0.98)
    >>> bed = passage(soft, CALCITE, 6286)
    >>> round(bed.water(60.0).state().ph, 1)
    7.1

    Source: conservation of mass in plug flow; `dissolving_rate`.
    """
    most = dissolved_to(raw, base)
    if most <= 0:
        return None
    time, places = 0.0, [0.0]
    for low, high in pairwise(STEPS):
        for point in GAUSS:
            left = exp(-low - (high - low) * point)
            rate = dissolving_rate(with_base(raw, base, most * (1 - left)))
            time += (high - low) / 2 * most * left / (rate * surface)
        places.append(time)
    return Passage(base, raw, most, tuple(places))


def used_in_a_year(base: Base, amount: float, daily_use: float) -> float:
    """Mass that dissolves in a year, kg.

    amount    -- mol/m³
    daily_use -- mean flow over the year, m³/s

    >>> from calc.physics.calcite import CALCITE
    >>> from calc.units import day, gal, lb
    >>> round(used_in_a_year(CALCITE, 0.0681 / CALCITE.molar, 250 * gal / day) / lb, 1)
    51.9

    Source: conservation of mass.
    """
    return base.molar * amount * daily_use * YEAR


def refill_time(bed: float, share: float, year: float) -> float:
    """Time until a share of the bed is gone, s.

    bed   -- its volume when full, m³
    share -- a third to a half, common practice, no source: contact time shrinks by as much
    year  -- kg that dissolve in a year

    Counts a bed of `BULK`. Grit that does not dissolve stays and hides the loss of depth.

    >>> from calc.units import day, ft, lb
    >>> round(refill_time(1.5 * ft**3, 0.5, 51.9 * lb) / day)
    475

    Source: conservation of mass.
    """
    return share * bed * BULK / year * YEAR


def soda_ash_dissolves(temperature: float) -> float:
    """Most soda ash that a litre of water holds, kg/m³.

    temperature -- of the solution tank, K. In a cold basement a strong solution sets to stone

    >>> soda_ash_dissolves(283.15)
    125.0

    Source: [crc-soda], straight lines between its points; no more counted above 20 °C.
    """
    warmth = temperature - ICE_POINT
    cold, cool, warm = SODA_ASH_DISSOLVES
    (low, less), (high, more) = (cold, cool) if warmth < cool[0] else (cool, warm)
    return less + (more - less) * min(max((warmth - low) / (high - low), 0.0), 1.0)
