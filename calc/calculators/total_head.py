"""Total dynamic head that the well pump must give: at rest and pumped down, cut-in and cut-out."""

from dataclasses import replace
from math import pi
from typing import NamedTuple

from calc import cautions, pipes
from calc.charts import Bar, Bars
from calc.errors import Refused
from calc.fields import (
    DROP,
    INVENTED,
    SWITCH,
    WELL_PUMP,
    flow_input,
    open_tank_fields,
    water_fields,
    well_pump_fields,
    well_tank_fields,
)
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics import pipe
from calc.physics.inlet_network import Water
from calc.physics.pump_system import Line, line_loss, water_power
from calc.physics.pump_system import total_head as head_of
from calc.physics.water import density, viscosity
from calc.units import (
    GRAVITY,
    acceleration,
    area,
    ft,
    gauge_pressure,
    length,
    number,
    power,
    pressure_gradient,
    psi,
    share,
    velocity,
)

FAST = 5 * ft  # m/s, common practice, no source
DEAR = 0.1  # share of the head that friction may take before a wider pipe is worth asking for


class _System(NamedTuple):
    """What stands between the pump and its gauge, and the head lost in it at one flow."""

    flow: float
    drop: Line
    line: Line
    water: Water
    drop_loss: float
    line_loss: float
    minor: float

    @property
    def friction(self) -> float:
        return self.drop_loss + self.line_loss + self.minor


def total_head(
    wanted_pump: float,
    well_feeds: str,
    rest_level: float,
    well_level: float,
    rise: float,
    well_cut_in: float,
    well_cut_out: float,
    drop_kind: str,
    drop_length: float,
    line_kind: str,
    line_length: float,
    well_fittings: float,
    spent_before: float,
    water_coldest: float,
) -> Answer:
    """Heads at the four corners between which the pump works."""
    if well_level < rest_level:
        raise Refused("contradiction", "well_level", says="is above the level at rest")
    if well_cut_out <= well_cut_in:
        raise Refused("contradiction", "well_cut_out", says="must be above {well_cut_in}")
    free = well_feeds == "open"
    water = Water(density(water_coldest), viscosity(water_coldest))
    system = _system(
        wanted_pump,
        pipes.line_of(drop_kind, drop_length),
        pipes.line_of(line_kind, line_length, well_fittings),
        water,
    )
    extra = rise if free else 0.0

    def head(level: float, gauge: float) -> float:
        pressure = spent_before + (0.0 if free else gauge)
        return head_of(wanted_pump, level + extra, pressure, (system.drop, system.line), water)

    most = head(well_level, well_cut_out)
    least = head(rest_level, well_cut_in)
    speed = pipe.velocity(wanted_pump, system.drop.bore)
    outputs: dict[str, float | None] = {
        "head": most,
        "head_cut_in": None if free else head(well_level, well_cut_in),
        "head_rest": head(rest_level, well_cut_out),
        "head_least": least,
        "head_mean": (most + head(well_level, well_cut_in)) / 2,
        "friction": system.friction,
        "friction_share": system.friction / most,
        "speed": speed,
        "water_power": water_power(wanted_pump, most, water.density),
    }
    return Answer(
        outputs=outputs,
        findings=_findings(system, most, least, speed, free),
        steps=_steps(system, free),
        charts=(_chart(system, well_level + extra, spent_before, 0.0 if free else well_cut_out),),
    )


def _system(flow: float, drop: Line, line: Line, water: Water) -> _System:
    bare = line._replace(fittings=0.0)
    along = line_loss(flow, bare, water)
    return _System(
        flow,
        drop,
        line,
        water,
        line_loss(flow, drop, water),
        along,
        line_loss(flow, line, water) - along,
    )


def _findings(
    system: _System, most: float, least: float, speed: float, free: bool
) -> tuple[Finding, ...]:
    said = [
        Finding(
            "good",
            "Ask for this point.",
            "At an open tank the pump must give {wanted_pump} against {head} with the well pumped "
            "down. There is no cut-in and no cut-out to reach.",
        )
        if free
        else Finding(
            "good",
            "Ask for a curve.",
            "The pump must give {wanted_pump} against {head} at the hardest, and it meets as "
            "little as {head_least}: both must lie on the sheet's curve.",
        )
    ]
    if system.friction > DEAR * most:
        said.append(
            Finding(
                "caution",
                "Friction is dear.",
                "Pipe and fittings take {friction_share} of the head. A size wider costs once, "
                "friction costs at every gallon.",
            )
        )
    if speed > FAST:
        said.append(
            Finding(
                "caution",
                "The drop pipe is narrow.",
                "The water runs at {speed} in it; common practice, no source, stays under 5 ft/s "
                "(1.5 m/s).",
            )
        )
    if least < 0:
        said.append(
            Finding(
                "caution",
                "Flows by itself.",
                "At rest the well pushes harder than the system takes. A flowing well needs a "
                "licensed driller's eye.",
            )
        )
    return tuple(said)


def _steps(system: _System, free: bool) -> tuple[Step, ...]:
    given = _given(system)
    steps = [
        Step("Cross-section of the drop pipe", "A_d = pi * D_d**2 / 4", given),
        Step("Speed in the drop pipe", "v_d = Q_v / A_d", given),
        Step("Lost in the drop pipe", "h_d = f_d * L_d / D_d * v_d**2 / (2 * g)", given),
        Step("Cross-section of the pipe to the gauge", "A_l = pi * D_l**2 / 4", given),
        Step("Speed in it", "v_l = Q_v / A_l", given),
        Step(
            "Lost in it and its fittings",
            "h_l = (f_l * L_l / D_l + K_w) * v_l**2 / (2 * g)",
            given,
        ),
        Step("Friction in all", "h_f = h_d + h_l", given),
    ]
    takes = Step("Power that the water takes along", "P_w = w * Q_v * H", given)
    if free:
        total = Step("Total head, pumped down", "H = h_w + h + p_b / w + h_f", given)
        return (*steps, total, takes)
    return (
        *steps,
        Step("Total head, pumped down, at cut-out", "H = h_w + (p_o + p_b) / w + h_f", given),
        Step("Total head, pumped down, at cut-in", "H_c = h_w + (p_c + p_b) / w + h_f", given),
        takes,
    )


