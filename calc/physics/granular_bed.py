"""A bed of grains: the pressure it takes, and how far a backwash lifts it.

Grains are taken as all of one size. Real media are not, and the figures are good to 40 % or so.
"""

from math import exp, inf, pi, sqrt
from typing import NamedTuple

from calc.physics.water import density, viscosity
from calc.roots import bracket
from calc.units import GRAVITY

SLOWEST, FASTEST = 1e-6, 1e5  # Reynolds numbers between which a grain's fall is looked for


class Medium(NamedTuple):
    """What a bed is made of.

    density    -- of one wet grain, kg/m³
    porosity   -- share of the settled bed that is water
    sphericity -- surface of a ball of a grain's volume over the grain's surface
    """

    density: float
    porosity: float
    sphericity: float


# Common values, no source; resin is weighed swollen, carbon wet.
MEDIA = {
    "calcite": Medium(2700.0, 0.45, 0.75),
    "sand": Medium(2650.0, 0.42, 0.80),
    "greensand": Medium(2400.0, 0.45, 0.80),
    "carbon": Medium(1400.0, 0.48, 0.75),
    "resin": Medium(1250.0, 0.38, 1.0),
}


def bed_area(diameter: float) -> float:
    """Area of a filter tank, m². Times the depth of the bed it is the bed's space, and that over
    the flow is the empty-bed contact time.

        A = pi D² / 4

    diameter -- inside, m

    >>> from calc.units import ft, gpm, inch, minute
    >>> round(bed_area(12 * inch) / ft**2, 3)
    0.785
    >>> round(bed_area(12 * inch) * 36 * inch / (5.6 * gpm) / minute, 2)
    3.15

    Source: geometry.
    """
    return pi * diameter**2 / 4


def pressure_loss(
    velocity: float, depth: float, grain: float, medium: Medium, temperature: float
) -> float:
    """Pressure that water loses on its way through a bed, Pa.

        dP / L = 150 mu (1 - e)² v / (e³ f² d²) + 1.75 rho (1 - e) v² / (e³ f d)

    velocity    -- v, flow over the area of the empty tank, m/s
    depth       -- L, m
    grain       -- d, m; half of the mass is finer
    medium      -- with e and f, porosity and sphericity. Dirt between the grains takes porosity:
                   0.45 down to 0.38 doubles the loss
    temperature -- K

    The bed alone: valve and distributor often take more. A crust on top is another law.

    >>> from calc.units import ft, gpm, inch, mm, psi
    >>> loss = pressure_loss(5 * gpm / ft**2, 30 * inch, 0.7 * mm, MEDIA["calcite"], 283.15)
    >>> round(loss / psi, 2)
    0.91

    Source: [ergun], checked against the library fluids.
    """
    solid, open_ = 1 - medium.porosity, medium.porosity**3
    size = medium.sphericity * grain
    thick = 150 * viscosity(temperature) * solid**2 * velocity / (open_ * size**2)
    quick = 1.75 * density(temperature) * solid * velocity**2 / (open_ * size)
    return depth * (thick + quick)


def archimedes(grain: float, medium: Medium, temperature: float) -> float:
    """A grain's weight under water against the water's thickness, a number without unit.

        Ga = d³ rho (rho_s - rho) g / mu²

    >>> from calc.units import mm
    >>> round(archimedes(0.9 * mm, MEDIA["sand"], 283.15), -2)
    6900.0

    Source: definition. Values of viscosity differ by a percent from table to table.
    """
    water = density(temperature)
    return grain**3 * water * (medium.density - water) * GRAVITY / viscosity(temperature) ** 2


def lifting_velocity(grain: float, medium: Medium, temperature: float) -> float:
    """Upward flow over area at which grains of that size just float, m/s.

        Re = √(33.7² + 0.0408 Ga) - 33.7,   v = Re mu / (rho d)

    grain -- the coarse grains, d90, decide: what they leave lying turns into a cake

    Knows nothing of a grain's shape. Backwash runs at 1.3 times it, from memory.

    >>> from calc.units import mm
    >>> round(lifting_velocity(0.9 * mm, MEDIA["sand"], 283.15) * 1000, 1)  # mm/s
    5.7

    Source: [wen-yu-1966].
    """
    reynolds = sqrt(33.7**2 + 0.0408 * archimedes(grain, medium, temperature)) - 33.7
    return _velocity(reynolds, grain, temperature)


