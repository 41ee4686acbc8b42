"""The drawing of a train: every box drawn and named, figures apart, the same told in words."""

from itertools import combinations

import pytest

from calc.calculators.treatment_train import LABELS
from calc.charts import Place, Track, Train
from calc.model import UNIT_SETS
from calc.request import case_of
from calc.units import gauge_pressure, number
from calc.views.chart import csv, figure, svg
from calc.views.train_symbols import SYMBOLS
from tests.views.drawings import SVG, letters, parsed
from tests.views.reading import Element, read

CASES = (
    "treatment_train",
    "treatment_train place_1=none place_2=none place_3=none place_4=none",
    "treatment_train place_1=soda_ash place_2=iron_filter place_5=carbon place_6=uv",
    "treatment_train place_1=softener place_5=neutralizer raw_iron=50 hardness=1000",
)


def drawn(words: str, unit_set: str = "us") -> list[tuple[Train, Element]]:
    case = case_of(words.split(), unit_set)
    assert case.answer
    pictures = [each for each in case.answer.charts if isinstance(each, Train)]
    return [(each, read(figure(case, each, "k")).one("figure")) for each in pictures]


def test_every_box_has_its_picture() -> None:
    """The calculator's boxes: none without a symbol, no symbol without a box."""
    assert set(LABELS) == set(SYMBOLS)


@pytest.mark.parametrize("words", CASES)
@pytest.mark.parametrize("unit_set", UNIT_SETS)
def test_nothing_leaves_the_picture(words: str, unit_set: str) -> None:
    """By reason: what lies outside the viewBox is cut off; heads and figures must not meet."""
    case = case_of(words.split(), unit_set)
    assert case.answer
    for train in case.answer.charts:
        root = parsed(svg(case, train, "k"))
        _, _, width, height = map(float, root.attrib["viewBox"].split())
        texts = [text for text in root.iter(f"{SVG}text") if (text.text or "").strip()]
        figures = [letters(text) for text in texts if text.attrib.get("font-weight") != "700"]
        for box in map(letters, texts):
            assert box.left >= 0
            assert box.right <= width
            assert 0 <= box.top < box.bottom <= height
        assert not [pair for pair in combinations(figures, 2) if pair[0].meets(pair[1])]


@pytest.mark.parametrize("words", CASES)
def test_all_is_told_in_words_and_figures(words: str) -> None:
    """By reason: a reader who cannot see it gets every box, its figures and its reason."""
    for train, whole in drawn(words):
        description = whole.one("desc").text
        rows = whole.one("tbody").all("tr")
        assert len(rows) == len(train.places)
        assert len(whole.one("ol", "train-reasons").all("li")) == sum(
            bool(place.why) for place in train.places
        )
        for place in train.places:
            assert place.label in description
            assert ("out of place" in description) == any(each.wrong for each in train.places)


def test_more_is_drawn_further_right() -> None:
    """Geometry: dots of a track lie in the order of their figures, all alike in the middle."""
    places = tuple(
        Place("well", f"place {n}", "", False, (value, 5.0))
        for n, value in enumerate((6.0, 8.0, 7.0))
    )
    tracks = (Track("pH", number), Track("pres\u00adsure", gauge_pressure))
    root = parsed(svg(case_of(["treatment_train"]), Train("t", "s", tracks, places), "k"))
    dots = [
        (float(dot.attrib["cx"]), float(dot.attrib["cy"]))
        for dot in root.iter(f"{SVG}circle")
        if dot.attrib["r"] == "4" and float(dot.attrib["cx"]) > 92
    ]
    first, second = dots[:3], dots[3:]
    assert first[0][0] < first[2][0] < first[1][0]
    assert first[1][0] - first[2][0] == pytest.approx(first[2][0] - first[0][0], abs=0.11)
    assert len({x for x, _ in second}) == 1
    assert [y for _, y in first] == [y for _, y in second] == sorted(y for _, y in first)


def test_the_file_has_every_figure() -> None:
    """The figures read back: a row for each place, its reason at the end."""
    case = case_of(["treatment_train"])
    assert case.answer
    (train,) = case.answer.charts
    assert isinstance(train, Train)
    head, *rows = csv(case, train).strip().split("\r\n")
    assert "\u00ad" not in head
    assert len(rows) == len(train.places)
    assert rows[0].startswith('"Well, pump 1",6.3,')


@pytest.mark.parametrize(
    ("places", "says"),
    [
        ((), "nothing to draw"),
        ((Place("well", "a", "", False, (float("nan"),)),), "not finite"),
        ((Place("well", "a", "", False, (1.0, 2.0)),), "not one figure"),
    ],
)
def test_a_train_that_cannot_be_drawn_is_refused(places: tuple[Place, ...], says: str) -> None:
    """By reason: a malformed picture fails at the desk."""
    with pytest.raises(ValueError, match=says):
        Train("t", "s", (Track("pH", number),), places)
