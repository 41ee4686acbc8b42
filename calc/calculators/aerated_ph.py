"""pH after the aerator, and what its rise tells about the radon that left with it."""

from math import exp, log10
from typing import NamedTuple

from calc import cautions
from calc.charts import Axis, Chart, Limit, Line, Mark
from calc.errors import Refused
from calc.fields import CHEMISTRY, aerator_fields, radon_fields, water_fields
from calc.fields.water_fields import LEAST_PH, MOST_PH
from calc.model import Answer, Calculator, Finding, Input, Output, Quantity, Step
from calc.physics.carbonate import (
    CACO3_EQUIVALENT,
    CO2_MOLAR,
    LITRES,
    Carbonate,
    air_to_water_co2,
    co2_at_rest,
    constants,
    from_co2,
    from_ph,
    saturation_index,
)
from calc.physics.radon_solubility import air_to_water
from calc.physics.two_gases import Unit, other_saturation, relative_units
from calc.units import concentration, number, share

# Two readings of a pocket meter that agree to 0.1 each: from memory.
CLOSE = 0.2
STRENGTH = 2.0  # ionic strength over alkalinity in ordinary well water, computed for six waters
POINTS, MOST_UNITS = 36, 5.0


class _Water(NamedTuple):
    """Alkalinity mol/m³, temperature K, ionic strength mol/m³, and carbon dioxide at rest with
    the blower's air, mol/m³."""

    alkalinity: float
    temperature: float
    strength: float
    rest: float

    def of_ph(self, ph: float) -> Carbonate:
        return from_ph(ph, self.alkalinity, self.temperature, self.strength)

    def of_co2(self, co2: float) -> Carbonate:
        return from_co2(co2, self.alkalinity, self.temperature, self.strength)


class _Strip(NamedTuple):
    """The aerator for two gases: stripping factors, and how much sooner one fills the air."""

    unit: Unit
    radon: float
    co2: float
    relative: float

    def co2_left(self, full_of_radon: float) -> float:
        """Share of the carbon dioxide left where the air leaves so full of radon."""
        return self.unit.left(self.co2, other_saturation(full_of_radon, self.relative))

    def radon_left(self, co2_left: float) -> float | None:
        """Share of the radon left where so much carbon dioxide is; None: that tells nothing."""
        if not self.unit.left(self.co2, 1.0) < co2_left < 1:
            return None
        full = self.unit.saturation(self.co2, co2_left)
        return self.unit.left(self.radon, other_saturation(full, 1 / self.relative))


class _Expected(NamedTuple):
    """The water to expect, how full of radon its air leaves, and the share of the carbon dioxide
    left of what can leave."""

    water: Carbonate
    radon_full: float
    co2_left: float


class _Found(NamedTuple):
    """The water before, as measured and at rest with the air; and what the radon samples lead
    one to expect, None if no air of that amount can do what they say."""

    before: Carbonate
    measured: Carbonate
    rest: Carbonate
    expected: _Expected | None


