"""Iron that must rust before a filter: the oxidant, the acid it makes, and the time it takes."""

from dataclasses import replace
from math import log
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import CHEMISTRY, INVENTED, treatment_fields, water_fields
from calc.fields.water_fields import LEAST_PH
from calc.levels import LEVELS
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.calcite import USUAL_STRENGTH
from calc.physics.carbonate import (
    CACO3_EQUIVALENT,
    Carbonate,
    co2_at_rest,
    from_ph,
    log_water,
)
from calc.physics.iron_oxidation import OXYGEN, RATE, SCATTER, half_time
from calc.physics.iron_removal import (
    COSTS,
    Cost,
    after_acid,
    cost,
    left_after,
    oxygen_pressure,
    oxygen_saturation,
    stay_needed,
)
from calc.units import (
    L,
    atm,
    concentration,
    duration,
    hardness,
    mg,
    minute,
    number,
    share,
    volume,
)

MG_L = mg / L
# After bleach or permanganate, common practice, no source.
CHEMICAL_STAY = 20 * minute
DROP = 0.1  # in the pH, from which the acid is worth a word
BLACK = 0.05 * MG_L  # manganese that stains, [cfr-143-3]
MANGANESE_PH = 8.5  # under it bleach takes hours over manganese, from memory
POINTS = 40


class _Tank(NamedTuple):
    """What goes on in the contact tank: s, kg/m³.

    half   -- time in which half rusts, counted at the pH after the acid; None with no oxygen left
              or where a chemical does it at once
    stay   -- that the largest flow stays
    left   -- iron left by the law, ten times slower, ten times faster; None as `half`
    needed -- stay that leaves what may be left
    """

    half: float | None
    stay: float
    left: tuple[float, float, float] | None
    needed: float | None


def iron_contact(
    raw_iron: float,
    manganese: float,
    oxidant: str,
    rust_ph: float,
    alkalinity: float,
    water_temperature: float,
    oxygen: float,
    contact_volume: float,
    contact_tanks: float,
    contact_flow: float,
    iron_target: float,
) -> Answer:
    """What the oxidation takes, the pH it leaves, and whether it is done in time."""
    before = _water(rust_ph, alkalinity, water_temperature)
    taken = cost(oxidant, raw_iron, 0.0 if oxidant == "air" else manganese)
    strength = USUAL_STRENGTH * before.alkalinity
    after = after_acid(before, taken.alkalinity, water_temperature, strength)
    short = oxidant == "air" and oxygen <= taken.oxidant
    half = None
    if oxidant == "air" and not short:
        pressure = oxygen_pressure(oxygen - taken.oxidant, water_temperature)
        half = half_time(after.ph, water_temperature, pressure)
    tank = _tank(half, contact_volume / contact_flow, contact_tanks, raw_iron, iron_target)
    if oxidant != "air":
        tank = tank._replace(needed=CHEMICAL_STAY)
    law, slow, fast = tank.left or (None, None, None)
    return Answer(
        outputs={
            "oxidant_dose": taken.oxidant,
            "alkalinity_used": taken.alkalinity,
            "ph_after": after.ph,
            "iron_half": half,
            "contact_stay": tank.stay,
            "iron_left": law,
            "iron_left_slow": slow,
            "iron_left_fast": fast,
            "stay_needed": tank.needed,
            "tank_needed": None if tank.needed is None else tank.needed * contact_flow,
            "solids_made": taken.solids,
        },
        findings=(
            _headline(tank, short, oxidant, iron_target),
            *_more(before, after, oxidant, manganese, alkalinity, taken),
        ),
        steps=_steps(oxidant, after, water_temperature, tank),
        charts=() if half is None else (_chart(half, rust_ph, tank, contact_tanks),),
    )


def _water(ph: float, alkalinity: float, temperature: float) -> Carbonate:
    charge = alkalinity / CACO3_EQUIVALENT
    water = from_ph(ph, charge, temperature, USUAL_STRENGTH * charge)
    if water.co2 > co2_at_rest(temperature, 1.0):
        says = "with an alkalinity of {alkalinity} would be soda water: measure both again"
        raise Refused("contradiction", "rust_ph", says=says)
    return water


def _tank(half: float | None, stay: float, count: float, iron: float, target: float) -> _Tank:
    if half is None:
        return _Tank(None, stay, None, None)
    law, slow, fast = (
        iron * left_after(half * times, stay, count) for times in (1.0, SCATTER, 1 / SCATTER)
    )
    return _Tank(half, stay, (law, slow, fast), stay_needed(half, target / iron, count))


