"""Inputs on iron and manganese that several calculators ask for, declared once.

The worked case is invented: the Quarry Road house at Alder Ledge.
"""

from dataclasses import replace

from calc import fields
from calc.fields import CHEMISTRY, INVENTED
from calc.model import Choice, Input
from calc.units import L, concentration, mg, number

raw_iron = Input(
    name="raw_iron",
    label="Dissolved iron in the water that enters",
    symbol="F",
    kind=concentration,
    default="0.8 mg/L",
    origin=INVENTED,
    low=0.01 * (mg / L),
    high=50 * (mg / L),
    measure="Drop test at once on water that came clear and passed a 0.45 µm filter, or a sample "
    "filtered on site for the laboratory. Red flakes are rust already and count elsewhere.",
    group=CHEMISTRY,
    sure="15 %",
)
manganese = replace(fields.manganese, group=CHEMISTRY)
oxidant = Choice(
    name="oxidant",
    label="What turns the iron to rust",
    options={
        "air": "air",
        "bleach": "bleach (chlorine)",
        "permanganate": "potassium permanganate",
    },
    default="air",
    origin=INVENTED,
    measure="Air where an aerator runs anyway. Bleach where there are bacteria. Permanganate for a "
    "bed of manganese greensand.",
    group=CHEMISTRY,
)
contact_ph = Input(
    name="contact_ph",
    label="pH where the iron is to rust",
    symbol="pH_k",
    kind=number,
    default="7.6",
    origin=INVENTED,
    low=5.5,
    high=8.5,
    measure="Meter set with two buffers, in water just drawn where it enters the contact tank: "
    "behind the air or the neutralizer. A tenth off is a quarter to a third in the time.",
    group=CHEMISTRY,
    sure="0.1",
)
