"""The player of the packages against Python: same variant, same words, same marks."""

from math import isinf
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from build_scripts.scorm.contents import working
from calc.coursework.deck import seat
from calc.coursework.helping import full_working, help_after
from calc.coursework.problem import ProblemSet
from calc.coursework.record import Try, replayed, sheet
from calc.coursework.variants import Question, variant
from tests.coursework.given import SETS
from tests.coursework.player import player
from tests.model.given import NASTY, patient

BALANCE = next(each for each in SETS if each.name == "balance")
NUMBERS = (1, 137, 400)
ODD = (
    "",
    "1,234",
    "1,5",
    "½",
    "1 1/2",
    "3-1/4",
    "6:09",
    "5 furlong",
    "2 gal 3 psi",
    "7 µg/L",
    "-0",
    "1e3",
)


@pytest.fixture(params=SETS, ids=[each.name for each in SETS])
def problems(request: pytest.FixtureRequest) -> ProblemSet:
    made: ProblemSet = request.param
    return made


def tries_of(question: Question, nasty: str) -> list[tuple[str, str]]:
    """Texts and units: what cannot be read, wrong, slips, another unit, few digits, then right."""
    if question.options:
        wrong = [each for each in question.options if each != question.right]
        return [("", ""), (nasty, ""), (wrong[0], ""), (str(question.right), "")]
    assert question.kind
    assert question.usual
    assert isinstance(question.right, float)
    usual, other = question.usual, question.kind.units[-1]
    texts = [(nasty, usual.symbol), (nasty, ""), *((text, usual.symbol) for text in ODD)]
    for value in [question.right * 1.37, *(value for _, value in question.slips)]:
        texts.append((f"{usual.out_of_si(value):.6g}", usual.symbol))
    number = usual.out_of_si(question.right)
    largest = max(question.kind.units, key=lambda unit: unit.scale)
    if isinf(largest.into_si(1e308)):
        texts.append((f"1e308 {largest.symbol}", usual.symbol))
    texts += [
        (f"{number:.6g}", other.symbol),
        (f"{number:.6g}", "furlong"),
        (f"{number:.1g}", usual.symbol),
        (f"{other.out_of_si(question.right):.6g} {other.symbol}", usual.symbol),
        (f"{number:.6g}".replace("-", "−").replace(".", ","), usual.symbol),
    ]
    return texts


def tries(problems: ProblemSet, number: int) -> list[Try]:
    made = list[Try]()
    for name, each in sheet(problems, number).variants.items():
        for at, question in enumerate(each.questions):
            nasty = NASTY[(number + at) % len(NASTY)]
            made += [Try(name, question.name, *typed) for typed in tries_of(question, nasty)]
    return made


def test_same_words_and_marks(problems: ProblemSet) -> None:
    """Python's own verdict, hint and help after each try, and its score; three variants."""
    sheets = [{"number": number, "tries": tries(problems, number)} for number in NUMBERS]
    played = player("replays", problems.name, sheets=sheets)
    judgements = set()
    for number, given_, theirs in zip(NUMBERS, sheets, played, strict=True):
        ours = sheet(problems, number)
        assert theirs["texts"] == [each.text for each in ours.variants.values()]
        assert theirs["code"] == ours.code
        made = given_["tries"]
        assert isinstance(made, list)
        for at, (each, verdict) in enumerate(zip(made, theirs["verdicts"], strict=True)):
            so_far = [one for one in made[: at + 1] if one.problem == each.problem]
            standing = replayed(problems, number, so_far).standings[each.problem, each.question]
            _same(standing.last, verdict, each)
            assert verdict["misses"] == standing.misses, each
            helps = help_after(standing.misses, problems, each.problem, each.question, number)
            assert verdict["help"] == helps
            judgements.add(verdict["judged"])
        assert theirs["score"] == pytest.approx(replayed(problems, number, made).score, abs=1e-9)
    assert {"right", "wrong", "slip", "ask"} <= judgements


def _same(ours: Any, theirs: dict[str, Any], each: Try) -> None:
    assert (theirs["judged"], theirs["says"]) == (ours.judged, ours.says), each
    assert theirs["marks"] == pytest.approx(ours.marks), each
    assert theirs.get("own", False) == ours.own, each
    value = theirs.get("value")
    assert value == (pytest.approx(ours.value) if isinstance(ours.value, float) else ours.value)


