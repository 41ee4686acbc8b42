"""Carbon dioxide, alkalinity and pH of a fresh water: each from the others.

Amounts are in mol/m³ (= mmol/L), alkalinity in equivalents: 1 mol/m³ is 50.04 mg/L as CaCO3.
Ionic strength is in mol/m³ too. Ion pairs are left out: against PHREEQC, which has them, well
water comes out within 0.01 in pH and 2 % in carbon dioxide.
"""

from collections.abc import Callable
from math import exp, log10, sqrt
from typing import NamedTuple

from calc.physics.radon_solubility import GAS_CONSTANT, ICE_POINT
from calc.roots import bracket
from calc.units import atm

# kg/mol: of CO2, from atomic weights; of CaCO3 for each of its two charges.
CO2_MOLAR, CACO3_EQUIVALENT = 44.0095e-3, 100.0869e-3 / 2
LITRES = 1000.0  # in a m³: constants are published for mol/L
LOWEST_PH, HIGHEST_PH = 2.0, 13.0  # between them a pH is looked for


class Carbonate(NamedTuple):
    """A water: its pH, and in mol/m³ what it holds of carbon dioxide, bicarbonate and
    carbonate; alkalinity in mol/m³ of charge."""

    ph: float
    co2: float
    bicarbonate: float
    carbonate: float
    alkalinity: float

    @property
    def dic(self) -> float:
        """All dissolved inorganic carbon, mol/m³."""
        return self.co2 + self.bicarbonate + self.carbonate


class Constants(NamedTuple):
    """Equilibrium constants in mol/m³, activity coefficients put in, for the activity of H+.

    first  -- K1 = h [HCO3-] / [CO2]
    second -- K2 = h [CO3--] / [HCO3-]
    water  -- Kw = h [OH-], in (mol/m³)²
    single -- activity coefficient of an ion of one charge
    """

    first: float
    second: float
    water: float
    single: float


def log_henry(temperature: float) -> float:
    """log10 of carbon dioxide in water under one atmosphere of it, mol/(kg atm).

        log KH = 108.3865 + 0.01985076 T - 6919.53/T - 40.45154 log T + 669365/T²

    temperature -- K, 273 to 363

    >>> round(log_henry(298.15), 3)
    -1.468

    Source: [plummer-1982], as public codes have it.
    """
    return _fitted(temperature, 108.3865, 0.01985076, -6919.53, -40.45154, 669365.0)


def log_first(temperature: float) -> float:
    """log10 of the first dissociation constant of carbonic acid, CO2 -> HCO3- + H+.

        log K1 = -356.3094 - 0.06091964 T + 21834.37/T + 126.8339 log T - 1684915/T²

    temperature -- K, 273 to 363

    >>> round(log_first(298.15), 3)
    -6.352

    Source: [plummer-1982], as PHREEQC's data file has it.
    """
    return _fitted(temperature, -356.3094, -0.06091964, 21834.37, 126.8339, -1684915.0)


def log_second(temperature: float) -> float:
    """log10 of the second dissociation constant of carbonic acid, HCO3- -> CO3-- + H+.

        log K2 = -107.8871 - 0.03252849 T + 5151.79/T + 38.92561 log T - 563713.9/T²

    temperature -- K, 273 to 363

    >>> round(log_second(298.15), 3)
    -10.329

    Source: [plummer-1982], as PHREEQC's data file has it.
    """
    return _fitted(temperature, -107.8871, -0.03252849, 5151.79, 38.92561, -563713.9)


def log_water(temperature: float) -> float:
    """log10 of the ion product of water.

        log Kw = -283.971 - 0.05069842 T + 13323/T + 102.24447 log T - 1119669/T²

    temperature -- K, 273 to 323

    >>> round(log_water(283.15), 3)
    -14.534

    Source: [stumm-morgan-1996], from memory; within 0.005 of PHREEQC.
    """
    return _fitted(temperature, -283.971, -0.05069842, 13323.0, 102.24447, -1119669.0)


