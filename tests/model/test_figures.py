"""Figures read and written, against printed forms and against each other."""

from math import floor, isfinite, log10

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.errors import Refused
from calc.figures import agrees, plainly_written, read_number, written
from tests.model.given import NASTY, named, steady, texts

many = settings(steady, max_examples=300)
sizes = st.floats(1e-12, 1e15)
numbers = st.one_of(sizes, sizes.map(lambda size: -size))
digits = st.integers(1, 9)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("5", 5), (" 5 ", 5), ("5.", 5), (".5", 0.5), ("+5", 5), ("-5", -5), ("−5", -5), ("–5", -5),
        ("− 5", -5), ("5,5", 5.5), ("0,125", 0.125), (",5", 0.5), ("−0,5", -0.5),
        ("1234,567", 1234.567), ("1.2e3", 1200), ("1,2E-3", 0.0012),
        ("1 1/2", 1.5), ("1-1/2", 1.5), ("1 - 1/2", 1.5), ("½", 0.5), ("1½", 1.5), ("1 ½", 1.5),
        ("−½", -0.5), ("-1 1/2", -1.5), ("3/4", 0.75), ("3⁄4", 0.75), ("⅜", 0.375), ("0/5", 0),
        ("1 234", 1234), ("17\u202f688", 17688), ("1\u00a0234,5", 1234.5),
        ("1\u2009234\u2009567", 1234567),
        ("1,234.5", 1234.5), ("1,234,567", 1234567), ("-12,345.25", -12345.25),
    ],
)  # fmt: skip
def test_ways_a_person_writes_a_number(text: str, number: float) -> None:
    """Common practice, no source: trade fractions, both decimal marks, thousands kept apart."""
    assert read_number(text) == number


@pytest.mark.parametrize("text", ["1,234", "-1,234", "−12,345", "+999,999", " 1,000 "])
def test_a_comma_that_may_mean_two_things(text: str) -> None:
    """Common practice, no source: 1,234 is a thousand-something here and a decimal elsewhere."""
    with pytest.raises(Refused) as refused:
        read_number(text)
    assert refused.value.reason == "ambiguous"


@pytest.mark.parametrize(
    "text",
    [
        "", "-", "five", "1/0", "1.2.3", "1,2,3", "1e999", "nan", "inf", "--5", "5-", "1 2",
        "1 2345", "1_000", "0x10", "1/2/3", "1 1/2 1/2", "5 gal", "1e", "²",
    ],
)  # fmt: skip
def test_what_is_no_number(text: str) -> None:
    """By reason: nothing is guessed at."""
    with pytest.raises(Refused) as refused:
        read_number(text)
    assert refused.value.reason == "unreadable"


def read_or_refused(text: str) -> None:
    try:
        number, reason = read_number(text), None
    except Refused as refused:
        number, reason = 0.0, refused.reason
    assert isfinite(number)
    assert reason in (None, "unreadable", "ambiguous")


@many
@given(st.one_of(texts, st.text()))
def test_any_text_is_read_or_refused(text: str) -> None:
    """By reason: a number is finite, and whatever else is typed is refused, not raised at."""
    read_or_refused(text)


@pytest.mark.parametrize("text", NASTY, ids=named)
def test_hard_texts_are_read_or_refused(text: str) -> None:
    """By reason, as above."""
    read_or_refused(text)


def half_a_unit(number: float, digits: int) -> float:
    """Half of the last of `digits` significant figures, and a hair for binary fractions."""
    return 0.5 * 10.0 ** (floor(log10(abs(number))) + 1 - digits) * (1 + 1e-6)


@many
@given(numbers, digits)
def test_what_is_written_plainly_reads_back(number: float, digits: int) -> None:
    """Rounding: the figure typed back differs by no more than half its last digit."""
    back = read_number(plainly_written(number, digits))
    assert abs(back - number) <= half_a_unit(number, digits)


@many
@given(numbers, digits)
def test_what_is_written_reads_back(number: float, digits: int) -> None:
    """Rounding: as above, through thin spaces and a true minus sign."""
    back = read_number(written(number, digits))
    assert abs(back - number) <= half_a_unit(number, digits)


@many
@given(st.one_of(st.floats(1e-9, 9.9e3), st.floats(-9.9e3, -1e-9)), st.integers(1, 6))
def test_what_is_written_agrees(number: float, digits: int) -> None:
    """Rounding: the figure shown on a page, of six digits at most, agrees with the value."""
    assert agrees(number, written(number, digits))


@many
@given(st.floats(1e-9, 1e12), digits)
def test_as_many_digits_as_asked(number: float, digits: int) -> None:
    """Python's own scientific notation as the second method for significant figures."""
    whole = 10**digits <= number < 1e4  # then no digit before the point is thrown away
    expected = f"{number:.0f}" if whole else f"{number:.{digits - 1}e}"
    assert read_number(written(number, digits)) == pytest.approx(float(expected), rel=1e-12)


@pytest.mark.parametrize(
    ("number", "digits", "text"),
    [
        (0.0, 3, "0"), (-0.0, 3, "0"), (9.996, 3, "10.0"), (99.96, 3, "100"), (0.09996, 3, "0.100"),
        (1440.3, 3, "1\u202f440"), (17688.2, 3, "17\u202f700"),
        (999_999.9, 4, "1\u202f000\u202f000"),
        (-5.25, 2, "\u22125.2"), (-0.0004, 1, "\u22120.0004"), (21.0, 3, "21.0"),
    ],
)  # fmt: skip
def test_written_by_hand(number: float, digits: int, text: str) -> None:
    """Rounded by hand; digits before the point stay below ten thousand."""
    assert written(number, digits) == text


@pytest.mark.parametrize(
    ("number", "printed", "same"),
    [
        (725.5, "726", True), (726.5, "726", True), (725.49, "726", False), (726.51, "726", False),
        (0.125, "0.13", True), (0.125, "0.12", True), (0.1349, "0.13", True),
        (0.1351, "0.13", False),
        (-6.056, "−6.1", True), (6.056, "-6.1", False), (17688.4, "17 688", True),
        (5.0, "5.00", True), (5.006, "5.00", False), (float("nan"), "5", False),
    ],
)  # fmt: skip
def test_agreement_to_the_printed_digit(number: float, printed: str, same: bool) -> None:
    """The rule of the handbook: a value agrees with what it rounds to, either way at a tie."""
    assert agrees(number, printed) is same


@many
@given(st.integers(-(10**9), 10**9), st.integers(0, 6))
def test_a_printed_figure_agrees_with_itself_alone(units: int, decimals: int) -> None:
    """The rule of the handbook: one unit of the last digit more or less is another figure."""
    number = units / 10**decimals
    printed = f"{number:.{decimals}f}"
    assert agrees(number, printed)
    assert not agrees(number + 10.0**-decimals, printed)
    assert not agrees(number - 10.0**-decimals, printed)
