"""A water on its way through treatment: stages that take a water and give a water.

Amounts are in mol/m³, as in `calc.physics.calcite`; iron that rusted is counted apart from iron
that is dissolved.
"""

from math import sqrt
from typing import NamedTuple

from calc.physics.calcite import CALCITE, Base, Water, dose_for_ph, vented, with_base
from calc.physics.carbonate import CACO3_EQUIVALENT, co2_diffusivity
from calc.physics.iron_removal import BEDS
from calc.physics.neutralizer import passage
from calc.physics.radon_solubility import diffusivity
from calc.units import L, mg

IRON_MOLAR = 55.845e-3  # kg/mol
SOFT = 5 * (mg / L)  # hardness that a softener leaves, common practice, no source
FED_PH = 7.2  # that a feed of soda ash is set for, common practice, no source


class Treated(NamedTuple):
    """A water of the train.

    body      -- its carbon, alkalinity and calcium, with temperature and ionic strength
    magnesium -- mol/m³
    sodium    -- that treatment has brought, mol/m³
    iron      -- dissolved, mol/m³
    rust      -- iron in flakes, mol/m³
    radon     -- share of the raw water's that may still be there
    """

    body: Water
    magnesium: float = 0.0
    sodium: float = 0.0
    iron: float = 0.0
    rust: float = 0.0
    radon: float = 1.0

    @property
    def hardness(self) -> float:
        """Calcium and magnesium, kg/m³ as CaCO3."""
        return 2 * CACO3_EQUIVALENT * (self.body.calcium + self.magnesium)

    @property
    def all_iron(self) -> float:
        """Dissolved and rust, kg/m³."""
        return IRON_MOLAR * (self.iron + self.rust)


def dissolving(water: Treated, base: Base, amount: float) -> Treated:
    """The water with so much of a base in it, mol/m³.

    Source: `calcite.with_base`.
    """
    return water._replace(
        body=with_base(water.body, base, amount),
        magnesium=water.magnesium + (base.hardness - base.calcium) * amount,
        sodium=water.sodium + base.sodium * amount,
    )


def through_stone(water: Treated, contact: float, surface: float) -> Treated:
    """The water behind a bed of calcite.

    contact -- space of the bed over the flow, s
    surface -- of calcite that works, m² for each m³ of bed

    Source: `neutralizer.passage`.
    """
    way = passage(water.body, CALCITE, surface)
    return dissolving(water, CALCITE, way.dissolved(contact)) if way else water


def fed(water: Treated, base: Base, ph: float = FED_PH) -> Treated:
    """The water behind a feed of soda ash that is set for a pH. It never lowers one.

    Source: `calcite.dose_for_ph`.
    """
    return dissolving(water, base, dose_for_ph(water.body, base, ph))


def aired(water: Treated, removed: float, rest: float) -> Treated:
    """The water behind an aerator. Alkalinity stays, carbon dioxide and radon leave.

        c = c0 + (c1 - c0) (1 - R),   radon left at most (1 - R)^k,   k = √(D_radon / D_CO2)

    removed -- R, of the carbon dioxide over what the air itself brings
    rest    -- c0, carbon dioxide at rest with that air, mol/m³

    The limit of radon is that of bubbles which burst far from full, where both gases go as fast as
    they spread. Air that is nearly full takes far more radon. Only a sample says how much:

    >>> from calc.physics.calcite import water_of_ph
    >>> soft = Treated(water_of_ph(6.2, 0.4, 0.15, 283.15, 1.0))
    >>> round(aired(soft, 0.8, 0.04).radon, 2)
    0.28

    Source: conservation of alkalinity; [higbie-1935] for the two gases' ways through a skin.
    """
    body = water.body
    co2 = rest + (body.state().co2 - rest) * (1 - removed)
    power = sqrt(diffusivity(body.temperature) / co2_diffusivity(body.temperature))
    return water._replace(body=vented(body, co2), radon=water.radon * (1 - removed) ** power)


def oxidized(water: Treated, share: float) -> Treated:
    """The water after a share of its dissolved iron has turned to rust.

        4 Fe++ + O2 + 10 H2O -> 4 Fe(OH)3 + 8 H+

    Each mole eats two of alkalinity, and its carbon dioxide stays.

    >>> from calc.physics.calcite import water_of_ph
    >>> soft = Treated(water_of_ph(6.2, 0.3997, 0.15, 283.15, 0.98), iron=5e-3 / IRON_MOLAR)
    >>> round(oxidized(soft, 1.0).body.state().ph, 2)
    5.85

    Source: conservation of charge and iron.
    """
    turned = share * water.iron
    body = water.body._replace(
        alkalinity=water.body.alkalinity - 2 * turned,
        strength=max(water.body.strength - 3 * turned, 0.0),
    )
    return water._replace(body=body, iron=water.iron - turned, rust=water.rust + turned)


def cleared(water: Treated) -> Treated:
    """The water behind a fine filter: rust stays in it."""
    return water._replace(rust=0.0)


def iron_filtered(water: Treated) -> Treated:
    """The water behind a bed of greensand that gets its oxidant, of which it makes as much acid as
    air does. From the least pH of such a bed on it turns and holds the iron; below, it only holds
    what is rust already.

    Source: `iron_removal.BEDS`.
    """
    works = water.body.state().ph >= BEDS["greensand"].least_ph
    return cleared(oxidized(water, 1.0 if works else 0.0))


def softened(water: Treated) -> Treated:
    """The water behind a softener: sodium for calcium, magnesium and dissolved iron, charge for
    charge. Rust goes through, or stays and fouls it.

    Source: conservation of charge; `SOFT` is what it leaves.
    """
    left = min(SOFT / water.hardness, 1.0) if water.hardness else 1.0
    kept, body = 1 - left, water.body
    moles = kept * (body.calcium + water.magnesium + water.iron)
    soft = body._replace(calcium=left * body.calcium, strength=max(body.strength - moles, 0.0))
    return water._replace(
        body=soft,
        magnesium=left * water.magnesium,
        iron=left * water.iron,
        sodium=water.sodium + 2 * moles,
    )


def charge(water: Treated) -> float:
    """Charges of what no change of pH changes, less alkalinity, mol/m³. No stage moves it, or
    charge was lost: calcium, magnesium, iron count two, sodium one.

    Source: water has no charge.
    """
    pairs = water.body.calcium + water.magnesium + water.iron
    return 2 * pairs + water.sodium - water.body.alkalinity