def log_calcite(temperature: float) -> float:
    """log10 of the solubility product of calcite, CaCO3 -> Ca++ + CO3--.

        log Ks = -171.9065 - 0.077993 T + 2839.319/T + 71.595 log T

    temperature -- K, 273 to 363. Scale dissolves worse in warm water

    >>> round(log_calcite(298.15), 3)
    -8.48

    Source: [plummer-1982], as PHREEQC's data file has it.
    """
    return _fitted(temperature, -171.9065, -0.077993, 2839.319, 71.595, 0.0)


def _fitted(
    t: float, constant: float, rises: float, over: float, log: float, square: float
) -> float:
    return constant + rises * t + over / t + log * log10(t) + square / t**2


def activity(charge: int, ionic_strength: float, temperature: float) -> float:
    """Activity coefficient of an ion: what counts of each that is there.

        log g = -A z² (√I / (1 + √I) - 0.3 I),   I in mol/L

        A = 1.82483e6 (eps T)^(-3/2),
        eps = 87.74 - 0.40008 t + 9.398e-4 t² - 1.410e-6 t³,   t in °C

    charge         -- z, 1 or 2
    ionic_strength -- mol/m³; for well water 2 times its alkalinity is near enough
    temperature    -- K

    Holds up to 500 mol/m³. Well water has less than 30.

    >>> round(activity(1, 4.5, 283.15), 4), round(activity(2, 4.5, 283.15), 4)
    (0.9318, 0.7537)

    Source: [davies-1962] for the form, [malmberg-1956] for eps, both from memory.
    """
    t = temperature - ICE_POINT
    permittivity = 87.74 - 0.40008 * t + 9.398e-4 * t**2 - 1.410e-6 * t**3
    slope: float = 1.82483e6 * (permittivity * temperature) ** -1.5
    strength = ionic_strength / LITRES
    root = sqrt(strength)
    coefficient: float = 10 ** (-slope * charge**2 * (root / (1 + root) - 0.3 * strength))
    return coefficient


def constants(temperature: float, ionic_strength: float = 0.0) -> Constants:
    """Constants of a water at that temperature and ionic strength.

    temperature    -- K
    ionic_strength -- mol/m³

    Source: the functions above.
    """
    single = activity(1, ionic_strength, temperature)
    double = activity(2, ionic_strength, temperature)
    return Constants(
        first=10 ** log_first(temperature) * LITRES / single,
        second=10 ** log_second(temperature) * LITRES * single / double,
        water=10 ** log_water(temperature) * LITRES**2 / single,
        single=single,
    )


def co2_at_rest(temperature: float, share: float, pressure: float = atm) -> float:
    """Carbon dioxide in water that has stood under air, mol/m³.

        [CO2] = KH x p

    temperature -- K
    share       -- x of the air that is carbon dioxide: 420 parts in a million outdoors, in a
                   lived-in basement twice that and more
    pressure    -- p, Pa

    >>> round(co2_at_rest(283.15, 420e-6) * CO2_MOLAR * 1000, 2)  # mg/L
    0.99

    Source: `log_henry`.
    """
    return 10 ** log_henry(temperature) * LITRES * share * pressure / atm


def air_to_water_co2(temperature: float) -> float:
    """Carbon dioxide in air over carbon dioxide in the water under it, at rest.

        H′ = 1 / (KH R T)

    temperature -- K. At 10 °C it is 0.80, against 2.86 for radon: carbon dioxide needs the more air

    >>> round(air_to_water_co2(283.15), 2)
    0.8

    Source: `log_henry`.
    """
    return atm / (10 ** log_henry(temperature) * LITRES * GAS_CONSTANT * temperature)


