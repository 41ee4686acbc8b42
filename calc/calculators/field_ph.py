"""How much a laboratory's pH hides: the carbon dioxide that left the bottle on its way."""

from dataclasses import replace

from calc import cautions
from calc.charts import Bar, Bars
from calc.fields import raw_water, water_fields
from calc.model import Answer, Calculator, Finding, Output, Quantity, Step
from calc.physics.calcite import USUAL_STRENGTH
from calc.physics.carbonate import CACO3_EQUIVALENT, CO2_MOLAR, LITRES, constants
from calc.physics.water_report import CALCITE_FOR_CO2, carbon_dioxide_lost
from calc.units import concentration, molar_mass, number, share

# Bicarbonate is nearly all of the alkalinity up to here: 1 % is carbonate.
HIGHEST = 8.3
SAME = 0.2  # two pH meters agree no better in soft water: common practice, no source


def field_ph(raw_ph: float, alkalinity: float, water_temperature: float, lab_ph: float) -> Answer:
    """Carbon dioxide and stone by the pH of the site and by that of the sheet."""
    charge = alkalinity / CACO3_EQUIVALENT
    first = constants(water_temperature, USUAL_STRENGTH * charge).first
    real = charge * LITRES * 10**-raw_ph / first * CO2_MOLAR
    seen = charge * LITRES * 10**-lab_ph / first * CO2_MOLAR
    lost = carbon_dioxide_lost(raw_ph, lab_ph)
    given = {
        "E": Quantity(CACO3_EQUIVALENT, molar_mass, 5, "calcium carbonate for one charge"),
        "M": Quantity(CO2_MOLAR, molar_mass, 5, "carbon dioxide"),
        "K": Quantity(first / LITRES, number, 4, "first constant of carbonic acid here, mol/L"),
        "m": Quantity(CALCITE_FOR_CO2, number, 4, "limestone for each carbon dioxide"),
    }
    return Answer(
        outputs={
            "co2_real": real,
            "co2_seen": seen,
            "co2_lost": lost,
            "stone_real": real * CALCITE_FOR_CO2,
            "stone_seen": seen * CALCITE_FOR_CO2,
            "times": real / seen,
        },
        findings=(_headline(raw_ph, lab_ph),),
        steps=(
            Step("Carbon dioxide at the site", "c_f = A_k * M / E * 10**(-pH_w) / K", given),
            Step("Carbon dioxide by the sheet", "c_l = A_k * M / E * 10**(-pH_l) / K", given),
            Step("Lost on the way", "f = 1 - 10**(pH_w - pH_l)"),
            Step("Stone it would dissolve at the site", "x_f = m * c_f", given),
            Step("Stone by the sheet", "x_l = m * c_l", given),
            Step("So many times more", "n = c_f / c_l"),
        ),
        charts=(
            Bars(
                title="Carbon dioxide in the same water",
                says="What the well gives, and what the bottle still had at the laboratory.",
                like=concentration,
                bars=(Bar("by the pH of the site", real), Bar("by the pH of the sheet", seen)),
            ),
        ),
    )


def _headline(raw_ph: float, lab_ph: float) -> Finding:
    if lab_ph > raw_ph + SAME:
        return Finding(
            "caution",
            "The sheet hides acid.",
            "{co2_lost} of the carbon dioxide was gone before the laboratory measured. By the site "
            "the water holds {co2_real}, by the sheet {co2_seen}: size nothing by the sheet's pH.",
        )
    if lab_ph < raw_ph - SAME:
        return Finding(
            "caution",
            "The sheet is more acid than the site.",
            "Water seldom gains acid in a bottle, unless iron rusts in it. Calibrate the meter, "
            "draw the sample again without air, and see whether a neutralizer was in line.",
        )
    return Finding(
        "good",
        "They agree.",
        "The two differ by no more than two meters do. {co2_real} of carbon dioxide.",
    )


def _stone(name: str, label: str, symbol: str) -> Output:
    return Output(name=name, label=label, symbol=symbol, kind=concentration)


CALCULATOR = Calculator(
    name="field_ph",
    title="Field pH against laboratory pH",
    question="How much acid did the bottle lose on its way to the laboratory?",
    inputs=(
        replace(raw_water.raw_ph, low=4.5, high=HIGHEST),
        raw_water.alkalinity,
        raw_water.water_temperature,
        replace(water_fields.lab_ph, low=4.5, high=HIGHEST),
    ),
    outputs=(
        _stone("co2_real", "Carbon dioxide in the well's water", "c_f"),
        _stone("co2_seen", "Carbon dioxide that the sheet's pH shows", "c_l"),
        Output(name="co2_lost", label="Lost on the way", symbol="f", kind=share, digits=2),
        _stone("stone_real", "Limestone that it can dissolve", "x_f"),
        _stone("stone_seen", "Limestone by the sheet's pH", "x_l"),
        Output(name="times", label="So many times more by the site", symbol="n", kind=number),
    ),
    work=field_ph,
    cautions=(cautions.NO_CERTIFICATE, cautions.LOCAL_CODE),
    sources=("plummer-1982", "davies-1962", "malmberg-1956"),
)
