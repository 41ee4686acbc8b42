"""Iron and manganese taken out of water: what the oxidant costs, the acid it makes, how long it
takes, and how much of it a filter holds.

How fast air does it is in `calc.physics.iron_oxidation`. Concentrations are in kg/m³.
"""

from collections.abc import Mapping
from math import exp, log
from typing import NamedTuple

from calc.physics.carbonate import CACO3_EQUIVALENT, Carbonate, from_dic
from calc.physics.iron_oxidation import OXYGEN
from calc.units import L, ft, gpm, mg

# Molar masses from atomic weights, kg/mol.
IRON, MANGANESE = 55.845e-3, 54.938e-3
OXYGEN_GAS, CHLORINE, PERMANGANATE = 31.998e-3, 70.906e-3, 158.034e-3
RUST, MANGANESE_OXIDE = 106.867e-3, 86.937e-3
HALF_CALCITE = CACO3_EQUIVALENT


class Cost(NamedTuple):
    """What a kg of iron or manganese costs: kg of oxidant, kg of alkalinity as CaCO3, and kg of
    dry solids it makes."""

    oxidant: float
    alkalinity: float
    solids: float


def _cost(metal: float, oxidant: float, acid: float, solids: float) -> Cost:
    """Of one mole of metal: kg of oxidant, moles of acid, kg of solids."""
    return Cost(oxidant / metal, acid * HALF_CALCITE / metal, solids / metal)


# 4 Fe++ + O2 + 10 H2O -> 4 Fe(OH)3 + 8 H+;      2 Mn++ + O2 + 2 H2O -> 2 MnO2 + 4 H+
# 2 Fe++ + ClO- + 5 H2O -> 2 Fe(OH)3 + Cl- + 4 H+;  Mn++ + ClO- + H2O -> MnO2 + Cl- + 2 H+
# 3 Fe++ + MnO4- + 7 H2O -> 3 Fe(OH)3 + MnO2 + 5 H+;  3 Mn++ + 2 MnO4- + 2 H2O -> 5 MnO2 + 4 H+
# Bleach is counted in chlorine, Cl2, as its label does. Chlorine gas makes half as much acid again.
COSTS: Mapping[str, tuple[Cost, Cost]] = {
    "air": (
        _cost(IRON, OXYGEN_GAS / 4, 2, RUST),
        _cost(MANGANESE, OXYGEN_GAS / 2, 2, MANGANESE_OXIDE),
    ),
    "bleach": (
        _cost(IRON, CHLORINE / 2, 2, RUST),
        _cost(MANGANESE, CHLORINE, 2, MANGANESE_OXIDE),
    ),
    "permanganate": (
        _cost(IRON, PERMANGANATE / 3, 5 / 3, RUST + MANGANESE_OXIDE / 3),
        _cost(MANGANESE, PERMANGANATE * 2 / 3, 4 / 3, MANGANESE_OXIDE * 5 / 3),
    ),
}


def cost(oxidant: str, iron: float, manganese: float) -> Cost:
    """What it takes to oxidize so much iron and manganese, kg/m³ each.

    oxidant         -- a key of `COSTS`. Air takes iron only, in any time a house has: count no
                       manganese for it unless a catalytic bed follows
    iron, manganese -- dissolved, kg/m³. Rust that comes with the water costs nothing more

    Three parts of iron take 0.43 parts of oxygen, 1.9 of chlorine or 2.8 of permanganate:

    >>> [round(cost(each, 3.0, 0.0).oxidant, 3) for each in COSTS]
    [0.43, 1.905, 2.83]

    Source: the reactions above and atomic weights; [wtpd-iron] Table 10.7 prints the same for iron.
    Sulfide, ammonia and what is organic take more.
    """
    of_iron, of_manganese = COSTS[oxidant]
    return Cost(*(a * iron + b * manganese for a, b in zip(of_iron, of_manganese, strict=True)))


class Bed(NamedTuple):
    """What a bed for rust asks for. Flows over area in m/s, iron and manganese together in kg/m³.

    service   -- most in service, for short draws
    wash      -- least and most of the backwash
    least_ph  -- under which it does not do its work
    most_iron -- over which it is full too soon
    """

    service: float
    wash: tuple[float, float]
    least_ph: float
    most_iron: float


