"""What the outlet passes at its own worst pressure, from a test at another."""

from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Line, Mark
from calc.errors import Refused
from calc.fields import (
    INVENTED,
    OUTLET,
    flow_input,
    house_tank_fields,
    open_tank_fields,
    well_pump_fields,
)
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.restriction import (
    flow_coefficient,
    flow_of_compensating,
)
from calc.units import flow, gauge_pressure, number, psi, share
from calc.units import flow_coefficient as coefficient_kind

EXPONENT = 0.1  # the most of a good compensating device: common practice, no source
PLAIN = 0.5  # the exponent of a plain hole
NEARLY = 0.02  # less than a pail can tell
POINTS = 25


class _Test(NamedTuple):
    """Pressure that drives the flow, in the test and at the worst; what the device is."""

    tested: float
    worst: float
    threshold: float
    exponent: float
    caught: float

    def passed(self, drop: float) -> float:
        """Flow at another drop."""
        return flow_of_compensating(self.caught, self.tested, drop, self.threshold, self.exponent)


def outlet_limit(
    limit: str,
    outlet_device: str,
    device_threshold: float,
    outlet: float,
    house_gauge: float,
    pump_shut_off: float,
    caught: str,
    tap_flow: float,
    tap_pressure: float,
    cut_out: float,
) -> Answer:
    """The most that leaves, whatever the house pressure, and how much of it the test showed."""
    before, compensating = limit == "before", outlet_device == "compensating"
    tapped = caught == "tap" and not before
    tap = flow_coefficient(tap_flow, tap_pressure)
    if before and house_gauge >= pump_shut_off:
        raise Refused("contradiction", "house_gauge", says="is over what pump 2 reaches")
    behind = (outlet / tap) ** 2 if tapped else 0.0
    if behind >= house_gauge:
        raise Refused("contradiction", "tap_flow", says="is too little: the tap passed {outlet}")
    test = _Test(
        tested=pump_shut_off - house_gauge if before else house_gauge - behind,
        worst=pump_shut_off if before else max(cut_out, house_gauge),
        threshold=device_threshold,
        exponent=EXPONENT if compensating and not before else PLAIN,
        caught=outlet,
    )
    worst = test.passed(test.worst)
    given = {
        "p_x": Quantity(test.worst, gauge_pressure),
        "p_r": Quantity(max(test.tested, device_threshold), gauge_pressure),
        "C_t": Quantity(tap, coefficient_kind),
        "x": Quantity(EXPONENT, number, label="exponent of a good compensating device"),
    }
    return Answer(
        outputs={
            "worst_outlet": worst,
            "more": worst / outlet - 1,
            "drive_tested": test.tested,
            "tap_takes": behind if tapped else None,
        },
        findings=_findings(test, worst, before, compensating, tapped),
        steps=_steps(test, before, tapped, given),
        charts=(_chart(test, before, house_gauge, worst),),
    )


def _findings(
    test: _Test, worst: float, before: bool, compensating: bool, tapped: bool
) -> tuple[Finding, ...]:
    findings = [_headline(worst / test.caught - 1, before)]
    if tapped:
        findings.append(
            Finding(
                "caution",
                "The tap hid part of it.",
                "The tap took {tap_takes} of {house_gauge}. A burst pipe or a tub spout takes "
                "less. Better: measure again from an open pipe.",
            )
        )
    if compensating and test.tested < test.threshold:
        findings.append(
            Finding(
                "caution",
                "Below its threshold.",
                "Only {drive_tested} drove the flow while you measured. Under "
                "{device_threshold} the device is a plain hole, so the test does not show what "
                "it holds.",
            )
        )
    elif compensating and before and worst > test.caught * (1 + NEARLY):
        findings.append(
            Finding(
                "caution",
                "Counted as a plain hole.",
                "What is left for the device depends on pump 2's curve. This figure is a bound; "
                "the device may pass less. Let the pressure tank run empty and measure it.",
            )
        )
    return tuple(findings)


def _headline(more: float, before: bool) -> Finding:
    if more <= NEARLY:
        return Finding(
            "good",
            "Measured at its worst.",
            "The outlet can pass {worst_outlet}, no more than the pail showed.",
        )
    if before:
        return Finding(
            "caution",
            "Passes more when the tank is empty.",
            "At a house gauge of {house_gauge} you caught {outlet}. With the house pressure tank "
            "run empty the same setting passes {worst_outlet}.",
        )
    return Finding(
        "caution",
        "Passes more at cut-out.",
        "You caught {outlet} at {house_gauge}. With the tank at cut-out and a pipe wide open the "
        "same setting passes {worst_outlet}.",
    )


