"""Flow into the open tank as it will be, from well pump and pressure tank to the spout."""

from dataclasses import replace
from math import inf, pi, sqrt
from typing import NamedTuple

from calc import cautions
from calc.charts import Bar, Bars
from calc.errors import Refused
from calc.fields import (
    INVENTED,
    WELL_PUMP,
    flow_input,
    house_tank_fields,
    open_tank_fields,
    water_fields,
    well_pump_fields,
    well_tank_fields,
)
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics import pipe
from calc.physics.inlet_network import (
    Losses,
    Path,
    Water,
    inlet_flow_from_pump,
    inlet_flow_from_tank,
    losses,
)
from calc.physics.pump_curve import PumpCurve, rated_curve
from calc.physics.restriction import flow_coefficient, in_series
from calc.physics.valve import coefficient_of_loss
from calc.physics.water import density, viscosity
from calc.units import (
    GRAVITY,
    acceleration,
    area,
    bed_resistance,
    flow,
    ft,
    gauge_pressure,
    gpm,
    inch,
    length,
    number,
    pressure_gradient,
    psi,
    share,
)
from calc.units import flow_coefficient as coefficient_kind

PIPE = "Pipe"
FILTER = "Filter"
LIMIT = "Inlet limit"
# Kinds of inlet limit, and how far a compensating one may be off its label.
TOLERANCE = {"none": 0.0, "fixed": 0.0, "within10": 0.1, "within15": 0.15, "within25": 0.25}


class _Inlet(NamedTuple):
    """The inlet at its worst: what it passes, from which source, and where pressure goes.

    tank, pump -- what each would pass if a compensating limit let it, m³/s
    passed     -- the least of both and of what the limit lets pass, m³/s
    rated -- the least that the limit passes by its label, m³/s
    gauge -- while that passes, Pa
    """

    path: Path
    water: Water
    curve: PumpCurve
    level: float
    cut_in: float
    rated: float
    tank: float
    pump: float
    passed: float
    gauge: float
    spent: Losses


def inlet_flow(
    well_pump_flow: float,
    well_pump_head: float,
    well_level: float,
    well_cut_in: float,
    well_cut_out: float,
    rise: float,
    pipe_length: float,
    pipe_bore: float,
    fittings: float,
    bed_clean: float,
    bed_dirty: float,
    inlet_limit: str,
    limit_flow: float,
    limit_drop: float,
    water_now: float,
    water_coldest: float,
) -> Answer:
    """The least and the most that enters, and what holds the water back."""
    pump = rated_curve(well_pump_flow, well_pump_head)
    cold, warm = _water(water_coldest), _water(water_now)
    thicker = cold.viscosity / warm.viscosity
    _check(pump, well_level + rise, cold.weight * rise, well_cut_in, well_cut_out)
    if bed_dirty < bed_clean:
        raise Refused("contradiction", "bed_dirty", says="is less than clean, {bed_clean}")
    if water_coldest > water_now:
        raise Refused("contradiction", "water_coldest", says="is warmer than today, {water_now}")

    def path(bed: float, side: int) -> Path:
        """`side`: -1 for the least that the limit may pass by its label, 1 for the most."""
        rated = limit_flow * (1 + side * TOLERANCE[inlet_limit])
        none = inlet_limit == "none"
        return Path(
            rise,
            pipe_length,
            pipe_bore,
            fittings,
            bed,
            limit=inf if none else flow_coefficient(rated, limit_drop),
            most=rated if TOLERANCE[inlet_limit] else inf,
        )

    dirty, clean = path(bed_dirty * thicker, -1), path(bed_clean * thicker, -1)
    rated = limit_flow * (1 - TOLERANCE[inlet_limit])
    worst = _worst(dirty, cold, pump, well_level, well_cut_in, rated)
    stalls = cold.weight * (pump.shut_off - well_level) < well_cut_out
    best = inlet_flow_from_tank(well_cut_out, path(bed_clean, 1), warm)
    return Answer(
        outputs={
            "worst_inlet": worst.passed,
            "best_inlet": best,
            "inlet_at_cut_out": inlet_flow_from_tank(well_cut_out, dirty, cold),
            "inlet_clean": inlet_flow_from_tank(well_cut_in, clean, cold),
            "inlet_warm": inlet_flow_from_tank(well_cut_in, path(bed_dirty, -1), warm),
            "pump_inlet": min(worst.pump, dirty.most),
        },
        findings=_findings(worst, best, stalls),
        steps=_steps(worst, thicker, inlet_limit),
        charts=(_chart(worst),),
    )


