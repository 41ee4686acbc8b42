"""Pressure lost in a run of pipe, by Darcy and Colebrook, with Hazen and Williams beside it."""

from collections.abc import Callable
from math import pi
from typing import NamedTuple

from calc import cautions, pipes
from calc.charts import Axis, Chart, Line, Mark
from calc.fields import INVENTED, flow_input, water_fields
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics import pipe
from calc.physics.water import density, viscosity
from calc.units import (
    GRAVITY,
    acceleration,
    area,
    flow,
    ft,
    gauge_pressure,
    length,
    number,
    pressure_gradient,
    share,
    velocity,
)

PIPE = "Pipe"
FITTINGS = "Fittings in it"
FAST = 5 * ft  # m/s, common practice, no source: over it pipe is loud and surges hard
APART = 0.1  # the two formulas differ by more than this
MUCH = 0.25  # share of the loss that fittings take
# Length of pipe over its bore that loses as much as the fitting: [mott-2006]
ELBOW, TEE, CHECK, GATE = 30, 60, 100, 8


class _Flow(NamedTuple):
    """A flow in the pipe of length L: m of head lost in pipe and fittings."""

    speed: float
    reynolds: float
    factor: float
    friction: float
    minor: float
    hazen: float


def pipe_loss(
    loss_flow: float,
    pipe_kind: str,
    pipe_run: float,
    elbows: float,
    tees: float,
    checks: float,
    gates: float,
    other_k: float,
    water_coldest: float,
) -> Answer:
    """Loss of a run of pipe with its fittings."""
    kind = pipes.PIPES[pipe_kind]
    rho, nu = density(water_coldest), viscosity(water_coldest) / density(water_coldest)
    loss = kind.turbulent * (ELBOW * elbows + TEE * tees + CHECK * checks + GATE * gates) + other_k

    def at(flow: float) -> _Flow:
        speed = pipe.velocity(flow, kind.bore)
        reynolds = speed * kind.bore / nu
        return _Flow(
            speed,
            reynolds,
            pipe.friction_factor(reynolds, kind.roughness / kind.bore),
            pipe.head_loss(flow, pipe_run, kind.bore, kind.roughness, nu),
            pipe.minor_loss(flow, kind.bore, loss),
            pipe.head_loss_hazen_williams(flow, pipe_run, kind.bore, kind.smoothness),
        )

    found = at(loss_flow)
    head = found.friction + found.minor
    return Answer(
        outputs={
            "loss": rho * GRAVITY * head,
            "head": head,
            "gradient": found.friction / pipe_run,
            "hazen": found.hazen / pipe_run,
            "hazen_off": found.hazen / found.friction - 1,
            "fittings_share": found.minor / head,
            "speed": found.speed,
            "reynolds": found.reynolds,
            "bore": kind.bore,
        },
        findings=_findings(found),
        steps=_steps(kind, found, rho, loss),
        charts=(_chart(at, loss_flow, head),),
    )


def _findings(found: _Flow) -> tuple[Finding, ...]:
    said = []
    if found.speed > FAST:
        said.append(
            Finding(
                "caution",
                "Too fast.",
                "The water runs at {speed}. Over 5 ft/s (1.5 m/s) pipe gets loud, copper wears and "
                "a valve that shuts quickly hammers: common practice, no source. Take a wider "
                "pipe.",
            )
        )
    else:
        said.append(
            Finding(
                "good",
                "Fits.",
                "The run loses {loss}, and the water is no faster than common practice allows.",
            )
        )
    if pipe.LAMINAR < found.reynolds < pipe.TURBULENT:
        said.append(
            Finding(
                "caution",
                "Between two laws.",
                "At a Reynolds number of {reynolds} the stream is neither smooth nor stirred. "
                "Count on half as much again or two thirds of it.",
            )
        )
    if abs(found.hazen / found.friction - 1) > APART:
        said.append(
            Finding(
                "caution",
                "A table would be off.",
                "The formula of Hazen and Williams, from which most tables are made, differs from "
                "this answer by {hazen_off}. It was fitted to big pipe and mild water.",
            )
        )
    if found.minor > MUCH * (found.friction + found.minor):
        said.append(
            Finding(
                "caution",
                "Fittings count.",
                "Fittings take {fittings_share} of the loss, and published figures for one and the "
                "same fitting differ by a factor of two.",
            )
        )
    return tuple(said)


