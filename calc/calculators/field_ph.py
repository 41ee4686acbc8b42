"""How much a laboratory's pH hides: the carbon dioxide that left the bottle on its way."""

from dataclasses import replace

from calc import cautions, fields
from calc.charts import Bar, Bars
from calc.fields import INVENTED
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.carbonate import CO2_MOLAR, LITRES, constants
from calc.physics.water_report import CACO3, CALCITE_FOR_CO2, carbon_dioxide_lost
from calc.units import concentration, molar_mass, number, share

# Bicarbonate is nearly all of the alkalinity up to here: 1 % is carbonate.
HIGHEST = 8.3
SAME = 0.2  # two pH meters agree no better in soft water: common practice, no source
STRENGTH_OF_ALKALINITY = 2.0  # ionic strength over alkalinity, both in mol/m³


def field_ph(raw_ph: float, alkalinity: float, water_temperature: float, lab_ph: float) -> Answer:
    """Carbon dioxide and stone by the pH of the site and by that of the sheet."""
    charge = alkalinity / CACO3
    first = constants(water_temperature, STRENGTH_OF_ALKALINITY * charge).first
    real = charge * LITRES * 10**-raw_ph / first * CO2_MOLAR
    seen = charge * LITRES * 10**-lab_ph / first * CO2_MOLAR
    lost = carbon_dioxide_lost(raw_ph, lab_ph)
    given = {
        "E": Quantity(CACO3, molar_mass, 5, "calcium carbonate for one charge"),
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
            "the "
            "water holds {co2_real}, by the sheet {co2_seen}: size nothing by the sheet's pH.",
        )
    if lab_ph < raw_ph - SAME:
        return Finding(
            "caution",
            "The sheet is more acid than the site.",
            "Water seldom gains acid in a bottle, unless iron rusts in it. Calibrate the meter, "
            "draw "
            "the sample again without air, and see whether a neutralizer was in line.",
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
        Input(
            name="raw_ph",
            label="pH of the raw water",
            symbol="pH_w",
            kind=number,
            default="6.3",
            origin=INVENTED,
            low=4.5,
            high=HIGHEST,
            measure="Meter set with two buffers on the spot, in running raw water, within a minute "
            "of "
            "the tap. Soft water is slow: wait until it stands still.",
            group=fields.CHEMISTRY,
            sure="0.1",
        ),
        replace(
            fields.alkalinity,
            measure="Drop test at the tap or the laboratory's sheet, raw water. It does not change "
            "when gas leaves the bottle: this figure of the sheet can be trusted.",
        ),
        replace(fields.water_temperature, group=fields.CHEMISTRY),
        replace(fields.lab_ph, low=4.5, high=HIGHEST),
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
