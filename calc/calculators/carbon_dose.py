"""What a bed of carbon shines, how far off it must stand, and what is in it when it is spent."""

from math import e, log

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, open_tank_fields, radon_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.carbon_bed import (
    GAMMA,
    LEAD_DECAY,
    RADON_DECAY,
    distance_for,
    gamma_dose_rate,
    lead_210,
    retained_activity,
    wait_before_opening,
)
from calc.units import (
    activity,
    age,
    dose,
    dose_rate,
    duration,
    ft,
    hour,
    lb,
    length,
    mass,
    mSv,
    number,
    rate,
    specific_activity,
    year,
)

PUBLIC = 1 * mSv  # in a year, for the public, [nrc-1999-carbon] p. 169
WELL_WITHIN = PUBLIC / 10  # "well within" it says there; a tenth is our reading, no source
ARM = 1 * ft  # from the middle of the bed: hands on a tank of 10 in
MBq, ONE = 1e6, 1.0
POINTS = 60


def carbon_dose(
    raw_radon: float,
    treated_radon: float,
    daily_use: float,
    bed_distance: float,
    bed_hours: float,
    carbon_age: float,
    carbon_mass: float,
    open_rate: float,
) -> Answer:
    """Dose rate and yearly dose, distances, lead-210, and the wait before the bed is opened."""
    if treated_radon >= raw_radon:
        raise Refused("contradiction", "treated_radon", says="must be below {raw_radon}")
    held = retained_activity(daily_use, raw_radon, treated_radon)
    near = gamma_dose_rate(held, bed_distance)
    lead = lead_210(held, carbon_age)
    at_arm = gamma_dose_rate(held, ARM)
    wait = wait_before_opening(at_arm, open_rate)
    outputs = {
        "held": held,
        "dose_rate": near,
        "yearly": near * bed_hours,
        "at_arm": at_arm,
        "public_distance": distance_for(held, PUBLIC / bed_hours),
        "tenth_distance": distance_for(held, WELL_WITHIN / bed_hours),
        "lead_held": lead,
        "lead_share": lead / carbon_mass,
        "wait": wait,
    }
    return Answer(
        outputs=outputs,
        findings=(_headline(near * bed_hours), *_opening(wait)),
        steps=_steps(max(at_arm / open_rate, 1.0)),
        charts=(
            _by_distance(held, bed_distance, PUBLIC / bed_hours),
            _by_age(held, carbon_mass, carbon_age),
        ),
    )


def _headline(yearly: float) -> Finding:
    given = {"public": Quantity(PUBLIC, dose), "tenth": Quantity(WELL_WITHIN, dose)}
    if yearly > PUBLIC:
        return Finding(
            "danger",
            "Too near.",
            "Up to {yearly} in a year, over the {public} that is the most for the public from "
            "all such sources. Move the bed {public_distance} away at the least, better "
            "{tenth_distance}, or choose aeration.",
            given,
        )
    if yearly > WELL_WITHIN:
        return Finding(
            "caution",
            "Farther off would be better.",
            "Up to {yearly} in a year. That is under {public}, but not well within it. From "
            "{tenth_distance} on it is under {tenth}.",
            given,
        )
    return Finding(
        "good",
        "Far enough off.",
        "Up to {yearly} in a year, under a tenth of the {public} for the public. It holds for this "
        "place and these hours; a bed moved into the room is another matter.",
        given,
    )


def _opening(wait: float) -> tuple[Finding, ...]:
    spent = Finding(
        "caution",
        "Ask before you throw it away.",
        "After {carbon_age} the carbon holds {lead_held} of lead-210, {lead_share}, and as much "
        "polonium-210. No federal level says what that is. The state's radiation office does.",
    )
    if wait <= 0:
        return (spent,)
    first = Finding(
        "caution",
        "Shut it off and wait.",
        "{wait} with no water through it brings the {at_arm} at its wall down to {open_rate}. "
        "Bypass it, tag it, come back.",
    )
    return first, spent


def _steps(fold: float) -> tuple[Step, ...]:
    given = {
        "e": Quantity(e, number, 6, "base of natural logarithms"),
        "n": Quantity(log(fold), number, 4, "natural logarithm of H_a / H_o, at least 0"),
        "k_r": Quantity(RADON_DECAY, rate, 5, "decay constant of radon"),
        "k_l": Quantity(LEAD_DECAY, rate, 5, "decay constant of lead-210"),
        "h": Quantity(GAMMA * MBq / ONE**2, dose_rate, 4, "dose rate 1 m from 1 MBq of radon"),
        "A_1": Quantity(MBq, activity, 4, "1 MBq"),
        "r_1": Quantity(ONE, length, 4, "1 m"),
        "r_a": Quantity(ARM, length, 4, "from the middle of the bed to hands on it"),
        "D_p": Quantity(PUBLIC, dose, label="a year's most for the public"),
        "D_t": Quantity(WELL_WITHIN, dose, label="a tenth of it"),
    }
    return (
        Step("Radon held when as much decays as comes in", "A = Q_u * (C_r - C_w) / k_r", given),
        Step("Dose rate where people are", "H = h * A / A_1 * (r_1 / r)**2", given),
        Step("Dose in a year", "D = H * t_h", given),
        Step("Dose rate at the tank's wall", "H_a = h * A / A_1 * (r_1 / r_a)**2", given),
        Step("Distance for the public's most", "r_p = r_1 * sqrt(h * A / A_1 * t_h / D_p)", given),
        Step("Distance for a tenth of it", "r_t = r_1 * sqrt(h * A / A_1 * t_h / D_t)", given),
        Step("Lead-210 in the carbon", "A_l = A * (1 - e**(-k_l * t_c))", given),
        Step("In each gram of carbon", "a = A_l / m", given),
        Step("Wait before it is opened", "t_w = n / k_r", given),
    )


