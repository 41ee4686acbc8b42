"""Water as a meter or a laboratory tells it, as inputs."""

from calc.fields import AERATOR, CHEMISTRY, INVENTED, MG_L, SHEET
from calc.model import Input
from calc.units import (
    L,
    air_share,
    concentration,
    mg,
    number,
    temperature,
)
from calc.units import hardness as hardness_kind
from calc.units import (
    nitrate as nitrate_kind,
)

LEAST_PH, MOST_PH = 6.5, 8.5  # at the tap, [cfr-143-3]

alkalinity = Input(
    name="alkalinity",
    label="Alkalinity of the water",
    symbol="A_k",
    kind=hardness_kind,
    default="40 mg/L as CaCO3",
    origin=INVENTED,
    low=2 * mg / L,
    high=500 * mg / L,
    measure="Drop test at the tap or the laboratory's sheet. Aeration does not change it, a "
    "neutralizer does: take it from the water that enters the aerator.",
    group=CHEMISTRY,
    sure="10 %",
)
hardness = Input(
    name="hardness",
    label="Hardness of the water",
    symbol="H_d",
    kind=hardness_kind,
    default="45 mg/L as CaCO3",
    origin=INVENTED,
    low=1 * mg / L,
    high=1000 * mg / L,
    measure="Drop test or the laboratory's sheet, of the water that enters the aerator. All of it "
    "is taken as calcium, which puts scale on the safe side.",
    group=CHEMISTRY,
    sure="10 %",
)
target_ph = Input(
    name="target_ph",
    label="pH wanted in the house",
    symbol="pH_g",
    kind=number,
    default="7.2",
    origin="common practice, no source: 7.2 to 8.0 where pipes are copper",
    low=6.5,
    high=8.5,
    measure="You decide. 7.0 is not enough: it is where meters and waters wander from.",
    group=CHEMISTRY,
)
treated_ph = Input(
    name="treated_ph",
    label="pH of the water that leaves the aerator",
    symbol="pH_t",
    kind=number,
    default="7.6",
    origin=INVENTED,
    low=5.0,
    high=9.0,
    measure="Meter set with two buffers, in water just drawn behind the aerator and before any "
    "neutralizer, at the largest flow. Test strips are too coarse.",
    group=CHEMISTRY,
    sure="0.1",
)
lab_ph = Input(
    name="lab_ph",
    label="pH on the laboratory's sheet",
    symbol="pH_l",
    kind=number,
    default="6.9",
    origin=INVENTED,
    low=3.0,
    high=11.0,
    measure="From the sheet. The bottle has lost gas on its way: well water reads too high there, "
    "often by half a unit and more.",
    group=SHEET,
    sure="0.1",
)
water_temperature = Input(
    name="water_temperature",
    label="Temperature of the water",
    symbol="T",
    kind=temperature,
    default="50 °F",
    origin=INVENTED,
    low=274.15,
    high=308.15,
    measure="Thermometer in running raw water. Take the coldest month: cold water holds on to "
    "more radon.",
    group=AERATOR,
    sure="2 °F",
)
water_coldest = Input(
    name="water_coldest",
    label="Coldest that the water gets",
    symbol="T_c",
    kind=temperature,
    default="42 °F",
    origin=INVENTED,
    low=temperature.unit("°C").into_si(0.1),
    high=temperature.unit("°C").into_si(40),
    measure="Thermometer in a pail, late in winter. Deep wells hardly change.",
    group="Water",
    sure="1 °F",
)
air_co2 = Input(
    name="air_co2",
    label="Carbon dioxide in the blower's air",
    kind=air_share,
    default="800 ppm",
    origin="a lived-in house; outdoors about 420, from memory",
    low=300e-6,
    high=0.02,
    measure="A meter at the blower's intake. A burner or many people raise it, and it "
    "sets the highest pH that air can reach.",
    group=AERATOR,
    sure="200 ppm",
)
solids = Input(
    name="solids",
    label="Dissolved solids",
    symbol="s",
    kind=concentration,
    default="88 mg/L",
    origin=INVENTED,
    low=10 * MG_L,
    high=3000 * MG_L,
    measure="The laboratory's sheet (TDS), dried and weighed. A pocket meter shows conductivity "
    "times a guess: near enough for chalk, no test of the sheet.",
    group=CHEMISTRY,
    sure="20 %",
)
nitrate = Input(
    name="nitrate",
    label="Nitrate",
    symbol="C_N",
    kind=nitrate_kind,
    default="0.6 mg/L as N",
    origin=INVENTED,
    low=0,
    high=500 * MG_L,
    measure="See whether the sheet means nitrogen (nitrate-N) or nitrate (NO3): the second figure "
    "is 4.43 times the first. Less than the laboratory can see counts as 0.",
    group=SHEET,
    sure="10 %",
)


def on_sheet(
    name: str, label: str, symbol: str, default: str, measure: str, high: float, sure: str = "10 %"
) -> Input:
    """A concentration on a laboratory's sheet; 0 is for what it could not find."""
    return Input(
        name=name,
        label=label,
        symbol=symbol,
        kind=concentration,
        default=default,
        origin=INVENTED,
        low=0,
        high=high,
        us="µg/L" if "µg" in default else "",
        si="µg/L" if "µg" in default else "",
        measure=measure,
        group=SHEET,
        sure=sure,
    )


total_iron = on_sheet(
    "total_iron",
    "Iron, dissolved and rust together",
    "C_Fe",
    "0.8 mg/L",
    "Unfiltered sample. Rust settles in the bottle: shake it before you pour.",
    100 * MG_L,
)
manganese = on_sheet(
    "manganese",
    "Manganese",
    "C_Mn",
    "0.09 mg/L",
    "Unfiltered sample, from the well and not from behind a softener.",
    50 * MG_L,
)
sodium = on_sheet(
    "sodium",
    "Sodium",
    "C_Na",
    "9 mg/L",
    "Raw water. Behind a softener it is the softener that you measure.",
    5000 * MG_L,
    sure="5 %",
)
