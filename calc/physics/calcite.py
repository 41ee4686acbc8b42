"""What a water does to chalk, and what chalk and other bases do to a water.

The mineral is calcite, CaCO3: the stone of a neutralizer and the scale of a heater. Amounts are
in mol/m³ (= mmol/L), alkalinity in mol/m³ of charge, as in `calc.physics.carbonate`.
"""

from collections.abc import Callable
from math import exp, log, log10
from typing import NamedTuple

from calc.physics.carbonate import (
    CACO3_EQUIVALENT,
    LITRES,
    Carbonate,
    activity,
    from_co2,
    from_dic,
    from_ph,
    saturation_index,
)
from calc.physics.radon_solubility import GAS_CONSTANT
from calc.roots import bracket
from calc.units import L, mg

LEAST_LEFT = log(1e-9)  # share of the calcium or alkalinity that a search leaves in the water
USUAL_STRENGTH = 2.0  # ionic strength over alkalinity, middle of six ordinary waters, computed


class Water(NamedTuple):
    """A closed water by what no change of pH changes, mol/m³; temperature in K.

    dic      -- all inorganic carbon
    strength -- ionic strength
    """

    dic: float
    alkalinity: float
    calcium: float
    temperature: float
    strength: float

    def state(self) -> Carbonate:
        """Its pH, carbon dioxide, bicarbonate and carbonate."""
        return from_dic(self.dic, self.alkalinity, self.temperature, self.strength)

    def saturation(self) -> float:
        """Saturation index of calcite by activities: over 0 scale can form.

            SI = log10(g2² [Ca++] [CO3--]) - log Ks

        Source: `carbonate.saturation_index`.
        """
        return saturation_index(self.state(), self.calcium, self.temperature, self.strength)


class Base(NamedTuple):
    """What a mole of a base brings into water.

    molar    -- its mass, kg/mol
    carbon   -- moles of inorganic carbon
    charge   -- moles of alkalinity
    hardness -- moles of calcium and magnesium
    calcium  -- moles of calcium alone
    strength -- ionic strength, where it meets carbon dioxide enough
    sodium   -- moles of sodium
    """

    molar: float
    carbon: float
    charge: float
    hardness: float
    calcium: float
    strength: float
    sodium: float = 0.0


# Molar masses from standard atomic weights.
CALCITE = Base(100.0869e-3, 1, 2, 1, 1, 3)
MAGNESIA = Base(40.3044e-3, 0, 2, 1, 0, 3)
SODA_ASH = Base(105.9884e-3, 1, 2, 0, 0, 2, 2)
CAUSTIC = Base(39.9971e-3, 0, 1, 0, 0, 1, 1)
BRUCITE_HEAT = 27.1e3 * 4.184  # J/mol, [phreeqc-3]
TRACE = 1e-9  # mol/m³, so little that it changes nothing
SODIUM_MOLAR, CALCIUM_MOLAR = 22.98977e-3, 40.078e-3


def blend(magnesia: float) -> Base:
    """Calcite with magnesia that dissolves in step with it, for each mole of calcite.

    magnesia -- share of it in the bed by mass, under 1. In step, because a bed refilled with one
                blend cannot lose its parts in any other proportion for long

    >>> round(blend(0.2).charge, 2)
    3.24

    Source: conservation of mass; that the bed keeps its blend is our assumption, no source.
    """
    moles = magnesia / (1 - magnesia) * CALCITE.molar / MAGNESIA.molar
    return Base(*(one + moles * other for one, other in zip(CALCITE, MAGNESIA, strict=True)))


def water_of_ph(
    ph: float, alkalinity: float, calcium: float, temperature: float, strength: float
) -> Water:
    """The water of that pH, alkalinity, calcium, temperature and ionic strength.

    ph         -- measured at the tap at once; a bottle that stood reads too high
    alkalinity -- mol/m³ of charge
    calcium    -- mol/m³
    the others -- as in `carbonate.from_ph`

    Source: `carbonate.from_ph`.
    """
    dic = from_ph(ph, alkalinity, temperature, strength).dic
    return Water(dic, alkalinity, calcium, temperature, strength)