def _headline(tank: _Tank, short: bool, oxidant: str, target: float) -> Finding:
    if short:
        return Finding(
            "danger",
            "Too little air.",
            "Rusting takes {oxidant_dose} of oxygen, the water brings {oxygen}. What is left over "
            "stays dissolved however long it stands. More air first.",
        )
    if oxidant != "air":
        if tank.stay >= CHEMICAL_STAY:
            return Finding(
                "good",
                "Time enough.",
                "The iron is rust within a minute or so of the dose; 20 minutes are common "
                "practice for the grains to grow, and {contact_stay} are there.",
            )
        return Finding(
            "caution",
            "Short of time.",
            "The iron is rust within a minute or so, but {contact_stay} is less than the 20 "
            "minutes of common practice for grains that a filter can hold. {tank_needed} would "
            "do.",
        )
    return _by_air(tank.left or (0.0, 0.0, 0.0), target)


def _by_air(left: tuple[float, float, float], target: float) -> Finding:
    law, slow, fast = left
    if slow <= target:
        return Finding(
            "good",
            "Rusts in time.",
            "Even in a water ten times slower than the law {iron_left_slow} is left.",
        )
    if law <= target:
        return Finding(
            "caution",
            "By the law it does.",
            "{iron_left} is left by the law, {iron_left_slow} in a water ten times slower. Try a "
            "jar of this water, with this air, for {contact_stay}: filter it and test what passes.",
        )
    if fast <= target:
        return Finding(
            "caution",
            "By the law it does not.",
            "{iron_left} is left by the law; only a water faster than it would do. It takes "
            "{stay_needed}, a tank of {tank_needed}, or a higher pH: one step up is a hundred "
            "times.",
        )
    return Finding(
        "danger",
        "Does not rust here.",
        "Even ten times faster than the law {iron_left_fast} is left. Raise the pH first, or use "
        "bleach or a catalytic bed.",
    )


def _more(
    before: Carbonate,
    after: Carbonate,
    oxidant: str,
    manganese: float,
    alkalinity: float,
    taken: Cost,
) -> list[Finding]:
    found = []
    if taken.alkalinity >= alkalinity:
        found.append(
            Finding(
                "danger",
                "The acid wins.",
                "Rusting makes more acid than this water has alkalinity: {alkalinity_used} against "
                "{alkalinity}. It turns sour and the iron stays. Neutralize first.",
            )
        )
    elif before.ph - after.ph > DROP:
        low = after.ph < LEAST_PH
        found.append(
            Finding(
                "caution",
                "Iron makes acid.",
                "The pH falls to {ph_after} unless the carbon dioxide can leave. "
                + (
                    "That is under the 6.5 of US EPA's secondary standard (for public supplies, "
                    "advice only): neutralize before the iron."
                    if low
                    else "Rusting is slowest at that pH, and counted there."
                ),
            )
        )
    if manganese >= BLACK:
        found.append(_manganese(oxidant, after.ph))
    return found


def _manganese(oxidant: str, ph: float) -> Finding:
    who, epa = (next(i for i in LEVELS["manganese"] if i.body == b) for b in ("WHO", "US EPA"))
    health = (
        " {manganese} is a nuisance from 0.05 mg/L; for health WHO advises at most {who} for "
        f"bottle-fed infants (provisional, {who.year}), US EPA {{epa}} for a lifetime (advisory, "
        f"{epa.year})."
    )
    given = {
        "who": Quantity(who.value, concentration, 1),
        "epa": Quantity(epa.value, concentration, 1),
    }
    if oxidant == "air":
        return Finding(
            "caution",
            "Air leaves the manganese.",
            "Under pH 9 air takes hours to days over it. It needs permanganate, or bleach and a "
            "bed with a manganese coat." + health,
            given,
        )
    if oxidant == "bleach" and ph < MANGANESE_PH:
        return Finding(
            "caution",
            "Manganese needs the bed.",
            "Bleach alone takes hours over it under pH 8.5. It must meet a bed with a manganese "
            "coat, with chlorine left in the water." + health,
            given,
        )
    return Finding(
        "caution", "Manganese too.", "The dose counts it. Test behind the filter." + health, given
    )