def _water(kelvin: float) -> Water:
    return Water(density(kelvin), viscosity(kelvin))


def _check(pump: PumpCurve, height: float, lift: float, cut_in: float, cut_out: float) -> None:
    if pump.shut_off <= height:
        says = "is too little to lift water from {well_level} and by {rise}"
        raise Refused("contradiction", "well_pump_head", says=says)
    if cut_in <= lift:
        raise Refused("contradiction", "well_cut_in", says="cannot lift water by {rise}")
    if cut_out <= cut_in:
        raise Refused("contradiction", "well_cut_out", says="must be above {well_cut_in}")


def _worst(
    path: Path, water: Water, pump: PumpCurve, level: float, cut_in: float, rated: float
) -> _Inlet:
    free = path._replace(most=inf)
    tank = inlet_flow_from_tank(cut_in, free, water)
    alone = inlet_flow_from_pump(pump, level, free, water)
    passed = min(tank, alone, path.most)
    gauge = cut_in if tank <= alone else water.weight * (pump.head(passed) - level)
    spent = losses(path, passed, water)
    if passed < min(tank, alone):  # a compensating limit takes whatever is left
        spent = spent._replace(limit=gauge - sum(spent[:-1]))
    return _Inlet(path, water, pump, level, cut_in, rated, tank, alone, passed, gauge, spent)


def _findings(worst: _Inlet, best: float, stalls: bool) -> tuple[Finding, ...]:
    findings = [_headline(worst)]
    if worst.pump < min(worst.tank, worst.path.most):
        findings.append(
            Finding(
                "caution",
                "The well pump falls behind.",
                "Running on, it brings {pump_inlet}, less than the pressure tank gives at cut-in. "
                "In a long draw the gauge falls below cut-in and stays there.",
            )
        )
    if stalls:
        findings.append(
            Finding(
                "caution",
                "The well pump never stops.",
                "With the water {well_level} down it cannot reach the cut-out of {well_cut_out}. "
                "It runs against a closed float until something wears out.",
            )
        )
    if best > worst.passed:
        findings.append(
            Finding(
                "caution",
                "Today may flatter.",
                "Filter clean, water as today and gauge at cut-out, this inlet can bring "
                "{best_inlet}. An outlet set by that is too wide by {between}.",
                {"between": Quantity(best - worst.passed, flow)},
            )
        )
    return tuple(findings)


def _headline(worst: _Inlet) -> Finding:
    spent = worst.spent
    piping = spent.pipe + spent.fittings
    given = {"gauge": Quantity(worst.gauge, gauge_pressure)}
    if worst.path.most <= worst.passed or spent.limit >= max(piping, spent.bed):
        return Finding(
            "good",
            "The limit decides.",
            "At the worst hour {worst_inlet} enters. Of {gauge} before the filter the inlet limit "
            "takes {taken}, more than anything else.",
            given | {"taken": Quantity(spent.limit, gauge_pressure)},
        )
    if spent.bed >= piping:
        return Finding(
            "caution",
            "The filter decides.",
            "At the worst hour {worst_inlet} enters. Of {gauge} the dirty filter takes {taken}, "
            "more than anything else: whoever services it sets the flow in, not the limit.",
            given | {"taken": Quantity(spent.bed, gauge_pressure)},
        )
    return Finding(
        "caution",
        "The pipe decides.",
        "At the worst hour {worst_inlet} enters. Of {gauge} pipe and fittings take {taken}, more "
        "than anything else. A wider pipe would bring more than a cleaner filter.",
        given | {"taken": Quantity(piping, gauge_pressure)},
    )


