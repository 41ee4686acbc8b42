"""The dose of ultraviolet light that this water gets at this flow from a lamp of this age."""

from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import INVENTED, MG_L, flow_input, water_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Quantity, Step
from calc.physics.germs import absorbance, lamp_output, logs_of_uv, water_factor
from calc.units import absorbance as absorbance_kind
from calc.units import (
    day,
    duration,
    flow,
    inch,
    length,
    number,
    percent,
    share,
)
from calc.units import uv_dose as dose_kind

MJ = dose_kind.unit("mJ/cm²").scale
UNSAFE_WATER = 40 * MJ  # class A, at the alarm point [nsf-55]
# What is asked of the water before it meets the lamp. Common practice, as many makers and
# extension pages print them; no source of authority was found.
MOST_IRON, MOST_HARDNESS, MOST_TURBIDITY = 0.3 * MG_L, 120 * MG_L, 1.0
LEAST_UVT = 0.75
POINTS = 24

DEVICE, WATER, LAMP = "The device, from its test", "The water", "Lamp and sleeve"


class _Light(NamedTuple):
    """What the light comes to, SI."""

    rated_factor: float
    factor: float
    lamp: float
    dose: float
    most_flow: float


def uv_dose(
    rated_dose: float,
    rated_flow: float,
    rated_uvt: float,
    water_layer: float,
    rated_when: str,
    uv_flow: float,
    uvt: float,
    total_iron: float,
    hardness: float,
    turbidity: float,
    lamp_age: float,
    lamp_life: float,
    lamp_end: float,
    sleeve: float,
) -> Answer:
    """Dose at this flow, what it takes of each germ, and the largest flow that gets enough."""
    lamp = lamp_output(lamp_age, lamp_life, lamp_end)
    if lamp <= 0:
        raise Refused("contradiction", "lamp_age", says="leaves no light at all: replace the lamp")
    lamp /= lamp_end if rated_when == "end" else 1.0
    rated_factor = water_factor(absorbance(rated_uvt), water_layer)
    factor = water_factor(absorbance(uvt), water_layer)
    at_one = rated_dose * rated_flow * factor / rated_factor * lamp * sleeve
    light = _Light(rated_factor, factor, lamp, at_one / uv_flow, at_one / UNSAFE_WATER)
    suited = _suited(uvt, total_iron, hardness, turbidity)
    return Answer(
        outputs={
            "dose": light.dose,
            "most_flow": light.most_flow,
            "absorbed": absorbance(uvt),
            "light_share": factor / rated_factor,
            "lamp_share": lamp,
            "giardia_logs": logs_of_uv("giardia", light.dose),
            "crypto_logs": logs_of_uv("cryptosporidium", light.dose),
            "virus_logs": logs_of_uv("virus", light.dose),
        },
        findings=(_headline(light, lamp_age > lamp_life), *suited, *_viruses(light)),
        steps=_steps(light, rated_uvt, rated_when == "end"),
        charts=(_chart(light, uv_flow),),
    )


def _headline(light: _Light, old: bool) -> Finding:
    given = {"class_a": Quantity(UNSAFE_WATER, dose_kind)}
    if old:
        return Finding(
            "danger",
            "The lamp is past its life.",
            "It may still glow blue and kill nothing. Replace it, clean the sleeve, and until then "
            "boil what you drink.",
        )
    if light.dose < UNSAFE_WATER:
        return Finding(
            "danger",
            "Too little light.",
            "{dose} at {uv_flow}, and water that may hold germs needs {class_a}. Hold the flow to "
            "{most_flow}, or fit a larger chamber. Until then boil what you drink.",
            given,
        )
    return Finding(
        "good",
        "Enough light, by this reckoning.",
        "{dose} at {uv_flow}; {class_a} is what a device for unsafe water must give at its alarm "
        "point. Only a sensor and a test for germs prove it.",
        given,
    )


