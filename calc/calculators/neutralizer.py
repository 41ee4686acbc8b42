"""A bed of calcite for acid water: the pH it reaches, what it uses, how big it must be."""

from dataclasses import replace
from math import pi
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Bar, Bars, Chart, Limit, Line, Mark
from calc.fields import BED, CHEMISTRY, bed_fields, open_tank_fields, raw_water, water_fields
from calc.fields.raw_water import RawWater
from calc.fields.water_fields import MOST_PH
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.calcite import (
    Base,
    Water,
    blend,
    dissolved_to,
    hardness_of,
    magnesia_rest,
    stripped,
    with_base,
)
from calc.physics.carbonate import CACO3_EQUIVALENT, CO2_MOLAR
from calc.physics.granular_bed import MEDIA, bed_area
from calc.physics.neutralizer import (
    BULK,
    YEAR,
    Passage,
    grain_surface,
    passage,
    refill_time,
    used_in_a_year,
)
from calc.units import (
    L,
    area,
    concentration,
    day,
    duration,
    ft,
    gpm,
    hardness,
    lb,
    length,
    loading,
    mass,
    mg,
    number,
    share,
    volume,
)

SERVICE = 3 * gpm / ft**2  # common practice, no source; short draws up to 5 or 6
AERATOR_TAKES = 0.8  # of the carbon dioxide, for comparing: a fair aerator, no source
LITTLE = 1e-9  # kg: as good as nothing
LEAST_SAVED = 5 * lb  # in a year; less is not worth a word
SAVES = 2.0  # so many times less stone is worth a word
HARD = 50 * mg / L  # added: from about here people notice, no source
OFTEN = 90 * day
MOST_CALCIUM, MOST_ALKALINITY = 60 * mg / L, 100 * mg / L  # [limestone-screening]
POINTS, LONGEST = 24, 1.5  # of a chart; its end over the time that the bed gives


class _Bed(NamedTuple):
    """The bed and its water.

    raw      -- before any air
    entering -- the bed
    stone    -- what dissolves until the water is at rest, mol/m³ counted in calcite
    way      -- of the water through the bed, None where nothing dissolves
    rested   -- the water at rest with the bed
    contact  -- s that the largest flow spends in the full bed
    size     -- m³
    area     -- of the tank, m²
    year     -- kg that dissolve in a year
    aired    -- kg that would, with four fifths of the carbon dioxide driven out first
    target   -- pH wanted
    """

    raw: Water
    entering: Water
    base: Base
    stone: float
    way: Passage | None
    rested: Water
    contact: float
    size: float
    area: float
    year: float
    aired: float
    target: float

    def ph(self, contact: float) -> float:
        """pH of the water that has been so long in the bed, s."""
        return (self.way.water(contact) if self.way else self.entering).state().ph


def neutralizer(
    raw_ph: float,
    alkalinity: float,
    calcium: float,
    water_temperature: float,
    co2_stripped: float,
    target_ph: float,
    magnesia: float,
    daily_use: float,
    service_flow: float,
    tank_diameter: float,
    bed_depth: float,
    grain_size: float,
    contact_share: float,
    refill_at: float,
) -> Answer:
    """The pH that a bed brings, the stone it takes and the hardness it adds."""
    raw = RawWater(raw_ph, alkalinity, calcium, water_temperature).water()
    surface = grain_surface(grain_size, MEDIA["calcite"]) * (1 - magnesia) * contact_share
    size = bed_area(tank_diameter) * bed_depth
    base, entering = blend(magnesia), stripped(raw, co2_stripped)
    stone = max(dissolved_to(entering, base), 0.0)
    aired = max(dissolved_to(stripped(raw, AERATOR_TAKES), base), 0.0)
    bed = _Bed(
        raw,
        entering,
        base,
        stone,
        passage(entering, base, surface),
        with_base(entering, base, stone),
        size / service_flow,
        size,
        size / bed_depth,
        used_in_a_year(base, stone, daily_use),
        used_in_a_year(base, aired, daily_use),
        target_ph,
    )
    running, late = bed.ph(bed.contact), bed.ph(bed.contact * (1 - refill_at))
    needed = _contact_needed(bed)
    overshoot = magnesia_rest(bed.entering).state().ph if magnesia else None
    rate = service_flow / bed.area
    return Answer(
        outputs={
            "running_ph": running,
            "refill_ph": late,
            "standing_ph": bed.rested.state().ph,
            "overshoot_ph": overshoot,
            "entering_co2": bed.entering.state().co2 * CO2_MOLAR,
            "stone": bed.base.molar * bed.stone,
            "hardness_added": hardness_of(bed.base, bed.stone),
            "stone_year": bed.year,
            "depth_year": bed_depth * bed.year / (size * BULK),
            "refill": refill_time(size, refill_at, bed.year) if bed.year else None,
            "contact": bed.contact,
            "bed_needed": None if needed is None else needed * service_flow,
            "service_rate": rate,
        },
        findings=(
            _headline(bed, running, needed),
            *_water_findings(bed, overshoot, calcium, alkalinity),
            *_bed_findings(bed, late, running, refill_at, rate),
        ),
        steps=_steps(bed, needed),
        charts=(_chart(bed, running), _years(bed)),
    )


