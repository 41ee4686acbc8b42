"""Lettering of the drawings as Chromium sets it: inside the frame, and none over another."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from build_scripts.drawings import drawing
from tests.test_drawings import NAMES

FAULTS = """() => [...document.querySelectorAll("svg")].flatMap((svg) => {
  const frame = svg.getBoundingClientRect();
  const words = [...svg.querySelectorAll("text")].map((text) => ({
    said: `${svg.dataset.name}: ${text.textContent}`, at: text.getBoundingClientRect() }));
  const leaves = ({ at }) => at.left < frame.left || at.right > frame.right
    || at.top < frame.top || at.bottom > frame.bottom;
  const crosses = (one, other) =>
    Math.min(one.at.right, other.at.right) - Math.max(one.at.left, other.at.left) > 1 &&
    Math.min(one.at.bottom, other.at.bottom) - Math.max(one.at.top, other.at.top) > 3;
  return words.flatMap((one, place) => [
    ...(leaves(one) ? [`${one.said} leaves the frame`] : []),
    ...words.slice(place + 1).filter((other) => crosses(one, other))
      .map((other) => `${one.said} over ${other.said}`)]);
})"""


@pytest.fixture
def blank(browser: Browser) -> Iterator[Page]:
    page = browser.new_page()
    yield page
    page.close()


def faults_of(page: Page, *names: str) -> list[str]:
    svgs = [
        drawing(name).replace("<svg", f'<svg data-name="{name}" width="320"', 1) for name in names
    ]
    page.set_content("".join(svgs))
    found: list[str] = page.evaluate(FAULTS)
    return found


def test_the_lettering_stays_apart_and_inside(blank: Page) -> None:
    assert faults_of(blank, *NAMES) == []


def test_lettering_that_crosses_is_seen(blank: Page) -> None:
    assert faults_of(blank, "open-tank-system") == []
    blank.evaluate("document.querySelector('text').setAttribute('x', 250)")
    assert blank.evaluate(FAULTS) != []
