"""The book served by nginx as docs/hosting.md tells: headers, types, packed copies, caching."""

import gzip
import json
from collections.abc import Iterator
from email.message import Message
from pathlib import Path
from urllib.error import HTTPError
from urllib.request import Request, urlopen

import brotli
import pytest

from tests.conftest import Site
from tests.nginx import RECIPES, WHERE, Nginx


@pytest.fixture(scope="module", params=[0, 1], ids=list(WHERE))
def address(
    request: pytest.FixtureRequest, site: Site, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[str]:
    with Nginx(tmp_path_factory.mktemp("nginx"), site.folder, RECIPES[request.param]) as server:
        yield server.url + list(WHERE.values())[request.param]


def fetch(url: str, **headers: str) -> tuple[int, Message, bytes]:
    """Status, headers, and body as it was sent."""
    given = {name.replace("_", "-"): value for name, value in headers.items()}
    try:
        with urlopen(Request(url, headers=given)) as response:
            return response.status, response.headers, response.read()
    except HTTPError as answer:
        return answer.code, answer.headers, answer.read()


def runtime(site: Site, role: str) -> str:
    manifest = json.loads((site.folder / "runtime/manifest.json").read_text(encoding="utf-8"))
    path: str = manifest[role]["path"]
    return path


def theme(site: Site) -> str:
    [script] = (site.folder / "assets/javascripts").glob("bundle.*.js")
    return script.relative_to(site.folder).as_posix()


def test_every_file_comes_with_the_headers(address: str, site: Site) -> None:
    listed = (site.folder / "hosting/headers.json").read_text(encoding="utf-8")
    wanted = json.loads(listed)["every file"]
    paths = ["", "balance.html", "app/worker.js", runtime(site, "wasm"), "no/such/page.html"]
    for path in [*paths, "search/search_index.json", theme(site)]:
        status, headers, _ = fetch(address + path)
        assert status == (404 if path.startswith("no/") else 200)
        assert {name: headers[name] for name in wanted} == wanted, path


@pytest.mark.parametrize(
    ("path", "kind"),
    [
        ("balance.html", "text/html; charset=utf-8"),
        ("app/handbook.css", "text/css; charset=utf-8"),
        ("app/worker.js", "text/javascript; charset=utf-8"),
        ("app/vendor/qrcode.mjs", "text/javascript; charset=utf-8"),
        ("app/mark.svg", "image/svg+xml; charset=utf-8"),
        ("search/search_index.json", "application/json; charset=utf-8"),
        ("runtime wasm", "application/wasm"),
        ("runtime calc", "application/zip"),
    ],
)
def test_types(path: str, kind: str, address: str, site: Site) -> None:
    path = runtime(site, path.split()[1]) if path.startswith("runtime ") else path
    assert fetch(address + path)[1]["content-type"] == kind


def test_packed_copies_are_sent_to_whoever_takes_them(address: str, site: Site) -> None:
    for path in ("balance.html", "app/handbook.css", runtime(site, "wasm")):
        _, headers, body = fetch(address + path, Accept_Encoding="gzip, br")
        assert headers["content-encoding"] == "gzip"
        assert headers["vary"] == "Accept-Encoding"
        assert gzip.decompress(body) == (site.folder / path).read_bytes()
        _, headers, body = fetch(address + path)
        assert "content-encoding" not in headers
        assert body == (site.folder / path).read_bytes()


def test_what_has_a_hash_in_its_name_is_kept_and_the_rest_is_asked_for(
    address: str, site: Site
) -> None:
    for path in (runtime(site, "engine"), runtime(site, "calc"), theme(site)):
        assert fetch(address + path)[1]["cache-control"] == "public, max-age=31536000, immutable"
    for path in ("", "balance.html", "app/worker.js", "runtime/manifest.json", "nowhere"):
        assert fetch(address + path)[1]["cache-control"] == "no-cache"
    _, headers, _ = fetch(f"{address}balance.html")
    assert fetch(f"{address}balance.html", If_None_Match=headers["etag"])[0] == 304


def test_brotli_is_sent_as_the_page_says(site: Site, tmp_path: Path) -> None:
    recipe = RECIPES[0].replace("    include", "    brotli_static on;\n    include")
    path = runtime(site, "calc")
    with Nginx(tmp_path, site.folder, recipe) as server:
        _, headers, body = fetch(server.url + path, Accept_Encoding="gzip, br")
    assert (headers["content-encoding"], headers["vary"]) == ("br", "Accept-Encoding")
    assert brotli.decompress(body) == (site.folder / path).read_bytes()