def _suited(
    uvt: float, total_iron: float, hardness: float, turbidity: float
) -> tuple[Finding, ...]:
    """What must be done to the water before it meets the lamp."""
    found = []
    if turbidity >= MOST_TURBIDITY:
        found.append(
            Finding(
                "danger",
                "Too cloudy for light.",
                "Germs hide behind specks. Filter first, to 5 microns at least and under 1 NTU, "
                "and find where the cloud comes from.",
            )
        )
    if uvt < LEAST_UVT:
        found.append(
            Finding(
                "danger",
                "Too dark for light.",
                "{uvt} passes a centimetre. Tannin, iron or humus takes the rest: treat it first.",
            )
        )
    if total_iron >= MOST_IRON:
        found.append(
            Finding(
                "caution",
                "Iron will coat the sleeve.",
                "{total_iron}, and 0.3 mg/L is the most. Behind an open tank it has rusted: filter "
                "it.",
            )
        )
    if hardness >= MOST_HARDNESS:
        found.append(
            Finding(
                "caution",
                "Scale will coat the sleeve.",
                "{hardness}, and 120 mg/L is the most. Soften first, or clean the sleeve each "
                "month.",
            )
        )
    return tuple(found)


def _viruses(light: _Light) -> Iterator[Finding]:
    if logs_of_uv("virus", light.dose) < 4:
        yield Finding(
            "caution",
            "Not proven against viruses.",
            "{dose} counts for {virus_logs} log of the toughest viruses by the rule for public "
            "supplies, where 4 log are asked. Where sewage is near, that is for a professional.",
        )


def _steps(light: _Light, rated_uvt: float, at_end: bool) -> tuple[Step, ...]:
    lamp = "w = 1 - (1 - e) * t_l / t_m"
    if at_end:
        lamp = "w = (1 - (1 - e) * t_l / t_m) / e"
    given = {
        "W_r": Quantity(light.rated_factor, number, 4, "mean light in the water of the test"),
        "W_w": Quantity(light.factor, number, 4, "mean light in this water"),
        "D_a": Quantity(UNSAFE_WATER, dose_kind, 3, "what unsafe water needs"),
    }
    return (
        Step("Light in this water over light in the test's water", "x = W_w / W_r", given),
        Step("Light of the lamp over its light in the test", lamp),
        Step("Dose", "D = D_r * Q_r / Q_v * x * w * g"),
        Step("Largest flow with enough", "Q_a = D * Q_v / D_a", given),
    )


def _chart(light: _Light, here: float) -> Chart:
    flows = [here * (0.25 + 1.75 * step / POINTS) for step in range(POINTS + 1)]
    points = tuple((each, light.dose * here / each) for each in flows)
    return Chart(
        title="Dose against flow",
        says="Twice the flow, half the dose; under the line across it is too little.",
        x=Axis("Flow through the chamber", flow),
        y=Axis("Dose", dose_kind),
        lines=(Line("dose", points),),
        limits=(Limit("unsafe water", UNSAFE_WATER),),
        marks=(Mark("as entered", here, light.dose, here=True),),
    )


def _share(
    name: str, label: str, symbol: str, default: str, measure: str, group: str, low: float
) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=share,
        default=default,
        origin=INVENTED,
        low=low,
        high=1.0,
        measure=measure,
        group=group,
    )


def _logs(name: str, label: str) -> Output:
    return Output(name=name, label=label, kind=number, digits=2)


