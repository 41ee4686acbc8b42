"""How much radon dies away in a storage tank: the reason why storage is no treatment."""

from dataclasses import replace

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.fields import INVENTED, open_tank_fields, radon_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.decay import RADON, decay_constant, remaining, remaining_mixed, time_until
from calc.units import day, duration, gal, radon, rate, share, volume

POINTS = 24
LEAST_SHOWN = 8 * day
FURTHEST = 1000 * day


def radon_decay_in_storage(
    raw_radon: float,
    target_radon: float,
    storage_water: float,
    daily_use: float,
    storage_mixing: str,
) -> Answer:
    """Radon that decay alone leaves, and the days it would need."""
    residence = storage_water / daily_use
    mixed = storage_mixing == "mixed"
    constant = decay_constant(RADON)
    left = remaining_mixed(residence) if mixed else remaining(residence)
    ratio = raw_radon / target_radon
    needed = max((ratio - 1) / constant if mixed else time_until(1 / ratio), 0.0)
    given = {
        "k": Quantity(constant, rate, label="decay of radon"),
        "T_h": Quantity(RADON, _RESIDENCE, 5, "half-life of radon"),
        "t_n": Quantity(needed, _NEEDED, label="time that decay alone needs for the target"),
    }
    met = raw_radon * left <= target_radon
    formula = "f_l = 1 / (1 + k * t_r)" if mixed else "f_l = (1 / 2)**(t_r / T_h)"
    steps = (
        Step("Days in the tank", "t_r = V_w / Q_u", given),
        Step("Share left", formula, given),
        Step("Left by decay alone", "C_s = C_r * f_l", given),
        Step("Water that would have to stand", "V_n = t_n * Q_u", given),
    )
    return Answer(
        outputs={
            "residence": residence,
            "left_share": left,
            "stored_radon": raw_radon * left,
            "days_needed": needed,
            "storage_needed": needed * daily_use,
        },
        findings=(
            _headline(met),
            Finding(
                "caution",
                "The rest goes somewhere.",
                "A tank that is open to air also gives radon off. That air must be vented "
                "outdoors, or it fills the room.",
            ),
        ),
        steps=steps,
        charts=(_chart(raw_radon, residence, raw_radon * left, target_radon),),
    )


def _headline(met: bool) -> Finding:
    text = "Decay alone leaves {stored_radon}, {left_share} of it. "
    if met:
        return Finding(
            "caution",
            "Low enough, on paper.",
            text + "It holds for this use only: a house full of guests halves the days.",
        )
    return Finding(
        "danger",
        "No treatment.",
        text + "To come to {target_radon} the water would have to stand {days_needed}, "
        "{storage_needed} of it.",
    )


def _chart(raw: float, residence: float, left: float, target: float) -> Chart:
    last = max(LEAST_SHOWN, min(2 * residence, FURTHEST), residence)
    times = [i * last / POINTS for i in range(POINTS + 1)]
    return Chart(
        title="Radon left by decay in storage",
        says="Half is gone after 3.8 days where the first water in is the first out, later in a "
        "tank that mixes.",
        x=Axis("Days in the tank", _RESIDENCE),
        y=Axis("Radon left in the water", radon),
        lines=(
            Line("first in, first out", tuple((t, raw * remaining(t)) for t in times)),
            Line("mixed", tuple((t, raw * remaining_mixed(t)) for t in times)),
        ),
        limits=(Limit("target", target),),
        marks=(Mark("this tank", residence, left, here=True),),
    )


_RESIDENCE = Output(
    name="residence", label="Time in the tank", symbol="t_r", kind=duration, us="days", si="days"
)
_NEEDED = Output(
    name="days_needed",
    label="Time that decay alone needs for the target",
    kind=duration,
    us="days",
    si="days",
)
CALCULATOR = Calculator(
    name="radon_decay_in_storage",
    title="Radon in stored water",
    question="How much radon does storage take off by decay, and is that enough?",
    inputs=(
        radon_fields.raw_radon,
        radon_fields.target_radon,
        Input(
            name="storage_water",
            label="Water that stands in storage",
            symbol="V_w",
            kind=volume,
            default="300 gal",
            origin=INVENTED,
            low=1 * gal,
            high=1e5 * gal,
            measure="What is in it on an average day, not the tank's size: between the level at "
            "which it fills and full.",
            group="Storage",
            sure="10 %",
        ),
        replace(open_tank_fields.daily_use, group="Storage"),
        Choice(
            name="storage_mixing",
            label="How water goes through it",
            options={
                "mixed": "mixed: in and out near each other, or at the top",
                "plug": "first in, first out: baffled, or several tanks in a row",
            },
            default="mixed",
            origin="most single tanks mix",
            measure="Follow inlet and outlet. Where nobody knows: mixed, the worse one.",
            group="Storage",
        ),
    ),
    outputs=(
        _RESIDENCE,
        Output(name="left_share", label="Share left by decay", symbol="f_l", kind=share),
        Output(name="stored_radon", label="Radon left by decay alone", symbol="C_s", kind=radon),
        _NEEDED,
        Output(
            name="storage_needed",
            label="Water that would have to stand for it",
            symbol="V_n",
            kind=volume,
        ),
    ),
    work=radon_decay_in_storage,
    cautions=(cautions.VENT_OUTDOORS, cautions.RADON_HEALTH, cautions.LOCAL_CODE),
    sources=("icrp-107", "nrc-1999", "epa-1999-proposal"),
)
