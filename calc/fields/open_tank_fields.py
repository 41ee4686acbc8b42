"""The open tank: its floats, limits, flows and draws, as inputs."""

from calc.fields import INLET, INVENTED, OPEN_TANK, OUTLET, flow_input
from calc.model import Choice, Input
from calc.units import (
    day,
    flow,
    ft,
    gal,
    length,
    volume,
)

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