def _steps(oxidant: str, after: Carbonate, temperature: float, tank: _Tank) -> tuple[Step, ...]:
    of_iron, of_mn = COSTS[oxidant]
    air = oxidant == "air"
    given = {
        "d_i": Quantity(of_iron.oxidant, number, 4, "oxidant for each part of iron"),
        "d_m": Quantity(of_mn.oxidant, number, 4, "oxidant for each part of manganese"),
        "a_i": Quantity(of_iron.alkalinity, number, 4, "alkalinity for each part of iron"),
        "a_m": Quantity(of_mn.alkalinity, number, 4, "alkalinity for each part of manganese"),
        "z_i": Quantity(of_iron.solids, number, 4, "solids from each part of iron"),
        "z_m": Quantity(of_mn.solids, number, 4, "solids from each part of manganese"),
    }
    sums = (  # air leaves the manganese
        ("Oxidant that it takes", "D = d_i * F", "D = d_i * F + d_m * C_Mn"),
        ("Alkalinity used", "A_u = a_i * F", "A_u = a_i * F + a_m * C_Mn"),
        ("Dry solids made", "S = z_i * F", "S = z_i * F + z_m * C_Mn"),
    )
    steps = [Step(label, iron if air else both, given) for label, iron, both in sums]
    steps.append(Step("The water stays at the largest flow", "t_k = V_c / Q_c", given))
    if tank.half is not None:
        steps += _time_steps(after, temperature)
    elif not air:
        given = {"t_20": Quantity(CHEMICAL_STAY, duration, 3, "common practice")}
        steps += [
            Step("Time that it should stay", "t_n = t_20", given),
            Step("Water that the tanks must hold", "V_n = t_n * Q_c", given),
        ]
    return tuple(steps)


def _time_steps(after: Carbonate, temperature: float) -> list[Step]:
    given = {
        "pH_e": Quantity(after.ph, number, 5, "pH after the acid, found by trial"),
        "p_w": Quantity(-log_water(temperature), number, 6, "ion product of water, pKw"),
        "C_s": Quantity(oxygen_saturation(temperature), concentration, 4, "oxygen under air"),
        "p_o": Quantity(OXYGEN / atm, number, 4, "oxygen in the air, atmospheres"),
        "k": Quantity(RATE * minute, number, 3, "rate of the law, L²/(mol² atm min)"),
        "n_2": Quantity(log(2), number, 4, "natural logarithm of 2"),
        "m": Quantity(minute, duration, 4, "a minute"),
        "s": Quantity(SCATTER, number, 3, "times that real waters lie off the law"),
    }
    return [
        Step("Hydroxide, mol/L", "o = 10**(pH_e - p_w)", given | {"o": _hydroxide(after, given)}),
        Step(
            "Half turns to rust in",
            "t_h = n_2 * m / (k * o**2 * p_o * (C_O - D) / C_s)",
            given | {"o": _hydroxide(after, given)},
        ),
        Step("Iron left by the law", "F_l = F * (1 + n_2 * t_k / (N * t_h))**-N", given),
        Step("Iron left, ten times slower", "F_w = F * (1 + n_2 * t_k / (N * t_h * s))**-N", given),
        Step("Iron left, ten times faster", "F_q = F * (1 + n_2 * t_k * s / (N * t_h))**-N", given),
        Step(
            "Time that it should stay",
            "t_n = max(N * t_h / n_2 * ((F / F_t)**(1 / N) - 1), 0)",
            given,
        ),
        Step("Water that the tanks must hold", "V_n = t_n * Q_c", given),
    ]


def _hydroxide(after: Carbonate, given: dict[str, Quantity]) -> Quantity:
    return Quantity(10 ** (after.ph - given["p_w"].value), number, 4)


def _chart(half: float, ph: float, tank: _Tank, tanks: float) -> Chart:
    """Iron left against the pH. The law goes with its square, so one half time gives all; that
    the acid lowers another pH by as much is near enough for a picture."""
    places = [5.5 + 3.0 * n / POINTS for n in range(POINTS + 1)]

    def line(label: str, times: float) -> Line:
        def left(at: float) -> float:
            return left_after(times * half * 100 ** (ph - at), tank.stay, tanks)

        return Line(label, tuple((each, left(each)) for each in places))

    return Chart(
        title="Iron still dissolved behind the tank, by the pH in it",
        says="One step up in pH is a hundred times the speed. Real waters lie between the outer "
        "lines.",
        x=Axis("pH where the iron is to rust", number),
        y=Axis("Share of the iron still dissolved", share),
        lines=(
            line("ten times slower", SCATTER),
            line("by the law", 1.0),
            line("ten times faster", 1 / SCATTER),
        ),
        marks=(Mark("this tank", ph, left_after(half, tank.stay, tanks), here=True),),
    )