def test_carried_figures(problems: ProblemSet) -> None:
    """Own wrong figures, then what follows from them by Python's reading of the formulas."""
    sheets, expected = [], []
    for number in NUMBERS:
        made = list[Try]()
        for name, each in sheet(problems, number).variants.items():
            own = dict[str, float]()
            for question in each.questions:
                if isinstance(question.right, str) or not each.working:
                    continue
                assert question.usual
                follows = each.working.value(question.name, own) if own else None
                value = follows if follows is not None else question.right * 1.37
                text = f"{question.usual.out_of_si(value):.9g}"
                made.append(Try(name, question.name, text, question.usual.symbol))
                if question.name in each.working.found:
                    own[question.name] = value
        sheets.append({"number": number, "tries": made})
        expected.append([(replayed(problems, number, made[: at + 1]), each)
                         for at, each in enumerate(made)])  # fmt: skip
    for theirs, ours in zip(player("replays", problems.name, sheets=sheets), expected, strict=True):
        for verdict, (state, one) in zip(theirs["verdicts"], ours, strict=True):
            last = state.standings[one.problem, one.question].last
            assert last
            _same(last, verdict, one)


def test_same_seat() -> None:
    """Python's variant for a thousand learners, names of other scripts among them."""
    learners = [["Monday", f"{number}"] for number in range(980)]
    learners += [["Montag früh", f"学生 {number} 🛠"] for number in range(20)]
    ours = [seat(section, learner) for section, learner in learners]
    assert player("seats", learners=learners) == ours


typed = st.text(alphabet="0123456789.,-+−/ eE½'\":gpmsiLft°µ", max_size=14)


@patient
@given(texts=st.lists(typed, min_size=200, max_size=200))
def test_any_text_is_read_alike(texts: list[str]) -> None:
    """By Python: what a thumb may type, judged as flow, as pressure and as time."""
    asked = [("worst", "Q_c", "gpm"), ("worst", "p_h", ""), ("lasts", "t_s", "min")]
    made = [Try(*asked[at % 3][:2], text, asked[at % 3][2]) for at, text in enumerate(texts)]
    (theirs,) = player("replays", "balance", sheets=[{"number": 17, "tries": made}])
    for at, (each, verdict) in enumerate(zip(made, theirs["verdicts"], strict=True)):
        state = replayed(BALANCE, 17, made[: at + 1])
        _same(state.standings[each.problem, each.question].last, verdict, each)


def test_what_an_lms_keeps() -> None:
    """By reason: tries come back as they were, all ASCII; beyond 4096 characters the first ones."""
    made = tries(BALANCE, 17)
    readable = [each for each in made if len(each.text) < 20 and "\ud800" not in each.text]
    kept = player("remembers", "balance", number=17, tries=readable[:60], floor=0)
    assert not kept["full"]
    assert kept["text"].isascii()
    assert kept["back"]["number"] == 17
    back = [Try(*each) for each in kept["back"]["tries"]]
    assert replayed(BALANCE, 17, back).marks == replayed(BALANCE, 17, readable[:60]).marks
    assert [each[:2] for each in back] == [each[:2] for each in readable[:60]]
    many = [Try("worst", "Q_c", f"{at}.125 gpm", "gpm") for at in range(1000)]
    kept = player("remembers", "balance", number=400, tries=many, floor=0)
    assert kept["full"]
    assert 4070 < len(kept["text"]) <= 4096
    assert kept["back"]["floor"] == 0.5
    back = [Try(*each) for each in kept["back"]["tries"]]
    assert back == many[: len(back)]


def test_a_problem_of_each_set_is_worked(problems: ProblemSet) -> None:
    """The working that a package shows is Python's, line for line."""
    name = problems.problems[-1].name
    told = working(problems, name, "")
    for number in NUMBERS:
        shape, *figures = told["rows"][number - 1]
        cut = told["shapes"][shape]
        text = "".join(a + b for a, b in zip(cut, [*figures, ""], strict=True))
        assert text.split("\n") == full_working(variant(problems, name, number))