_RATE = gpm / ft**2
# Backwash of the first two [wi-nr-811-52], of the third and its service rate [ufc-3-280-04],
# service rate of the first [ten-states]. The rest: common practice, no source.
BEDS: Mapping[str, Bed] = {
    "greensand": Bed(3 * _RATE, (8 * _RATE, 10 * _RATE), 6.7, 10 * mg / L),
    "coated": Bed(5 * _RATE, (15 * _RATE, 20 * _RATE), 6.8, 10 * mg / L),
    "sand": Bed(4 * _RATE, (15 * _RATE, 15 * _RATE), 7.2, 10 * mg / L),
}


def after_acid(water: Carbonate, used: float, temperature: float, strength: float) -> Carbonate:
    """A closed water after so much of its alkalinity was eaten by acid.

    used     -- kg/m³ as CaCO3. More than there is leaves the water sour, with a pH under 4.5
    strength -- ionic strength, mol/m³

    Carbon dioxide made on the way stays in the water; where it can leave, the pH falls less.

    >>> from calc.physics.carbonate import from_ph
    >>> soft = from_ph(6.2, 20e-3 / CACO3_EQUIVALENT, 283.15, 0.98)
    >>> round(after_acid(soft, cost("air", 5e-3, 0.0).alkalinity, 283.15, 0.98).ph, 2)
    5.85

    Source: conservation of carbon and charge.
    """
    left = water.alkalinity - used / CACO3_EQUIVALENT
    return from_dic(water.dic, left, temperature, strength)


def oxygen_saturation(temperature: float) -> float:
    """Oxygen in fresh water that has stood under air at sea level, kg/m³.

        ln C = -139.34411 + 1.575701e5/T - 6.642308e7/T² + 1.243800e10/T³ - 8.621949e11/T⁴

    temperature -- K, 273 to 313. At 1000 m it is 11 % less

    >>> round(oxygen_saturation(283.15) / (mg / L), 1)
    11.3

    Source: [benson-krause-1984], from memory; within 2 % of PHREEQC.
    """
    t = temperature
    logarithm = (
        -139.34411 + 1.575701e5 / t - 6.642308e7 / t**2 + 1.243800e10 / t**3 - 8.621949e11 / t**4
    )
    return float(exp(logarithm) * mg / L)


def oxygen_pressure(oxygen: float, temperature: float) -> float:
    """Pressure of oxygen that the water is at rest with, Pa.

        p = 0.2095 atm x C / C_s

    oxygen -- C, kg/m³; a well with dissolved iron brings next to none

    Source: Henry's law, `oxygen_saturation`.
    """
    return OXYGEN * oxygen / oxygen_saturation(temperature)


def left_after(half: float, stay: float, tanks: float) -> float:
    """Share of the dissolved iron that is left after equal mixed tanks in a row.

        x = (1 + ln 2 t / (N t_h))^-N

    half  -- t_h, time in which half rusts, s
    stay  -- t, water in all tanks over the flow, s
    tanks -- N. One tank that air stirs is 1; a long pipe is as good as 20

    >>> round(left_after(10.0, 10.0, 1), 3), round(left_after(10.0, 10.0, 1000), 3)
    (0.591, 0.5)

    Source: iron balance of each tank.
    """
    return float((1 + log(2) * stay / (tanks * half)) ** -tanks)


def stay_needed(half: float, share: float, tanks: float) -> float:
    """Time in the tanks until only a share of the dissolved iron is left, s.

        t = N t_h / ln 2 (x^(-1/N) - 1)

    share -- x, over 0; 1 and more takes no time
    the others -- as in `left_after`

    From 5 mg/L down to 0.3 takes 23 half times in one mixed tank, and 4 in a long pipe:

    >>> from calc.units import minute
    >>> round(stay_needed(4.84 * minute, 0.06, 1) / minute)
    109

    Source: `left_after` turned round.
    """
    return float(max(tanks * half / log(2) * (share ** (-1 / tanks) - 1), 0.0))


def run_time(area: float, load: float, solids: float, daily_use: float) -> float:
    """Time until a filter holds all the dirt it should, s.

        t = A m / (s Q)

    area      -- of the tank, m²
    load      -- m, dry solids that the bed takes for each area before it must be washed, kg/m²
    solids    -- s, dry, kg/m³ of water
    daily_use -- Q, m³/s

    >>> from calc.units import day, ft, gal, lb
    >>> solids = cost("air", 2 * mg / L, 0.0).solids
    >>> round(run_time(0.545 * ft**2, 0.5 * lb / ft**2, solids, 300 * gal / day) / day, 1)
    28.4

    Source: balance of mass.
    """
    return area * load / (solids * daily_use)
