"""When an aerator must be cleaned and its water tested again."""

from dataclasses import replace
from math import inf, isfinite

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import AERATOR, INVENTED, open_tank_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.aerator_service import FLOC, floc_rate, time_to_limit
from calc.units import (
    L,
    concentration,
    day,
    duration,
    gauge_pressure,
    gram,
    inH2O,
    mass,
    mg,
    number,
    share,
)

LONGEST = 365 * day  # no unit goes longer without being opened: common practice, no source
RETEST = 365 * day  # [mw-rn-2020] 8.5: no less than yearly, better twice a year
_NOTABLE = 0.1  # a gauge in the field cannot tell less
SERVICE, PRESSURE = "Service", "Blower's pressure"


def aerator_service(
    iron: float,
    iron_falls: float,
    daily_use: float,
    floc_allowed: float,
    cleaned_ago: float,
    tested_ago: float,
    blower_clean: float,
    blower_now: float,
    blower_limit: float,
) -> Answer:
    """The next cleaning by iron, by pressure and by the calendar, and the next test."""
    if blower_limit <= blower_clean:
        says = "must be above {blower_clean}, the pressure when clean"
        raise Refused("contradiction", "blower_limit", says=says)
    settled = floc_rate(iron, iron_falls, daily_use)
    lasts = floc_allowed / settled if settled else inf  # of next to no iron, longer than a number
    by_iron = max(lasts - cleaned_ago, 0.0) if isfinite(lasts) else None
    by_pressure = time_to_limit(blower_clean, blower_now, blower_limit, cleaned_ago)
    calendar = max(LONGEST - cleaned_ago, 0.0)
    due = min(each for each in (by_iron, by_pressure, calendar) if each is not None)
    retest = max(RETEST - tested_ago, 0.0)
    return Answer(
        outputs={
            "floc_day": settled * day,
            "floc_now": settled * cleaned_ago,
            "clean_by_iron": by_iron,
            "clean_by_pressure": by_pressure,
            "clean_due": due,
            "retest_due": retest,
        },
        findings=_findings(due, retest, blower_clean, blower_now, blower_limit),
        steps=_steps(by_iron, by_pressure),
        charts=(_chart(cleaned_ago, blower_clean, blower_now, blower_limit),),
    )


def _steps(by_iron: float | None, by_pressure: float | None) -> tuple[Step, ...]:
    given = {
        "k": Quantity(FLOC, number, 4, "iron hydroxide for each part of iron"),
        "d": Quantity(day, duration, label="a day"),
    }
    steps = [Step("Iron that settles in a day", "m_d = k * c_i * a_i * Q_u * d", given)]
    if by_iron is not None:
        steps.append(Step("Until so much lies there", "t_i = max(m_a * d / m_d - t_s, 0)", given))
    if by_pressure is not None:
        formula = "t_p = max((p_m - p_b) * t_s / (p_b - p_0), 0)"
        steps.append(Step("Until the pressure is at its limit", formula, given))
    return tuple(steps)


def _findings(
    due: float, retest: float, clean: float, now: float, limit: float
) -> tuple[Finding, ...]:
    found = []
    if now >= limit:
        found.append(
            Finding(
                "danger",
                "Clean it today.",
                "The blower works against {blower_now}, at or over the limit of {blower_limit}. It "
                "moves less air than the removal was tested with.",
            )
        )
    elif due <= 0:
        found.append(
            Finding(
                "caution",
                "Cleaning is due.",
                "By the iron, {floc_now} has settled since the last cleaning, or a year has gone.",
            )
        )
    else:
        found.append(
            Finding(
                "good",
                "There is a date.",
                "Clean in {clean_due} at the latest, and look at the gauge at half that time.",
            )
        )
    if now < clean * (1 - _NOTABLE):
        found.append(
            Finding(
                "danger",
                "The pressure has fallen.",
                "It stood at {blower_clean} when clean. A stone is off its hose, the line leaks or "
                "the level is low: air goes where it does not strip. Find it, and test the water.",
            )
        )
    if retest <= 0:
        found.append(
            Finding(
                "danger",
                "Test the water.",
                "The last pair of samples is a year old or more. Radon gives no sign.",
            )
        )
    else:
        found.append(
            Finding(
                "good",
                "Test date.",
                "Draw the next pair in {retest_due} at the latest, better in half of that and in "
                "another season; and after each cleaning that changed the gauge.",
            )
        )
    return tuple(found)