def _contact_needed(bed: _Bed) -> float | None:
    """Contact time that gives the pH wanted, s; None where no bed does."""
    if bed.way:
        return bed.way.contact(bed.target)
    return 0.0 if bed.entering.state().ph >= bed.target else None


def _headline(bed: _Bed, running: float, needed: float | None) -> Finding:
    if bed.entering.state().ph >= bed.target:
        return Finding(
            "good",
            "No bed needed.",
            "The water that would enter it has the pH wanted already.",
        )
    if running >= bed.target:
        return Finding(
            "good",
            "Gets there.",
            "At the largest flow the water leaves at pH {running_ph}; water that stood in the bed "
            "at {standing_ph}.",
        )
    if needed is not None:
        return Finding(
            "caution",
            "Too little contact.",
            "At the largest flow the water leaves at pH {running_ph}. It would take a bed of "
            "{bed_needed}. Only water that stood comes to {standing_ph}.",
        )
    return Finding(
        "caution",
        "The stone cannot do it.",
        "However long this water stands in the bed, it stops at pH {standing_ph}. Drive out "
        "carbon dioxide before the bed, or feed soda ash.",
    )


def _water_findings(
    bed: _Bed, overshoot: float | None, calcium: float, alkalinity: float
) -> list[Finding]:
    found = []
    if bed.year > SAVES * bed.aired + LEAST_SAVED:
        saved = {
            "aired": Quantity(bed.aired, mass),
            "times": Quantity(bed.year / max(bed.aired, LITTLE), number, 2),
        }
        found.append(
            Finding(
                "good",
                "Air first saves stone.",
                "With four fifths of its carbon dioxide driven out before the bed, this water "
                "would take {aired} a year instead of {stone_year}: {times} times less.",
                saved,
            )
        )
    if overshoot is not None:
        found.append(
            Finding(
                "caution",
                "Magnesia has no ceiling near 8.",
                "Water that stands over it can go up to pH {overshoot_ph}. Test a glass drawn "
                "first thing in the morning, and use the least magnesia that does.",
            )
        )
    if bed.rested.state().ph > MOST_PH and bed.stone:
        found.append(
            Finding(
                "caution",
                "High after a night.",
                "Water that stood in the bed is at pH {standing_ph}, over the 8.5 of US EPA's "
                "secondary standard (for public supplies, advice only). So soft a water overshoots "
                "a little, and mixes back as soon as it runs.",
            )
        )
    if hardness_of(bed.base, bed.stone) > HARD:
        found.append(
            Finding(
                "caution",
                "Hardens the water.",
                "It adds {hardness_added} of hardness. A softener after it counts with that.",
            )
        )
    if calcium > MOST_CALCIUM or alkalinity > MOST_ALKALINITY:
        found.append(
            Finding(
                "caution",
                "No water for a bed of stone.",
                "Limestone is for water with calcium under 60 mg/L and alkalinity under 100 mg/L "
                "as CaCO3. Here the acid is carbon dioxide in plenty: drive it out.",
            )
        )
    return found


