"""A tank with a bed in it, as inputs."""

from calc.fields import BED, INVENTED, flow_input
from calc.model import Input
from calc.units import (
    inch,
    length,
    mm,
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
