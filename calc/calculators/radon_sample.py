"""What the water held when the sample was drawn, and whether the sample may be believed."""

from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.fields import INVENTED
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.decay import RADON, grown_in, remaining
from calc.physics.radon_sample import allowed_difference, at_draw, bubble_loss
from calc.physics.radon_solubility import air_to_water
from calc.units import (
    L,
    day,
    duration,
    hour,
    length,
    mL,
    mm,
    number,
    pCi,
    percent,
    radon,
    share,
    temperature,
    volume,
)

MOST_RESULTS = 4
LATEST, EARLIEST = 96 * hour, 3 * hour  # [mw-rn-2020] 6.1; grown in to 95 %
LARGEST_BUBBLE = 1 * mm  # [mw-rn-2020]
ALONE = 20000 * pCi / L  # [mw-rn-2020] 5.3.1: one sample under this is drawn again
SPHERE = pi / 6  # volume of a ball over the cube of its diameter
SAMPLE, DRAW = "The sample", "How it was drawn"
CHART_DAYS, POINTS = 8, 24


class _Sample(NamedTuple):
    mean: float
    factor: float
    bubble: float
    lost: float
    drawn: float
    difference: float | None
    allowed: float
    sure: float


def radon_sample(
    sample_radon: tuple[float, ...],
    lab_sure: float,
    sample_age: float,
    sample_corrected: str,
    sample_bubble: float,
    vial: float,
    vial_temperature: float,
    vial_filled: str,
    purged: str,
) -> Answer:
    """The mean of the results brought back to the draw, and what speaks against it."""
    mean = sum(sample_radon) / len(sample_radon)
    factor = 1.0 if sample_corrected == "yes" else 1 / remaining(sample_age)
    bubble = SPHERE * sample_bubble**3 / vial
    lost = bubble_loss(bubble, vial_temperature)
    apart = max(sample_radon) - min(sample_radon)
    difference = apart / mean if len(sample_radon) > 1 else None
    # two bottles share calibration and hands: their mean is no surer than one of them
    sure = max(lab_sure, (difference or 0.0) / 2)
    drawn = mean * factor / (1 - lost)
    sample = _Sample(
        mean, factor, bubble, lost, drawn, difference, allowed_difference(lab_sure), sure
    )
    corrected = "D = 1" if sample_corrected == "yes" else "D = 2**(t_a / T_h)"
    given = {
        "C_n": Quantity(mean, radon, label="mean of the results"),
        "b": Quantity(SPHERE, number, 4, "volume of a ball over its diameter cubed"),
        "f_b": Quantity(bubble, share),
        "H": Quantity(air_to_water(vial_temperature), number, 4, "radon in air over that in water"),
        "T_h": Quantity(RADON, _DAYS, 5, "half-life of radon"),
        "u": Quantity(sure, share, label="of the laboratory or half the difference"),
    }
    return Answer(
        outputs={
            "at_draw": drawn,
            "sample_doubt": sure * drawn,
            "decay_factor": factor,
            "bubble_lost": lost,
            "difference": difference,
            "difference_allowed": sample.allowed,
            "grown": _grown(sample_age),
        },
        findings=_findings(sample, sample_radon, sample_age, sample_bubble, vial_filled, purged),
        steps=(
            Step("Back to the draw", corrected, given),
            Step("Bubble's part of the vial", "f_b = b * d_v**3 / V_v", given),
            Step("Radon gone into it", "L_b = f_b * H / (1 - f_b + f_b * H)", given),
            Step("Radon at the draw", "C_d = C_n * D / (1 - L_b)", given),
            Step("Plus or minus", "U = u * C_d", given),
            Step("Difference that doubt explains", "d_a = sqrt(2) * U_l", given),
        ),
        charts=(_chart(sample, sample_age),),
    )


def _grown(age: float) -> float:
    """Activity of the last short-lived child over that of the radon beside it."""
    chain = grown_in(age)
    return chain[-1] / chain[0]


