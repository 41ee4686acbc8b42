"""Inputs that more than one calculator asks for, declared once.

The worked case is invented: the Quarry Road house at Alder Ledge.
"""

from calc.model import Choice, Input
from calc.units import (
    day,
    flow,
    ft,
    ftH2O,
    gal,
    gauge_pressure,
    gpm,
    length,
    number,
    psi,
    temperature,
    volume,
)

INVENTED = "invented example, Quarry Road house"
WATER_COLUMN = ftH2O / ft  # pressure under each metre of water, Pa/m
USUAL_SWITCH = "common practice, no source: a 30/50 psi switch"

INLET = "Flow in"
OUTLET = "Flow out"
OPEN_TANK = "Open tank"
HOUSE_TANK = "House pressure tank"
WELL_PUMP = "Well pump"

limit = Choice(
    name="limit",
    label="Where the outlet limit sits",
    options={
        "before": "between pump 2 and the house pressure tank",
        "after": "after the house pressure tank",
    },
    default="before",
    origin=INVENTED,
    measure="Follow the pipe from pump 2. What matters is which comes first: the throttle or "
    "the pressure tank's tee.",
    group=OUTLET,
)
float_open = Input(
    name="float_open",
    label="Water above the intake when the float opens",
    symbol="V_on",
    kind=volume,
    default="9.5 gal",
    origin=INVENTED,
    low=0.5 * gal,
    high=2000 * gal,
    measure="Draw the tank down slowly with the house closed off, mark the level where the "
    "inlet opens, then count pails down to the first air at the intake. The tank's nominal "
    "size overstates it.",
    group=OPEN_TANK,
    sure="0.5 gal",
)
float_closed = Input(
    name="float_closed",
    label="Water above the intake when the float closes",
    symbol="V_off",
    kind=volume,
    default="11 gal",
    origin=INVENTED,
    low=0.6 * gal,
    high=2500 * gal,
    measure="Mark the level where the inlet shuts off, and count pails down.",
    group=OPEN_TANK,
    sure="0.5 gal",
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
rise = Input(
    name="rise",
    label="Height of the open tank's inlet above the filter's gauge",
    symbol="h",
    kind=length,
    default="6 ft",
    origin=INVENTED,
    low=0,
    high=60 * ft,
    us="ft",
    measure="Tape measure, from the gauge up to the spout.",
    group=INLET,
    sure="0.5 ft",
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


outlet = flow_input(
    "outlet",
    "Flow out, measured today",
    "Q_o",
    "6 gpm",
    "Open a full-size pipe wide, let the pressure tank run empty and pump 2 run steady, "
    "then catch. The first gallons come from the pressure tank, not through pump 2.",
    OUTLET,
)
worst_inlet = flow_input(
    "worst_inlet",
    "Worst flow in",
    "Q_w",
    "4.8 gpm",
    "From the outlet-setting page: lowest pressure, dirtiest filter.",
    INLET,
)
worst_outlet = flow_input(
    "worst_outlet", "Worst flow out", "Q_x", "6 gpm", "From the outlet-setting page.", OUTLET
)
pump = flow_input(
    "pump",
    "Flow of pump 2 with nothing holding it back",
    "Q_p",
    "12 gpm",
    "Its curve at cut-in pressure, or a pail with the limit wide open.",
    OUTLET,
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
draw_flow = flow_input(
    "draw_flow",
    "Flow of the draw",
    "Q_d",
    "6 gpm",
    "What the washer, tub or hose takes with its valve wide open: pail or meter.",
    "The draw",
    sure="10 %",
)
draw_volume = Input(
    name="draw_volume",
    label="Water the draw takes",
    kind=volume,
    default="25 gal",
    origin="invented example: one fill of a top-loading washer",
    low=0.5 * gal,
    high=500 * gal,
    measure="Meter before and after. Laundry is often two or three fills in a row.",
    group="The draw",
    sure="10 %",
)
well_pump = Input(
    name="well_pump",
    label="Flow of pump 1",
    symbol="Q_1",
    kind=flow,
    default="9 gpm",
    origin=INVENTED,
    low=0.1 * gpm,
    high=100 * gpm,
    measure="Drawdown of the well's pressure tank over the time pump 1 takes to fill it, "
    "all taps closed. A well that is low gives less.",
    group="Well side",
)
pump_shut_off = Input(
    name="pump_shut_off",
    label="Gauge that pump 2 reaches against a closed valve",
    symbol="p_0",
    kind=gauge_pressure,
    default="65 psi",
    origin=INVENTED,
    low=10 * psi,
    high=200 * psi,
    measure="From its sheet: head at no flow over 2.31 for psi. Or at a gauge right after "
    "the pump, valve shut for a few seconds only, the relief valve in order.",
    group=OUTLET,
    caution="Seconds only: a pump that runs against a closed valve boils its water.",
    sure="2 psi",
)
well_level = Input(
    name="well_level",
    label="Lowest water in the well below the gauge",
    symbol="h_w",
    kind=length,
    default="120 ft",
    origin=INVENTED,
    low=0,
    high=1000 * ft,
    us="ft",
    measure="Down to the pumping level of a dry season, not the level at rest.",
    group=WELL_PUMP,
    sure="5 ft",
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
daily_use = Input(
    name="daily_use",
    label="Water used in a day",
    symbol="Q_u",
    kind=flow,
    us="gal/day",
    si="L/day",
    default="150 gal/day",
    origin=INVENTED,
    low=1 * gal / day,
    high=1e5 * gal / day,
    measure="Two meter readings a month apart, in the season to come: guests and gardens count.",
    group=OUTLET,
    sure="20 %",
)
water_coldest = Input(
    name="water_coldest",
    label="Coldest that the water gets",
    symbol="T_c",
    kind=temperature,
    default="42 °F",
    origin=INVENTED,
    low=temperature.unit("°C").into_si(0.1),
    high=temperature.unit("°C").into_si(40),
    measure="Thermometer in a pail, late in winter. Deep wells hardly change.",
    group="Water",
    sure="1 °F",
)
DROP = "Pipe to the pressure tank"
CURVE = "Pump curve"
SWITCH = "Pressure switch"
rest_level = Input(
    name="rest_level",
    label="Water in the well at rest, below the gauge",
    symbol="h_r",
    kind=length,
    default="60 ft",
    origin=INVENTED,
    low=-100 * ft,
    high=1000 * ft,
    us="ft",
    measure="Sounder, pump off for hours, plus or less the height between well head and gauge. "
    "Below 0 where the water rises above the gauge.",
    group=WELL_PUMP,
    sure="3 ft",
)
drop_length = Input(
    name="drop_length",
    label="Length of the drop pipe",
    symbol="L_d",
    kind=length,
    default="200 ft",
    origin=INVENTED,
    low=1 * ft,
    high=1500 * ft,
    us="ft",
    measure="From the driller's log or the tag in the well cap: pump to well head.",
    group=DROP,
    sure="5 ft",
)
line_length = Input(
    name="line_length",
    label="Length of the pipe from the well head to the gauge",
    symbol="L_l",
    kind=length,
    default="100 ft",
    origin=INVENTED,
    low=0,
    high=5000 * ft,
    us="ft",
    measure="Tape measure along the trench and the wall.",
    group=DROP,
    sure="5 ft",
)
well_fittings = Input(
    name="well_fittings",
    label="Loss factors K of all fittings between pump and gauge",
    symbol="K_w",
    kind=number,
    default="8",
    origin="invented: two check valves, four elbows, a tee, rounded",
    low=0,
    high=500,
    measure="Each for the bore of the pipe from the well head. In 1 in pipe: check valve 2.3, "
    "elbow 0.7, tee as an elbow 1.4, insert fitting about 1, from memory.",
    group=DROP,
    sure="30 %",
)
curve_flows = Input(
    name="curve_flows",
    label="Three flows from the pump's sheet, the first 0",
    kind=flow,
    default="0 gpm; 8 gpm; 14 gpm",
    origin=INVENTED,
    low=0,
    high=200 * gpm,
    several=3,
    measure="From the curve of this pump, with this number of stages, at the speed you have: no "
    "flow, the middle, near the end. Semicolons between them.",
    group=CURVE,
)
curve_heads = Input(
    name="curve_heads",
    label="The head at each of them",
    kind=length,
    default="300 ft; 225 ft; 90 ft",
    origin=INVENTED,
    low=1 * ft,
    high=2000 * ft,
    us="ft",
    several=3,
    measure="From the same curve. Psi on the sheet times 2.31 is feet.",
    group=CURVE,
)
altitude = Input(
    name="altitude",
    label="Height above sea level",
    symbol="A",
    kind=length,
    default="1200 ft",
    origin=INVENTED,
    low=-1400 * ft,
    high=15000 * ft,
    us="ft",
    measure="From a map or a phone, to a hundred feet.",
    group="Place",
    sure="100 ft",
)
