"""The chapters say what calc says, and cite what exists."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from pymdownx.superfences import SuperFencesException

from build_scripts import fences, formulas, pages
from calc import other_treatment, sources
from calc.calculators import calculator, names
from calc.model import Choice, Typed, solve

ROOT = Path(__file__).resolve().parents[1]
CHAPTERS = sorted((ROOT / "docs").rglob("*.md"))
FENCE = re.compile(r"```(calc|claims)\n(.*?)```", re.DOTALL)
NAMED = re.compile(r"\[@?([a-z]+(?:-[a-z0-9]+)+)\]")


def fenced(kind: str) -> list[str]:
    text = "\n".join(chapter.read_text(encoding="utf-8") for chapter in CHAPTERS)
    return [source for found, source in FENCE.findall(text) if found == kind]


def test_every_calculator_is_drawn_in_a_chapter() -> None:
    assert {source.split()[0] for source in fenced("calc")} == set(names())


def test_every_claim_holds() -> None:
    for source in fenced("calc") + fenced("claims"):
        fences.checked(source)


@pytest.mark.parametrize(
    ("source", "told"),
    [
        ("outlet_setting\nmargin = 1.2 gpm", "the chapter says 'margin = 1.2 gpm', calc says"),
        ("outlet_setting\nmargin = -1.20 psi", "is no unit of flow"),
        ("outlet_setting\nlasts = 7 min 56 s", "'min 56 s' is no unit of time"),
        ("outlet_setting outlet=4\nlasts = 7.9 min", "for good"),
        ("outlet_setting outlet=abc", "outlet: “abc” is not a number"),
        ("outlet_setting\nnothing = 1 gpm", "nothing"),
        ("no_such_thing", "no_such_thing"),
    ],
)
def test_a_false_claim_stops_the_build(source: str, told: str) -> None:
    """superfences lets only this exception through; it would print the fence as code."""
    with pytest.raises(SuperFencesException, match=re.escape(told)):
        fences.Fences().claims(source)


def test_a_false_claim_stops_the_whole_build(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "docs", tmp_path / "docs")
    page = "# Page\n\n```claims\noutlet_setting\nmargin = 9 gpm\n```\n"
    (tmp_path / "docs/index.md").write_text(page)
    (tmp_path / "mkdocs.yml").write_text(
        f"site_name: t\ntheme: {{name: material, font: false}}\nhooks: [{ROOT}/build_scripts/"
        "mkdocs_hooks.py]\nmarkdown_extensions: [pymdownx.superfences]\n"
    )
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(tmp_path / "mkdocs.yml")]
    built = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert built.returncode != 0
    assert "margin = 9 gpm" in built.stderr


def test_every_source_cited_exists_and_every_source_is_cited() -> None:
    files = [*CHAPTERS, *(ROOT / "calc").rglob("*.py")]
    text = "\n".join(file.read_text(encoding="utf-8") for file in files)
    declared = {each for name in names() for each in calculator(name).sources}
    drawn = {each.source for each in other_treatment.OPTIONS} - set(other_treatment.UNSOURCED)
    cited = set(NAMED.findall(text)) | declared | drawn
    assert cited <= set(sources.SOURCES)
    assert cited == set(sources.SOURCES)


def test_a_citation_becomes_a_link_to_the_page_of_sources() -> None:
    linked = pages.with_citations("said [@ergun].", "../")
    assert linked == "said ([S. Ergun 1952](../sources.md#ergun))."
    with pytest.raises(KeyError):
        pages.with_citations("said [@nobody-0].", "")


@pytest.mark.parametrize("name", names())
def test_every_formula_that_a_calculator_shows_has_its_mathml(name: str) -> None:
    """With each option picked, for some steps show only then."""
    made, _ = formulas.made_of(formulas.CALCULATORS / f"{name}.py")
    declared = calculator(name)
    choices = [each for each in declared.inputs if isinstance(each, Choice)]
    picks = [{c.name: Typed(option)} for c in choices for option in c.options] or [{}]
    answers = [solve(declared, pick).answer for pick in ({}, *picks)]
    assert answers[0]
    for answer in filter(None, answers):  # some options are for another house
        assert {step.formula for step in answer.steps} <= set(made)