def with_base(water: Water, base: Base, amount: float) -> Water:
    """The closed water after so much of a base has dissolved in it.

    amount -- mol/m³; below 0 for chalk that has fallen out

    >>> soft = water_of_ph(6.2, 0.4, 0.15, 283.15, 1.0)
    >>> round(with_base(soft, SODA_ASH, 0.061 / SODA_ASH.molar).state().ph, 1)
    7.5

    Source: conservation of carbon, charge and calcium.
    """
    return water._replace(
        dic=water.dic + base.carbon * amount,
        alkalinity=water.alkalinity + base.charge * amount,
        calcium=water.calcium + base.calcium * amount,
        strength=max(water.strength + base.strength * amount, 0.0),
    )


def stripped(water: Water, removed: float) -> Water:
    """The water after a share of its carbon dioxide has left. Alkalinity stays.

    removed -- share, 0 to 1; up to pH 8 or so the pH rises by -log10(1 - removed)

    >>> soft = water_of_ph(6.2, 0.4, 0.15, 283.15, 1.0)
    >>> round(stripped(soft, 0.8).state().ph, 2)
    6.9

    Source: definition of alkalinity.
    """
    return vented(water, water.state().co2 * (1 - removed))


def vented(water: Water, co2: float) -> Water:
    """The water when only so much carbon dioxide is left in it, mol/m³.

    Source: `carbonate.from_co2`.
    """
    left = from_co2(co2, water.alkalinity, water.temperature, water.strength)
    return water._replace(dic=left.dic)


def heated(water: Water, temperature: float) -> Water:
    """The water warmed in a closed pipe: nothing leaves, but scale forms sooner.

    temperature -- K; above 323 K the index reads up to 0.10 too high

    Source: conservation of carbon and charge.
    """
    return water._replace(temperature=temperature)


def dissolved_to(water: Water, base: Base = CALCITE, index: float = 0.0) -> float:
    """Calcite to dissolve until the water has a saturation index, mol/m³; below 0 where calcite
    must fall out instead.

    index -- the index wanted; 0 is rest
    base  -- what dissolves, calcite or a `blend`, counted in moles of calcite

    Falling out, no more can go than there is of calcium, of alkalinity and of carbon. A search
    that goes further takes the logarithm of nothing, so it is made over the share that is left.

    >>> soft = water_of_ph(6.2, 0.3997, 0.1497, 283.15, 0.98)
    >>> round(dissolved_to(soft) * CALCITE.molar * 1000)  # mg/L
    68

    Source: [brent-1973] on `Water.saturation`, which rises with every grain that dissolves.
    """

    def excess(amount: float) -> float:
        return with_base(water, base, amount).saturation() - index

    if excess(0.0) <= 0:
        return bracket(excess, 0.0, _enough(excess, water.state().co2))[0]
    most = min(water.calcium / base.calcium, water.alkalinity / base.charge, water.dic)
    share = bracket(lambda left: excess(-most * (1 - exp(left))), LEAST_LEFT, 0.0)[0]
    return -most * (1 - exp(share))


def _enough(excess: Callable[[float], float], first: float) -> float:
    """An amount that is more than enough, from `first` doubled as often as it takes."""
    amount = max(first, 0.01)
    while excess(amount) < 0:
        amount *= 2
    return amount


def ccpp(water: Water) -> float:
    """Calcium carbonate precipitation potential, kg/m³: chalk that falls out before the water
    is at rest with it; below 0 what it can still dissolve.

    >>> hard = water_of_ph(7.4, 4.996, 2.246, 285.15, 9.21)
    >>> round(ccpp(hard) * 1000)  # mg/L; 13 by PHREEQC
    15

    Within 1 mg/L and 2 % of PHREEQC, 3.5 mg/L in hard water: ion pairs are left out.

    Source: definition, as in [sm-2330].
    """
    return -dissolved_to(water) * CALCITE.molar


