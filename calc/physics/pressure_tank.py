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
