"""Inputs of iron, contact tanks and backwash that several calculators ask for, declared once.

The worked case is invented: the Quarry Road house at Alder Ledge.
"""

from dataclasses import replace

from calc.fields import CHEMISTRY, INVENTED, flow_input, water_fields
from calc.model import Choice, Input
from calc.units import L, concentration, duration, gal, mg, minute, number, volume

TANK = "Contact tank"
WASH = "Backwash"

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
manganese = replace(water_fields.manganese, group=CHEMISTRY)
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
rust_ph = Input(
    name="rust_ph",
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
contact_volume = Input(
    name="contact_volume",
    label="Water in the contact tank",
    symbol="V_c",
    kind=volume,
    default="80 gal",
    origin=INVENTED,
    low=1 * gal,
    high=5000 * gal,
    measure="What is always there, at the lowest level, all tanks together. Of an open tank that "
    "fills and empties only what stands above the intake at its lowest; a bladder tank counts for "
    "nothing.",
    group=TANK,
    sure="5 %",
)
contact_flow = flow_input(
    "contact_flow",
    "Largest flow through it",
    "Q_c",
    "5 gpm",
    "Pail or meter while all runs that may run at once, not the mean of the day.",
    TANK,
)
backwash_flow = flow_input(
    "backwash_flow",
    "Flow of the backwash",
    "Q_b",
    "8 gpm",
    "Pail at the drain line, in the middle of a wash: the flow control's label is a promise, the "
    "pail is a fact.",
    WASH,
)
backwash_time = Input(
    name="backwash_time",
    label="Time of the backwash",
    symbol="t_b",
    kind=duration,
    default="10 min",
    origin="common practice, no source: 8 to 15 minutes",
    low=1 * minute,
    high=60 * minute,
    measure="From the valve's program. Right when the drain runs clear.",
    group=WASH,
)
