"""The drawing of a run: every part at every moment, and the same told in words."""

import json

import pytest

from calc.calculators import calculator
from calc.model import UNIT_SETS, solve
from calc.request import case_of
from calc.units import gal
from calc.views.scene import frame, scene_figure
from calc.views.scene_drawing import BOTTOM, HEIGHT, RIGHT, TOP
from tests.views.reading import Element, read

CASES = (
    "system_run",
    "system_run worst_inlet=3",
    "system_run worst_inlet=3 lock_at=2 limit=after",
    "system_run blower=both float_kind=modulating",
    "pressure_draw limit=after",
)


def drawn(words: str) -> Element:
    case = case_of(words.split())
    assert case.answer
    (scene,) = case.answer.scenes
    return read(scene_figure(case, scene, "k")).one("figure")


@pytest.mark.parametrize("words", CASES)
def test_each_part_is_drawn_once_and_told_at_every_moment(words: str) -> None:
    """What the page's script relies on: it puts values into parts and asks nothing."""
    figure = drawn(words)
    run = json.loads(figure.one("calc-scene").attributes["data-run"].replace("&quot;", '"'))
    named = [e.attributes["data-part"] for e in figure.all() if "data-part" in e.attributes]
    assert len(set(named)) == len(named)
    assert {part for part, _ in run["parts"]} == set(named)
    slider = figure.one("input")
    assert int(slider.attributes["max"]) == len(run["moments"]) - 1
    assert all(len(moment) == len(run["parts"]) for moment in run["moments"])


@pytest.mark.parametrize("words", CASES)
def test_the_lowest_moment_is_drawn_first(words: str) -> None:
    """By reason: a page without a script shows one moment, and that is the one that matters."""
    case = case_of(words.split())
    assert case.answer
    (scene,) = case.answer.scenes
    lowest = case.answer.outputs["lowest"]
    assert scene.moments[scene.shown].level == lowest
    figure = drawn(words)
    look = frame(scene, scene.moments[scene.shown], "us")
    for element in figure.all():
        part = element.attributes.get("data-part", "")
        for (of, name), value in look.items():
            if of == part and name == "text":
                assert element.text.replace("\u00a0", " ").strip() == value.replace("\u00a0", " ")
            elif of == part:
                assert element.attributes[name] == value


@pytest.mark.parametrize("words", CASES)
@pytest.mark.parametrize("unit_set", UNIT_SETS)
def test_nothing_that_moves_leaves_its_tank(words: str, unit_set: str) -> None:
    """Geometry: water between bottom and rim, float on it; a higher level is drawn higher."""
    case = case_of(words.split(), unit_set)
    assert case.answer
    (scene,) = case.answer.scenes
    heights = []
    for moment in scene.moments:
        look = frame(scene, moment, unit_set)
        top, tall = float(look["water", "y"]), float(look["water", "height"])
        assert top + tall == pytest.approx(BOTTOM, abs=0.11)
        assert TOP < top < BOTTOM
        assert TOP < float(look["float", "cy"]) < BOTTOM
        assert float(look["house tank", "height"]) >= 0
        heights.append((moment.level, -top))
    assert [top for _, top in sorted(heights)] == sorted(top for _, top in heights)


@pytest.mark.parametrize("words", CASES)
def test_the_words_stay_in_the_picture(words: str) -> None:
    """By reason: what lies outside the viewBox is cut off."""
    svg = drawn(words).one("svg")
    assert svg.attributes["viewbox"] == f"0 0 360 {HEIGHT}"
    for text in svg.all("text"):
        x, y = float(text.attributes["x"]), float(text.attributes["y"])
        width = 8.4 * len(text.text)
        left = x - {"end": width, "middle": width / 2}.get(
            text.attributes.get("text-anchor", ""), 0
        )
        assert left >= 0
        assert left + width <= 360
        assert 0 < y < HEIGHT
    assert RIGHT < 360


@pytest.mark.parametrize("words", CASES)
def test_every_event_stands_in_the_table(words: str) -> None:
    """By reason: who cannot see the drawing reads the table. Its times only rise."""
    case = case_of(words.split())
    assert case.answer
    (scene,) = case.answer.scenes
    rows = drawn(words).one("tbody").all("tr")
    assert len(rows) == len(scene.moments)
    times = [moment.time for moment in scene.moments]
    assert times == sorted(times)
    told = " ".join(row.text for row in rows)
    for word in ("the start", "pump 2 starts", "the lowest level"):
        assert word in told or "held off" in told


def test_the_dry_moment_is_told() -> None:
    """By hand: 3 in and 6 out, the intake uncovers at 4 min 24 s and pump 2 draws air."""
    row = next(r for r in drawn("system_run worst_inlet=3").one("tbody").all("tr")
               if "the intake uncovers" in r.text)  # fmt: skip
    words = row.text.replace("\u00a0", " ")
    assert "4 min 24 s" in words
    assert "draws air" in words
    assert "lowest level0 gal" in words


def test_no_more_moments_than_a_slider_can_hold() -> None:
    """By reason: a run of hundreds of events is cut, its lowest level and end are kept."""
    case = solve(calculator("system_run"), case_of(
        ["system_run", "draw_volumes=200", "house_drawdown=0.5"]).typed)  # fmt: skip
    assert case.answer
    (scene,) = case.answer.scenes
    assert len(scene.moments) <= 60
    assert min(m.level for m in scene.moments) == case.answer.outputs["lowest"]
    assert case.answer.outputs["had"] == pytest.approx(600 * gal, rel=1e-9)
