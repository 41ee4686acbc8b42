"""Flow through what holds it back: a valve, a hole, a cap, a filter bed."""

from math import pi, sqrt


def flow_coefficient(flow: float, drop: float) -> float:
    """Flow coefficient that passes a flow at a pressure drop, m³/s per √Pa.

        C = Q / √Δp

    flow -- m³/s
    drop -- pressure lost across the restriction, Pa; not the gauge before it, unless
            the far side stands open

    For water near 60 °F. Divide by `units.Cv` for the US figure (gpm at 1 psi) or by
    `units.Kv` for the metric one (m³/h at 1 bar).

    >>> from calc.units import Cv, gpm, psi
    >>> round(flow_coefficient(5 * gpm, 45 * psi) / Cv, 4)
    0.7454

    Source: [iec-60534-2-1], equation for non-choked turbulent flow of a liquid.
    """
    return flow / sqrt(drop)


def flow_through(coefficient: float, drop: float) -> float:
    """Flow through a restriction, m³/s: Q = C √Δp. Nothing flows against a drop below 0.

    Turbulent and not choked: a throttle that hisses passes less than this.
    Source: [iec-60534-2-1].
    """
    return coefficient * sqrt(max(drop, 0.0))


def in_series(*coefficients: float) -> float:
    """Flow coefficient of restrictions one after the other: 1/C² = Σ 1/Ci².

    Source: pressure drops add at the same flow; [iec-60534-2-1] defines C.
    """
    return 1 / sqrt(sum(1 / each**2 for each in coefficients))


def in_parallel(*coefficients: float) -> float:
    """Flow coefficient of restrictions side by side: C = Σ Ci (flows add at one drop)."""
    return sum(coefficients)


def flow_at_other_drop(flow: float, drop: float, other: float) -> float:
    """The flow a fixed restriction passes at another pressure drop, m³/s.

        Q' = Q √(Δp' / Δp)

    flow  -- measured, m³/s
    drop  -- across the restriction while measured, Pa
    other -- across it now, Pa

    From 40 to 60 psi a fixed throttle passes 22 % more:

    >>> round(flow_at_other_drop(1.0, 40, 60), 3)
    1.225

    Holds for an orifice or a throttled valve. A dirty filter bed is nearer to
    proportional: see `flow_at_lower_drop`. Source: [iec-60534-2-1].
    """
    return flow * sqrt(max(other, 0.0) / drop)


def flow_at_lower_drop(flow: float, drop: float, lower: float) -> float:
    """The least flow to expect when the drop over a filter and its limit falls, m³/s.

        Q' = Q Δp' / Δp

    A bed of fine grains loses pressure in proportion to flow, a valve to its square;
    together the flow falls by a power of the drop between 1/2 and 1. This takes 1, the
    cautious side, and only for a fall: `lower` above `drop` returns `flow`.

    Source: Darcy's law for the bed; bracket derived from [ergun].
    """
    return flow * min(1.0, max(lower, 0.0) / drop)


def flow_through_bed(drop: float, linear: float, quadratic: float) -> float:
    """Flow through a bed and the restrictions in line with it, m³/s.

        Δp = a Q + b Q²,   Q = 2 Δp / (a + √(a² + 4 b Δp))

    drop      -- pressure to spend, Pa: gauge before the bed less lift and gauge after
    linear    -- a, Pa per (m³/s): grows as the bed fouls
    quadratic -- b, Pa per (m³/s)²: valves, caps, fittings; 1/C² each

    This form loses no digits when either term is small.
    Source: [ergun], whose two terms these are.
    """
    if drop <= 0:
        return 0.0
    return 2 * drop / (linear + sqrt(linear**2 + 4 * quadratic * drop))


def orifice_coefficient(bore: float, discharge: float, density: float) -> float:
    """Flow coefficient of a round hole in a plate, m³/s per √Pa.

        C = Cd (pi d² / 4) √(2 / rho)

    bore      -- of the hole, m, small against the pipe: at half of it 3 % more flows
    discharge -- Cd: 0.61 for a sharp edge, 0.82 for a hole a few bores long; a burr or a
                 rounded edge moves it by a tenth
    density   -- kg/m³

    A sharp quarter-inch hole at 40 psi:

    >>> from calc.units import gpm, inch, psi
    >>> round(flow_through(orifice_coefficient(0.25 * inch, 0.61, 999.1), 40 * psi) / gpm, 2)
    7.19

    Source: Bernoulli's and Torricelli's law; Cd from memory of any handbook.
    """
    return discharge * pi * bore**2 / 4 * sqrt(2 / density)


def orifice_bore(coefficient: float, discharge: float, density: float) -> float:
    """Bore of the round hole that has a flow coefficient, m.

        d = √(4 C / (pi Cd) √(rho / 2))

    Source: `orifice_coefficient`, backwards.
    """
    return sqrt(coefficient / orifice_coefficient(1.0, discharge, density))


def flow_of_compensating(
    flow: float, drop: float, other: float, threshold: float, exponent: float
) -> float:
    """Flow of a pressure-compensating device at another pressure drop, m³/s.

        Q = q √(min(Δp, pt) / pt) max(1, Δp / pt)^x    with the q that fits what was measured

    flow      -- measured, m³/s
    drop      -- across the device while measured, Pa
    other     -- across it now, Pa
    threshold -- pt, drop from which it compensates, Pa: below it is a plain hole
    exponent  -- x while it compensates: 0 is perfect, 0.5 a plain hole

    >>> round(flow_of_compensating(5.0, 30, 60, 15, 0.1), 2)
    5.36

    Source: flow as a power of pressure, as [karmeli-1977] sorts irrigation emitters.
    """

    def share(at: float) -> float:
        above: float = max(1.0, at / threshold) ** exponent
        return sqrt(min(max(at, 0.0), threshold) / threshold) * above

    return flow * share(other) / share(drop)
