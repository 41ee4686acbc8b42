"""Answers that people act on, reckoned a second time from the sources' formulas.

Nothing of calc's arithmetic is used on this side: constants, units and algebra are written out
here, in the trade's units. Each figure is then claimed as a chapter would claim it.
"""

from math import exp, hypot, log, log10, pi, sqrt

import pytest

from build_scripts import fences

LITRES = 3.785411784  # in a US gallon
GALLONS = 1728 / 231  # in a cubic foot
POUND = 453.59237  # grams
FOOT_OF_WATER = 0.4335  # psi, at 50 °F
SEA_LEVEL = 14.696  # psi
RADON = log(2) / 3.8232 / 24  # decays in an hour, ICRP 107


def air(feet: float) -> float:
    """Pressure of the standard atmosphere, psi [us-atmosphere-1976]."""
    return float(SEA_LEVEL * (1 - 6.8756e-6 * feet) ** 5.2559)


def drawdown(gallons: float, charge: float, low: float, high: float, feet: float) -> float:
    """Boyle's law, pressures counted from nothing."""
    return gallons * (charge + air(feet)) * (1 / (low + air(feet)) - 1 / (high + air(feet)))


def worst_setting(inlet: float, share: float) -> float:
    """The outlet that is less than the inlet 19 times in 20, found by halving [jcgm-106]."""
    low, high = 0.0, inlet
    for _ in range(60):
        outlet = (low + high) / 2
        sure = inlet - outlet > 1.645 * share / 1.96 * hypot(inlet, outlet)
        low, high = (outlet, high) if sure else (low, outlet)
    return low


def peak_of_well(pump: float, inflow: float, depth: float, minutes: float) -> float:
    """Gallons in a peak, stepped through time; a 6 in bore [gwp-box-1]."""
    surface, step = pi / 16 * GALLONS, minutes / 20000
    fallen = taken = 0.0
    for _ in range(20000):
        enters = inflow * fallen
        draws = pump if fallen < depth else min(pump, enters)
        fallen += (draws - enters) * step / surface
        taken += draws * step
    return taken


def submergence(flow: float, bore: float) -> float:
    """S = D (1 + 2.3 F) [ansi-hi-9-8], inches."""
    speed = flow * 231 / 60 / (pi * bore**2 / 4)
    return bore * (1 + 2.3 * speed / sqrt(386.089 * bore))


def mean_light(clear: float, layer: float) -> float:
    """Over a layer, as a share of the light at the sleeve [bolton-2003]."""
    return float((1 - clear**layer) / (-layer * log(clear)))


T = 283.15  # kelvin; the three constants below are those of [plummer-1982]
K1 = 10 ** (-356.3094 - 0.06091964 * T + 21834.37 / T + 126.8339 * log10(T) - 1684915 / T**2)
K2 = 10 ** (-107.8871 - 0.03252849 * T + 5151.79 / T + 38.92561 * log10(T) - 563713.9 / T**2)
KS = 10 ** (-171.9065 - 0.077993 * T + 2839.319 / T + 71.595 * log10(T))
KW = 10 ** -(4470.99 / T - 6.0875 + 0.01706 * T)  # from memory


def species(ph: float, alkali: float, strength: float) -> tuple[float, float, float]:
    """Carbon dioxide, bicarbonate, carbonate, mol/L [davies-1962]."""
    root = sqrt(strength) / (1 + sqrt(strength)) - 0.3 * strength
    one, two, acid = 10 ** (-0.4918 * root), 10 ** (-4 * 0.4918 * root), 10**-ph
    doubled = K2 * one / (acid * two)
    bicarbonate = (alkali + (acid - KW / acid) / one) / (1 + 2 * doubled)
    return bicarbonate * one * acid / K1, bicarbonate, bicarbonate * doubled


def rest(stone: float, carbon: float) -> float:
    """How far from saturation with so much calcite dissolved: less than 1 takes more."""
    low, high, strength = 4.0, 11.0, 0.0022 + 3 * stone
    for _ in range(60):
        ph = (low + high) / 2
        found = species(ph, 40 / 50043.5 + 2 * stone, strength)
        low, high = (ph, high) if sum(found) > carbon + stone else (low, ph)
    root = sqrt(strength) / (1 + sqrt(strength)) - 0.3 * strength
    return float((13 / 40078 + stone) * found[2] * 10 ** (-8 * 0.4918 * root) / KS)


def calcite(stripped: float) -> float:
    """mg/L that pH 6.3, alkalinity 40, calcium 13 mg/L, 10 °C, 2.2 mmol/L takes up."""
    gas, bicarbonate, carbonate = species(6.3, 40 / 50043.5, 0.0022)
    carbon = gas * (1 - stripped) + bicarbonate + carbonate
    low, high = 0.0, 0.01
    for _ in range(50):
        stone = (low + high) / 2
        low, high = (stone, high) if rest(stone, carbon) < 1 else (low, stone)
    return low * 100087


