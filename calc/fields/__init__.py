"""Inputs that more than one calculator asks for, declared once: a module for each thing.

Here are the names of their groups and what several of the modules use. The worked case is invented:
the Quarry Road house at Alder Ledge.
"""

from calc.model import Input
from calc.units import L, flow, gpm, mg

INVENTED = "invented example, Quarry Road house"
MG_L = mg / L
USUAL_SWITCH = "common practice, no source: a 30/50 psi switch"
INLET = "Flow in"
OUTLET = "Flow out"
OPEN_TANK = "Open tank"
HOUSE_TANK = "House pressure tank"
DROP = "Pipe to the pressure tank"
MOTOR = "Motor"
WELL_PUMP = "Well pump"
CURVE = "Pump curve"
SWITCH = "Pressure switch"
RADON = "Radon"
CARBON = "Carbon"
AERATOR = "Aerator"
BUBBLES = "Bubbles"
CHEMISTRY = "Chemistry of the water"
BED = "Filter tank and bed"
SHEET = "The laboratory's sheet"


def flow_input(
    name: str,
    label: str,
    symbol: str,
    default: str,
    measure: str,
    group: str,
    sure: str = "3 %",
    once: bool = True,
) -> Input:
    """A flow of the size that house plumbing carries. Three pails give it within 3 %."""
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=flow,
        default=default,
        origin=INVENTED,
        low=0.1 * gpm,
        high=100 * gpm,
        measure=measure,
        group=group,
        sure=sure,
        once=once,
    )
