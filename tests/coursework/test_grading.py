"""Grading: what is right scores full marks however it is written, what is wrong never does."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.coursework.grading import FEW_DIGITS, OTHER_UNIT, judged
from calc.coursework.problem import Problem, Slip
from calc.coursework.questions import follows
from calc.coursework.variants import EXAMPLE, Question, Variant, variant
from calc.figures import MINUS, THIN_SPACE
from calc.units import Unit, gpm
from tests.coursework.given import SETS, Dealt, dealt
from tests.model.given import NASTY, patient, steady

BALANCE = next(each for each in SETS if each.name == "balance")


def numeric(data: st.DataObject, each: Variant) -> Question:
    questions = [question for question in each.questions if not question.options]
    assume(questions)
    return data.draw(st.sampled_from(questions))


def decimals(number: float, digits: int) -> str:
    """A number to so many significant figures, without an exponent."""
    rounded = f"{number:.{digits - 1}e}"
    places = max(digits - 1 - int(rounded.partition("e")[2]), 0)
    return f"{float(rounded):.{places}f}"


def notations(number: float, digits: int) -> dict[str, str]:
    """Ways to write a number that this handbook takes, by name."""
    plain = decimals(number, digits)
    whole, point, rest = plain.partition(".")
    grouped = f"{int(whole):,}".replace(",", THIN_SPACE) if len(whole.lstrip("-")) > 3 else whole
    made = {
        "point": plain,
        "plus": plain if plain.startswith("-") else f"+{plain}",
        "exponent": f"{number:.{digits - 1}e}",
        "thin spaces": f"{grouped}{point}{rest}",
        "minus": plain.replace("-", MINUS),
        "blanks": f"  {plain} ",
    }
    if point and (len(rest) != 3 or len(whole.lstrip("-")) > 3 or whole.lstrip("-") == "0"):
        made["comma"] = plain.replace(".", ",")
    if plain.lstrip("-").startswith("0."):
        made["bare point"] = plain.replace("0.", ".", 1)
    if 1 < number < 1000 and len(plain) < 8:
        part = Fraction(number).limit_denominator(64)
        over = part.numerator % part.denominator
        if over:
            made["mixed"] = f"{part.numerator // part.denominator} {over}/{part.denominator}"
            made["dashed"] = made["mixed"].replace(" ", "-")
    return made


@patient
@given(data=st.data())
def test_right_in_any_unit_and_notation(sample: Dealt, data: st.DataObject) -> None:
    """Issue: full marks, whether the unit is chosen beside or written behind."""
    each = data.draw(st.sampled_from(sample.variants))
    question = numeric(data, each)
    unit: Unit = data.draw(st.sampled_from(question.kind.units if question.kind else ()))
    assert isinstance(question.right, float)
    number = unit.out_of_si(question.right)
    digits = 5 if question.absolute else max(question.digits, 3)
    for how, text in notations(number, digits).items():
        if how in ("mixed", "dashed"):
            whole, _, part = text.replace("-", " ").partition(" ")
            if not question.near(unit.into_si(float(int(whole) + Fraction(part)))):
                continue  # sixty-fourths are too coarse for this answer
        assert judged(each, question.name, text, unit.symbol)[:2] == ("right", 1.0), (how, text)
        for symbol in (unit.symbol, *unit.also):
            behind = f"{text} {symbol}".strip()
            verdict = judged(each, question.name, behind, unit.symbol)
            assert verdict[:2] == ("right", 1.0), (how, behind)


@patient
@given(data=st.data())
def test_wrong_never_scores_full(sample: Dealt, data: st.DataObject) -> None:
    """Issue: what is off by more than is allowed, whatever it is, in whatever unit."""
    each = data.draw(st.sampled_from(sample.variants))
    question = numeric(data, each)
    assert question.kind
    unit = data.draw(st.sampled_from(question.kind.units))
    assert isinstance(question.right, float)
    off = data.draw(st.one_of(st.floats(-1e3, -1.01), st.floats(1.01, 1e3)))
    value = question.right + off * question.band
    text = f"{unit.out_of_si(value):.12g}"
    assume(not question.near(unit.into_si(float(text))))
    assume("e" not in text or len(text) < 20)
    assert judged(each, question.name, text, unit.symbol).marks < 1


@steady
@given(data=st.data())
def test_a_wrong_option_never_scores(recall: Dealt, data: st.DataObject) -> None:
    """Issue: one option is right, the others earn nothing."""
    each = data.draw(st.sampled_from(recall.variants))
    for question in each.questions:
        for option in question.options:
            verdict = judged(each, question.name, option)
            assert (verdict.marks == 1) == (option == question.right)


@pytest.mark.parametrize("text", NASTY)
def test_no_text_breaks_the_grading(text: str) -> None:
    """By reason: what cannot be read is asked back, in words, and never earns anything."""
    each = variant(BALANCE, "worst", 17)
    for unit in ("", "gpm", "furlong"):
        verdict = judged(each, "Q_c", text, unit)
        assert verdict.marks == 0
        assert verdict.says
        assert "{" not in verdict.says.replace(text, "")


def test_the_comma_is_asked_about() -> None:
    """Issue: 1,234 is refused with a question, and a bare number is asked for its unit."""
    each = variant(BALANCE, "worst", 17)
    asked = judged(each, "Q_c", "1,234", "gpm")
    assert (asked.judged, asked.marks) == ("ask", 0)
    assert "?" in asked.says
    assert judged(each, "Q_c", "4.46").says.startswith("In which unit?")
    assert "measures volume" in judged(each, "Q_c", "4.46 gal", "gpm").says
    assert judged(each, "Q_c", "4.46", "furlong").judged == "ask"


def test_named_slips() -> None:
    """By hand, variant 17: 6.9 gpm at 56 psi, cut-in 40, lift 25 ft, of which 10.84 psi."""
    each = variant(BALANCE, "worst", 17)
    assert judged(each, "p_h", "25", "psi").says == (
        "That is the lift in feet. A foot of water is 0.433 psi."
    )
    root = judged(each, "Q_c", "5.54", "gpm")  # 6.9 * sqrt((40 - 10.84) / (56 - 10.84))
    assert (root.judged, root.marks) == ("slip", 0.3)
    assert "not its root" in root.says
    assert "lift is missing" in judged(each, "Q_c", "4.93", "gpm").says  # 6.9 * 40 / 56
    assert "smaller" in judged(each, "Q_w", "5.2", "gpm").says
    assert "sign" in judged(each, "M", "1.79", "gpm").says
    assert "imperial" in judged(each, "Q_c", "3.71", "gpm").says  # 4.455 / 1.20095
    assert "sixty" in judged(each, "Q_c", "267", "gpm").says
    assert "absolute" in judged(each, "p_h", "25.6", "psi").says  # 10.84 + 14.70


def test_slips_score_as_they_say(sample: Dealt) -> None:
    """Issue: a known slip gets its hint and part marks. Where two slips lead to the same figure
    the first is named."""
    for each in sample.variants[::6]:
        for question in each.questions:
            assert not question.options or not question.slips
            for slip, value in question.slips:
                verdict = judged(
                    each, question.name, _typed(question, value), _base(question).symbol
                )
                hints = [other.hint for other, at in question.slips if _alike(question, at, value)]
                assert verdict.judged == "slip", (slip.hint, value)
                assert verdict.says in hints
                assert 0 < verdict.marks < 1


def _base(question: Question) -> Unit:
    assert question.usual
    return question.usual


def _typed(question: Question, value: float) -> str:
    return f"{_base(question).out_of_si(value):#.9g}"


def _alike(question: Question, one: float, other: float) -> bool:
    assert isinstance(question.right, float)
    share = 1.0 if question.absolute else max(abs(one / question.right), 1e-12)
    return abs(one - other) <= question.band * share


def test_right_number_wrong_unit() -> None:
    """Issue: half the marks and a word about the unit. 4.4 gpm written as L/min."""
    each = variant(BALANCE, "pail", 17)
    verdict = judged(each, "Q", "4.40", "L/min")
    assert (verdict.judged, verdict.marks) == ("unit", OTHER_UNIT)
    assert "unit" in verdict.says


@pytest.mark.parametrize(
    ("text", "judgement"),
    [("4.4", "digits"), ("4.40", "right"), ("4.41", "right"), ("4.3999", "right"),
     ("4 2/5", "right"), ("44e-1", "digits"), ("4.400e0", "right"), ("0.00440e3", "right"),
     ("4,40", "right"), ("4,4", "digits")],
)  # fmt: skip
def test_significant_figures(text: str, judgement: str) -> None:
    """Issue: three are asked for; a fraction is as good as its denominator. 5.5 gal in 75 s."""
    verdict = judged(variant(BALANCE, "pail", 17), "Q", text, "gpm")
    assert verdict.judged == judgement
    assert verdict.marks == (FEW_DIGITS if judgement == "digits" else 1)


def test_time_as_a_clock_shows_it() -> None:
    """calc reads 6:09 and 6 min 9 s; 16 gal lost at 2.6 gpm last 6.154 min."""
    each = variant(BALANCE, "lasts", 17)
    for text in ("6:09", "6 min 9 s", "369 s", "6.15 min"):
        assert judged(each, "t_s", text, "min").judged == "right", text


@patient
@given(data=st.data())
def test_own_earlier_figures_are_carried(carried: Dealt, data: st.DataObject) -> None:
    """Issue: a later step that follows from a wrong earlier one is right for that one. The figure
    is worked here by Python's own reading of the shown formulas."""
    each = data.draw(st.sampled_from(carried.variants))
    working = each.working
    assert working
    problem = carried.problem
    assert isinstance(problem, Problem)
    names = data.draw(st.sampled_from(pairs(problem, each)))
    earlier, later = (each.question(name) for name in names)
    assert isinstance(earlier.right, float)
    wrong = earlier.right * data.draw(st.sampled_from([0.7, 0.9, 1.15, 1.3]))
    figure = working.value(later.name, {earlier.name: wrong})
    assume(figure is not None and not later.near(figure))
    assume(all(not _alike(later, value, figure or 0) for _, value in later.slips))
    assert figure is not None
    text = _typed(later, figure)
    verdict = judged(each, later.name, text, _base(later).symbol, {earlier.name: wrong})
    assert (verdict.judged, verdict.marks, verdict.own) == ("right", 1.0, True)
    assert judged(each, later.name, text, _base(later).symbol).marks < 1