CALCULATOR = Calculator(
    name="uv_dose",
    title="Dose of ultraviolet light",
    question="Does this lamp give enough light to this water at this flow?",
    inputs=(
        Input(
            name="rated_dose",
            label="Dose that the device was tested to give",
            symbol="D_r",
            kind=dose_kind,
            default="40 mJ/cm²",
            origin="class A of [nsf-55]",
            low=5 * MJ,
            high=400 * MJ,
            measure="From the report of an independent test, not from the box. Class B devices, 16 "
            "mJ/cm², are for water that is safe already.",
            group=DEVICE,
        ),
        flow_input(
            "rated_flow", "Flow of that test", "Q_r", "8 gpm", "From the same report.", DEVICE
        ),
        _share(
            "rated_uvt",
            "Transmittance of the test's water",
            "T_r",
            "75 %",
            "From the same report: often 75 % for a class, and 95 % for what a box promises.",
            DEVICE,
            40 * percent,
        ),
        Input(
            name="water_layer",
            label="Water between sleeve and wall",
            symbol="d",
            kind=length,
            us="in",
            si="cm",
            default="0.8 in",
            origin=INVENTED,
            low=0.08 * inch,
            high=4 * inch,
            measure="Half of: bore of the chamber less outside diameter of the sleeve.",
            group=DEVICE,
            sure="5 %",
        ),
        Choice(
            name="rated_when",
            label="Lamp of the test",
            options={
                "end": "as weak as at the end of its life, or at the alarm point",
                "new": "new",
            },
            default="end",
            origin=INVENTED,
            measure="The report says so. If nothing says so, take it as new.",
            group=DEVICE,
        ),
        flow_input(
            "uv_flow",
            "Largest flow through it",
            "Q_v",
            "6 gpm",
            "Pail, with everything open that may run at once. Behind pump 2 the outlet limit sets "
            "it.",
            WATER,
        ),
        _share(
            "uvt",
            "Transmittance of this water, 254 nm, 1 cm",
            "T_w",
            "88 %",
            "Laboratory, of the water that reaches the lamp, at its worst: after rain, with "
            "filters due. The eye cannot see it.",
            WATER,
            20 * percent,
        ),
        replace(water_fields.total_iron, group=WATER),
        replace(water_fields.hardness, low=0, high=3000 * MG_L, group=WATER),
        Input(
            name="turbidity",
            label="Turbidity, NTU",
            kind=number,
            default="0.4",
            origin=INVENTED,
            low=0,
            high=100,
            measure="Laboratory or a meter, of the water that reaches the lamp. An open tank that "
            "rusts iron raises it.",
            group=WATER,
        ),
        Input(
            name="lamp_age",
            label="Age of the lamp",
            symbol="t_l",
            kind=duration,
            us="days",
            si="days",
            default="200 days",
            origin=INVENTED,
            low=0,
            high=1500 * day,
            measure="Days since it was changed, lit day and night. Write the date on the chamber.",
            group=LAMP,
        ),
        Input(
            name="lamp_life",
            label="Life of the lamp",
            symbol="t_m",
            kind=duration,
            us="days",
            si="days",
            default="365 days",
            origin="common practice, no source: a year, 9000 hours",
            low=100 * day,
            high=1000 * day,
            measure="From its maker. Turning it on and off shortens it.",
            group=LAMP,
        ),
        replace(
            _share(
                "lamp_end",
                "Its light at the end of that life",
                "e",
                "80 %",
                "From its maker, as a share of the new lamp's.",
                LAMP,
                40 * percent,
            ),
            origin="common practice, no source: 70 to 90 %",
        ),
        replace(
            _share(
                "sleeve",
                "Light that the sleeve lets pass",
                "g",
                "90 %",
                "100 % just after cleaning. A film you can wipe off with a finger takes a tenth.",
                LAMP,
                40 * percent,
            ),
            origin="common practice, no source: 70 to 90 % between cleanings",
        ),
    ),
    outputs=(
        Output(
            name="dose",
            label="Dose",
            symbol="D",
            kind=dose_kind,
            low=UNSAFE_WATER,
            outside="Less than unsafe water needs.",
        ),
        Output(name="most_flow", label="Largest flow with enough", symbol="Q_a", kind=flow),
        Output(name="absorbed", label="Absorbance of this water", kind=absorbance_kind),
        Output(
            name="light_share",
            label="Light in this water over light in the test's",
            symbol="x",
            kind=share,
        ),
        Output(
            name="lamp_share",
            label="Light of the lamp over its light in the test",
            symbol="w",
            kind=share,
        ),
        _logs("giardia_logs", "Log of Giardia that it counts for"),
        _logs("crypto_logs", "Log of Cryptosporidium that it counts for"),
        _logs("virus_logs", "Log of viruses that it counts for"),
    ),
    work=uv_dose,
    cautions=(
        cautions.LICENSED_GERMS,
        cautions.UNSAFE_WATER,
        cautions.UV_LIGHT,
        cautions.NO_CERTIFICATE,
        cautions.LOCAL_CODE,
    ),
    sources=("cfr-141-720", "nsf-55", "bolton-2003"),
)
