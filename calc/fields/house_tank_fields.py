"""The house pressure tank and its switch, as inputs."""

from calc.fields import HOUSE_TANK, INVENTED, OUTLET, USUAL_SWITCH
from calc.model import Input
from calc.units import (
    gal,
    gauge_pressure,
    psi,
    temperature,
    volume,
)

house_tank = Input(
    name="house_tank",
    label="Size of the house pressure tank",
    symbol="V_t",
    kind=volume,
    default="20 gal",
    origin=INVENTED,
    low=1 * gal,
    high=500 * gal,
    measure="From the label: the whole volume, not the drawdown.",
    group=HOUSE_TANK,
    sure="5 %",
)
precharge = Input(
    name="precharge",
    label="Its pre-charge",
    symbol="P_p",
    kind=gauge_pressure,
    default="28 psi",
    origin="common practice, no source: 2 psi under cut-in",
    low=0,
    high=100 * psi,
    measure="Tire gauge on the air valve, pump 2 off at the panel, a tap open until the tank "
    "is empty. With water in it the gauge shows the water's pressure.",
    group=HOUSE_TANK,
    sure="1 psi",
)
cut_in = Input(
    name="cut_in",
    label="Pump 2 starts at (cut-in)",
    symbol="P_i",
    kind=gauge_pressure,
    default="30 psi",
    origin=USUAL_SWITCH,
    low=5 * psi,
    high=100 * psi,
    measure="Open a tap a little and read the house gauge at the click. Switches drift: read "
    "it, do not copy the label.",
    group=HOUSE_TANK,
    sure="2 psi",
)
cut_out = Input(
    name="cut_out",
    label="Pump 2 stops at (cut-out)",
    symbol="P_o",
    kind=gauge_pressure,
    default="50 psi",
    origin=USUAL_SWITCH,
    low=10 * psi,
    high=150 * psi,
    measure="Close the tap and read the house gauge when pump 2 stops.",
    group=HOUSE_TANK,
    sure="2 psi",
)
water_now = Input(
    name="water_now",
    label="Temperature of the water today",
    symbol="T_n",
    kind=temperature,
    default="52 °F",
    origin=INVENTED,
    low=temperature.unit("°C").into_si(0.1),
    high=temperature.unit("°C").into_si(40),
    measure="Thermometer in the pail, after the water has run for a few minutes.",
    group="Water",
    sure="1 °F",
)
house_gauge = Input(
    name="house_gauge",
    label="House gauge while you measured",
    symbol="p_t",
    kind=gauge_pressure,
    default="4 psi",
    origin=INVENTED,
    low=0.5 * psi,
    high=150 * psi,
    measure="Steady reading during the fill. With the limit before the pressure tank it "
    "should be near zero.",
    group=OUTLET,
    sure="2 psi",
)
house_drawdown = Input(
    name="house_drawdown",
    label="Drawdown of the house pressure tank, cut-out to cut-in",
    symbol="dV_h",
    kind=volume,
    default="5.9 gal",
    origin=INVENTED,
    low=0.5 * gal,
    high=100 * gal,
    measure="Pump 2 off at the panel, tank at cut-out: catch what comes until the gauge stands "
    "at cut-in. Or from its size and pressures, on the page of the open tank.",
    group=HOUSE_TANK,
    sure="5 %",
)
