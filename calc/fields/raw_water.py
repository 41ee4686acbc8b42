"""Raw water for the calculators that ask how acid it is: its inputs, declared once, and the check
that they can be one water. The worked case is invented: the Quarry Road house at Alder Ledge.
"""

from dataclasses import replace
from typing import NamedTuple

from calc.errors import Refused
from calc.fields import CHEMISTRY, INVENTED, water_fields
from calc.model import Input
from calc.physics.calcite import CALCIUM_MOLAR, USUAL_STRENGTH, Water, water_of_ph
from calc.physics.carbonate import CACO3_EQUIVALENT, co2_at_rest, from_ph
from calc.units import L, concentration, mg, number

raw_ph = Input(
    name="raw_ph",
    label="pH of the raw water",
    symbol="pH_w",
    kind=number,
    default="6.3",
    origin=INVENTED,
    low=4.8,
    high=9.5,
    measure="Meter set with two buffers, in running raw water, within a minute. Soft water is "
    "slow: wait until it stands still. A bottle loses carbon dioxide on its way: a laboratory's pH "
    "is too high, and a bed sized by it too small.",
    group=CHEMISTRY,
    sure="0.1",
)
alkalinity = replace(
    water_fields.alkalinity,
    measure="Drop test at the well or the laboratory's sheet: it does not change when gas leaves "
    "the bottle. Take raw water, before any neutralizer.",
)
calcium = Input(
    name="calcium",
    label="Calcium in the water",
    symbol="c_Ca",
    kind=concentration,
    default="13 mg/L",
    origin=INVENTED,
    low=0.5 * (mg / L),
    high=400 * (mg / L),
    measure="The laboratory's sheet, mg/L of calcium itself. Where the sheet has only hardness, "
    "divide it by 2.5: that takes magnesium for calcium and overstates it.",
    group=CHEMISTRY,
    sure="10 %",
)
water_temperature = replace(
    water_fields.water_temperature,
    group=CHEMISTRY,
    measure="Thermometer in running raw water. Deep wells hardly change over the year.",
)
INPUTS = (raw_ph, alkalinity, calcium, water_temperature)


class RawWater(NamedTuple):
    """The inputs, in the order of `INPUTS`, SI."""

    ph: float
    alkalinity: float
    calcium: float
    temperature: float

    def water(self, strength: float | None = None) -> Water:
        """The water, mol/m³. Refused where the inputs cannot belong together.

        strength -- ionic strength; left out, it is the usual one for that alkalinity
        """
        charge = self.alkalinity / CACO3_EQUIVALENT
        strength = USUAL_STRENGTH * charge if strength is None else strength
        state = from_ph(self.ph, charge, self.temperature, strength)
        if state.bicarbonate <= 0:
            says = "is more than an alkalinity of {alkalinity} allows: measure both again"
            raise Refused("contradiction", "raw_ph", says=says)
        if state.co2 > co2_at_rest(self.temperature, 1.0):
            says = "with an alkalinity of {alkalinity} would be soda water: measure both again"
            raise Refused("contradiction", "raw_ph", says=says)
        return water_of_ph(
            self.ph, charge, self.calcium / CALCIUM_MOLAR, self.temperature, strength
        )