class _Line(NamedTuple):
    """Pipe and fittings at one flow: friction factor, and both as one flow coefficient."""

    factor: float
    coefficient: float


def _line(worst: _Inlet, passed: float) -> _Line:
    path, water = worst.path, worst.water
    reynolds = pipe.velocity(passed, path.bore) * path.bore * water.density / water.viscosity
    factor = pipe.friction_factor(reynolds, pipe.ROUGHNESS_DRAWN / path.bore)
    loss = factor * path.length / path.bore + path.fittings
    return _Line(factor, coefficient_of_loss(loss, path.bore, water.density))


def _steps(worst: _Inlet, thicker: float, kind: str) -> tuple[Step, ...]:
    given = _given(worst, thicker, kind)
    limit, cap = kind != "none", TOLERANCE[kind] > 0
    steps = [
        Step("Resistance of the dirty bed in the coldest water", "r_w = r_d * m", given),
        Step("Cross-section of the pipe", "A = pi * D**2 / 4", given),
    ]
    if limit:
        steps += [
            Step("Least that the limit passes by its label", "Q_m = Q_l * (1 - t_l)", given),
            Step("Its flow coefficient", "C_l = Q_m / sqrt(p_l)", given),
        ]
    steps += [
        Step(
            "Pipe and fittings at cut-in",
            "C_t = A * sqrt(2 * g / (w * (f_t * L / D + K)))",
            given,
        ),
        Step(
            "All but the bed",
            "C_a = 1 / sqrt(1 / C_t**2 + 1 / C_l**2)" if limit else "C_a = C_t",
            given,
        ),
        Step("Pressure to spend at cut-in", "p_t = p_c - w * h", given),
        Step(
            "Flow from the pressure tank at cut-in",
            "Q_t = 2 * p_t / (r_w + sqrt(r_w**2 + 4 * p_t / C_a**2))",
            given,
        ),
        Step(
            "Pipe and fittings with the pump running on",
            "C_u = A * sqrt(2 * g / (w * (f_u * L / D + K)))",
            given,
        ),
        Step("What the pump itself loses", "C_p = Q_p / sqrt(w * H_p / 3)", given),
        Step(
            "All but the bed, pump and all",
            "C_b = 1 / sqrt(1 / C_u**2 + 1 / C_p**2 + 1 / C_l**2)"
            if limit
            else "C_b = 1 / sqrt(1 / C_u**2 + 1 / C_p**2)",
            given,
        ),
        Step("Pressure that the pump has to spend", "p_u = w * (4 / 3 * H_p - h_w - h)", given),
        Step(
            "Flow from the pump running on",
            "Q_u = min(Q_m, 2 * p_u / (r_w + sqrt(r_w**2 + 4 * p_u / C_b**2)))"
            if cap
            else "Q_u = 2 * p_u / (r_w + sqrt(r_w**2 + 4 * p_u / C_b**2))",
            given,
        ),
        Step("Worst flow in", "Q_w = min(Q_t, Q_u, Q_m)" if cap else "Q_w = min(Q_t, Q_u)", given),
    ]
    return tuple(steps)


