"""Inputs that more than one calculator asks for, declared once.

The worked case is invented: the Quarry Road house at Alder Ledge.
"""

from calc.model import Choice, Input
from calc.units import (
    L,
    air_flow,
    air_share,
    cfm,
    concentration,
    current,
    day,
    flow,
    ft,
    gal,
    gauge_pressure,
    gpm,
    hour,
    inch,
    length,
    mg,
    mm,
    number,
    pCi,
    percent,
    psi,
    radon,
    rate,
    share,
    temperature,
    voltage,
    volume,
)
from calc.units import hardness as hardness_kind
from calc.units import (
    nitrate as nitrate_kind,
)

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
RADON = "Radon"
CARBON = "Carbon"
AERATOR = "Aerator"
BUBBLES = "Bubbles"
CHEMISTRY = "Chemistry of the water"
BED = "Filter tank and bed"
SHEET = "The laboratory's sheet"

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


raw_radon = Input(
    name="raw_radon",
    label="Radon in the raw water",
    symbol="C_r",
    kind=radon,
    default="20000 pCi/L",
    origin=INVENTED,
    low=100 * pCi / L,
    high=5e6 * pCi / L,
    measure="Laboratory, drawn before the aerator without a bubble and brought back to the hour "
    "of the draw. Take the highest of several: a bedrock well swings by tens of percent.",
    group=RADON,
    sure="20 %",
)
target_radon = Input(
    name="target_radon",
    label="Radon that may be left in the water",
    symbol="C_t",
    kind=radon,
    default="300 pCi/L",
    origin="invented choice. 300 pCi/L was proposed for public supplies in 1999 and never made "
    "final [epa-1999-proposal]; it is no limit for a private well",
    low=10 * pCi / L,
    high=1e5 * pCi / L,
    measure="Your state's advice, with its date, or the radon in the house's air that you accept.",
    group=RADON,
)
treated_radon = Input(
    name="treated_radon",
    label="Radon in the treated water",
    symbol="C_w",
    kind=radon,
    default="180 pCi/L",
    origin=INVENTED,
    low=0.1 * pCi / L,
    high=5e6 * pCi / L,
    measure="Laboratory, drawn after the treatment within the hour of the raw sample, with the "
    "largest flow running, brought back to the hour of the draw.",
    group=RADON,
    sure="40 pCi/L",
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
treated_ph = Input(
    name="treated_ph",
    label="pH of the water that leaves the aerator",
    symbol="pH_t",
    kind=number,
    default="7.6",
    origin=INVENTED,
    low=5.0,
    high=9.0,
    measure="Meter set with two buffers, in water just drawn behind the aerator and before any "
    "neutralizer, at the largest flow. Test strips are too coarse.",
    group=CHEMISTRY,
    sure="0.1",
)
house_volume = Input(
    name="house_volume",
    label="Air in the house",
    symbol="V_h",
    kind=volume,
    us="ft³",
    si="m³",
    default="14400 ft³",
    origin="invented example: 1800 square feet, 8 feet high",
    low=1000 * ft**3,
    high=200000 * ft**3,
    measure="Floor area times height of all rooms whose doors stand open most of the day. A "
    "basement counts if its door does.",
    group="House",
    sure="10 %",
)
air_change = Input(
    name="air_change",
    label="Air changes of the house",
    symbol="l_a",
    kind=rate,
    default="0.5 per h",
    origin=INVENTED,
    low=0.05 / hour,
    high=5 / hour,
    measure="Outdoor air for each volume of the house in an hour, over the year. A tight house has "
    "0.2 to 0.35, an old one 1 and more (common practice, no source). A blower-door figure is "
    "taken at 50 Pa and is no air change of every day.",
    group="House",
)
air_radon = Input(
    name="air_radon",
    label="Radon in the air that the blower takes",
    symbol="C_a",
    kind=radon,
    default="4 pCi/L",
    origin="the level at which US EPA advises to fix a house's air [epa-radon-2016]",
    low=0,
    high=1000 * pCi / L,
    measure="A test of the air at the blower's intake, with the aerator running. A crawl space, or "
    "a basement into which the unit itself leaks, may hold a hundred times this.",
    group=RADON,
)
aerator_flow = flow_input(
    "aerator_flow",
    "Largest flow of water through the aerator",
    "Q_a",
    "5.6 gpm",
    "Pail at the aerator's inlet, float wide open, filter clean, well pump at cut-out. Here the "
    "largest flow is the worst.",
    AERATOR,
)
aerator_air = Input(
    name="aerator_air",
    label="Air through the aerator",
    symbol="G",
    kind=air_flow,
    default="12 cfm",
    origin=INVENTED,
    low=0.1 * cfm,
    high=500 * cfm,
    measure="With a flow hood or a pitot tube in the vent, lid and water in place. The blower's "
    "label is for free air: under water and through a vent it gives less.",
    group=AERATOR,
    sure="10 %",
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
air_co2 = Input(
    name="air_co2",
    label="Carbon dioxide in the blower's air",
    kind=air_share,
    default="800 ppm",
    origin="a lived-in house; outdoors about 420, from memory",
    low=300e-6,
    high=0.02,
    measure="A meter at the blower's intake. A burner or many people raise it, and it "
    "sets the highest pH that air can reach.",
    group=AERATOR,
    sure="200 ppm",
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
well_yield = flow_input(
    "well_yield",
    "Yield of the well",
    "Q_y",
    "5 gpm",
    "What it gives for hours at the lowest level, from a pumping test. The driller's figure is a "
    "short one, and too high.",
    "Well side",
    sure="20 %",
)
solids = Input(
    name="solids",
    label="Dissolved solids",
    symbol="s",
    kind=concentration,
    default="88 mg/L",
    origin=INVENTED,
    low=10 * MG_L,
    high=3000 * MG_L,
    measure="The laboratory's sheet (TDS), dried and weighed. A pocket meter shows conductivity "
    "times a guess: near enough for chalk, no test of the sheet.",
    group=CHEMISTRY,
    sure="20 %",
)
lab_ph = Input(
    name="lab_ph",
    label="pH on the laboratory's sheet",
    symbol="pH_l",
    kind=number,
    default="6.9",
    origin=INVENTED,
    low=3.0,
    high=11.0,
    measure="From the sheet. The bottle has lost gas on its way: well water reads too high there, "
    "often by half a unit and more.",
    group=SHEET,
    sure="0.1",
)
nitrate = Input(
    name="nitrate",
    label="Nitrate",
    symbol="C_N",
    kind=nitrate_kind,
    default="0.6 mg/L as N",
    origin=INVENTED,
    low=0,
    high=500 * MG_L,
    measure="See whether the sheet means nitrogen (nitrate-N) or nitrate (NO3): the second figure "
    "is 4.43 times the first. Less than the laboratory can see counts as 0.",
    group=SHEET,
    sure="10 %",
)


def on_sheet(
    name: str, label: str, symbol: str, default: str, measure: str, high: float, sure: str = "10 %"
) -> Input:
    """A concentration on a laboratory's sheet; 0 is for what it could not find."""
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=concentration,
        default=default,
        origin=INVENTED,
        low=0,
        high=high,
        us="µg/L" if "µg" in default else "",
        si="µg/L" if "µg" in default else "",
        measure=measure,
        group=SHEET,
        sure=sure,
    )


total_iron = on_sheet(
    "total_iron",
    "Iron, dissolved and rust together",
    "C_Fe",
    "0.8 mg/L",
    "Unfiltered sample. Rust settles in the bottle: shake it before you pour.",
    100 * MG_L,
)
manganese = on_sheet(
    "manganese",
    "Manganese",
    "C_Mn",
    "0.09 mg/L",
    "Unfiltered sample, from the well and not from behind a softener.",
    50 * MG_L,
)
sodium = on_sheet(
    "sodium",
    "Sodium",
    "C_Na",
    "9 mg/L",
    "Raw water. Behind a softener it is the softener that you measure.",
    5000 * MG_L,
    sure="5 %",
)
bubble_depth = Input(
    name="bubble_depth",
    label="Water over the point where the bubbles start",
    symbol="z_b",
    kind=length,
    default="18 in",
    origin=INVENTED,
    low=0.5 * inch,
    high=120 * inch,
    us="in",
    si="cm",
    measure="From the lowest running water level down to the stone or the holes.",
    group=BUBBLES,
    sure="1 in",
)
bubble_size = Input(
    name="bubble_size",
    label="Diameter of the bubbles",
    symbol="d_b",
    kind=length,
    default="3 mm",
    origin="common size over a fine stone, from memory",
    low=1 * mm,
    high=20 * mm,
    us="mm",
    si="mm",
    measure="Never through an open lid indoors. Photograph the stone in a pail of clean water "
    "outdoors, a ruler beside it. Open pipes and torn diffusers make 10 mm and more.",
    group=BUBBLES,
    sure="1 mm",
)
bubble_share = Input(
    name="bubble_share",
    label="Transfer through the bubble's skin, against a clean one",
    symbol="c_b",
    kind=share,
    default="40 %",
    origin="dirt slows the transfer two to three times, from memory; six times, by "
    "Frössling's equation, where the skin is quite stiff [alves-2005]",
    low=10 * percent,
    high=100 * percent,
    measure="100 % only in very clean water, about 15 % when dirt has made the skin stiff. "
    "A pair of samples before and after tells yours: work backwards from it.",
    group=BUBBLES,
    sure="20 %",
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
motor_volts = Input(
    name="motor_volts",
    label="Voltage on the motor's nameplate",
    symbol="U_n",
    kind=voltage,
    default="230 V",
    origin=INVENTED,
    low=100,
    high=600,
    measure="From the nameplate or the control box, not from the panel.",
    group=MOTOR,
)
running_current = Input(
    name="running_current",
    label="Current of the motor under full load",
    symbol="I",
    kind=current,
    default="8 A",
    origin="1 hp at 230 V in the code's table [nfpa-70-430-248]",
    low=0.5,
    high=100,
    measure="From the nameplate: the service-factor amps if it gives them. Submersible motors take "
    "more than the code's table for motors on a bench.",
    group=MOTOR,
)
locked_current = Input(
    name="locked_current",
    label="Current at the moment it starts (locked rotor)",
    symbol="I_l",
    kind=current,
    default="39.1 A",
    origin="1 hp, code letter K, 230 V: from the page on generators",
    low=1,
    high=800,
    measure="From the motor's sheet, or from its code letter on the page on generators. Three to "
    "six times the running current.",
    group=MOTOR,
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
tank_water = Input(
    name="tank_water",
    label="Water in the tank",
    symbol="V_w",
    kind=volume,
    default="40 gal",
    origin=INVENTED,
    low=1 * gal,
    high=5000 * gal,
    measure="All of it, under the intake too.",
    group=OPEN_TANK,
    sure="5 %",
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
MOST_STAGES = 8
aerator = Choice(
    name="aerator",
    label="Kind of aerator",
    options={
        "basins": "bubbles in one or more mixed basins, each with its own air",
        "trays": "trays above each other, the same air rising through all",
        "crossed": "one long tray that the water crosses, fresh air rising all along",
    },
    default="basins",
    origin=INVENTED,
    measure="Follow the air: does each part of the water meet fresh air, or air that has "
    "been through water before? And does the water mix, or run along a path?",
    group=AERATOR,
)
aerator_stages = Choice(
    name="aerator_stages",
    label="Basins or trays that the water passes, one after the other",
    options={str(n): str(n) for n in range(1, MOST_STAGES + 1)},
    default="3",
    origin=INVENTED,
    measure="Count compartments with a wall between them and bubbles of their own. Two "
    "stones in one open tank are one basin. A crossed tray needs no count.",
    group=AERATOR,
)