def _steps(kind: pipes.Pipe, found: _Flow, rho: float, loss: float) -> tuple[Step, ...]:
    given = {
        "D": Quantity(kind.bore, _BORE, 4, "inside diameter of the pipe, from its standard"),
        "pi": Quantity(pi, number, 5, "a circle's circumference over its diameter"),
        "A": Quantity(pi * kind.bore**2 / 4, area),
        "k": Quantity(kind.turbulent, number, label="K of a fitting over its length in bores"),
        "K": Quantity(loss, number),
        "f": Quantity(found.factor, number, 4, "friction factor at this flow, Colebrook"),
        "g": Quantity(GRAVITY, acceleration, label="gravity"),
        "h_f": Quantity(found.friction, length),
        "h_m": Quantity(found.minor, length),
        "w": Quantity(rho * GRAVITY, pressure_gradient, label="weight of standing water"),
    }
    return (
        Step("Cross-section of the pipe", "A = pi * D**2 / 4", given),
        Step("Speed of the water", "v = Q / A", given),
        Step(
            "K of all fittings",
            "K = k * (30 * n_e + 60 * n_t + 100 * n_c + 8 * n_g) + K_o",
            given,
        ),
        Step("Head lost in the pipe", "h_f = f * L / D * v**2 / (2 * g)", given),
        Step("Head lost in fittings", "h_m = K * v**2 / (2 * g)", given),
        Step("Head lost in all", "h_l = h_f + h_m", given),
        Step("The same as pressure", "p_l = w * h_l", given),
    )


def _chart(at: Callable[[float], _Flow], here: float, head: float) -> Chart:
    flows = [here * step / 20 for step in range(41)]
    losses = [at(q) if q else None for q in flows]
    darcy = [
        (q, each.friction + each.minor if each else 0.0)
        for q, each in zip(flows, losses, strict=True)
    ]
    hazen = [
        (q, each.hazen + each.minor if each else 0.0) for q, each in zip(flows, losses, strict=True)
    ]
    return Chart(
        title="What the run loses at other flows",
        says="Twice the flow loses well over three times as much. Both lines count the same "
        "fittings.",
        x=Axis("Flow in the pipe", flow),
        y=Axis("Head lost", length),
        lines=(
            Line("Darcy and Colebrook", tuple(darcy)),
            Line("Hazen and Williams", tuple(hazen)),
        ),
        marks=(Mark("here", here, head, here=True),),
    )


def _count(name: str, label: str, symbol: str, default: str, measure: str) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=number,
        default=default,
        origin=INVENTED,
        low=0,
        high=100,
        measure=measure,
        group=FITTINGS,
        once=False,
    )


_BORE = Output(
    name="bore", label="Inside diameter by its standard", kind=length, us="in", si="mm", digits=4
)
CALCULATOR = Calculator(
    name="pipe_loss",
    title="Loss in a run of pipe",
    question="How much pressure does this pipe take at this flow?",
    inputs=(
        flow_input(
            "loss_flow",
            "Flow in the pipe",
            "Q",
            "8 gpm",
            "What the pipe must carry at its busiest: from the pump, or from the house's peak.",
            PIPE,
            once=False,
        ),
        pipes.pipe_choice("pipe_kind", "Kind and size of the pipe", "pe-1", PIPE, once=False),
        Input(
            name="pipe_run",
            label="Length of the run",
            symbol="L",
            kind=length,
            default="100 ft",
            origin=INVENTED,
            low=1 * ft,
            high=10000 * ft,
            us="ft",
            measure="Tape measure along the pipe. Fittings are counted below.",
            group=PIPE,
            sure="2 %",
            once=False,
        ),
        _count("elbows", "Elbows, 90°", "n_e", "4", "Count them. Two of 45° count as one."),
        _count("tees", "Tees turned into", "n_t", "1", "Only those through which the water turns."),
        _count(
            "checks",
            "Swing check valves",
            "n_c",
            "1",
            "A spring check counts as one and a half: enter it so.",
        ),
        _count(
            "gates",
            "Gate or ball valves, open",
            "n_g",
            "1",
            "A globe valve is no gate valve: it has a K of some 7, below.",
        ),
        _count(
            "other_k",
            "K of anything else",
            "K_o",
            "0",
            "From its sheet: a meter, a valve head, an insert fitting (about 1, from memory).",
        ),
        water_fields.water_coldest,
    ),
    outputs=(
        Output(name="loss", label="Pressure lost", symbol="p_l", kind=gauge_pressure),
        Output(name="head", label="The same as head", symbol="h_l", kind=length),
        Output(
            name="gradient",
            label="Pipe alone, feet in a hundred feet: Darcy and Colebrook",
            kind=share,
        ),
        Output(name="hazen", label="The same by Hazen and Williams", kind=share),
        Output(name="hazen_off", label="Hazen and Williams differs by", kind=share),
        Output(name="fittings_share", label="Share that fittings take", kind=share),
        Output(name="speed", label="Speed of the water", symbol="v", kind=velocity),
        Output(name="reynolds", label="Reynolds number", kind=number),
        _BORE,
    ),
    work=pipe_loss,
    trials=200,
    cautions=(cautions.PRESSURE, cautions.LOCAL_CODE),
    leaves={"bore": ("pipe_bore",)},
    sources=(
        "rossman-2000",
        "colebrook-1939",
        "binder-1973",
        "moody-1944",
        "mott-2006",
        "iac-906-i",
        "iapws-liquid",
        *pipes.STANDARDS,
    ),
)
