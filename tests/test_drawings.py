"""The drawings of the chapters: each in one style, lettered, told in words, used."""

import re
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from build_scripts.drawings import FOLDER, SVG, drawing

DOCS = Path("docs")
NAMES = sorted(file.stem for file in FOLDER.glob("*.svg") if file.stem != "symbols")
ALPHABET = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # I and O read as figures
COLOURS = {"none", "currentColor", "var(--ground, #fff)", "var(--accent, #00525e)"}


def drawn(name: str) -> ET.Element:
    return ET.fromstring(drawing(name))


def letters(svg: ET.Element) -> list[str]:
    return [
        each.text or "" for each in svg.iter(f"{{{SVG}}}text") if each.get("font-weight") == "700"
    ]


@pytest.mark.parametrize("name", NAMES)
def test_a_drawing_is_told_in_words(name: str) -> None:
    title, desc = drawn(name)[:2]
    assert title.tag == f"{{{SVG}}}title"
    assert desc.tag == f"{{{SVG}}}desc"
    assert title.text
    assert desc.text
    assert len(desc.text.split()) >= 20


@pytest.mark.parametrize("name", NAMES)
def test_the_letters_run_on_and_each_is_told(name: str) -> None:
    svg = drawn(name)
    of = letters(svg)
    assert sorted(of) == list(ALPHABET[: len(of)])
    told = svg[1].text or ""
    places = [re.search(rf"\b{letter},", told) for letter in sorted(of)]
    assert all(places), f"the description names each letter as “A,”: {of}"
    assert all(a.start() < b.start() for a, b in pairwise(places) if a and b)


@pytest.mark.parametrize("name", NAMES)
def test_only_the_colours_of_the_handbook(name: str) -> None:
    """So that dark mode, forced colours and grey paper all work."""
    used = {
        element.get(of)
        for element in drawn(name).iter()
        for of in ("fill", "stroke")
        if of in element.attrib
    }
    assert {each for each in used if each and not each.startswith("url(#")} <= COLOURS


@pytest.mark.parametrize("name", NAMES)
def test_it_fits_a_phone(name: str) -> None:
    _, _, width, height = map(float, drawn(name).attrib["viewBox"].split())
    assert width == 320
    assert height <= 700
    sizes = [float(each.get("font-size", "15")) for each in drawn(name).iter()]
    assert min(sizes) >= 13


def test_two_drawings_in_one_page_share_no_id() -> None:
    ids = [each.get("id") for name in NAMES for each in drawn(name).iter() if each.get("id")]
    assert len(ids) == len(set(ids))


def test_every_link_within_a_drawing_leads_to_a_part_of_it() -> None:
    for name in NAMES:
        svg = drawn(name)
        ids = {each.get("id") for each in svg.iter()}
        text = ET.tostring(svg, encoding="unicode")
        assert set(re.findall(r'(?:href="|url\()#([\w-]+)', text)) <= ids


def test_every_drawing_stands_in_one_chapter_and_every_symbol_in_a_drawing() -> None:
    chapters = "\n".join(map(Path.read_text, DOCS.rglob("*.md")))
    fences = re.findall(r"^ *```drawing\n *([\w-]+)$", chapters, re.MULTILINE)
    assert sorted(fences) == NAMES
    symbols = {each.get("id") for each in ET.parse(FOLDER / "symbols.svg").getroot()}
    drawings = "".join((FOLDER / f"{name}.svg").read_text() for name in NAMES)
    everything = drawings + (FOLDER / "symbols.svg").read_text()
    assert {each for each in symbols if f"#{each}" not in everything} == set()


def test_a_symbol_that_is_not_there_is_refused() -> None:
    with pytest.raises(FileNotFoundError):
        drawing("no-such-drawing")