def _findings(
    sample: _Sample,
    results: tuple[float, ...],
    age: float,
    bubble: float,
    filled: str,
    purged: str,
) -> tuple[Finding, ...]:
    found = [
        *_drawing(filled, purged, bubble),
        *_waiting(age),
        *_duplicates(sample, results),
    ]
    held = "It held {at_draw} when it was drawn, give or take {sample_doubt}."
    if not found:
        return (Finding("good", "Valid.", held),)
    if found[0].level == "danger":
        text = "What was measured is no upper bound of the well: " + held + " Draw new ones."
        return (Finding("danger", "Do not decide by it.", text), *found)
    return (Finding("caution", "Draw again.", held + " But see below."), *found)


def _drawing(filled: str, purged: str, bubble: float) -> list[Finding]:
    found = []
    if filled == "tap":
        found.append(
            Finding(
                "danger",
                "Drawn through air.",
                "Water that falls into a vial loses radon on the way, how much nobody can say. "
                "Fill under water or through a tube [mw-rn-2020].",
            )
        )
    if purged == "no":
        found.append(
            Finding(
                "caution",
                "Not the well's water.",
                "It has stood in a tank or pipe: decayed, or degassed. Run the water until its "
                "temperature stands still.",
            )
        )
    if bubble > LARGEST_BUBBLE:
        found.append(
            Finding(
                "caution",
                "A bubble.",
                "It has taken {bubble_lost} at the least, which is added back here. It may tell of "
                "more air on the way. No bubble over 1 mm [mw-rn-2020].",
            )
        )
    return found


def _waiting(age: float) -> list[Finding]:
    if age > LATEST:
        return [
            Finding(
                "caution",
                "Counted late.",
                "Counting should start within four days of the draw [mw-rn-2020]. Caps leak and "
                "the clock's errors grow.",
            )
        ]
    if age < EARLIEST:
        return [
            Finding(
                "caution",
                "Counted too soon.",
                "Radon's last short-lived child stands at {grown} of it only. A count that "
                "includes them needs three hours in a closed vial.",
            )
        ]
    return []


def _duplicates(sample: _Sample, results: tuple[float, ...]) -> list[Finding]:
    if sample.difference is None:
        text = "Duplicates are required [mw-rn-2020]."
        if sample.drawn < ALONE:
            text += " Draw a second one within two weeks."
        return [Finding("caution", "One sample.", text)]
    if sample.difference <= sample.allowed:
        return []
    text = (
        "They differ by {difference} of their mean; doubt explains {difference_allowed}. The "
        "higher one is nearer the truth: what goes wrong at the tap loses radon."
    )
    if max(results) >= 2 * min(results):
        text += " The higher is twice the lower or more: draw again before you decide [mw-rn-2020]."
    return [Finding("caution", "The duplicates disagree.", text)]


def _chart(sample: _Sample, age: float) -> Chart:
    last = max(CHART_DAYS * day, age)
    times = [i * last / POINTS for i in range(POINTS + 1)]
    # the bottle that is without its bubble's share
    bottle = sample.mean * sample.factor
    seen = at_draw(1.0, age)
    return Chart(
        title="What is left in the bottle",
        says="Half is gone in 3.8 days. The figure of the draw is where the line begins.",
        x=Axis("Time since the draw", _AGE),
        y=Axis("Radon in the bottle", radon),
        lines=(Line("left in the bottle", tuple((t, bottle * remaining(t)) for t in times)),),
        marks=(Mark("middle of the count", age, bottle / seen, here=True),),
    )