def _by_distance(held: float, here: float, most: float) -> Chart:
    far = max(2 * here, 10 * ft)
    near = min(here, 2 * ft)
    places = [near + (far - near) * step / POINTS for step in range(POINTS + 1)]
    line = tuple((place, gamma_dose_rate(held, place)) for place in places)
    limit = Limit("1 mSv in these hours", most)
    return Chart(
        title="Dose rate by distance from the bed",
        says="Twice the distance, a quarter of the dose rate. The first feet bring the most.",
        x=Axis("Distance from the middle of the bed", _DISTANCE),
        y=Axis("Dose rate, at most", dose_rate),
        lines=(Line("dose rate", line),),
        limits=(limit,) if most <= line[0][1] else (),
        marks=(Mark("here", here, gamma_dose_rate(held, here), True),),
    )


def _by_age(held: float, carbon: float, now: float) -> Chart:
    end = max(1.5 * now, 5 * year)
    ages = [end * step / POINTS for step in range(POINTS + 1)]
    return Chart(
        title="Lead-210 in the carbon over the years",
        says="It builds up almost in proportion to the time in service: half of what it could "
        "ever be takes 22 years.",
        x=Axis("Time in service", age),
        y=Axis("Lead-210 in each gram", specific_activity),
        lines=(Line("lead-210", tuple((t, lead_210(held, t) / carbon) for t in ages)),),
        marks=(Mark("this carbon", now, lead_210(held, now) / carbon, True),),
    )


_DISTANCE = Input(
    name="bed_distance",
    label="Distance from the middle of the bed to where people are",
    symbol="r",
    kind=length,
    default="6 ft",
    origin=INVENTED,
    low=1 * ft,
    high=60 * ft,
    measure="The shortest way, through walls and floors, from the line down the middle of the "
    "tank to a bed, a chair, a bench. Look up: the bedroom over it is often nearest.",
    group="Place",
    sure="0.5 ft",
)

CALCULATOR = Calculator(
    name="carbon_dose",
    title="Dose from a carbon bed",
    question="How much gamma dose does the carbon give, and what is in it when it is spent?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.treated_radon,
        open_tank_fields.daily_use,
        _DISTANCE,
        Input(
            name="bed_hours",
            label="Hours in a year that somebody spends there",
            symbol="t_h",
            kind=duration,
            us="h",
            si="h",
            default="2920 h",
            origin="eight hours every night",
            low=1 * hour,
            high=8766 * hour,
            measure="Of the one person who is there most. A bedroom 2 900, a desk 2 000, a washing "
            "machine 100.",
            group="Place",
        ),
        Input(
            name="carbon_age",
            label="Time the carbon has been in service",
            symbol="t_c",
            kind=age,
            default="3 years",
            origin=INVENTED,
            low=0.1 * year,
            high=40 * year,
            measure="From its tag. Without one, take the age of the installation.",
            group="Spent carbon",
        ),
        Input(
            name="carbon_mass",
            label="Dry mass of the carbon",
            symbol="m",
            kind=mass,
            default="60 lb",
            origin="2 ft³ at 30 lb/ft³, common practice, no source",
            low=1 * lb,
            high=3000 * lb,
            measure="From the bags. Wet carbon weighs about twice as much.",
            group="Spent carbon",
            sure="10 %",
        ),
        Input(
            name="open_rate",
            label="Dose rate accepted at the tank's wall when it is opened",
            symbol="H_o",
            kind=dose_rate,
            default="0.1 µSv/h",
            origin="about what ground and walls give anywhere, from memory",
            low=0.01e-3 * mSv / hour,
            high=100e-3 * mSv / hour,
            measure="You decide, with the radiation office. Then hold a survey meter to the tank: "
            "the figure is a reckoning, the meter is a reading.",
            group="Spent carbon",
        ),
    ),
    outputs=(
        Output(name="dose_rate", label="Dose rate there, at most", symbol="H", kind=dose_rate),
        Output(
            name="yearly",
            label="Dose in a year, at most",
            symbol="D",
            kind=dose,
            high=PUBLIC,
            outside="Over the most for the public.",
        ),
        Output(
            name="public_distance",
            label="Under 1 mSv in a year from",
            symbol="r_p",
            kind=length,
        ),
        Output(
            name="tenth_distance",
            label="Under 0.1 mSv in a year from",
            symbol="r_t",
            kind=length,
        ),
        Output(
            name="at_arm",
            label="Dose rate at the tank's wall, at most",
            symbol="H_a",
            kind=dose_rate,
        ),
        Output(name="held", label="Radon held in the bed", symbol="A", kind=activity),
        Output(name="lead_held", label="Lead-210 in the carbon", symbol="A_l", kind=activity),
        Output(
            name="lead_share",
            label="Lead-210 in each gram of dry carbon",
            symbol="a",
            kind=specific_activity,
        ),
        Output(
            name="wait",
            label="Wait, shut off, before it is opened",
            symbol="t_w",
            kind=duration,
            us="days",
            si="days",
        ),
    ),
    work=carbon_dose,
    cautions=(cautions.GAMMA, cautions.SPENT_CARBON, cautions.LOCAL_CODE),
    sources=(
        "nrc-1999-carbon",
        "stuk-carbon",
        "jaeger-1968",
        "icrp-107",
    ),
)