def co2_diffusivity(temperature: float) -> float:
    """How fast carbon dioxide spreads in still water, m²/s.

        D = A exp(-E / (R T)),   A = 5.019e-6 m²/s,  E = 19 510 J/mol

    temperature -- K, 283 to 308

    >>> round(co2_diffusivity(283.15) * 1e9, 2)
    1.26

    Source: fit of [jahne-1987], constants from memory; within 1 % of the table in [crc-gases].
    """
    return 5.019e-6 * exp(-19510 / (GAS_CONSTANT * temperature))


def from_ph(
    ph: float, alkalinity: float, temperature: float, ionic_strength: float = 0.0
) -> Carbonate:
    """The water of that pH and alkalinity.

        [HCO3-] = (Alk - [OH-] + [H+]) / (1 + 2 K2/h),  [CO2] = h [HCO3-] / K1

    ph             -- measured at the tap at once: water that stood in a bottle has lost carbon
                      dioxide, and its pH is too high
    alkalinity     -- mol/m³ of charge. A sum under [OH-] - [H+] is no water, and its bicarbonate
                      comes out negative
    temperature    -- K
    ionic_strength -- mol/m³

    >>> water = from_ph(6.2, 40e-3 / CACO3_EQUIVALENT, 283.15)
    >>> round(water.co2 * CO2_MOLAR * 1000, 1)  # mg/L
    64.6

    Source: definition of alkalinity and the constants above.
    """
    k = constants(temperature, ionic_strength)
    h = 10**-ph * LITRES
    bicarbonate = (alkalinity - k.water / h + h / k.single) / (1 + 2 * k.second / h)
    return Carbonate(
        ph, h * bicarbonate / k.first, bicarbonate, k.second * bicarbonate / h, alkalinity
    )


def from_co2(
    co2: float, alkalinity: float, temperature: float, ionic_strength: float = 0.0
) -> Carbonate:
    """The water of that alkalinity that holds so much carbon dioxide.

    co2 -- mol/m³, above 0. When carbon dioxide leaves, alkalinity stays: that is why pH rises
    the others -- as in `from_ph`

    Source: `from_ph` turned round by [brent-1973]; less carbon dioxide is always a higher pH.
    """
    k = constants(temperature, ionic_strength)

    def excess(ph: float) -> float:
        h = 10**-ph * LITRES
        bicarbonate = k.first * co2 / h
        return bicarbonate * (1 + 2 * k.second / h) + k.water / h - h / k.single - alkalinity

    return from_ph(_ph(excess), alkalinity, temperature, ionic_strength)


def from_dic(
    dic: float, alkalinity: float, temperature: float, ionic_strength: float = 0.0
) -> Carbonate:
    """The water of that alkalinity that holds so much inorganic carbon in all.

    dic -- mol/m³. It stays when a closed water is warmed or mixed, and when acid is added
    the others -- as in `from_ph`

    Source: `from_ph` turned round by [brent-1973].
    """
    k = constants(temperature, ionic_strength)

    def excess(ph: float) -> float:
        h = 10**-ph * LITRES
        charge = (1 + 2 * k.second / h) / (h / k.first + 1 + k.second / h)
        return dic * charge + k.water / h - h / k.single - alkalinity

    return from_ph(_ph(excess), alkalinity, temperature, ionic_strength)


def _ph(excess: Callable[[float], float]) -> float:
    return bracket(excess, LOWEST_PH, HIGHEST_PH)[0]


def saturation_index(
    water: Carbonate, calcium: float, temperature: float, ionic_strength: float = 0.0
) -> float:
    """How far the water is from the point where calcite neither forms nor dissolves: over 0 it
    can make scale.

        SI = log10(g2² [Ca++] [CO3--]) - log Ks

    calcium -- mol/m³; hardness counted as calcium overstates it
    the others -- as in `from_ph`

    Source: `log_calcite`; against PHREEQC up to 0.04 too high, for want of ion pairs.
    """
    double = activity(2, ionic_strength, temperature)
    product = double**2 * calcium * water.carbonate / LITRES**2
    return log10(product) - log_calcite(temperature)
