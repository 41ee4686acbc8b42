"""Cable and generator against the code's tables, a second way, and scipy's copper."""

from itertools import pairwise
from math import pi, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.figures import agrees
from calc.physics.cable import (
    OHM_PER_KFT,
    longest_run,
    loop_resistance,
    resistance_for_length,
    starting_voltage,
    voltage_drop,
)
from calc.physics.generator import (
    CODE_LETTERS,
    generator_for,
    locked_rotor_current,
    locked_rotor_power,
    starting_dip,
)
from calc.units import ft, hp, inch
from tests.model.given import steady

HOT = 75 + 273.15
FULL_LOAD = {"1/2": 4.9, "3/4": 6.9, "1": 8.0, "1-1/2": 10, "2": 12, "3": 17}


def test_one_horsepower_on_twelve_gauge() -> None:
    """Check A22, by hand from [nfpa-70-table-8]: 9.50 V, 4.13 % of 230 V."""
    lost = voltage_drop(8.0, loop_resistance(300 * ft, resistance_for_length("12", HOT)))
    assert agrees(lost, "9.50")
    assert agrees(100 * lost / 230, "4.13")


@pytest.mark.parametrize(
    ("amps", "gauge", "length", "volts", "printed", "share"),
    [(10, "10", 500, 230, "12.4", "5.39"), (9.8, "12", 150, 115, "5.82", "5.06")],
)
def test_two_more_motors(
    amps: float, gauge: str, length: float, volts: float, printed: str, share: str
) -> None:
    """By hand from [nfpa-70-table-8]."""
    lost = voltage_drop(amps, loop_resistance(length * ft, resistance_for_length(gauge, HOT)))
    assert agrees(lost, printed)
    assert agrees(100 * lost / volts, share)


@pytest.mark.parametrize(
    ("motor", "printed"),
    [
        ("1/2", "374 593 946 1508 2390"),
        ("3/4", "265 421 672 1071 1697"),
        ("1", "229 363 580 924 1464"),
        ("1-1/2", "183 290 464 739 1171"),
        ("2", "153 242 386 616 976"),
        ("3", "108 171 273 435 689"),
    ],
)
def test_table_of_longest_runs(motor: str, printed: str) -> None:
    """Worked apart from [nfpa-70-table-8] and [nfpa-70-430-248]: feet for 5 % of 230 V."""
    for gauge, feet in zip(("14", "12", "10", "8", "6"), printed.split(), strict=True):
        far = longest_run(0.05 * 230, FULL_LOAD[motor], resistance_for_length(gauge, HOT))
        assert agrees(far / ft, feet)


@pytest.mark.parametrize(
    ("gauge", "celsius", "printed"), [("14", 25, "2.633"), ("12", 10, "1.564")]
)
def test_colder_wire(gauge: str, celsius: float, printed: str) -> None:
    """Worked apart: the table's own formula."""
    assert agrees(resistance_for_length(gauge, celsius + 273.15) * 1000 * ft, printed)


@pytest.mark.parametrize("gauge", OHM_PER_KFT)
def test_table_against_copper(gauge: str) -> None:
    """Annealed copper, 1.7241e-8 ohm m at 20 °C, in the section that AWG defines; a strand is 2 %
    longer than its wire, and its table is rounded to three digits."""
    width = 0.005 * inch * 92 ** ((36 - float(gauge)) / 39)
    solid = 1.7241e-8 / (pi * width**2 / 4)
    assert resistance_for_length(gauge, 293.15) == pytest.approx(1.02 * solid, rel=0.012)


@steady
@given(st.floats(1, 50), st.floats(1, 3000), st.sampled_from(list(OHM_PER_KFT)))
def test_the_longest_run_loses_just_that(amps: float, feet: float, gauge: str) -> None:
    """The drop itself, turned round."""
    each = resistance_for_length(gauge, HOT)
    lost = voltage_drop(amps, loop_resistance(feet * ft, each))
    assert longest_run(lost, amps, each) == pytest.approx(feet * ft, rel=1e-9)


@steady
@given(st.floats(5, 200), st.floats(0.01, 10), st.floats(0, 1))
def test_starting_voltage_is_the_least(locked: float, loop: float, factor: float) -> None:
    """Complex impedance of rotor and cable in line: whatever the power factor, no less is left."""
    rotor = 230 / locked * complex(factor, sqrt(1 - factor**2))
    left = abs(230 * rotor / (rotor + loop))
    assert starting_voltage(230.0, locked, loop) <= left * (1 + 1e-9)


@pytest.mark.parametrize(
    ("power", "letter", "low", "high"),
    [(1, "K", "8.00", "8.99"), (0.75, "L", "6.75", "7.49"), (0.5, "M", "5.0", "5.6")],
)
def test_locked_rotor_power(power: float, letter: str, low: str, high: str) -> None:
    """[nfpa-70-430-7] by hand, kVA."""
    least, most = (locked_rotor_power(power * hp, each) / 1e3 for each in CODE_LETTERS[letter])
    assert agrees(least, low)
    assert agrees(most, high)


def test_locked_rotor_current() -> None:
    """By hand: 1 hp, letter K, 230 V: 34.8 to 39.1 A."""
    amps = [locked_rotor_current(kva * 1e3, 230) for kva in CODE_LETTERS["K"]]
    assert agrees(amps[0], "34.8")
    assert agrees(amps[1], "39.1")


def test_code_letters_leave_no_gap() -> None:
    """[nfpa-70-430-7]: each letter begins a hundredth over the end of the one before."""
    ends = list(CODE_LETTERS.values())
    for (_, high), (low, _) in pairwise(ends):
        assert agrees(low - high, "0.01")


@steady
@given(st.floats(1e3, 1e5), st.floats(0.05, 0.6), st.floats(0.05, 0.6))
def test_dip_by_impedances(start: float, reactance: float, dip: float) -> None:
    """Two reactances in line at 230 V: the generator's X U²/S and the rotor's U²/S."""
    rated = generator_for(start, dip, reactance)
    source, rotor = reactance * 230**2 / rated, 230**2 / start
    left = rotor / (rotor + source)
    assert starting_dip(start, rated, reactance) == pytest.approx(1 - left, rel=1e-9)
    assert 1 - left == pytest.approx(dip, rel=1e-9)


def test_rule_of_thumb() -> None:
    """Common practice: three to four times the running kilowatts for small submersibles.

    1 hp takes some 1.2 kW; 35 % of dip, 25 % of reactance.
    """
    wanted = generator_for(locked_rotor_power(hp, 8.99), 0.35, 0.25)
    assert 3 * 1203 < wanted < 4 * 1203
