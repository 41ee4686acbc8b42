"""Keeping the book on a device, from a server that can be stopped or serve a second edition."""

import json
from functools import partial
from pathlib import Path
from threading import Thread
from typing import Any

from playwright.sync_api import BrowserContext, Page, expect

from tests.conftest import Handler, Server

SLOW = 60_000  # ms, for a busy machine


class Host:
    """A server of one folder that can be stopped and started again on its address."""

    def __init__(self, folder: Path, below: str = "") -> None:
        self.folder, self.below = folder, below
        self.asked: list[str] = []
        self.cut = ""  # the path on which the server breaks off
        self.port = 0
        self.start()

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}/{self.below}"

    def start(self) -> None:
        host = self

        class Counting(Handler):
            def do_GET(self) -> None:  # noqa: N802
                path = self.path.split("?")[0].removeprefix(f"/{host.below}")
                host.asked.append(path)
                if host.cut and path.endswith(host.cut):
                    self.close_connection = True
                    self.connection.close()
                else:
                    super().do_GET()

        self.server = Server(("127.0.0.1", self.port), partial(Counting, directory=self.folder))
        self.port = self.server.server_port
        Thread(target=self.server.serve_forever).start()

    def stop(self) -> None:
        self.server.shutdown()
        self.server.server_close()


STATE = """() => new Promise(async (settle) => {
  const { active } = await navigator.serviceWorker.ready;
  navigator.serviceWorker.addEventListener("message", ({ data, source }) => {
    if (source === active && data.edition) settle(data);
  });
  active.postMessage({ do: "state" });
})"""


def state(page: Page) -> Any:
    return page.evaluate(STATE)


def wait_for(page: Page, what: str) -> None:
    for _ in range(60):
        if state(page)[what]:
            return
        page.wait_for_timeout(500)
    raise AssertionError(f"no {what} after 30 s: {state(page)}")


def desk(device: BrowserContext, host: Host) -> Page:
    """Open the page on which the book is kept, once the worker has taken it."""
    page = device.new_page()
    page.goto(f"{host.url}offline.html")
    expect(page.locator("[data-part=can]")).to_be_visible(timeout=SLOW)
    page.wait_for_function("navigator.serviceWorker.controller")
    return page


def keep(page: Page) -> None:
    page.get_by_role("button", name="Keep the whole book").click()
    whole(page)


def whole(page: Page) -> None:
    expect(page.locator("[data-part=state]")).to_contain_text("the whole book", timeout=SLOW)


def listed(host: Host) -> dict[str, Any]:
    first = (host.folder / host.below / "sw.js").read_text(encoding="utf-8").split("\n")[0]
    book = json.loads(first.removeprefix("const BOOK = ").removesuffix(";"))
    return dict(book["files"])


def pages(host: Host) -> list[str]:
    return [path for path in listed(host) if path.endswith(".html")]


def edit(host: Host, path: str, old: str, new: str) -> None:
    """Change a file of the served copy. write() makes an edition of it."""
    file = host.folder / host.below / path
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")