LIFT = 6 * FOOT_OF_WATER
SIZED_BY = 142 / 17.118 + 3 * 0.89  # gpg
CLAIMS = [
    ("outlet_setting", "setting", worst_setting(4.8, 0.03), ".2f", "gpm"),
    ("outlet_setting", "one_draw", 9.5 / (1 - 4.8 / 6) - 5.906, ".1f", "gal"),
    ("tank_draw", "drawdown", drawdown(20, 28, 30, 50, 0), ".2f", "gal"),
    ("tank_draw", "lowest", 9.5 - (25 + 5.906) / 5, ".2f", "gal"),
    ("pressure_tank", "drawdown", drawdown(20, 38, 40, 60, 1200), ".2f", "gal"),
    ("pressure_tank", "tank_wanted", 9 / drawdown(1, 38, 40, 60, 1200), ".1f", "gal"),
    ("filter_due", "bed_now", (44 - LIFT) / 5.6 - 5.6 / 1.087**2, ".2f", "psi/gpm"),
    ("filter_due", "critical", (40 - LIFT) / 4.8 - 4.8 / 1.087**2, ".2f", "psi/gpm"),
    ("intake_depth", "submergence", submergence(6, 1.049), ".2f", "in"),
    ("well_supply", "peak_supply", peak_of_well(9, 0.02, 100, 60), ".0f", "gal"),
    ("storage_tank", "storage_needed", (2.5 - 0.35) * 30, ".1f", "gal"),
    ("cable_drop", "drop", 2 * 300 * 8 * 1.98e-3, ".2f", "V"),
    ("cable_drop", "longest", 0.05 * 230 / (2 * 8 * 1.98e-3), ".0f", "ft"),
    ("generator_start", "dip", 100 * 8.99 / 4 / (5 + 8.99 / 4), ".1f", "%"),
    ("operating_point", "dead_head", (300 - 30) * FOOT_OF_WATER, ".0f", "psi"),
    ("radon_sample", "decay_factor", exp(48 * RADON), ".3f", ""),
    (
        "radon_in_air",
        "air_added",
        20000 * 150 / 24 / GALLONS * 0.52 / (14400 * (0.5 + RADON)),
        ".2f",
        "pCi/L",
    ),
    (
        "vent_leak",
        "open_radon",
        19820 * 150 / 24 / GALLONS / (7200 * (0.3 + RADON)),
        ".2f",
        "pCi/L",
    ),
    ("carbon_bed", "left", 20000 * exp(-2.09 * 24 * 2 * GALLONS / 150), ".0f", "pCi/L"),
    (
        "carbon_dose treated_radon=134",
        "held",
        19866 * 150 * LITRES / 24 / RADON * 1e-6,
        ".1f",
        "µCi",
    ),
    (
        "disinfection",
        "into_well",
        (pi / 16 * 130 * GALLONS + pi * (1.049 / 24) ** 2 * 400 * GALLONS + 60) * 16 / 600,
        ".2f",
        "cups",
    ),
    ("carbonate", "ccpp", -calcite(0), ".1f", "mg/L"),
    ("neutralizer co2_stripped=80", "stone", calcite(0.8), ".1f", "mg/L"),
    ("neutralizer", "stone_year", 0.09691 * 150 * LITRES * 365.25 / POUND, ".1f", "lb"),
    (
        "softener raw_iron=0 manganese=0 entering_hardness=300 daily_use=300",
        "salt_year",
        6 * 365.25 / (20000 / (300 / 17.118 * 300) - 1),
        ".0f",
        "lb",
    ),
    ("softener", "lasts_for", 20000 / (SIZED_BY * 150) - 1, ".0f", "days"),
    (
        "uv_dose",
        "dose",
        40
        * 8
        / 6
        * mean_light(0.88, 2.032)
        / mean_light(0.75, 2.032)
        * (1 - 0.2 * 200 / 365)
        / 0.8
        * 0.9,
        ".1f",
        "mJ/cm²",
    ),
    ("contact_time", "ct", 0.3 * 80 / 5, ".2f", "mg·min/L"),
    ("contact_time", "bleach", 3 * 5 * LITRES / 52.5, ".2f", "mL/min"),
    (
        "contact_time water_temperature=41",
        "giardia_needed",
        1.07 * 3 * 0.2828 * 7.2**2.69,
        ".0f",
        "mg·min/L",
    ),
]


@pytest.mark.parametrize(
    ("request_", "output", "value", "digits", "unit"),
    CLAIMS,
    ids=[f"{request}-{output}" for request, output, *_ in CLAIMS],
)
def test_a_second_reckoning_agrees(
    request_: str, output: str, value: float, digits: str, unit: str
) -> None:
    fences.checked(f"{request_}\n{output} = {value:{digits}} {unit}".rstrip())