def _steps(test: _Test, before: bool, tapped: bool, given: dict[str, Quantity]) -> tuple[Step, ...]:
    if before:
        steps = [
            Step("Pressure that drove the flow in the test", "p_d = p_0 - p_t", given),
            Step("At the worst: the house pressure tank empty", "p_x = p_0", given),
        ]
    elif tapped:
        steps = [
            Step("Flow coefficient of the tap", "C_t = Q_f / sqrt(p_f)", given),
            Step("Pressure left for the limit in the test", "p_d = p_t - (Q_o / C_t)**2", given),
            Step("At the worst: cut-out", "p_x = max(P_o, p_t)", given),
        ]
    else:
        steps = [
            Step("Pressure that drove the flow in the test", "p_d = p_t", given),
            Step("At the worst: cut-out", "p_x = max(P_o, p_t)", given),
        ]
    if test.exponent == PLAIN or test.worst <= test.threshold:
        formula = "Q_x = Q_o * sqrt(p_x / p_d)"
    else:
        steps.append(Step("Pressure from which the device holds", "p_r = max(p_d, p_h)", given))
        formula = "Q_x = Q_o * sqrt(p_r / p_d) * (p_x / p_r)**x"
    return (
        *steps,
        Step("Worst flow out", formula, given),
        Step("More than the pail showed", "s = Q_x / Q_o - 1", given),
    )


def _chart(test: _Test, before: bool, house_gauge: float, worst: float) -> Chart:
    gauges = [test.worst * n / (POINTS - 1) for n in range(POINTS)]
    return Chart(
        title="What the outlet passes through an open pipe",
        says="Pump 2 passes most with the tank empty."
        if before
        else "The limit passes most with the tank at cut-out.",
        x=Axis("House gauge", gauge_pressure),
        y=Axis("Flow out", flow),
        lines=(
            Line(
                "at this setting",
                tuple((at, test.passed(test.worst - at if before else at)) for at in gauges),
            ),
        ),
        marks=(
            Mark("your test", house_gauge, test.caught, here=True),
            Mark("worst", 0.0 if before else test.worst, worst),
        ),
    )


CALCULATOR = Calculator(
    name="outlet_limit",
    title="Outlet at its worst",
    question="I caught a pail at one pressure. What can the same setting pass at its worst?",
    inputs=(
        open_tank_fields.limit,
        Choice(
            name="outlet_device",
            label="What limits the flow out",
            options={
                "fixed": "fixed: a throttled valve or a hole",
                "compensating": "pressure-compensating",
            },
            default="fixed",
            origin=INVENTED,
            measure="A compensating one has a rubber ring or a spring that narrows with pressure.",
            group=OUTLET,
        ),
        Input(
            name="device_threshold",
            label="Pressure drop from which it compensates",
            symbol="p_h",
            kind=gauge_pressure,
            default="15 psi",
            origin="common practice, no source: 10 to 15 psi",
            low=1 * psi,
            high=100 * psi,
            measure="From its sheet. Only a compensating device has one.",
            group=OUTLET,
            sure="0 psi",
        ),
        open_tank_fields.outlet,
        house_tank_fields.house_gauge,
        well_pump_fields.pump_shut_off,
        Choice(
            name="caught",
            label="You caught it",
            options={"pipe": "from an open full-size pipe", "tap": "through a tap"},
            default="pipe",
            origin=INVENTED,
            measure="Whatever narrows the stream behind the limit counts as a tap. With the limit "
            "before the pressure tank the house gauge already tells all that is behind it.",
            group="The test",
        ),
        flow_input(
            "tap_flow",
            "Flow of that tap by itself",
            "Q_f",
            "6.7 gpm",
            "A pail at the same tap with the limit wide open, the house gauge steady.",
            "The test",
        ),
        Input(
            name="tap_pressure",
            label="House gauge for that flow",
            symbol="p_f",
            kind=gauge_pressure,
            default="45 psi",
            origin=INVENTED,
            low=1 * psi,
            high=150 * psi,
            measure="Read it while the pail fills.",
            group="The test",
            sure="2 psi",
        ),
        house_tank_fields.cut_out,
    ),
    outputs=(
        Output(name="worst_outlet", label="Worst flow out", symbol="Q_x", kind=flow),
        Output(name="more", label="More than the pail showed", symbol="s", kind=share, digits=2),
        Output(
            name="drive_tested",
            label="Pressure that drove the flow in the test",
            symbol="p_d",
            kind=gauge_pressure,
        ),
        Output(
            name="tap_takes",
            label="Pressure that the tap took",
            kind=gauge_pressure,
            none="no tap in the way",
        ),
    ),
    work=outlet_limit,
    cautions=(
        cautions.RADON_AIR,
        cautions.PRESSURE,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    leaves={"worst_outlet": ("worst_outlet",)},
    sources=(
        "iec-60534-2-1",
        "rossman-2000",
        "karmeli-1977",
        "epa-radon-2016",
        "osha-1910-147",
    ),
)
