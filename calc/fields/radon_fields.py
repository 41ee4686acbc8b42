"""Radon in water, rooms and air, as inputs."""

from calc.fields import INVENTED, RADON
from calc.model import Input
from calc.units import (
    L,
    ft,
    hour,
    pCi,
    radon,
    rate,
    volume,
)

raw_radon = Input(
    name="raw_radon",
    label="Radon in the raw water",
    symbol="C_r",
    kind=radon,
    default="20000 pCi/L",
    origin=INVENTED,
    low=100 * pCi / L,
    high=5e6 * pCi / L,
    measure="Laboratory, drawn before the aerator without a bubble and brought back to the hour "
    "of the draw. Take the highest of several: a bedrock well swings by tens of percent.",
    group=RADON,
    sure="20 %",
)
target_radon = Input(
    name="target_radon",
    label="Radon that may be left in the water",
    symbol="C_t",
    kind=radon,
    default="300 pCi/L",
    origin="invented choice. 300 pCi/L was proposed for public supplies in 1999 and never made "
    "final [epa-1999-proposal]; it is no limit for a private well",
    low=10 * pCi / L,
    high=1e5 * pCi / L,
    measure="Your state's advice, with its date, or the radon in the house's air that you accept.",
    group=RADON,
)
treated_radon = Input(
    name="treated_radon",
    label="Radon in the treated water",
    symbol="C_w",
    kind=radon,
    default="180 pCi/L",
    origin=INVENTED,
    low=0.1 * pCi / L,
    high=5e6 * pCi / L,
    measure="Laboratory, drawn after the treatment within the hour of the raw sample, with the "
    "largest flow running, brought back to the hour of the draw.",
    group=RADON,
    sure="40 pCi/L",
)
house_volume = Input(
    name="house_volume",
    label="Air in the house",
    symbol="V_h",
    kind=volume,
    us="ft³",
    si="m³",
    default="14400 ft³",
    origin="invented example: 1800 square feet, 8 feet high",
    low=1000 * ft**3,
    high=200000 * ft**3,
    measure="Floor area times height of all rooms whose doors stand open most of the day. A "
    "basement counts if its door does.",
    group="House",
    sure="10 %",
)
air_change = Input(
    name="air_change",
    label="Air changes of the house",
    symbol="l_a",
    kind=rate,
    default="0.5 per h",
    origin=INVENTED,
    low=0.05 / hour,
    high=5 / hour,
    measure="Outdoor air for each volume of the house in an hour, over the year. A tight house has "
    "0.2 to 0.35, an old one 1 and more (common practice, no source). A blower-door figure is "
    "taken at 50 Pa and is no air change of every day.",
    group="House",
)
air_radon = Input(
    name="air_radon",
    label="Radon in the air that the blower takes",
    symbol="C_a",
    kind=radon,
    default="4 pCi/L",
    origin="the level at which US EPA advises to fix a house's air [epa-radon-2016]",
    low=0,
    high=1000 * pCi / L,
    measure="A test of the air at the blower's intake, with the aerator running. A crawl space, or "
    "a basement into which the unit itself leaks, may hold a hundred times this.",
    group=RADON,
)
