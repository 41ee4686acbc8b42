"""The well pump: its curve, pipe and motor, as inputs."""

from calc.fields import CURVE, DROP, INVENTED, MOTOR, OUTLET, WELL_PUMP, flow_input
from calc.model import Input
from calc.units import (
    current,
    flow,
    ft,
    gauge_pressure,
    gpm,
    length,
    number,
    psi,
    voltage,
)

rest_level = Input(
    name="rest_level",
    label="Water in the well at rest, below the gauge",
    symbol="h_r",
    kind=length,
    default="30 ft",
    origin=INVENTED,
    low=-100 * ft,
    high=1000 * ft,
    us="ft",
    measure="Sounder, pump off for hours, plus or less the height between well head and gauge. "
    "Below 0 where the water rises above the gauge.",
    group=WELL_PUMP,
    sure="3 ft",
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
drop_length = Input(
    name="drop_length",
    label="Length of the drop pipe",
    symbol="L_d",
    kind=length,
    default="140 ft",
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
