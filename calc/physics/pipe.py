"""Head lost in pipe and fittings, in metres of the water that flows."""

from math import log, log10, pi

from calc.units import GRAVITY, ft

LAMINAR = 2000.0  # Reynolds number up to which a stream is taken as laminar, [rossman-2000]
TURBULENT = 4000.0  # and from which Colebrook's equation holds, [rossman-2000]
# Roughness of new pipe, m. Copper and plastic are drawn smooth.
ROUGHNESS_DRAWN = 1.5e-6  # [binder-1973]


def velocity(flow: float, bore: float) -> float:
    """Mean velocity in a round pipe, m/s: v = 4 Q / (pi D²).

    bore -- inside diameter, m; the nominal size is not it: 3/4 in schedule 40 is 0.824 in

    Source: conservation of water.
    """
    return 4 * flow / (pi * bore**2)


def friction_factor(reynolds: float, relative_roughness: float) -> float:
    """Darcy's friction factor of a round pipe.

        laminar:    f = 64 / Re
        turbulent:  1/√f = -2 log10(k/3.7 + 2.51 / (Re √f))

    reynolds           -- v D / nu, above 0
    relative_roughness -- k, roughness over bore

    Fanning's factor is a quarter of this one: charts do not always say which they show.
    Between Re 2000 and 4000 no law holds; a straight line joins the two, so that head
    loss never falls while flow rises.

    >>> round(friction_factor(1e5, 1e-4), 5)
    0.01851

    Source: [colebrook-1939], solved by Newton's method to rounding.
    """
    if reynolds <= LAMINAR:
        return 64 / reynolds
    turbulent = _colebrook(max(reynolds, TURBULENT), relative_roughness)
    share = min(1.0, (reynolds - LAMINAR) / (TURBULENT - LAMINAR))
    return share * turbulent + (1 - share) * 64 / LAMINAR


def _colebrook(reynolds: float, relative_roughness: float) -> float:
    rough, smooth = relative_roughness / 3.7, 2.51 / reynolds
    root = -1.8 * log10(rough**1.11 + 6.9 / reynolds)  # Haaland's, within 2 %, to start from
    for _ in range(4):  # each doubles the digits that are right
        inside = rough + smooth * root
        slope = 1 + 2 * smooth / (log(10) * inside)
        root -= (root + 2 * log10(inside)) / slope
    return 1 / root**2


def head_loss(
    flow: float, length: float, bore: float, roughness: float, kinematic_viscosity: float
) -> float:
    """Head lost to friction in a full round pipe, m.

        h = f L/D v² / (2 g)

    flow      -- m³/s
    length    -- m
    bore      -- inside diameter, m: 5 % less bore is 29 % more loss
    roughness -- height of the wall's roughness, m; old pipe is rougher than any table
    kinematic_viscosity -- m²/s: viscosity over density

    >>> from calc.units import ft, gpm, inch
    >>> round(head_loss(6 * gpm, 100 * ft, 0.824 * inch, ROUGHNESS_DRAWN, 1.31e-6) / ft, 2)
    7.92

    Source: [rossman-2000], Darcy-Weisbach formula.
    """
    if flow <= 0:
        return 0.0
    speed = velocity(flow, bore)
    factor = friction_factor(speed * bore / kinematic_viscosity, roughness / bore)
    return factor * length / bore * speed**2 / (2 * GRAVITY)


def head_loss_hazen_williams(flow: float, length: float, bore: float, smoothness: float) -> float:
    """Head lost to friction by the formula of Hazen and Williams, m.

        h = 4.727 L Q^1.852 / (C^1.852 D^4.871)    in feet and cubic feet per second

    smoothness -- C: 150 for smooth plastic, 130 for copper, 100 for old iron: common
                  practice, no source
    the others -- as in `head_loss`

    Fitted to water at ordinary temperature in large pipes: in small pipe or cold water it is
    some 10 % off.

    >>> from calc.units import ft, gpm, inch
    >>> round(head_loss_hazen_williams(6 * gpm, 100 * ft, 0.824 * inch, 130) / ft, 2)
    9.02

    Source: [rossman-2000], Hazen-Williams formula.
    """
    feet: float = 4.727 * length / ft * (max(flow, 0.0) / ft**3) ** 1.852
    width: float = smoothness**1.852 * (bore / ft) ** 4.871
    return feet / width * ft


def minor_loss(flow: float, bore: float, coefficient: float) -> float:
    """Head lost in a fitting, m: h = K v² / (2 g).

    coefficient -- K of all fittings added up, each for a pipe of this bore; a pipe that
                   ends in the open adds 1 for the speed that it throws away

    >>> from calc.units import ft, gpm, inch
    >>> round(minor_loss(6 * gpm, 0.824 * inch, 0.75) / ft, 3)
    0.152

    Source: [rossman-2000], minor losses.
    """
    return coefficient * velocity(flow, bore) ** 2 / (2 * GRAVITY)