def aerated_ph(
    entering_ph: float,
    treated_ph: float,
    alkalinity: float,
    hardness: float,
    water_temperature: float,
    aerator_flow: float,
    aerator_air: float,
    aerator: str,
    aerator_stages: str,
    air_co2: float,
    raw_radon: float,
    treated_radon: float,
) -> Answer:
    """The pH to expect after the aerator, and the radon removal that the pH measured stands for."""
    moles = alkalinity / CACO3_EQUIVALENT
    water = _Water(
        moles, water_temperature, STRENGTH * moles, co2_at_rest(water_temperature, air_co2)
    )
    before = water.of_ph(entering_ph)
    ratio = aerator_air / aerator_flow
    strip = _Strip(
        Unit(aerator, int(aerator_stages)),
        air_to_water(water_temperature) * ratio,
        air_to_water_co2(water_temperature) * ratio,
        relative_units(water_temperature),
    )
    left = treated_radon / raw_radon
    if before.co2 <= water.rest:
        says = "is as high as air can bring this water: there is nothing to blow out"
        raise Refused("contradiction", "entering_ph", says=says)
    if left >= 1:
        raise Refused("contradiction", "treated_radon", says="must be below {raw_radon}")
    found = _Found(
        before,
        water.of_ph(treated_ph),
        water.of_co2(water.rest),
        _expected(before, water, strip, left),
    )
    seen = (found.measured.co2 - water.rest) / (before.co2 - water.rest)
    radon_left = strip.radon_left(seen)
    index = saturation_index(
        found.measured, hardness / CACO3_EQUIVALENT / 2, water.temperature, water.strength
    )
    return Answer(
        outputs={
            "expected_ph": found.expected and found.expected.water.ph,
            "ph_rise": treated_ph - entering_ph,
            "rest_ph": found.rest.ph,
            "implied_removal": None if radon_left is None else 1 - radon_left,
            "known_removal": 1 - left,
            "co2_before": before.co2 * CO2_MOLAR,
            "co2_after": found.measured.co2 * CO2_MOLAR,
            "co2_removal": 1 - found.measured.co2 / before.co2,
            "scale_index": index,
        },
        findings=(_headline(found, seen), *_more(found, index)),
        steps=_steps(_given(found, strip, water, left), strip.unit.kind),
        charts=(_chart(strip, water, found, 1 - left),),
    )


def _expected(before: Carbonate, water: _Water, strip: _Strip, left: float) -> _Expected | None:
    if left <= strip.unit.left(strip.radon, 1.0):
        return None
    full = strip.unit.saturation(strip.radon, left)
    co2_left = strip.co2_left(full)
    co2 = water.rest + (before.co2 - water.rest) * co2_left
    return _Expected(water.of_co2(co2), full, co2_left)


def _headline(found: _Found, seen: float) -> Finding:
    if seen >= 1:
        return Finding(
            "danger",
            "No rise.",
            "Carbon dioxide has not left this water, and radon leaves the same way. Blower, stones "
            "and vent first; then check the meter.",
        )
    if found.expected is None:
        return Finding(
            "caution",
            "The figures do not fit.",
            "By the samples {known_removal} of the radon is gone. {aerator_air} of air cannot take "
            "that much from {aerator_flow}, even if it left quite full: measure air and flow "
            "again, and count the stages.",
        )
    measured, expected = found.measured.ph, found.expected.water.ph
    if measured < expected - CLOSE:
        return Finding(
            "danger",
            "Less than expected.",
            "With the removal of the last samples the pH would be {expected_ph}; it is "
            "{treated_ph}. The unit does less than it did. Clean it, and sample radon again.",
        )
    if measured > expected + CLOSE:
        return Finding(
            "caution",
            "More than expected.",
            "The pH would be {expected_ph} and reads {treated_ph}. A sample that stood, a "
            "neutralizer between, a wrong alkalinity: nothing that speaks for more radon removed.",
        )
    return Finding(
        "good",
        "As expected.",
        "The pH reads {treated_ph}, and {expected_ph} goes with the removal of the last samples. "
        "This is a sign that the unit works as it did, no proof: only a radon sample is.",
    )


def _more(found: _Found, index: float) -> tuple[Finding, ...]:
    findings = []
    if found.expected and found.expected.water.ph > found.rest.ph - CLOSE:
        findings.append(
            Finding(
                "caution",
                "The pH is at its end.",
                "The blower's air can bring this water to {rest_ph} and no further. So near to it "
                "the pH cannot tell a good removal from a very good one, only from a bad one.",
            )
        )
    if index > 0:
        findings.append(
            Finding(
                "caution",
                "Scale.",
                "The saturation index is {scale_index}: over 0 chalk can settle on stones, trays "
                "and the heater. Look for a white crust at each cleaning.",
            )
        )
    if found.measured.ph < LEAST_PH:
        findings.append(
            Finding(
                "caution",
                "Still acid.",
                "US EPA's secondary standard for taste and corrosion is pH 6.5 to 8.5 (for public "
                "supplies, advice only). A neutralizer after the aerator needs far less than one "
                "before it.",
            )
        )
    if found.measured.ph > MOST_PH:
        findings.append(
            Finding(
                "caution",
                "Alkaline.",
                "US EPA's secondary standard for taste and corrosion is pH 6.5 to 8.5 (for public "
                "supplies, advice only).",
            )
        )
    return tuple(findings)