def _given(system: _System) -> dict[str, Quantity]:
    water = system.water
    return {
        "w": Quantity(water.density * GRAVITY, pressure_gradient, label="weight of water"),
        "g": Quantity(GRAVITY, acceleration, label="gravity"),
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "h_d": Quantity(system.drop_loss, length),
        "h_l": Quantity(system.line_loss + system.minor, length),
        **_pipe_letters("d", "the drop pipe", system.drop, system),
        **_pipe_letters("l", "the pipe to the gauge", system.line, system),
    }


def _pipe_letters(letter: str, name: str, run: Line, system: _System) -> dict[str, Quantity]:
    speed = pipe.velocity(system.flow, run.bore)
    reynolds = speed * run.bore * system.water.density / system.water.viscosity
    factor = pipe.friction_factor(reynolds, run.roughness / run.bore)
    return {
        f"A_{letter}": Quantity(pi * run.bore**2 / 4, area),
        f"v_{letter}": Quantity(speed, velocity),
        f"f_{letter}": Quantity(factor, number, 4, f"friction factor in {name}, Colebrook"),
        f"D_{letter}": Quantity(run.bore, _BORE, 4, f"inside diameter of {name}"),
    }


def _chart(system: _System, lift: float, spent: float, gauge: float) -> Bars:
    weight = system.water.density * GRAVITY
    parts = (
        ("lift", lift),
        ("pressure at the gauge", gauge / weight),
        ("drop pipe", system.drop_loss),
        ("pipe to the gauge", system.line_loss),
        ("fittings", system.minor),
        ("anything else", spent / weight),
    )
    return Bars(
        title="What the head is spent on at the hardest",
        says="All together are the total head. What is not lift or pressure is friction.",
        like=_HEAD,
        bars=tuple(Bar(label, part) for label, part in parts),
    )


_BORE = Output(name="bore", label="Inside diameter", kind=length, us="in", si="mm")
_HEAD = Output(
    name="head", label="Total head, well pumped down, at cut-out", symbol="H", kind=length
)
CALCULATOR = Calculator(
    name="total_head",
    title="Total dynamic head",
    question="Which flow and head must the well pump give?",
    inputs=(
        flow_input(
            "wanted_pump",
            "Flow wanted from the well pump",
            "Q_v",
            "8 gpm",
            "What the house takes at its peak, but no more than the well gives for as long.",
            WELL_PUMP,
            sure="0 gpm",
        ),
        Choice(
            name="well_feeds",
            label="What the well pump fills",
            options={
                "pressure": "a pressure tank with a switch",
                "open": "the open tank, straight from the pump",
            },
            default="pressure",
            origin=INVENTED,
            measure="Follow the pipe. A pressure tank on the way counts as one.",
            group=WELL_PUMP,
        ),
        well_pump_fields.rest_level,
        well_pump_fields.well_level,
        replace(open_tank_fields.rise, group=WELL_PUMP),
        replace(well_tank_fields.well_cut_in, group=SWITCH),
        replace(well_tank_fields.well_cut_out, group=SWITCH),
        pipes.pipe_choice("drop_kind", "Drop pipe", "pe-1", DROP),
        well_pump_fields.drop_length,
        pipes.pipe_choice("line_kind", "Pipe from the well head to the gauge", "pe-1", DROP),
        well_pump_fields.line_length,
        well_pump_fields.well_fittings,
        Input(
            name="spent_before",
            label="Pressure lost on the way in anything else",
            symbol="p_b",
            kind=gauge_pressure,
            default="0 psi",
            origin="nothing else in line",
            low=0,
            high=100 * psi,
            measure="A filter before the pressure tank, or the spray nozzle of an open tank, from "
            "two gauges or a sheet. A filter before the switch makes it chatter: better after.",
            group=DROP,
            sure="0 psi",
        ),
        water_fields.water_coldest,
    ),
    outputs=(
        _HEAD,
        Output(
            name="head_cut_in",
            label="The same at cut-in",
            symbol="H_c",
            kind=length,
            none="no cut-in at an open tank",
        ),
        Output(name="head_rest", label="At cut-out, well at rest", kind=length),
        Output(name="head_least", label="At cut-in, well at rest", kind=length),
        Output(name="head_mean", label="Mean of cut-in and cut-out, pumped down", kind=length),
        Output(name="friction", label="Of it friction", symbol="h_f", kind=length),
        Output(name="friction_share", label="Friction as a share", kind=share),
        Output(name="speed", label="Speed in the drop pipe", kind=velocity),
        Output(
            name="water_power", label="Power that the water takes along", symbol="P_w", kind=power
        ),
    ),
    work=total_head,
    trials=200,
    cautions=(cautions.ELECTRICITY, cautions.PRESSURE, cautions.LOCAL_CODE),
    leaves={"head_mean": ("pump_head",)},
    sources=(
        "rossman-2000",
        "colebrook-1939",
        "moody-1944",
        "binder-1973",
        "iapws-liquid",
        "osha-1910-147",
        *pipes.STANDARDS,
    ),
)
