"""A laboratory's sheet: its figures as charges, as hardness, and whether they can be right.

Concentrations are in kg/m³ of what the sheet names: 1 mg/L is 1e-3 kg/m³. Charges are in
mol/m³, which is meq/L.
"""

from collections.abc import Mapping
from typing import NamedTuple

from calc.physics.carbonate import CACO3_EQUIVALENT, CO2_MOLAR


class Ion(NamedTuple):
    """Mass of one charge, kg/mol, and the charges of the ion, less than 0 for an anion."""

    equivalent: float
    charge: int


# Each as a sheet names it: nitrate as nitrogen, alkalinity as CaCO3, all of it taken as
# bicarbonate. Atomic weights of IUPAC, from memory.
IONS: Mapping[str, Ion] = {
    "calcium": Ion(40.078e-3 / 2, 2),
    "magnesium": Ion(24.305e-3 / 2, 2),
    "sodium": Ion(22.990e-3, 1),
    "potassium": Ion(39.098e-3, 1),
    "iron": Ion(55.845e-3 / 2, 2),
    "manganese": Ion(54.938e-3 / 2, 2),
    "alkalinity": Ion(CACO3_EQUIVALENT, -1),
    "chloride": Ion(35.453e-3, -1),
    "sulfate": Ion(96.06e-3 / 2, -2),
    "nitrate": Ion(14.007e-3, -1),
    "fluoride": Ion(18.998e-3, -1),
}
# Stone that one part of carbon dioxide dissolves: CaCO3 + CO2 + H2O -> Ca++ + 2 HCO3-.
CALCITE_FOR_CO2 = 2 * CACO3_EQUIVALENT / CO2_MOLAR
# Mass of nitrate for one of its nitrogen.
NITRATE_FOR_NITROGEN = 62.004 / 14.007
# What is left of alkalinity as CaCO3 when water is dried: CO3 for CaCO3.
DRIED = 0.6


class Balance(NamedTuple):
    """Charges of a sheet, mol/m³. `error`: what is over, as a share of all; cations positive."""

    cations: float
    anions: float

    @property
    def error(self) -> float:
        return (self.cations - self.anions) / (self.cations + self.anions)


def charges(name: str, concentration: float) -> float:
    """Charges that an ion brings, mol/m³ (meq/L).

        c = C / E

    name          -- a key of `IONS`
    concentration -- kg/m³, as that key says: a sheet may mean nitrate where this means nitrogen

    >>> round(charges("calcium", 40e-3), 3)
    1.996

    Source: definition; atomic weights from memory.
    """
    return concentration / IONS[name].equivalent


def as_calcium_carbonate(name: str, concentration: float) -> float:
    """An ion told as the calcium carbonate of as many charges, kg/m³.

    >>> round(as_calcium_carbonate("magnesium", 1.0), 3)
    4.118

    Source: as `charges`.
    """
    return charges(name, concentration) * CACO3_EQUIVALENT


def times_level(result: float, level: float) -> float:
    """A result as a share of a level: 1 is at it.

        x = C / L

    result, level -- in one unit. Nitrate is the trap: 10 mg/L as N and 50 mg/L as NO3 are two
                     levels, and a sheet may use either unit

    >>> round(times_level(50e-3 * 14.007 / 62.004, 10e-3), 2)
    1.13

    Source: definition.
    """
    return result / level


def hardness(calcium: float, magnesium: float) -> float:
    """Hardness as calcium carbonate, kg/m³.

        H = 2.497 Ca + 4.118 Mg

    calcium, magnesium -- kg/m³. Iron and manganese count in a softener, not here

    >>> round(hardness(40e-3, 8e-3) * 1e3, 2)  # mg/L
    132.84

    Source: [standard-methods] 2340 B.
    """
    return as_calcium_carbonate("calcium", calcium) + as_calcium_carbonate("magnesium", magnesium)