_DAYS = Output(name="days", label="time", kind=duration, us="days", si="days")
_AGE = Input(
    name="sample_age",
    label="From the draw to the middle of the count",
    symbol="t_a",
    kind=duration,
    us="h",
    si="h",
    default="48 h",
    origin=INVENTED,
    low=0,
    high=30 * day,
    measure="From the two clock times. Mind the time zone, and the night the clocks change.",
    group=SAMPLE,
    once=False,
    sure="1 h",
)
CALCULATOR = Calculator(
    name="radon_sample",
    title="Radon sample",
    question="How much radon did the water hold when it was drawn, and is the sample valid?",
    inputs=(
        Input(
            name="sample_radon",
            label="The laboratory's results",
            kind=radon,
            default="13600 pCi/L; 14300 pCi/L",
            origin=INVENTED,
            low=0.1 * pCi / L,
            high=5e6 * pCi / L,
            several=MOST_RESULTS,
            measure="Two bottles, drawn one after the other. Not the mean of the two.",
            group=SAMPLE,
            once=False,
        ),
        Input(
            name="lab_sure",
            label="Plus or minus of one result, 19 times in 20",
            symbol="U_l",
            kind=share,
            default="10 %",
            origin="common practice, no source; counting alone is often 2 to 5 %",
            low=0.1 * percent,
            high=100 * percent,
            measure="From the report. Ask whether it holds calibration or only counting, and "
            "whether it is one or two standard deviations.",
            group=SAMPLE,
        ),
        _AGE,
        Choice(
            name="sample_corrected",
            label="Results already brought back to the draw",
            options={"yes": "yes", "no": "no, as at the count"},
            default="no",
            origin=INVENTED,
            measure="Ask the laboratory. Doing it twice, or not at all, is 44 % after two days.",
            group=SAMPLE,
            once=False,
        ),
        Input(
            name="sample_bubble",
            label="Bubble in the vial, across",
            symbol="d_v",
            kind=length,
            us="mm",
            si="mm",
            default="0 mm",
            origin="there should be none",
            low=0,
            high=20 * mm,
            measure="Turn the vial upside down at once after capping, and again before it goes "
            "off.",
            group=DRAW,
            once=False,
            sure="0.5 mm",
        ),
        Input(
            name="vial",
            label="Size of the vial",
            symbol="V_v",
            kind=volume,
            us="mL",
            si="mL",
            default="40 mL",
            origin="common size, no source",
            low=10 * mL,
            high=1000 * mL,
            measure="From the laboratory's sheet.",
            group=DRAW,
        ),
        Input(
            name="vial_temperature",
            label="Temperature of the vial while it stood",
            symbol="T_v",
            kind=temperature,
            default="50 °F",
            origin="kept at the temperature of the well or below",
            low=274.15,
            high=308.15,
            measure="A cool box without ice on the glass. Not over 60 °F, never frozen.",
            group=DRAW,
            sure="5 °F",
        ),
        Choice(
            name="vial_filled",
            label="How the vial was filled",
            options={
                "under": "under water in an overflowing bowl, or through a tube to its bottom",
                "tap": "straight from the tap",
            },
            default="under",
            origin="the standard's way [mw-rn-2020]",
            measure="Aerator and filter off the tap first. Tube not wider than 1/2 inch, not "
            "longer than 24 inches.",
            group=DRAW,
            once=False,
        ),
        Choice(
            name="purged",
            label="Run until fresh from the well",
            options={"yes": "yes: its temperature stood still", "no": "no, or not known"},
            default="yes",
            origin="the standard's way [mw-rn-2020]",
            measure="At the cock by the well tank, before any treatment, after the pump has "
            "started at least once; 15 minutes where nobody knows.",
            group=DRAW,
            once=False,
        ),
    ),
    outputs=(
        Output(name="at_draw", label="Radon in the water at the draw", symbol="C_d", kind=radon),
        Output(
            name="sample_doubt",
            label="Plus or minus, 19 times in 20",
            symbol="U",
            kind=radon,
            digits=2,
        ),
        Output(name="decay_factor", label="Factor for decay", symbol="D", kind=number, digits=4),
        Output(
            name="bubble_lost",
            label="Radon lost into the bubble, at the least",
            symbol="L_b",
            kind=share,
            digits=2,
        ),
        Output(
            name="difference",
            label="Difference of the duplicates, over their mean",
            kind=share,
            digits=2,
            none="only one result",
        ),
        Output(
            name="difference_allowed",
            label="Difference that doubt explains",
            symbol="d_a",
            kind=share,
            digits=2,
        ),
        Output(
            name="grown",
            label="Radon's last short-lived child, against the radon",
            kind=share,
        ),
    ),
    work=radon_sample,
    cautions=(cautions.RADON_HEALTH, cautions.LOCAL_CODE),
    sources=("mw-rn-2020", "icrp-107", "bateman-1910", "weigel-1978", "jcgm-100"),
    leaves={"at_draw": ("raw_radon", "treated_radon")},
)