def dose_for_ph(water: Water, base: Base, ph: float) -> float:
    """How much of a base brings the closed water to a pH, mol/m³; 0 where it is there.

    ph -- at most 10 or so. Near 8 the curve is steep: a feed a third too strong overshoots by
          more than a unit

    >>> soft = water_of_ph(6.2, 0.3997, 0.1497, 283.15, 0.98)
    >>> round(dose_for_ph(soft, SODA_ASH, 7.5) * SODA_ASH.molar * 1000)  # mg/L
    61

    Source: [brent-1973] on the pH, which rises with every grain of base.
    """

    def short(amount: float) -> float:
        return with_base(water, base, amount).state().ph - ph

    return 0.0 if short(0.0) >= 0 else bracket(short, 0.0, _enough(short, water.dic))[0]


def dose_for_co2(co2: float, base: Base) -> float:
    """The old rule: as much of a base as turns all carbon dioxide into bicarbonate, mol/m³.

        CaCO3 + CO2 + H2O -> Ca++ + 2 HCO3-,   MgO + 2 CO2 + H2O -> Mg++ + 2 HCO3-

    co2 -- mol/m³. 30 mg/L of it take 68 mg/L of calcite; the true figure is 4 to 8 % less,
           because some carbon dioxide stays

    >>> round(dose_for_co2(0.030 / 44.0095e-3, CALCITE) * CALCITE.molar * 1000, 1)
    68.2

    Source: conservation of carbon and charge.
    """
    return co2 / (base.charge - base.carbon)


def log_brucite(temperature: float) -> float:
    """log10 of the solubility of brucite, Mg(OH)2 + 2 H+ -> Mg++ + 2 H2O.

        log K = 16.84 + 27.1 kcal / (2.303 R) (1/T - 1/298.15 K)

    temperature -- K

    >>> round(log_brucite(283.15), 2)
    17.89

    Source: [phreeqc-3], data file wateq4f.
    """
    return 16.84 + BRUCITE_HEAT / (GAS_CONSTANT * log(10)) * (1 / temperature - 1 / 298.15)


def magnesia_rest(water: Water) -> Water:
    """The water after it has stood over magnesia until no more dissolves: how high a pH can go.

    Magnesia turns to brucite where it is wet. The magnesium that the raw water brings is left
    out, and so is the chalk that falls out on the way: both make it a little lower.

    >>> soft = water_of_ph(6.2, 0.3997, 0.1497, 283.15, 0.98)
    >>> round(magnesia_rest(soft).state().ph, 1)
    10.6

    Source: `log_brucite`, by [brent-1973].
    """

    def excess(amount: float) -> float:
        dosed = with_base(water, MAGNESIA, amount)
        double = activity(2, dosed.strength, water.temperature)
        magnesium = log10(double * amount / LITRES)
        return magnesium + 2 * dosed.state().ph - log_brucite(water.temperature)

    most = _enough(excess, water.dic)
    return with_base(water, MAGNESIA, bracket(excess, TRACE, most)[0])


def langelier(
    ph: float, solids: float, calcium: float, alkalinity: float, temperature: float
) -> float:
    """Langelier's index by the handbook's shortcut in logarithms, a class exercise.

        pHs = (9.3 + A + B) - (C + D),   LSI = pH - pHs
        A = (log TDS - 1) / 10,  B = -13.12 log T + 34.55,
        C = log(calcium) - 0.4,  D = log(alkalinity),   mg/L, calcium and alkalinity as CaCO3

    solids, calcium, alkalinity -- kg/m³, the last two as CaCO3
    temperature                 -- K

    Reads 0.2 to 0.3 lower than the index by activities at the temperature of wells.

    >>> round(langelier(7.5, 0.320, 0.150, 0.034, 298.15), 2)  # pHs 8.23
    -0.73

    Source: [langelier-1936], in the form of handbooks, from memory.
    """
    milligram = mg / L
    a = (log10(solids / milligram) - 1) / 10
    b = -13.12 * log10(temperature) + 34.55
    c = log10(calcium / milligram) - 0.4
    d = log10(alkalinity / milligram)
    return ph - (9.3 + a + b - c - d)


def hardness_of(base: Base, amount: float) -> float:
    """Hardness that so much of a base adds, kg/m³ as CaCO3.

    amount -- mol/m³

    Source: definition; each mole of calcium or magnesium counts as one of CaCO3.
    """
    return 2 * CACO3_EQUIVALENT * base.hardness * amount
