"""Shock chlorination: what to pour for a level, what level a recipe gives, what pH does to it."""

# Molar masses, g/mol, from the standard atomic weights [ciaaw-2021].
CHLORINE = 2 * 35.45
ASCORBIC = 176.124
A_PERCENT = 10.0  # kg/m³ of chlorine in each per cent of a liquid: weight by volume


def liquid_dose(water: float, level: float, strength: float) -> float:
    """Volume of liquid bleach that brings water to a level of chlorine, m³.

        X = V C / (1000 kg/m³ · p)

    water    -- m³
    level    -- chlorine wanted, kg/m³; 1 mg/L is 0.001
    strength -- available chlorine, share of weight by volume: 0.0525 for 5.25 %. A label that
                gives sodium hypochlorite by weight says within 5 % the same, for bleach is
                7 to 10 % heavier than water and its hypochlorite worth 0.952 of chlorine.
                Old stock is weaker by far more than that

    Iron, slime and hydrogen sulfide use chlorine up: the level is what is reached without them.

    100 gallons to 100 mg/L take 3 cups of 5.25 %:

    >>> from calc.units import L, cup, gal, mg
    >>> round(liquid_dose(100 * gal, 100 * mg / L, 0.0525) / cup, 2)
    3.05

    Source: mass balance. [hickory-disinfect] prints 3 cups.
    """
    return water * level / (100 * A_PERCENT * strength)


def dry_dose(water: float, level: float, strength: float) -> float:
    """Mass of a dry product that brings water to a level of chlorine, kg.

        m = V C / p

    water, level -- as in `liquid_dose`
    strength     -- available chlorine, share of its weight: 0.65 to 0.70 when fresh

    >>> from calc.units import L, gal, mg, oz
    >>> round(dry_dose(100 * gal, 100 * mg / L, 0.70) / oz, 1)
    1.9

    Source: mass balance. [hickory-disinfect] prints 2 ounces.
    """
    return water * level / strength


def level_given(chlorine: float, water: float) -> float:
    """Level of chlorine that a recipe gives, kg/m³.

    chlorine -- kg in the product: volume · 1000 kg/m³ · strength, or mass · strength
    water    -- m³ it is mixed into

    Half a gallon of 5.25 % in 100 gallons:

    >>> from calc.units import L, gal, mg
    >>> round(level_given(0.5 * gal * 52.5, 100 * gal) / (mg / L))
    262

    Source: mass balance.
    """
    return chlorine / water


def hypochlorous_share(ph: float, temperature: float) -> float:
    """Share of the free chlorine that is hypochlorous acid, the form that kills well.

        f = 1 / (1 + 10^(pH - pK)),   pK = 3000 / T - 10.0686 + 0.0253 T

    ph          -- of the water with the chlorine in it; bleach raises it
    temperature -- T, K

    Holds from 0 to 35 °C and above pH 5, where no chlorine gas forms to speak of.

    >>> round(hypochlorous_share(7.5, 293.15), 2)
    0.55

    Source: [morris-1966], from memory.
    """
    return float(1 / (1 + 10 ** (ph - acid_constant(temperature))))


def acid_constant(temperature: float) -> float:
    """Acid constant of hypochlorous acid, pK: the pH at which half of it has come apart.

        pK = 3000 / T - 10.0686 + 0.0253 T

    temperature -- T, K

    Holds from 0 to 35 °C.

    >>> round(acid_constant(293.15), 2)
    7.58

    Source: [morris-1966], from memory.
    """
    return 3000 / temperature - 10.0686 + 0.0253 * temperature


def ascorbic_acid(chlorine: float) -> float:
    """Mass of ascorbic acid (vitamin C) that neutralizes a mass of chlorine, kg.

        C6H8O6 + HOCl -> C6H6O6 + HCl + H2O

    chlorine -- kg as Cl2. What has stood for a day is less than what was poured

    >>> round(ascorbic_acid(1.0), 2)
    2.48

    Source: stoichiometry; that it is used so: [land-2005].
    """
    return chlorine * ASCORBIC / CHLORINE