def _bed_findings(
    bed: _Bed, late: float, running: float, refill_at: float, rate: float
) -> list[Finding]:
    found = []
    if late < bed.target <= running:
        found.append(
            Finding(
                "caution",
                "Refill sooner.",
                "Before a refill, {refill_at} of the bed gone, the water leaves at pH {refill_ph}.",
            )
        )
    if bed.year and refill_time(bed.size, refill_at, bed.year) < OFTEN:
        found.append(
            Finding(
                "caution",
                "Refilled often.",
                "It is due every {refill}. A wider tank, or less carbon dioxide before it.",
            )
        )
    if rate > SERVICE:
        found.append(
            Finding(
                "caution",
                "Fast for this tank.",
                "{service_rate} pass it at the most. Common practice is 3 gpm/ft² at most, and a "
                "little more in short draws: water finds channels in a bed that is pressed.",
            )
        )
    return found


def _steps(bed: _Bed, needed: float | None) -> tuple[Step, ...]:
    given = {
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "c_r": Quantity(
            bed.raw.state().co2 * CO2_MOLAR, concentration, 4, "carbon dioxide of the raw water"
        ),
        "A_r": Quantity(
            bed.rested.alkalinity * CACO3_EQUIVALENT,
            hardness,
            4,
            "alkalinity of the water at rest with the bed, found by trial",
        ),
        "w": Quantity(
            bed.base.molar / (2 * CACO3_EQUIVALENT * bed.base.hardness),
            number,
            4,
            "mass of the stone over what it counts as CaCO3",
        ),
        "rho_b": Quantity(BULK, _BULK, 4, "mass of a litre of calcite as it is poured"),
        "A_f": Quantity(bed.area, area),
        "V_b": Quantity(bed.size, volume),
        "Y": Quantity(YEAR, _DAYS, 5, "a year"),
        "t_n": Quantity(needed or 0.0, duration, 4, "contact that gives that pH, found by trial"),
    }
    steps = [
        Step("Carbon dioxide that enters the bed", "c_b = c_r * (1 - f_c)", given),
        Step("Hardness added", "H_a = A_r - A_k", given),
        Step("Stone that each litre takes", "x = w * H_a", given),
        Step("Stone in a year", "M = x * Q_u * Y", given),
        Step("Area of the tank", "A_f = pi * D_f**2 / 4", given),
        Step("Space of the bed", "V_b = A_f * L_b", given),
        Step("Contact at the largest flow", "t_e = V_b / Q_f", given),
        Step("Flow for each area", "v = Q_f / A_f", given),
        Step("Depth lost in a year", "h_y = M / (rho_b * A_f)", given),
    ]
    if bed.year:
        steps.append(Step("A refill lasts", "t_r = f_r * V_b * rho_b / M * Y", given))
    if needed is not None:
        steps.append(Step("Bed that gives the pH wanted", "V_n = t_n * Q_f", given))
    return tuple(steps)


def _chart(bed: _Bed, running: float) -> Chart:
    ends = [bed.contact, *([bed.way.places[-1]] if bed.way else [])]
    end = LONGEST * max(ends)
    times = [end * (i / POINTS) ** 2 for i in range(POINTS + 1)]
    return Chart(
        title="pH against time in the bed",
        says="It rises fast at first and then stops, at rest with the stone: more stone does not "
        "bring more than that.",
        x=Axis("Contact time, empty bed", duration),
        y=Axis("pH", number),
        lines=(Line("leaving the bed", tuple((time, bed.ph(time)) for time in times)),),
        limits=(Limit("pH wanted", bed.target),),
        marks=(Mark("largest flow, bed full", bed.contact, running, here=True),),
    )


def _years(bed: _Bed) -> Bars:
    return Bars(
        title="Stone in a year",
        says="What the bed takes as asked, and what it would take after an aerator that drives "
        "out four fifths of the carbon dioxide.",
        like=_YEAR,
        bars=(Bar("as asked", bed.year), Bar("air first", bed.aired)),
    )