def following(problem: Problem, each: Variant) -> list[str]:
    """The questions whose answer hangs on an earlier one."""
    return [part.finds for part in problem.parts if follows(problem, each, part.finds)]


def pairs(problem: Problem, each: Variant) -> list[tuple[str, str]]:
    """An earlier number of the working, and a question after it that hangs on some such."""
    assert each.working
    names = [part.finds for part in problem.parts]
    return [
        (earlier, later)
        for later in following(problem, each)
        for earlier in names[: names.index(later)]
        if earlier in each.working.found
    ]


CARRIED = [
    (each, problem.name)
    for each in SETS
    for problem in each.problems
    if isinstance(problem, Problem) and following(problem, variant(each, problem.name, EXAMPLE))
]


@pytest.fixture(scope="module", params=CARRIED, ids=lambda case: f"{case[0].name}-{case[1]}")
def carried(request: pytest.FixtureRequest) -> Dealt:
    """Problems in which one answer leads to the next."""
    problems, name = request.param
    return dealt(problems, name, every=25)


def test_a_carried_figure_by_hand() -> None:
    """By hand: who gives 5.5 gpm in and takes 6.25 out of it, has −0.75."""
    each = variant(BALANCE, "worst", 17)
    verdict = judged(each, "M", f"{MINUS}0.75", "gpm", {"Q_w": 5.5 * gpm})
    assert (verdict.judged, verdict.own) == ("right", True)
    assert judged(each, "M", "0.75", "gpm", {"Q_w": 5.5 * gpm}).marks < 1


def test_every_slip_of_a_set_is_hinted() -> None:
    """By reason: a hint is a sentence, and no slip earns full marks or nothing."""
    for each in SETS:
        for problem in each.problems:
            if isinstance(problem, Problem):
                for part in problem.parts:
                    for slip in getattr(part, "slips", ()):
                        assert isinstance(slip, Slip)
                        assert slip.hint.endswith(".")
                        assert 0 < slip.marks < 1
