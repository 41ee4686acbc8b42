"""The pre-charged pressure tank: how much water it gives between two pressures."""

from calc.units import atm


def drawdown(
    size: float, precharge: float, cut_in: float, cut_out: float, air: float = atm
) -> float:
    """Water a pressure tank gives while it falls from cut-out to cut-in, m³.

        dV = V (Pp + Pa) [1 / (Pi + Pa) - 1 / (Po + Pa)]

    size      -- whole volume of the tank, m³; the label gives it, not the shell
    precharge -- air pressure with the tank empty of water, gauge Pa; measured with
                 the pump off and a tap open, or it reads the water's pressure
    cut_in    -- gauge pressure at which the pump starts, Pa
    cut_out   -- gauge pressure at which the pump stops, Pa
    air       -- pressure of the air around it, absolute Pa; lower up a mountain

    Boyle's law at constant temperature: a fast refill warms the air and gives a little
    less. Below its pre-charge the tank is empty, so a pre-charge above cut-in leaves
    only what lies between cut-out and pre-charge.

    A 20 gal tank on a 30/50 psi switch gives about 6 gal:

    >>> from calc.units import gal, psi
    >>> round(drawdown(20 * gal, 28 * psi, 30 * psi, 50 * psi) / gal, 2)
    5.91

    Source: Boyle's law; [pelikan-2006] prints the same form and an example.
    """
    empty = max(cut_in, precharge)
    return max(0.0, size * (precharge + air) * (1 / (empty + air) - 1 / (cut_out + air)))


def residual(size: float, precharge: float, cut_in: float, air: float = atm) -> float:
    """Water a pressure tank still gives below cut-in, until its air has pushed all out, m³.

        V [1 - (Pp + Pa) / (Pi + Pa)]

    Parameters as in `drawdown`. A tank set 2 psi under cut-in keeps little:

    >>> from calc.units import gal, psi
    >>> round(residual(20 * gal, 28 * psi, 30 * psi) / gal, 3)
    0.895

    Source: Boyle's law.
    """
    return max(0.0, size * (1 - (precharge + air) / (cut_in + air)))


def acceptance(precharge: float, cut_out: float, air: float = atm) -> float:
    """Share of the tank that is water at cut-out.

        1 - (Pp + Pa) / (Po + Pa)

    The bladder must stretch to hold so much: the maker's sheet gives its limit. Parameters as
    in `drawdown`.

    >>> from calc.units import psi
    >>> round(acceptance(38 * psi, 60 * psi), 2)
    0.29

    Source: Boyle's law.
    """
    return max(0.0, 1 - (precharge + air) / (cut_out + air))


def drawdown_fast(
    size: float, precharge: float, cut_in: float, cut_out: float, air: float = atm
) -> float:
    """Least water that a draw gives which is too fast for the air to warm again, m³.

        dV = V (Pp + Pa) / (Po + Pa) [((Po + Pa) / (Pi + Pa))^(1/1.4) - 1]

    The air has the room's temperature at cut-out and takes no heat while it expands. A real
    draw lies between this and `drawdown`; afterwards the gauge creeps up by itself. Parameters
    as in `drawdown`. Below its pre-charge the tank is empty.

    >>> from calc.units import psi
    >>> round(drawdown_fast(1.0, 28 * psi, 30 * psi, 50 * psi), 2)
    0.2

    Source: adiabatic expansion of a gas of two atoms, from memory.
    """
    full = size * (precharge + air) / (cut_out + air)
    cold: float = full * ((cut_out + air) / (cut_in + air)) ** (1 / 1.4)
    return max(0.0, min(size, cold) - full)


def run_time(taken: float, pump: float, draw: float = 0.0) -> float | None:
    """How long the pump runs to fill a drawdown, s; None if it never gets there.

        t = dV / (Qp - Qd)

    taken -- the drawdown, m³
    pump  -- flow that the pump brings, m³/s
    draw  -- flow that is drawn meanwhile, m³/s

    Source: conservation of water.
    """
    return taken / (pump - draw) if draw < pump else None


def shortest_cycle(taken: float, pump: float) -> float:
    """Time from start to start at the draw that starts the pump most often, s.

        t = dV Qp / (Qd (Qp - Qd)), least at Qd = Qp / 2:   t = 4 dV / Qp

    >>> from calc.units import day, gal, gpm
    >>> round(day / shortest_cycle(10 * gal, 10 * gpm))
    360

    Source: conservation of water.
    """
    return 4 * taken / pump
