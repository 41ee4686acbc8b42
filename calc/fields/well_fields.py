"""Inputs of the well and of the peak that it must carry, declared once, and what they make.

The worked case is invented: the Quarry Road house at Alder Ledge. Depths are counted from the top
of the casing.
"""

from collections.abc import Sequence
from itertools import pairwise

from calc.errors import Refused
from calc.fields import INVENTED
from calc.model import Input
from calc.physics.well import Well, open_area
from calc.units import (
    duration,
    ft,
    gal,
    gpm,
    hour,
    inch,
    length,
    minute,
    specific_capacity,
    volume,
)

WELL = "Well"
PEAK = "Peak"
TEST = "Test"

casing_bore = Input(
    name="casing_bore",
    label="Inside diameter of the casing or rock hole",
    symbol="D_c",
    kind=length,
    us="in",
    si="mm",
    default="6 in",
    origin="invented example; the commonest drilled well, common practice, no source",
    low=1.5 * inch,
    high=144 * inch,
    measure="Where the water stands. A tape across the open casing; 6-inch steel pipe is 6.07 in, "
    "an open rock hole under it often 6 1/4.",
    group=WELL,
    sure="0.1 in",
)
drop_pipe = Input(
    name="drop_pipe",
    label="Outside diameter of the drop pipe",
    symbol="D_p",
    kind=length,
    us="in",
    si="mm",
    default="1.315 in",
    origin="invented example: 1-inch pipe of iron-pipe size",
    low=0.0,
    high=1 * ft,
    measure="Of the pipe that the pump hangs on, where the water stands: it takes its room from "
    "the casing. 0 where none is in the well.",
    group=WELL,
)
static_level = Input(
    name="static_level",
    label="Depth of the static water level",
    symbol="h_s",
    kind=length,
    us="ft",
    si="m",
    default="30 ft",
    origin=INVENTED,
    low=0.0,
    high=1500 * ft,
    measure="Clean tape or sounder, after a night without drawing water. Take a dry season's: in a "
    "drought it is lower.",
    group=WELL,
    sure="1 ft",
)
pump_depth = Input(
    name="pump_depth",
    label="Depth of the well pump's intake",
    symbol="h_p",
    kind=length,
    us="ft",
    si="m",
    default="140 ft",
    origin=INVENTED,
    low=5 * ft,
    high=2000 * ft,
    measure="From the driller's or installer's record: length of drop pipe. Not the depth of the "
    "well.",
    group=WELL,
    sure="2 ft",
)
pump_cover = Input(
    name="pump_cover",
    label="Water to keep over the intake",
    symbol="h_k",
    kind=length,
    us="ft",
    si="m",
    default="10 ft",
    origin="common practice, no source: 5 to 20 ft",
    low=0.0,
    high=200 * ft,
    measure="What the pump's maker asks for, and a margin for a bad year.",
    group=WELL,
)
well_inflow = Input(
    name="well_inflow",
    label="Inflow for each foot or metre of drawdown",
    symbol="C",
    kind=specific_capacity,
    default="0.02 gpm/ft",
    origin=INVENTED,
    low=1e-4 * gpm / ft,
    high=20 * gpm / ft,
    measure="From a recovery test, on the page of what the well gives. Or flow over drawdown after "
    "hours of steady pumping. A driller's blow test overstates it.",
    group=WELL,
    sure="20 %",
)
fracture_depth = Input(
    name="fracture_depth",
    label="Depth of the fracture that feeds it",
    symbol="h_f",
    kind=length,
    us="ft",
    si="m",
    default="140 ft",
    origin="invented example: as deep as the pump, so that it does not matter",
    low=1 * ft,
    high=3000 * ft,
    measure="From the driller's log. Once the level is under it the inflow grows no further. Not "
    "known: give the pump's depth.",
    group=WELL,
)
peak_time = Input(
    name="peak_time",
    label="Length of the peak",
    symbol="t_p",
    kind=duration,
    us="min",
    si="min",
    default="60 min",
    origin=INVENTED,
    low=5 * minute,
    high=12 * hour,
    measure="The morning, or the laundry. Two hours for a whole day's water is a strict test.",
    group=PEAK,
)
peak_use = Input(
    name="peak_use",
    label="Water used in the peak",
    symbol="V_p",
    kind=volume,
    default="110 gal",
    origin="invented example: three fills of the washer and two showers",
    low=1 * gal,
    high=5000 * gal,
    measure="Meter before and after the heaviest hour of a wash day.",
    group=PEAK,
    sure="10 %",
)
tank_usable = Input(
    name="tank_usable",
    label="Usable water in the storage tank",
    symbol="V_u",
    kind=volume,
    default="150 gal",
    origin=INVENTED,
    low=1 * gal,
    high=1e5 * gal,
    measure="Between the level at which it is full and the low-level cut-out. Less than the "
    "nominal size.",
    group="Storage",
    sure="5 %",
)


def lowest_drawdown(static_level: float, pump_depth: float, pump_cover: float) -> float:
    """Drawdown at which the water over the pump is only what is to be kept, m. Refused where
    there is none."""
    lowest = pump_depth - pump_cover - static_level
    if lowest <= 0:
        says = "leaves nothing between the static level and the water to keep"
        raise Refused("contradiction", "pump_depth", says=says)
    return lowest


def well_of(
    casing_bore: float, static_level: float, well_inflow: float, fracture_depth: float
) -> Well:
    """The well of these inputs. Refused where its fracture lies above the water."""
    fracture = fracture_depth - static_level
    if fracture <= 0:
        says = "must be below the static level of {static_level}"
        raise Refused("contradiction", "fracture_depth", says=says)
    return Well(open_area(casing_bore), well_inflow, fracture)


def refuse_readings(
    kind: str, times: Sequence[float], levels: Sequence[float], static: float
) -> None:
    """Refused where KIND_times and KIND_levels, of a level that was watched, do not fit."""
    if len(times) < 2:
        says = "needs two readings: one makes no line"
        raise Refused("contradiction", f"{kind}_times", says=says)
    if len(times) != len(levels):
        says = "needs one reading for each of the times"
        raise Refused("contradiction", f"{kind}_levels", says=says)
    if any(later <= earlier for earlier, later in pairwise(times)):
        says = "must go on from reading to reading"
        raise Refused("contradiction", f"{kind}_times", says=says)
    if min(levels) <= static:
        says = "must all be deeper than the static level of {static_level}"
        raise Refused("contradiction", f"{kind}_levels", says=says)


def refuse_pipe(drop_pipe: float, casing_bore: float) -> None:
    """Refused where the drop pipe is no thinner than the bore it hangs in."""
    if drop_pipe >= casing_bore:
        raise Refused("contradiction", "drop_pipe", says="does not go into {casing_bore}")
