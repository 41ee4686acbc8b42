"""Disinfection: dose of ultraviolet light, and chlorine times time, with the published tables."""

from collections.abc import Mapping, Sequence
from math import log, log10

from calc.physics.radon_solubility import ICE_POINT
from calc.units import L as LITRE
from calc.units import cm, mg, minute

_MJ = 10.0  # J/m² in a mJ/cm²
_CT = mg / LITRE * minute  # kg s/m³ in a mg min/L
# Dose that each half of a log takes, mJ/cm² [cfr-141-720]: 0.5, 1, 1.5 ... 4 log.
UV_LOGS = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0)
UV_DOSES: Mapping[str, Sequence[float]] = {
    "cryptosporidium": (1.6, 2.5, 3.9, 5.8, 8.5, 12, 15, 22),
    "giardia": (1.5, 2.1, 3.0, 5.2, 7.7, 11, 15, 22),
    "virus": (39, 58, 79, 100, 121, 143, 163, 186),
}
# Chlorine times time for 4 log of viruses, pH 6 to 9, mg min/L, by °C [epa-1991-e7].
VIRUS_CT: Mapping[float, float] = {0.5: 12, 5: 8, 10: 6, 15: 4, 20: 3, 25: 2}
VIRUS_LOGS = 4.0
# T10 over volume by flow [epa-815-r-20-003].
BAFFLING: Mapping[str, float] = {
    "none": 0.0,
    "unbaffled": 0.1,
    "poor": 0.3,
    "average": 0.5,
    "superior": 0.7,
    "pipe": 1.0,
}


def absorbance(transmittance: float) -> float:
    """Absorbance of water for ultraviolet light, per m.

        A = -log10(T) for 1 cm

    transmittance -- T, share of the light at 254 nm that passes 1 cm; above 0

    >>> round(absorbance(0.75) * cm, 4)
    0.1249

    Source: definition.
    """
    return -log10(transmittance) / cm


def water_factor(absorbance: float, layer: float) -> float:
    """Mean of the light in a layer of water over the light that enters it.

        W = (1 - 10^(-A L)) / (A L ln 10)

    absorbance -- A, per m
    layer      -- L, water from the lamp's sleeve to the wall, m

    A layer lit from one side, stirred well.

    >>> round(water_factor(absorbance(0.75), 2 * cm), 4)
    0.7604

    Source: [bolton-2003], from memory; the mean of 10^(-A x) over the layer.
    """
    depth = absorbance * layer * log(10)
    if depth < 1e-6:
        return 1.0
    factor: float = (1 - 10 ** (-absorbance * layer)) / depth
    return factor


def lamp_output(age: float, life: float, end: float) -> float:
    """Light of a lamp over its light when new.

        1 - (1 - e) t / t_life

    age, life -- s, the lamp lit day and night
    end       -- e, at the end of its life

    A straight line; a real lamp loses more of it early. Source: common practice.
    """
    return 1 - (1 - end) * age / life


def logs_of_uv(germ: str, dose: float) -> float:
    """Logs of a germ that a dose takes, read down the table; 0 under its first figure.

    germ -- a key of `UV_DOSES`
    dose -- J/m², proven by a test of the device: a dose reckoned from lamp and size is no proof

    40 mJ/cm² takes 4 log of the parasites, but only half a log of the toughest viruses:

    >>> logs_of_uv("giardia", 40 * 10), logs_of_uv("virus", 40 * 10)
    (4.0, 0.5)

    Source: [cfr-141-720].
    """
    # a dose that comes out a hair under a figure of the table is that figure
    reached = [
        logs
        for logs, needed in zip(UV_LOGS, UV_DOSES[germ], strict=True)
        if needed * _MJ <= dose * (1 + 1e-9)
    ]
    return max(reached, default=0.0)


def contact_time(volume: float, flow: float, baffling: float) -> float:
    """Time that nine tenths of the water stay at least, T10, s.

        T10 = B V / Q

    volume   -- m³ of water that is always there, at its lowest level
    flow     -- largest flow through it, m³/s; the mean flow overstates the time
    baffling -- B, a value of `BAFFLING`

    80 gallons, poorly baffled, at 5 gpm:

    >>> from calc.units import gal, gpm
    >>> round(contact_time(80 * gal, 5 * gpm, 0.3) / minute, 1)
    4.8

    Source: [epa-815-r-20-003].
    """
    return baffling * volume / flow


def virus_ct(temperature: float) -> float:
    """Chlorine times time for 4 log of viruses, kg s/m³, pH 6 to 9.

    temperature -- K, from 0.5 °C: read at the table's figure at or just under it

    >>> virus_ct(ICE_POINT + 12) / _CT
    6.0

    Source: [epa-1991-e7].
    """
    below = [each for each in VIRUS_CT if each <= temperature - ICE_POINT + 1e-9]
    return VIRUS_CT[max(below, default=min(VIRUS_CT))] * _CT


def giardia_ct(ph: float, residual: float, temperature: float) -> float:
    """Chlorine times time for 3 log of Giardia by the regression of the table, kg s/m³.

        CT = 0.2828 pH^2.69 C^0.15 0.933^(t-5) 3,   CT in mg min/L, C in mg/L, t in °C

    ph          -- 6 to 9
    residual    -- C, free chlorine, kg/m³, 0.4 to 4 mg/L
    temperature -- K, from 5 °C

    >>> round(giardia_ct(7.0, 1.0 * mg / LITRE, ICE_POINT + 10) / _CT, 1)
    112.5

    At 10 and 20 °C it lies up to 6 % under the table: see `GIARDIA_MARGIN`.
    Source: [smith-1995].
    """
    strength = residual / (mg / LITRE)
    needed: float = 3 * 0.2828 * ph**2.69 * strength**0.15 * 0.933 ** (temperature - ICE_POINT - 5)
    return needed * _CT


GIARDIA_LOGS = 3.0
# The most by which a row of the table itself, for 1 mg/L, lies over its regression. Table of
# [cfr-141-74] from memory.
GIARDIA_MARGIN = 1.07
