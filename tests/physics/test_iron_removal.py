"""Iron and manganese against a printed table, PHREEQC, an integrator and atomic weights."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from calc.figures import agrees
from calc.physics.calcite import USUAL_STRENGTH
from calc.physics.carbonate import CACO3_EQUIVALENT, Carbonate, from_ph
from calc.physics.iron_oxidation import half_time
from calc.physics.iron_removal import (
    COSTS,
    after_acid,
    cost,
    left_after,
    oxygen_pressure,
    oxygen_saturation,
    run_time,
    stay_needed,
)
from calc.units import L, atm, day, gal, mg, minute
from tests.model.given import steady
from tests.physics.phreeqc import PROGRAM, Sheet, dosed
from tests.physics.waters import NEW, ORDINARY

MG_L = mg / L
IRON_WATERS = {
    name: (sheet, iron)
    for name, sheet in (ORDINARY | NEW).items()
    for iron in (5.0,)
    if sheet.alkalinity > 1.5 * iron * 1.792
}


@pytest.mark.parametrize(
    ("oxidant", "dose", "alkalinity", "sludge"),
    [("air", "0.14", "1.80", "1.9"), ("permanganate", "0.94", "1.50", "2.43")],
)
def test_iron_as_printed(oxidant: str, dose: str, alkalinity: str, sludge: str) -> None:
    """[wtpd-iron] Table 10.7. It prints the alkalinity to three digits of rounded weights."""
    iron, _ = COSTS[oxidant]
    assert agrees(iron.oxidant, dose)
    assert iron.alkalinity == pytest.approx(float(alkalinity), rel=6e-3)
    assert agrees(iron.solids, sludge)


def test_bleach_makes_less_acid_than_the_printed_gas() -> None:
    """[wtpd-iron] Table 10.7, chlorine gas: 0.64 of it, 2.70 of alkalinity, 1.9 of sludge. The gas
    itself is an acid of one charge for each atom, bleach is none."""
    iron, _ = COSTS["bleach"]
    assert iron.oxidant == pytest.approx(0.64, abs=0.006)
    assert agrees(iron.solids, "1.9")
    gas = iron.alkalinity + iron.oxidant * CACO3_EQUIVALENT * 2 / 70.906e-3
    assert gas == pytest.approx(2.70, rel=6e-3)


def test_worked_beforehand() -> None:
    """By hand from atomic weights: 3 mg/L of iron, and the figures for manganese."""
    for oxidant, dose in (("air", 0.430), ("bleach", 1.905), ("permanganate", 2.830)):
        assert cost(oxidant, 3.0, 0.0).oxidant == pytest.approx(dose, rel=5e-3)
    assert cost("air", 3.0, 0.0).alkalinity == pytest.approx(5.38, rel=5e-3)
    manganese = {"air": 0.2912, "bleach": 1.2907, "permanganate": 1.9177}
    for oxidant, dose in manganese.items():
        assert cost(oxidant, 0.0, 1.0).oxidant == pytest.approx(dose, rel=5e-4)
    assert cost("air", 0.0, 1.0).alkalinity == pytest.approx(1.822, rel=5e-4)
    assert cost("air", 0.0, 1.0).solids == pytest.approx(1.582, rel=5e-4)


@steady
@given(st.sampled_from(sorted(COSTS)), st.floats(0, 50), st.floats(0, 20), st.sampled_from([0, 1]))
def test_electrons_mass_and_charge_balance(
    oxidant: str, iron: float, manganese: float, metal: int
) -> None:
    """Electrons lost are electrons taken; metal and oxidant in, solids out, nothing made."""
    taken = {"air": 4 / 31.998, "bleach": 2 / 70.906, "permanganate": 3 / 158.034}[oxidant]
    each = COSTS[oxidant][metal]
    lost = (1 / 55.845, 2 / 54.938)[metal]
    assert each.oxidant * taken == pytest.approx(lost, rel=1e-4)
    # a rust of permanganate brings its own manganese, 54.938 of 158.034, as oxide
    brought = each.oxidant * 86.937 / 158.034 if oxidant == "permanganate" else 0.0
    own = (106.867 / 55.845, 86.937 / 54.938)[metal]
    assert each.solids == pytest.approx(own + brought, rel=1e-4)
    both = cost(oxidant, iron, manganese)
    apart = cost(oxidant, iron, 0.0), cost(oxidant, 0.0, manganese)
    assert both.alkalinity == pytest.approx(sum(one.alkalinity for one in apart))


def water_of(sheet: Sheet) -> tuple[Carbonate, float, float]:
    """A sheet as a water, its temperature in K and its ionic strength."""
    alkalinity = sheet.alkalinity * MG_L / CACO3_EQUIVALENT
    kelvin, strength = sheet.celsius + 273.15, USUAL_STRENGTH * alkalinity
    return from_ph(sheet.ph, alkalinity, kelvin, strength), kelvin, strength


@pytest.mark.parametrize("name", sorted(IRON_WATERS))
def test_acid_of_iron_by_phreeqc(name: str) -> None:
    """PHREEQC with two moles of acid for each mole of iron, 5 mg/L of it."""
    sheet, iron = IRON_WATERS[name]
    water, kelvin, strength = water_of(sheet)
    ours = after_acid(water, cost("air", iron * MG_L, 0.0).alkalinity, kelvin, strength)
    theirs = dosed(sheet, "HCl", 2 * iron / 55.845 / 1000)
    assert ours.ph == pytest.approx(theirs.ph, abs=0.04)


def test_iron_sours_soft_water_as_printed() -> None:
    """Worked beforehand with PHREEQC: 5 mg/L brings 6.80 to 6.60, 6.20 to 5.85, 5.60 to 4.49."""
    for name, printed in (
        ("slightly acid", 6.60),
        ("soft and acid", 5.85),
        ("softer and more acid", 4.49),
    ):
        water, kelvin, strength = water_of(ORDINARY[name])
        left = after_acid(water, cost("air", 5 * MG_L, 0.0).alkalinity, kelvin, strength)
        assert left.ph == pytest.approx(printed, abs=0.03)


@steady
@given(
    st.floats(5.6, 8.4), st.floats(10, 300), st.floats(275, 300), st.floats(0, 1), st.floats(0, 1)
)
def test_acid_takes_alkalinity_and_leaves_carbon(
    ph: float, alkalinity: float, kelvin: float, some: float, more: float
) -> None:
    """What is used is gone, carbon stays, and more acid is a lower pH."""
    charge = alkalinity * MG_L / CACO3_EQUIVALENT
    water = from_ph(ph, charge, kelvin, charge)
    used = some * alkalinity * MG_L
    after = after_acid(water, used, kelvin, charge)
    assert after.alkalinity * CACO3_EQUIVALENT == pytest.approx(
        alkalinity * MG_L - used, rel=1e-9, abs=1e-12
    )
    assert after.dic == pytest.approx(water.dic, rel=1e-6)
    further = after_acid(water, used + more * MG_L, kelvin, charge)
    assert further.ph <= after.ph + 1e-9


@pytest.mark.parametrize(("celsius", "printed"), [(10, "11.3"), (15, "10.1")])
def test_oxygen_as_printed(celsius: float, printed: str) -> None:
    """Worked beforehand, from memory: 11.3 and 10.1 mg/L."""
    assert agrees(oxygen_saturation(celsius + 273.15) / MG_L, printed)


@pytest.mark.parametrize("celsius", [1, 5, 10, 20, 30])
def test_oxygen_by_phreeqc(celsius: float) -> None:
    """PHREEQC lets pure water rest under dry air with 0.2095 atm of oxygen; moist air has less."""
    PROGRAM.run_string(
        f"SOLUTION 1\n temp {celsius}\nEQUILIBRIUM_PHASES 1\n O2(g) -0.6788 10\n"
        "SELECTED_OUTPUT 1\n -reset false\nUSER_PUNCH 1\n -headings o\n"
        '10 PUNCH TOT("O(0)")\nEND'
    )
    theirs = PROGRAM.get_selected_output_array()[-1][0] / 2 * 31.998 * 1000  # mg/kg
    vapour = 0.0061 * 10 ** (7.5 * celsius / (237.7 + celsius))  # atm, Tetens
    assert oxygen_saturation(celsius + 273.15) / MG_L == pytest.approx(
        theirs * (1 - vapour), rel=0.03
    )


def test_tanks_as_printed() -> None:
    """Worked beforehand: from 5 to 0.3 mg/L at pH 7.5 and 10 °C, 19.7 min in a pipe, 109 mixed."""
    half = half_time(7.5, 283.15, 0.209 * atm)
    assert stay_needed(half, 0.06, 1) / minute == pytest.approx(109, abs=0.6)
    assert stay_needed(half, 0.06, 1e6) / minute == pytest.approx(19.7, abs=0.05)


@steady
@given(st.floats(0.5, 100), st.floats(1, 200), st.integers(1, 8))
def test_tanks_by_an_integrator(half: float, stay: float, tanks: int) -> None:
    """scipy follows the iron through each of the tanks until nothing changes."""
    speed, each = 0.6931471805599453 / half, stay / tanks

    def balance(_: float, iron: Any) -> list[float]:
        before = [1.0, *iron[:-1]]
        return [
            (into - held) / each - speed * held for into, held in zip(before, iron, strict=True)
        ]

    end = solve_ivp(balance, (0.0, 60 * stay), [0.0] * tanks, method="LSODA", rtol=1e-9, atol=1e-13)
    found = left_after(half, stay, tanks)
    assert found == pytest.approx(end.y[-1][-1], rel=1e-4, abs=1e-9)
    assert stay_needed(half, found, tanks) == pytest.approx(stay, rel=1e-9)


@steady
@given(
    st.floats(5.5, 8.4),
    st.floats(0.01, 0.1),
    st.floats(274, 300),
    st.floats(0.5, 8),
    st.floats(1, 6),
)
def test_faster_when_warmer_higher_and_airier(
    ph: float, step: float, kelvin: float, degrees: float, oxygen: float
) -> None:
    """The half time falls with pH, with temperature and with oxygen."""

    def half(ph: float, kelvin: float, oxygen: float) -> float:
        return half_time(ph, kelvin, oxygen_pressure(oxygen * MG_L, kelvin))

    here = half(ph, kelvin, oxygen)
    assert half(ph + step, kelvin, oxygen) == pytest.approx(here / 100**step, rel=1e-9)
    assert half(ph, kelvin + degrees, oxygen) < here
    assert half(ph, kelvin, oxygen * 1.5) == pytest.approx(here / 1.5, rel=1e-9)


@steady
@given(st.floats(0.02, 0.3), st.floats(0.5, 10), st.floats(0.1, 20), st.floats(50, 2000))
def test_a_full_bed_holds_what_came(area: float, load: float, iron: float, use: float) -> None:
    """Solids that came until it is full are the load on the area."""
    solids = cost("air", iron * MG_L, 0.0).solids
    flow = use * gal / day
    assert run_time(area, load, solids, flow) * flow * solids == pytest.approx(area * load)
