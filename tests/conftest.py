"""The built handbook, and a browser to read it with."""

import os
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, Request, Response, WebError, sync_playwright

ROOT = Path(__file__).resolve().parents[1]
type OpenPage = Callable[..., Page]
PHONE: dict[str, Any] = {
    "viewport": {"width": 390, "height": 844},
    "has_touch": True,
    "is_mobile": True,
}


@dataclass(frozen=True)
class Site:
    """A built handbook: where its files lie and where it is served."""

    folder: Path
    url: str


class Handler(SimpleHTTPRequestHandler):
    # Said here because mimetypes would ask the machine's own tables.
    extensions_map = SimpleHTTPRequestHandler.extensions_map | {
        ".css": "text/css",
        ".html": "text/html; charset=utf-8",
        ".js": "text/javascript",
        ".svg": "image/svg+xml",
        ".wasm": "application/wasm",
        ".zip": "application/zip",
    }

    def log_message(self, format: str, *args: object) -> None:
        pass


class Server(ThreadingHTTPServer):
    def handle_error(self, request: Any, client_address: Any) -> None:
        if not isinstance(sys.exception(), ConnectionError):  # a page closed while it loads
            super().handle_error(request, client_address)


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """The book prints for minutes: it starts first, so that no processor waits for it alone."""
    items.sort(key=lambda item: item.path.name != "test_book.py")


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Site]:
    folder = tmp_path_factory.mktemp("site")
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(folder)]
    subprocess.run(command, cwd=ROOT, env=os.environ | {"NO_MKDOCS_2_WARNING": "1"}, check=True)
    with Server(("127.0.0.1", 0), partial(Handler, directory=folder)) as server:
        Thread(target=server.serve_forever).start()
        yield Site(folder, f"http://127.0.0.1:{server.server_port}/")
        server.shutdown()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        # Chromium refuses its sandbox to root; no name but this machine's resolves.
        flags = ["--no-sandbox", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"]
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=flags)
        yield browser
        browser.close()


@pytest.fixture
def faults() -> Iterator[list[str]]:
    """What went wrong on the pages a test opened. The test fails unless it is empty at the end."""
    seen: list[str] = []
    yield seen
    assert not seen, "\n".join(seen)


@pytest.fixture
def page(site: Site, browser: Browser, faults: list[str]) -> Iterator[OpenPage]:
    """Opens a page of the handbook as on a phone: page("balance.html", color_scheme="dark")."""
    contexts = []

    def note_request(request: Request) -> None:
        if not request.url.startswith((site.url, "blob:", "data:")):
            faults.append(f"left the site for {request.url}")

    def note_response(response: Response) -> None:
        if response.status >= 400:
            faults.append(f"{response.status} {response.url}")

    def note_error(error: WebError) -> None:
        faults.append(f"page error: {error.error}")

    def open_page(path: str = "index.html", **options: Any) -> Page:
        context = browser.new_context(**(PHONE | options))
        contexts.append(context)
        context.on("request", note_request)
        context.on("response", note_response)
        context.on("weberror", note_error)
        opened = context.new_page()
        opened.goto(site.url + path)
        return opened

    yield open_page
    for context in contexts:
        context.close()