def _given(found: _Found, strip: _Strip, water: _Water, left: float) -> dict[str, Quantity]:
    first = constants(water.temperature, water.strength).first
    counted = "counted as carbon dioxide"
    given = {
        "A": Quantity(strip.radon / air_to_water(water.temperature), number, 4),
        "H_r": Quantity(
            air_to_water(water.temperature), number, 4, "radon in air over radon in water, at rest"
        ),
        "H_c": Quantity(
            air_to_water_co2(water.temperature),
            number,
            4,
            "carbon dioxide in air over that in water, at rest",
        ),
        "S_r": Quantity(strip.radon, number, 4),
        "S_c": Quantity(strip.co2, number, 4),
        "y_r": Quantity(left, share, 4),
        "p_1": Quantity(-log10(first / LITRES), number, 5, "first constant of carbonic acid, pK1"),
        "b_r": Quantity(
            found.before.bicarbonate * CO2_MOLAR,
            concentration,
            4,
            f"bicarbonate that enters, {counted}",
        ),
        "b_t": Quantity(
            found.measured.bicarbonate * CO2_MOLAR,
            concentration,
            4,
            f"bicarbonate that leaves, {counted}",
        ),
        "c_0": Quantity(
            water.rest * CO2_MOLAR, concentration, 4, "carbon dioxide at rest with the blower's air"
        ),
    }
    return given if found.expected is None else given | _given_expected(found.expected, strip)


def _given_expected(expected: _Expected, strip: _Strip) -> dict[str, Quantity]:
    full, water = expected.radon_full, expected.water
    return {
        "n": Quantity(strip.unit.stages, number, 2, "stages"),
        "l_r": Quantity(strip.radon * full, number, 4, "natural logarithm of 1 / y_r"),
        "e": Quantity(exp(1), number, 6, "base of natural logarithms"),
        "f_r": Quantity(full, share, 4),
        "r": Quantity(strip.relative, number, 4, "how much sooner carbon dioxide fills the air"),
        "f_c": Quantity(other_saturation(full, strip.relative), share, 4),
        "y_c": Quantity(expected.co2_left, share, 4),
        "c_x": Quantity(water.co2 * CO2_MOLAR, concentration, 4),
        "l_x": Quantity(
            log10(water.co2 / water.bicarbonate),
            number,
            4,
            "logarithm, to base 10, of c_x over bicarbonate",
        ),
    }


def _steps(given: dict[str, Quantity], kind: str) -> tuple[Step, ...]:
    if kind == "crossed":
        full, share_left = "f_r = l_r / S_r", "y_c = e**(-S_c * f_c)"
    elif kind == "basins":
        full = "f_r = n * (y_r**(-1 / n) - 1) / S_r"
        share_left = "y_c = (1 + S_c * f_c / n)**(-n)"
    else:
        full = "f_r = ((((S_r - 1) / y_r + 1) / S_r)**(1 / n) - 1) / (S_r - 1)"
        share_left = "y_c = (S_c - 1) / (S_c * (1 + f_c * (S_c - 1))**n - 1)"
    steps = (
        Step("Share of the radon left, by the last samples", "y_r = C_w / C_r", given),
        Step("Removal by the last samples", "R = 1 - y_r", given),
        Step("Carbon dioxide that enters", "c_r = b_r * 10**(p_1 - pH_r)", given),
        Step("Carbon dioxide left, by the pH measured", "c_t = b_t * 10**(p_1 - pH_t)", given),
        Step("Share of the carbon dioxide that left", "R_c = 1 - c_t / c_r", given),
    )
    if "f_r" not in given:
        return steps
    return (
        *steps,
        Step("Air for each part of water", "A = G / Q_a", given),
        Step("Stripping factor of radon", "S_r = H_r * A", given),
        Step("Stripping factor of carbon dioxide", "S_c = H_c * A", given),
        Step("How full of radon the air leaves", full, given),
        Step("How full of carbon dioxide", "f_c = 1 - (1 - f_r)**r", given),
        Step("Share left of the carbon dioxide that can leave", share_left, given),
        Step("Carbon dioxide to expect", "c_x = c_0 + (c_r - c_0) * y_c", given),
        Step("pH to expect", "pH_x = p_1 - l_x", given),
    )


