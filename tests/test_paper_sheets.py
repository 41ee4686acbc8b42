"""Sheets and keys of a class as PDF: read back from the files that Chromium prints."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple
from xml.etree.ElementTree import Element

import pytest
from pypdf import PdfReader

from build_scripts.environment import ROOT
from build_scripts.formulas import teach
from build_scripts.paper_sheets import key, sheet
from build_scripts.paper_sheets.__main__ import main, public
from build_scripts.paper_sheets.paper import Copy, copies, whole
from calc.coursework.deck import VARIANTS, place
from calc.coursework.grading import judged
from calc.coursework.helping import right_words
from calc.coursework.sets import names, problem_set
from calc.coursework.variants import Question, Variant
from calc.views.formula import SYMBOLS, TEMPLATES

MM = 72 / 25.4
PAPERS = {"Letter": (612, 792), "A4": (210 * MM, 297 * MM)}
LABELS = ["1017", 'bench "3" & <4>', "Ü 5"]
LONGEST = 4  # pages of a sheet: two leaves
CASES = [("balance", "Letter"), ("well_pump_and_pipe", "A4")]  # four pages, and three


class Printed(NamedTuple):
    """What the command wrote: the words of each page."""

    copies: list[Copy]
    sheets: list[str]
    keys: list[str]
    sizes: set[tuple[int, int]]
    paper: str


def plain(text: str) -> str:
    """On one line, a word joined again that was broken at its own hyphen."""
    line = " ".join(text.replace("\u00a0", " ").replace("\u202f", " ").split())
    return re.sub(r"(\w-) (\w)", r"\1\2", line)


def words(element: Element) -> str:
    return plain(" ".join(element.itertext()))


@pytest.fixture(scope="module", params=CASES, ids="-".join)
def printed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Printed:
    name, paper = request.param
    folder = tmp_path_factory.mktemp("class")
    roster = folder / "class.txt"
    roster.write_text("\ufeff" + "\n\n".join(LABELS) + "\n", encoding="utf-8")
    arguments = [name, "--list", str(roster), "--section", "A & B", "--paper", paper]
    assert main([*arguments, "--out", str(folder)]) == 0
    kinds = [
        PdfReader(folder / kind / f"{name}-{paper.lower()}.pdf") for kind in ("sheets", "keys")
    ]
    sheets, keys = ([plain(page.extract_text()) for page in pdf.pages] for pdf in kinds)
    boxes = [page.mediabox for pdf in kinds for page in pdf.pages]
    dealt = [(label, place("A & B", row)) for row, label in enumerate(LABELS)]
    sizes = {(round(box.width), round(box.height)) for box in boxes}
    return Printed(copies(problem_set(name), dealt, ""), sheets, keys, sizes, paper)


def pages_of(copy: Copy, pages: list[str]) -> list[int]:
    told = f"variant {copy.number} of {VARIANTS}, revision "
    return [at for at, text in enumerate(pages) if told in text]


@pytest.mark.browser
def test_each_sheet_is_a_leaf_or_two(printed: Printed) -> None:
    """Issue: one variant each. By reason: printed on both sides, each begins on a front."""
    assert printed.sizes == {tuple(map(round, PAPERS[printed.paper]))}
    seen = 0
    for copy in printed.copies:
        at = pages_of(copy, printed.sheets)
        assert 1 <= len(at) <= LONGEST
        assert at == list(range(at[0], at[0] + len(at)))
        assert at[0] % 2 == 0
        assert copy.label in printed.sheets[at[0]]
        assert all(f"check code {copy.sheet.code}" in printed.sheets[page] for page in at)
        seen += len(at)
    assert seen == sum("check code" in text for text in printed.sheets)


@pytest.mark.browser
def test_a_printed_sheet_has_its_figures_and_no_answer(printed: Printed) -> None:
    """Issue: sheets apart from keys."""
    for copy in printed.copies:
        text = " ".join(printed.sheets[at] for at in pages_of(copy, printed.sheets))
        assert_asks_without_answers(copy, text)


def assert_asks_without_answers(copy: Copy, text: str) -> None:
    for dealt in copy.sheet.variants.values():
        assert plain(dealt.text) in text
        said = plain(" ".join([dealt.text, *(each.ask for each in dealt.questions)]))
        for question in dealt.questions:
            assert plain(question.ask) in text
            assert all(plain(each) in text for each in question.options.values())
            if not question.options:
                answer = plain(right_words(question))
                # 20 gal may be given elsewhere and right here; a bare count is in any text
                if answer not in said and not answer.isdecimal():
                    assert not re.search(rf"(?<![\d.]){re.escape(answer)}", text), answer
            if question.because:
                assert plain(question.because) not in text


@pytest.fixture(autouse=True, scope="module")
def taught() -> Iterator[None]:
    """Formulas as MathML, as the command has them; as text again for the tests that follow."""
    teach()
    yield
    TEMPLATES.clear()
    SYMBOLS.clear()


@pytest.mark.parametrize("name", names())
def test_every_set_prints_without_its_answers(name: str) -> None:
    """As above, for each set, some variants, before they are printed."""
    problems = problem_set(name)
    for copy in copies(problems, [("", number) for number in (1, 137, VARIANTS)], ""):
        text = words(sheet.document(problems, "", [copy], "A4"))
        assert_asks_without_answers(copy, text)
        told = words(key.document(problems, "", [copy], "A4"))
        for dealt in copy.sheet.variants.values():
            assert all(plain(right_words(each)) in told for each in dealt.questions)


@pytest.mark.browser
def test_the_printed_key_is_what_calc_grades_by(printed: Printed) -> None:
    """Issue: the printed answer earns full marks; the range beside it is the band of grading."""
    for copy in printed.copies:
        text = " ".join(printed.keys[at] for at in pages_of(copy, printed.keys))
        for at, dealt in enumerate(copy.sheet.variants.values(), 1):
            for n, question in enumerate(dealt.questions, 1):
                asked = re.escape(f"{at}.{n} {plain(question.ask)} ")
                if question.options:
                    assert re.search(asked + re.escape(plain(right_words(question))), text)
                else:
                    assert_graded_alike(dealt, question, asked, text)


def assert_graded_alike(dealt: Variant, question: Question, asked: str, text: str) -> None:
    figure = r"(−?[\d.,]+(?: [^\s…]+)?)"
    row = re.search(rf"{asked}{figure} {figure} … {figure} {question.marks} ", text + " ")
    assert row, f"{asked} in {text}"
    answer, low, high = row.groups()
    assert judged(dealt, question.name, answer).marks == 1
    unit = question.usual
    assert unit
    assert isinstance(question.right, float)
    for end, away in ((low, -1), (high, 1)):
        number = float(end.split()[0].replace("−", "-").replace(",", ""))
        # printed to four figures, so half a unit of the fourth may be missing
        rounding = 0.5 * 10.0 ** (len(str(int(abs(number)))) - 4)
        band = question.band / unit.scale
        assert abs(number - unit.out_of_si(question.right) - away * band) <= rounding


@pytest.mark.browser
def test_the_key_begins_with_the_class_list(printed: Printed) -> None:
    """By reason: who grades a sheet finds its variant by the label, without a name."""
    assert all(pages_of(copy, printed.keys) for copy in printed.copies)
    for row, copy in enumerate(printed.copies, 1):
        assert f"{row} {copy.label} {copy.number} {copy.sheet.code}" in printed.keys[0]


def test_a_class_label_stays_text() -> None:
    """By reason: what a class is called may hold what ends a string of CSS."""
    style = whole("t", "A4", ['a" } body { display: none'])[0][1].text or ""
    assert 'a" }' not in style


def test_keys_do_not_lie_on_the_site(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Issue: keys apart from the public site."""
    (tmp_path / "site" / "deep").mkdir(parents=True)
    (tmp_path / "site" / "sw.js").touch()
    assert public(ROOT / "docs" / "keys")
    assert public(tmp_path / "site" / "deep")
    assert not public(tmp_path / "printed")
    target = tmp_path / "site" / "deep"
    assert main(["balance", "--count", "2", "--out", str(target)]) == 2
    assert "built handbook" in capsys.readouterr().err
    assert not list(target.iterdir())


@pytest.mark.parametrize("roster", [b"", b"\n \n", b"\xff\xfe1", b"x\n" * (VARIANTS + 1)])
def test_a_list_that_is_none_is_refused(
    roster: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """By reason: more than 400 would share variants; the rest is no list."""
    file = tmp_path / "class.txt"
    file.write_bytes(roster)
    assert main(["balance", "--list", str(file), "--out", str(tmp_path / "out")]) == 2
    assert capsys.readouterr().err
    assert not (tmp_path / "out").exists()