def _given(worst: _Inlet, thicker: float, kind: str) -> dict[str, Quantity]:
    path, water, pump = worst.path, worst.water, worst.curve
    tank_line, pump_line = _line(worst, worst.tank), _line(worst, worst.pump)
    own = 1 / sqrt(water.weight * pump.factor)
    limit = [path.limit] if kind != "none" else []
    known = {
        "w": Quantity(water.weight, pressure_gradient, label="weight of standing water"),
        "g": Quantity(GRAVITY, acceleration, label="gravity"),
        "m": Quantity(thicker, number, label="viscosity of the coldest water over today's"),
        "t_l": Quantity(TOLERANCE[kind], share, label="tolerance of the inlet limit"),
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "A": Quantity(pi * path.bore**2 / 4, area),
        "r_w": Quantity(path.bed, bed_resistance),
        "f_t": Quantity(tank_line.factor, number, label="friction factor at this flow, Colebrook"),
        "f_u": Quantity(pump_line.factor, number, label="friction factor at this flow, Colebrook"),
        "C_t": Quantity(tank_line.coefficient, coefficient_kind),
        "C_u": Quantity(pump_line.coefficient, coefficient_kind),
        "C_a": Quantity(in_series(tank_line.coefficient, *limit), coefficient_kind),
        "C_b": Quantity(in_series(pump_line.coefficient, own, *limit), coefficient_kind),
        "C_p": Quantity(own, coefficient_kind),
        "p_t": Quantity(worst.cut_in - water.weight * path.rise, gauge_pressure),
        "p_u": Quantity(water.weight * (pump.shut_off - worst.level - path.rise), gauge_pressure),
        "Q_t": Quantity(worst.tank, flow),
    }
    if kind != "none":
        known |= {
            "Q_m": Quantity(worst.rated, flow),
            "C_l": Quantity(path.limit, coefficient_kind),
        }
    return known


def _chart(worst: _Inlet) -> Bars:
    named = zip(
        ("lift to the open tank", "pipe", "fittings and open end", "filter bed", "inlet limit"),
        worst.spent,
        strict=True,
    )
    return Bars(
        title="Where the pressure goes at the worst hour",
        says="The longest bar holds the water back most. All together are the gauge.",
        like=gauge_pressure,
        bars=tuple(Bar(label, max(spent, 0.0)) for label, spent in named),
    )


_WORST = Output(name="worst_inlet", label="Worst flow in", symbol="Q_w", kind=flow)