def _chart(strip: _Strip, water: _Water, found: _Found, removal: float) -> Chart:
    above = found.before.co2 - water.rest
    points = []
    for n in range(POINTS + 1):
        full = 1 - exp(-MOST_UNITS * (n / POINTS) ** 3)
        co2 = water.rest + above * strip.co2_left(full)
        points.append((1 - strip.unit.left(strip.radon, full), water.of_co2(co2).ph))
    marks: tuple[Mark, ...] = ()
    if found.expected:
        marks = (Mark("by the last radon samples", removal, found.expected.water.ph, here=True),)
    return Chart(
        title="pH that goes with a removal of radon",
        says="Both rise together as the unit gets better. Near the end the pH hardly moves while "
        "the radon left still falls by a half and a half again.",
        x=Axis("Radon removed", share),
        y=Axis("pH after the aerator", number),
        lines=(Line("in this water and unit", tuple(points)),),
        limits=(Limit("pH measured today", found.measured.ph),),
        marks=marks,
    )


CALCULATOR = Calculator(
    name="aerated_ph",
    title="pH after the aerator",
    question="Which pH should the aerated water have, and does today's pH say that the unit works?",
    inputs=(
        Input(
            name="entering_ph",
            label="pH of the water that enters the aerator",
            symbol="pH_r",
            kind=number,
            default="6.3",
            origin="invented example: Quarry Road's well water, the neutralizer bypassed",
            low=5.0,
            high=8.5,
            measure="Meter set with two buffers, in running water at a cock before the aerator, at "
            "once. A bottle that stood an hour reads too high.",
            group=CHEMISTRY,
            sure="0.1",
        ),
        water_fields.treated_ph,
        water_fields.alkalinity,
        water_fields.hardness,
        water_fields.water_temperature,
        aerator_fields.aerator_flow,
        aerator_fields.aerator_air,
        aerator_fields.aerator,
        aerator_fields.aerator_stages,
        water_fields.air_co2,
        radon_fields.raw_radon,
        radon_fields.treated_radon,
    ),
    outputs=(
        Output(
            name="expected_ph",
            label="pH to expect",
            symbol="pH_x",
            kind=number,
            none="the radon samples do not fit this air",
        ),
        Output(name="ph_rise", label="Rise measured", kind=number, digits=2),
        Output(name="rest_ph", label="Highest pH that this air can bring", kind=number),
        Output(
            name="implied_removal",
            label="Radon removal that today's pH stands for",
            kind=share,
            none="the pH cannot tell",
        ),
        Output(
            name="known_removal",
            label="Radon removal by the last samples",
            symbol="R",
            kind=share,
        ),
        Output(
            name="co2_before", label="Carbon dioxide that enters", symbol="c_r", kind=concentration
        ),
        Output(name="co2_after", label="Carbon dioxide left", symbol="c_t", kind=concentration),
        Output(name="co2_removal", label="Carbon dioxide removed", symbol="R_c", kind=share),
        Output(
            name="scale_index",
            label="Saturation index of chalk, hardness taken as calcium",
            kind=number,
            digits=2,
            high=0.0,
            outside="Scale can form.",
        ),
    ),
    work=aerated_ph,
    trials=200,
    cautions=(
        cautions.VENT_OUTDOORS,
        cautions.RADON_AIR,
        "A pH is no radon test. It can say that an aerator has stopped working; it cannot say that "
        "the water is safe. Sample radon after work on the unit, and once a year.",
        cautions.LOCAL_CODE,
    ),
    sources=(
        "plummer-1982",
        "stumm-morgan-1996",
        "davies-1962",
        "malmberg-1956",
        "weigel-1978",
        "jahne-1987",
        "crc-gases",
        "higbie-1935",
        "awwa-qtc-1997",
        "schock-2002",
        "cfr-143-3",
        "epa-radon-2016",
    ),
)
