"""The policy of build_scripts/headers.py fits the pages, or else the build stops."""

import json
import re
from hashlib import sha256
from html.parser import HTMLParser

import pytest

from build_scripts import bundle, headers, inline
from calc.calculators import names
from tests.conftest import Site


def sources(policy: str, name: str) -> list[str]:
    rules = dict(rule.split(" ", 1) for rule in policy.split("; "))
    return rules[name].split(" ")


def test_the_hash_is_that_of_the_standard() -> None:
    """The script and hash that W3C, Content Security Policy Level 2 gives as its example."""
    known = "sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng="
    assert inline.scripts("<script>alert('Hello, world.');</script>", "a.html") == {known}


def test_scripts_of_ours_and_data_need_no_hash() -> None:
    html = '<script src="app.js"></script><script type="application/json">{}</script>'
    assert inline.scripts(html, "a.html") == set()


def test_an_inline_script_is_hashed_as_it_stands() -> None:
    text = "\n  if (1 < 2 && '</p>') go(&amp;);\n"
    found = inline.scripts(f"<p><script>{text}</script><b>x</b>", "a.html")
    assert found == {bundle.integrity(sha256(text.encode()).hexdigest())}


@pytest.mark.parametrize(
    "html",
    [
        '<p style="color:red">',
        "<style>p{}</style>",
        '<img src="a.png" onerror="x()">',
        '<a href=" JavaScript:x()">',
        '<a href="java&#115;cript:x()">',
        '<script src="https://example.org/x.js"></script>',
        '<img src="//example.org/x.png">',
        '<link rel="stylesheet" href="http://example.org/x.css">',
        '<iframe src="a.html"></iframe>',
        '<object data="a.svg"></object>',
        '<base href="/">',
        '<form action="/send">',
        '<button formaction="/send">',
    ],
)
def test_what_the_policy_would_refuse_stops_the_build(html: str) -> None:
    with pytest.raises(RuntimeError, match=r"a/b\.html: the policy"):
        inline.scripts(f"<body>{html}</body>", "a/b.html")


@pytest.mark.parametrize(
    "html",
    [
        '<a href="https://example.org/">',
        '<link rel="canonical" href="https://example.org/a.html">',
        '<form class="calc-fields">',
        '<code>style="x" onload=</code>',
    ],
)
def test_what_the_policy_allows_passes(html: str) -> None:
    assert inline.scripts(html, "a.html") == set()


def test_a_page_that_begins_otherwise_stops_the_build() -> None:
    with pytest.raises(RuntimeError, match="charset"):
        headers.with_policy("<html><head><script>a</script></head></html>", set())


def told(site: Site) -> dict[str, str]:
    text = (site.folder / "hosting" / "headers.json").read_text(encoding="utf-8")
    every: dict[str, str] = json.loads(text)["every file"]
    return every


def test_the_policy_allows_only_ourselves_and_webassembly(site: Site) -> None:
    policy = told(site)["Content-Security-Policy"]
    assert sources(policy, "default-src") == ["'none'"]
    allowed = {word for rule in policy.split("; ") for word in rule.split(" ")[1:]}
    hashes = {word for word in allowed if word.startswith("'sha256-")}
    assert allowed - hashes == {"'none'", "'self'", "'wasm-unsafe-eval'", "data:"}
    assert sources(policy, "script-src")[:2] == ["'self'", "'wasm-unsafe-eval'"]
    assert [rule for rule in policy.split("; ") if "data:" in rule] == ["img-src 'self' data:"]
    assert sources(policy, "frame-ancestors") == ["'none'"]


class Policies(HTMLParser):
    """The policies that a page holds, and whether one comes late."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.before: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if given.get("http-equiv") == "Content-Security-Policy":
            self.found.append(given["content"] or "")
        elif not self.found:
            self.before.append(tag)


def test_every_page_holds_a_policy_no_wider_than_the_header(site: Site) -> None:
    header = set(sources(told(site)["Content-Security-Policy"], "script-src"))
    seen: set[str] = set()
    pages = list(site.folder.rglob("*.html"))
    assert pages
    for page in pages:
        reader = Policies()
        reader.feed(page.read_text(encoding="utf-8"))
        [policy] = reader.found
        assert reader.before == ["html", "head", "meta"], page
        assert "frame-ancestors" not in policy  # a browser would complain
        seen |= set(sources(policy, "script-src"))
    assert seen == header  # and the header has no hash too many


def test_every_kind_of_file_has_a_type(site: Site) -> None:
    endings = {file.suffix[1:] for file in site.folder.rglob("*") if file.is_file()}
    assert endings - {"br", "gz", "conf"} <= set(headers.TYPES)


def test_names_with_a_hash_are_told_from_others(site: Site) -> None:
    paths = ["/" + file.relative_to(site.folder).as_posix() for file in site.folder.rglob("*.*")]
    kept = {path for path in paths if re.search(headers.HASHED, path)}
    assert not [path for path in kept if path.endswith((".html", "sw.js", "manifest.json"))]
    runtime = {p for p in paths if re.fullmatch(r"/runtime/[^.]+-\w+\.(js|wasm|zip)", p)}
    assert len(runtime) == 5 + len(names())  # Python, its loader and library, calc, coursework
    assert runtime <= kept
    assert not [path for path in kept if path.startswith(("/app/", "/search/", "/drawings/"))]
    assert any(path.startswith("/assets/javascripts/bundle.") for path in kept)
