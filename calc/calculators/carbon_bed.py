"""How much radon a bed of carbon holds back, new and worn, and how big it would have to be."""

from math import e, log
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import CARBON, INVENTED, open_tank_fields, radon_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.carbon_bed import (
    GAMMA,
    RADON_DECAY,
    contact_needed,
    contact_time,
    gamma_dose_rate,
    retained_activity,
    share_left,
)
from calc.units import (
    L,
    activity,
    dose_rate,
    duration,
    ft,
    hour,
    number,
    pCi,
    percent,
    radon,
    rate,
    share,
    volume,
)

MOST_RADON = 4000 * pCi / L  # [aarst-mw-rn] wants carbon only under it
ONE = 1.0  # m, where the dose rate is told
MBq = 1e6
POINTS = 40


class _Bed(NamedTuple):
    """Radon after the bed, new and worn, Bq/m³; sizes for the target, m³; Sv/s at 1 m."""

    new: float
    worn: float
    size_new: float
    size_worn: float
    shines: float


def carbon_bed(
    raw_radon: float,
    target_radon: float,
    daily_use: float,
    bed_volume: float,
    kss: float,
    worn_share: float,
) -> Answer:
    """Contact time, removal new and worn, the size for the target, and what the bed holds."""
    if target_radon >= raw_radon:
        raise Refused("contradiction", "target_radon", says="must be below {raw_radon}")
    contact = contact_time(bed_volume, daily_use)
    needed = contact_needed(kss, target_radon / raw_radon)
    left, worn = share_left(kss, contact), share_left(kss * worn_share, contact)
    held = retained_activity(daily_use, raw_radon, raw_radon * left)
    bed = _Bed(
        raw_radon * left,
        raw_radon * worn,
        daily_use * needed,
        daily_use * needed / worn_share,
        gamma_dose_rate(held, ONE),
    )
    return Answer(
        outputs={
            "contact": contact,
            "removal": 1 - left,
            "left": bed.new,
            "worn_removal": 1 - worn,
            "worn_left": bed.worn,
            "contact_needed": needed,
            "bed_needed": bed.size_new,
            "bed_needed_worn": bed.size_worn,
            "held": held,
            "shines": bed.shines,
        },
        findings=_findings(raw_radon, target_radon, bed),
        steps=_steps(raw_radon / target_radon),
        charts=(_chart(daily_use, kss, worn_share, bed_volume, target_radon / raw_radon),),
    )


def _findings(raw: float, target: float, bed: _Bed) -> tuple[Finding, ...]:
    findings = []
    if raw > MOST_RADON:
        findings.append(
            Finding(
                "danger",
                "Not with carbon.",
                "{raw_radon} is over {most}. Above that a standard of 2020 wants aeration: the "
                "bed would shine, fill with lead-210 and be hard to get rid of.",
                {"most": Quantity(MOST_RADON, radon)},
            )
        )
    findings.append(_size(target, bed))
    findings.append(
        Finding(
            "caution",
            "It gives off gamma rays.",
            "When it is steady {held} of radon sits in the bed: up to {shines} at 1 m. Work out "
            "where it may stand before anything else.",
        )
    )
    return tuple(findings)


def _size(target: float, bed: _Bed) -> Finding:
    if bed.new > target:
        return Finding(
            "caution",
            "Too small.",
            "Even new it leaves {left}. {target_radon} takes {bed_needed} of new carbon, "
            "{bed_needed_worn} to last until it is worn.",
        )
    if bed.worn > target:
        return Finding(
            "caution",
            "Only while it is new.",
            "New it leaves {left}, worn {worn_left}. {bed_needed_worn} would hold the target "
            "until then. Sample it every few months, or the change goes unseen.",
        )
    return Finding(
        "good", "Big enough.", "New it leaves {left}, worn {worn_left}: at or under {target_radon}."
    )


def _steps(fold: float) -> tuple[Step, ...]:
    given = {
        "e": Quantity(e, number, 6, "base of natural logarithms"),
        "n": Quantity(log(fold), number, 4, "natural logarithm of C_r / C_t"),
        "k_r": Quantity(RADON_DECAY, rate, 5, "decay constant of radon"),
        "h": Quantity(GAMMA * MBq / ONE**2, dose_rate, 4, "dose rate 1 m from 1 MBq of radon"),
        "A_1": Quantity(MBq, activity, 4, "1 MBq"),
    }
    return (
        Step("Empty-bed contact time, at the average flow", "t_e = V_b / Q_u", given),
        Step("Removal by new carbon", "R_n = 1 - e**(-k * t_e)", given),
        Step("Radon it leaves", "C_n = C_r * e**(-k * t_e)", given),
        Step("Removal when it is worn", "R_w = 1 - e**(-k * w * t_e)", given),
        Step("Radon it leaves then", "C_w = C_r * e**(-k * w * t_e)", given),
        Step("Contact time for the target", "t_t = n / k", given),
        Step("Size for the target, new", "V_n = Q_u * t_t", given),
        Step("Size for the target, worn", "V_w = V_n / w", given),
        Step("Radon held when as much decays as comes in", "A = Q_u * (C_r - C_n) / k_r", given),
        Step("Gamma dose rate at 1 m, at most", "H = h * A / A_1", given),
    )


