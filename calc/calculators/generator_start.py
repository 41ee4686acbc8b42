"""Whether a generator starts the well pump, and the smallest that would."""

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.fields import INVENTED, MOTOR, well_pump_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.generator import (
    CODE_LETTERS,
    generator_for,
    locked_rotor_current,
    locked_rotor_power,
    starting_dip,
)
from calc.units import apparent_power, current, hp, kVA, percent, power, share

GENERATOR = "Generator"
POINTS = 40


def generator_start(
    motor_power: float,
    code_letter: str,
    motor_volts: float,
    running_current: float,
    generator_rated: float,
    other_load: float,
    reactance: float,
    dip_limit: float,
) -> Answer:
    """Locked-rotor power and current, the dip at the start, and the smallest generator."""
    least, most = (locked_rotor_power(motor_power, each) for each in CODE_LETTERS[code_letter])
    running = motor_volts * running_current
    dip = starting_dip(most, generator_rated, reactance)
    to_start = generator_for(most, dip_limit, reactance)
    to_run = running + other_load
    return Answer(
        outputs={
            "locked_most": most,
            "locked_least": least,
            "locked_amps": locked_rotor_current(most, motor_volts),
            "running": running,
            "dip": dip,
            "to_start": to_start,
            "to_run": to_run,
            "rating_wanted": max(to_start, to_run),
        },
        findings=(
            _headline(to_run > generator_rated, dip > dip_limit),
            Finding(
                "caution",
                "Pump first.",
                "Start the pump with everything else off, then add the {other_load}. Stop it "
                "before the generator is shut down.",
            ),
        ),
        steps=_steps(CODE_LETTERS[code_letter]),
        charts=(_chart(most, reactance, generator_rated, dip, dip_limit, max(to_start, to_run)),),
    )


def _headline(overloaded: bool, dips: bool) -> Finding:
    if overloaded:
        return Finding(
            "danger",
            "Overloaded.",
            "Pump and other loads take {to_run} all the time, over the {generator_rated} it can "
            "give. It wants {rating_wanted} at the least.",
        )
    if dips:
        return Finding(
            "danger",
            "May not start it.",
            "The voltage would fall by {dip}, over {dip_limit}. A motor that does not turn takes "
            "{locked_amps} until something trips or burns. It wants {rating_wanted} at the least.",
        )
    return Finding(
        "good",
        "Starts it.",
        "The voltage falls by some {dip} for a moment, under {dip_limit}. {rating_wanted} would be "
        "the least. An estimate: have it tried with your pump.",
    )


def _steps(letter: tuple[float, float]) -> tuple[Step, ...]:
    given = {
        "k": Quantity(
            letter[1] * kVA, apparent_power, 4, "most for each horsepower, by the letter"
        ),
        "k_n": Quantity(letter[0] * kVA, apparent_power, 4, "least for each horsepower"),
        "P_1": Quantity(hp, power, 4, "one horsepower"),
    }
    return (
        Step("Taken at the start, at most", "S = k * P / P_1", given),
        Step("Taken at the start, at least", "S_n = k_n * P / P_1", given),
        Step("Current at the start, at most", "I_l = S / U_n", given),
        Step("Taken while it runs", "S_r = U_n * I", given),
        Step("Dip of the voltage", "d = S / (S + S_g / X)", given),
        Step("Generator to start it", "S_s = X * S * (1 - d_m) / d_m", given),
        Step("Generator to run it all", "S_a = S_r + S_o", given),
        Step("Smallest generator", "S_w = max(S_s, S_a)", given),
    )


def _chart(
    start: float, reactance: float, rated: float, dip: float, limit: float, needed: float
) -> Chart:
    small, big = 0.3 * min(rated, needed), 2 * max(rated, needed)
    sizes = [small + (big - small) * step / POINTS for step in range(POINTS + 1)]
    return Chart(
        title="Dip of the voltage by the size of the generator",
        says="A bigger generator dips less. Past twice the smallest one, little is won.",
        x=Axis("Generator, all-day rating", _RATED),
        y=Axis("Voltage lost at the start", share),
        lines=(Line("dip", tuple((s, starting_dip(start, s, reactance)) for s in sizes)),),
        limits=(Limit("most", limit),),
        marks=(Mark("this generator", rated, dip, True),),
    )