CALCULATOR = Calculator(
    name="inlet_flow",
    title="Flow in",
    question="How much enters the open tank at its worst hour, and what holds the water back?",
    inputs=(
        flow_input(
            "well_pump_flow",
            "Flow that the well pump is rated for",
            "Q_p",
            "8 gpm",
            "From its label or data sheet: the flow in the middle of its curve.",
            WELL_PUMP,
            sure="5 %",
        ),
        Input(
            name="well_pump_head",
            label="Head that it is rated for at that flow",
            symbol="H_p",
            kind=length,
            default="225 ft",
            origin=INVENTED,
            low=10 * ft,
            high=1500 * ft,
            us="ft",
            measure="From the same line of the label or sheet. 1 psi is 2.31 ft. A worn pump gives "
            "less than its sheet: close a valve after it, read the gauge, and compare.",
            group=WELL_PUMP,
            sure="5 %",
        ),
        replace(
            well_pump_fields.well_level,
            measure=f"{well_pump_fields.well_level.measure} Add the loss in the drop pipe if it is "
            "long or narrow.",
        ),
        well_tank_fields.well_cut_in,
        well_tank_fields.well_cut_out,
        open_tank_fields.rise,
        Input(
            name="pipe_length",
            label="Length of pipe from the gauge to the open tank",
            symbol="L",
            kind=length,
            default="60 ft",
            origin=INVENTED,
            low=1 * ft,
            high=2000 * ft,
            us="ft",
            measure="Tape measure along the pipe.",
            group=PIPE,
            sure="5 %",
        ),
        Input(
            name="pipe_bore",
            label="Its inside diameter",
            symbol="D",
            kind=length,
            default="0.824 in",
            origin="3/4 in schedule 40 pipe, from memory",
            low=0.3 * inch,
            high=4 * inch,
            us="in",
            si="mm",
            measure="From a table for the kind of pipe, or by caliper. The nominal size is not it. "
            "Counted as new and smooth: old iron loses more.",
            group=PIPE,
            sure="0.01 in",
        ),
        Input(
            name="fittings",
            label="Loss factors K of all fittings, added up",
            symbol="K",
            kind=number,
            default="20",
            origin="invented: eight elbows, two valves, the filter's valve head, the open end",
            low=1,
            high=1000,
            measure="Elbow 0.75, tee as elbow 1, open gate valve 0.2, globe valve 6, open end 1, "
            "the filter's own valve head from its sheet.",
            group=PIPE,
            sure="20 %",
        ),
        Input(
            name="bed_clean",
            label="Resistance of the filter bed, clean",
            symbol="r_c",
            kind=bed_resistance,
            default="0.5 psi/gpm",
            origin=INVENTED,
            low=0.001 * psi / gpm,
            high=50 * psi / gpm,
            measure="Gauge before less gauge after the bed, over the flow, just after service.",
            group=FILTER,
            sure="10 %",
        ),
        Input(
            name="bed_dirty",
            label="Resistance of the filter bed when it is serviced at the latest",
            symbol="r_d",
            kind=bed_resistance,
            default="4.4 psi/gpm",
            origin=INVENTED,
            low=0.001 * psi / gpm,
            high=200 * psi / gpm,
            measure="The same, just before service.",
            group=FILTER,
            sure="10 %",
        ),
        Choice(
            name="inlet_limit",
            label="Inlet limit",
            options={
                "none": "none",
                "fixed": "fixed: a throttled valve or a hole",
                "within10": "pressure-compensating, within 10 % of its label",
                "within15": "pressure-compensating, within 15 % of its label",
                "within25": "pressure-compensating, within 25 % of its label",
            },
            default="within15",
            origin=INVENTED,
            measure="A compensating one has a rubber ring or a spring that narrows with pressure. "
            "10 to 15 % is usual: common practice, no source.",
            group=LIMIT,
        ),
        flow_input(
            "limit_flow",
            "Flow that the limit is for",
            "Q_l",
            "7 gpm",
            "From its label. For a valve: a pail, with two gauges.",
            LIMIT,
            sure="0 gpm",
        ),
        Input(
            name="limit_drop",
            label="Pressure drop from which it passes that",
            symbol="p_l",
            kind=gauge_pressure,
            default="15 psi",
            origin="common practice, no source: 10 to 15 psi",
            low=0.5 * psi,
            high=150 * psi,
            measure="Compensating: the threshold on its sheet; below it, a plain hole. "
            "Fixed: gauge before less gauge after, at that flow.",
            group=LIMIT,
            sure="0 psi",
        ),
        house_tank_fields.water_now,
        water_fields.water_coldest,
    ),
    outputs=(
        _WORST,
        Output(name="best_inlet", label="Clean, water as today, at cut-out", kind=flow),
        Output(name="inlet_at_cut_out", label="Dirty and coldest, but at cut-out", kind=flow),
        Output(name="inlet_clean", label="At cut-in and coldest, but clean", kind=flow),
        Output(name="inlet_warm", label="At cut-in and dirty, but water as today", kind=flow),
        Output(
            name="pump_inlet",
            label="Dirty and coldest, from the well pump running on",
            symbol="Q_u",
            kind=flow,
        ),
    ),
    work=inlet_flow,
    trials=200,
    cautions=(
        cautions.RADON_AIR,
        cautions.PRESSURE,
        cautions.ELECTRICITY,
        cautions.LOCAL_CODE,
    ),
    leaves={"worst_inlet": ("worst_inlet",)},
    sources=(
        "rossman-2000",
        "colebrook-1939",
        "binder-1973",
        "ergun",
        "iec-60534-2-1",
        "iapws-liquid",
        "perry-cock",
        "epa-radon-2016",
        "osha-1910-147",
    ),
)
