"""Radon in a vial from two counting rates, what the counting leaves in doubt, and what it finds."""

from calc import cautions
from calc.errors import Refused
from calc.fields import INVENTED
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.decay import RADON, remaining
from calc.physics.radon_sample import count_doubt, counted, least_detectable
from calc.units import (
    count_rate,
    counting,
    day,
    duration,
    hour,
    minute,
    mL,
    number,
    pCi,
    radon,
    share,
    volume,
)

Z_95 = 1.96
COUNTER = "The counter"


def radon_count(
    count_gross: float,
    count_background: float,
    count_time: float,
    count_efficiency: float,
    count_volume: float,
    count_age: float,
) -> Answer:
    """Concentration at the draw with its counting doubt, and the least that would be found."""
    if count_background >= count_gross:
        says = "must be above the blank's {count_background}: nothing was found"
        raise Refused("contradiction", "count_gross", says=says)
    times = (count_efficiency, count_volume, count_age)
    result = counted(count_gross, count_background, *times)
    doubt = Z_95 * count_doubt(count_gross, count_background, count_time, count_time, *times)
    least = least_detectable(count_background, count_time, *times)
    given = {
        "T_h": Quantity(RADON, _DAYS, 5, "half-life of radon"),
        "D": Quantity(remaining(count_age), number, 5, "share left at the count"),
        "z": Quantity(Z_95, number, label="holds 19 times in 20"),
        "m": Quantity(2.71, number, label="figure of Currie 1968"),
        "n": Quantity(4.65, number, label="figure of Currie 1968"),
    }
    return Answer(
        outputs={
            "counted_radon": result,
            "count_doubt": doubt,
            "count_doubt_share": doubt / result,
            "detectable": least,
        },
        findings=(
            _headline(result >= least),
            Finding(
                "caution",
                "Counting is not all.",
                "Calibration, filling and the age of the sample come on top. A laboratory should "
                "be within 25 % of its peers, within 50 % under 1000 pCi/L [mw-rn-2020].",
            ),
        ),
        steps=(
            Step("Share left at the count", "D = (1 / 2)**(t_c / T_h)", given),
            Step("Radon at the draw", "C_d = (G - B) / (k * V_c * D)", given),
            Step(
                "What the counting leaves in doubt",
                "U_c = z * sqrt(G / T_c + B / T_c) / (k * V_c * D)",
                given,
            ),
            Step(
                "Least that would be found",
                "M = (m + n * sqrt(B * T_c)) / (k * V_c * T_c * D)",
                given,
            ),
        ),
    )


def _headline(found: bool) -> Finding:
    text = (
        "{counted_radon} at the draw, give or take {count_doubt} by counting alone. This count "
        "finds {detectable} 19 times in 20."
    )
    if found:
        return Finding("good", "Found.", text)
    return Finding("caution", "Too little to be sure.", text)


_DAYS = Output(name="days", label="time", kind=duration, us="days", si="days")
CALCULATOR = Calculator(
    name="radon_count",
    title="Counting a radon sample",
    question="What do the counter's figures say, and how little radon would it find?",
    inputs=(
        Input(
            name="count_gross",
            label="Counting rate of the sample",
            symbol="G",
            kind=count_rate,
            default="250 cpm",
            origin=INVENTED,
            low=0.1 / minute,
            high=1e6 / minute,
            measure="Whole counts over minutes, three hours or more after closing the vial.",
            group=COUNTER,
            once=False,
        ),
        Input(
            name="count_background",
            label="Counting rate of a blank",
            symbol="B",
            kind=count_rate,
            default="20 cpm",
            origin=INVENTED,
            low=0.01 / minute,
            high=1e5 / minute,
            measure="The same vial with water that holds no radon: boiled, or a month old.",
            group=COUNTER,
            once=False,
        ),
        Input(
            name="count_time",
            label="How long each was counted",
            symbol="T_c",
            kind=duration,
            default="50 min",
            origin=INVENTED,
            low=1 * minute,
            high=24 * hour,
            measure="Sample and blank alike.",
            group=COUNTER,
            once=False,
        ),
        Input(
            name="count_efficiency",
            label="Counts for each radon decay",
            symbol="k",
            kind=counting,
            default="6 cpm/pCi",
            origin="usual for liquid scintillation, from memory",
            low=0.01 / minute / pCi,
            high=12 / minute / pCi,
            measure="From the calibration with a radium standard. Five decays follow each other, "
            "so a perfect counter reads 11.1.",
            group=COUNTER,
            sure="5 %",
        ),
        Input(
            name="count_volume",
            label="Water in the vial",
            symbol="V_c",
            kind=volume,
            us="mL",
            si="mL",
            default="10 mL",
            origin="usual for liquid scintillation, from memory",
            low=1 * mL,
            high=1000 * mL,
            measure="By weight: a gram is a millilitre.",
            group=COUNTER,
            sure="1 %",
        ),
        Input(
            name="count_age",
            label="From the draw to the middle of this count",
            symbol="t_c",
            kind=duration,
            us="h",
            si="h",
            default="48 h",
            origin=INVENTED,
            low=3 * hour,
            high=30 * day,
            measure="From the two clock times.",
            group=COUNTER,
            once=False,
            sure="1 h",
        ),
    ),
    outputs=(
        Output(name="counted_radon", label="Radon at the draw", symbol="C_d", kind=radon),
        Output(
            name="count_doubt",
            label="Plus or minus from counting, 19 times in 20",
            symbol="U_c",
            kind=radon,
        ),
        Output(name="count_doubt_share", label="The same as a share", kind=share, digits=2),
        Output(
            name="detectable",
            label="Least that this count finds 19 times in 20",
            symbol="M",
            kind=radon,
        ),
    ),
    work=radon_count,
    cautions=(cautions.RADON_HEALTH, cautions.LOCAL_CODE),
    sources=("currie-1968", "icrp-107", "mw-rn-2020"),
    leaves={"counted_radon": ("raw_radon", "treated_radon")},
)
