"""Flow through what holds it back: a valve, a cap, a filter bed."""

from math import sqrt


def flow_coefficient(flow: float, drop: float) -> float:
    """Flow coefficient that passes `flow` at `drop`, m³/s per √Pa.

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
