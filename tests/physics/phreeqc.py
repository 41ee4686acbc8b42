"""PHREEQC 3 with its own data file phreeqc.dat, asked about one water at a time."""

from math import log10
from typing import NamedTuple

from phreeqpython import PhreeqPython

WATER = """
SOLUTION 1
 units mg/L
 temp {celsius}
 pH {ph}
 Alkalinity {alkalinity} as CaCO3
 Ca {calcium}
 Mg {magnesium}
 Na {sodium}
 Cl {chloride}
 S(6) {sulfate} as SO4
{change}
SELECTED_OUTPUT 1
 -reset false
USER_PUNCH 1
 -headings ph co2 si alk mu dic ca gas
 10 PUNCH -LA("H+"), MOL("CO2"), SI("Calcite"), ALK, MU, TOT("C(4)"), TOT("Ca"), SI("CO2(g)")
END
"""
# Brucite as the program's other data file wateq4f has it.
BRUCITE = """
PHASES
Brucite
 Mg(OH)2 + 2H+ = Mg+2 + 2H2O
 log_k 16.84
 delta_h -27.1 kcal
"""
PROGRAM = PhreeqPython(database="phreeqc.dat").ip
PROGRAM.run_string(BRUCITE)


class Sheet(NamedTuple):
    """A water as a laboratory would report it: °C, pH, alkalinity in mg/L as CaCO3, the rest in
    mg/L."""

    celsius: float
    ph: float
    alkalinity: float
    calcium: float
    magnesium: float
    sodium: float
    chloride: float
    sulfate: float


class Found(NamedTuple):
    """What PHREEQC says: mol/kg, but for pH and the logarithms si and gas."""

    ph: float
    co2: float
    si: float
    alkalinity: float
    strength: float
    dic: float
    calcium: float
    gas: float


def asked(sheet: Sheet, change: str = "") -> Found:
    """The water after a change, in the program's own words."""
    PROGRAM.run_string(WATER.format(**sheet._asdict(), change=change))
    rows = PROGRAM.get_selected_output_array()
    return Found(*rows[-1])


def calcite(sheet: Sheet, index: float = 0.0) -> Found:
    """At rest with calcite, or at another index."""
    return asked(sheet, f"EQUILIBRIUM_PHASES 1\n Calcite {index} 10")


def vented(sheet: Sheet, log_pressure: float) -> Found:
    """At rest with air in which carbon dioxide has that pressure, log10 of atm."""
    return asked(sheet, f"EQUILIBRIUM_PHASES 1\n CO2(g) {log_pressure} 10")


def stripped(sheet: Sheet, removed: float, more: str = "") -> Found:
    """With a share of the carbon dioxide gone, and perhaps another phase after that."""
    gas = asked(sheet).gas + log10(1 - removed)
    change = f"EQUILIBRIUM_PHASES 1\n CO2(g) {gas} 10"
    if more:
        change += f"\nSAVE solution 1\nEND\nUSE solution 1\nEQUILIBRIUM_PHASES 2\n {more}"
    return asked(sheet, change)


def heated(sheet: Sheet, celsius: float) -> Found:
    """Warmed in a closed pipe."""
    return asked(sheet, f"REACTION_TEMPERATURE 1\n {celsius}")


def dosed(sheet: Sheet, formula: str, moles: float) -> Found:
    """With so much of a base in each litre."""
    return asked(sheet, f"REACTION 1\n {formula} 1\n {moles} moles")


def over_magnesia(sheet: Sheet) -> Found:
    """At rest with brucite."""
    return asked(sheet, "EQUILIBRIUM_PHASES 1\n Brucite 0 10")


def through_bed(sheet: Sheet, surface: float, porosity: float, contact: float) -> Found:
    """After a contact time, s in the empty tank, with calcite of that surface, m²/m³ of bed."""
    area = 10 * surface / porosity  # cm² for each litre of water
    change = (
        f"KINETICS 1\nCalcite\n -m0 10\n -parms {area / 10} 0\n -tol 1e-9\n"
        f" -steps {contact * porosity}\nINCREMENTAL_REACTIONS true"
    )
    return asked(sheet, change)
