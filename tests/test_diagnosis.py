"""The ways from symptoms to causes: each is drawn, each link opens a case that fits it."""

import re
import shlex
from pathlib import Path
from urllib.parse import unquote_plus

import pytest
from pymdownx.superfences import SuperFencesException

from build_scripts.fences import Fences, Page
from build_scripts.houses import Houses
from build_scripts.pages.uses import Book
from build_scripts.paths import Paths
from calc.diagnosis.symptoms import SYMPTOMS
from calc.request import case_of

DOCS = Path(__file__).resolve().parents[1] / "docs"
ASKS = [
    (name, branch.ask)
    for name, symptom in SYMPTOMS.items()
    for step in symptom.steps
    for branch in step.branches
    if branch.ask
]
SAID = {
    "pump_check leak_from=60 leak_to=55 leak_time=30": "It leaks back.",
    "pump_check well_caught=1.4 fill_time=11": "The tank gives too little.",
    "pump_check well_precharge=50 well_caught=2.6 fill_time=21": "Pre-charge over cut-in.",
    "pump_check well_tank=44 well_caught=11.2 fill_time=90": "As it should be.",
    "outlet_setting outlet=4.6": "Safe.",
    "pump_check shut_off_gauge=68 fill_time=55": "Short of head.",
    "pump_check well_caught=5.1 fill_time=60": "Held back, not worn.",
    "cable_drop wire_gauge=14 cable_length=400": "Too thin.",
    "pump_check shut_off_gauge=56": "It cannot reach cut-out.",
    "inlet_flow bed_dirty=8": "The filter decides.",
    "cable_drop wire_temperature=50°F": "Thick enough.",
    "cable_drop wire_gauge=14 cable_length=500": "Too little voltage.",
    "generator_start generator_rated=3": "May not start it.",
    "tank_draw worst_inlet=3": "Runs dry.",
    "intake_depth float_open=4": "Air before the tank is low.",
    "pump_check leak_from=60 leak_to=50 leak_time=60": "It leaks back.",
    "intake_depth keep=4": "Deep enough.",
    "outlet_setting outlet=6": "Can run dry.",
    "tank_draw worst_outlet=4.6": "Lasts.",
    "tank_draw precharge=10": "Lasts, this time.",
    "tank_draw draw_volume=75": "Runs dry.",
}


@pytest.fixture(scope="module")
def paths() -> Paths:
    fences = Fences()
    fences.page = Page("../")
    return Paths(Book(DOCS), fences)


def test_every_symptom_is_drawn_once() -> None:
    """The chapter's fences: all symptoms, in the order of the data."""
    text = (DOCS / "well/diagnosis.md").read_text(encoding="utf-8")
    assert re.findall(r"^```diagnosis\n(\w+)\n```", text, re.MULTILINE) == list(SYMPTOMS)


def test_every_case_with_numbers_is_expected_below() -> None:
    """The data: no case is missing, none is left over."""
    assert {*SAID} == {ask for _, ask in ASKS if "=" in ask}


@pytest.mark.parametrize("ask", SAID)
def test_a_case_shows_the_fault_of_its_branch(ask: str) -> None:
    """By hand, branch by branch: what the calculator must say to the numbers filled in."""
    case = case_of(shlex.split(ask))
    assert case.answer, case.errors
    assert SAID[ask] in {finding.head for finding in case.answer.findings}


@pytest.mark.parametrize("name", SYMPTOMS)
def test_links_open_the_case(paths: Paths, name: str) -> None:
    """The drawn HTML: each link leads to a chapter in which the calculator is live, and its
    words ask for the same case."""
    html = paths.draw(name)
    hrefs = [each.replace("&amp;", "&") for each in re.findall(r'href="([^"]+#[^"]+)"', html)]
    asked = [href for href in hrefs if "sources.html" not in href]
    assert len(asked) == len([ask for symptom, ask in ASKS if symptom == name])
    for href, ask in zip(asked, (a for s, a in ASKS if s == name), strict=True):
        path, _, words = href.partition("#")
        chapter = (DOCS / "well" / path).resolve().with_suffix(".md")
        assert f"```calc\n{ask.split()[0]}" in chapter.read_text(encoding="utf-8")
        assert [unquote_plus(word) for word in words.split("&")] == shlex.split(ask)


def test_every_symptom_has_a_heading_that_the_trouble_call_leads_to() -> None:
    """The chapter: without a script a complaint is a link to its way on paper."""
    text = (DOCS / "well/diagnosis.md").read_text(encoding="utf-8")
    for symptom in SYMPTOMS.values():
        assert f"\n## {symptom.title}\n" in text


@pytest.mark.parametrize("wrong", ["no_such_visit", ""])
def test_an_unknown_visit_stops_the_build(wrong: str) -> None:
    fences = Fences()
    fences.page = Page("../")
    with pytest.raises(SuperFencesException):
        Houses(Book(DOCS), fences).visit(wrong)


@pytest.mark.parametrize("wrong", ["no_such_symptom", ""])
def test_an_unknown_symptom_stops_the_build(paths: Paths, wrong: str) -> None:
    """superfences lets only this exception through."""
    with pytest.raises(SuperFencesException):
        paths.draw(wrong)


def test_every_way_ends_in_something_to_do() -> None:
    """By reason: no reading leaves the reader without a next step; the last sends nobody on."""
    for symptom in SYMPTOMS.values():
        for step in symptom.steps:
            assert len(step.branches) > 1
            assert all(branch.do and branch.means for branch in step.branches)
        assert "Next step." not in {branch.do for branch in symptom.steps[-1].branches}
