"""The page that the build writes for each calculator, as a reader gets it."""

import inspect
import json
import re
import shlex
from html import unescape
from pathlib import Path

import pytest

from build_scripts import formulas
from build_scripts.pages import docstrings
from calc.calculators import calculator, names
from calc.model import Choice, Output, Typed
from calc.request import case_of
from calc.views.formula import as_text, letter, letters
from tests.built import article, sections, text
from tests.conftest import Site

ROOT = Path(__file__).resolve().parents[1]
every_calculator = pytest.mark.parametrize("name", names())


def page_of(site: Site, name: str) -> str:
    return article(site, f"reference/calculators/{name}.html")


def fact(section: str, name: str) -> str:
    """What a list of facts says of one of them."""
    return section.partition(f" {name}: ")[2]


def written_formulas(name: str) -> set[str]:
    """Every formula in the calculator's module, whether or not some case comes to it."""
    return set(formulas.written_in(formulas.CALCULATORS / f"{name}.py"))


@every_calculator
def test_everything_asked_and_answered_has_its_section(site: Site, name: str) -> None:
    """The declaration: label as heading, name as address, how to measure it, its words."""
    found = sections(page_of(site, name))
    declared = calculator(name)
    for each in (*declared.inputs, *declared.outputs):
        heading, said = found[each.name]
        assert heading == each.label
        assert fact(f" {said}", "Name").startswith(each.name)
        if isinstance(each, Output):
            assert fact(said, "If there is none").startswith(each.none)
            assert each.outside in fact(said, "Marked")
        else:
            assert each.measure in said


@every_calculator
def test_ranges_and_defaults_are_those_of_the_declaration(site: Site, name: str) -> None:
    """Read back from the page as a reader's typing is: to the four digits printed."""
    found = sections(page_of(site, name))
    for each in calculator(name).inputs:
        said = found[each.name][1]
        if isinstance(each, Choice):
            assert fact(said, "Default").startswith(f"{each.default} ")
            continue
        ranges = fact(said, "Range").partition(" Default: ")[0].split("; ")
        assert len(ranges) == len({each.usual("us"), each.usual("si")})
        for one in ranges:
            low, _, high = one.partition(" to ")
            unit = each.kind.apart(high)[1]
            ends = [each.kind.read(end, each.kind.unit(unit))[0] for end in (low, high)]
            assert ends == pytest.approx([each.low, each.high], rel=5e-4)
        default = fact(said, "Default").partition(" Default from: ")[0]
        assert each.take(Typed(default), "us") == each.take(Typed(each.default), "us")
        assert fact(said, "Plus-or-minus").startswith(each.sure)
        assert ("Plus-or-minus: " in said) == bool(each.sure)
        assert ("anew each time" in said) == (not each.once)


@every_calculator
def test_cautions_come_first(site: Site, name: str) -> None:
    """The rule of the house: before the step where work can hurt someone."""
    html = page_of(site, name)
    before = text(html.partition('<h2 id="inputs"')[0])
    for caution in calculator(name).cautions:
        assert caution.partition(" [")[0] in before


@every_calculator
def test_every_formula_is_shown_to_eye_and_ear(site: Site, name: str) -> None:
    """The module's own strings: those that no case came to would be missing here."""
    written = written_formulas(name)
    shown = re.findall(r'role="math" aria-label="([^"]+)"[^>]*>(.*?)</p>', page_of(site, name))
    assert {unescape(label) for label, _ in shown} == {as_text(each) for each in written}
    assert all(math.startswith("<math") for _, math in shown)


@every_calculator
def test_every_letter_is_explained(site: Site, name: str) -> None:
    """The module's own formulas, letter by letter."""
    wanted = {each for formula in written_formulas(name) for each in letters(formula)}
    listed = page_of(site, name).partition("The letters:")[2].partition("</ul>")[0]
    explained = re.findall(r"<li><var>(.*?)</var>: (.+?)</li>", listed)
    assert len(explained) == len(wanted)
    assert all(text(meaning) for _, meaning in explained)
    symbols = {letter(each).replace("_", "") for each in wanted}
    assert {text(symbol) for symbol, _ in explained} == symbols


@every_calculator
def test_the_physics_is_told_with_its_source(site: Site, name: str) -> None:
    """The docstrings, whose last word is their source."""
    found = sections(page_of(site, name))
    functions = docstrings.functions(calculator(name))
    module = inspect.getsource(inspect.getmodule(calculator(name).work) or docstrings)
    assert functions or "calc.physics" not in module  # sums and differences need none
    for function in functions:
        said = found[f"arithmetic-{function.__name__}"][1]
        assert function.__doc__
        assert said.startswith(function.__doc__.partition(",")[0].partition("\n")[0])
        assert "Source: " in said


def test_a_docstring_becomes_paragraphs_lists_and_code() -> None:
    """By hand, in the order of the house."""
    said = "Area, m².", "    A = w * h", "w, h -- sides, m:\n        both", ">>> 2\n2"
    assert list(docstrings.blocks("\n\n".join([*said, "Source: [ergun]."]))) == [
        "Area, m².",
        "<p><code>A = w * h</code></p>",
        "- `w, h`: sides, m: both",
        "<p><code>&gt;&gt;&gt; 2</code><br><code>2</code></p>",
        "Source: [@ergun].",
    ]


@every_calculator
def test_the_command_line_asks_for_the_worked_example(site: Site, name: str) -> None:
    """A shell's own reading of the lines, and the case it leads to."""
    html = page_of(site, name).partition('id="command-line"')[2]
    lines = [unescape(line) for line in re.findall(r"<code>(.*?)</code>", html)]
    words = shlex.split("\n".join(lines).replace("\\\n", " "))
    assert words[:3] == ["python", "-m", "calc"]
    asked, worked = case_of(words[3:]), case_of([name])
    assert asked.values == worked.values
    assert len(words) == 4 + len(asked.calculator.inputs)


@every_calculator
def test_a_calculator_is_found_by_the_words_of_its_labels(site: Site, name: str) -> None:
    """The search index: a section for each label, under its own words."""
    index = json.loads((site.folder / "search/search_index.json").read_text(encoding="utf-8"))
    titles = {each["location"]: unescape(each["title"]) for each in index["docs"]}
    declared = calculator(name)
    here = f"reference/calculators/{name}.html"
    assert titles[here] == declared.title
    for each in (*declared.inputs, *declared.outputs):
        assert titles[f"{here}#{each.name}"] == each.label
