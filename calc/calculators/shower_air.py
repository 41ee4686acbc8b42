"""Radon in the air of a closed bathroom while a shower runs, and after."""

from math import exp, log

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.fields import INVENTED, radon_fields
from calc.levels import FIX_AIR
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.decay import RADON, decay_constant
from calc.physics.house_air import room_air
from calc.units import (
    duration,
    flow,
    ft,
    gpm,
    hour,
    minute,
    number,
    percent,
    radon,
    rate,
    share,
    volume,
)

AFTER = 2 * hour  # how long the chart goes on
POINTS = 24
BATHROOM, SHOWER = "Bathroom", "Shower"


def shower_air(
    raw_radon: float,
    shower_flow: float,
    shower_time: float,
    shower_release: float,
    bath_volume: float,
    bath_air_change: float,
) -> Answer:
    """Peak in the room when the shower ends, and how it clears."""
    loss = bath_air_change + decay_constant(RADON)

    def at(time: float) -> float:
        running = room_air(
            raw_radon,
            shower_flow,
            shower_release,
            bath_volume,
            bath_air_change,
            min(time, shower_time),
        )
        return running * exp(-loss * max(time - shower_time, 0.0))

    peak = at(shower_time)
    times = sorted({shower_time, *(i * (shower_time + AFTER) / POINTS for i in range(POINTS + 1))})
    released = raw_radon * shower_flow * shower_time * shower_release
    given = {
        "k": Quantity(decay_constant(RADON), rate, label="decay of radon"),
    }
    return Answer(
        outputs={
            "peak_air": peak,
            "sealed_air": released / bath_volume,
            "room_dilution": raw_radon / peak,
            "half_cleared": _HALF / loss,
        },
        findings=(
            _headline(peak > FIX_AIR),
            Finding(
                "caution",
                "No cure for it.",
                "A fan that runs during and after the shower lowers it in this room. It can draw "
                "more radon out of the ground, and it does nothing for kitchen and laundry.",
            ),
        ),
        steps=(
            Step(
                "All that came out, in the room's air", "C_z = C_r * q_s * t_s * e_s / V_b", given
            ),
            Step("Half of it gone after", "t_h = c / (l_b + k)", {**given, "c": _LN2}),
        ),
        charts=(
            Chart(
                title="Radon in the bathroom's air",
                says="It rises while the shower runs and falls off afterwards.",
                x=Axis("Time since the water was turned on", _HALF_CLEARED),
                y=Axis("Radon in the room's air", _PEAK),
                lines=(Line("bathroom", tuple((time, at(time)) for time in times)),),
                limits=(Limit("US EPA: fix (mean of a year)", FIX_AIR),),
                marks=(Mark("shower ends", shower_time, peak, here=True),),
            ),
        ),
    )


def _headline(over: bool) -> Finding:
    text = (
        "When the shower ends the room's air holds {peak_air}; half of that is gone {half_cleared} "
        "later. Levels for air are for a year at home, not for one hour."
    )
    if over:
        return Finding("caution", "High for an hour.", text)
    return Finding("good", "Low even there.", text)


_HALF = log(2)
_LN2 = Quantity(_HALF, number, 4, "natural logarithm of 2")
_PEAK = Output(
    name="peak_air", label="Radon in the room when the shower ends", kind=radon, si="Bq/m³"
)
_HALF_CLEARED = Output(
    name="half_cleared", label="Half of it gone after", symbol="t_h", kind=duration
)
CALCULATOR = Calculator(
    name="shower_air",
    title="Radon in the bathroom",
    question="How much radon is in the bathroom's air after a shower?",
    inputs=(
        radon_fields.raw_radon,
        Input(
            name="shower_flow",
            label="Flow of the shower",
            symbol="q_s",
            kind=flow,
            default="2 gpm",
            origin=INVENTED,
            low=0.3 * gpm,
            high=10 * gpm,
            measure="Pail under the shower head, half a minute.",
            group=SHOWER,
            sure="5 %",
        ),
        Input(
            name="shower_time",
            label="How long it runs",
            symbol="t_s",
            kind=duration,
            default="10 min",
            origin=INVENTED,
            low=1 * minute,
            high=2 * hour,
            measure="All showers taken one after the other.",
            group=SHOWER,
        ),
        Input(
            name="shower_release",
            label="Share of its radon that the shower gives off",
            symbol="e_s",
            kind=share,
            default="65 %",
            origin="from memory; 92 % measured in one house [bathroom-2014]",
            low=10 * percent,
            high=1,
            measure="Leave it. A fine spray gives off more.",
            group=SHOWER,
            sure="20 %",
        ),
        Input(
            name="bath_volume",
            label="Air in the bathroom",
            symbol="V_b",
            kind=volume,
            us="ft³",
            si="m³",
            default="400 ft³",
            origin="invented example: 50 square feet, 8 feet high",
            low=100 * ft**3,
            high=5000 * ft**3,
            measure="Tape measure, door shut.",
            group=BATHROOM,
            sure="5 %",
        ),
        Input(
            name="bath_air_change",
            label="Air changes of the bathroom",
            symbol="l_b",
            kind=rate,
            default="1 per h",
            origin=INVENTED,
            low=0.1 / hour,
            high=20 / hour,
            measure="Air the fan moves in an hour over the room's air; without a fan about 0.5 to "
            "1 with the door shut (common practice, no source).",
            group=BATHROOM,
            sure="50 %",
        ),
    ),
    outputs=(
        _PEAK,
        Output(
            name="sealed_air",
            label="If none had left the room",
            symbol="C_z",
            kind=radon,
            si="Bq/m³",
        ),
        Output(
            name="room_dilution",
            label="The water held so many times as much",
            kind=number,
        ),
        _HALF_CLEARED,
    ),
    work=shower_air,
    cautions=(cautions.RADON_HEALTH, cautions.LOCAL_CODE),
    sources=("nrc-1999", "bathroom-2014", "norway-2016", "epa-radon-2016", "icrp-107"),
)