def balance(sheet: Mapping[str, float]) -> Balance:
    """Charges of cations and anions of a sheet, mol/m³.

        error = (cations - anions) / (cations + anions)

    sheet -- concentrations by name of `IONS`, kg/m³; one that was not measured counts as none

    Water carries as many positive as negative charges: what is over is a mistake or an ion
    that was not asked for.

    >>> found = balance({"calcium": 40e-3, "alkalinity": 100e-3})
    >>> round(found.cations, 3), round(found.anions, 3)
    (1.996, 1.998)

    Source: [standard-methods] 1030 E.
    """
    parts = {name: charges(name, concentration) for name, concentration in sheet.items()}
    return Balance(
        sum(part for name, part in parts.items() if IONS[name].charge > 0),
        sum(part for name, part in parts.items() if IONS[name].charge < 0),
    )


def allowed_difference(found: Balance) -> float:
    """Difference of cations and anions that a good laboratory may have, mol/m³.

        0.2 where the anions are 3 or less; 2 % of all charges up to 10, 5 % over it

    A share would ask too much of soft water: in 0.7 meq/L the 0.2 is 14 %.

    >>> allowed_difference(Balance(0.7, 0.7))
    0.2

    Source: [standard-methods] 1030 E, from memory.
    """
    every = found.cations + found.anions
    if found.anions <= 3:
        return 0.2
    return every * (0.02 if found.anions <= 10 else 0.05)


def ionic_strength(sheet: Mapping[str, float]) -> float:
    """How crowded with charges the water is, mol/m³ (mmol/L).

        I = 1/2 sum of c z,   c in charges

    sheet -- as for `balance`

    >>> round(ionic_strength({"calcium": 40e-3, "alkalinity": 100e-3}), 2)
    3.0

    Source: definition, c z being the amount times z².
    """
    return sum(charges(name, each) * abs(IONS[name].charge) for name, each in sheet.items()) / 2


def strength_of_solids(solids: float) -> float:
    """Ionic strength guessed from dissolved solids, mol/m³: 2.5e-5 mol/L for each mg/L.

    solids -- kg/m³; a pocket meter shows conductivity times a fixed factor, good enough here

    Within a quarter for ordinary well water, which moves a saturation index by less than 0.03.

    >>> round(strength_of_solids(220e-3), 2)
    5.5

    Source: [langelier-1936], from memory; compared with PHREEQC's for six waters.
    """
    return 25.0 * solids


def strength_of_conductivity(conductivity: float) -> float:
    """Ionic strength guessed from conductivity, mol/m³: 1.6e-5 mol/L for each µS/cm.

    conductivity -- S/m, at 25 °C

    Within a quarter. Source: [russell-1976], from memory.
    """
    return 160.0 * conductivity


def dissolved_solids(sheet: Mapping[str, float], silica: float = 0.0) -> float:
    """Solids that the parts of a sheet should leave when dried, kg/m³.

        S = 0.6 Alk + Na + K + Ca + Mg + Fe + Cl + SO4 + NO3 + F + SiO2

    sheet  -- as for `balance`. Half the bicarbonate leaves as carbon dioxide: hence 0.6
    silica -- as SiO2; rock gives 10 to 30 mg/L, and sheets leave it out

    >>> round(dissolved_solids({"calcium": 40e-3, "alkalinity": 100e-3}) * 1e3)
    100

    Source: [standard-methods] 1030 E, from memory.
    """
    factors = {"alkalinity": DRIED, "nitrate": NITRATE_FOR_NITROGEN}
    return silica + sum(factors.get(name, 1.0) * each for name, each in sheet.items())


def carbon_dioxide_lost(field_ph: float, lab_ph: float) -> float:
    """Share of its carbon dioxide that a sample lost on the way, less than 0 for a gain.

        f = 1 - 10^(pH_field - pH_lab)

    field_ph -- at the tap at once
    lab_ph   -- of the same water in the laboratory

    Alkalinity stays when the gas leaves. Under pH 8, where nearly all of it is bicarbonate.

    >>> round(carbon_dioxide_lost(6.2, 6.5), 2)
    0.5

    Source: first dissociation of carbonic acid at one alkalinity.
    """
    lost: float = 1 - 10 ** (field_ph - lab_ph)
    return lost