CALCULATOR = Calculator(
    name="iron_contact",
    title="Time for the iron to rust",
    question="What does it take to turn the iron to rust, what does that do to the pH, and is the "
    "contact tank big enough?",
    inputs=(
        treatment_fields.raw_iron,
        treatment_fields.manganese,
        treatment_fields.oxidant,
        treatment_fields.rust_ph,
        replace(
            water_fields.alkalinity,
            measure="Drop test on the water that enters the contact tank: behind a neutralizer it "
            "is higher than in the well.",
        ),
        replace(
            water_fields.water_temperature,
            group=CHEMISTRY,
            measure="Thermometer in running water, in the coldest month: 15 °C (27 °F) colder is "
            "ten times slower.",
        ),
        Input(
            name="oxygen",
            label="Oxygen in the water that enters the contact tank",
            symbol="C_O",
            kind=concentration,
            default="8 mg/L",
            origin=INVENTED,
            low=0,
            high=20 * MG_L,
            measure="Meter or drop test behind the air. A well with dissolved iron brings next to "
            "none; water bubbled for long holds 11 mg/L at 50 °F.",
            group=CHEMISTRY,
            sure="1 mg/L",
        ),
        treatment_fields.contact_volume,
        Input(
            name="contact_tanks",
            label="Equal tanks or chambers, one after another",
            symbol="N",
            kind=number,
            default="1",
            origin=INVENTED,
            low=1,
            high=20,
            measure="Whole number. One that air stirs is 1. Walls that the water must pass make "
            "chambers; a long pipe is as good as 20.",
            group=treatment_fields.TANK,
        ),
        treatment_fields.contact_flow,
        Input(
            name="iron_target",
            label="Dissolved iron that may be left",
            symbol="F_t",
            kind=concentration,
            default="0.3 mg/L",
            origin="US EPA, secondary standard, stains [cfr-143-3]",
            low=0.01 * MG_L,
            high=5 * MG_L,
            measure="You decide. What is left passes the filter and stains.",
            group=treatment_fields.TANK,
        ),
    ),
    outputs=(
        Output(
            name="oxidant_dose",
            label="Oxygen, chlorine or permanganate that it takes",
            symbol="D",
            kind=concentration,
        ),
        Output(
            name="alkalinity_used",
            label="Alkalinity used by the rusting",
            symbol="A_u",
            kind=hardness,
        ),
        Output(
            name="ph_after",
            label="pH after it, if no carbon dioxide leaves",
            kind=number,
            low=LEAST_PH,
            outside="Acid.",
        ),
        Output(
            name="iron_half",
            label="Half of the iron turns to rust in",
            symbol="t_h",
            kind=duration,
            digits=2,
            none="no law: a chemical does it at once, or oxygen runs out",
        ),
        Output(
            name="contact_stay", label="The water stays in the tanks", symbol="t_k", kind=duration
        ),
        Output(
            name="iron_left",
            label="Iron still dissolved behind the tanks, by the law",
            symbol="F_l",
            kind=concentration,
            digits=2,
            none="no law for it",
        ),
        Output(
            name="iron_left_slow",
            label="The same in a water ten times slower",
            symbol="F_w",
            kind=concentration,
            digits=2,
            none="no law for it",
        ),
        Output(
            name="iron_left_fast",
            label="The same in a water ten times faster",
            symbol="F_q",
            kind=concentration,
            digits=2,
            none="no law for it",
        ),
        Output(
            name="stay_needed",
            label="Time that it should stay",
            symbol="t_n",
            kind=duration,
            digits=2,
            none="no time will do",
        ),
        Output(
            name="tank_needed",
            label="Water that the tanks must hold",
            symbol="V_n",
            kind=volume,
            digits=2,
            none="no tank will do",
        ),
        Output(name="solids_made", label="Dry rust and oxide made", symbol="S", kind=concentration),
    ),
    work=iron_contact,
    cautions=(
        cautions.CHLORINE,
        "Permanganate. It burns skin and eyes, stains all it touches, and sets fire to oil and "
        "rags. Gloves and goggles; never beside fuel, and never with acid.",
        cautions.NO_INDEX,
        cautions.LOCAL_CODE,
    ),
    sources=(
        "cdc-drilled",
        "wtpd-iron",
        "singer-stumm-1970",
        "king-1998",
        "emmenegger-1998",
        "plummer-1982",
        "stumm-morgan-1996",
        "davies-1962",
        "benson-krause-1984",
        "wi-nr-811-52",
        "cfr-143-3",
        "who-gdwq-2022",
        "epa-manganese-2004",
    ),
)
