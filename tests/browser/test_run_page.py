"""The drawing of a run on its page: stepped through, made anew, and read without a script."""

import pytest
from playwright.sync_api import expect

from tests.browser.using import axe, change
from tests.conftest import OpenPage

pytestmark = pytest.mark.browser
PAGE = "open-tank/run.html"


def test_the_lowest_moment_stands_without_a_script(page: OpenPage) -> None:
    opened = page(PAGE, java_script_enabled=False)
    scene = opened.locator("#system_run calc-scene")
    expect(scene.locator("svg")).to_be_visible()
    expect(scene.locator(".scene-says")).to_contain_text("the lowest level")
    expect(scene.locator("input")).to_be_hidden()


def test_the_slider_steps_through_the_run(page: OpenPage) -> None:
    """The drawing follows, and a new run brings a new drawing with its own slider."""
    opened = page(PAGE)
    scene = opened.locator("#system_run calc-scene")
    water = scene.locator("[data-part=water]")
    before = water.get_attribute("y")
    slider = scene.locator("input")
    slider.focus()
    slider.press("Home")
    expect(scene.locator(".scene-says")).to_contain_text("the start")
    assert water.get_attribute("y") != before
    expect(slider).to_have_attribute("aria-valuetext", "At 0\u00a0s: the start; the draw starts. "
                                     "Level 11.0\u00a0gal.")  # fmt: skip
    change(opened, "system_run", "worst_inlet", "3")
    expect(scene.locator(".scene-says")).to_contain_text("the intake uncovers")
    expect(scene.locator("[data-part='pump 2']")).to_have_text("draws air")
    slider.focus()
    slider.press("End")
    expect(scene.locator(".scene-says")).not_to_contain_text("the intake uncovers")
    assert axe(opened) == []
