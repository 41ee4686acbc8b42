"""Voltage lost between the panel and the motor, running and starting, and how far a gauge goes."""

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, MOTOR, well_pump_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.cable import (
    OHM_PER_KFT,
    longest_run,
    loop_resistance,
    resistance_for_length,
    starting_voltage,
    voltage_drop,
)
from calc.units import (
    ft,
    length,
    number,
    percent,
    resistance,
    share,
    temperature,
    voltage,
    wire_resistance,
)

CABLE = "Cable"
GAUGES = tuple(OHM_PER_KFT)  # from thin to thick
LEAST_RUNNING = 0.9  # of the nameplate's voltage [nema-mg-1]
LEAST_STARTING = 0.65  # of it at the moment of a start: common practice, no source
DRAWN = 4  # gauges in the chart


def cable_drop(
    supply_volts: float,
    motor_volts: float,
    running_current: float,
    locked_current: float,
    wire_gauge: str,
    cable_length: float,
    wire_temperature: float,
    drop_limit: float,
) -> Answer:
    """Voltage lost, what is left at the motor, and the longest run of this gauge."""
    each = resistance_for_length(wire_gauge, wire_temperature)
    loop = loop_resistance(cable_length, each)
    lost = voltage_drop(running_current, loop)
    if lost >= supply_volts:
        raise Refused("contradiction", "cable_length", says="would take all of {supply_volts}")
    most = drop_limit * supply_volts
    left = supply_volts - lost
    starts = starting_voltage(supply_volts, locked_current, loop)
    thinnest = next(
        (
            gauge
            for gauge in GAUGES
            if cable_length
            <= longest_run(most, running_current, resistance_for_length(gauge, wire_temperature))
        ),
        None,
    )
    return Answer(
        outputs={
            "drop": lost,
            "drop_share": lost / supply_volts,
            "motor_voltage": left,
            "longest": longest_run(most, running_current, each),
            "start_voltage": starts,
            "loop": loop,
        },
        findings=(
            _headline(lost <= most, thinnest),
            *_voltages(left / motor_volts, starts / motor_volts),
        ),
        steps=_steps(wire_gauge, each * 1000 * ft / OHM_PER_KFT[wire_gauge]),
        charts=(
            _chart(
                supply_volts,
                running_current,
                wire_gauge,
                cable_length,
                wire_temperature,
                drop_limit,
            ),
        ),
    )


def _headline(holds: bool, thinnest: str | None) -> Finding:
    if holds:
        return Finding(
            "good",
            "Thick enough.",
            "The cable takes {drop}, {drop_share}. This gauge may be {longest} long. What the wire "
            "may carry and which breaker protects it is another rule: the code's tables decide.",
        )
    help_ = (
        f"{thinnest} AWG would do."
        if thinnest
        else "No gauge of the table would do: a higher voltage, or a panel nearer to the well."
    )
    return Finding(
        "danger",
        "Too thin.",
        "The cable takes {drop}, {drop_share}, over {drop_limit}. This gauge may be {longest} "
        "long. " + help_,
    )


def _voltages(running: float, starting: float) -> tuple[Finding, ...]:
    given = {
        "least": Quantity(LEAST_RUNNING, share),
        "least_start": Quantity(LEAST_STARTING, share),
    }
    findings = []
    if running < LEAST_RUNNING:
        findings.append(
            Finding(
                "danger",
                "Too little voltage.",
                "{motor_voltage} is left at a motor made for {motor_volts}, under {least}. "
                "It runs hot and slow. Measure the voltage at the panel with the pump on and off: "
                "the cable may not be the only fault.",
                given,
            )
        )
    if starting < LEAST_STARTING:
        findings.append(
            Finding(
                "caution",
                "A weak start.",
                "At the moment of a start as little as {start_voltage} may reach the motor, under "
                "{least_start} of {motor_volts}. Torque goes with the square of it.",
                given,
            )
        )
    return tuple(findings)


def _steps(gauge: str, warmth: float) -> tuple[Step, ...]:
    table = OHM_PER_KFT[gauge] / (1000 * ft)
    given = {
        "r_t": Quantity(table, wire_resistance, 4, f"{gauge} AWG in the code's table, at 75 °C"),
        "w": Quantity(warmth, number, 4, "1 + 0.00323 for each °C over 75 °C"),
        "r": Quantity(table * warmth, wire_resistance, 4),
    }
    return (
        Step("One conductor, as warm as it is", "r = r_t * w", given),
        Step("There and back", "R = 2 * L * r", given),
        Step("Voltage lost while the pump runs", "V_d = I * R", given),
        Step("Share of the supply", "s = V_d / U", given),
        Step("Left at the motor", "U_m = U - V_d", given),
        Step("Longest run of this gauge", "L_m = d * U / (2 * I * r)", given),
        Step("Left at the moment of a start, at least", "U_s = U / (1 + R * I_l / U)", given),
    )


