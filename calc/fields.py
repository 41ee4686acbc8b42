"""Inputs that more than one calculator asks for, declared once.

The worked case is invented: the Quarry Road house at Alder Ledge.
"""

from calc.model import Choice, Input
from calc.units import (
    L,
    day,
    flow,
    ft,
    ftH2O,
    gal,
    gauge_pressure,
    gpm,
    inch,
    length,
    mg,
    mm,
    number,
    psi,
    temperature,
    volume,
)
from calc.units import hardness as hardness_kind

INVENTED = "invented example, Quarry Road house"
WATER_COLUMN = ftH2O / ft  # pressure under each metre of water, Pa/m
USUAL_SWITCH = "common practice, no source: a 30/50 psi switch"

INLET = "Flow in"
OUTLET = "Flow out"
OPEN_TANK = "Open tank"
HOUSE_TANK = "House pressure tank"
AERATOR = "Aerator"
CHEMISTRY = "Chemistry of the water"
BED = "Filter tank and bed"

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
water_temperature = Input(
    name="water_temperature",
    label="Temperature of the water",
    symbol="T",
    kind=temperature,
    default="50 °F",
    origin=INVENTED,
    low=274.15,
    high=308.15,
    measure="Thermometer in running raw water. Take the coldest month: cold water holds on to "
    "more radon.",
    group=AERATOR,
    sure="2 °F",
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
alkalinity = Input(
    name="alkalinity",
    label="Alkalinity of the water",
    symbol="A_k",
    kind=hardness_kind,
    default="40 mg/L as CaCO3",
    origin=INVENTED,
    low=2 * mg / L,
    high=500 * mg / L,
    measure="Drop test at the tap or the laboratory's sheet. Aeration does not change it, a "
    "neutralizer does: take it from the water that enters the aerator.",
    group=CHEMISTRY,
    sure="10 %",
)
hardness = Input(
    name="hardness",
    label="Hardness of the water",
    symbol="H_d",
    kind=hardness_kind,
    default="45 mg/L as CaCO3",
    origin=INVENTED,
    low=1 * mg / L,
    high=1000 * mg / L,
    measure="Drop test or the laboratory's sheet, of the water that enters the aerator. All of it "
    "is taken as calcium, which puts scale on the safe side.",
    group=CHEMISTRY,
    sure="10 %",
)
target_ph = Input(
    name="target_ph",
    label="pH wanted in the house",
    symbol="pH_g",
    kind=number,
    default="7.2",
    origin="common practice, no source: 7.2 to 8.0 where pipes are copper",
    low=6.5,
    high=8.5,
    measure="You decide. 7.0 is not enough: it is where meters and waters wander from.",
    group=CHEMISTRY,
)
tank_diameter = Input(
    name="tank_diameter",
    label="Inside diameter of the filter tank",
    symbol="D_f",
    kind=length,
    default="12 in",
    origin=INVENTED,
    low=4 * inch,
    high=60 * inch,
    us="in",
    si="cm",
    measure="From the label, or tape around the tank divided by 3.14, less half an inch of wall.",
    group=BED,
    sure="0.25 in",
)
bed_depth = Input(
    name="bed_depth",
    label="Depth of the bed",
    symbol="L_b",
    kind=length,
    default="36 in",
    origin=INVENTED,
    low=6 * inch,
    high=96 * inch,
    us="in",
    si="cm",
    measure="Rod or torch through the fill port, pressure relieved: top of the bed down to the "
    "gravel. A neutralizer's bed shrinks, so measure it each time.",
    group=BED,
    sure="1 in",
)
grain_size = Input(
    name="grain_size",
    label="Size of the grains",
    symbol="d",
    kind=length,
    default="0.7 mm",
    origin="common practice, no source: calcite of 0.4 to 1.2 mm",
    low=0.1 * mm,
    high=4 * mm,
    us="mm",
    si="mm",
    measure="From the bag: the size that half of it is finer than. Old calcite has shrunk.",
    group=BED,
    sure="20 %",
)
service_flow = flow_input(
    "service_flow",
    "Largest flow through the filter",
    "Q_f",
    "5.6 gpm",
    "Pail behind the filter, everything open that is ever open at once. Before an open tank it "
    "is the inlet, float wide open, at cut-out.",
    BED,
)
