"""Which iron it is: dissolved, rust, bound or grown, from a glass and a filter."""

from dataclasses import replace
from typing import NamedTuple

from calc import cautions
from calc.charts import Bar, Bars
from calc.errors import Refused
from calc.fields import INVENTED, water_fields
from calc.model import Answer, Calculator, Choice, Finding, Input, Output, Step
from calc.units import L, concentration, mg, share

GLASS = "Glass and filter"
MG_L = mg / L
STAINS = 0.3 * MG_L  # [cfr-143-3]
MOST = 0.5  # share from which one form rules the choice
SOME = 0.2  # share from which another must be dealt with too
SLACK = 1.1  # a filtered sample may read so much over the unfiltered one by chance


class _Forms(NamedTuple):
    """Iron by its form, kg/m³."""

    dissolved: float
    rust: float
    bound: float

    @property
    def total(self) -> float:
        return sum(self)


def iron_form(total_iron: float, iron_filtered: float, iron_stood: float, slime: str) -> Answer:
    """Dissolved iron, rust, and iron that neither air nor a filter takes."""
    _check(total_iron, iron_filtered, iron_stood)
    passed = min(iron_filtered, total_iron)
    bound = min(iron_stood, passed)
    forms = _Forms(passed - bound, total_iron - passed, bound)
    return Answer(
        outputs={
            "dissolved": forms.dissolved,
            "rust_iron": forms.rust,
            "bound": forms.bound,
            "dissolved_share": forms.dissolved / forms.total,
            "rust_share": forms.rust / forms.total,
            "bound_share": forms.bound / forms.total,
        },
        findings=tuple(_findings(forms, slime)),
        steps=_STEPS,
        charts=(_bars(forms),),
    )


def _check(total: float, filtered: float, stood: float) -> None:
    if filtered > SLACK * total:
        says = "is more than the {total_iron} before the filter: take both samples again"
        raise Refused("contradiction", "iron_filtered", says=says)
    if stood > SLACK * filtered:
        says = "is more than the {iron_filtered} at once: take both samples again"
        raise Refused("contradiction", "iron_stood", says=says)


def _findings(forms: _Forms, slime: str) -> list[Finding]:
    found = [_BACTERIA] if slime == "yes" else []
    if forms.total < STAINS:
        return [*found, _LITTLE]
    each = [
        (forms.bound / forms.total, _BOUND, _SOME_BOUND),
        (forms.rust / forms.total, _RED, _SOME_RUST),
        (forms.dissolved / forms.total, _CLEAR, _SOME_DISSOLVED),
    ]
    ruling = [most for part, most, _ in each if part >= MOST] or [_MIXED]
    also = [some for part, _, some in each if SOME <= part < MOST]
    return [*found, ruling[0], *also]


_BACTERIA = Finding(
    "caution",
    "Iron bacteria.",
    "Slime first. It grows in the well and in pipes, and a filter or softener before which it "
    "grows is full of it in weeks. Clean and shock the well and all plumbing, look again after a "
    "month, and only then size anything.",
)
_LITTLE = Finding(
    "good",
    "Little iron.",
    "{total_iron} in all is under the 0.3 mg/L from which it stains (US EPA, secondary standard, "
    "a goal for public supplies, not for health).",
)
_CLEAR = Finding(
    "caution",
    "Clear-water iron.",
    "Most of it is dissolved: {dissolved}. A softener takes some of that, with no air before it. "
    "Or air, bleach or a catalytic bed turns it to rust, and a filter holds the rust.",
)
_RED = Finding(
    "caution",
    "Red-water iron.",
    "Most of it is rust already: {rust_iron}. A filter that washes holds it; no oxidant is needed. "
    "Never a softener: rust stays in its resin.",
)
_BOUND = Finding(
    "caution",
    "Bound iron.",
    "{bound} passes the filter even after a day with air: bound to color from plants, or grains "
    "too fine to catch. Air, greensand and softeners fail on it. Chlorine with time, then a filter "
    "and carbon, tried on a jar first, or a licensed professional.",
)
_MIXED = Finding(
    "caution",
    "Several forms.",
    "No form is more than half of it. Each must be dealt with, rust first.",
)
_SOME_RUST = Finding(
    "caution",
    "Some rust.",
    "{rust_iron} comes as rust: a filter before any softener. If it comes only after a rest, look "
    "for steel pipe or a pressure tank that rusts.",
)
_SOME_DISSOLVED = Finding(
    "caution",
    "Some dissolved.",
    "{dissolved} passes a filter and turns to rust later. It needs an oxidant before the filter.",
)
_SOME_BOUND = Finding(
    "caution",
    "Some bound.",
    "{bound} will pass whatever is built for the rest. Tell the owner before, not after.",
)
_STEPS = (
    Step("Iron that is bound or too fine", "F_b = min(F_s, F_p, C_Fe)"),
    Step("Dissolved iron", "F_d = min(F_p, C_Fe) - F_b"),
    Step("Rust", "F_r = C_Fe - F_d - F_b"),
    Step("Dissolved, as a share", "x_d = F_d / C_Fe"),
    Step("Rust, as a share", "x_r = F_r / C_Fe"),
    Step("Bound, as a share", "x_b = F_b / C_Fe"),
)