def _chart(
    supply: float, amps: float, gauge: str, length_: float, warm: float, limit: float
) -> Chart:
    place = min(GAUGES.index(gauge), len(GAUGES) - DRAWN)
    far = 1.5 * length_

    def line(each: str) -> Line:
        ohm = resistance_for_length(each, warm)
        return Line(f"{each} AWG", ((0.0, 0.0), (far, _share(supply, amps, far, ohm))))

    here = _share(supply, amps, length_, resistance_for_length(gauge, warm))
    return Chart(
        title="Voltage lost by the length of the cable",
        says="Twice the length, twice the loss. Three numbers lower halve it.",
        x=Axis("Length of the cable, one way", _LENGTH),
        y=Axis("Voltage lost", share),
        lines=tuple(line(each) for each in GAUGES[place : place + DRAWN]),
        limits=(Limit("most", limit),),
        marks=(Mark("this cable", length_, here, True),),
    )


def _share(supply: float, amps: float, length_: float, each: float) -> float:
    return voltage_drop(amps, loop_resistance(length_, each)) / supply


_LENGTH = Input(
    name="cable_length",
    label="Length of the cable, one way",
    symbol="L",
    kind=length,
    us="ft",
    default="300 ft",
    origin=INVENTED,
    low=1 * ft,
    high=5000 * ft,
    measure="From the panel to the well head, and down to the motor. The drop alone is half the "
    "story.",
    group=CABLE,
    sure="10 ft",
)

CALCULATOR = Calculator(
    name="cable_drop",
    title="Voltage lost in the pump's cable",
    question="Is the cable thick enough for this motor at this distance?",
    inputs=(
        Input(
            name="supply_volts",
            label="Voltage at the panel with the pump running",
            symbol="U",
            kind=voltage,
            default="230 V",
            origin=INVENTED,
            low=90,
            high=600,
            measure="By a licensed person, pump running, at the evening's peak. A service of 240 V "
            "may lie 5 % lower on a bad day.",
            group=MOTOR,
            sure="2 V",
        ),
        well_pump_fields.motor_volts,
        well_pump_fields.running_current,
        well_pump_fields.locked_current,
        Choice(
            name="wire_gauge",
            label="Gauge of the copper",
            options={each: f"{each} AWG" for each in GAUGES},
            default="12",
            origin=INVENTED,
            measure="Printed on the jacket. Where two gauges are spliced together, reckon each "
            "length by itself and add the voltages.",
            group=CABLE,
        ),
        _LENGTH,
        Input(
            name="wire_temperature",
            label="Temperature of the copper",
            symbol="T",
            kind=temperature,
            default="75 °C",
            origin="that of the code's table [nfpa-70-table-8]",
            low=temperature.unit("°C").into_si(-30),
            high=temperature.unit("°C").into_si(90),
            measure="75 °C is the safe side. For a check against an ohmmeter take the water's.",
            group=CABLE,
        ),
        Input(
            name="drop_limit",
            label="Share of the voltage that may be lost",
            symbol="d",
            kind=share,
            default="5 %",
            origin="recommended for branch and feeder together [nfpa-70-drop]",
            low=0.5 * percent,
            high=20 * percent,
            measure="A recommendation of the code, no rule. The motor's sheet or local rules may "
            "ask for less.",
            group=CABLE,
        ),
    ),
    outputs=(
        Output(name="drop", label="Voltage lost while the pump runs", symbol="V_d", kind=voltage),
        Output(name="drop_share", label="Share of the supply", symbol="s", kind=share),
        Output(name="motor_voltage", label="Left at the motor", symbol="U_m", kind=voltage),
        Output(
            name="longest", label="Longest run of this gauge", symbol="L_m", kind=length, us="ft"
        ),
        Output(
            name="start_voltage",
            label="Left at the moment of a start, at least",
            symbol="U_s",
            kind=voltage,
        ),
        Output(
            name="loop",
            label="What an ohmmeter at the top reads too much",
            symbol="R",
            kind=resistance,
        ),
    ),
    work=cable_drop,
    cautions=(cautions.WIRING, cautions.ELECTRICITY, cautions.LOCAL_CODE),
    sources=(
        "nfpa-70-table-8",
        "nfpa-70-430-248",
        "nfpa-70-drop",
        "nema-mg-1",
        "osha-1910-147",
    ),
)