def drag(reynolds: float, sphericity: float) -> float:
    """Drag coefficient of a grain that falls.

        a ball:     C = 24/Re (1 + 0.15 Re^0.687)
        any other:  C = 24/Re (1 + a Re^b) + c / (1 + d/Re), a to d from the sphericity f:
        a = exp(2.3288 - 6.4581 f + 2.4486 f²),  b = 0.0964 + 0.5565 f,
        c = exp(4.905 - 13.8944 f + 18.4222 f² - 10.2599 f³),
        d = exp(1.4681 + 12.2584 f - 20.7322 f² + 15.8855 f³)

    reynolds -- up to 800, with the diameter of a ball of the same volume

    Holds from sphericity 0.67 up.

    >>> round(drag(10, 1.0), 2)
    4.15

    Source: [schiller-1933], [haider-1989].
    """
    f = sphericity
    if f == 1:
        return float(24 / reynolds * (1 + 0.15 * reynolds**0.687))
    a = exp(2.3288 - 6.4581 * f + 2.4486 * f**2)
    b = 0.0964 + 0.5565 * f
    c = exp(4.905 - 13.8944 * f + 18.4222 * f**2 - 10.2599 * f**3)
    d = exp(1.4681 + 12.2584 * f - 20.7322 * f**2 + 15.8855 * f**3)
    return float(24 / reynolds * (1 + a * reynolds**b) + c / (1 + d / reynolds))


def fall_velocity(grain: float, medium: Medium, temperature: float) -> float:
    """How fast one grain falls through still water, m/s. Upward water this fast carries it off.

        3/4 C Re² = Ga

    >>> from calc.units import mm
    >>> round(fall_velocity(0.6 * mm, MEDIA["resin"], 283.15) * 1000, 1)  # mm/s
    21.7

    Source: weight against `drag`, by [brent-1973].
    """
    weight = archimedes(grain, medium, temperature)
    reynolds = bracket(
        lambda re: 0.75 * drag(re, medium.sphericity) * re**2 - weight, SLOWEST, FASTEST
    )[0]
    return _velocity(reynolds, grain, temperature)


def _velocity(reynolds: float, grain: float, temperature: float) -> float:
    return reynolds * viscosity(temperature) / (density(temperature) * grain)


def crowding(reynolds: float) -> float:
    """Exponent n of how grains hinder each other: v = v_t e^n.

        n = 4.65 under Re 0.2;  4.35 Re^-0.03 to 1;  4.45 Re^-0.1 to 500;  2.39 above

    reynolds -- of one grain falling alone

    >>> round(crowding(10.0), 2)
    3.53

    Source: [richardson-zaki-1954], for a tank far wider than a grain.
    """
    if reynolds < 0.2:
        return 4.65
    if reynolds < 1:
        return float(4.35 * reynolds**-0.03)
    return float(4.45 * reynolds**-0.1) if reynolds < 500 else 2.39


class Lifting(NamedTuple):
    """A bed in water of one temperature: v_t of one grain, m/s, the exponent n, and the
    porosity at rest."""

    fall: float
    exponent: float
    porosity: float

    def expansion(self, velocity: float) -> float:
        """Share by which the bed grows in upward water of that velocity, flow over area in m/s.

            e = (v / v_t)^(1/n),   E = (1 - e0) / (1 - e) - 1

        0 for a bed that stays down, infinite for one that is carried off.
        """
        if velocity >= self.fall:
            return inf
        porosity: float = (velocity / self.fall) ** (1 / self.exponent)
        return max((1 - self.porosity) / (1 - porosity) - 1, 0.0)

    def velocity(self, expansion: float) -> float:
        """Upward flow over area that lifts the bed by that share, m/s."""
        porosity = 1 - (1 - self.porosity) / (1 + expansion)
        return float(self.fall * porosity**self.exponent)


def lifting(grain: float, medium: Medium, temperature: float) -> Lifting:
    """How a bed answers upward water of that temperature.

    grain       -- m; fines lift more and coarse grains less than this
    temperature -- K. Cold water is thicker: at 5 °C it lifts as far as a tenth more does at 10 °C

    Resin of 0.6 mm at 5 gpm for each square foot and 50 °F grows by half, as the trade has it:

    >>> from calc.units import ft, gpm, mm
    >>> bed = lifting(0.6 * mm, MEDIA["resin"], 283.15)
    >>> round(bed.expansion(5 * gpm / ft**2), 2)
    0.52

    Source: [richardson-zaki-1954].
    """
    fall = fall_velocity(grain, medium, temperature)
    reynolds = fall * grain * density(temperature) / viscosity(temperature)
    return Lifting(fall, crowding(reynolds), medium.porosity)