_DAYS = Output(
    name="refill",
    label="A refill lasts",
    symbol="t_r",
    kind=duration,
    us="days",
    si="days",
    digits=2,
    none="for good: nothing dissolves",
)
_BULK = Output(name="bulk", label="Mass of a litre", kind=concentration, us="g/L", si="g/L")
_YEAR = Output(name="stone_year", label="Stone in a year", symbol="M", kind=mass)

CALCULATOR = Calculator(
    name="neutralizer",
    title="Neutralizer",
    question="Which pH does a bed of calcite bring this water to, how much stone does it take, and "
    "when must it be refilled?",
    inputs=(
        *raw_water.INPUTS,
        Input(
            name="co2_stripped",
            label="Carbon dioxide removed before the bed",
            symbol="f_c",
            kind=share,
            default="0 %",
            origin="the neutralizer stands before the open tank",
            low=0,
            high=0.99,
            measure="By the pH before and after the aerator: a rise of 0.3 is half of it, 0.7 four "
            "fifths, 1.0 nine tenths.",
            group=CHEMISTRY,
        ),
        water_fields.target_ph,
        Input(
            name="magnesia",
            label="Magnesia in the bed, by mass",
            symbol="f_m",
            kind=share,
            default="0 %",
            origin="calcite alone",
            low=0,
            high=0.5,
            measure="From the bags. 10 to 20 % is common practice, no source.",
            group=BED,
        ),
        replace(open_tank_fields.daily_use, group=BED),
        bed_fields.service_flow,
        bed_fields.tank_diameter,
        bed_fields.bed_depth,
        bed_fields.grain_size,
        Input(
            name="contact_share",
            label="Share of the contact that counts",
            symbol="f_t",
            kind=share,
            default="40 %",
            origin="common practice, no source: two to three times the time that clean, pure "
            "grains need",
            low=0.05,
            high=1,
            measure="Channels, iron on the grains, impure stone. Find yours: set it so that this "
            "page gives the pH you measure behind the bed at a known flow.",
            group=BED,
            sure="15 %",
        ),
        Input(
            name="refill_at",
            label="Part of the bed gone when it is refilled",
            symbol="f_r",
            kind=share,
            default="33 %",
            origin="common practice, no source: a third to a half",
            low=0.05,
            high=0.8,
            measure="You decide. Contact time shrinks by as much.",
            group=BED,
        ),
    ),
    outputs=(
        Output(name="running_ph", label="pH at the largest flow, bed full", kind=number),
        Output(name="refill_ph", label="The same, just before a refill", kind=number),
        Output(name="standing_ph", label="pH of water that stood in the bed", kind=number),
        Output(
            name="overshoot_ph",
            label="Highest pH of water that stood over the magnesia",
            kind=number,
            none="no magnesia",
        ),
        Output(
            name="entering_co2",
            label="Carbon dioxide that enters the bed",
            symbol="c_b",
            kind=concentration,
        ),
        Output(
            name="stone",
            label="Stone that each litre takes, at most",
            symbol="x",
            kind=concentration,
        ),
        Output(name="hardness_added", label="Hardness added", symbol="H_a", kind=hardness),
        _YEAR,
        Output(
            name="depth_year",
            label="Depth lost in a year",
            symbol="h_y",
            kind=length,
            us="in",
            si="cm",
        ),
        _DAYS,
        Output(
            name="contact",
            label="Contact at the largest flow",
            symbol="t_e",
            kind=duration,
        ),
        Output(
            name="bed_needed",
            label="Bed that gives the pH wanted",
            symbol="V_n",
            kind=volume,
            us="ft³",
            si="L",
            none="none: the stone cannot do it",
        ),
        Output(
            name="service_rate",
            label="Flow for each area",
            symbol="v",
            kind=loading,
            high=SERVICE,
            outside="Faster than common practice.",
        ),
    ),
    work=neutralizer,
    trials=200,
    cautions=(
        cautions.CAUSTIC_DUST,
        cautions.BACKWASH_INLET,
        cautions.PRESSURE,
        cautions.NO_INDEX,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "plummer-1978",
        "plummer-1982",
        "davies-1962",
        "phreeqc-3",
        "letterman-1991",
        "limestone-screening",
        "cfr-143-3",
    ),
)