def _bars(forms: _Forms) -> Bars:
    return Bars(
        title="The iron by its form",
        says="Rust a filter holds. What is dissolved must first turn to rust, or be exchanged. "
        "What is bound passes both.",
        like=concentration,
        bars=(
            Bar("dissolved", forms.dissolved),
            Bar("rust", forms.rust),
            Bar("bound or too fine", forms.bound),
        ),
    )


def _sample(name: str, label: str, symbol: str, default: str, measure: str) -> Input:
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=concentration,
        default=default,
        origin=INVENTED,
        low=0,
        high=100 * MG_L,
        measure=measure,
        group=GLASS,
        sure="10 %",
    )


CALCULATOR = Calculator(
    name="iron_form",
    title="Which iron it is",
    question="Is the iron dissolved, rust, bound to something, or grown by bacteria?",
    inputs=(
        replace(water_fields.total_iron, low=0.01 * MG_L, group=GLASS),
        _sample(
            "iron_filtered",
            "Iron that passes a 0.45 µm filter at once",
            "F_p",
            "0.7 mg/L",
            "Syringe and filter at the tap, within a minute: each minute with air makes rust of "
            "some. Then the drop test, or a bottle with acid for the laboratory.",
        ),
        _sample(
            "iron_stood",
            "Iron that passes the filter after a day with air",
            "F_s",
            "0.05 mg/L",
            "Half fill a clean bottle, add a pinch of baking soda (acid water would take days), "
            "shake now and then, filter after a day and test what passes.",
        ),
        Choice(
            name="slime",
            label="Slime in the toilet tank, or a film that breaks like a plate",
            options={"no": "no", "yes": "yes"},
            default="no",
            origin=INVENTED,
            measure="Lid off the toilet's tank: jelly, rusty or gray, is grown. A film on standing "
            "water that runs together again when touched is oil; one that breaks is iron.",
            group=GLASS,
        ),
    ),
    outputs=(
        Output(name="dissolved", label="Dissolved iron", symbol="F_d", kind=concentration),
        Output(name="rust_iron", label="Iron that is rust", symbol="F_r", kind=concentration),
        Output(
            name="bound", label="Iron bound or too fine to catch", symbol="F_b", kind=concentration
        ),
        Output(
            name="dissolved_share",
            label="Dissolved, as a share",
            symbol="x_d",
            kind=share,
            digits=2,
        ),
        Output(name="rust_share", label="Rust, as a share", symbol="x_r", kind=share, digits=2),
        Output(name="bound_share", label="Bound, as a share", symbol="x_b", kind=share, digits=2),
    ),
    work=iron_form,
    cautions=(cautions.NO_CERTIFICATE, cautions.CHLORINE, cautions.LOCAL_CODE),
    leaves={"dissolved": ("raw_iron",)},
    sources=("cfr-143-3", "cdc-drilled"),
)
