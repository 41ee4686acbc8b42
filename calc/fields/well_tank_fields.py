"""The well's pressure tank and its switch, as inputs."""

from calc.fields import INLET, INVENTED, SWITCH
from calc.model import Input
from calc.units import (
    gal,
    gauge_pressure,
    psi,
    volume,
)

well_cut_in = Input(
    name="well_cut_in",
    label="The well pump starts at (cut-in)",
    symbol="p_c",
    kind=gauge_pressure,
    default="40 psi",
    origin="common practice, no source: a 40/60 psi switch",
    low=1 * psi,
    high=100 * psi,
    measure="Read the gauge at the click, with water running. If the pump cannot keep "
    "up, give the lowest reading you saw.",
    group=INLET,
    sure="2 psi",
)
well_cut_out = Input(
    name="well_cut_out",
    label="The well pump stops at (cut-out)",
    symbol="p_o",
    kind=gauge_pressure,
    default="60 psi",
    origin="common practice, no source: a 40/60 psi switch",
    low=2 * psi,
    high=150 * psi,
    measure="Close the inlet and read the gauge when the pump stops.",
    group=INLET,
    sure="2 psi",
)
well_tank = Input(
    name="well_tank",
    label="Size of the well's pressure tank",
    symbol="V_1",
    kind=volume,
    default="20 gal",
    origin=INVENTED,
    low=1 * gal,
    high=500 * gal,
    measure="From the label: the whole volume, not the drawdown.",
    group="Well side",
)
well_precharge = Input(
    name="well_precharge",
    label="Pre-charge of the well's pressure tank",
    symbol="P_1",
    kind=gauge_pressure,
    default="38 psi",
    origin="common practice, no source: 2 psi under cut-in",
    low=0,
    high=100 * psi,
    measure="Tire gauge on the air valve, pump off at the panel, a tap open until the tank "
    "is empty. With water in it the gauge shows the water's pressure. 0 for a tank "
    "without charge.",
    group=SWITCH,
    sure="1 psi",
)
well_drawdown = Input(
    name="well_drawdown",
    label="Drawdown of the well's pressure tank, cut-out to cut-in",
    symbol="dV_1",
    kind=volume,
    default="5.4 gal",
    origin=INVENTED,
    low=0.5 * gal,
    high=100 * gal,
    measure="Pump 1 off at the panel, tank at cut-out: catch what comes until its gauge "
    "stands at cut-in.",
    group="Well side",
)