_RATED = Input(
    name="generator_rated",
    label="Generator's rating, all day",
    symbol="S_g",
    kind=apparent_power,
    default="5 kVA",
    origin=INVENTED,
    low=0.1 * kVA,
    high=200 * kVA,
    measure="The running figure, not the surge on the carton. Single-phase sets in kW: the same "
    "figure. Up a mountain, and on gas, it gives less: its sheet says how much.",
    group=GENERATOR,
)


def _power(name: str, label: str, symbol: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=apparent_power)


CALCULATOR = Calculator(
    name="generator_start",
    title="Generator for the well pump",
    question="Will this generator start the well pump, and how big must it be?",
    inputs=(
        Input(
            name="motor_power",
            label="Power on the motor's nameplate",
            symbol="P",
            kind=power,
            default="1 hp",
            origin=INVENTED,
            low=0.1 * hp,
            high=30 * hp,
            measure="Nameplate, control box or the bill of the pump.",
            group=MOTOR,
        ),
        Choice(
            name="code_letter",
            label="Code letter on the nameplate",
            options={
                letter: f"{letter}: {low:g} to {high:g} kVA for each hp"
                for letter, (low, high) in CODE_LETTERS.items()
            },
            default="K",
            origin=INVENTED,
            measure="A letter under CODE. Not the design letter, not the insulation class. Without "
            "one: M under 1 hp, K from 1 hp up (from memory), or the sheet's locked-rotor amps.",
            group=MOTOR,
        ),
        well_pump_fields.motor_volts,
        well_pump_fields.running_current,
        _RATED,
        Input(
            name="other_load",
            label="Other loads that run with it",
            symbol="S_o",
            kind=apparent_power,
            default="0.8 kVA",
            origin="invented: blower, refrigerator and lights",
            low=0,
            high=100 * kVA,
            measure="Add the nameplates: volts times amps. The blower of an aerator is one of "
            "them, or the pump must stay off.",
            group=GENERATOR,
        ),
        Input(
            name="reactance",
            label="Transient reactance of the generator",
            symbol="X",
            kind=share,
            default="25 %",
            origin="20 to 30 % in small sets, from memory",
            low=5 * percent,
            high=60 * percent,
            measure="X'd on its sheet. Without one leave it, and ask for a trial before you pay.",
            group=GENERATOR,
        ),
        Input(
            name="dip_limit",
            label="Dip that the motor and its contactor stand",
            symbol="d_m",
            kind=share,
            default="35 %",
            origin="common practice, no source: 30 to 35 %",
            low=5 * percent,
            high=60 * percent,
            measure="Contactors fall off at about that. Electronic drives stand less: ask.",
            group=GENERATOR,
        ),
    ),
    outputs=(
        Output(name="dip", label="Dip of the voltage at the start", symbol="d", kind=share),
        _power("rating_wanted", "Smallest generator", "S_w"),
        _power("to_start", "Generator to start the pump", "S_s"),
        _power("to_run", "Generator to run it all", "S_a"),
        _power("locked_most", "Taken at the start, at most", "S"),
        _power("locked_least", "Taken at the start, at least", "S_n"),
        Output(
            name="locked_amps", label="Current at the start, at most", symbol="I_l", kind=current
        ),
        _power("running", "Taken while it runs", "S_r"),
    ),
    work=generator_start,
    cautions=(cautions.GENERATOR, cautions.WIRING, cautions.ELECTRICITY, cautions.LOCAL_CODE),
    leaves={"locked_amps": ("locked_current",)},
    sources=("nfpa-70-430-7", "nfpa-70-430-248", "osha-1910-147"),
)