def _chart(use: float, kss: float, worn_share: float, bed: float, wanted: float) -> Chart:
    most = max(2 * bed, 1.2 * use * contact_needed(kss, wanted))
    sizes = [most * step / POINTS for step in range(POINTS + 1)]

    def line(label: str, constant: float) -> Line:
        times = [contact_time(size, use) for size in sizes]
        return Line(
            label,
            tuple((s, 1 - share_left(constant, t)) for s, t in zip(sizes, times, strict=True)),
        )

    return Chart(
        title="Removal by the size of the bed",
        says="Removal climbs fast at first. Each further bed of the same size takes out the same "
        "share of what the one before it left. A worn bed needs a multiple of the size.",
        x=Axis("Carbon in the bed", _BED),
        y=Axis("Radon taken out", share),
        lines=(line("new", kss), line("worn", kss * worn_share)),
        limits=(Limit("wanted", 1 - wanted),),
        marks=(Mark("this bed, new", bed, 1 - share_left(kss, contact_time(bed, use)), True),),
    )


_BED = Input(
    name="bed_volume",
    label="Carbon in the bed",
    symbol="V_b",
    kind=volume,
    us="ft³",
    si="L",
    default="2 ft³",
    origin=INVENTED,
    low=0.1 * ft**3,
    high=50 * ft**3,
    measure="Count the bags that went in; a bag is often 1 ft³. The tank is bigger: a third to a "
    "half of it is left empty. Two beds in a row count together.",
    group=CARBON,
    sure="5 %",
)


def _size_output(name: str, label: str, symbol: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=volume, us="ft³", si="L", digits=2)


CALCULATOR = Calculator(
    name="carbon_bed",
    title="Size of a carbon bed",
    question="How much radon does a bed of carbon hold back, and how big must it be?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.target_radon,
        open_tank_fields.daily_use,
        _BED,
        Input(
            name="kss",
            label="Adsorption-decay constant of the carbon (Kss)",
            symbol="k",
            kind=rate,
            default="2.09 per h",
            origin="taken by US EPA for costs in 1987 [epa-1987-cost]",
            low=0.1 / hour,
            high=10 / hour,
            measure="From trials of this carbon in this water, or from two samples on a running "
            "bed. Published: 3.02 per h for the best carbon of one study; 4.52 and 2.54 for one "
            "carbon in two clean waters. Water counts as much as carbon.",
            group=CARBON,
            sure="30 %",
        ),
        Input(
            name="worn_share",
            label="Share of Kss left when the carbon is worn",
            symbol="w",
            kind=share,
            default="27 %",
            origin="a year at one house, 99.7 to 79 % removal [kinner-1993]: 1.56 of 5.81",
            low=1 * percent,
            high=1,
            measure="Kss from samples today over Kss when new. Behind a softener the same study "
            "had 33 %. Of 121 houses about one in sixteen lost effect: you do not know beforehand "
            "which.",
            group=CARBON,
        ),
    ),
    outputs=(
        Output(name="contact", label="Empty-bed contact time (EBCT)", symbol="t_e", kind=duration),
        Output(name="removal", label="Removal, new", symbol="R_n", kind=share, digits=4),
        Output(name="left", label="Radon it leaves, new", symbol="C_n", kind=radon),
        Output(name="worn_removal", label="Removal, worn", symbol="R_w", kind=share),
        Output(name="worn_left", label="Radon it leaves, worn", symbol="C_w", kind=radon),
        Output(
            name="contact_needed",
            label="Contact time for the target, new",
            symbol="t_t",
            kind=duration,
        ),
        _size_output("bed_needed", "Carbon for the target, new", "V_n"),
        _size_output("bed_needed_worn", "Carbon for the target, worn", "V_w"),
        Output(name="held", label="Radon held in the bed", symbol="A", kind=activity),
        Output(name="shines", label="Gamma dose rate at 1 m, at most", symbol="H", kind=dose_rate),
    ),
    work=carbon_bed,
    cautions=(cautions.GAMMA, cautions.SPENT_CARBON, cautions.PRESSURE, cautions.LOCAL_CODE),
    leaves={"left": ("treated_radon",)},
    sources=(
        "nrc-1999-carbon",
        "aarst-mw-rn",
        "kinner-1993",
        "lowry-1987",
        "lowry-1990",
        "cornwell-1999",
        "epa-1987-cost",
        "jaeger-1968",
        "icrp-107",
    ),
)