def _chart(cleaned_ago: float, clean: float, now: float, limit: float) -> Chart:
    ahead = time_to_limit(clean, now, limit, cleaned_ago)
    end = cleaned_ago + (min(ahead, LONGEST) if ahead else 0.0)
    last = now + (now - clean) * (end - cleaned_ago) / cleaned_ago
    return Chart(
        title="Pressure that the blower works against",
        says="A straight line from the last cleaning through today. Dirt that catches dirt rises "
        "faster than that.",
        x=Axis("Time since the last cleaning", _DUE),
        y=Axis("Blower's pressure", _NOW),
        lines=(Line("pressure", ((0.0, clean), (cleaned_ago, now), (end, last))),),
        limits=(Limit("limit", limit),),
        marks=(Mark("today", cleaned_ago, now, here=True),),
    )


def _pressure(name: str, label: str, symbol: str, default: str, measure: str) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=gauge_pressure,
        us="in of water",
        si="kPa",
        default=default,
        origin=INVENTED,
        low=0.5 * inH2O,
        high=200 * inH2O,
        measure=measure,
        group=PRESSURE,
        sure="0.5 in of water",
    )


_NOW = _pressure(
    "blower_now",
    "Blower's pressure today",
    "p_b",
    "21 in of water",
    "At the same point, the tank at the same level.",
)
_DUE = Output(
    name="clean_due", label="Next cleaning, at the latest in", kind=duration, us="days", si="days"
)


def _ago(
    name: str, label: str, symbol: str, default: str, measure: str, *, once: bool = False
) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=duration,
        us="days",
        si="days",
        default=default,
        origin=INVENTED,
        low=1 * day,
        high=3000 * day,
        measure=measure,
        group=SERVICE,
        once=once,
    )


CALCULATOR = Calculator(
    name="aerator_service",
    title="Cleaning and testing an aerator",
    question="When must the aerator be cleaned, and when its water tested again?",
    inputs=(
        Input(
            name="iron",
            label="Iron in the water",
            symbol="c_i",
            kind=concentration,
            default="0.8 mg/L",
            origin=INVENTED,
            low=0,
            high=50 * (mg / L),
            measure="Laboratory or a test kit, on raw water that has not stood: dissolved and "
            "settled iron together.",
            group=AERATOR,
            sure="20 %",
        ),
        Input(
            name="iron_falls",
            label="Share of it that falls out in the aerator",
            symbol="a_i",
            kind=share,
            default="50 %",
            origin=INVENTED,
            low=0,
            high=1,
            measure="Iron before the aerator and after its filter. Without a test take 100 %: the "
            "cautious one.",
            group=AERATOR,
            sure="20 %",
        ),
        replace(open_tank_fields.daily_use, group=AERATOR),
        Input(
            name="floc_allowed",
            label="Dry iron that may lie there before cleaning",
            symbol="m_a",
            kind=mass,
            us="g",
            si="g",
            default="100 g",
            origin="common practice, no source: some quarts of wet sludge",
            low=1 * gram,
            high=10000 * gram,
            measure="Learn it from the first cleanings: what had settled when the gauge began to "
            "rise, worked out with this page.",
            group=SERVICE,
        ),
        # kept in a job, whose dates of service are counted from the day it was kept
        _ago(
            "cleaned_ago",
            "Since the last cleaning",
            "t_s",
            "60 days",
            "From the record.",
            once=True,
        ),
        _ago(
            "tested_ago",
            "Since the last pair of radon samples",
            "t_r",
            "150 days",
            "From the laboratory's report: before and after, not the after alone.",
        ),
        _pressure(
            "blower_clean",
            "Blower's pressure when clean",
            "p_0",
            "20 in of water",
            "Gauge at the blower's outlet on the day of the last cleaning, tank full.",
        ),
        _NOW,
        _pressure(
            "blower_limit",
            "Blower's pressure at which to clean",
            "p_m",
            "24 in of water",
            "Where the removal was still proven, or the high limit of the proving switch less a "
            "little.",
        ),
    ),
    outputs=(
        _DUE,
        Output(
            name="clean_by_iron",
            label="By the iron in",
            symbol="t_i",
            kind=duration,
            us="days",
            si="days",
            none="no iron falls out",
        ),
        Output(
            name="clean_by_pressure",
            label="By the pressure in",
            symbol="t_p",
            kind=duration,
            us="days",
            si="days",
            none="it has not risen",
        ),
        Output(
            name="floc_day",
            label="Dry iron that settles in a day",
            symbol="m_d",
            kind=mass,
            us="g",
            si="g",
        ),
        Output(name="floc_now", label="Settled so far", kind=mass, us="g", si="g"),
        Output(
            name="retest_due",
            label="Next pair of radon samples, at the latest in",
            kind=duration,
            us="days",
            si="days",
        ),
    ),
    work=aerator_service,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.DRY_TANK,
        cautions.RADON_AIR,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    sources=("mw-rn-2020", "kinner-1990", "epa-radon-2016", "osha-1910-147"),
)
