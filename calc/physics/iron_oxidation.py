"""Dissolved iron that air turns to rust: how fast, and how much sludge that is."""

from math import log

from calc.physics.carbonate import log_water
from calc.units import atm, minute

RATE = 8.0e13 / minute  # L²/(mol² atm s), [singer-stumm-1970]
# Real waters lie this many times on either side of the law, from memory: slower with organic
# matter and silica, faster where rust has gathered already.
SCATTER = 10.0
OXYGEN = 0.2095 * atm  # Pa, of the air outdoors, from memory
# From atomic weights: rust made, and alkalinity (as CaCO3) used, by each kg of iron.
RUST, ALKALINITY_USED = 106.867 / 55.845, 100.087 / 55.845


def half_time(ph: float, temperature: float, oxygen: float = OXYGEN) -> float:
    """Time in which half of the dissolved iron turns to rust, s.

        t = ln 2 / (k [OH-]² pO2),   [OH-] = Kw / 10^-pH

    ph          -- where the iron is: in the aerator it has already risen. A pH higher by one is a
                   hundred times the speed
    temperature -- K. It works through Kw: 15 °C colder is thirteen times slower
    oxygen      -- pO2, pressure of oxygen in the air the water meets, Pa

    Holds from pH 5.5 to 8 for iron that nothing binds. Real waters lie up to ten times on either
    side: carbonate and rust speed it up, organic matter slows it down.

    At pH 7 and 20 °C nine minutes:

    >>> round(half_time(7.0, 293.15) / minute, 1)
    9.0

    Source: [singer-stumm-1970], rate as public codes have it; Kw by `calc.physics.carbonate`.
    """
    hydroxide = 10 ** (log_water(temperature) + ph)
    return log(2) / (RATE * hydroxide**2 * oxygen / atm)


def rusted(half_time: float, time: float) -> float:
    """Share of the dissolved iron that has turned to rust in a mixed tank.

        x = k t / (1 + k t),   k = ln 2 / half time

    half_time -- s
    time      -- that the water stays on average, s: water in the tank over the flow through it

    A tank that bubbles mix. In a long quiet one more would turn.

    >>> round(rusted(10.0, 10.0), 3)
    0.409

    Source: iron balance of a mixed tank.
    """
    turned = log(2) * time / half_time
    return turned / (1 + turned)


def sludge(rust: float, solids: float) -> float:
    """Volume of wet sludge, m³.

        V = m / s

    rust   -- m, dry, kg
    solids -- s, dry rust in a cubic metre of sludge, kg/m³. Fresh floc that settled holds 10 to 50,
              old crust far more (from memory)

    >>> sludge(1.6, 20)
    0.08

    Source: definition.
    """
    return rust / solids
