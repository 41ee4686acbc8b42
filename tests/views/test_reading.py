"""The strict reader of the tests itself: it must refuse what it is there to refuse."""

import pytest

from tests.views.reading import read


@pytest.mark.parametrize(
    "html",
    [
        "<p>open", "<p></div>", "</p>", "<p><div></div></p>", "<p>a < b</p>", "<p>a & b</p>",
        "<p>&nbsp;</p>", '<p id="a" id="b"></p>', "<!-- note --><p></p>",
    ],
)  # fmt: skip
def test_refuses_what_a_browser_would_mend(html: str) -> None:
    """The HTML standard: each of these means something else than it says."""
    with pytest.raises(AssertionError):
        read(html)


def test_reads_elements_attributes_and_text() -> None:
    """By hand."""
    root = read('<div class="a b"><p hidden>x &lt; <b>y&#39;s</b></p><input value="&quot;"></div>')
    assert root.one("div", "b").text == "x < y's"
    assert root.one("p").attributes == {"hidden": ""}
    assert root.one("input").attributes["value"] == '"'
    assert [each.name for each in root.all()] == ["div", "p", "b", "input"]
